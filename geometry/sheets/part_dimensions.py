"""The dimensions of a part by itself, taken from its cuts and checked on its solid.

Frame: the part's own (x along the grain, y from the face edge, z from the face side), mm; the
dimensions are those of the views PART_FACE (x, -y), PART_EDGE (x, z) and PART_END (z, -y).

Method: every wall that a cut leaves is looked up among the corners of the finished solid, so only
what is really there is dimensioned.  Lengths run from the corner of the edge they are measured
along, widths from the face edge, depths from the face side; what runs out at an end is measured
from that end.  A slanted wall gets its angle from the nearer of square and parallel.  A cut that
works along most of the piece is shown in the end view, a tilted one where its slope is seen.
Chamfers are left to the table of cuts, and sizes run to the corners as they were before them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.design.part import Shape
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2
from geometry.sheets.waste import Side, Waste, inner_sides, wastes
from geometry.solids.cutting import solid_of
from geometry.views.view import PART_EDGE, PART_END, PART_FACE, View

_NEAR = 0.02  # mm: a wall and a corner nearer than this belong together
_LEAST = 0.1  # mm: nobody marks out less
_LONG = 0.6  # of the length: a cut that runs farther is shown in the end view
_ARRIS = 0.75  # of the thickness: a tilted cut shallower than this only breaks an arris
_ABOVE, _BELOW, _RIGHT, _LEFT = 1, -1, 1, -1
_LEVEL: Vec2 = (1.0, 0.0)
_UPRIGHT: Vec2 = (0.0, 1.0)
_WIDTH, _PLACE, _EDGE, _OVERALL = 0, 1, 5, 9  # ranks, from the part outward


def part_dimensions(shape: Shape) -> tuple[Dimension, ...]:
    """All dimensions of a part in its three views, each size once."""
    return _Marking(shape).all()


@dataclass(frozen=True, slots=True)
class _Wall:
    """A side of a region of waste as it stands on the finished part: end points, and its height."""

    start: Vec2
    end: Vec2
    drawn: Side  # as the cut alone would leave it

    @property
    def across(self) -> bool:
        """Runs straight across the grain."""
        return abs(self.start[0] - self.end[0]) < _NEAR

    @property
    def along(self) -> bool:
        """Runs straight along the grain."""
        return abs(self.start[1] - self.end[1]) < _NEAR

    @property
    def steep(self) -> bool:
        """Nearer to across than to along."""
        return abs(self.start[0] - self.end[0]) < abs(self.start[1] - self.end[1])


class _Marking:
    """Collects the dimensions of one part; every method adds those of one sort."""

    def __init__(self, shape: Shape) -> None:
        self.blank = shape.blank
        self.cuts, marked = _without_arrises(shape)
        self.corners: NDArray[np.float64] = solid_of(marked).vertices
        self.low = tuple(float(c) for c in self.corners.min(axis=0))
        self.high = tuple(float(c) for c in self.corners.max(axis=0))
        self.found: dict[tuple[object, ...], Dimension] = {}

    def all(self) -> tuple[Dimension, ...]:
        self._overall()
        for waste in self.cuts:
            if waste.upright:
                self._on_the_face(waste, self._walls(waste.low, None), PART_FACE)
            else:
                self._tilted(waste)
            self._depths(waste)
        self._edges()
        return tuple(self.found.values())

    # --- sorts of dimensions ---------------------------------------------------------------------

    def _overall(self) -> None:
        (x0, y0, z0), (x1, y1, z1) = self.low, self.high
        self._length(PART_FACE, _LEVEL, (x0, -y1), (x1, -y1), _BELOW, _OVERALL)
        self._length(PART_FACE, _UPRIGHT, (x0, -y1), (x0, -y0), _LEFT, _OVERALL)
        self._length(PART_END, _LEVEL, (z0, -y1), (z1, -y1), _BELOW, _OVERALL)

    def _on_the_face(self, waste: Waste, walls: Sequence[_Wall], view: View) -> None:
        """Positions and widths along the grain, widths across it, and angles, on the face."""
        if not walls:
            return
        for far in (False, True):
            self._along(waste, [s for w in walls for s in self._stations(w, far, waste.flat)], far)
        levels = sorted({round(w.start[1], 4) for w in walls if w.along})
        if levels:
            self._across(waste, walls, levels)
        for wall in walls:
            if not wall.across and not wall.along:
                if waste.flat and not wall.steep:
                    self._taper_widths(wall)
                self._angle(view, *((x, -y) for x, y in (wall.start, wall.end)))

    def _stations(self, wall: _Wall, far: bool, flat: bool) -> list[Vec2]:
        """Where a wall is marked on the near or the far edge, as points (x, y)."""
        edge = self.high[1] if far else self.low[1]
        if wall.across:
            limit = self.blank.width if far else 0.0
            reaches = any(abs(y - limit) < _NEAR for _, y in wall.drawn)
            inner = not any(
                abs(y - e) < _NEAR for _, y in wall.drawn for e in (0.0, self.blank.width)
            )
            if flat or not (reaches or (inner and far)):
                return []
            ys = [wall.start[1], wall.end[1]]
            return [(wall.start[0], max(ys) if far else min(ys))]
        if wall.along:
            return []
        points = [p for p in (wall.start, wall.end) if abs(p[1] - edge) < _NEAR]
        if flat and wall.steep:
            points = []
        if far:
            points += [
                p
                for p in (wall.start, wall.end)
                if min(abs(p[1] - self.low[1]), abs(p[1] - self.high[1])) > _NEAR
                and self.low[0] + _NEAR < p[0] < self.high[0] - _NEAR
            ]
        return points

    def _along(self, waste: Waste, stations: Sequence[Vec2], far: bool) -> None:
        points = {round(x, 3): (x, y) for x, y in stations}
        marks = [points[key] for key in sorted(points)]
        if not marks:
            return
        start, end = self._edge_ends(far)
        side = _BELOW if far else _ABOVE
        xs = [x for x, _ in (*waste.low, *waste.high)]
        if len(marks) == 1 and not waste.flat and min(xs) < _NEAR:
            self._level(start, marks[0], side, _WIDTH)
        elif len(marks) == 1 and not waste.flat and max(xs) > self.blank.length - _NEAR:
            self._level(marks[0], end, side, _WIDTH)
        elif len(marks) == 2 and not waste.flat and min(xs) > _NEAR:
            self._level(start, marks[0], side, _PLACE)
            self._level(marks[0], marks[1], side, _WIDTH)
        else:
            for mark in marks:
                self._level(start, mark, side, _PLACE)

    def _across(self, waste: Waste, walls: Sequence[_Wall], levels: Sequence[float]) -> None:
        ys = [y for _, y in waste.low or waste.high]
        spans = _spans(levels, ys, self.low[1], self.high[1], self.blank.width)
        if not all(w.along or w.across for w in walls):
            spans = [(self.low[1], level) for level in levels]
        in_end_view = self._is_long(waste) and not self._is_through(waste)
        middle = (self.low[0] + self.high[0]) / 2.0
        for a, b in spans:
            if in_end_view:
                on_face = waste.z_low < _NEAR
                z = self.low[2] if on_face else self.high[2]
                side = _LEFT if on_face else _RIGHT
                self._length(PART_END, _UPRIGHT, (z, -b), (z, -a), side, _WIDTH)
                continue
            xs = [x for w in walls if w.along for x in (w.start[0], w.end[0])]
            left = (min(xs) + max(xs)) / 2.0 < middle
            x = min(xs) if left else max(xs)
            end_x = self.low[0] if left else self.high[0]
            points = [(end_x if y in (self.low[1], self.high[1]) else x, -y) for y in (b, a)]
            rank = _WIDTH if b - a < self.blank.width / 2.0 else _PLACE
            self._length(PART_FACE, _UPRIGHT, *points, _LEFT if left else _RIGHT, rank)

    def _taper_widths(self, wall: _Wall) -> None:
        """The width that a taper leaves where it meets an end."""
        for x, y in (wall.start, wall.end):
            for limit, side in ((self.low[0], _LEFT), (self.high[0], _RIGHT)):
                at_the_end = abs(x - limit) < _NEAR or (
                    side * (x - (self.low[0] + self.high[0]) / 2.0) > 0.0
                    and self.low[1] + _NEAR < y < self.high[1] - _NEAR
                )
                if at_the_end and y < self.high[1] - _NEAR:
                    top = (limit, -self.low[1])
                    self._length(PART_FACE, _UPRIGHT, (x, -y), top, side, _PLACE)

    def _tilted(self, waste: Waste) -> None:
        """A cut whose walls lean: marked on both faces, its slope where it is seen."""
        low = self._walls(waste.low, waste.z_low)
        high = self._walls(waste.high, waste.z_high)
        across = [[w for w in walls if w.across] for walls in (low, high)]
        along = [[w for w in walls if w.along] for walls in (low, high)]
        leaning_x = any(across) and not _same_places(across, 0)
        if leaning_x and waste.flat:
            self._slope(waste, 0, PART_EDGE)
        elif leaning_x:
            self._slanting_gap(waste, across)
        levels = [sorted({round(w.start[1], 4) for w in walls}) for walls in along]
        if any(levels) and levels[0] != levels[1]:
            for z, found in ((waste.z_low, levels[0]), (waste.z_high, levels[1])):
                side = _LEFT if z < _NEAR else _RIGHT
                for y in found:
                    if self.low[1] + _NEAR < y < self.high[1] - _NEAR:
                        top = (z, -self.low[1])
                        self._length(PART_END, _UPRIGHT, (z, -y), top, side, _PLACE)
            self._slope(waste, 1, PART_END)
        elif any(levels):
            ys = [y for _, y in waste.low]
            for a, b in _spans(levels[0], ys, self.low[1], self.high[1], self.blank.width):
                x = min(w.start[0] for w in along[0])
                points = [(x if y == levels[0][0] else self.low[0], -y) for y in (b, a)]
                self._length(PART_FACE, _UPRIGHT, *points, _LEFT, _WIDTH)

    def _slanting_gap(self, waste: Waste, across: Sequence[Sequence[_Wall]]) -> None:
        """Two walls that slant through the thickness, marked on both sides of the edge view."""
        for z, walls, side in (
            (waste.z_low, across[0], _BELOW),
            (waste.z_high, across[1], _ABOVE),
        ):
            xs = sorted({round(w.start[0], 4) for w in walls})
            if len(xs) == 2:
                start = (self.low[0], z)
                self._length(PART_EDGE, _LEVEL, start, (xs[0], z), side, _PLACE)
                self._length(PART_EDGE, _LEVEL, (xs[0], z), (xs[1], z), side, _WIDTH)
        firsts = [min((w.start[0] for w in walls), default=None) for walls in across]
        if firsts[0] is not None and firsts[1] is not None:
            self._angle(PART_EDGE, (firsts[0], waste.z_low), (firsts[1], waste.z_high))

    def _slope(self, waste: Waste, axis: int, view: View) -> None:
        """The angle of a plane through the thickness, along the corners that lie on it."""
        found: list[tuple[float, float]] = []
        for region, z in ((waste.low, waste.z_low), (waste.high, waste.z_high)):
            walls = [
                wall[0][axis]
                for wall in inner_sides(region, self.blank)
                if abs(wall[0][axis] - wall[1][axis]) < _NEAR
            ]
            rest = [p[axis] for p in (waste.low or waste.high)]
            size = (self.blank.length, self.blank.width)[axis]
            edge = 0.0 if min(rest) < _NEAR and max(rest) < size / 2.0 else size
            found.append((walls[0] if walls else edge, z))
        low, high = ((z, -a) if axis == 1 else (a, z) for a, z in found)
        self._angle(view, low, high)

    def _depths(self, waste: Waste) -> None:
        """How deep a cut goes, where it can be seen: from an end, or running along the piece."""
        if waste.flat or not waste.upright:
            return
        heights = [
            z for z in (waste.z_low, waste.z_high) if _NEAR < z < self.blank.thickness - _NEAR
        ]
        zs = (waste.z_low, waste.z_high)
        spans = _spans(heights, zs, self.low[2], self.high[2], self.blank.thickness)
        xs, ys = [x for x, _ in waste.low], [y for _, y in waste.low]
        near_start, near_end = min(xs) < _NEAR, max(xs) > self.blank.length - _NEAR
        for a, b in spans:
            if self._is_long(waste):
                near = sum(ys) / len(ys) < self.blank.width / 2.0
                y = self.low[1] if near else self.high[1]
                side = _ABOVE if near else _BELOW
                self._length(PART_END, _LEVEL, (a, -y), (b, -y), side, _WIDTH)
            elif near_start or near_end:
                x = self.low[0] if near_start else self.high[0]
                side = _LEFT if near_start else _RIGHT
                self._length(PART_EDGE, _UPRIGHT, (x, a), (x, b), side, _WIDTH)

    def _edges(self) -> None:
        """The lengths of the edges where slanted or tilted ends make them differ."""
        ends = [w for w in self.cuts if w.flat]
        if any(w.upright for w in ends):
            for far in (False, True):
                start, end = self._edge_ends(far)
                self._level(start, end, _BELOW if far else _ABOVE, _EDGE)
        if any(not w.upright for w in ends):
            for z, side in ((self.low[2], _BELOW), (self.high[2], _ABOVE)):
                on = self.corners[np.abs(self.corners[:, 2] - z) < _NEAR]
                if len(on):
                    a, b = float(on[:, 0].min()), float(on[:, 0].max())
                    self._length(PART_EDGE, _LEVEL, (a, z), (b, z), side, _EDGE)

    # --- finding things on the solid ---------------------------------------------------------------

    def _walls(self, region: Sequence[Vec2], z: float | None) -> list[_Wall]:
        """The cut-in sides of a region, each as long as it is on the finished part."""
        corners = self.corners
        if z is not None:
            corners = corners[np.abs(corners[:, 2] - z) < _NEAR]
        walls: list[_Wall] = []
        for a, b in inner_sides(region, self.blank):
            run = np.array(b) - np.array(a)
            size = float(np.hypot(*run))
            way = run / size
            off = corners[:, :2] - np.array(a)
            t = off @ way
            on = np.abs(off[:, 0] * way[1] - off[:, 1] * way[0]) < _NEAR
            on &= (t > -_NEAR) & (t < size + _NEAR)
            if on.sum() >= 2 and float(np.ptp(t[on])) > _NEAR:
                first = corners[on][int(t[on].argmin())]
                last = corners[on][int(t[on].argmax())]
                start, end = ((float(p[0]), float(p[1])) for p in (first, last))
                walls.append(_Wall(start, end, (a, b)))
        return walls

    def _edge_ends(self, far: bool) -> tuple[Vec2, Vec2]:
        """The first and last corner of the near or the far half of the face, (x, y)."""
        middle = (self.low[1] + self.high[1]) / 2.0
        half = self.corners[(self.corners[:, 1] > middle) == far]
        first, last = half[int(half[:, 0].argmin())], half[int(half[:, 0].argmax())]
        return (float(first[0]), float(first[1])), (float(last[0]), float(last[1]))

    def _is_through(self, waste: Waste) -> bool:
        return waste.z_low < _NEAR and waste.z_high > self.blank.thickness - _NEAR

    def _is_long(self, waste: Waste) -> bool:
        xs = [x for x, _ in (*waste.low, *waste.high)]
        return max(xs) - min(xs) > _LONG * self.blank.length

    # --- writing them down -------------------------------------------------------------------------

    def _level(self, start: Vec2, end: Vec2, side: int, rank: int) -> None:
        """A length along the grain on the face, between points (x, y)."""
        self._length(PART_FACE, _LEVEL, (start[0], -start[1]), (end[0], -end[1]), side, rank)

    def _length(
        self, view: View, along: Vec2, start: Vec2, end: Vec2, side: int, rank: int
    ) -> None:
        axis = 0 if along == _LEVEL else 1
        value = abs(end[axis] - start[axis])
        if value < _LEAST:
            return
        ends = sorted((round(start[axis], 2), round(end[axis], 2)))
        key = (_part_axis(view.right if axis == 0 else view.up), *ends)
        if key not in self.found:
            name = f"{view.name}_{len(self.found)}"
            self.found[key] = Dimension(
                name, name, view.name, value, "mm", start, end, along, side, rank
            )

    def _angle(self, view: View, start: Vec2, end: Vec2) -> None:
        """The slant of a line from the nearer of level and upright, the arc outside the wood."""
        du, dv = end[0] - start[0], end[1] - start[1]
        if math.hypot(du, dv) < _NEAR or min(abs(du), abs(dv)) < _NEAR:
            return
        upright = abs(dv) > abs(du)
        slant = math.degrees(math.atan2(min(abs(du), abs(dv)), max(abs(du), abs(dv))))
        middle = (start[0] + end[0]) / 2.0
        key = (view.name, "angle", round(slant, 2), middle > (self.low[0] + self.high[0]) / 2.0)
        if key in self.found:
            return
        apex, other = self._outer_first(view, start, end, upright=upright)
        square = (0.0, math.copysign(0.1, other[1] - apex[1]))
        if not upright:
            square = (math.copysign(0.1, other[0] - apex[0]), 0.0)
        name = f"{view.name}_{len(self.found)}"
        first = (apex[0] + square[0], apex[1] + square[1])
        self.found[key] = Dimension(
            name, name, view.name, slant, "deg", first, other, _LEVEL, 1, _PLACE, apex=apex
        )

    def _outer_first(
        self, view: View, start: Vec2, end: Vec2, *, upright: bool
    ) -> tuple[Vec2, Vec2]:
        """The two ends of a slanted line, first the one from which square lies in the air."""
        axis = 0 if upright else 1
        flat = self.corners @ np.array((view.right, view.up), dtype=np.float64).T
        middle = (flat[:, axis].min() + flat[:, axis].max()) / 2.0
        outward = abs(start[axis] - middle) >= abs(end[axis] - middle)
        return (start, end) if outward else (end, start)


def _spans(
    marks: Sequence[float], reach: Sequence[float], low: float, high: float, size: float
) -> list[tuple[float, float]]:
    """What to measure to fix walls at ``marks``: from the edge that the waste runs out at."""
    if not marks:
        return []
    if len(marks) == 1:
        return [(low, marks[0])] if min(reach) < _NEAR else [(marks[0], high)]
    if min(reach) < _NEAR or max(reach) > size - _NEAR:
        return [(low, mark) for mark in marks]
    return [(low, marks[0]), (marks[0], marks[1])]


def _same_places(walls: Sequence[Sequence[_Wall]], axis: int) -> bool:
    low, high = (sorted(round(w.start[axis], 2) for w in group) for group in walls)
    return low == high


def _part_axis(direction: tuple[float, float, float]) -> int:
    """The axis of the part, 0 to 2, that a view's right or up runs along."""
    return max(range(3), key=lambda axis: abs(direction[axis]))


def _without_arrises(shape: Shape) -> tuple[list[Waste], Shape]:
    """The waste of all cuts but chamfers and the like, and the shape with those cuts alone."""
    kept = [
        waste
        for waste in wastes(shape)
        if waste.upright or waste.z_high - waste.z_low > _ARRIS * shape.blank.thickness
    ]
    numbers = {waste.number for waste in kept}
    cuts = tuple(cut for number, cut in enumerate(shape.cuts, start=1) if number in numbers)
    return kept, Shape(shape.blank, cuts)
