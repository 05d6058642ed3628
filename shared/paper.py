"""Sheets, scales and the width of a title block.  Millimetres, sheets lying on their long edge.

Sources: sizes of A4 and A3 ISO 216, of Letter and Tabloid ASME Y14.1 sizes A and B (both read in
pages that tabulate them); borders ISO 5457:1999, from memory; scales ISO 5455:1979, from memory;
title block ISO 7200:2004, from memory.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import chain

TITLE_BLOCK_WIDTH = 180.0  # ISO 7200:2004; A4 upright less its borders


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet; ``filing`` is the border on the left, ``border`` that on the other three sides."""

    name: str
    width: float
    height: float
    filing: float
    border: float
    source: str


_ISO = "ISO 216; borders ISO 5457:1999 from memory"
_ASME = "ASME Y14.1; borders as on the ISO sheets, our choice"

_PAPERS = (
    # name, width, height, filing, border, source
    Paper("A4", 297.0, 210.0, 20.0, 10.0, _ISO),
    Paper("A3", 420.0, 297.0, 20.0, 10.0, _ISO),
    Paper("Letter", 279.4, 215.9, 20.0, 10.0, _ASME),
    Paper("Tabloid", 431.8, 279.4, 20.0, 10.0, _ASME),
)

PAPERS: dict[str, Paper] = {row.name: row for row in _PAPERS}


@dataclass(frozen=True, slots=True)
class Scale:
    """A length on paper to a length in the shop: 1 to 10 is ``Scale(1, 10)``."""

    drawn: int
    real: int

    @property
    def factor(self) -> float:
        """Millimetres on paper for one real millimetre."""
        return self.drawn / self.real

    @property
    def text(self) -> str:
        return f"{self.drawn}:{self.real}"


_STEPS = (2, 5, 10, 20, 50)

SCALES: tuple[Scale, ...] = tuple(
    chain(
        (Scale(step, 1) for step in reversed(_STEPS)),
        (Scale(1, 1),),
        (Scale(1, step) for step in (*_STEPS, 100)),
    )
)
"""The steps of ISO 5455 that furniture needs, largest first."""


def largest_scale(factor: float) -> Scale:
    """The largest standard scale that is no larger than ``factor``, or the smallest there is.

    >>> largest_scale(0.13).text
    '1:10'
    """
    return next((scale for scale in SCALES if scale.factor <= factor), SCALES[-1])
