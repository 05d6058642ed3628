"""An open mortise: a slot in the end of a piece, through from edge to edge."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class OpenMortise:
    """Open at the x = 0 end, down to a floor that runs from edge to edge.

    ``floor_face_edge`` is the x of the floor at y = 0, ``floor_far_edge`` its x at y = the blank's
    width, so an angled floor is one straight line.  The slot lies between ``z_low`` and
    ``z_high``.  All in mm.
    """

    floor_face_edge: float
    floor_far_edge: float
    z_low: float
    z_high: float

    @property
    def title(self) -> str:
        return "open mortise"

    def floor(self, blank: Blank, beyond: float = 0.0) -> tuple[Vec2, Vec2]:
        """The floor line on the face, from the face edge to the far edge."""
        slope = (self.floor_far_edge - self.floor_face_edge) / blank.width
        return (
            (self.floor_face_edge - slope * beyond, -beyond),
            (self.floor_far_edge + slope * beyond, blank.width + beyond),
        )

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        near, far = self.floor(blank, OVERRUN)
        path = Path.polygon(((-OVERRUN, near[1]), near, far, (-OVERRUN, far[1])))
        return (Prism(path, self.z_low, self.z_high),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        line = Path.line(*self.floor(blank))
        return (Contour(Operation.SCRIBE, Face.FACE_SIDE, line),)
