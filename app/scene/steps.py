"""The step a drag snaps to: a round size that is a few pixels long on the screen.

Far out a drag snaps to the centimetre or the half inch; zoomed in it snaps to the finest step
that the maker's unit shows.  The arrow keys always use the finest.
"""

from __future__ import annotations

from shared.units import MM_PER_INCH, Shown

FEWEST_PIXELS = 1.5
BIG_STEPS = 10.0

_INCH_LADDER = (1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1.0, 2.0)
_MM_LADDER = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)


def finest_step(unit: str, own_step: float, shown: Shown) -> float:
    """The step of an arrow key, in mm or degrees; ``own_step`` is the parameter's."""
    if unit == "mm" and shown.unit == "in":
        return MM_PER_INCH / shown.denominator
    return own_step


def drag_step(unit: str, own_step: float, shown: Shown, pixels_per_mm: float) -> float:
    """The step of a drag; ``pixels_per_mm`` is window pixels to the mm of the bench."""
    finest = finest_step(unit, own_step, shown)
    if unit != "mm":
        return finest
    ladder = (
        [MM_PER_INCH * rung for rung in _INCH_LADDER]
        if shown.unit == "in"
        else [own_step * rung for rung in _MM_LADDER]
    )
    for rung in ladder:
        if rung >= finest and rung * pixels_per_mm >= FEWEST_PIXELS:
            return rung
    return ladder[-1]
