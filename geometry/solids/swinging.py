"""The first thing that a piece strikes as it turns about a hinge.

Frame and units: bench frame, mm and degrees.  The hinge's pin lies along X; seen from the right the
piece turns clockwise, as a lid does that opens: what lies in front of the pin rises.

Method: a first touch of two bodies with flat faces is a corner of one on a face of the other, or
two edges that cross.  A corner goes round on a circle, which meets the plane of a face at two
angles at most.  Two edges touch where a point of each is as far along the pin and as far from it as
the other: a quadratic in the place along one of them.  Of those touches only the ones count at
which wood goes into wood, and of those the first one that a little farther on shares wood with what
it strikes: bodies that slide or only graze do not.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from geometry.design.part import Part
from geometry.primitives.frame import Frame, Vec3, add, subtract
from geometry.solids.cutting import placed
from geometry.solids.measure import shared_volume
from geometry.solids.solid import Floats, Indices, PlacedSolid
from geometry.solids.sweeping import SLIDING

_HAIR = 1e-9
_ROUNDING = 1e-7  # of a triangle's or an edge's extent
_STILL_DEG = 1e-5  # less short of a whole turn than this is where it starts
_DEEP = 0.3  # mm that it is turned on into what it strikes, to see whether it shares wood with it
_SHARED = 1e-3  # mm³: less is rounding
_STEP_DEG = 1.0


@dataclass(frozen=True, slots=True)
class Strike:
    """How far a piece turns before it strikes, in degrees, what, and where in the bench."""

    turn_deg: float
    other: Part
    place: Vec3


@dataclass(frozen=True, slots=True, eq=False)
class _Body:
    """A body seen from the pin: corners, triangles and edges with their faces' outward normals."""

    corners: Floats
    triangles: Floats
    normals: Floats
    edges: Floats
    edge_normals: Floats


@lru_cache(maxsize=64)
def first_strike(
    swinger: Part, others: tuple[Part, ...], pin: Vec3, most_deg: float
) -> Strike | None:
    """What ``swinger`` strikes first, turned about a pin by up to ``most_deg``; None for nothing.

    >>> from geometry.cuts.cut import Blank
    >>> from geometry.design.part import Shape
    >>> def board(length, width, thickness, low):
    ...     frame = Frame(low, (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    ...     blank = Blank(length, width, thickness)
    ...     return Part("board", "Board", "board", "oak", Shape(blank, ()), frame)
    >>> lid = board(100.0, 300.0, 20.0, (0.0, -300.0, -20.0))
    >>> wall = board(100.0, 20.0, 900.0, (0.0, 0.0, 0.0))
    >>> round(first_strike(lid, (wall,), (0.0, 0.0, 0.0), 120.0).turn_deg, 6)
    90.0
    """
    mover = placed(swinger)
    low, high = _swept(mover, pin, most_deg)
    near = [one for one in others if _overlap(placed(one), low, high)]
    if not near:
        return None
    moving = _body(mover, pin, low, high, whole=True)
    touches = [
        (turn, k, place)
        for k, other in enumerate(near)
        for turn, place in _touches(moving, _body(placed(other), pin, low, high))
        if turn < most_deg - _HAIR
    ]
    seen: set[tuple[int, float]] = set()
    for turn, k, place in sorted(touches):
        about = (k, round(turn, 2))
        if about in seen:
            continue
        seen.add(about)
        far = math.hypot(place[1], place[2])
        beyond = turned_part(swinger, pin, turn + math.degrees(_DEEP / max(far, 1.0)))
        if shared_volume(beyond, near[k]) > _SHARED:
            return Strike(turn, near[k], add(place, pin))
    return None


def turned_part(part: Part, pin: Vec3, turn_deg: float) -> Part:
    """A piece turned about a pin along X."""
    frame = part.frame
    origin = add(_turned(subtract(frame.origin, pin), turn_deg), pin)
    axes = (_turned(axis, turn_deg) for axis in (frame.x_axis, frame.y_axis, frame.z_axis))
    return replace(part, frame=Frame(origin, *axes))


def _turned(point: Vec3, turn_deg: float) -> Vec3:
    cosine, sine = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    x, y, z = point
    return x, y * cosine + z * sine, z * cosine - y * sine


def _turned_all(points: Floats, turns: Floats) -> Floats:
    """Each of (n, 3) by its own angle (n,) in radians."""
    cosine, sine = np.cos(turns), np.sin(turns)
    x, y, z = points.T
    return np.column_stack([x, y * cosine + z * sine, z * cosine - y * sine])


def _swept(mover: PlacedSolid, pin: Vec3, most_deg: float) -> tuple[Floats, Floats]:
    """The box of all that a piece passes, less what only slides along it."""
    at = mover.vertices - np.array(pin)
    far = np.hypot(at[:, 1], at[:, 2])
    start = np.arctan2(at[:, 2], -at[:, 1])
    steps = np.radians(np.append(np.arange(0.0, most_deg, _STEP_DEG), most_deg))
    angles = start[:, None] + steps
    y, z = -far[:, None] * np.cos(angles), far[:, None] * np.sin(angles)
    bulge = far.max() * (1.0 - math.cos(math.radians(_STEP_DEG / 2.0)))
    low = np.array([at[:, 0].min(), y.min() - bulge, z.min()]) + pin + SLIDING
    high = np.array([at[:, 0].max(), y.max() + bulge, z.max() + bulge]) + pin - SLIDING
    return low, high


