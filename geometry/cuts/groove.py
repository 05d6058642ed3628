"""A groove: a square channel in a face, along the grain or across it, through or stopped."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.pocket import pocket
from geometry.cuts.removal import Removal
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class Groove:
    """Over x_low..x_high, y_low..y_high of a face, ``depth`` deep, its ends square; all in mm.

    An end that reaches the blank's own end or edge runs out there; the others are stopped.
    """

    x_low: float
    x_high: float
    y_low: float
    y_high: float
    depth: float
    face: Face = Face.FACE_SIDE

    @property
    def title(self) -> str:
        return "groove"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        x, y = (self.x_low, self.x_high), (self.y_low, self.y_high)
        return (pocket(blank, self.face, self.depth, x, y),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        path = Path.rectangle(self.x_low, self.y_low, self.x_high, self.y_high)
        runs_out = (
            min(self.x_low, self.y_low) <= COPLANAR
            or self.x_high >= blank.length - COPLANAR
            or self.y_high >= blank.width - COPLANAR
        )
        return (Contour(Operation.POCKET, self.face, path, self.depth, runs_out=runs_out),)
