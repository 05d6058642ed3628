"""The lid of a storage box, the strip that it may hang on, its hinges and its stays.

The lid lies on front and ends; on a strip it is hung by leaves let into both edges, the pins level
with the upper faces; on the back by leaves let into the lid's underside and the back's upper edge,
the pins outside.  The strip is fixed to back and ends.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.lid_box import BACK, FRONT, LEFT, RIGHT, has_lid_box
from geometry.bench.lid_box_numbers import LidBox, lid_box
from geometry.bench.lid_box_parameters import LID_PARAMETERS
from geometry.bench.lid_box_rules import LID_CONSTRAINTS
from geometry.bench.lid_clear import open_corners
from geometry.bench.lid_stay import stay_at, stay_numbers
from geometry.bench.lipped import (
    SHEET,
    TIMBER,
    EdgeOf,
    lips_back,
    lips_ends,
    strip_name,
    with_strips,
)
from geometry.bench.member import THE_LID, Member
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, choice
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.face_to_face import SCREWED, Corners, face_to_face
from geometry.joints.hinged import HingedNumbers, hinged
from geometry.joints.lid_stay import lid_stay
from geometry.joints.screw_rows import EDGE_BITE, bite_in, has_room, screw_for, stations
from geometry.joints.screwed_faces import ScrewedFaces, ScrewPlace, laid_on, screwed_faces
from geometry.primitives.frame import Frame, Vec3
from shared.tolerances import COPLANAR

Lips = tuple[float, float, float]  # thickness of a lid's lippings: in front, behind, on its ends

LID, STRIP = "lid", "hinge_strip"
BARE: Lips = (0.0, 0.0, 0.0)
LID_LIPPING = "lid lipping"  # the kind of part
LYING = "lid on its box"


def lid_lip(spec: BenchSpec) -> float:
    """Thickness of the lipping on the lid's front edge; 0 for a lid of timber."""
    return spec.number("lid_lip") if spec.word("lid_made_of") == SHEET else 0.0


def lid_back_lip(spec: BenchSpec) -> float:
    """Thickness of the lipping on its back edge; 0 where it has none."""
    lip = lid_lip(spec)
    return lip if lip > 0.0 and lips_back(spec.word("lid_lipped")) else 0.0


def lid_end_lip(spec: BenchSpec) -> float:
    """Thickness of the lippings on its ends; 0 where it has none."""
    lip = lid_lip(spec)
    return lip if lip > 0.0 and lips_ends(spec.word("lid_lipped")) else 0.0


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    b, lid = lid_box(spec), lid_part(spec)
    if not b.has_strip:
        return (lid,)
    return (lid, _board(b, STRIP, "Hinge strip", spec.word("timber"), 0.0, -b.strip, ()))


def lid_part(spec: BenchSpec) -> Part:
    """The lid before it is hung; one of sheet without its lipping."""
    b, lip = lid_box(spec), lid_lip(spec)
    stay = (f"stay: {spec.word('lid_stay')}, check your stay's sheet",)
    back, ends = b.lid_back - lid_back_lip(spec), lid_end_lip(spec)
    lid = _board(b, LID, "Lid", spec.word("timber"), back, b.lid_front + lip, stay, ends)
    if lip <= 0.0:
        return lid
    notes = (*stay, _finished(b, back_too=back < b.lid_back, ends_too=ends > 0.0))
    return replace(lid, material=spec.word("sheet"), solid_timber=False, notes=notes)


def _finished(b: LidBox, *, back_too: bool, ends_too: bool) -> str:
    """What a lid of sheet measures once it is lipped."""
    strips = "lippings" if back_too or ends_too else "lipping"
    long = b.lid_length if ends_too else None
    return with_strips(b.lid_back - b.lid_front, strips, long)


