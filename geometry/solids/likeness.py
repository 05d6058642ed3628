"""How like two pieces are: the same, mirror images, or a little apart, whichever way they are laid.

Frame and units: each piece in its own part frame, mm and degrees, taken about the middle of its
box.  Wood has its grain along x, so a piece may be turned end for end, over, and a square one about
its grain; nothing else makes it another.

Method: the turns that take one piece nearest to the other are chosen by the moments of its volume
up to the third order, which a mirror image does not share (tetrahedra on the surface's triangles,
with the five-point rule that is exact to the third degree: P. Keast, Moderate-degree tetrahedral
quadrature formulas, 1986, from memory).  Where the moments differ, the distance is the farthest
that a corner of one lies from the surface of the other, both ways, and the angle the most that a
flat face of one turns from the nearest of the other.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

import numpy as np

from geometry.design.part import Shape
from geometry.solids.cutting import solid_of
from geometry.solids.solid import Floats, Solid, frozen
from shared.tolerances import MERGE

_SAME_MOMENTS = 1e-6  # of moments over the half sizes of the box: rounding of the kernel
_FAR_MOMENTS = 0.1  # such pieces have other cuts, and nobody takes one for the other
_MOST_CORNERS = 400  # a carved piece is told by its carving, not by its corners

# Barycentric points and weights of the five-point rule.
_POINTS = np.array(
    [[0.25] * 4, *(np.full(4, 1 / 6) + np.eye(4)[k] / 3 for k in range(4))], dtype=float
)
_WEIGHTS = np.array([-0.8, 0.45, 0.45, 0.45, 0.45])
_POWERS = np.array([p for p in product(range(4), repeat=3) if 1 <= sum(p) <= 3])


@dataclass(frozen=True, slots=True)
class Likeness:
    """Two pieces laid as near to each other as they go, one of them perhaps as in a mirror.

    ``distance`` in mm and ``turn_deg`` tell how far they are then; both 0 for pieces that are the
    same, or that are mirror images of each other and not the same (``mirrored``).
    """

    mirrored: bool
    distance: float
    turn_deg: float


Turn = tuple[int, int, int]
"""For each axis of a part that it takes the place of, from 1 on, negative if the other way round:
(-1, 2, 3) changes the ends."""

_TURNS: tuple[Turn, ...] = (
    *((-1, 2, 3), (1, -2, 3), (1, 2, -3), (-1, -2, -3)),  # mirrors
    *((1, -2, -3), (-1, 2, -3), (-1, -2, 3)),  # half turns
    *((1, 3, 2), (1, -3, -2), (-1, 3, -2), (-1, -3, 2)),  # through the corners of a square piece
    *((1, 3, -2), (1, -3, 2), (-1, 3, 2), (-1, -3, -2)),
)
_PLAIN = 7  # of these do not change edges for faces

SAME = Likeness(mirrored=False, distance=0.0, turn_deg=0.0)
MIRROR_IMAGE = Likeness(mirrored=True, distance=0.0, turn_deg=0.0)


@lru_cache(maxsize=2048)
def size_of(shape: Shape) -> tuple[float, float, float]:
    """Length, width and thickness of the finished piece."""
    low, high = _box(solid_of(shape))
    length, width, thickness = (high - low).tolist()
    return length, width, thickness


@lru_cache(maxsize=2048)
def likeness(first: Shape, second: Shape) -> Likeness | None:
    """How like two shapes are; None for pieces that nobody takes for one another."""
    if first == second:
        return SAME
    square = abs(size_of(first)[1] - size_of(first)[2]) < MERGE
    plain, mirrored = (_nearest(first, second, square, mirror=mirror) for mirror in (False, True))
    if plain[0] < _SAME_MOMENTS:
        return SAME
    if mirrored[0] < _SAME_MOMENTS:
        return MIRROR_IMAGE
    one, other = solid_of(first), solid_of(second)
    if max(len(one.vertices), len(other.vertices)) > _MOST_CORNERS:
        return None
    near = [
        Likeness(mirror, *_apart(one, other, way))
        for mirror, (off, way) in ((False, plain), (True, mirrored))
        if off <= _FAR_MOMENTS
    ]
    return min(near, key=lambda each: each.distance, default=None)


def same_as_laid(first: Shape, second: Shape) -> bool:
    """Whether two shapes are the same piece where they lie, but for rounding."""
    if first == second:
        return True
    if first.blank != second.blank:
        return False
    boxes = [_box(solid_of(shape)) for shape in (first, second)]
    if not np.allclose(boxes[0], boxes[1], rtol=0.0, atol=MERGE):
        return False
    moments = [_turned_moments(shape, np.eye(3)) for shape in (first, second)]
    return float(np.abs(moments[0] - moments[1]).max()) < _SAME_MOMENTS


@lru_cache(maxsize=4096)
def as_in_a_mirror(first: Shape, second: Shape) -> Turn | None:
    """How the second lies beside the first, if it is a mirror image of it or the same piece turned;
    None for other pieces, and for the same piece laid the same way.

    Blanks must be the same.  Where a piece is symmetrical enough for several, a mirror goes before
    a turn, one along x before y, y before z, and those through the corners of a square piece last.
    """
    blank = first.blank
    if blank != second.blank or same_as_laid(first, second):
        return None
    middle = np.array((blank.length, blank.width, blank.thickness)) / 2.0
    box, other = (np.array(_box(solid_of(shape))) - middle for shape in (first, second))
    wanted = _turned_moments(second, np.eye(3))
    for turn in _TURNS if abs(blank.width - blank.thickness) < MERGE else _TURNS[:_PLAIN]:
        way = _matrix(turn)
        turned = np.sort(box @ way.T, axis=0)
        if not np.allclose(turned, other, rtol=0.0, atol=MERGE):
            continue
        if float(np.abs(_turned_moments(first, way) - wanted).max()) < _SAME_MOMENTS:
            return turn
    return None


def is_mirror(turn: Turn) -> bool:
    """Whether a turn makes left hand of right."""
    return bool(np.linalg.det(_matrix(turn)) < 0.0)


def _matrix(turn: Turn) -> Floats:
    return np.array([np.sign(one) * np.eye(3)[abs(one) - 1] for one in turn])


def _nearest(first: Shape, second: Shape, square: bool, *, mirror: bool) -> tuple[float, Floats]:
    """How far the moments of the first are from the second's, and the way they are nearest."""
    wanted = _turned_moments(second, np.eye(3))
    ways = [way for way in _ways(mirror=mirror) if square or not way[1, 2]]
    off = [float(np.abs(_turned_moments(first, way) - wanted).max()) for way in ways]
    best = int(np.argmin(off))
    return off[best], ways[best]


