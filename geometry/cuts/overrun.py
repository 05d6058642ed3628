"""How far a cutter runs past the wood, so that no skin of zero thickness is left behind."""

from __future__ import annotations

from geometry.primitives.frame import Vec2
from shared.tolerances import COPLANAR

OVERRUN = 2.0  # mm beyond a face or edge; only ever in air
# mm by which two cuts run into one another, so that no skin stays between them: ten times what
# counts as one plane, a tenth of what a drawing tells apart.
LAP = 1e-5


def past(value: float, low: float, high: float) -> float:
    """``value``, or a point in the air beyond it where it lies on the blank's own boundary.

    A value that rounding has left a hair inside the boundary lies on it: a cut up to there would
    leave that hair standing.
    """
    if value <= low + COPLANAR:
        return low - OVERRUN
    if value >= high - COPLANAR:
        return high + OVERRUN
    return value


def reaching(x: float, inner: Vec2, end: Vec2) -> Vec2:
    """The line from ``inner`` through ``end``, carried on to ``x``."""
    rise = (end[1] - inner[1]) / (end[0] - inner[0])
    return (x, end[1] + rise * (x - end[0]))
