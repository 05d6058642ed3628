"""A rebate: a rectangular step along an edge, through or stopped."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism, Removal
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
        path = Path.rectangle(
            past(self.x_low, 0.0, blank.length),
            past(self.y_low, 0.0, blank.width),
            past(self.x_high, 0.0, blank.length),
            past(self.y_high, 0.0, blank.width),
        )
        if self.face is Face.FACE_SIDE:
            return (Prism(path, -OVERRUN, self.depth),)
        return (Prism(path, blank.thickness - self.depth, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        path = Path.rectangle(self.x_low, self.y_low, self.x_high, self.y_high)
        return (Contour(Operation.POCKET, self.face, path, self.depth, runs_out=True),)
