"""A round hole bored square into a face, to a depth or right through."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.path import HALF_TURN_BULGE, Path


@dataclass(frozen=True, slots=True)
class Bore:
    """With its middle at (``x``, ``y``) of a face, ``diameter`` wide and ``depth`` deep; mm."""

    x: float
    y: float
    diameter: float
    depth: float
    face: Face = Face.FACE_SIDE

    @property
    def title(self) -> str:
        return "bore"

    def path(self) -> Path:
        """The circle."""
        r = self.diameter / 2.0
        return Path(
            (
                (self.x + r, self.y, HALF_TURN_BULGE),
                (self.x - r, self.y, HALF_TURN_BULGE),
            )
        )

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        deep = past(self.depth, 0.0, blank.thickness)
        if self.face is Face.FACE_SIDE:
            return (Prism(self.path(), -OVERRUN, deep),)
        return (Prism(self.path(), blank.thickness - deep, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        if past(self.depth, 0.0, blank.thickness) > blank.thickness:
            return (Contour(Operation.INSIDE, self.face, self.path()),)
        return (Contour(Operation.POCKET, self.face, self.path(), self.depth),)