def _board(
    b: LidBox,
    name: str,
    title: str,
    timber: str,
    back: float,
    front: float,
    notes: tuple[str, ...],
    ends: float = 0.0,
) -> Part:
    """Face side up, face edge to the back; ``ends`` is how much shorter it is at either end."""
    return Part(
        name=name,
        title=title,
        kind=title.lower(),
        material=timber,
        shape=Shape(Blank(round(b.lid_length - 2.0 * ends, 9), round(back - front, 9), b.lid), ()),
        frame=Frame.of((ends - b.over_ends, back, b.top), (1, 0, 0), (0, -1, 0)),
        notes=notes,
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    b = lid_box(spec)
    lid, holder = parts[LID], parts[STRIP if b.has_strip else BACK]
    hung = hinged("lid_hinges", parts[hung_by(spec)], holder, hung_at(spec))
    lips = lid_lip(spec), lid_back_lip(spec), lid_end_lip(spec)
    ends = [_lying(b, parts[name], lid, name, lips) for name in (LEFT, RIGHT)]
    lying = [*_on_front(b, parts[FRONT], lid, lips), *ends]
    # Before what the lid lies on: beside a stay it is the stay that is meant.
    stays = [
        lid_stay(f"stay_{end}", parts[f"box_{end}"], lid, stay_at(b, joint.contacts[0].corners))
        for end, joint in zip(("left", "right"), ends, strict=True)
    ]
    fixed = [
        _lying(b, parts[name], parts[STRIP], name, BARE)
        for name in (BACK, LEFT, RIGHT)
        if b.has_strip
    ]
    return (hung, *stays, *lying, *fixed)


def hung_by(spec: BenchSpec) -> str:
    """The part of the lid that its leaves are let into: a back lipping that has room for them, or
    on a strip any, as they begin in it; what is left of them goes on behind."""
    b, lip = lid_box(spec), lid_back_lip(spec)
    in_lipping = lip > 0.0 and (b.has_strip or lip >= b.hinge_leaf - COPLANAR)
    return strip_name(LID, EdgeOf.BACK) if in_lipping else LID


def hung_at(spec: BenchSpec) -> HingedNumbers:
    """Leaves in the two edges, or in the underside of the lid and the upper edge of the back."""
    b, lip = lid_box(spec), lid_back_lip(spec)
    if b.has_strip:
        return HingedNumbers(
            pin=(0.0, -b.strip, b.top),
            into=(0.0, 1.0, 0.0),
            leafward=(0.0, 0.0, -1.0),
            starts=b.hinge_starts(),
            length=b.hinge_length,
            leaf=b.hinge_leaf,
            deep=b.mortise,
            gap=b.gap,
            overlap=b.lid,
        )
    return HingedNumbers(
        pin=(0.0, 0.0, b.rim),
        into=(0.0, 0.0, -1.0),
        leafward=(0.0, -1.0, 0.0),
        starts=b.hinge_starts(),
        length=b.hinge_length,
        leaf=b.hinge_leaf,
        deep=b.mortise,
        gap=0.0,
        overlap=min(lip, b.thickness) if hung_by(spec) != LID else b.thickness,
        lipped=lip if hung_by(spec) == LID else 0.0,
    )


def _on_front(b: LidBox, front: Part, lid: Part, lips: Lips) -> list[Joint]:
    """The lid on the front, to either side of a notch for the fingers."""
    whole = _lying(b, front, lid, FRONT, lips)
    if b.notch_width <= 0.0:
        return [whole]
    (left, y, z), (right, _, _), (_, far, _), _ = whole.contacts[0].corners
    middle, half = b.length / 2.0, b.notch_width / 2.0
    sides = ((left, middle - half, "left"), (middle + half, right, "right"))
    return [
        face_to_face(
            f"{whole.name}_{side}",
            LYING,
            front,
            lid,
            ((low, y, z), (high, y, z), (high, far, z), (low, far, z)),
            (0.0, 0.0, 1.0),
        )
        for low, high, side in sides
    ]


def _lying(b: LidBox, wall: Part, board: Part, name: str, lips: Lips) -> Joint:
    """A wall of the box under the sheet of the lid, or under the strip."""
    corners = _met(b, board.name, name, lips)
    if board.name == LID:
        up = (0.0, 0.0, 1.0)
        return face_to_face(f"{board.name}_on_{name}", LYING, wall, board, corners, up)
    screws = _strip_screws(b, corners)
    return screwed_faces(f"{board.name}_on_{name}", SCREWED, wall, board, screws)


def _met(b: LidBox, board: str, name: str, lips: Lips) -> Corners:
    """Where lid or strip lies on a wall; at the ends each lies on its own share."""
    t, back, front = b.thickness, 0.0, -b.depth
    lip, back_lip, end_lip = lips
    if name in (LEFT, RIGHT):
        # Clear of the corners, which front and back share with the ends.
        under = max(0.0, end_lip - b.over_ends)
        low, high = (under, t) if name == LEFT else (b.length - t, b.length - under)
        start, stop = (front + t, b.lid_back - back_lip) if board == LID else (-b.strip, -t)
        stop = min(stop, -t)
    else:
        low, high = t, b.length - t
        fore = max(front, b.lid_front + lip) if lip > 0.0 else front
        start, stop = (fore, front + t) if name == FRONT else (-t, back)
    z = b.rim
    return ((low, start, z), (high, start, z), (high, stop, z), (low, stop, z))


def down_screws(b: LidBox) -> tuple[float, ...]:
    """X of the screws through the strip into the back."""
    screws = _strip_screws(b, _met(b, STRIP, BACK, BARE)).screws
    return tuple(one.at[0] for one in screws)


def _strip_screws(b: LidBox, corners: Corners) -> ScrewedFaces:
    """Down through the strip into a wall's upper edge, in a row in the middle of that."""
    (low, start, z), (high, _, _), (_, stop, _), _ = corners
    wide, deep = high - low, stop - start
    screw = screw_for(min(wide, deep))
    middle = ((low + high) / 2.0, (start + stop) / 2.0)
    rows: tuple[Vec3, ...] = ()
    if has_room(screw, min(wide, deep)) and wide >= deep:
        rows = tuple((low + at, middle[1], z) for at in stations(wide))
    elif has_room(screw, min(wide, deep)):
        rows = tuple((middle[0], start + at, z) for at in stations(deep))
    screws = tuple(ScrewPlace(at, (1.0, 0.0, 0.0)) for at in rows)
    bite = bite_in(b.walls, EDGE_BITE)
    return laid_on(corners, (0.0, 0.0, 1.0), screws, screw, through=b.lid, bite=bite)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    b = lid_box(spec)
    corners = open_corners(b)
    rows = [
        derived_length(
            "lid_depth",
            "Lid, front to back",
            "Lid",
            b.lid_back - b.lid_front,
            "depth + lid over the front − strip and gap",
        ),
        derived_length(
            "hinge_mortise",
            "Hinge mortises, depth",
            "Lid",
            b.mortise,
            "half of what the gap leaves of the closed hinge; in each piece",
        ),
        derived_length(
            "lid_high",
            "Open lid above the floor",
            "Lid",
            max(z for _, z in corners),
            "box height, lid, the angle it opens to",
        ),
        derived_length(
            "lid_behind",
            "Room behind for the open lid",
            "Lid",
            max(0.0, *(y for y, _ in corners)),
            "from the back edge; lid, strip, the angle it opens to",
        ),
        derived_length(
            "stay_from_back",
            "Stay in the box, from the back edge",
            "Lid",
            stay_numbers(b).from_back,
            "stay when taut, its fixing on the lid, the angle it opens to",
        ),
        derived_angle(
            "lid_balance",
            "Lid balances at",
            "Lid",
            _balance_deg(b),
            "middle of the lid over its pins; opened farther it stays open by itself",
        ),
    ]
    return tuple(rows)


def _balance_deg(b: LidBox) -> float:
    """How far the lid opens until its middle stands over the pins."""
    pin_y, pin_z = b.pin_place
    y = (b.lid_back + b.lid_front) / 2.0 - pin_y
    z = (b.rim + b.top) / 2.0 - pin_z
    return math.degrees(math.atan2(-y, z))


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            "box_height": 200.0,
            "box_thickness": 14.0,
            "lid_thickness": 18.0,
            "lid_front": 10.0,
            "lid_ends": 0.0,
            "lid_notch_width": 60.0,
            "lid_notch_depth": 12.0,
            "lid_strip": 25.0,
            "lid_gap": 1.0,
            "lid_opening": 95.0,
            "hinge_in": 40.0,
            "hinge_length": 40.0,
            "hinge_leaf": 12.0,
            "hinge_closed": 3.0,
            "stay_reach": 90.0,
            "stay_on_lid": 40.0,
            "stay_down": 20.0,
        },
    )


_OF: tuple[Parameter, ...] = (
    choice(
        "lid_made_of",
        "Lid of",
        "Lid",
        TIMBER,
        (TIMBER, SHEET),
        "Timber, or the bottom's sheet material with lippings on its edges.",
    ),
)


MEMBER = Member(
    "lid",
    (*LID_PARAMETERS, *_OF),
    LID_CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_lid_box,
    snug=_snug,
    made_into=THE_LID,
)
