"""A notch for the fingers in a far edge: straight below, rounded at its two ends."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.path import QUARTER_TURN_BULGE, Path


@dataclass(frozen=True, slots=True)
class FingerNotch:
    """From ``x_low`` to ``x_high`` of the far edge, ``depth`` down from it; mm.

    Its lower corners are rounded to the depth, or to half the width of a narrow one.
    """

    x_low: float
    x_high: float
    depth: float

    @property
    def title(self) -> str:
        return "finger notch"

    @property
    def radius(self) -> float:
        return min(self.depth, (self.x_high - self.x_low) / 2.0)

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        r, low, high = self.radius, self.x_low, self.x_high
        floor, air = blank.width - self.depth, blank.width + OVERRUN
        path = Path(
            (
                (low, air, 0.0),
                (low, floor + r, QUARTER_TURN_BULGE),
                (low + r, floor, 0.0),
                (high - r, floor, QUARTER_TURN_BULGE),
                (high, floor + r, 0.0),
                (high, air, 0.0),
            )
        )
        return (Prism(path, -OVERRUN, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None of its own: it is part of the outline."""
        return ()
