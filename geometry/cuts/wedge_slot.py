"""A slot in the end of a tenon, as wide as the wedge that will be driven into it."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.overrun import OVERRUN
from geometry.cuts.removal import Hull, Removal
from geometry.primitives.frame import Vec3, add, scale


@dataclass(frozen=True, slots=True)
class WedgeSlot:
    """Two planes that meet in a line across the tenon and open toward the end that it is on.

    ``root`` is the middle of that line, ``along`` its unit direction and ``half_span`` half of it;
    ``spread`` is the unit direction across the slot, square to the grain (x) and to ``along``.
    ``slope`` is half the slot's width for each mm from the root.  ``at_start`` is True for a tenon
    at the x = 0 end.  All in mm.
    """

    root: Vec3
    along: Vec3
    half_span: float
    spread: Vec3
    slope: float
    at_start: bool = True

    @property
    def title(self) -> str:
        return "wedge slot"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        run = (self.root[0] if self.at_start else blank.length - self.root[0]) + OVERRUN
        mouth = add(self.root, (-run if self.at_start else run, 0.0, 0.0))
        span = self.half_span + OVERRUN
        corners = []
        for side in (-span, span):
            corners.append(add(self.root, scale(self.along, side)))
            for half in (-run * self.slope, run * self.slope):
                corners.append(add(mouth, add(scale(self.along, side), scale(self.spread, half))))
        return (Hull(tuple(corners)),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        """None: it is sawn in the end of the tenon."""
        return ()
