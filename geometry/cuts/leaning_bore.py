"""A round hole right through a board, leaning or square to it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Frame, Vec2, Vec3, cross, unit
from geometry.primitives.path import HALF_TURN_BULGE, Path

_SQUARE = 1e-9


@dataclass(frozen=True, slots=True)
class LeaningBore:
    """Through the board along ``axis`` (a unit vector toward the reverse), ``radius`` in mm.

    ``start`` is where the axis meets the face ``face``, from which it is bored.  ``toward`` is a
    unit direction square to the axis in which the flattened circle has a corner.
    """

    start: Vec3
    axis: Vec3
    radius: float
    face: Face
    toward: Vec3

    @property
    def title(self) -> str:
        return "leaning bore"

    @property
    def leans(self) -> bool:
        """Whether it is not square to the face."""
        return math.hypot(self.axis[0], self.axis[1]) > _SQUARE

    @property
    def tilt_deg(self) -> float:
        """Of the bit from square to the face."""
        return math.degrees(math.acos(min(1.0, abs(self.axis[2]))))

    @property
    def sightline_deg(self) -> float:
        """From square across the board to the line on the face along which it leans."""
        return math.degrees(math.atan2(abs(self.axis[0]), abs(self.axis[1])))

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        frame = Frame(self.start, self.toward, cross(self.axis, self.toward), self.axis)
        r = self.radius
        circle = Path(((r, 0.0, HALF_TURN_BULGE), (-r, 0.0, HALF_TURN_BULGE)))
        # From one face to the other along the axis, and out of the wood all round.
        reach = blank.thickness / abs(self.axis[2])
        past = r * math.tan(math.radians(self.tilt_deg)) + OVERRUN
        low, high = (0.0, reach) if self.face is Face.FACE_SIDE else (-reach, 0.0)
        return (Prism(circle, low - past, high + past, frame),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """A square hole's circle; of a slanting one its centre and its sightline, to bore by."""
        x, y, _ = self.start
        r = self.radius
        if not self.leans:
            circle = Path(((x + r, y, HALF_TURN_BULGE), (x - r, y, HALF_TURN_BULGE)))
            return (Contour(Operation.INSIDE, self.face, circle),)
        u, v, _ = unit((self.axis[0], self.axis[1], 0.0))
        lines: tuple[tuple[Vec2, Vec2], ...] = (
            ((x - 2.0 * r * u, y - 2.0 * r * v), (x + 2.0 * r * u, y + 2.0 * r * v)),
            ((x + r * v, y - r * u), (x - r * v, y + r * u)),
        )
        return tuple(Contour(Operation.SCRIBE, self.face, Path.line(*ends)) for ends in lines)
