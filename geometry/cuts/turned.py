"""A turned piece: from a square blank, round sections one after another along its axis."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import SECTION_FRAME, Prism, Removal
from geometry.primitives.path import QUARTER_TURN_BULGE, Path

_RUN_ON = 1.0  # mm
_TOUCH = 1e-7  # mm that a circle keeps inside the blank's faces
_LAP = 0.25  # of the radius: how far the two halves of a ring run into one another


@dataclass(frozen=True, slots=True)
class Section:
    """From ``x_low`` to ``x_high`` the piece is round, of this ``radius``; mm."""

    x_low: float
    x_high: float
    radius: float


@dataclass(frozen=True, slots=True)
class Turned:
    """The blank's axis is the middle of its width and thickness, which are the same."""

    sections: tuple[Section, ...]

    @property
    def title(self) -> str:
        return "turned"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        found = []
        for k, section in enumerate(self.sections):
            low, high = section.x_low - _RUN_ON, section.x_high + _RUN_ON
            # Into a thinner section a ring may run on, so that no skin stays between the two.
            if k > 0 and self.sections[k - 1].radius >= section.radius:
                low = section.x_low
            if k + 1 < len(self.sections) and self.sections[k + 1].radius >= section.radius:
                high = section.x_high
            found += [
                Prism(path, low, high, SECTION_FRAME) for path in _ring(blank.width, section.radius)
            ]
        return tuple(found)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: it is turned, not cut along a line."""
        return ()


def _ring(width: float, radius: float) -> tuple[Path, Path]:
    """What lies outside the circle, as two halves that overlap, counter-clockwise."""
    middle = width / 2.0
    # One as wide as the blank would only touch its faces, which leaves lines of no wood at all.
    radius = min(radius, middle - _TOUCH)
    lap = _LAP * radius
    rise = math.sqrt(radius * radius - lap * lap)
    over = -math.tan(math.asin(_LAP) / 4.0)
    out, far = -OVERRUN, width + OVERRUN
    low = (
        (out, out, 0.0),
        (middle + lap, out, 0.0),
        (middle + lap, middle - rise, over),
        (middle, middle - radius, -QUARTER_TURN_BULGE),
        (middle - radius, middle, -QUARTER_TURN_BULGE),
        (middle, middle + radius, over),
        (middle + lap, middle + rise, 0.0),
        (middle + lap, far, 0.0),
        (out, far, 0.0),
    )
    turned = tuple((width - x, width - y, b) for x, y, b in low)
    return Path(low), Path(turned)
