"""Whether a bench can be put together: an order, with a straight way for each part or group.

Frame and units: bench frame, mm; ways are unit vectors.

Method: a bench is taken apart in thought, and the order read backward.  For one way, part i is held
by part j when i, moved along it to any distance, would run into j.  A group can leave along the way
when none of its parts is held by one outside it; the smallest such group is what a part must take
along, found by following who holds whom.  The group and the rest are then taken apart in the same
manner, each with every way there is, until single parts are left, or parts that hold each other
along every way (R. H. Wilson and J.-C. Latombe, Geometric reasoning about mechanical assembly,
Artificial Intelligence 71 (1994), from memory).  Ways tried are the bench's axes, the parts' own,
and the normals of the faces that meet with those square to two of them.  What still holds is tried
once more all at once: each part that is joined to one of them goes its own way out of it, all
equally fast, and the rest goes with its neighbours, as a back of splayed posts goes home into its
seat; any two parts then move along a straight line against each other, so the same test holds.
A turn, or a frame that is sprung open, is not tried.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Vec3, cross, norm, scale, unit
from geometry.solids.cutting import placed
from geometry.solids.sweeping import blocking, holding_in_steps

_SAME_WAY = 4  # decimals to which two ways are one
_LEAST_SINE = 0.05  # normals nearer to parallel give no way of their own
_STILL = 1e-3  # two parts that move alike to this share keep together
_MOST_SQUARE = 40  # ways square to two normals, tried only when the others fail

Held = np.ndarray


@dataclass(frozen=True, slots=True)
class Move:
    """Parts that come as one, and how they come: a direction, its length how fast."""

    parts: tuple[str, ...]
    way: Vec3


@dataclass(frozen=True, slots=True)
class Step:
    """What comes at one time, nearly always one group of parts, ``onto`` those that stand."""

    moves: tuple[Move, ...]
    onto: tuple[str, ...]

    @property
    def groups(self) -> tuple[tuple[str, ...], ...]:
        """What stands, and each group that comes."""
        return (self.onto, *(move.parts for move in self.moves))


@dataclass(frozen=True, slots=True)
class Assembly:
    """``steps`` in the order of putting together; ``locked`` groups that nothing could part."""

    steps: tuple[Step, ...]
    locked: tuple[tuple[str, ...], ...]


def in_steps(parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> Generator[None, None, Assembly]:
    """How a bench goes together; the search stops for breath every few milliseconds."""
    ways = _Ways(parts, joints)
    groups: list[tuple[int, ...]] = [tuple(range(len(parts)))]
    taken: list[Step] = []
    locked: list[tuple[str, ...]] = []
    while groups:
        group = groups.pop()
        if len(group) < 2:
            continue
        parted = None
        for looked in ways.looked_along(group):
            yield
            if looked is None:
                continue
            way, held = looked
            # What the rest may leave along a way may itself leave against it.
            leaving, against = _smallest_leaving(held, group), _smallest_leaving(held.T, group)
            if leaving:
                turned = len(against) < len(leaving)
                parted = (scale(way, -1.0), against) if turned else (way, leaving)
                break
        if parted is None and (opened := ways.all_at_once(group)) is not None:
            onto, moves = opened
            taken.append(ways.step(onto, moves))
            groups += (onto, *(some for some, _ in moves))
            continue
        if parted is None:
            locked.append(tuple(parts[index].name for index in group))
            continue
        way, leaving = parted
        onto = tuple(i for i in group if i not in leaving)
        taken.append(ways.step(onto, [(leaving, way)]))
        groups += [onto, leaving]
    return Assembly(tuple(reversed(taken)), tuple(locked))


class _Ways:
    """The ways to try, and who holds whom along each, looked up once."""

    def __init__(self, parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> None:
        self._solids = [placed(part) for part in parts]
        # Of each way, the group that was looked at last and who of it holds whom.
        self._held: dict[Vec3, tuple[tuple[int, ...], Held]] = {}
        self._plain = tuple(_plain_ways(parts, joints))
        self._parts = parts
        self._names = [part.name for part in parts]
        self._joints = joints

    def looked_along(self, group: tuple[int, ...]) -> Iterator[tuple[Vec3, Held] | None]:
        """Each way with the table of who of the group holds whom, those already looked along first.

        None while a way is still being looked along.
        """
        known = [way for way in self._plain if way in self._held]
        fresh = [way for way in self._plain if way not in self._held]
        for way in (*known, *fresh, *_square_ways(self._joints_of(group), set(self._plain))):
            if way not in self._held or not set(group) <= set(self._held[way][0]):
                for held in _told(holding_in_steps([self._solids[k] for k in group], way)):
                    if held is None:
                        yield None
                    else:
                        self._held[way] = group, held
            among, held = self._held[way]
            rows = [among.index(k) for k in group]
            yield way, held[np.ix_(rows, rows)]

    def step(self, onto: tuple[int, ...], leaving: list[tuple[tuple[int, ...], Vec3]]) -> Step:
        """The step that puts together what leaves along these ways."""
        moves = [Move(self._named(some), scale(way, -1.0)) for some, way in leaving]
        return Step(tuple(moves), self._named(onto))

    def all_at_once(
        self, group: tuple[int, ...]
    ) -> tuple[tuple[int, ...], list[tuple[tuple[int, ...], Vec3]]] | None:
        """What stays while all others leave it at once, and each of those with its way."""
        for base in group:
            speeds = self._speeds(base, group)
            if speeds is not None and self._goes_free(group, speeds):
                together: dict[Vec3, list[int]] = {}
                for index in group:
                    sx, sy, sz = np.round(speeds[index], _SAME_WAY).tolist()
                    together.setdefault((sx, sy, sz), []).append(index)
                onto = next(tuple(some) for some in together.values() if base in some)
                return onto, [
                    (tuple(some), way) for way, some in together.items() if base not in some
                ]
        return None

    def _named(self, group: tuple[int, ...]) -> tuple[str, ...]:
        return tuple(self._names[index] for index in group)

    def _speeds(self, base: int, group: tuple[int, ...]) -> dict[int, Held] | None:
        """How each part moves when all leave ``base``, whose neighbours go along their grain."""
        near: dict[int, set[int]] = {index: set() for index in group}
        for joint in self._joints_of(group):
            first, second = (self._names.index(name) for name in joint.parts)
            near[first].add(second)
            near[second].add(first)
        if len(near[base]) < 2 or len(group) < 3:
            return None
        own: dict[int, Held] = {}
        for index in near[base]:
            axis = self._parts[index].frame.x_axis
            pair = [self._solids[index], self._solids[base]]
            free = [w for w in (axis, scale(axis, -1.0)) if not blocking(pair, w)[0, 1]]
            if len(free) != 1:
                return None
            own[index] = np.array(free[0])
        mean = np.sum(list(own.values()), axis=0)
        mean /= max(float(np.linalg.norm(mean)), _LEAST_SINE)
        if any(float(way @ mean) < _LEAST_SINE for way in own.values()):
            return None
        speeds = {index: way / float(way @ mean) for index, way in own.items()}
        speeds[base] = np.zeros(3)
        while len(speeds) < len(group):
            ring = {
                index: [speeds[other] for other in near[index] if other in speeds]
                for index in group
                if index not in speeds and near[index] & set(speeds)
            }
            if not ring:
                return None
            speeds |= {index: np.mean(beside, axis=0) for index, beside in ring.items()}
        return speeds

    def _goes_free(self, group: tuple[int, ...], speeds: dict[int, Held]) -> bool:
        """Whether no two parts run into each other, moving so."""
        for first, second in combinations(group, 2):
            x, y, z = (speeds[first] - speeds[second]).tolist()
            if norm((x, y, z)) < _STILL:
                continue
            pair = [self._solids[first], self._solids[second]]
            if blocking(pair, unit((x, y, z)))[0, 1]:
                return False
        return True

    def _joints_of(self, group: tuple[int, ...]) -> list[Joint]:
        names = {self._names[index] for index in group}
        return [joint for joint in self._joints if set(joint.parts) <= names]


def _told(work: Generator[None, None, Held]) -> Iterator[Held | None]:
    """None after each step of some work, then what it comes to."""
    yield (yield from work)


def _plain_ways(parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> Iterator[Vec3]:
    """The bench's axes, the normals of faces that meet, and the parts' own axes, both ways."""
    normals = [contact.normal for joint in joints for contact in joint.contacts]
    axes = [
        axis for part in parts for axis in (part.frame.x_axis, part.frame.y_axis, part.frame.z_axis)
    ]
    seen: set[Vec3] = set()
    for way in (Z_AXIS, Y_AXIS, X_AXIS, *normals, *axes):
        for both in (way, scale(way, -1.0)):
            yield from _fresh(both, seen)


def _square_ways(joints: list[Joint], seen: set[Vec3]) -> Iterator[Vec3]:
    """Ways along two of the faces that meet at once."""
    normals = {
        tuple(round(x, _SAME_WAY) for x in contact.normal)
        for joint in joints
        for contact in joint.contacts
    }
    count = 0
    for first, second in combinations(sorted(normals), 2):
        square = cross((first[0], first[1], first[2]), (second[0], second[1], second[2]))
        if norm(square) < _LEAST_SINE:
            continue
        for both in (unit(square), scale(unit(square), -1.0)):
            for way in _fresh(both, seen):
                yield way
                count += 1
        if count >= _MOST_SQUARE:
            return


def _fresh(way: Vec3, seen: set[Vec3]) -> Iterator[Vec3]:
    """The way, rounded, unless it has been seen."""
    x, y, z = (round(part, _SAME_WAY) + 0.0 for part in unit(way))
    if (x, y, z) not in seen:
        seen.add((x, y, z))
        yield (x, y, z)


def _smallest_leaving(held: Held, group: tuple[int, ...]) -> tuple[int, ...]:
    """The smallest part of a group that can leave it along a way; empty when none can."""
    reach = held | np.eye(len(group), dtype=bool)
    while True:
        further = (reach.astype(np.intp) @ reach.astype(np.intp)) > 0
        if (further == reach).all():
            break
        reach = further
    sizes = reach.sum(axis=1)
    best = int(sizes.argmin())
    if sizes[best] == len(group):
        return ()
    return tuple(group[k] for k in np.nonzero(reach[best])[0])