def _overlap(solid: PlacedSolid, low: Floats, high: Floats) -> bool:
    return bool((solid.low < high).all() and (solid.high > low).all())


def _body(
    solid: PlacedSolid, pin: Vec3, low: Floats, high: Floats, *, whole: bool = False
) -> _Body:
    """What of a solid lies within a box, or all of it."""
    corners = solid.vertices[solid.solid.triangles]
    ends = solid.vertices[solid.solid.edges]
    kept, kept_ends = (
        np.ones(len(some), dtype=bool)
        if whole
        else ((some.min(axis=1) < high) & (some.max(axis=1) > low)).all(axis=1)
        for some in (corners, ends)
    )
    inside = ((solid.vertices < high) & (solid.vertices > low)).all(axis=1) | whole
    triangles = corners[kept] - np.array(pin)
    normals = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    size = np.linalg.norm(normals, axis=1)
    flat = size > _HAIR
    return _Body(
        solid.vertices[inside] - np.array(pin),
        triangles[flat],
        normals[flat] / size[flat, None],
        ends[kept_ends] - np.array(pin),
        solid.edge_normals[kept_ends],
    )


def _touches(moving: _Body, still: _Body) -> Iterator[tuple[float, Vec3]]:
    """The angles in degrees at which wood goes into wood, and where, seen from the pin."""
    found = (
        _corners_on_faces(moving.corners, still.triangles, still.normals, back=False),
        _corners_on_faces(still.corners, moving.triangles, moving.normals, back=True),
        _edges_on_edges(moving, still),
    )
    for turns, places in found:
        for turn, place in zip(turns.tolist(), places.tolist(), strict=True):
            x, y, z = place
            yield turn, (x, y, z)


def _apart(ends: Floats, start: Floats) -> Floats:
    """How far round from one place to another, from 0 up to 360 degrees."""
    first = np.arctan2(start[:, 2], -start[:, 1])
    turn = np.degrees(np.arctan2(ends[:, 2], -ends[:, 1]) - first) % 360.0
    return np.asarray(np.where(turn > 360.0 - _STILL_DEG, 0.0, turn))


def _ranges(points: Floats) -> tuple[Floats, Floats]:
    """Along the pin and away from it, the least and the most of faces or edges (n, k, 3)."""
    far = np.hypot(points[:, :, 1], points[:, :, 2])
    # Between its corners a face or an edge may come nearer to the pin than any of them.
    near = np.maximum(points[:, :, 1:].min(axis=1), -points[:, :, 1:].max(axis=1))
    least = np.hypot(*np.maximum(near, 0.0).T)
    low = np.column_stack([points[:, :, 0].min(axis=1), least])
    high = np.column_stack([points[:, :, 0].max(axis=1), far.max(axis=1)])
    return low - _ROUNDING, high + _ROUNDING


def _corners_on_faces(
    corners: Floats, triangles: Floats, normals: Floats, *, back: bool
) -> tuple[Floats, Floats]:
    """Corners that come round upon faces; ``back`` where the faces come round upon the corners."""
    low, high = _ranges(triangles)
    at = np.column_stack([corners[:, 0], np.hypot(corners[:, 1], corners[:, 2])])
    pairs = ((at[:, None] >= low) & (at[:, None] <= high)).all(axis=2) & (at[:, 1:] > _ROUNDING)
    i, j = np.nonzero(pairs)
    n, a = normals[j], triangles[j, 0]
    # The corner at the angle t of its circle is (x, -r cos t, r sin t).
    x, r = at[i].T
    reach = r * np.hypot(n[:, 1], n[:, 2])
    wanted = np.einsum("ij,ij->i", n, a) - n[:, 0] * x
    meets = (reach > _ROUNDING) & (np.abs(wanted) <= reach + _ROUNDING)
    i, j, x, r, n = i[meets], j[meets], x[meets], r[meets], n[meets]
    middle = np.arctan2(n[:, 2], -n[:, 1])
    aside = np.arccos(np.clip(wanted[meets] / reach[meets], -1.0, 1.0))
    turns, places = [], []
    for angle in (middle - aside, middle + aside):
        there = np.column_stack([x, -r * np.cos(angle), r * np.sin(angle)])
        # Onward is (0, z, -y) for what turns, and the other way for what a face comes round upon.
        onward = n[:, 1] * there[:, 2] - n[:, 2] * there[:, 1]
        goes_in = (onward if back else -onward) > _ROUNDING * r
        kept = goes_in & _within(there, triangles[j])
        turn = _apart(corners[i], there) if back else _apart(there, corners[i])
        spot = corners[i] if back else there
        turns.append(turn[kept])
        places.append(spot[kept])
    return np.concatenate(turns), np.concatenate(places)


