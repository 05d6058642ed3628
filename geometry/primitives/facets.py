"""Flat facets over a plane: points with a depth, joined to triangles and trimmed to a rectangle.

Frame and units: mm; x and y in the plane, z square to it.  Facets are convex and run
counter-clockwise in x, y; each is flat.

Method: Delaunay's triangulation from shapely (GEOS), which has no needlessly thin triangles.
Trimming goes side by side of the rectangle, for those facets that some side may cut (Sutherland
and Hodgman, Reentrant Polygon Clipping,
1974); where a side cuts an arris the new point is worked once for both of its facets, so that
neighbours still share their corners exactly.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache

import shapely

from geometry.primitives.frame import Vec2, Vec3

Triangle = tuple[int, int, int]
Rectangle = tuple[float, float, float, float]  # x low, y low, x high, y high

_ON = 1e-6  # mm: a point so near to a side lies on it
_SLIVER = 1e-9  # mm²


@dataclass(frozen=True, slots=True)
class Facets:
    """``points`` (n) and ``faces`` as their indices; the hash is made once, as in a spec."""

    points: tuple[Vec3, ...]
    faces: tuple[tuple[int, ...], ...]
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_hash", hash((self.points, self.faces)))

    def __hash__(self) -> int:
        return self._hash

    def corners(self, face: tuple[int, ...]) -> tuple[Vec3, ...]:
        return tuple(self.points[k] for k in face)

    @property
    def arrises(self) -> tuple[tuple[int, int], ...]:
        """The lines in which two facets meet, each once, as indices of their ends."""
        once: set[tuple[int, int]] = set()
        twice: set[tuple[int, int]] = set()
        for face in self.faces:
            for a, b in zip(face, (*face[1:], face[0]), strict=True):
                side = (min(a, b), max(a, b))
                (twice if side in once else once).add(side)
        return tuple(sorted(twice))


@lru_cache(maxsize=256)
def delaunay(points: tuple[Vec2, ...]) -> tuple[Triangle, ...]:
    """The triangles of at least three different points that do not lie on one line.

    >>> delaunay(((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 2.0)))
    ((0, 1, 3), (1, 2, 3))
    """
    place = {point: k for k, point in enumerate(points)}
    found = []
    made = shapely.get_parts(shapely.delaunay_triangles(shapely.MultiPoint(points)))
    for ring in shapely.get_coordinates(made).reshape(-1, 4, 2).tolist():
        a, b, c = (place[(x, y)] for x, y in ring[:3])
        if _twice_area(points[a], points[b], points[c]) < 0.0:
            b, c = c, b
        least = min(a, b, c)
        found.append((a, b, c) if least == a else (b, c, a) if least == b else (c, a, b))
    return tuple(sorted(found))


@lru_cache(maxsize=512)
def trimmed(facets: Facets, to: Rectangle) -> Facets:
    """What of the facets lies within a rectangle; points that no facet needs are left out."""
    x_low, y_low, x_high, y_high = to
    sides = ((0, x_low, -1.0), (0, x_high, 1.0), (1, y_low, -1.0), (1, y_high, 1.0))
    beyond = [
        (x < x_low - _ON) + 2 * (x > x_high + _ON) + 4 * (y < y_low - _ON) + 8 * (y > y_high + _ON)
        for x, y, _ in facets.points
    ]
    work = _Trimming(list(facets.points))
    faces: list[tuple[int, ...]] = []
    for whole in facets.faces:
        every, some = 15, 0
        for k in whole:
            every &= beyond[k]
            some |= beyond[k]
        if every:
            continue
        face = whole
        # No side cuts what none of a facet's corners lies beyond.
        for side, (axis, at, way) in enumerate(sides) if some else ():
            if some >> side & 1:
                face = work.beside(face, side, axis, at, way)
                if not face:
                    break
        if face:
            faces.append(face)
    kept = sorted({k for face in faces for k in face})
    new = {old: k for k, old in enumerate(kept)}
    return Facets(
        tuple(work.points[k] for k in kept),
        tuple(tuple(new[k] for k in face) for face in faces),
    )


@dataclass(slots=True)
class _Trimming:
    """Points, growing by those where a side of the rectangle cuts an arris."""

    points: list[Vec3]
    cut: dict[tuple[int, int, int], int] = field(default_factory=dict)

    def beside(
        self, face: tuple[int, ...], side: int, axis: int, at: float, way: float
    ) -> tuple[int, ...]:
        """A facet less all beyond one side; empty where nothing is left."""
        beyond = [way * (self.points[k][axis] - at) for k in face]
        if max(beyond) <= _ON:
            return face
        if min(beyond) >= -_ON:
            return ()
        left: list[int] = []
        before, before_off = face[-1], beyond[-1]
        for here, off in zip(face, beyond, strict=True):
            if (before_off < -_ON and off > _ON) or (before_off > _ON and off < -_ON):
                left.append(self._crossing(before, here, side, axis, at))
            if off <= _ON:
                left.append(here)
            before, before_off = here, off
        if len(left) < 3 or self._area(left) < _SLIVER:
            return ()
        return tuple(left)

    def _crossing(self, here: int, there: int, side: int, axis: int, at: float) -> int:
        low, high = min(here, there), max(here, there)
        known = self.cut.get((low, high, side))
        if known is not None:
            return known
        (px, py, pz), (qx, qy, qz) = self.points[low], self.points[high]
        if axis == 0:
            share = (at - px) / (qx - px)
            crossing = (at, py + share * (qy - py), pz + share * (qz - pz))
        else:
            share = (at - py) / (qy - py)
            crossing = (px + share * (qx - px), at, pz + share * (qz - pz))
        self.points.append(crossing)
        self.cut[(low, high, side)] = len(self.points) - 1
        return len(self.points) - 1

    def _area(self, face: Sequence[int]) -> float:
        x0, y0, _ = self.points[face[0]]
        doubled, u, v = 0.0, 0.0, 0.0
        for k in face[1:]:
            x, y, _ = self.points[k]
            doubled += u * (y - y0) - (x - x0) * v
            u, v = x - x0, y - y0
        return doubled / 2.0


def _twice_area(a: Sequence[float], b: Sequence[float], c: Sequence[float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
