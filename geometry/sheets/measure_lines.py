"""Where in a view a measure of a joint can be drawn.

Frame and units: (u, v) of the view, mm and degrees.

Method: the joint says how large a measure is, the solid says where such a size is to be found.  A
length is looked for between corners, level, upright, or along and across a slanting edge that the
joint makes; an angle between two edges that meet, or between one and the square to the other.
At least one of the two is made by the joint.  So whatever is drawn is true: it is the distance
between two corners of the finished pieces.  Of several places the plainest is taken: seen rather
than hidden, straight across rather than far aside, and from a face that was there before when the
measure is one ``from`` something.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from geometry.design.joint import Measure
from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2
from geometry.solids.solid import Flags, Floats
from geometry.views.view import View
from shared.paper import largest_scale

LEAST = 0.3  # mm: nobody marks out less
_LEAST_DEG = 0.3
_SAME = 0.006  # mm: a size and a measure nearer than this are one
_SAME_DEG = 0.02
_MEET = 1e-3  # mm: edges whose ends are nearer than this meet
_SHORT = 1.5  # mm: too short for the side of an angle

USUAL = (60.0, 46.0)  # mm of paper that a view usually gets
_READABLE = 3.0  # mm on paper: what is shorter is hard to see
_READABLE_SIDE = 4.0  # the same for a side of an angle

_FROM = re.compile(r"from|(edge|end|side|face) to ")
_KEPT = 6  # places of one measure that are remembered
_TINY = 12.0  # what it costs to be no more than a point
_HIDDEN = 8.0  # what a hidden corner costs, in percent of the view's size aside
_NOT_A_REFERENCE = 5.0
_NO_FACE = 12.0
_SLANTING = 4.0


@dataclass(frozen=True, slots=True, eq=False)
class Outlines:
    """What can be measured in a view.

    ``corners`` (n, 2); ``own`` and ``seen`` (n,) tell which of them the joint makes and which are
    seen, ``outer`` (n, 2) which lie as far out as their part reaches along u and along v: on a
    face, an edge or an end that a maker measures from.  ``edges`` (m, 4) with ``own_edges`` and
    ``seen_edges`` (m,).  ``size`` is the larger of the view's width and height.
    """

    view: View
    corners: Floats
    own: Flags
    seen: Flags
    outer: Flags
    edges: Floats
    own_edges: Flags
    seen_edges: Flags
    size: float

    usual_scale: float = field(init=False)  # at which such a view is likely to be drawn

    def __post_init__(self) -> None:
        scale = 1.0
        if len(self.edges):
            wide, high = np.ptp(self.edges.reshape(-1, 2), axis=0).tolist()
            most = min(2.0, USUAL[0] / max(wide, 1.0), USUAL[1] / max(high, 1.0))
            scale = largest_scale(most).factor
        object.__setattr__(self, "usual_scale", scale)


@dataclass(frozen=True, slots=True)
class Drawn:
    """A measure as a dimension of a view, and how far it is from plain; less is better."""

    measure: int
    dimension: Dimension
    cost: float

    @property
    def key(self) -> tuple[float, ...]:
        """Equal for dimensions that show the same: between the same lines, or the same angle."""
        one = self.dimension
        if one.apex is not None:
            return (*(round(c, 2) for c in one.apex), round(one.value, 2))
        reach = sorted(p[0] * one.along[0] + p[1] * one.along[1] for p in (one.start, one.end))
        return tuple(round(c, 2) for c in (*one.along, *reach))


def places(measures: Sequence[Measure], outlines: Outlines) -> tuple[Drawn, ...]:
    """All places in which the measures can be drawn in a view, the plainest of each first."""
    found: list[Drawn] = []
    for index, measure in enumerate(measures):
        if measure.unit == "deg":
            own = list(_angles(index, measure, outlines))
        else:
            own = [
                *_straight(index, measure, outlines),
                *_to_arrises(index, measure, outlines),
                *_slanting(index, measure, outlines),
            ]
        plainest: dict[tuple[float, ...], Drawn] = {}
        for one in sorted(own, key=lambda one: one.cost):
            plainest.setdefault(one.key, one)
        found += list(plainest.values())[:_KEPT]
    return tuple(found)


def _straight(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Level and upright distances between corners, one of them the joint's own."""
    if measure.value < LEAST or not outlines.own.any():
        return
    tiny = _tiny(measure.value, outlines, _READABLE)
    mine = np.flatnonzero(outlines.own)
    apart = outlines.corners[mine][:, None] - outlines.corners[None]
    for axis in (0, 1):
        a, b = np.nonzero(np.abs(np.abs(apart[..., axis]) - measure.value) < _SAME)
        aside = np.abs(apart[a, b, 1 - axis]) / outlines.size * 100.0
        first = mine[a]
        hidden = ~outlines.seen[first] + 1.0 * ~outlines.seen[b]
        cost = aside + _HIDDEN * hidden + tiny
        cost += np.where(outlines.own[b] | outlines.outer[b, axis], 0.0, _NO_FACE)
        if _FROM.search(f"{measure.name} {measure.meaning}"):
            cost += np.where(outlines.own[b], _NOT_A_REFERENCE, 0.0)
        for k in np.argsort(cost, kind="stable")[: 4 * _KEPT].tolist():
            start, end = outlines.corners[b[k]].tolist(), outlines.corners[first[k]].tolist()
            along = (1.0, 0.0) if axis == 0 else (0.0, 1.0)
            side = _side(start, end, axis, outlines)
            points = ((start[0], start[1]), (end[0], end[1]))
            yield Drawn(index, _length(measure, outlines.view, points, along, side), float(cost[k]))


