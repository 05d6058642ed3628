"""A bevel along part of the far edge: the blade tilted, the cut stopped at a station."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class StoppedBevel:
    """From ``x_low`` to ``x_high`` the far edge leans from ``y_face`` (z = 0) to ``y_reverse``.

    The deeper of the two lies on the blank's own far edge.  All in mm.
    """

    x_low: float
    x_high: float
    y_face: float
    y_reverse: float

    @property
    def title(self) -> str:
        return "bevel"

    def tilt_deg(self, blank: Blank) -> float:
        """Blade tilt from square."""
        return math.degrees(math.atan(abs(self.y_reverse - self.y_face) / blank.thickness))

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        slope = (self.y_reverse - self.y_face) / blank.thickness
        low, high = past(self.x_low, 0.0, blank.length), past(self.x_high, 0.0, blank.length)
        below, above = self.y_face - slope * OVERRUN, self.y_reverse + slope * OVERRUN
        air = max(self.y_face, self.y_reverse, blank.width) + abs(slope) * OVERRUN + OVERRUN
        corners = tuple(
            (x, y, z)
            for x in (low, high)
            for y, z in (
                (below, -OVERRUN),
                (above, blank.thickness + OVERRUN),
                (air, -OVERRUN),
                (air, blank.thickness + OVERRUN),
            )
        )
        return (Hull(corners),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The bevel's line on the face where it bites deeper."""
        if self.y_face < self.y_reverse:
            face, y = Face.FACE_SIDE, self.y_face
        else:
            face, y = Face.REVERSE, self.y_reverse
        line = Path.line((self.x_low, y), (self.x_high, y))
        return (Contour(Operation.SAW_LINE, face, line, tilt_deg=self.tilt_deg(blank)),)
