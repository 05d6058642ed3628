"""A round hole bored into the end of a piece, along its grain or at a slant to it."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.stadium import stadium
from geometry.primitives.frame import Frame, Vec3, cross


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

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: it is in an end."""
        return ()
