"""Straight router cutters that a small shop has.  Millimetres.

Diameters and lengths are common practice, no source: a maker measures the cutter in hand.
"""

from __future__ import annotations

from dataclasses import dataclass

from shared.units import MM_PER_INCH


@dataclass(frozen=True, slots=True)
class StraightCutter:
    """A straight router cutter; ``reach`` is the length of its cutting edges."""

    called: str
    diameter: float
    reach: float
    source: str


_IN = MM_PER_INCH
_PRACTICE = "common practice, no source"

STRAIGHT_CUTTERS = (
    # called, diameter mm, reach mm, source; narrowest first
    StraightCutter("6 mm", 6.0, 16.0, _PRACTICE),
    StraightCutter("1/4 in", _IN / 4, 19.0, _PRACTICE),
    StraightCutter("8 mm", 8.0, 20.0, _PRACTICE),
    StraightCutter("3/8 in", _IN * 3 / 8, 25.0, _PRACTICE),
    StraightCutter("10 mm", 10.0, 25.0, _PRACTICE),
    StraightCutter("12 mm", 12.0, 30.0, _PRACTICE),
    StraightCutter("1/2 in", _IN / 2, 32.0, _PRACTICE),
    StraightCutter("5/8 in", _IN * 5 / 8, 32.0, _PRACTICE),
    StraightCutter("16 mm", 16.0, 30.0, _PRACTICE),
    StraightCutter("18 mm", 18.0, 30.0, _PRACTICE),
    StraightCutter("3/4 in", _IN * 3 / 4, 32.0, _PRACTICE),
    StraightCutter("20 mm", 20.0, 30.0, _PRACTICE),
)


def widest_cutter_for(width: float) -> StraightCutter | None:
    """The widest straight cutter that goes into a housing of that width; None below the narrowest.

    >>> cutter = widest_cutter_for(19.0)
    >>> cutter.called if cutter else None
    '18 mm'
    """
    fitting = [cutter for cutter in STRAIGHT_CUTTERS if cutter.diameter <= width]
    return fitting[-1] if fitting else None
