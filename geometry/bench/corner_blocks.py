"""Blocks glued and screwed into the corners between aprons, behind the legs.

Set at 45° a block reaches across the corner and its two ends lie on the aprons; set square it lies
on both with a face and an end, cut out round the leg.  What lies on an apron is sawn to the apron's
lean; tops, bottoms and the other faces are level and upright.  The grain of a diagonal block runs
across the corner, that of a square one along the bench.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.above import above
from geometry.bench.aprons import has_aprons
from geometry.bench.corner_block_numbers import (
    CornerBlocks,
    corner_blocks,
    has_corner_blocks,
    into_block,
    inward,
    place,
)
from geometry.bench.corner_block_rules import CHOICE, CONSTRAINTS, PARAMETERS
from geometry.bench.corner_screws import screws_up, seat_screw
from geometry.bench.derived import Derived, derived_length
from geometry.bench.four_leg_numbers import CORNERS
from geometry.bench.member import THE_BASE, Member
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.rebate import Rebate
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.design.spec import BenchSpec
from geometry.joints.screwed_block import ScrewedBlock, screwed_block
from geometry.joints.slotted_screw import slotted_screw
from geometry.primitives.frame import Frame, Vec3, add, cross, dot, rounded, scale
from shared.fixings import SCREW_EASE

_DOWN: Vec3 = (0.0, 0.0, -1.0)
_HALF = math.sqrt(0.5)
_OFF_HOLE = 0.5  # mm between a hole and the faces that are said to meet


def _parts(spec: BenchSpec) -> tuple[Part, ...]:
    b, timber = corner_blocks(spec), spec.word("timber")
    make = _diagonal if b.diagonal else _square
    return tuple(_part(corner, timber, *make(b, corner)) for corner in CORNERS)


def _part(corner: str, timber: str, shape: Shape, frame: Frame) -> Part:
    return Part(
        name=f"corner_block_{corner}",
        title=f"Corner block, {corner.replace('_', ' ')}",
        kind="corner block",
        material=timber,
        shape=shape,
        frame=frame,
    )


def _diagonal(b: CornerBlocks, corner: str) -> tuple[Shape, Frame]:
    """Face side away from the leg, face edge up, as long as its far face is at the bottom."""
    ex, ey = inward(corner)
    across = scale(add(ex, ey), -_HALF)
    along = cross(_DOWN, across)
    d = b.height
    ends = [
        place(b, corner, b.end_at(d), b.far - b.end_at(d), 0.0),
        place(b, corner, b.far - b.side_at(d), b.side_at(d), 0.0),
    ]
    first, second = sorted(ends, key=lambda point: dot(point, along))
    size = dot(second, along) - dot(first, along)
    blank = Blank(round(size, 9), round(d, 9), round(b.thickness, 9))
    return Shape(blank, ()), Frame.of(first, along, _DOWN)


def _square(b: CornerBlocks, corner: str) -> tuple[Shape, Frame]:
    """Face side away from the apron in front or at the back, face edge up, grain along it."""
    ex, ey = inward(corner)
    along = cross(_DOWN, scale(ey, -1.0))
    p, q = b.outer
    low, back = b.end_at(b.height), b.side_at(b.height)
    onward = dot(along, ex) > 0.0  # whether x runs the way that p does
    length_, thick = round(p - low, 9), round(q - back, 9)
    cuts: tuple[Cut, ...] = ()
    if b.notched:
        cut = round(b.notch[0] - low, 9)
        span = (0.0, cut) if onward else (length_ - cut, length_)
        deep = round(b.notch[1] - back, 9)
        cuts = (Rebate(*span, 0.0, b.height, deep, Face.REVERSE),)
    origin = place(b, corner, low if onward else p, q, 0.0)
    return Shape(Blank(length_, b.height, thick), cuts), Frame.of(origin, along, _DOWN)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    b = corner_blocks(spec)
    joints: list[Joint] = []
    for corner in CORNERS:
        fore, side = corner.split("_")
        block = parts[f"corner_block_{corner}"]
        for apron, end in ((fore, False), (side, True)):
            joints.append(
                screwed_block(
                    f"corner_block_{corner}_{apron}",
                    block,
                    parts[f"apron_{apron}"],
                    _on_apron(b, corner, end=end),
                )
            )
        at = seat_screw(spec, corner) if screws_up(spec) else ""
        if not isinstance(at, str):
            board = parts[above(spec).part]
            joints.append(slotted_screw(f"fixing_corner_{corner}", block, board, at))
    return tuple(joints)


def _on_apron(b: CornerBlocks, corner: str, *, end: bool) -> ScrewedBlock:
    lies = b.on_end if end else b.on_side
    stands = b.end_at if end else b.side_at

    def point(across: float, d: float) -> Vec3:
        out = stands(d)
        return place(b, corner, *((out, across) if end else (across, out)), d)

    h, beside = b.height, (b.shank + SCREW_EASE) / 2.0 + _OFF_HOLE
    low, high = lies(0.0), lies(h)
    shares: tuple[tuple[float, float], ...] = ((0.0, 1.0),)
    if b.screws:
        half = beside / (low[1] - low[0])
        shares = ((0.0, 0.5 - half), (0.5 + half, 1.0))
    faces = tuple(
        (
            point(_between_at(low, first), 0.0),
            point(_between_at(low, last), 0.0),
            point(_between_at(high, last), h),
            point(_between_at(high, first), h),
        )
        for first, last in shares
    )
    levels = b.levels(end=end) if b.screws else ()
    ex, ey = inward(corner)
    middles = [sum(lies(d)) / 2.0 for d in levels]
    return ScrewedBlock(
        faces=faces,
        into=into_block(b, corner, end=end),
        toward=ey if end else ex,
        screws=tuple(rounded(point(m, d)) for m, d in zip(middles, levels, strict=True)),
        downs=levels,
        from_edge=(high[1] - high[0]) / 2.0,
        hole=b.shank + SCREW_EASE,
        pilot=b.pilot,
        head=b.head,
        land=b.land,
        through=b.wood_along(end=end),
        bite=b.bite,
    )


def _between_at(span: tuple[float, float], share: float) -> float:
    return span[0] + share * (span[1] - span[0])


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    b = corner_blocks(spec)
    size = b.far - b.end_at(b.height) - b.side_at(b.height)
    rows = []
    if b.diagonal:
        rows.append(
            derived_length(
                "corner_block_length",
                "Corner block length",
                "Base",
                size / _HALF,
                "along its longest arris, below; leg, aprons, block thickness, rake and splay",
            )
        )
    if b.screws:
        rows.append(
            derived_length(
                "corner_block_screw_length",
                "Corner block screw length",
                "Base",
                b.land + b.bite,
                "wood under the head + screw in the apron",
            )
        )
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            "corner_block_height": 25.0,
            "corner_block_thickness": 20.0,
            "corner_block_gap": 1.0,
            "corner_block_land": 5.0,
            "corner_block_bite": 7.0,
        },
    )


def has_blocks(spec: BenchSpec) -> bool:
    return has_aprons(spec) and has_corner_blocks(spec)


CHOICE_MEMBER = Member("corner block choice", CHOICE, present=has_aprons)

MEMBER = Member(
    "corner blocks",
    PARAMETERS,
    CONSTRAINTS,
    _parts,
    _joints,
    derived=_derived,
    present=has_blocks,
    snug=_snug,
    made_into=THE_BASE,
)
