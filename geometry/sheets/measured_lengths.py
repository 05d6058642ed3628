"""Where in a view a length of a joint can be drawn.

Frame and units: (u, v) of the view, mm.

Method: level and upright distances between two corners, from a corner straight across to an arris,
or from an edge across to a slanting arris at the place where they are so far apart; and along or
across a slanting edge.  One of the two is always made by the joint.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product

import numpy as np

from geometry.design.joint import Measure
from geometry.primitives.frame import Vec2
from geometry.sheets.outlines import (
    HIDDEN,
    MEET,
    SHORT,
    Drawn,
    Outlines,
    as_point,
    length_of,
    tiny,
)
from geometry.solids.solid import Floats, Indices
from geometry.views.view import View

LEAST = 0.3  # mm: nobody marks out less
SAME = 0.006  # mm: a size and a measure nearer than this are one
_PARALLEL = 1.0 - 1e-6  # cosine between two directions that are one
_WAYS: tuple[Vec2, Vec2] = ((1.0, 0.0), (0.0, 1.0))
_READABLE = 3.0  # mm on paper: what is shorter is hard to see
_NOT_A_REFERENCE = 8.0
_NO_FACE = 12.0
_ASIDE = 10.0  # the most that it counts how far aside a face is from which is measured
_SLANTING = 4.0
_LITTLE = 0.7  # rise of an arris that slants along, not across
_LEANING = 1.0  # mm that a corner may lie outside such an arris, as of a leaning edge
_ROUND = 15.0  # mm: the largest radius that a cutter leaves
_MOST = 24  # places of one measure and direction that are looked at
_FROM = re.compile(r"from|below|(edge|end|side|face) to ")


@dataclass(frozen=True, slots=True, eq=False)
class _Slant:
    """A slanting ``edge``, its direction and length, the edges ``alike`` (n,) that run along it,
    and how far aside they lie (n,)."""

    edge: int
    way: Floats
    size: float
    alike: Indices
    aside: Floats


class Lengths:
    """The places of lengths in a view; what does not go by the measure is reckoned once."""

    def __init__(self, outlines: Outlines) -> None:
        self._outlines = outlines
        self._mine = np.flatnonzero(outlines.own)
        self._ends = outlines.edges.reshape(-1, 2, 2)

    def of(self, index: int, measure: Measure) -> Iterator[Drawn]:
        """All places in which a length can be drawn; ``index`` is the measure's."""
        if measure.value < LEAST or not len(self._mine):
            return
        axes = [axis for axis in (0, 1) if runs_along(measure, _WAYS[axis], self._outlines.view)]
        yield from self._straight(index, measure, axes)
        yield from self._to_arrises(index, measure, axes)
        yield from self._to_slanting_arrises(index, measure, axes)
        yield from self._slanting(index, measure)

    @cached_property
    def _apart(self) -> Floats:
        """From each corner to each of the joint's own, (own, n, 2)."""
        corners = self._outlines.corners
        return np.asarray(corners[self._mine][:, None] - corners[None])

    def _straight(self, index: int, measure: Measure, axes: Sequence[int]) -> Iterator[Drawn]:
        """Level and upright distances between corners, one of them the joint's own."""
        outlines = self._outlines
        small = tiny(measure.value, outlines, _READABLE)
        for axis in axes:
            apart = np.abs(self._apart[..., axis])
            a, b = np.nonzero(np.abs(apart - measure.value) < SAME)
            if not len(a):
                continue
            aside = np.abs(self._apart[a, b, 1 - axis]) / outlines.size * 100.0
            first = self._mine[a]
            hidden = ~outlines.seen[first] + 1.0 * ~outlines.seen[b]
            cost = aside + HIDDEN * hidden + small
            at_a_face = outlines.outer(outlines.corners[b, axis], axis)
            if measure.at is not None:  # so that it is surely meant
                cost -= np.where(at_a_face, np.maximum(aside - _ASIDE, 0.0), 0.0)
            cost += np.where(outlines.own[b] | at_a_face, 0.0, _NO_FACE)
            if _is_from(measure):
                cost += np.where(outlines.own[b], _NOT_A_REFERENCE, 0.0)
            for k in np.argsort(cost, kind="stable")[:_MOST].tolist():
                start, end = outlines.corners[b[k]].tolist(), outlines.corners[first[k]].tolist()
                side = side_of(start, end, axis, outlines)
                points = ((start[0], start[1]), (end[0], end[1]))
                found = length_of(measure, outlines.view, points, _WAYS[axis], side)
                yield Drawn(index, found, float(cost[k]))

    @cached_property
    def _faces(self) -> tuple[tuple[Indices, Floats, Floats], ...]:
        """For each axis the level or upright edges that were there before, lying as far out as
        their part reaches: which they are, how far each of the joint's own corners is from each
        (own, n), and not a number where it is not straight across."""
        outlines, ends = self._outlines, self._ends
        found = []
        for axis in (0, 1):
            level = np.abs(ends[:, 0, axis] - ends[:, 1, axis]) < MEET
            far_out = outlines.outer(ends[:, 0, axis], axis)
            edges = np.flatnonzero(level & far_out & ~outlines.own_edges)
            low = ends[edges, :, 1 - axis].min(axis=1)
            high = ends[edges, :, 1 - axis].max(axis=1)
            at = ends[edges, 0, axis]
            across = outlines.corners[self._mine, 1 - axis][:, None]
            away = np.abs(outlines.corners[self._mine, axis][:, None] - at)
            away[(across < low) | (across > high)] = np.nan
            found.append((edges, at, away))
        return tuple(found)

    def _to_arrises(self, index: int, measure: Measure, axes: Sequence[int]) -> Iterator[Drawn]:
        """Distances from the joint's own corners straight across to a level or upright edge that
        was there before, lying as far out as its part reaches."""
        outlines = self._outlines
        small = tiny(measure.value, outlines, _READABLE)
        for axis in axes:
            edges, at, away = self._faces[axis]
            for a, e in zip(*np.nonzero(np.abs(away - measure.value) < SAME), strict=True):
                corner, edge = self._mine[a], edges[e]
                foot = outlines.corners[corner].copy()
                foot[axis] = at[e]
                hidden = int(not outlines.seen[corner]) + int(not outlines.seen_edges[edge])
                points = (as_point(foot), as_point(outlines.corners[corner]))
                side = side_of(*points, axis, outlines)
                dimension = length_of(measure, outlines.view, points, _WAYS[axis], side)
                yield Drawn(index, dimension, HIDDEN * hidden + small)

    @cached_property
    def _pairs(self) -> tuple[list[tuple[int, int]], ...]:
        """For each axis the joint's own level or upright edges with each arris that slants along
        the outside of the view."""
        run = self._ends[:, 1] - self._ends[:, 0]
        found = []
        for axis in (0, 1):
            level = np.abs(run[:, axis]) < MEET
            long = np.abs(run[:, 1 - axis]) > SHORT
            mine = np.flatnonzero(level & self._outlines.own_edges & long)
            theirs = _outer_arrises(self._outlines, axis) if len(mine) else []
            found.append(list(product(mine.tolist(), theirs)))
        return tuple(found)

    def _to_slanting_arrises(
        self, index: int, measure: Measure, axes: Sequence[int]
    ) -> Iterator[Drawn]:
        """Distances from the joint's own level or upright edges straight across to an arris that
        slants along the outside of the view, at that point of it which is so far away.

        An own edge counts a little beyond its ends, where a cutter leaves a round.
        """
        if not _is_from(measure):
            return
        outlines, ends = self._outlines, self._ends
        small = tiny(measure.value, outlines, _READABLE)
        beyond = _ROUND if measure.at is None else 0.0  # where it ends at a point, that is no round
        for axis in axes:
            other = 1 - axis
            for m, e in self._pairs[axis]:
                at = ends[m, 0, axis]
                low, high = sorted(ends[m, :, other].tolist())
                (start, end), run = ends[e], ends[e, 1] - ends[e, 0]
                rise = run[axis] / run[other]
                for sign in (1.0, -1.0):
                    level = at + sign * measure.value
                    across = start[other] + (level - start[axis]) / rise
                    if not low - beyond <= across <= high + beyond:
                        continue
                    if not min(start[other], end[other]) <= across <= max(start[other], end[other]):
                        continue
                    near, far = np.empty(2), np.empty(2)
                    near[[axis, other]], far[[axis, other]] = (at, across), (level, across)
                    hidden = int(not outlines.seen_edges[m]) + int(not outlines.seen_edges[e])
                    points = (as_point(far), as_point(near))
                    side = side_of(*points, axis, outlines)
                    dimension = length_of(measure, outlines.view, points, _WAYS[axis], side)
                    yield Drawn(index, dimension, HIDDEN * hidden + small)

    @cached_property
    def _slants(self) -> list[_Slant]:
        """The joint's own slanting edges."""
        outlines = self._outlines
        start, run = outlines.edges[:, :2], outlines.edges[:, 2:] - outlines.edges[:, :2]
        size = np.hypot(*run.T)
        steep = (np.abs(run) > 0.01 * np.maximum(size, 1e-9)[:, None]).all(axis=1)
        found = []
        for i in np.flatnonzero(outlines.own_edges & steep & (size > LEAST)).tolist():
            way = run[i] / size[i]
            square = np.array((-way[1], way[0]))
            alike = np.flatnonzero(np.abs(run @ square) < 1e-4 * np.maximum(size, 1.0))
            aside = ((start - start[i]) @ square)[alike]
            found.append(_Slant(i, way, float(size[i]), alike, aside))
        return found

    def _slanting(self, index: int, measure: Measure) -> Iterator[Drawn]:
        """Lengths of the joint's own slanting edges, and distances between such that run alike."""
        outlines = self._outlines
        small = tiny(measure.value, outlines, _READABLE)
        start, run = outlines.edges[:, :2], outlines.edges[:, 2:] - outlines.edges[:, :2]
        size = np.hypot(*run.T)
        for one in self._slants:
            i, way = one.edge, one.way
            hidden = small + (0.0 if outlines.seen_edges[i] else HIDDEN)
            if abs(one.size - measure.value) < SAME:
                points = (as_point(start[i]), as_point(start[i] + run[i]))
                dimension = length_of(measure, outlines.view, points, as_point(way), 1)
                yield Drawn(index, dimension, _SLANTING + hidden)
            square = np.array((-way[1], way[0]))
            for k in np.flatnonzero(np.abs(np.abs(one.aside) - measure.value) < SAME).tolist():
                j = int(one.alike[k])
                middle = start[i] + run[i] / 2.0
                foot = middle + one.aside[k] * square
                beyond = abs(float((foot - start[j] - run[j] / 2.0) @ way)) - size[j] / 2.0
                cost = _SLANTING + hidden + (0.0 if outlines.seen_edges[j] else HIDDEN)
                cost += max(0.0, beyond) / outlines.size * 100.0
                points = (as_point(foot), as_point(middle))
                dimension = length_of(measure, outlines.view, points, as_point(square), 0)
                yield Drawn(index, dimension, cost)