def _to_arrises(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Distances from the joint's own corners straight across to a level or upright edge that was
    there before, lying as far out as its part reaches."""
    if measure.value < LEAST:
        return
    tiny = _tiny(measure.value, outlines, _READABLE)
    mine = np.flatnonzero(outlines.own)
    ends = outlines.edges.reshape(-1, 2, 2)
    for axis in (0, 1):
        level = np.abs(ends[:, 0, axis] - ends[:, 1, axis]) < _MEET
        limits = outlines.corners[outlines.outer[:, axis], axis]
        far_out = (np.abs(ends[:, 0, axis, None] - limits) < _MEET).any(axis=1)
        edges = np.flatnonzero(level & far_out & ~outlines.own_edges)
        low, high = ends[edges, :, 1 - axis].min(axis=1), ends[edges, :, 1 - axis].max(axis=1)
        at = ends[edges, 0, axis]
        across = outlines.corners[mine, 1 - axis][:, None]
        away = np.abs(outlines.corners[mine, axis][:, None] - at)
        fits = (np.abs(away - measure.value) < _SAME) & (across >= low) & (across <= high)
        for a, e in zip(*np.nonzero(fits), strict=True):
            corner, edge = mine[a], edges[e]
            foot = outlines.corners[corner].copy()
            foot[axis] = at[e]
            hidden = int(not outlines.seen[corner]) + int(not outlines.seen_edges[edge])
            points = (_point(foot), _point(outlines.corners[corner]))
            along = (1.0, 0.0) if axis == 0 else (0.0, 1.0)
            side = _side(*points, axis, outlines)
            dimension = _length(measure, outlines.view, points, along, side)
            yield Drawn(index, dimension, _HIDDEN * hidden + tiny)


def _slanting(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Lengths of the joint's own slanting edges, and distances between such that run alike."""
    if measure.value < LEAST:
        return
    start, run = outlines.edges[:, :2], outlines.edges[:, 2:] - outlines.edges[:, :2]
    size = np.hypot(*run.T)
    tiny = _tiny(measure.value, outlines, _READABLE)
    steep = (np.abs(run) > 0.01 * np.maximum(size, 1e-9)[:, None]).all(axis=1)
    mine = np.flatnonzero(outlines.own_edges & steep & (size > LEAST))
    for i in mine.tolist():
        way = run[i] / size[i]
        hidden = tiny + (0.0 if outlines.seen_edges[i] else _HIDDEN)
        a, b = (_point(end) for end in (start[i], start[i] + run[i]))
        if abs(size[i] - measure.value) < _SAME:
            dimension = _length(measure, outlines.view, (a, b), _point(way), 1)
            yield Drawn(index, dimension, _SLANTING + hidden)
        aside = (start - start[i]) @ np.array((-way[1], way[0]))
        alike = np.abs(run @ np.array((-way[1], way[0]))) < 1e-4 * np.maximum(size, 1.0)
        for j in np.flatnonzero(alike & (np.abs(np.abs(aside) - measure.value) < _SAME)).tolist():
            middle = start[i] + run[i] / 2.0
            foot = middle + aside[j] * np.array((-way[1], way[0]))
            beyond = abs(float((foot - start[j] - run[j] / 2.0) @ way)) - size[j] / 2.0
            cost = _SLANTING + hidden + (0.0 if outlines.seen_edges[j] else _HIDDEN)
            cost += max(0.0, beyond) / outlines.size * 100.0
            square = _point(np.array((-way[1], way[0])))
            points = (_point(foot), _point(middle))
            yield Drawn(index, _length(measure, outlines.view, points, square, 0), cost)


def _angles(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """Angles between an edge of the joint's own and one that it meets, or the square to that."""
    if measure.value < _LEAST_DEG:
        return
    edges = outlines.edges
    both = np.concatenate([edges, edges[:, (2, 3, 0, 1)]])  # from either end
    count = len(edges)
    for i in np.flatnonzero(np.tile(outlines.own_edges, 2)).tolist():
        apex, run = both[i, :2], both[i, 2:] - both[i, :2]
        if math.hypot(*run.tolist()) < _SHORT:
            continue
        for j in np.flatnonzero(np.hypot(*(both[:, :2] - apex).T) < _MEET).tolist():
            other = both[j, 2:] - both[j, :2]
            if j % count == i % count or math.hypot(*other.tolist()) < _SHORT:
                continue
            side = _side_of_angle(run, other, measure.value)
            if side is None:
                continue
            hidden = sum(not outlines.seen_edges[k % count] for k in (i, j))
            shorter = min(math.hypot(*run.tolist()), math.hypot(*other.tolist()))
            short = _tiny(shorter, outlines, _READABLE_SIDE) + 10.0 / shorter
            dimension = Dimension(
                measure.name,
                measure.meaning,
                outlines.view.name,
                measure.value,
                "deg",
                _point(apex + side),
                _point(apex + run),
                (1.0, 0.0),
                1,
                1,
                apex=_point(apex),
            )
            yield Drawn(index, dimension, _HIDDEN * hidden + short)


def _tiny(size: float, outlines: Outlines, readable: float) -> float:
    """What it costs that a size in mm is hard to see at the view's usual scale."""
    drawn = size * outlines.usual_scale
    return _TINY * max(0.0, 1.0 - drawn / readable)


def _side_of_angle(run: Floats, other: Floats, value_deg: float) -> Floats | None:
    """The direction from which ``run`` turns by so many degrees: along ``other``, against it, or
    square to it; None when it does so from none of them."""
    square = np.array((-other[1], other[0]))
    for side in (other, square, -square, -other):
        size = math.hypot(*run.tolist()) * math.hypot(*side.tolist())
        turn = math.degrees(math.acos(max(-1.0, min(1.0, float(run @ side) / size))))
        if abs(turn - value_deg) < _SAME_DEG:
            return side
    return None


def _side(start: Sequence[float], end: Sequence[float], axis: int, outlines: Outlines) -> int:
    """On which side of the drawing a dimension stands: where its points are."""
    across = outlines.corners[:, 1 - axis]
    middle = (float(across.min()) + float(across.max())) / 2.0
    at = (start[1 - axis] + end[1 - axis]) / 2.0
    if abs(at - middle) < 0.05 * outlines.size:
        return -1 if axis == 0 else 1
    return 1 if at > middle else -1


def _length(
    measure: Measure, view: View, points: tuple[Vec2, Vec2], along: Vec2, side: int
) -> Dimension:
    return Dimension(
        measure.name,
        measure.meaning,
        view.name,
        measure.value,
        "mm",
        *points,
        along,
        side,
        1,
    )


def _point(at: Floats) -> Vec2:
    x, y = at.tolist()
    return (x, y)
