"""A round hole bored into a piece anywhere: an end, along its grain or at a slant, or a face."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, cross

_SQUARE = 1e-9


@dataclass(frozen=True, slots=True)
class EndBore:
    """From ``middle`` along the unit direction ``into``, ``depth`` deep; mm.

    ``toward`` is a unit direction square to it, in which the flattened circle has a corner.
    """

    middle: Vec3
    into: Vec3
    toward: Vec3
    diameter: float
    depth: float

    @property
    def title(self) -> str:
        return "bore"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        frame = Frame(self.middle, self.toward, cross(self.into, self.toward), self.into)
        return (Prism(stadium(self.diameter, self.diameter), -OVERRUN, self.depth, frame),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """The circle of one that goes square into a face; one in an edge or an end draws none."""
        if abs(abs(self.into[2]) - 1.0) > _SQUARE:
            return ()
        x, y, z = self.middle
        face, deep = Face.FACE_SIDE, z + self.depth
        if self.into[2] < 0.0:
            face, deep = Face.REVERSE, blank.thickness - z + self.depth
        circle = stadium(self.diameter, self.diameter, (x, y))
        if deep >= blank.thickness - _SQUARE:
            return (Contour(Operation.INSIDE, face, circle),)
        return (Contour(Operation.POCKET, face, circle, deep),)
