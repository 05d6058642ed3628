"""A rebate: a rectangular step along an edge, through or stopped."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.pocket import pocket
from geometry.cuts.removal import Removal
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class Rebate:
    """Over the rectangle x_low..x_high, y_low..y_high of a face, ``depth`` deep; all in mm.

    Where the rectangle reaches the blank's edge the rebate runs out of it.
    """

    x_low: float
    x_high: float
    y_low: float
    y_high: float
    depth: float
    face: Face = Face.FACE_SIDE

    @property
    def title(self) -> str:
        return "rebate"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        x, y = (self.x_low, self.x_high), (self.y_low, self.y_high)
        return (pocket(blank, self.face, self.depth, x, y),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        path = Path.rectangle(self.x_low, self.y_low, self.x_high, self.y_high)
        return (Contour(Operation.POCKET, self.face, path, self.depth, runs_out=True),)
