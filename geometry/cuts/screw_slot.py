"""A slot for a screw, right through a piece, its lower part wide enough for the head to go in."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, cross

_SQUARE = 1e-9
_LAP = 1.0  # mm that the narrow part runs on into the wide one, so that no skin stays between


@dataclass(frozen=True, slots=True)
class ScrewSlot:
    """From the mouth round ``screw`` along ``into``, both in the part's frame; mm.

    The screw may move ``before`` against the unit direction ``along`` and ``after`` along it.  The
    slot is ``width`` wide over ``land``, then ``head`` wide down to ``depth``, the far side; a land
    as deep as the piece has no wider part.
    """

    screw: Vec3
    into: Vec3
    along: Vec3
    before: float
    after: float
    width: float
    land: float
    head: float
    depth: float

    @property
    def title(self) -> str:
        return "screw slot"

    @property
    def length(self) -> float:
        """Over its round ends."""
        return self.before + self.after + self.width

    @property
    def counterbored(self) -> bool:
        return self.land < self.depth

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        frame = Frame(self.screw, self.along, cross(self.into, self.along), self.into)
        middle = ((self.after - self.before) / 2.0, 0.0)
        slot = stadium(self.length, self.width, middle)
        if not self.counterbored:
            return (Prism(slot, -OVERRUN, self.depth + OVERRUN, frame),)
        wide = stadium(self.length - self.width + self.head, self.head, middle)
        low = min(self.land + _LAP, self.depth)
        return (
            Prism(slot, -OVERRUN, low, frame),
            Prism(wide, self.land, self.depth + OVERRUN, frame),
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """The slot of one that is square to a face, and from the other face the room for the head;
        one in an edge draws none."""
        if abs(abs(self.into[2]) - 1.0) > _SQUARE:
            return ()
        face, other = Face.FACE_SIDE, Face.REVERSE
        if self.into[2] < 0.0:
            face, other = other, face
        shift = (self.after - self.before) / 2.0
        (x, y, _), (dx, dy, _) = self.screw, self.along
        middle, along = (x + shift * dx, y + shift * dy), (dx, dy)
        slot = Contour(Operation.INSIDE, face, stadium(self.length, self.width, middle, along))
        if not self.counterbored:
            return (slot,)
        wide = stadium(self.length - self.width + self.head, self.head, middle, along)
        return (slot, Contour(Operation.POCKET, other, wide, self.depth - self.land))