@lru_cache(maxsize=2)
def _ways(*, mirror: bool) -> tuple[Floats, ...]:
    """Every way that keeps the grain along x: turns, or those that make a mirror image."""
    found = [
        np.diag(signs)[list(rows)]
        for rows in ((0, 1, 2), (0, 2, 1))
        for signs in product((1.0, -1.0), repeat=3)
    ]
    return tuple(way for way in found if (np.linalg.det(way) < 0.0) == mirror)


def _box(solid: Solid) -> tuple[Floats, Floats]:
    return solid.vertices.min(axis=0), solid.vertices.max(axis=0)


def _samples(shape: Shape) -> tuple[Floats, Floats]:
    """Points (5m, 3), over the half sizes of the box, and each one's share of the volume."""
    solid = solid_of(shape)
    low, high = _box(solid)
    corners = (solid.vertices - (low + high) / 2.0) / ((high - low) / 2.0)
    tetrahedra = np.concatenate(
        (np.zeros((len(solid.triangles), 1, 3)), corners[solid.triangles]), 1
    )
    volumes = np.linalg.det(tetrahedra[:, 1:]) / 6.0
    points = np.einsum("pk,mkx->mpx", _POINTS, tetrahedra).reshape(-1, 3)
    shares = (volumes[:, None] * _WEIGHTS).reshape(-1) / volumes.sum()
    return points, shares


