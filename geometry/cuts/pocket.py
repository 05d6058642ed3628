"""A rectangular hollow in a face: what rebates and grooves have in common."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class Pocket:
    """Over x_low..x_high, y_low..y_high of a face, ``depth`` deep, its corners square; all in mm.

    Where it reaches the blank's own end or edge it runs out there.
    """

    x_low: float
    x_high: float
    y_low: float
    y_high: float
    depth: float
    face: Face = Face.FACE_SIDE

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

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        path = Path.rectangle(self.x_low, self.y_low, self.x_high, self.y_high)
        runs_out = (
            min(self.x_low, self.y_low) <= COPLANAR
            or self.x_high >= blank.length - COPLANAR
            or self.y_high >= blank.width - COPLANAR
        )
        return (Contour(Operation.POCKET, self.face, path, self.depth, runs_out=runs_out),)
