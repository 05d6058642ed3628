"""A storage box as a seat: front, back, two ends and a bottom; its lid is ``lid``.

Front and back run past the ends and carry the tails, so that nothing pulls the corners apart when
the box is pushed along the floor.  All four stand with their face sides inside and their lower
edges as face edges, as the corner joints want them.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench.derived import Derived, derived_length
from geometry.bench.drawer_parameters import FINGERS, REBATE
from geometry.bench.lid_box_numbers import LidBox, lid_box
from geometry.bench.lid_box_parameters import BOX_PARAMETERS
from geometry.bench.lid_box_rules import BOX_CONSTRAINTS
from geometry.bench.member import Member
from geometry.bench.overall import LID_BOX, seat_is
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.finger_notch import FingerNotch
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.box_joint import FingerNumbers, box_joint
from geometry.joints.dovetail import DovetailNumbers, dovetail
from geometry.joints.rebate_groove import TongueNumbers, rebate_groove
from geometry.joints.rebated_bottom import RebateNumbers, rebated_bottom
from geometry.primitives.frame import Frame, Vec3

UP: Vec3 = (0.0, 0.0, 1.0)
FRONT, BACK, LEFT, RIGHT, BOTTOM = "box_front", "box_back", "box_left", "box_right", "box_bottom"


def has_lid_box(spec: BenchSpec) -> bool:
    return seat_is(LID_BOX, spec)


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    b, timber = lid_box(spec), spec.word("timber")
    t, start = b.thickness, b.end_start
    long = Blank(b.length, b.walls, t)
    short = Blank(round(b.depth - 2.0 * start, 9), b.walls, t)
    notch: tuple[Cut, ...] = ()
    if b.notch_width > 0.0:
        middle, half = b.length / 2.0, b.notch_width / 2.0
        notch = (FingerNotch(middle - half, middle + half, b.notch_depth),)
    rows = (
        (FRONT, "Box front", Shape(long, notch), (0.0, t - b.depth, b.floor), (1.0, 0.0, 0.0)),
        (BACK, "Box back", Shape(long, ()), (b.length, -t, b.floor), (-1.0, 0.0, 0.0)),
        (LEFT, "Box end, left", Shape(short, ()), (t, -start, b.floor), (0.0, -1.0, 0.0)),
        (
            RIGHT,
            "Box end, right",
            Shape(short, ()),
            (b.length - t, start - b.depth, b.floor),
            (0.0, 1.0, 0.0),
        ),
    )
    walls = tuple(
        Part(
            name=name,
            title=title,
            kind="box end" if name in (LEFT, RIGHT) else title.lower(),
            material=timber,
            shape=shape,
            frame=Frame.of(origin, along, UP),
        )
        for name, title, shape, origin, along in rows
    )
    return (*walls, _bottom(b, spec.word("sheet")))


def _bottom(b: LidBox, sheet: str) -> Part:
    """Face side up, face edge to the back."""
    inside = b.thickness - b.rebate + b.bottom_fit / 2.0
    blank = Blank(round(b.length - 2.0 * inside, 9), round(b.depth - 2.0 * inside, 9), b.bottom)
    return Part(
        name=BOTTOM,
        title="Box bottom",
        kind="box bottom",
        material=sheet,
        shape=Shape(blank, ()),
        frame=Frame.of((inside, -inside, b.floor + b.bottom), (1, 0, 0), (0, -1, 0)),
        solid_timber=False,
    )


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    b = lid_box(spec)
    corners = tuple(_corner(b, side, end, parts) for side in (FRONT, BACK) for end in (LEFT, RIGHT))
    return (*corners, *_rebates(b, parts))


def _corner(b: LidBox, side: str, end: str, parts: Mapping[str, Part]) -> Joint:
    corner = b.at_corner(front=side == FRONT, left=end == LEFT)
    name = f"corner_{side.removeprefix('box_')}_{end.removeprefix('box_')}"
    pieces = parts[side], parts[end]
    if b.corner == REBATE:
        tongue = TongueNumbers(corner, b.tongue_thickness, b.tongue_length)
        return rebate_groove(name, *pieces, tongue)
    if b.corner == FINGERS:
        return box_joint(name, *pieces, FingerNumbers(corner, b.count))
    return dovetail(name, *pieces, DovetailNumbers(corner, b.spacing(), b.count, 0.0))


def _rebates(b: LidBox, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    left, right = b.thickness, b.length - b.thickness
    front, back, z = b.thickness - b.depth, -b.thickness, b.floor
    sides: tuple[tuple[str, Vec3, Vec3, Vec3], ...] = (
        (FRONT, (left, front, z), (right, front, z), (0.0, -1.0, 0.0)),
        (BACK, (left, back, z), (right, back, z), (0.0, 1.0, 0.0)),
        (LEFT, (left, front, z), (left, back, z), (-1.0, 0.0, 0.0)),
        (RIGHT, (right, front, z), (right, back, z), (1.0, 0.0, 0.0)),
    )
    return tuple(
        rebated_bottom(
            f"bottom_in_{name}",
            parts[name],
            parts[BOTTOM],
            RebateNumbers(start, end, outward, b.bottom, b.rebate, b.bottom_fit),
        )
        for name, start, end, outward in sides
    )


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    b = lid_box(spec)
    rows = [
        derived_length(
            "box_walls", "Height of the walls", "Box", b.walls, "box height − lid thickness"
        ),
        derived_length(
            "box_inside_height",
            "Inside height of the box",
            "Box",
            b.walls - b.bottom,
            "box height − lid thickness − bottom",
        ),
        derived_length(
            "box_inside_depth",
            "Inside depth of the box",
            "Box",
            b.depth - 2.0 * b.thickness,
            "depth − 2 × box thickness",
        ),
        derived_length(
            "box_inside_length",
            "Inside length of the box",
            "Box",
            b.length - 2.0 * b.thickness,
            "length − 2 × box thickness",
        ),
    ]
    if b.corner not in (REBATE, FINGERS):
        rows.append(
            derived_length(
                "box_tail",
                "Box tails",
                "Box",
                b.spacing().tail_width(b.count),
                "height of the walls, pins, half pins, number of tails; at the end",
            )
        )
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            "box_height": 200.0,
            "box_thickness": 14.0,
            "box_pin": 3.0,
            "box_half_pin": 3.0,
            "box_tongue_thickness": 5.0,
            "box_tongue_length": 5.0,
            "box_bottom_thickness": 9.0,
            "box_rebate": 6.0,
            "box_bottom_fit": 1.0,
        },
    )


MEMBER = Member(
    "lid box",
    BOX_PARAMETERS,
    BOX_CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_lid_box,
    snug=_snug,
)
