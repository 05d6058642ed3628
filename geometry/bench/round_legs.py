"""Legs with round wedged tenons through the board above, bored at the resultant of their lean."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.above import LEAST_EDGE, above, lipped
from geometry.bench.case_numbers import LIP_READS
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.four_leg_numbers import (
    CORNERS,
    ROUND,
    FourLegs,
    Stand,
    four_legs,
    outward_signs,
    stand,
)
from geometry.bench.member import THE_BASE, Member
from geometry.bench.overall import FOUR_LEGS, base_is
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.round_tenon import RoundTenonNumbers, leg_wedge, round_tenon
from geometry.primitives.frame import Frame, Vec3, add, dot, scale

SLOT_SHARE = 0.75  # of the tenon's length; common practice, no source
LEAST_BOARD = 18.0  # mm of board that a round tenon needs to hold in; common practice, no source

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "leg_tenon",
        "Round tenon",
        "Base",
        25,
        12,
        80,
        "Diameter of the legs' round tenons.",
        step=0.5,
    ),
    length(
        "leg_tenon_fit",
        "Bore fit",
        "Base",
        0.2,
        0.2,
        2,
        "Clearance of a tenon in its bore, in the diameter.",
        step=0.05,
    ),
    length(
        "leg_wedge",
        "Wedge",
        "Base",
        4,
        2,
        8,
        "Thickness of the tenons' wedges at the board's upper face.",
        step=0.5,
    ),
)


def tenon_numbers(spec: BenchSpec, corner: str) -> RoundTenonNumbers:
    """The round tenon of one leg."""
    n = four_legs(spec)
    at = stand(n, corner)
    depth = above(spec).thickness
    # Up the slope of the leg's lean; any direction will do for an upright leg.
    rise: Vec3 = add((0.0, 0.0, 1.0), scale(at.down, -at.down[2]))
    size = math.sqrt(dot(rise, rise))
    return RoundTenonNumbers(
        middle=(*n.place(corner), n.height),
        down=at.down,
        steepest=scale(rise, 1.0 / size) if size > 1e-9 else at.beside,
        depth=depth,
        diameter=spec.number("leg_tenon"),
        fit=spec.number("leg_tenon_fit"),
        wedge=spec.number("leg_wedge"),
        slot=SLOT_SHARE * depth / -at.down[2],
        grain=(1.0, 0.0, 0.0),
    )


def top_station(at: Stand, tenon: RoundTenonNumbers) -> float:
    """How far down the grain from the leg's origin the tenon starts (less than 0).

    Its end is level, so the side of the tenon that lies lowest reaches farthest up the grain.
    """
    along = dot(add(tenon.end, scale(at.origin, -1.0)), at.down)
    rise = tenon.diameter / 2.0 * tenon.steepest[2]
    return along - rise / -at.down[2]


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    """The wedges; the legs are those of the base."""
    timber = spec.word("timber")
    return tuple(_wedge(tenon_numbers(spec, corner), corner, timber) for corner in CORNERS)


def _wedge(at: RoundTenonNumbers, corner: str, timber: str) -> Part:
    """x down from the thick end to the edge, y across the tenon, z through the thickness."""
    # The thick end is level: each of its corners is as far from the root as its own place says.
    ends = [_corner(at, side, half) for side in (-1.0, 1.0) for half in (-1.0, 1.0)]
    run = max(x for x, _ in ends)
    low, high = min(z for _, z in ends), max(z for _, z in ends)
    # z runs against the spread, as x and y make it.
    side = add(scale(at.along, -at.wedge_width / 2.0), scale(at.spread, high))
    return Part(
        name=f"wedge_{corner}",
        title=f"Wedge, {corner.replace('_', ' ')}",
        kind="wedge",
        material=timber,
        shape=Shape(Blank(run, at.wedge_width, high - low), ()),
        frame=Frame.of(add(add(at.root, scale(at.down, -run)), side), at.down, at.along),
    )


def _corner(at: RoundTenonNumbers, side: float, half: float) -> tuple[float, float]:
    """A corner of the wedge's thick end: how far up from the root, and out along the spread."""
    # Height above the root of a point x up the axis, x * slope out and half a width across.
    up = -at.down[2] + side * at.slope * at.spread[2]
    across = half * at.wedge_width / 2.0 * at.along[2]
    x = (at.end[2] - at.root[2] - across) / up
    return x, side * at.slope * x


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    board = parts[above(spec).part]
    joints = []
    for corner in CORNERS:
        at, leg = tenon_numbers(spec, corner), parts[f"leg_{corner}"]
        joints.append(round_tenon(f"tenon_{corner}", leg, board, at))
        joints.append(leg_wedge(f"wedge_{corner}", leg, parts[f"wedge_{corner}"], at))
    return tuple(joints)