@lru_cache(maxsize=2048)
def _plain_moments(shape: Shape) -> Floats:
    """The moments by power of x, y and z (4, 4, 4)."""
    points, shares = _samples(shape)
    x, y, z = (np.stack([one**k for k in range(4)]) for one in points.T)
    of_plane = (y[:, None] * z[None]).reshape(16, -1)
    return frozen(((x * shares) @ of_plane.T).reshape(4, 4, 4))


def _turned_moments(shape: Shape, way: Floats) -> Floats:
    """The moments of the piece turned, without measuring it again: signs and places change."""
    plain = _plain_moments(shape)
    if way[1, 2]:
        plain = plain.swapaxes(1, 2)
    signs = way.sum(axis=1)
    i, j, k = _POWERS.T
    turned: Floats = plain[i, j, k] * signs[0] ** i * signs[1] ** j * signs[2] ** k
    return turned


def _apart(one: Solid, other: Solid, way: Floats) -> tuple[float, float]:
    """How far in mm and degrees two solids are when the first is turned so."""
    low, high = _box(one)
    moved = (one.vertices - (low + high) / 2.0) @ way.T
    low, high = _box(other)
    still = other.vertices - (low + high) / 2.0
    distance = max(_farthest(moved, still[other.triangles]), _farthest(still, moved[one.triangles]))
    normals = np.unique(np.round(one.panel_normals @ way.T, 6), axis=0)
    others = np.unique(np.round(other.panel_normals, 6), axis=0)
    cosines = normals @ others.T
    least = min(float(cosines.max(axis=0).min()), float(cosines.max(axis=1).min()))
    return distance, math.degrees(math.acos(min(1.0, max(-1.0, least))))


def _farthest(points: Floats, triangles: Floats) -> float:
    """The most that a point (n, 3) lies from the nearest of the triangles (m, 3, 3).

    A triangle whose box is farther from a point than the nearest corner is cannot be the nearest.
    """
    normal = np.cross(triangles[:, 1] - triangles[:, 0], triangles[:, 2] - triangles[:, 0])
    area = np.linalg.norm(normal, axis=1)
    kept = area > MERGE * MERGE
    triangles, normal = triangles[kept], normal[kept] / area[kept, None]
    low, high = triangles.min(axis=1), triangles.max(axis=1)
    corners = np.unique(triangles.reshape(-1, 3), axis=0)
    surely = _squared(points[:, None] - corners).min(axis=1)
    beyond = np.maximum(np.maximum(low - points[:, None], points[:, None] - high), 0.0)
    which, near = np.nonzero(_squared(beyond) <= surely[:, None] + MERGE * MERGE)
    nearest = np.full(len(points), np.inf)
    np.minimum.at(nearest, which, _off(points[which], triangles[near], normal[near]))
    return float(nearest.max())


def _off(points: Floats, triangles: Floats, normal: Floats) -> Floats:
    """How far each point (n, 3) lies from its own triangle (n, 3, 3) with the normal (n, 3)."""
    a, b, c = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    above = np.einsum("nx,nx->n", points - a, normal)
    foot = points - above[:, None] * normal
    inside = np.ones(len(points), dtype=bool)
    beside = np.full(len(points), np.inf)
    for start, end in ((a, b), (b, c), (c, a)):
        along, away = end - start, points - start
        inside &= np.einsum("nx,nx->n", np.cross(along, foot - start), normal) >= -MERGE
        share = np.clip(np.einsum("nx,nx->n", away, along) / _squared(along), 0.0, 1.0)
        beside = np.minimum(beside, np.linalg.norm(away - share[:, None] * along, axis=1))
    return np.where(inside, np.abs(above), beside)


def _squared(ways: Floats) -> Floats:
    """The squares of their lengths (..., 3)."""
    return np.asarray(np.einsum("...x,...x->...", ways, ways))
