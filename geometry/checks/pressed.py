"""The ways in which clamps could press each glued joint: straight lines, and their pads.

Frame and units: bench frame, mm, degrees.

Method: the faces that must be pressed are those of a joint that meet without play; their common
normal is the way to press.  Lines along it, and along the axes of the two parts and of the bench,
are followed through the joint to the outer faces (``geometry.solids.pressing``), among all that is
glued up with it.
"""

from __future__ import annotations

import math
from collections.abc import Generator
from dataclasses import dataclass, replace

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.lipped import LIPPED
from geometry.bench.made_apart import made_apart
from geometry.bench.member import THE_BODY
from geometry.design.joint import Contact, Joint
from geometry.design.part import Part, Shape
from geometry.joints.closing import Closing, closing_of
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Vec3, dot, scale, unit
from geometry.solids.cutting import placed
from geometry.solids.pressing import Pads, Stack

_NO_PLAY = 1e-6  # mm: faces that meet with more between them slide past each other
_ASLANT = math.cos(math.radians(60.0))  # a keyed joint still goes home so far off its own way
_ASIDE = math.cos(math.radians(85.0))  # one of two clamps adds something to closing
_ALIKE = 1.0 - 1e-4  # cosine of the angle within which faces look one way
_SAME_WAY = 1.0 - 1e-7  # ways that are one but for rounding
_LONG = 1000.0  # mm: beyond it, a clamp is also tried within less of the glue-up


@dataclass(frozen=True, slots=True)
class Press:
    """A line of a clamp through a joint, and how far it leans from square to the joint's faces."""

    way: Vec3
    pads: Pads


_SPREAD = ("round tenon", "post tenon")  # kinds that hold by themselves once they are wedged


@dataclass(frozen=True, slots=True)
class Pressed:
    """The ways in which a joint could be pressed, ``square`` the way it should be."""

    joint: Joint
    title: str
    square: Vec3
    place: Vec3
    presses: tuple[Press, ...]


def pressed_in_steps(bench: Bench) -> Generator[None, None, tuple[Pressed, ...]]:
    """Every joint that clamps have to press; stops every few milliseconds."""
    apart = made_apart(bench.spec)
    parts = {part.name: part for part in bench.parts}
    wedged = {name for joint in bench.joints if joint.kind == "wedge" for name in joint.parts}
    stacks: dict[frozenset[str], Stack] = {}
    found: list[Pressed] = []
    for joint in bench.joints:
        how = closing_of(joint)
        if how is None or how is Closing.ITSELF:
            continue
        if joint.kind in _SPREAD and joint.parts[0] in wedged:
            continue
        titles = frozenset(apart.get(name, THE_BODY) for name in joint.parts)
        together = frozenset(name for name in parts if apart.get(name, THE_BODY) in titles)
        faces = _faces_to_press(joint)
        square = unit(faces[0].normal)
        spots = _spots(faces)
        ways = _ways(square, [parts[name] for name in joint.parts], how)
        presses: list[Press] = []
        if joint.kind == LIPPED:
            together = _lipped(bench, joint.parts[1])
        for names in (together, together & _beside(bench, joint, square)):
            if names not in stacks:
                pieces = (one for one in bench.parts if one.name in names)
                if joint.kind == LIPPED:
                    pieces = (_unmitred(one) for one in pieces)
                stacks[names] = Stack([placed(one) for one in pieces])
            yield
            for way in ways:
                pads = _best(stacks[names], spots, way)
                if pads is not None:
                    presses.append(Press(way, pads))
                yield
            if presses and min(press.pads.reach for press in presses) <= _LONG:
                break
        title = " and ".join(sorted(titles))
        found.append(Pressed(joint, title, square, spots[0], tuple(presses)))
    return tuple(found)


def _unmitred(part: Part) -> Part:
    """A piece before its mitres are sawn, in a board and its lippings at once."""
    cuts = tuple(cut for cut in part.shape.cuts if cut.title != "mitre")
    return replace(part, shape=Shape(part.shape.blank, cuts))


def _lipped(bench: Bench, board: str) -> frozenset[str]:
    """A board with its lippings, which are glued on before it is joined to anything."""
    glued = (one.parts for one in bench.joints_of(board) if one.kind == LIPPED)
    return frozenset(name for parts in glued for name in parts)


def _beside(bench: Bench, joint: Joint, square: Vec3) -> frozenset[str]:
    """The rail of the two, with all that it is joined to: as when a rest is glued bay by bay."""
    rail = max(joint.parts, key=lambda name: abs(dot(bench.part(name).grain, square)))
    return frozenset(name for one in bench.joints_of(rail) for name in one.parts)


def _faces_to_press(joint: Joint) -> list[Contact]:
    """Of the faces that meet without play, those that look the way in which most of them look.

    A bridle is pressed across its cheeks, though they have play: the clamp takes it up.
    """
    tight = [one for one in joint.contacts if one.gap <= _NO_PLAY]
    among = joint.contacts if joint.kind == "bridle joint" or not tight else tight
    areas = [
        sum(_area(other) for other in among if dot(one.normal, other.normal) > _ALIKE)
        for one in among
    ]
    most = among[int(np.argmax(areas))]
    alike = [one for one in among if dot(one.normal, most.normal) > _ALIKE]
    return sorted(alike, key=_area, reverse=True)


def _area(face: Contact) -> float:
    corners = np.array(face.corners)
    fan = np.cross(corners[1:-1] - corners[0], corners[2:] - corners[0])
    return float(np.linalg.norm(fan.sum(axis=0))) / 2.0


def _spots(faces: list[Contact]) -> list[Vec3]:
    """Where lines are tried: the middles of the faces, and of the largest a few places round it.

    A little aside of the true middles, so that no line runs along an arris of two triangles.
    """
    found = []
    for face in faces:
        corners = np.array(face.corners)
        found.append(corners.mean(axis=0) + 0.031 * (corners[1] - corners[0]))
    corners = np.array(faces[0].corners)
    found += [0.47 * corner + 0.53 * corners.mean(axis=0) for corner in corners]
    return [(float(x), float(y), float(z)) for x, y, z in found]


def _ways(square: Vec3, parts: list[Part], how: Closing) -> list[Vec3]:
    """Ways to press, squarest first, all closing the joint."""
    least = _ASLANT if how is Closing.KEYED else _ASIDE
    axes = [X_AXIS, Y_AXIS, Z_AXIS]
    for part in parts:
        axes += [part.frame.x_axis, part.frame.y_axis, part.frame.z_axis]
    found = [square]
    for axis in axes:
        way = axis if dot(axis, square) > 0.0 else scale(axis, -1.0)
        if dot(way, square) > least and all(dot(way, one) < _SAME_WAY for one in found):
            found.append(way)
    return sorted(found, key=lambda way: -dot(way, square))


def _best(stack: Stack, spots: list[Vec3], way: Vec3) -> Pads | None:
    """The squarest pads of the lines along a way through some places."""
    found = [pads for spot in spots if (pads := stack.pads(spot, way)) is not None]
    return min(found, key=lambda pads: (round(pads.slant_deg, 3), pads.reach), default=None)
