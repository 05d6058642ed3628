"""A mortise with round ends, as a router or a slot mortiser leaves it, in any face of a piece."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, add, cross, scale

_SQUARE = 1e-9


@dataclass(frozen=True, slots=True)
class SlotMortise:
    """Its mouth round ``middle``, ``width`` along the unit direction ``along`` over its round ends,
    ``thickness`` across it, ``depth`` along the unit direction ``into``.  All in mm."""

    middle: Vec3
    into: Vec3
    along: Vec3
    width: float
    thickness: float
    depth: float

    @property
    def title(self) -> str:
        return "slot mortise"

    @property
    def frame(self) -> Frame:
        """At the mouth's middle: x along, z into the wood."""
        return Frame(self.middle, self.along, cross(self.into, self.along), self.into)

    def hollow(self, beyond: float = 0.0) -> Prism:
        """What it takes out of the wood, and of the air ``beyond`` its mouth."""
        return Prism(stadium(self.width, self.thickness), -beyond, self.depth, self.frame)

    def box(self) -> tuple[Vec3, ...]:
        """The eight corners of the box round it."""
        across = cross(self.into, self.along)
        return tuple(
            add(
                self.middle,
                add(
                    add(
                        scale(self.along, i * self.width / 2.0),
                        scale(across, j * self.thickness / 2.0),
                    ),
                    scale(self.into, k * self.depth),
                ),
            )
            for i in (-1.0, 1.0)
            for j in (-1.0, 1.0)
            for k in (0.0, 1.0)
        )

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        return (self.hollow(OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """The slot of one that is square to a face; one in an edge or a mitre draws none."""
        if abs(abs(self.into[2]) - 1.0) > _SQUARE:
            return ()
        face = Face.FACE_SIDE if self.into[2] > 0.0 else Face.REVERSE
        (x, y, _), (dx, dy, _) = self.middle, self.along
        path = stadium(self.width, self.thickness, (x, y), (dx, dy))
        return (Contour(Operation.POCKET, face, path, self.depth),)
