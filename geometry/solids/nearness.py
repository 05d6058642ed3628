"""How near a cavity in a piece comes to the other cuts and to the faces of the same piece.

Frame and units: the part's own frame, mm.  Method: boxes tell what is too far away to matter; to a
face of the blank it is the distance from its plane to the nearest corner of the cavity, to anything
else the least distance of the two solids.  Only what has wood between counts: round the middle of
the shortest line there must be some of the finished piece.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.cuts.cut import Blank, Cut
from geometry.cuts.removal import PART_FRAME, HalfSpace, Hull, Removal
from geometry.design.part import Shape
from geometry.primitives.frame import Vec3, add, dot, scale, subtract
from geometry.solids.cavities import Cavity, cavity_of, faces_of
from geometry.solids.cutting import body_of
from geometry.solids.kernel.between import (
    box_of,
    common_middle,
    common_volume,
    corners_of,
    gap,
    is_wood,
    nearest_point,
)
from geometry.solids.kernel.body import Body
from geometry.solids.kernel.cutters import waste_in, waste_of
from geometry.solids.solid import Floats
from shared.tolerances import COPLANAR

_WHOLLY = 0.999  # share of a cavity beyond which it lies in another cut's waste altogether
_TOUCH = 1e-3  # mm³ that two solids which only touch may share by rounding
_ALONG = 0.7  # cosine: a cut that faces the way a mouth does


@dataclass(frozen=True, slots=True)
class Near:
    """A cut, or a face of the blank, and how much wood is left before it; 0 where they meet.

    ``cut`` is None for a face of the blank.  ``place`` is in the middle of the wood that is left,
    ``toward`` the way to it from the cavity, zero where they meet.
    """

    title: str
    distance: float
    place: Vec3
    cut: Cut | None = None
    toward: Vec3 = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, eq=False)
class _Hollow:
    """A cavity, its bodies and the corners of all of them (n, 3)."""

    cavity: Cavity
    bodies: tuple[Body, ...]
    corners: Floats

    @property
    def volume(self) -> float:
        return sum(common_volume(body, PART_FRAME, body, PART_FRAME) for body in self.bodies)


def nearest(shape: Shape, cut: Cut, search: float) -> Near | None:
    """What comes nearest to the cavity of ``cut``, other than the faces that it is open at.

    None where nothing comes within ``search``, or where the cavity goes off with the waste.
    """
    return next(iter(nearby(shape, cut, search)), None)


@lru_cache(maxsize=4096)
def nearby(shape: Shape, cut: Cut, search: float) -> tuple[Near, ...]:
    """All that comes nearer than ``search`` to the cavity of ``cut``, the nearest first."""
    hollow = _hollow(cut, shape.blank)
    if hollow is None or _is_beyond(shape.blank, hollow):
        return ()
    found = [*_to_faces(shape, hollow, search)]
    for other in shape.cuts:
        if other == cut:
            continue
        for removal in other.removals(shape.blank):
            if isinstance(removal, HalfSpace) and _is_mouth(removal, hollow.cavity):
                continue
            near = _to_cut(shape, hollow, removal, search)
            if near is _GONE:
                return ()
            if near is not None:
                found.append(Near(other.title, near.distance, near.place, other, near.toward))
    return tuple(sorted(found, key=lambda one: one.distance))


@lru_cache(maxsize=4096)
def walls(shape: Shape, cut: Cut, search: float) -> tuple[Near, ...]:
    """The faces of the blank alone that come nearer than ``search``, the nearest first."""
    hollow = _hollow(cut, shape.blank)
    found = () if hollow is None else _to_faces(shape, hollow, search)
    return tuple(sorted(found, key=lambda one: one.distance))


def is_in_wood(shape: Shape, cut: Cut) -> bool:
    """Whether any of the cavity of a cut that the piece has not lies where it has wood."""
    hollow = _hollow(cut, shape.blank)
    if hollow is None:
        return False
    within = sum(
        common_volume(body, PART_FRAME, body_of(shape), PART_FRAME) for body in hollow.bodies
    )
    return within > (1.0 - _WHOLLY) * hollow.volume


def corners_of_cavity(cut: Cut, blank: Blank) -> Floats:
    """The corners of the hollow that a cut makes, (n, 3); none for one that makes no hollow."""
    hollow = _hollow(cut, blank)
    return np.empty((0, 3)) if hollow is None else hollow.corners


@lru_cache(maxsize=2048)
def _hollow(cut: Cut, blank: Blank) -> _Hollow | None:
    cavity = cavity_of(cut, blank)
    if cavity is None:
        return None
    bodies = tuple(waste_of(body) for body in cavity.bodies)
    return _Hollow(cavity, bodies, np.concatenate([corners_of(body) for body in bodies]))


def _is_beyond(blank: Blank, hollow: _Hollow) -> bool:
    """Whether a cavity lies in what was sawn off to get the blank."""
    return any(
        float(((hollow.corners - plane.point) @ np.array(plane.outward)).min()) >= 0.0
        for _, plane in faces_of(blank)
    )


def _to_faces(shape: Shape, hollow: _Hollow, search: float) -> Iterator[Near]:
    for name, plane in faces_of(shape.blank):
        if _is_mouth(plane, hollow.cavity):
            continue
        room = -((hollow.corners - plane.point) @ np.array(plane.outward))
        distance = max(0.0, float(room.min()))
        if distance >= search:
            continue
        x, y, z = hollow.corners[room < room.min() + COPLANAR].mean(axis=0).tolist()
        middle = add((x, y, z), scale(plane.outward, distance / 2.0))
        if distance == 0.0:
            yield Near(name, 0.0, (x, y, z))
        elif is_wood(body_of(shape), middle, distance / 2.0):
            yield Near(name, distance, middle, toward=plane.outward)


def _is_mouth(plane: HalfSpace, cavity: Cavity) -> bool:
    """Whether the cavity is cut into the face that a plane leaves.

    One that goes right through, or into an end, is open at whatever faces that way.
    """
    for mouth in cavity.mouths:
        facing = dot(plane.outward, mouth.outward)
        if cavity.runs_out and facing > _ALONG:
            return True
        off = dot(subtract(mouth.point, plane.point), plane.outward)
        if abs(off) < COPLANAR and facing > 1.0 - COPLANAR:
            return True
    return False


_GONE = Near("", 0.0, (0.0, 0.0, 0.0))


def _to_cut(shape: Shape, hollow: _Hollow, removal: Removal, search: float) -> Near | None:
    """To one removal; None where it is farther than ``search``, _GONE where it takes all."""
    if isinstance(removal, HalfSpace):
        room = -((hollow.corners - removal.point) @ np.array(removal.outward))
        if room.min() >= search:
            return None
        if room.max() <= 0.0:
            return _GONE
    waste = _waste(removal, shape.blank)
    found: Near | None = None
    for body in hollow.bodies:
        if not _boxes_near(waste, body, search):
            continue
        distance = gap(body, PART_FRAME, waste, PART_FRAME, search)
        if distance >= search:
            continue
        near = _met(hollow, body, waste) if distance <= 0.0 else None
        if distance > 0.0:
            near = _apart(shape, body, waste, distance, search)
        if near is _GONE:
            return near
        if near is not None and (found is None or near.distance < found.distance):
            found = near
    return found


def _met(hollow: _Hollow, body: Body, waste: Body) -> Near | None:
    taken = sum(common_volume(one, PART_FRAME, waste, PART_FRAME) for one in hollow.bodies)
    if taken >= _WHOLLY * hollow.volume:
        return _GONE
    if common_volume(body, PART_FRAME, waste, PART_FRAME) < _TOUCH:
        return None
    return Near("", 0.0, common_middle(body, waste))


def _apart(shape: Shape, body: Body, waste: Body, distance: float, search: float) -> Near | None:
    """None where there is no wood between them."""
    place = nearest_point(body, waste, search)
    far = nearest_point(waste, body, search)
    if not _opposite(place, far, distance):
        # Where they run side by side the two middles are not opposite each other.
        far = nearest_point(waste, _small(place), search + 1.0)
    middle = scale(add(place, far), 0.5)
    if not is_wood(body_of(shape), middle, distance / 2.0):
        return None
    toward = subtract(far, place)
    return Near("", distance, middle, toward=scale(toward, 1.0 / max(distance, COPLANAR)))


def _opposite(place: Vec3, far: Vec3, distance: float) -> bool:
    apart = subtract(far, place)
    return dot(apart, apart) < (distance + 0.2) ** 2


def _small(place: Vec3) -> Body:
    """A body that stands for a point."""
    x, y, z = place
    e = 1e-3
    return waste_of(
        Hull(((x, y, z + e), (x + e, y, z - e), (x - e, y + e, z - e), (x - e, y - e, z - e)))
    )


@lru_cache(maxsize=4096)
def _waste(removal: Removal, blank: Blank) -> Body:
    return waste_in(removal, blank) if isinstance(removal, HalfSpace) else waste_of(removal)


def _boxes_near(first: Body, second: Body, search: float) -> bool:
    (low, high), (other_low, other_high) = box_of(first), box_of(second)
    return all(
        low[axis] < other_high[axis] + search and other_low[axis] < high[axis] + search
        for axis in range(3)
    )
