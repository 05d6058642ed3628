"""Collects the sizes of a part as dimensions of its views, each size once.

Frame: the dimensions are those of the views PART_FACE (x, -y), PART_EDGE (x, z) and PART_END
(z, -y), mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2
from geometry.sheets.marked_part import NEAR, MarkedPart
from geometry.views.view import PART_FACE, View

LEVEL: Vec2 = (1.0, 0.0)
UPRIGHT: Vec2 = (0.0, 1.0)
_LEAST = 0.1  # mm: nobody marks out less
_ANGLE_RANK = 1


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a dimension stands: its side of the view (0 within it) and its rank outward."""

    side: int
    rank: int


@dataclass(slots=True)
class PartSizes:
    """The dimensions found so far, by what they measure."""

    part: MarkedPart
    found: dict[tuple[object, ...], Dimension] = field(default_factory=dict)

    def along_the_grain(self, start: Vec2, end: Vec2, stand: Stand) -> None:
        """A length on the face between points (x, y) of the part."""
        self.level(PART_FACE, ((start[0], -start[1]), (end[0], -end[1])), stand)

    def level(self, view: View, points: tuple[Vec2, Vec2], stand: Stand) -> None:
        """A distance measured along a view's u, between points (u, v)."""
        self._length(view, 0, points, stand)

    def upright(self, view: View, points: tuple[Vec2, Vec2], stand: Stand) -> None:
        """A distance measured along a view's v, between points (u, v)."""
        self._length(view, 1, points, stand)

    def angle(self, view: View, start: Vec2, end: Vec2) -> None:
        """The slant of a line from the nearer of level and upright, the arc outside the wood."""
        du, dv = abs(end[0] - start[0]), abs(end[1] - start[1])
        if min(du, dv) < NEAR:
            return
        slant = math.degrees(math.atan2(min(du, dv), max(du, dv)))
        left, _, right, _ = self._frame(view)
        at_the_right = start[0] + end[0] > left + right
        key = (view.name, round(slant, 2), at_the_right)
        if key in self.found:
            return
        apex, other = self._outer_first(view, start, end)
        if dv > du:
            square = (apex[0], apex[1] + math.copysign(0.1, other[1] - apex[1]))
        else:
            square = (apex[0] + math.copysign(0.1, other[0] - apex[0]), apex[1])
        name = f"{view.name} angle {len(self.found)}"
        self.found[key] = Dimension(
            name, name, view.name, slant, "deg", square, other, LEVEL, 1, _ANGLE_RANK, apex=apex
        )

    def _length(self, view: View, axis: int, points: tuple[Vec2, Vec2], stand: Stand) -> None:
        start, end = points
        value = abs(end[axis] - start[axis])
        if value < _LEAST:
            return
        direction = (view.right, view.up)[axis]
        of_the_part = max(range(3), key=lambda i: abs(direction[i]))
        ends = sorted((round(start[axis], 2), round(end[axis], 2)))
        key = (of_the_part, *ends)
        if key not in self.found:
            name = f"{view.name} {len(self.found)}"
            along = (LEVEL, UPRIGHT)[axis]
            self.found[key] = Dimension(
                name, name, view.name, value, "mm", start, end, along, stand.side, stand.rank
            )

    def _outer_first(self, view: View, start: Vec2, end: Vec2) -> tuple[Vec2, Vec2]:
        """The two ends of a slanted line, first the one from which square lies in the air."""
        left, bottom, right, top = self._frame(view)
        axis = 0 if abs(end[1] - start[1]) > abs(end[0] - start[0]) else 1
        middle = ((left + right) / 2.0, (bottom + top) / 2.0)[axis]
        outward = abs(start[axis] - middle) >= abs(end[axis] - middle)
        return (start, end) if outward else (end, start)

    def _frame(self, view: View) -> tuple[float, float, float, float]:
        flat = self.part.corners @ np.array((view.right, view.up), dtype=np.float64).T
        (left, bottom), (right, top) = flat.min(axis=0), flat.max(axis=0)
        return (float(left), float(bottom), float(right), float(top))
