"""An edge sawn to a line of straight stretches, square through the thickness."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, reaching
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class ShapedEdge:
    """Takes off what lies beyond ``line`` toward the far edge, or toward the face edge.

    ``line`` are at least two points (x, y) in mm in the order of x; its first and last stretch are
    carried on to the ends of the blank and past them.
    """

    line: tuple[Vec2, ...]
    far: bool

    @property
    def title(self) -> str:
        return "shaped edge"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        start = reaching(-OVERRUN, self.line[1], self.line[0])
        end = reaching(blank.length + OVERRUN, self.line[-2], self.line[-1])
        inner = (start, *self.line[1:-1], end)
        ys = [y for _, y in inner]
        air = max(blank.width, *ys) if self.far else min(0.0, *ys)
        air += OVERRUN if self.far else -OVERRUN
        path = Path.polygon((*inner, (end[0], air), (start[0], air)))
        return (Prism(path, -OVERRUN, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None of its own: it is part of the outline."""
        return ()
