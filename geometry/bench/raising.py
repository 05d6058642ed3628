"""Which points of a relief to raise, and by how much, so that its grooves keep their land.

Method: where the land is least, the facet there tells how much of each corner's depth comes to
that place; the corner that counts most is raised just enough, or up to the face.  That is done
again wherever land is still missing, each time with no more than that place needs.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.bench.carving_numbers import Carving, carving_of, finished_edges, groove_of
from geometry.bench.carving_pattern import Moved, Pattern, moved_text, points_of, with_point
from geometry.bench.drawer_numbers import Drawer, drawers
from geometry.bench.groove_land import least_land
from geometry.bench.relief_surface import Spot, spots_of
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2

_ROUNDS = 80
_NEAR = 1e-4  # mm
_FINE = 1e5  # a share is kept to so many parts


@dataclass(frozen=True, slots=True)
class Raised:
    """Points by number with how far each comes up in mm, and the text that says so in a spec."""

    points: tuple[tuple[int, float], ...]
    moved: str


def raised_for_land(spec: BenchSpec) -> Raised | None:
    """What cures every groove that lacks land; None when raising points does not, or need not."""
    carving, land = carving_of(spec), spec.number("finger_land")
    if carving is None or groove_of(spec) is None:
        return None
    start, now = carving.pattern, spec
    for _ in range(_ROUNDS):
        lacking, at = _worst(now, land)
        if lacking <= _NEAR:
            break
        pattern = _raised_at(carving, at, lacking)
        if pattern is None:
            return None
        now = now.changed({"carving_moved": moved_text(pattern.moved)})
        carving = carving_of(now)
        assert carving is not None
    else:
        return None
    rises = _rises(start, carving.pattern, carving.depth)
    return Raised(rises, now.word("carving_moved")) if rises else None


def _worst(spec: BenchSpec, land: float) -> tuple[float, Vec2]:
    """How much land is missing where it is missing most, and where in the picture."""
    found = [(least_land(spec, drawer), drawer) for drawer in drawers(spec)]
    least, drawer = min(found, key=lambda one: one[0].wood)
    return land - least.wood, _in_picture(spec, drawer, least.at)


def _in_picture(spec: BenchSpec, drawer: Drawer, at: Vec2) -> Vec2:
    carving = carving_of(spec)
    assert carving is not None
    left, top, _, _ = finished_edges(spec, drawer)
    return (
        drawer.x_low - carving.picture.x_low + at[0] - left,
        drawer.z_high - carving.picture.z_low - (at[1] - top),
    )


def _raised_at(carving: Carving, at: Vec2, by: float) -> Pattern | None:
    """The pattern with one corner of the facet at a place raised so that the place rises ``by``."""
    weights = _weights(carving, at)
    able = [(share, spot) for share, spot in weights if share > 1e-6 and spot.at[2] > _NEAR]
    if not able:
        return None
    share, spot = max(able, key=lambda one: (one[0], -one[1].number))
    point = points_of(carving.pattern)[spot.number - 1]
    deep = max(0.0, spot.at[2] - by / share) / carving.depth
    deep = math.floor(deep * _FINE) / _FINE
    return with_point(carving.pattern, Moved(point.number, point.across, point.up, deep))


def _weights(carving: Carving, at: Vec2) -> list[tuple[float, Spot]]:
    """How much of each corner's depth comes to a place: barycentric shares of its facet."""
    picture = carving.picture
    spots = spots_of(carving.pattern, picture.width, picture.height, carving.depth)
    best: list[tuple[float, Spot]] = []
    inmost = -math.inf
    for face in carving.surface.faces:
        if len(face) != 3 or max(face) >= len(spots):
            continue
        corners = [spots[k] for k in face]
        shares = _shares([spot.at[:2] for spot in corners], at)
        if min(shares) > inmost:
            inmost = min(shares)
            best = list(zip(shares, corners, strict=True))
    return best


def _shares(corners: list[Vec2], at: Vec2) -> tuple[float, float, float]:
    (ax, ay), (bx, by), (cx, cy) = corners
    whole = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay)
    second = ((at[0] - ax) * (cy - ay) - (cx - ax) * (at[1] - ay)) / whole
    third = ((bx - ax) * (at[1] - ay) - (at[0] - ax) * (by - ay)) / whole
    return (1.0 - second - third, second, third)


def _rises(before: Pattern, after: Pattern, depth: float) -> tuple[tuple[int, float], ...]:
    return tuple(
        (old.number, (old.deep - new.deep) * depth)
        for old, new in zip(points_of(before), points_of(after), strict=True)
        if new.deep < old.deep
    )
