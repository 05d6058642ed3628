"""Which way two joined parts come apart.

Frame: directions in bench coordinates, unit vectors; a direction is that in which the second part
of a joint leaves the first.

Method: a direction serves when it does not run against any declared contact's normal, and when the
solids, moved a little that way, share no volume.  Of those the bench's own axes come first, as they
are the easiest to read, then the axes of the two parts, then the normals themselves; within each
group the one that leaves the contacts most squarely.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import (
    X_AXIS,
    Y_AXIS,
    Z_AXIS,
    Frame,
    Vec3,
    add,
    cross,
    dot,
    norm,
    scale,
    subtract,
)
from geometry.solids.measure import shared_volume

HELD = 0.02
"""The sine of the slant at which a face still lets a part slide by: a drawing, not a press."""

_TRIED = (3.0, 20.0)  # mm: past the usual clearance, and past a generous one
_TOUCH = 1.0  # mm³: less is rounding, or a corner in passing
_SAME = 1e-3  # between two directions: a slope of a degree already jams in a joint that is all fit
_HARDLY_AXIS = 0.35  # of the best: an axis that leaves the contacts more slantingly is no use


@dataclass(frozen=True, slots=True)
class Holds:
    """What holds a part to another: unit normals out of the other, with the areas of the faces."""

    normals: tuple[Vec3, ...]
    areas: tuple[float, ...]

    def against(self, direction: Vec3) -> float:
        """How squarely the worst face stands in the way, 0 when none does."""
        return max(0.0, -min((dot(n, direction) for n in self.normals), default=0.0))

    def freed(self, direction: Vec3) -> float:
        """How much of the faces a move leaves, 1 when it is square to all of them."""
        total = sum(self.areas)
        parted = sum(
            area * max(0.0, dot(n, direction))
            for n, area in zip(self.normals, self.areas, strict=True)
        )
        return parted / total if total else 0.0


def holds_of(joint: Joint, part_name: str) -> Holds:
    """What holds the named part of a joint to the other one."""
    sign = 1.0 if joint.parts[1] == part_name else -1.0
    return Holds(
        tuple(scale(contact.normal, sign) for contact in joint.contacts),
        tuple(_area(contact.corners) for contact in joint.contacts),
    )


def ways_out(joints: Sequence[Joint], part: Part, parts: Mapping[str, Part]) -> Iterator[Vec3]:
    """The directions in which ``part`` can leave the other parts of these joints, best first.

    None when it is held on every side.
    """
    holds = [holds_of(joint, part.name) for joint in joints]
    others = [parts[name] for joint in joints for name in joint.parts if name != part.name]
    for direction in _ranked(holds, [part, *others]):
        if all(_goes_free(part, other, direction) for other in others):
            yield direction


@lru_cache(maxsize=2048)  # of a bench: one taken apart is looked at from several sides
def _goes_free(part: Part, other: Part, direction: Vec3) -> bool:
    """Whether a part does not run into another when it leaves that way."""
    aside = (moved(part, scale(direction, distance)) for distance in _TRIED)
    return all(shared_volume(one, other) < _TOUCH for one in aside)


def way_apart(joint: Joint, parts: Mapping[str, Part]) -> Vec3:
    """The best direction in which the second part leaves the first; for a joint that holds on
    every side, the mean of what its faces look into."""
    second = parts[joint.parts[1]]
    for way in ways_out((joint,), second, parts):
        return way
    x, y, z = (sum(contact.normal[i] for contact in joint.contacts) for i in range(3))
    size = norm((x, y, z))
    return scale((x, y, z), 1.0 / size) if size > HELD else Z_AXIS


def moved(part: Part, by: Vec3) -> Part:
    """The part standing elsewhere."""
    frame = part.frame
    at = Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)
    return replace(part, frame=at)


def _ranked(holds: Sequence[Holds], parts: Sequence[Part]) -> list[Vec3]:
    """The directions that no declared face stands against, the best to read first."""
    own = [a for part in parts for a in (part.frame.x_axis, part.frame.y_axis, part.frame.z_axis)]
    groups = (
        _both_ways((X_AXIS, Y_AXIS, Z_AXIS)),
        _both_ways(own),
        [normal for hold in holds for normal in hold.normals],
    )
    found: list[tuple[int, float, Vec3]] = []
    for group, directions in enumerate(groups):
        for direction in directions:
            held = any(hold.against(direction) > HELD for hold in holds)
            if not held and all(norm(subtract(direction, d)) > _SAME for _, _, d in found):
                found.append((group, sum(hold.freed(direction) for hold in holds), direction))
    best = max((freed for _, freed, _ in found), default=0.0)
    useful = [
        (group if freed >= _HARDLY_AXIS * best else len(groups), -freed, direction)
        for group, freed, direction in found
    ]
    return [direction for _, _, direction in sorted(useful, key=lambda one: one[:2])]


def _both_ways(axes: Sequence[Vec3]) -> list[Vec3]:
    return [scale(axis, sign) for axis in axes for sign in (1.0, -1.0)]


def _area(corners: Sequence[Vec3]) -> float:
    """Area in mm² of a flat polygon, as a fan of triangles."""
    total: Vec3 = (0.0, 0.0, 0.0)
    for one, other in pairwise(corners[1:]):
        total = add(total, cross(subtract(one, corners[0]), subtract(other, corners[0])))
    return norm(total) / 2.0
