"""The words for the cuts of loose tenons, fixings, feet and moulded arrises.

Lengths stand in the sentence as ``{12.7 mm}``, to be written in the maker's unit at the border.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import CHAMFER, EdgeMoulding
from geometry.cuts.end_bore import EndBore
from geometry.cuts.rounded_edges import RoundedEdges
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.cuts.slot_mortise import SlotMortise
from geometry.cuts.turned import Turned
from geometry.design.faces import FACES
from geometry.primitives.frame import Vec3
from shared.units import angle_mark, length_mark

SQUARE = 0.01  # degrees: less than this off square is square


def _slot_mortise(cut: SlotMortise, blank: Blank) -> str:
    size = f"{_mm(cut.thickness)} by {_mm(cut.width)} over its round ends, {_mm(cut.depth)} deep"
    x, y, z = cut.middle
    along, across, through = (abs(one) for one in cut.into)
    if across > 1.0 - 1e-6:
        edge = "face edge" if cut.into[1] > 0.0 else "far edge"
        return (
            f"{size} from the {edge}, middle {_mm(x)} from the left end, {_mm(z)} from the face "
            "side"
        )
    if through > 1.0 - 1e-6:
        face = "face side" if cut.into[2] > 0.0 else "reverse"
        return f"{size} from the {face}, middle {_mm(x)} from the left end, {_mm(y)} from the edge"
    if along > 1.0 - 1e-6:
        end = _end(x, blank)
        return f"{size} into the {end}, middle {_mm(y)} from the face edge, {_mm(z)} from the face"
    return f"{size}, square to the mitre, middle {_mm(y)} from the face edge"


def _screw_slot(cut: ScrewSlot, _blank: Blank) -> str:
    axis = squarest(cut.into)
    face = FACES[axis][cut.into[axis] < 0.0]
    words = (
        f"{_mm(cut.width)} by {_mm(cut.length)} over its round ends, through from the {face}; "
        f"screw {_place(cut.screw, axis)}; runs {runs(cut.along, axis)}"
    )
    if not cut.counterbored:
        return words
    return f"{words}; {_mm(cut.head)} wide for the head from {_mm(cut.land)} deep on"


def _screw_hole(cut: ScrewHole, _blank: Blank) -> str:
    axis = squarest(cut.into)
    face = FACES[axis][cut.into[axis] < 0.0]
    return (
        f"{_mm(cut.shank)} across, through, square to the glued {face}; middle there "
        f"{_place(cut.mouth, axis)}; {_mm(cut.head)} across for the head from {_mm(cut.land)} deep "
        "on"
    )


def squarest(into: Vec3) -> int:
    """The axis that a direction is nearest to; of two as near the one along the grain."""
    return max(range(3), key=lambda k: (round(abs(into[k]), 6), -k))


def _place(at: Vec3, axis: int) -> str:
    """Where a point is, from the two reference sides that are not across its axis."""
    near = [f"{_mm(at[k])} from the {FACES[k][0]}" for k in range(3) if k != axis]
    return ", ".join(near)


def runs(along: Vec3, axis: int) -> str:
    """Which way a slot runs on its face."""
    first, second = (k for k in range(3) if k != axis)
    off = math.degrees(math.atan2(abs(along[second]), abs(along[first])))
    if off < SQUARE:
        return _WAYS[first]
    if off > 90.0 - SQUARE:
        return _WAYS[second]
    side = FACES[first][along[first] * along[second] > 0.0]
    way = f"{_deg(off)} off the {('length', 'width')[first]}"
    return f"{way}, to the {FACES[second][1]} at the {side}"


_WAYS = ("along the length", "across the width", "through the thickness")


def _end_bore(cut: EndBore, _blank: Blank) -> str:
    """Into the end, or into the side that it is squarest to, with its place there."""
    size = f"{_mm(cut.diameter)} across, {_mm(cut.depth)} deep"
    axis = max(range(3), key=lambda k: abs(cut.into[k]))
    tilt = math.degrees(math.acos(min(1.0, abs(cut.into[axis]))))
    if axis == 0:
        slant = f", {_deg(tilt)} off the grain" if tilt > SQUARE else ""
        return f"{size} into the end{slant}"
    near, far = FACES[axis]
    x, y, z = cut.middle
    across = f"{_mm(z)} from the face side" if axis == 1 else f"{_mm(y)} from the face edge"
    words = f"{size} from the {near if cut.into[axis] > 0.0 else far}"
    slant = f", {_deg(tilt)} off square" if tilt > SQUARE else ""
    return f"{words}{slant}, middle {_mm(x)} from the left end, {across}"


def _turned(cut: Turned, _blank: Blank) -> str:
    return "; ".join(
        f"diameter {_mm(2.0 * one.radius)} from {_mm(one.x_low)} to {_mm(one.x_high)}"
        for one in cut.sections
    )


def _rounded(_cut: RoundedEdges, blank: Blank) -> str:
    return f"R {_mm(blank.thickness / 2.0)} along both edges"


def _moulding(cut: EdgeMoulding, blank: Blank) -> str:
    size = f"{_mm(cut.size)} in on each face"
    if cut.form != CHAMFER:
        square = math.isclose(cut.radius, cut.size)
        size = f"R {_mm(cut.radius)}" if square else f"R {_mm(cut.radius)}, {size}"
    stops = cut.stopped_start + cut.stopped_end
    how = ("through", "stopped at one end", "stopped at both ends")[stops]
    if abs(cut.end[0] - cut.start[0]) > 0.5 * cut.length:
        where = "along the piece"
    else:
        where = f"across the {_end(cut.start[0], blank)}"
    words = f"{size}, {where}, {how}"
    return f"{words}, {_mm(cut.length)} long" if cut.stopped else words


def _end(x: float, blank: Blank) -> str:
    return "left end" if x < blank.length / 2.0 else "right end"


def _mm(value: float) -> str:
    return length_mark(round(value, 4))


def _deg(value: float) -> str:
    return angle_mark(round(value, 4))


FITTING_KINDS: tuple[tuple[type, Callable[[Any, Blank], str]], ...] = (
    (SlotMortise, _slot_mortise),
    (RoundedEdges, _rounded),
    (ScrewSlot, _screw_slot),
    (ScrewHole, _screw_hole),
    (EndBore, _end_bore),
    (Turned, _turned),
    (EdgeMoulding, _moulding),
)