def bore_reach(n: FourLegs, radius: float) -> tuple[float, float]:
    """How far a level section of a bore reaches from its middle, along and across the bench."""
    lean_x, lean_y = n.tangents
    return radius * math.hypot(1.0, lean_x), radius * math.hypot(1.0, lean_y)


def _bore_room(spec: BenchSpec) -> float:
    """Between the bores and what they must keep clear of, the least."""
    n, board = four_legs(spec), above(spec)
    lean_x, lean_y = n.tangents
    reach_x, reach_y = bore_reach(
        n, (spec.number("leg_tenon") + spec.number("leg_tenon_fit")) / 2.0
    )
    room = []
    for corner in CORNERS:
        sx, sy = outward_signs(corner)
        x, y = n.place(corner)
        # The axis leans inward on its way up through the board.
        inner_x, inner_y = x - sx * lean_x * board.thickness, y - sy * lean_y * board.thickness
        low, high = board.left if sx < 0.0 else board.right
        room += [
            min(x, inner_x) - reach_x - low,
            high - max(x, inner_x) - reach_x,
            min(y, inner_y) - reach_y - board.front,
            board.back - max(y, inner_y) - reach_y,
        ]
    return min(room)


def _bores_apart(spec: BenchSpec) -> float:
    """Between two bores at the board's upper face, where they come nearest."""
    n, depth = four_legs(spec), above(spec).thickness
    radius = (spec.number("leg_tenon") + spec.number("leg_tenon_fit")) / 2.0
    return min(
        span - 2.0 * (lean * depth + reach)
        for span, lean, reach in zip(
            (n.right - n.left, n.back - n.front), n.tangents, bore_reach(n, radius), strict=True
        )
    )


def _shoulder_corners(n: FourLegs, corner: str) -> list[Vec3]:
    """Where a leg's four arrises reach the board."""
    at = stand(n, corner)
    frame = at.frame(0.0)
    sides = (0.0, n.size)
    return [frame.to_bench((at.station(y, z, n.height), y, z)) for y in sides for z in sides]


def _legs_under(spec: BenchSpec) -> float:
    """How far the legs' shoulders keep inside the bench's outline, and off its lippings."""
    n, lip = four_legs(spec), lipped(spec)
    length, depth = spec.number("length"), spec.number("depth")
    return min(
        min(x - lip.left, length - x - lip.right, -y - lip.back, y + depth - lip.front)
        for corner in CORNERS
        for x, y, _ in _shoulder_corners(n, corner)
    )


