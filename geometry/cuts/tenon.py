"""A tenon on the end of a piece: both cheeks sawn away down to an angled shoulder."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class Tenon:
    """What stays between ``z_low`` and ``z_high`` beyond a shoulder that runs from edge to edge.

    ``shoulder_face_edge`` is the x of the shoulder at y = 0, ``shoulder_far_edge`` its x at y = the
    blank's width.  ``at_start`` is True for a tenon at the x = 0 end.  All in mm.
    """

    shoulder_face_edge: float
    shoulder_far_edge: float
    z_low: float
    z_high: float
    at_start: bool

    @property
    def title(self) -> str:
        return "tenon"

    def shoulder(self, blank: Blank, beyond: float = 0.0) -> tuple[Vec2, Vec2]:
        """The shoulder line on the face, from the face edge to the far edge."""
        slope = (self.shoulder_far_edge - self.shoulder_face_edge) / blank.width
        return (
            (self.shoulder_face_edge - slope * beyond, -beyond),
            (self.shoulder_far_edge + slope * beyond, blank.width + beyond),
        )

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        near, far = self.shoulder(blank, OVERRUN)
        end = -OVERRUN if self.at_start else blank.length + OVERRUN
        path = Path.polygon(((end, near[1]), near, far, (end, far[1])))
        return (
            Prism(path, -OVERRUN, self.z_low),
            Prism(path, self.z_high, blank.thickness + OVERRUN),
        )

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        line = Path.line(*self.shoulder(blank))
        return (
            Contour(Operation.SCRIBE, Face.FACE_SIDE, line),
            Contour(Operation.SCRIBE, Face.REVERSE, line),
        )
