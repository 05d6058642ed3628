"""A part as a maker marks it out: its cuts, and the corners they leave on the finished solid.

Frame: the part's own (x along the grain, y from the face edge, z from the face side), mm.

Method: every wall that a cut leaves is looked up among the corners of the solid, so only what is
really there is marked.  Chamfers and the like are left off: sizes run to the corners as they were
before them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from geometry.design.part import Shape
from geometry.primitives.frame import Vec2
from geometry.sheets.waste import Side, Waste, inner_sides, wastes
from geometry.solids.cutting import solid_of

NEAR = 0.02  # mm: a wall and a corner nearer than this belong together
_LONG = 0.6  # of the length: a cut that runs farther works along the piece
_TENON = "tenon"  # the title of the cuts that leave one
_KEPT = 256  # shapes of one bench and the one before
_ARRIS = 0.75  # of the thickness: a tilted cut shallower than this only breaks an arris


@dataclass(frozen=True, slots=True)
class Wall:
    """A side of a region of waste as it stands on the finished part: end points, and its height."""

    start: Vec2
    end: Vec2
    drawn: Side  # as the cut alone would leave it

    @property
    def across(self) -> bool:
        """Runs straight across the grain."""
        return abs(self.start[0] - self.end[0]) < NEAR

    @property
    def along(self) -> bool:
        """Runs straight along the grain."""
        return abs(self.start[1] - self.end[1]) < NEAR

    @property
    def steep(self) -> bool:
        """Nearer to across than to along."""
        return abs(self.start[0] - self.end[0]) < abs(self.start[1] - self.end[1])


class MarkedPart:
    """The cuts of a shape without chamfers, and the solid that they make."""

    def __init__(self, shape: Shape) -> None:
        self.blank = shape.blank
        self.cuts, marked = _without_arrises(shape)
        self.corners: NDArray[np.float64] = solid_of(marked).vertices
        self.low = tuple(float(c) for c in self.corners.min(axis=0))
        self.high = tuple(float(c) for c in self.corners.max(axis=0))

    def walls(self, region: Sequence[Vec2], z: float | None) -> list[Wall]:
        """The cut-in sides of a region, each as long as it is on the finished part."""
        corners = self.corners
        if z is not None:
            corners = corners[np.abs(corners[:, 2] - z) < NEAR]
        walls: list[Wall] = []
        for a, b in inner_sides(region, self.blank):
            run = np.array(b) - np.array(a)
            size = float(np.hypot(*run))
            way = run / size
            off = corners[:, :2] - np.array(a)
            t = off @ way
            on = np.abs(off[:, 0] * way[1] - off[:, 1] * way[0]) < NEAR
            on &= (t > -NEAR) & (t < size + NEAR)
            if on.sum() >= 2 and float(np.ptp(t[on])) > NEAR:
                first = corners[on][int(t[on].argmin())]
                last = corners[on][int(t[on].argmax())]
                start, end = ((float(p[0]), float(p[1])) for p in (first, last))
                walls.append(Wall(start, end, (a, b)))
        return walls

    def edge_ends(self, far: bool) -> tuple[Vec2, Vec2]:
        """The first and last corner of the near or the far half of the face, (x, y)."""
        middle = (self.low[1] + self.high[1]) / 2.0
        half = self.corners[(self.corners[:, 1] > middle) == far]
        first, last = half[int(half[:, 0].argmin())], half[int(half[:, 0].argmax())]
        return (float(first[0]), float(first[1])), (float(last[0]), float(last[1]))

    def shoulders(self, far: bool) -> tuple[Vec2, Vec2]:
        """The first and last corner of the arrises of the near or the far edge, (x, y): where a
        tenon goes on beyond those, the corners of its shoulders."""
        edge = self.high[1] if far else self.low[1]
        on_edge = np.abs(self.corners[:, 1] - edge) < NEAR
        on_face = (np.abs(self.corners[:, 2:] - (self.low[2], self.high[2])) < NEAR).any(axis=1)
        on = self.corners[on_edge & on_face]
        if not len(on):
            return self.edge_ends(far)
        first, last = on[int(on[:, 0].argmin())], on[int(on[:, 0].argmax())]
        return (float(first[0]), float(first[1])), (float(last[0]), float(last[1]))

    @property
    def slanted_shoulders(self) -> bool:
        """Whether tenons at both ends have shoulders that slant on the face: then the piece is set
        out from those, as no square mark goes through a tenon's tip."""
        both = [self.shoulders(far) for far in (False, True)]
        if not all(self._is_shoulder(corner) for corners in both for corner in corners):
            return False
        return abs(both[0][0][0] - both[1][0][0]) > NEAR

    def _is_shoulder(self, corner: Vec2) -> bool:
        """Whether a tenon goes on beyond the corner of an edge, at the left or the right end."""
        x, _ = corner
        if min(abs(x - self.low[0]), abs(x - self.high[0])) < NEAR:
            return False
        for waste in self.cuts:
            xs = [at for at, _ in (*waste.low, *waste.high)]
            if waste.title == _TENON and min(xs) - NEAR < x < max(xs) + NEAR:
                return True
        return False

    def is_through(self, waste: Waste) -> bool:
        return waste.z_low < NEAR and waste.z_high > self.blank.thickness - NEAR

    def is_long(self, waste: Waste) -> bool:
        xs = [x for x, _ in (*waste.low, *waste.high)]
        return max(xs) - min(xs) > _LONG * self.blank.length


@lru_cache(maxsize=_KEPT)
def marked_part(shape: Shape) -> MarkedPart:
    """The marked part of a shape, kept while its pages are drawn."""
    return MarkedPart(shape)


def _without_arrises(shape: Shape) -> tuple[list[Waste], Shape]:
    """The waste of all cuts but chamfers and the like, and the shape with those cuts alone."""
    kept = [
        waste
        for waste in wastes(shape)
        if waste.flat
        or waste.upright
        or (waste.low and waste.high)
        or waste.z_high - waste.z_low > _ARRIS * shape.blank.thickness
    ]
    numbers = {waste.number for waste in kept}
    cuts = tuple(cut for number, cut in enumerate(shape.cuts, start=1) if number in numbers)
    return kept, Shape(shape.blank, cuts)
