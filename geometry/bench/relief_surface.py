"""The faceted surface of a pattern over a picture, and what of it lies on one front.

Frame and units: mm; x from the picture's left, y up from its lower edge, z the depth below the
fronts' faces.  Round the picture the surface runs on level, as the fronts are cut larger than
they will be and are carved before they are fitted.

Which points are joined to facets depends on the pattern alone, so that no arris jumps while the
bench grows: it is found in a picture of the proportion that the points were scattered for.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.carving_pattern import WIDE, Pattern, points_of
from geometry.primitives.facets import Facets, Rectangle, delaunay, trimmed
from geometry.primitives.frame import Vec2, Vec3

NEAREST = 0.5  # mm: a point nearer than this to one before it is left out
_AROUND = 40.0  # mm, more than any front is cut larger


@dataclass(frozen=True, slots=True)
class Picture:
    """The rectangle of all carved fronts and the gaps between them, in bench X and Z."""

    x_low: float
    x_high: float
    z_low: float
    z_high: float

    @property
    def width(self) -> float:
        return round(self.x_high - self.x_low, 9)

    @property
    def height(self) -> float:
        return round(self.z_high - self.z_low, 9)


@dataclass(frozen=True, slots=True)
class Spot:
    """A point of the pattern in the picture: mm, ``mirrored`` for the image of one."""

    number: int
    mirrored: bool
    at: Vec3


@lru_cache(maxsize=64)
def spots_of(pattern: Pattern, width: float, height: float, depth: float) -> tuple[Spot, ...]:
    """Every point in a picture so large; images come after all points, in their order."""
    own: list[Spot] = []
    for point in points_of(pattern):
        x, y = round(point.across * width, 9), round(point.up * height, 9)
        if all(math.dist((x, y), other.at[:2]) >= NEAREST for other in own):
            own.append(Spot(point.number, False, (x, y, round(point.deep * depth, 6))))
    if not pattern.mirrored:
        return tuple(own)
    middle = round(0.5 * width, 9)
    images = [
        Spot(spot.number, True, (round(width - spot.at[0], 9), *spot.at[1:]))
        for spot in own
        if spot.at[0] < middle
    ]
    return (*own, *images)


@lru_cache(maxsize=64)
def surface_of(pattern: Pattern, width: float, height: float, depth: float) -> Facets:
    """The facets of a picture so large, and round it."""
    spots = spots_of(pattern, width, height, depth)
    own = [spot for spot in spots if not spot.mirrored]
    faces = list(_joined(pattern, tuple(spot.number for spot in own)))
    if pattern.mirrored:
        place = {spot.number: k for k, spot in enumerate(spots) if spot.mirrored}
        image = [place.get(spot.number, k) for k, spot in enumerate(own)]
        faces += [tuple(image[k] for k in reversed(face)) for face in faces]
    return _run_on(Facets(tuple(spot.at for spot in spots), tuple(faces)))


@lru_cache(maxsize=64)
def _joined(pattern: Pattern, numbers: tuple[int, ...]) -> tuple[tuple[int, ...], ...]:
    """The facets between these points of a pattern, as places among them."""
    shares = {point.number: (WIDE * point.across, point.up) for point in points_of(pattern)}
    return delaunay(tuple(shares[number] for number in numbers))


def _run_on(facets: Facets) -> Facets:
    """The facets with a level strip along each border, and the corners between the strips."""
    points: dict[Vec3, int] = {point: k for k, point in enumerate(facets.points)}
    faces = list(facets.faces)

    def beyond(k: int, way: Vec2) -> int:
        x, y, z = facets.points[k]
        out = (x + _AROUND * way[0], y + _AROUND * way[1], z)
        return points.setdefault(out, len(points))

    ways: dict[int, list[Vec2]] = {}
    for a, b in _border(facets.faces):
        way = _outward(facets.points[a], facets.points[b])
        faces.append((b, a, beyond(a, way), beyond(b, way)))
        for k in (a, b):
            ways.setdefault(k, []).append(way)
    for k, found in ways.items():
        if len(set(found)) == 2:  # a corner: its two strips leave a square
            first, second = sorted(found, key=lambda way: _turn(way, found))
            both = (first[0] + second[0], first[1] + second[1])
            faces.append((k, beyond(k, first), beyond(k, both), beyond(k, second)))
    return Facets(tuple(points), tuple(faces))


@lru_cache(maxsize=64)
def _border(faces: tuple[tuple[int, ...], ...]) -> tuple[tuple[int, int], ...]:
    """The sides of facets that have none on their other side."""
    sides = {(a, b) for face in faces for a, b in zip(face, (*face[1:], face[0]), strict=True)}
    return tuple(sorted(side for side in sides if side[::-1] not in sides))


def _turn(way: Vec2, both: list[Vec2]) -> bool:
    """False for the way from which a quarter turn to the left leads to the other."""
    other = both[1] if way == both[0] else both[0]
    return way[0] * other[1] - way[1] * other[0] < 0.0


def _outward(a: Vec3, b: Vec3) -> Vec2:
    """The way out across a stretch of the border, which is upright or level."""
    if a[0] == b[0]:
        return (-1.0, 0.0) if a[0] == 0.0 else (1.0, 0.0)
    assert a[1] == b[1], (a, b)
    return (0.0, -1.0) if a[1] == 0.0 else (0.0, 1.0)


@lru_cache(maxsize=512)
def on_front(surface: Facets, corner: Vec2, over: Rectangle) -> Facets:
    """The surface in the frame of a front, within a rectangle there.

    ``corner`` is the front's own corner (x = 0, y = 0) in the picture; y runs down from it.
    """
    left, top = corner
    x_low, y_low, x_high, y_high = over
    within = trimmed(surface, (left + x_low, top - y_high, left + x_high, top - y_low))
    return Facets(
        tuple((round(x - left, 9), round(top - y, 9), z) for x, y, z in within.points),
        tuple(face[::-1] for face in within.faces),
    )
