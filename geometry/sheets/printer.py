"""A printer that is a little off, and the factors that put its sheets right.

What it makes of 100 mm is measured along the long edge of its paper and along the short one: paper
runs through a printer the same way whichever way a sheet is turned.
"""

from __future__ import annotations

from shared.errors import ValueOutOfRange

Edges = tuple[float, float]  # along the long edge of the paper, and along the short one

TRUE: Edges = (100.0, 100.0)
"""mm: what a check square measures where nothing is off."""

LARGEST_CORRECTION = 0.03
"""More than that is a page that was scaled to fit, which no factor should hide."""

_EDGES = ("long edge of the paper", "short edge of the paper")


def correction_of(square: Edges) -> Edges:
    """The factors for a printer whose 100 mm check square, uncorrected, measures so many mm.

    Raises ValueOutOfRange beyond 3 %.
    """
    factors = (_factor(TRUE[0], square[0]), _factor(TRUE[1], square[1]))
    check_correction(factors)
    return factors


def check_correction(factors: Edges) -> None:
    """Raises ValueOutOfRange for factors beyond 3 %."""
    low, high = 1.0 - LARGEST_CORRECTION, 1.0 + LARGEST_CORRECTION
    for edge, factor in zip(_EDGES, factors, strict=True):
        if not low <= factor <= high:
            raise ValueOutOfRange(
                f"A correction of {factor:.4f} is more than 3 %.",
                where=f"Check square along the {edge}",
                remedy="The page was scaled to fit: print again at 100 %, then measure.",
                limit=low if factor < low else high,
            )


def as_it_lies(factors: Edges, width: float, height: float) -> Edges:
    """Across a sheet of that size and up it: its long edge may be either."""
    return factors if width >= height else factors[::-1]


def _factor(true: float, measured: float) -> float:
    """Nothing measured at all is as far off as can be."""
    return true / measured if measured > 0.0 else 0.0
