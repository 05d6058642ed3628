"""Whether one solid can be moved away from another in a straight line, to any distance.

Frame and units: bench frame, mm.

Method: look along the way.  The mover is in the way of nothing exactly when, wherever the two
shadows overlap, no part of the mover lies behind a part of the other.  So the faces of the mover
that look back along the way are held against the faces of the other that look ahead: each pair of
triangles is clipped to what both shadows cover (Sutherland and Hodgman, all pairs at once), and
how far the other stands ahead of the mover there is linear, so its greatest value is at a corner.
This is exact for flat faces at any distance, where trying places one after another could step over
a thin wall.

Faces that slide along one another meet in shadows of no width, and arcs are chords; overlaps
narrower than ``SLIDING`` and collisions shallower than ``TOUCH`` count as none.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from geometry.primitives.frame import Vec3
from geometry.solids.shadow_tests import (
    apart,
    at,
    inside,
    least_of,
    may_exceed,
    most_of,
    plane_of,
    sides_of,
)
from geometry.solids.solid import Floats, Indices, PlacedSolid
from shared.tolerances import CHORD_ERROR

SLIDING = 2.0 * CHORD_ERROR
"""Overlaps narrower than this are two chords of one arc, or faces that slide."""

TOUCH = 0.05
"""mm along the way: less than a shaving."""

_EDGE_ON = 1e-6  # a face whose normal is this nearly square to the way casts no shadow
_MOST_PAIRS = 8_000  # pairs looked at at once
_SURELY = 1e-3  # mm above a limit, so that rounding cannot decide otherwise than the clipping would


@dataclass(frozen=True, slots=True, eq=False)
class _Shadows:
    """Triangles in plan (n, 3, 2), how far along the way their corners lie (n, 3), owner (n,).

    ``low`` and ``high`` (n, 2) are the corners of the boxes round them in plan.
    """

    plan: Floats
    along: Floats
    owner: Indices
    low: Floats
    high: Floats


def blocking(solids: Sequence[PlacedSolid], way: Vec3) -> np.ndarray:
    """Shape (n, n): how deep solid i would run into solid j, moved along ``way`` (a unit vector).

    0 where it goes free.  The depth is how far j stands ahead of i's hind face, in mm.
    """
    turn = looking_along(way)
    found = np.zeros((len(solids), len(solids)))
    hind, front = _facing(solids, turn, ahead=False), _facing(solids, turn, ahead=True)
    for i, j in _near(hind, front):
        np.maximum.at(found, (hind.owner[i], front.owner[j]), _depths(hind, front, i, j))
    return found


def holding_in_steps(solids: Sequence[PlacedSolid], way: Vec3) -> Generator[None, None, np.ndarray]:
    """Shape (n, n): whether solid i would run into solid j; stops every few milliseconds.

    The same answers as ``blocking`` sooner: one pair of faces that plainly meet settles a pair of
    solids, and only what no plainer test settles is clipped.
    """
    turn = looking_along(way)
    found = np.zeros((len(solids), len(solids)), dtype=bool)
    hind, front = _facing(solids, turn, ahead=False), _facing(solids, turn, ahead=True)
    hind_sides, front_sides = sides_of(hind.plan), sides_of(front.plan)
    hind_middle, front_middle = hind.plan.mean(axis=1), front.plan.mean(axis=1)
    hind_plane = plane_of(hind.plan, hind.along)
    front_plane = plane_of(front.plan, front.along)
    for some, others in _near(hind, front):
        left = ~found[hind.owner[some], front.owner[others]]
        i, j = some[left], others[left]
        low, high = np.maximum(hind.low[i], front.low[j]), np.minimum(hind.high[i], front.high[j])
        between = front_plane[j] - hind_plane[i]
        left = may_exceed(between, low, high, TOUCH)
        i, j, low, high, between = i[left], j[left], low[left], high[left], between[left]
        sides_i, sides_j = hind_sides[i], front_sides[j]
        for spot in ((low + high) / 2.0, hind_middle[i], front_middle[j]):
            met = inside(sides_i, spot, SLIDING) & inside(sides_j, spot, SLIDING)
            met &= at(between, spot) > TOUCH + _SURELY
            found[hind.owner[i[met]], front.owner[j[met]]] = True
        left = ~found[hind.owner[i], front.owner[j]]
        left &= ~apart(sides_i, front.plan[j], SLIDING / 2.0)
        left &= ~apart(sides_j, hind.plan[i], SLIDING / 2.0)
        i, j = i[left], j[left]
        met = _depths(hind, front, i, j) > 0.0
        found[hind.owner[i[met]], front.owner[j[met]]] = True
        yield
    return found


def _near(hind: _Shadows, front: _Shadows) -> Iterator[tuple[Indices, Indices]]:
    """Pairs of faces of different solids that may meet, by the boxes round them, some at once."""
    if not len(hind.owner) or not len(front.owner):
        return
    low_a, high_a = hind.low + SLIDING, hind.high - SLIDING
    low_b, high_b = front.low, front.high
    least, most = least_of(hind.along) + TOUCH, most_of(front.along)
    for start in range(0, len(hind.owner), 256):
        rows = slice(start, start + 256)
        near = most[None, :] > least[rows, None]
        near &= hind.owner[rows, None] != front.owner[None, :]
        for axis in (0, 1):
            near &= low_a[rows, None, axis] < high_b[None, :, axis]
            near &= high_a[rows, None, axis] > low_b[None, :, axis]
        first, second = np.nonzero(near)
        first += start
        for some in range(0, len(first), _MOST_PAIRS):
            yield first[some : some + _MOST_PAIRS], second[some : some + _MOST_PAIRS]


def looking_along(way: Vec3) -> Floats:
    """Shape (3, 3): rows are two directions square to the way, and the way."""
    ahead = np.array(way) / np.linalg.norm(way)
    aside = np.zeros(3)
    aside[int(np.abs(ahead).argmin())] = 1.0
    right = np.cross(ahead, aside)
    right /= np.linalg.norm(right)
    return np.array([right, np.cross(ahead, right), ahead])


def _facing(solids: Sequence[PlacedSolid], turn: Floats, *, ahead: bool) -> _Shadows:
    """The triangles of all solids that look along the way, or back."""
    plans, alongs, owners = [], [], []
    for index, solid in enumerate(solids):
        corners = (solid.vertices @ turn.T)[solid.solid.triangles]
        plan = corners[:, :, :2]
        first, second = plan[:, 1] - plan[:, 0], plan[:, 2] - plan[:, 0]
        twice = first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]
        # Rows of `turn` are right-handed: a face whose corners turn left looks along the way.
        kept = twice > _EDGE_ON if ahead else twice < -_EDGE_ON
        chosen = plan[kept]
        plans.append(chosen if ahead else chosen[:, ::-1])
        heights = corners[kept][:, :, 2]
        alongs.append(heights if ahead else heights[:, ::-1])
        owners.append(np.full(int(kept.sum()), index, dtype=np.intp))
    plan = np.concatenate(plans)
    low, high = least_of(plan), most_of(plan)
    return _Shadows(plan, np.concatenate(alongs), np.concatenate(owners), low, high)


def _depths(hind: _Shadows, front: _Shadows, i: Indices, j: Indices) -> Floats:
    """For each pair of triangles, how far the second stands ahead where both shadows overlap."""
    polygon, length = _clipped(hind.plan[i], front.plan[j])
    depth = _height(front.plan[j], front.along[j], polygon)
    depth -= _height(hind.plan[i], hind.along[i], polygon)
    counted = np.arange(polygon.shape[1])[None, :] < length[:, None]
    greatest = np.where(counted, depth, -np.inf).max(axis=1)
    wide = _width(polygon, length, counted) > SLIDING
    return np.where(wide & (greatest > TOUCH), greatest, 0.0)


def _clipped(subject: Floats, clip: Floats) -> tuple[Floats, Indices]:
    """Triangles (m, 3, 2) cut to triangles (m, 3, 2), all turning left: (m, 6, 2) and lengths."""
    count = len(subject)
    polygon = np.zeros((count, 7, 2))
    polygon[:, :3] = subject
    length = np.full(count, 3, dtype=np.intp)
    rows = np.arange(count)
    for k in range(3):
        start, end = clip[:, k], clip[:, (k + 1) % 3]
        edge = end - start
        out = np.zeros_like(polygon)
        size = np.zeros(count, dtype=np.intp)
        for corner in range(polygon.shape[1] - 1):
            live = corner < length
            after = np.where(corner + 1 < length, corner + 1, 0)
            here, there = polygon[:, corner], polygon[rows, after]
            side = edge[:, 0] * (here[:, 1] - start[:, 1]) - edge[:, 1] * (here[:, 0] - start[:, 0])
            other = edge[:, 0] * (there[:, 1] - start[:, 1]) - edge[:, 1] * (
                there[:, 0] - start[:, 0]
            )
            inside, inside_after = side >= 0.0, other >= 0.0
            put = live & inside
            out[rows[put], size[put]] = here[put]
            size[put] += 1
            crosses = live & (inside != inside_after)
            share = side[crosses] / (side[crosses] - other[crosses])
            out[rows[crosses], size[crosses]] = here[crosses] + share[:, None] * (
                there[crosses] - here[crosses]
            )
            size[crosses] += 1
        polygon, length = out, size
    return polygon, length


def _height(plan: Floats, along: Floats, points: Floats) -> Floats:
    """How far along the way triangles (m, 3) lie at points (m, p, 2) of their plan."""
    first, second = plan[:, 1] - plan[:, 0], plan[:, 2] - plan[:, 0]
    twice = first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]
    off = points - plan[:, None, 0]
    u = (off[:, :, 0] * second[:, None, 1] - off[:, :, 1] * second[:, None, 0]) / twice[:, None]
    v = (off[:, :, 1] * first[:, None, 0] - off[:, :, 0] * first[:, None, 1]) / twice[:, None]
    rise_u, rise_v = along[:, 1] - along[:, 0], along[:, 2] - along[:, 0]
    return np.asarray(along[:, None, 0] + u * rise_u[:, None] + v * rise_v[:, None])


def _width(polygon: Floats, length: Indices, counted: np.ndarray) -> Floats:
    """About how narrow each polygon is: twice its area over half its girth."""
    rows = np.arange(len(polygon))
    twice = np.zeros(len(polygon))
    girth = np.zeros(len(polygon))
    for corner in range(polygon.shape[1] - 1):
        live = counted[:, corner]
        after = np.where(corner + 1 < length, corner + 1, 0)
        here, there = polygon[:, corner], polygon[rows, after]
        twice += np.where(live, here[:, 0] * there[:, 1] - here[:, 1] * there[:, 0], 0.0)
        girth += np.where(live, np.hypot(*(there - here).T), 0.0)
    # A polygon with a girth of nothing is a point, whatever rounding makes of its area.
    return np.asarray(2.0 * np.abs(twice) / np.maximum(girth, SLIDING))


@dataclass(frozen=True, slots=True)
class Touch:
    """How far a mover comes before it touches, in mm, on which of the others, and where (bench)."""

    travel: float
    mover: int
    other: int
    place: Vec3


def first_touch(
    movers: Sequence[PlacedSolid], others: Sequence[PlacedSolid], way: Vec3, reach: float
) -> Touch | None:
    """The first touch of solids that move together along ``way``; None where they go free.

    ``reach`` is how far they go, in mm.  Where the shadows of a face of theirs that looks ahead and
    of a face of another's that looks back overlap, the way between them is linear, so its least
    value is at a corner.  What they have passed already, or are in, is not looked for.
    """
    turn = looking_along(way)
    ahead, back = _facing(movers, turn, ahead=True), _facing(others, turn, ahead=False)
    if not len(ahead.owner) or not len(back.owner):
        return None
    near = back.along.min(axis=1)[None, :] < ahead.along.max(axis=1)[:, None] + reach
    near &= back.along.max(axis=1)[None, :] > ahead.along.min(axis=1)[:, None] - TOUCH
    for axis in (0, 1):
        low, high = ahead.plan[:, :, axis].min(axis=1), ahead.plan[:, :, axis].max(axis=1)
        near &= low[:, None] + SLIDING < back.plan[:, :, axis].max(axis=1)[None, :]
        near &= high[:, None] - SLIDING > back.plan[:, :, axis].min(axis=1)[None, :]
    i, j = np.nonzero(near)
    if not len(i):
        return None
    polygon, length = _clipped(ahead.plan[i], back.plan[j])
    counted = np.arange(polygon.shape[1])[None, :] < length[:, None]
    stands = _height(back.plan[j], back.along[j], polygon)
    between = stands - _height(ahead.plan[i], ahead.along[i], polygon)
    passed = np.where(counted, between, -np.inf).max(axis=1) <= TOUCH
    between = np.where(counted, between, np.inf)
    least = between.min(axis=1)
    free = passed & (least < -TOUCH)
    free |= _width(polygon, length, counted) <= SLIDING
    least = np.where(free, np.inf, np.maximum(least, 0.0))
    first = int(least.argmin())
    if least[first] >= reach:
        return None
    corner = int(between[first].argmin())
    x, y, z = (np.append(polygon[first, corner], stands[first, corner]) @ turn).tolist()
    mover, other = int(ahead.owner[i[first]]), int(back.owner[j[first]])
    return Touch(float(least[first]), mover, other, (x, y, z))