def _outer_arrises(outlines: Outlines, axis: int) -> list[int]:
    """Edges that were there before and slant a little from square to ``axis``, with all corners of
    the view on one side of them."""
    ends = outlines.edges.reshape(-1, 2, 2)
    run = ends[:, 1] - ends[:, 0]
    rise, reach = np.abs(run[:, axis]), np.abs(run[:, 1 - axis])
    some = np.flatnonzero((rise > MEET) & (rise < _LITTLE * reach) & ~outlines.own_edges)
    found = []
    for e in some.tolist():
        way = run[e] / np.hypot(*run[e])
        off = (outlines.corners - ends[e, 0]) @ np.array((-way[1], way[0]))
        if off.min() > -_LEANING or off.max() < _LEANING:
            found.append(e)
    return found


def runs_along(measure: Measure, along: Vec2, view: View) -> bool:
    """Whether a direction of a view is that of a measure, as far as this tells."""
    if measure.along is None:
        return True
    (right, up), (a, b) = along, (view.right, view.up)
    way = (right * a[k] + up * b[k] for k in range(3))
    return abs(sum(w * m for w, m in zip(way, measure.along, strict=True))) >= _PARALLEL


def _is_from(measure: Measure) -> bool:
    return bool(_FROM.search(f"{measure.name} {measure.meaning}"))


def side_of(start: Sequence[float], end: Sequence[float], axis: int, outlines: Outlines) -> int:
    """On which side of the drawing a dimension stands: where its points are."""
    across = outlines.corners[:, 1 - axis]
    middle = (float(across.min()) + float(across.max())) / 2.0
    at = (start[1 - axis] + end[1 - axis]) / 2.0
    if abs(at - middle) < 0.05 * outlines.size:
        return -1 if axis == 0 else 1
    return 1 if at > middle else -1
