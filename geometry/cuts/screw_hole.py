"""A hole for a screw, right through a piece at any slant, its far part wide enough for the head."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, cross
from geometry.primitives.path import Path

_SQUARE = 1e-9
_NEARLY_SQUARE = 0.9  # cosine to a face: where a leaning hole is marked on it
_ARM = 4.0  # mm, half of the cross that marks it
_LAP = 1.0  # mm that the narrow part runs on into the wide one, so that no skin stays between


@dataclass(frozen=True, slots=True)
class ScrewHole:
    """From ``mouth``, where the screw leaves the piece, along the unit direction ``into``; mm.

    ``shank`` wide over ``land``, then ``head`` wide to ``depth``, beyond the far side.  ``toward``
    is a unit direction square to ``into``, in which the flattened circle has a corner.
    """

    mouth: Vec3
    into: Vec3
    toward: Vec3
    shank: float
    land: float
    head: float
    depth: float

    @property
    def title(self) -> str:
        return "screw hole"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        frame = Frame(self.mouth, self.toward, cross(self.into, self.toward), self.into)
        return (
            Prism(stadium(self.shank, self.shank), -OVERRUN, self.land + _LAP, frame),
            Prism(stadium(self.head, self.head), self.land, self.depth + OVERRUN, frame),
        )

    @property
    def leans(self) -> bool:
        """Whether it is square neither to the face nor to an edge or an end."""
        return max(abs(one) for one in self.into) < 1.0 - _SQUARE

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """Of one square to a face its circle, and from the other face the room for the head.  One
        that leans is bored at the drill: a cross where it leaves the face that it leans least from
        square to.  One in an edge or an end draws none."""
        if abs(self.into[2]) < _NEARLY_SQUARE:
            return ()
        x, y, _ = self.mouth
        face, other = Face.FACE_SIDE, Face.REVERSE
        if self.into[2] < 0.0:
            face, other = other, face
        if self.leans:
            arms = (((x - _ARM, y), (x + _ARM, y)), ((x, y - _ARM), (x, y + _ARM)))
            return tuple(Contour(Operation.SCRIBE, face, Path.line(*arm)) for arm in arms)
        hole = Contour(Operation.INSIDE, face, stadium(self.shank, self.shank, (x, y)))
        if self.land >= blank.thickness:
            return (hole,)
        head = stadium(self.head, self.head, (x, y))
        return (hole, Contour(Operation.POCKET, other, head, blank.thickness - self.land))
