"""Where in a view a length of a joint can be drawn.

Frame and units: (u, v) of the view, mm.

Method: level and upright distances between two corners, from a corner straight across to an arris,
or from an edge across to a slanting arris at the place where they are so far apart; and along or
across a slanting edge.  One of the two is always made by the joint.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import product

import numpy as np

from geometry.design.joint import Measure
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

LEAST = 0.3  # mm: nobody marks out less
SAME = 0.006  # mm: a size and a measure nearer than this are one
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


def lengths(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """All places in which a length can be drawn; ``index`` is the measure's."""
    if measure.value < LEAST or not outlines.own.any():
        return
    yield from _straight(index, measure, outlines)
    yield from _to_arrises(index, measure, outlines)
    yield from _to_slanting_arrises(index, measure, outlines)
    yield from _slanting(index, measure, outlines)


def _straight(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Level and upright distances between corners, one of them the joint's own."""
    small = tiny(measure.value, outlines, _READABLE)
    mine = np.flatnonzero(outlines.own)
    apart = outlines.corners[mine][:, None] - outlines.corners[None]
    for axis in (0, 1):
        a, b = np.nonzero(np.abs(np.abs(apart[..., axis]) - measure.value) < SAME)
        aside = np.abs(apart[a, b, 1 - axis]) / outlines.size * 100.0
        first = mine[a]
        hidden = ~outlines.seen[first] + 1.0 * ~outlines.seen[b]
        cost = aside + HIDDEN * hidden + small
        at_a_face = outlines.outer(outlines.corners[b, axis], axis)
        if measure.at is not None:  # so that it is surely meant
            cost -= np.where(at_a_face, np.maximum(aside - _ASIDE, 0.0), 0.0)
        cost += np.where(outlines.own[b] | at_a_face, 0.0, _NO_FACE)
        if _FROM.search(f"{measure.name} {measure.meaning}"):
            cost += np.where(outlines.own[b], _NOT_A_REFERENCE, 0.0)
        for k in np.argsort(cost, kind="stable")[:_MOST].tolist():
            start, end = outlines.corners[b[k]].tolist(), outlines.corners[first[k]].tolist()
            along = (1.0, 0.0) if axis == 0 else (0.0, 1.0)
            side = side_of(start, end, axis, outlines)
            points = ((start[0], start[1]), (end[0], end[1]))
            yield Drawn(
                index, length_of(measure, outlines.view, points, along, side), float(cost[k])
            )


def _to_arrises(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Distances from the joint's own corners straight across to a level or upright edge that was
    there before, lying as far out as its part reaches."""
    small = tiny(measure.value, outlines, _READABLE)
    mine = np.flatnonzero(outlines.own)
    ends = outlines.edges.reshape(-1, 2, 2)
    for axis in (0, 1):
        level = np.abs(ends[:, 0, axis] - ends[:, 1, axis]) < MEET
        far_out = outlines.outer(ends[:, 0, axis], axis)
        edges = np.flatnonzero(level & far_out & ~outlines.own_edges)
        low, high = ends[edges, :, 1 - axis].min(axis=1), ends[edges, :, 1 - axis].max(axis=1)
        at = ends[edges, 0, axis]
        across = outlines.corners[mine, 1 - axis][:, None]
        away = np.abs(outlines.corners[mine, axis][:, None] - at)
        fits = (np.abs(away - measure.value) < SAME) & (across >= low) & (across <= high)
        for a, e in zip(*np.nonzero(fits), strict=True):
            corner, edge = mine[a], edges[e]
            foot = outlines.corners[corner].copy()
            foot[axis] = at[e]
            hidden = int(not outlines.seen[corner]) + int(not outlines.seen_edges[edge])
            points = (as_point(foot), as_point(outlines.corners[corner]))
            along = (1.0, 0.0) if axis == 0 else (0.0, 1.0)
            side = side_of(*points, axis, outlines)
            dimension = length_of(measure, outlines.view, points, along, side)
            yield Drawn(index, dimension, HIDDEN * hidden + small)


def _to_slanting_arrises(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Distances from the joint's own level or upright edges straight across to an arris that slants
    along the outside of the view, at that point of it which is so far away.

    An own edge counts a little beyond its ends, where a cutter leaves a round.
    """
    if not _FROM.search(f"{measure.name} {measure.meaning}"):
        return
    small = tiny(measure.value, outlines, _READABLE)
    beyond = _ROUND if measure.at is None else 0.0  # where it ends at a point, that is no round
    ends = outlines.edges.reshape(-1, 2, 2)
    run = ends[:, 1] - ends[:, 0]
    for axis in (0, 1):
        other = 1 - axis
        mine = np.flatnonzero(
            (np.abs(run[:, axis]) < MEET) & outlines.own_edges & (np.abs(run[:, other]) > SHORT)
        )
        theirs = _outer_arrises(outlines, axis) if len(mine) else []
        for m, e in product(mine.tolist(), theirs):
            at = ends[m, 0, axis]
            low, high = sorted(ends[m, :, other].tolist())
            (start, end), rise = ends[e], run[e, axis] / run[e, other]
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
                along = (1.0, 0.0) if axis == 0 else (0.0, 1.0)
                points = (as_point(far), as_point(near))
                side = side_of(*points, axis, outlines)
                dimension = length_of(measure, outlines.view, points, along, side)
                yield Drawn(index, dimension, HIDDEN * hidden + small)


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


def _slanting(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Lengths of the joint's own slanting edges, and distances between such that run alike."""
    if measure.value < LEAST:
        return
    start, run = outlines.edges[:, :2], outlines.edges[:, 2:] - outlines.edges[:, :2]
    size = np.hypot(*run.T)
    small = tiny(measure.value, outlines, _READABLE)
    steep = (np.abs(run) > 0.01 * np.maximum(size, 1e-9)[:, None]).all(axis=1)
    mine = np.flatnonzero(outlines.own_edges & steep & (size > LEAST))
    for i in mine.tolist():
        way = run[i] / size[i]
        hidden = small + (0.0 if outlines.seen_edges[i] else HIDDEN)
        a, b = (as_point(end) for end in (start[i], start[i] + run[i]))
        if abs(size[i] - measure.value) < SAME:
            dimension = length_of(measure, outlines.view, (a, b), as_point(way), 1)
            yield Drawn(index, dimension, _SLANTING + hidden)
        aside = (start - start[i]) @ np.array((-way[1], way[0]))
        alike = np.abs(run @ np.array((-way[1], way[0]))) < 1e-4 * np.maximum(size, 1.0)
        for j in np.flatnonzero(alike & (np.abs(np.abs(aside) - measure.value) < SAME)).tolist():
            middle = start[i] + run[i] / 2.0
            foot = middle + aside[j] * np.array((-way[1], way[0]))
            beyond = abs(float((foot - start[j] - run[j] / 2.0) @ way)) - size[j] / 2.0
            cost = _SLANTING + hidden + (0.0 if outlines.seen_edges[j] else HIDDEN)
            cost += max(0.0, beyond) / outlines.size * 100.0
            square = as_point(np.array((-way[1], way[0])))
            points = (as_point(foot), as_point(middle))
            yield Drawn(index, length_of(measure, outlines.view, points, square, 0), cost)


def side_of(start: Sequence[float], end: Sequence[float], axis: int, outlines: Outlines) -> int:
    """On which side of the drawing a dimension stands: where its points are."""
    across = outlines.corners[:, 1 - axis]
    middle = (float(across.min()) + float(across.max())) / 2.0
    at = (start[1 - axis] + end[1 - axis]) / 2.0
    if abs(at - middle) < 0.05 * outlines.size:
        return -1 if axis == 0 else 1
    return 1 if at > middle else -1
