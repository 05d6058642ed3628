"""The bench taken apart: how far each part moves so that none covers another in a view.

Frame and units: bench coordinates, mm.

Method: the part with most joints stays.  Its neighbours follow, and theirs, each leaving the parts
already placed in a direction in which its joints let it go (see ``parting``), from where those
parts now are, and as far as it takes until its outline in the view is clear of all of them (see
``clearing``).  What is joined to nothing placed
(a base that only carries, a drawer on its runners) moves as a whole, the shortest open way.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.joints.face_to_face import SLIDING
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Vec3, add, dot, scale
from geometry.solids.cutting import placed
from geometry.solids.measure import volume_of
from geometry.solids.solid import Floats
from geometry.views.clearing import first_clear, outline, overlaps, standing
from geometry.views.parting import way_apart, ways_out
from geometry.views.view import View

_BOTH_WAYS = tuple(scale(axis, sign) for axis in (X_AXIS, Y_AXIS, Z_AXIS) for sign in (1.0, -1.0))
_WAYS = 3  # of those in which a part could go, so many are tried
_WORSE = 0.7  # a later way must be so much shorter than an earlier one
_STILL = (0.0, 0.0, 0.0)
_TOUCHING = 1.0  # mm: boxes that overlap by less only touch
_FAVOUR = 0.5  # of its true length: the way on which a group stands off already
_SEEN = 0.2  # sine of the angle to the line of sight under which a move does not show


@dataclass(frozen=True, slots=True)
class Exploded:
    """Where each part goes: ``offsets`` in mm, in the order of the parts; ``ties`` are pairs of
    parts with the place in the bench where they part."""

    offsets: tuple[Vec3, ...]
    ties: tuple[tuple[int, int, Vec3], ...]


def exploded(parts: Sequence[Part], joints: Sequence[Joint], view: View, air: float) -> Exploded:
    """Offsets with which all parts stand at least ``air`` mm apart in the view."""
    return _Taking(parts, joints, view, air).apart()


class _Taking:
    """Taking a bench apart; holds what is placed so far."""

    def __init__(
        self, parts: Sequence[Part], joints: Sequence[Joint], view: View, air: float
    ) -> None:
        self._parts = parts
        self._by_name = {part.name: part for part in parts}
        self._index = {part.name: index for index, part in enumerate(parts)}
        self._flat = np.array((view.right, view.up))
        self._view = view
        self._air = air
        self._outlines = [outline(part, self._flat) for part in parts]
        self._joints: dict[int, list[Joint]] = {index: [] for index in range(len(parts))}
        for joint in joints:
            for name in joint.parts if joint.kind != SLIDING else ():
                self._joints[self._index[name]].append(joint)
        self._offsets: dict[int, Vec3] = {}
        self._ties: list[tuple[int, int, Vec3]] = []

    def apart(self) -> Exploded:
        left = set(range(len(self._parts)))
        while left:
            root = max(left, key=self._weight)
            group = self._group(root)
            left -= set(group)
            fixed = dict(self._offsets)
            self._offsets = {root: _STILL}
            for index in group[1:]:
                self._place(index)
            if fixed:
                self._move_group(group, fixed)
            self._offsets |= fixed
        offsets = tuple(self._offsets[index] for index in range(len(self._parts)))
        return Exploded(offsets, tuple(self._ties))

    def _weight(self, index: int) -> tuple[int, float]:
        return len(self._joints[index]), volume_of(self._parts[index].shape)

    def _group(self, root: int) -> list[int]:
        """All parts joined to the root, however far, nearest first and in the bench's order."""
        order, ring = [root], [root]
        known = {root}
        while ring:
            ring = sorted({n for index in ring for n in self._neighbours(index)} - known)
            known |= set(ring)
            order += ring
        return order

    def _neighbours(self, index: int) -> list[int]:
        return [self._other(joint, index) for joint in self._joints[index]]

    def _other(self, joint: Joint, index: int) -> int:
        first, second = (self._index[name] for name in joint.parts)
        return second if first == index else first

    def _place(self, index: int) -> None:
        """Move a part away from those it is joined to, until it is clear of all that is placed."""
        part = self._parts[index]
        joints = [j for j in self._joints[index] if self._other(j, index) in self._offsets]
        best: tuple[float, Vec3, list[Joint]] | None = None
        for way, held in self._ways(part, joints):
            aligned = [self._offsets[self._other(joint, index)] for joint in held]
            base = _beyond(aligned, way)
            distance = self._clear([index], base, way)
            if best is None or distance < _WORSE * best[0]:
                best = (distance, add(base, scale(way, distance)), held)
        assert best is not None, part.name
        self._offsets[index] = best[1]
        for joint in best[2][:1]:
            corners = [corner for contact in joint.contacts for corner in contact.corners]
            if corners:
                x, y, z = np.array(corners).mean(axis=0).tolist()
                self._ties.append((self._other(joint, index), index, (x, y, z)))

    def _ways(self, part: Part, joints: list[Joint]) -> list[tuple[Vec3, list[Joint]]]:
        """Directions to try, with the joints that each one is meant for."""
        found: list[tuple[Vec3, list[Joint]]] = []
        for way in ways_out(joints, part, self._by_name):
            if self._shows(way):
                found.append((way, joints))
            if len(found) == _WAYS:
                return found
        for joint in () if found else joints:
            for way in ways_out((joint,), part, self._by_name):
                if self._shows(way):
                    found.append((way, [joint]))
                    break
        if len({self._offsets[self._other(joint, self._index[part.name])] for joint in joints}) > 1:
            # Held between parts that have moved already: any side will do to show it.
            found += [(way, joints) for way in _BOTH_WAYS if self._shows(way)]
        if not found:
            way = way_apart(joints[0], self._by_name)
            sign = 1.0 if joints[0].parts[1] == part.name else -1.0
            way = scale(way, sign)
            shown = way if self._shows(way) else next(w for w in _BOTH_WAYS if self._shows(w))
            found.append((shown, joints[:1]))
        return found

    def _shows(self, way: Vec3) -> bool:
        return math.hypot(*self._view.project(way)) > _SEEN

    def _move_group(self, group: Sequence[int], fixed: Mapping[int, Vec3]) -> None:
        """Move what is joined to nothing placed out of it, as a whole, the shortest open way."""
        own = dict(self._offsets)
        self._offsets = dict(fixed)
        ways = [way for way in _BOTH_WAYS if self._shows(way)]
        ways = [way for way in ways if self._is_open(group, fixed, way)] or ways
        tries = [(self._clear(group, _STILL, way, own), way) for way in ways]
        away = self._away(group, fixed)
        distance, way = min(tries, key=lambda one: one[0] * (_FAVOUR if one[1] == away else 1.0))
        self._offsets = {index: add(by, scale(way, distance)) for index, by in own.items()}

    def _away(self, group: Sequence[int], fixed: Mapping[int, Vec3]) -> Vec3:
        """The axis along which a group stands farthest off what is placed."""
        here, there = (
            np.array([self._box(index) for index in some]).mean(axis=(0, 1))
            for some in (group, fixed)
        )
        return max(_BOTH_WAYS, key=lambda way: float((here - there) @ np.array(way)))

    def _is_open(self, group: Sequence[int], fixed: Mapping[int, Vec3], way: Vec3) -> bool:
        """Whether boxes round the group's parts, as the bench stands, can go that way for ever."""
        low, high = (np.array([box[k] for box in map(self._box, group)]) for k in (0, 1))
        axis = int(np.abs(way).argmax())
        if way[axis] > 0.0:
            high[:, axis] = np.inf
        else:
            low[:, axis] = -np.inf
        low += _TOUCHING
        high -= _TOUCHING
        for index in fixed:
            there_low, there_high = self._box(index)
            if ((low < there_high).all(axis=1) & (high > there_low).all(axis=1)).any():
                return False
        return True

    def _box(self, index: int) -> tuple[Floats, Floats]:
        solid = placed(self._parts[index])
        return solid.low, solid.high

    def _clear(
        self,
        moving: Sequence[int],
        base: Vec3,
        way: Vec3,
        own: Mapping[int, Vec3] | None = None,
    ) -> float:
        """How far along ``way`` from ``base`` the parts must go to be clear of all placed ones."""
        step = self._flat @ np.array(way)
        there = standing(
            [
                self._outlines[other].moved(self._flat @ np.array(offset))
                for other, offset in self._offsets.items()
            ]
        )
        taken: list[tuple[float, float]] = []
        for index in moving:
            start = add(base, own[index]) if own else base
            going = self._outlines[index].moved(self._flat @ np.array(start))
            taken += overlaps(going, there, step, self._air)
        return first_clear(taken, self._air / math.hypot(*step.tolist()))


def _beyond(offsets: Sequence[Vec3], way: Vec3) -> Vec3:
    """The place from which to go on: in line with the parts left, and past the farthest."""
    mean = np.array(offsets).mean(axis=0)
    along = max(dot(offset, way) for offset in offsets)
    x, y, z = (mean + (along - float(mean @ np.array(way))) * np.array(way)).tolist()
    return (x, y, z)
