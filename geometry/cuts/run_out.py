"""A run-out in plan: an edge sawn square along a line that is not parallel to the grain."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN, reaching
from geometry.cuts.removal import Prism, Removal
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True)
class RunOut:
    """Takes off what lies beyond the line through ``knees`` toward the far edge (high y).

    ``knees`` are points (x, y) in mm in the order of x, the first and last on the ends or the far
    edge of the blank.
    """

    knees: tuple[Vec2, ...]

    @property
    def title(self) -> str:
        return "run-out"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        first, last = self.knees[0], self.knees[-1]
        far = blank.width + OVERRUN
        start = first if first[0] > COPLANAR else reaching(-OVERRUN, self.knees[1], first)
        end = (
            last
            if last[0] < blank.length - COPLANAR
            else reaching(blank.length + OVERRUN, self.knees[-2], last)
        )
        inner = (start, *self.knees[1:-1], end)
        path = Path.polygon((*inner, (end[0], far), (start[0], far)))
        return (Prism(path, -OVERRUN, blank.thickness + OVERRUN),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None of its own: a run-out is part of the outline."""
        return ()
