"""A hole for a screw, right through a piece at any slant, its far part wide enough for the head."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, cross

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

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: it is bored at the drill, square to the face that the piece is fixed by."""
        return ()