def _within(points: Floats, triangles: Floats) -> np.ndarray:
    """Whether each point of a triangle's plane lies in it."""
    first, second = triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0]
    off = points - triangles[:, 0]
    dots = [np.einsum("ij,ij->i", *pair) for pair in ((first, first), (first, second))]
    dots += [np.einsum("ij,ij->i", *pair) for pair in ((second, second), (off, first))]
    aa, ab, bb, oa = dots
    ob = np.einsum("ij,ij->i", off, second)
    whole = aa * bb - ab * ab
    u, v = (bb * oa - ab * ob) / whole, (aa * ob - ab * oa) / whole
    return np.asarray((u >= -_ROUNDING) & (v >= -_ROUNDING) & (u + v <= 1.0 + _ROUNDING))


def _edges_on_edges(moving: _Body, still: _Body) -> tuple[Floats, Floats]:
    low, high = _ranges(moving.edges)
    low_other, high_other = _ranges(still.edges)
    pairs = ((low[:, None] <= high_other) & (high[:, None] >= low_other)).all(axis=2)
    i, j = np.nonzero(pairs)
    turns, places = [], []
    for first, second, swapped in ((moving, still, False), (still, moving, True)):
        one, two = (j, i) if swapped else (i, j)
        a, b = first.edges[one], second.edges[two]
        # The place s along the first follows from the place t along the second: as far along the
        # pin.  Each pair is reckoned with the edge first that runs more along the pin.
        run_a, run_b = a[:, 1] - a[:, 0], b[:, 1] - b[:, 0]
        steep = np.abs(run_a[:, 0]) >= np.abs(run_b[:, 0])
        if swapped:
            steep = np.abs(run_a[:, 0]) > np.abs(run_b[:, 0])
        steep &= np.abs(run_a[:, 0]) > _ROUNDING
        some = np.nonzero(steep)[0]
        for s, t in _as_far_out(a[some], b[some]):
            on = (np.abs(s - 0.5) <= 0.5 + _ROUNDING) & (np.abs(t - 0.5) <= 0.5 + _ROUNDING)
            rows = some[on]
            place_a = a[rows, 0] + s[on, None] * run_a[rows]
            place_b = b[rows, 0] + t[on, None] * run_b[rows]
            mine, its = (place_b, place_a) if swapped else (place_a, place_b)
            turn = _apart(its, mine)
            kept = _go_in(moving, still, i[rows], j[rows], np.radians(turn), its)
            turns.append(turn[kept])
            places.append(its[kept])
    return np.concatenate(turns), np.concatenate(places)


def _as_far_out(a: Floats, b: Floats) -> Iterator[tuple[Floats, Floats]]:
    """Places along two edges at which they are as far along the pin and as far from it."""
    run_a, run_b = a[:, 1] - a[:, 0], b[:, 1] - b[:, 0]
    # s = start + rate t
    start = (b[:, 0, 0] - a[:, 0, 0]) / run_a[:, 0]
    rate = run_b[:, 0] / run_a[:, 0]
    from_a = (a[:, 0] + start[:, None] * run_a)[:, 1:]
    along_a = (rate[:, None] * run_a)[:, 1:]
    from_b, along_b = b[:, 0, 1:], run_b[:, 1:]
    square = (along_a**2).sum(axis=1) - (along_b**2).sum(axis=1)
    half = (from_a * along_a).sum(axis=1) - (from_b * along_b).sum(axis=1)
    rest = (from_a**2).sum(axis=1) - (from_b**2).sum(axis=1)
    under = half * half - square * rest
    real, root = under >= 0.0, np.sqrt(np.maximum(under, 0.0))
    with np.errstate(divide="ignore", invalid="ignore"):
        for sign in (-1.0, 1.0):
            t = np.where(
                np.abs(square) > _HAIR, (-half + sign * root) / square, -rest / (2.0 * half)
            )
            t = np.where(real & np.isfinite(t), t, np.inf)
            yield np.where(np.isfinite(t), start + rate * t, np.inf), t


def _go_in(
    moving: _Body, still: _Body, i: Indices, j: Indices, turns: Floats, places: Floats
) -> np.ndarray:
    """Whether two edges that touch, the first turned so far, go into each other's wood."""
    mine, its = moving.edges[i], still.edges[j]
    run = _turned_all(mine[:, 1] - mine[:, 0], turns)
    square = np.cross(run, its[:, 1] - its[:, 0])
    size = np.linalg.norm(square, axis=1)
    sizes = np.linalg.norm(run, axis=1) * np.linalg.norm(its[:, 1] - its[:, 0], axis=1)
    out = still.edge_normals[j].sum(axis=1)
    own = _turned_all(moving.edge_normals[i].sum(axis=1), turns)
    square = square * np.sign(np.einsum("ij,ij->i", square, out))[:, None]
    onward = square[:, 1] * places[:, 2] - square[:, 2] * places[:, 1]
    faces = np.einsum("ij,ij->i", square, own) < 0.0
    return np.asarray((size > _ROUNDING * sizes) & faces & (onward < 0.0))
