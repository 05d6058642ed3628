"""A shallow mortise for the leaf of a hinge, open at the edge or the face that the pin lies on."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class HingeMortise:
    """Everything within ``x``, ``y`` and ``z``, each a low and a high bound in mm.

    Where a bound lies on the blank's own face, edge or end the mortise is open there.
    """

    x: Vec2
    y: Vec2
    z: Vec2

    @property
    def title(self) -> str:
        return "hinge mortise"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        path = Path.rectangle(
            past(self.x[0], 0.0, blank.length),
            past(self.y[0], 0.0, blank.width),
            past(self.x[1], 0.0, blank.length),
            past(self.y[1], 0.0, blank.width),
        )
        low = -OVERRUN if self.z[0] <= COPLANAR else self.z[0]
        thick = blank.thickness
        high = thick + OVERRUN if self.z[1] >= thick - COPLANAR else self.z[1]
        return (Prism(path, low, high),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """Its outline on the face that it is open to; none for one in an edge alone."""
        path = Path.rectangle(self.x[0], self.y[0], self.x[1], self.y[1])
        deep = self.z[1] - self.z[0]
        if self.z[0] <= COPLANAR:
            return (Contour(Operation.POCKET, Face.FACE_SIDE, path, deep, runs_out=True),)
        if self.z[1] >= blank.thickness - COPLANAR:
            return (Contour(Operation.POCKET, Face.REVERSE, path, deep, runs_out=True),)
        return ()