def _legs_apart(spec: BenchSpec) -> float:
    n = four_legs(spec)
    return min(n.right - n.left, n.back - n.front) - 1.5 * n.size - 10.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "bore_board",
        "seat board_thickness seat_thickness box_bottom_thickness",
        lambda s: above(s).thickness - LEAST_BOARD,
        "a board under {18 mm} is too thin to hold a round tenon",
    ),
    rule(
        "bore_room",
        "length depth inset_left inset_right inset_back inset_front rake splay leg_tenon "
        "leg_tenon_fit board_thickness seat_thickness left_end right_end left_inset right_inset "
        "box_thickness box_bottom_thickness leg_size "
        f"back_thickness back_let_in housing_fit partition_thickness partition_count {LIP_READS} "
        + " ".join(f"partition_{k}" for k in range(1, 13)),
        _bore_room,
        "a round tenon would come up under a partition, or too near the board's edge",
    ),
    rule(
        "bores_apart",
        "length depth inset_left inset_right inset_back inset_front rake splay leg_tenon "
        "leg_tenon_fit board_thickness seat_thickness box_bottom_thickness",
        lambda s: _bores_apart(s) - LEAST_EDGE,
        "two round tenons would come within {12 mm} of one another in the board",
    ),
    rule(
        "legs_under",
        "length depth inset_left inset_right inset_back inset_front rake splay leg_size leg_turn "
        f"seat {LIP_READS}",
        _legs_under,
        "a leg's shoulder would stand out from under the board, or under its lipping",
    ),
    rule(
        "legs_apart",
        "length depth inset_left inset_right inset_back inset_front leg_size",
        _legs_apart,
        "the legs would run into each other",
    ),
    rule(
        "tenon_shoulder",
        "leg_tenon leg_size",
        lambda s: s.number("leg_size") - s.number("leg_tenon") - 4.0,
        "the round tenon would leave less than {2 mm} of shoulder",
    ),
    rule(
        "wedge_within",
        "leg_tenon leg_wedge",
        lambda s: s.number("leg_tenon") / 3.0 - s.number("leg_wedge"),
        "the wedge would be more than a third of the tenon",
    ),
)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    at = tenon_numbers(spec, "front_right")
    return (
        derived_angle(
            "bore_tilt",
            "Bore from square",
            "Base",
            at.tilt_deg,
            "the resultant of rake and splay, along the sightline",
        ),
        derived_length(
            "leg_tenon_length",
            "Round tenon length",
            "Base",
            at.depth / -at.down[2],
            "thickness of the board above / cos(resultant)",
        ),
    )


def _snug(spec: BenchSpec) -> tuple[dict[str, float], ...]:
    """First the same legs farther in, then upright ones with the least tenons."""
    least = {
        "splay": 0.0,
        "rake": 0.0,
        "leg_size": 20.0,
        "leg_foot": 10.0,
        "leg_taper_start": 0.0,
        "leg_tenon": 12.0,
        "leg_wedge": 2.0,
    }
    return _far_enough_in(spec), {**least, **_far_enough_in(spec.changed(least))}


def _far_enough_in(spec: BenchSpec) -> dict[str, float]:
    """The insets, more than now where they must be."""
    n, board = four_legs(spec), above(spec)
    reach_x, reach_y = bore_reach(n, (spec.number("leg_tenon") + spec.number("leg_tenon_fit")) / 2)
    x, y = n.place(CORNERS[0])
    tops = _shoulder_corners(n, CORNERS[0])
    half_x, half_y = (max(abs(p[k] - at) for p in tops) for k, at in ((0, x), (1, y)))
    length, depth = spec.number("length"), spec.number("depth")
    needed = {
        "inset_left": board.left[0] + reach_x,
        "inset_right": length - board.right[1] + reach_x,
        "inset_back": reach_y - board.back,
        "inset_front": depth + board.front + reach_y,
    }
    lip = lipped(spec)
    halves = {
        "inset_left": half_x + lip.left,
        "inset_right": half_x + lip.right,
        "inset_back": half_y + lip.back,
        "inset_front": half_y + lip.front,
    }
    return {
        name: max(spec.number(name), math.ceil(max(least, halves[name])) + 1.0)
        for name, least in needed.items()
    }


def has_round_legs(spec: BenchSpec) -> bool:
    return base_is(FOUR_LEGS, spec) and spec.value("leg_joint") == ROUND


MEMBER = Member(
    "round legs",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_round_legs,
    snug=_snug,
    made_into=THE_BASE,
)
