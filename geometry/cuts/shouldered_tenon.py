"""A tenon with shoulders all round: what stays of an end beyond a shoulder in one plane.

The shoulder may be square, mitred across the face, tilted through the thickness, or both; the
tenon's cheeks and edges run parallel to the grain whatever the shoulder does.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path

Range = tuple[float, float]


@dataclass(frozen=True, slots=True)
class ShoulderedTenon:
    """What lies within ``y_low``..``y_high`` and ``z_low``..``z_high`` stays beyond the shoulder.

    The shoulder is the plane x = ``shoulder`` + ``slope_y`` y + ``slope_z`` z.  ``at_start`` is
    True for a tenon at the x = 0 end.  A side of the tenon that reaches the blank's own face or
    edge has no shoulder there.  All in mm.
    """

    shoulder: float
    slope_y: float
    slope_z: float
    y_low: float
    y_high: float
    z_low: float
    z_high: float
    at_start: bool

    @property
    def title(self) -> str:
        return "tenon"

    @property
    def swing_deg(self) -> float:
        """How far the shoulder is turned from square across the grain, seen on the face."""
        return math.degrees(math.atan(abs(self.slope_y)))

    @property
    def tilt_deg(self) -> float:
        """Blade tilt from square that saws the shoulder, with the board flat on its face."""
        run = math.sqrt(1.0 + self.slope_y**2 + self.slope_z**2)
        return math.degrees(math.asin(abs(self.slope_z) / run))

    def x_at(self, y: float, z: float) -> float:
        """The shoulder's x."""
        return self.shoulder + self.slope_y * y + self.slope_z * z

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        ys, zs = (-OVERRUN, blank.width + OVERRUN), (-OVERRUN, blank.thickness + OVERRUN)
        sides: list[tuple[Range, Range]] = []
        if self.y_low > 0.0:
            sides.append(((ys[0], self.y_low), zs))
        if self.y_high < blank.width:
            sides.append(((self.y_high, ys[1]), zs))
        if self.z_low > 0.0:
            sides.append((ys, (zs[0], self.z_low)))
        if self.z_high < blank.thickness:
            sides.append((ys, (self.z_high, zs[1])))
        return tuple(self._beyond(blank, y, z) for y, z in sides)

    def _beyond(self, blank: Blank, ys: Range, zs: Range) -> Hull:
        corners = [(self.x_at(y, z), y, z) for y in ys for z in zs]
        if self.at_start:
            end = min(0.0, *(x for x, _, _ in corners)) - OVERRUN
        else:
            end = max(blank.length, *(x for x, _, _ in corners)) + OVERRUN
        return Hull((*corners, *((end, y, z) for _, y, z in corners)))

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The shoulder line on both faces."""
        return tuple(
            Contour(Operation.SCRIBE, face, Path.line(*self.shoulder_line(blank, z)))
            for face, z in ((Face.FACE_SIDE, 0.0), (Face.REVERSE, blank.thickness))
        )

    def shoulder_line(self, blank: Blank, z: float) -> tuple[Vec2, Vec2]:
        """Where the shoulder crosses the board at height ``z``, from edge to edge."""
        return (self.x_at(0.0, z), 0.0), (self.x_at(blank.width, z), blank.width)
