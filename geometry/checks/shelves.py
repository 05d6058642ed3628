"""Checks of shelves and the housings that hold them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.openings import SHELF, filled_with, openings
from geometry.bench.shelves import height_name
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import DEEPEST_HOUSING, LEAST_BETWEEN, SHORTEST_IN_HOUSINGS
from geometry.checks.where import in_joint
from geometry.design.finding import Finding, Level, Mend
from geometry.solids.measure import bounding_box
from shared.cutters import widest_cutter_for
from shared.units import length_mark

_NEAR = 1e-6  # mm


def _cutter(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    cutter, width = 2.0 * c.cutter_radius, bench.spec.number("shelf_thickness") + c.housing_fit
    if cutter <= width + 1e-9:
        return
    fitting = widest_cutter_for(width)
    mend = None
    if fitting is not None:
        sentence = f"Take a cutter of {length_mark(fitting.diameter)}."
        mend = Mend(sentence, (("cutter_diameter", fitting.diameter),))
    shelves = filled_with(bench.spec, SHELF)
    yield Finding(
        check="shelf_cutter",
        level=Level.DO_NOT_CUT,
        message=(
            f"A cutter of {length_mark(cutter)} cannot cut a housing of {length_mark(width)}: "
            "the shelves would rattle."
        ),
        parts=tuple(f"shelf_{at.index}" for at in shelves),
        place=(shelves[0].x_left, -shelves[0].front, shelves[0].z_low),
        amount=cutter,
        limit=width,
        mend=mend,
    )


def _back_to_back(bench: Bench) -> Iterator[Finding]:
    c, spec = case_numbers(bench.spec), bench.spec
    wall = c.partition_thickness - 2.0 * spec.number("shelf_housing_depth")
    limit = c.partition_thickness * LEAST_BETWEEN.of(bench) / 100.0
    if wall >= limit - 1e-9:
        return
    width = spec.number("shelf_thickness") + c.housing_fit
    for left, right in pairwise(openings(spec)):
        if not left.fill == right.fill == SHELF:
            continue
        heights = [spec.number(height_name(at.index)) for at in (left, right)]
        if abs(heights[0] - heights[1]) >= width:
            continue
        deepest = (c.partition_thickness - limit) / 2.0
        yield Finding(
            check="back_to_back",
            level=Level.THINK_AGAIN,
            message=(
                f"The shelves' housings on both sides of {bench.part(left.right).title.lower()} "
                f"leave only {length_mark(wall)} between them."
            ),
            parts=(left.right, f"shelf_{left.index}", f"shelf_{right.index}"),
            place=(left.x_right, -left.front, left.z_low + max(heights)),
            amount=wall,
            limit=limit,
            mend=Mend(
                f"Make them {length_mark(deepest)} deep.", (("shelf_housing_depth", deepest),)
            ),
        )


def _deep_housing(bench: Bench) -> Iterator[Finding]:
    c, depth = case_numbers(bench.spec), bench.spec.number("shelf_housing_depth")
    around = {
        name: (
            c.thickness if name.startswith("end_panel") else c.partition_thickness,
            f"shelf_{at.index}",
        )
        for at in filled_with(bench.spec, SHELF)
        for name in (at.left, at.right)
    }
    name, (thickness, shelf) = min(around.items(), key=lambda row: row[1][0])
    limit = thickness * DEEPEST_HOUSING.of(bench) / 100.0
    if depth <= limit + 1e-9:
        return
    yield Finding(
        check="deep_shelf_housing",
        level=Level.THINK_AGAIN,
        message=(
            f"Housings for shelves of {length_mark(depth)} leave only "
            f"{length_mark(thickness - depth)} of {bench.part(name).title.lower()}."
        ),
        parts=(name,),
        place=in_joint(bench, "stopped housing", name, shelf),
        amount=depth,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} deep.", (("shelf_housing_depth", limit),)),
    )


def _lengths(bench: Bench) -> Iterator[Finding]:
    """Each shelf, as it is, against the floors of its two housings."""
    depth = bench.spec.number("shelf_housing_depth")
    for at in filled_with(bench.spec, SHELF):
        low, high = bounding_box(bench.part(f"shelf_{at.index}"))
        length, room = high[0] - low[0], at.width + 2.0 * depth
        if length <= room + _NEAR and length >= room - SHORTEST_IN_HOUSINGS.of(bench):
            continue
        long = length > room
        yield Finding(
            check="shelf_too_long" if long else "shelf_too_short",
            level=Level.DO_NOT_CUT if long else Level.THINK_AGAIN,
            message=(
                f"The shelf in {at.title} is {length_mark(length)} long; between the floors of its "
                f"housings there are {length_mark(room)}."
            ),
            parts=(f"shelf_{at.index}", at.left, at.right),
            place=(low[0], -at.front, low[2]),
            amount=length,
            limit=room,
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "shelf_length",
        "Shelf that does not go between its housings",
        "Measures each shelf against the floors of its two housings. Too long and it forces the "
        "uprights apart, too short and its tongues hold on little. A shelf may be {2 mm} short: "
        "common practice, no source.",
        _lengths,
        ("shelves",),
        limits=(SHORTEST_IN_HOUSINGS,),
    ),
    Check(
        "shelf_cutter",
        "Cutter wider than a shelf's housing",
        "Shelves are housed with the same cutter as partitions. One that is wider than the shelf "
        "is thick leaves a loose housing in the upright. The limit is the housing's own width.",
        _cutter,
        ("shelves",),
    ),
    Check(
        "back_to_back",
        "Two housings back to back",
        "Where shelves meet a partition from both sides at one height, their housings leave a thin "
        "wall between them, which a knock can break out. A third of the partition should stay: "
        "common practice, no source.",
        _back_to_back,
        ("shelves",),
        limits=(LEAST_BETWEEN,),
    ),
    Check(
        "deep_shelf_housing",
        "Shelf housing deeper than half the upright",
        "A housing weakens the upright or end panel it crosses. Between a quarter and a third of "
        "the thickness is usual and a half the most: common practice, no source.",
        _deep_housing,
        ("shelves",),
        limits=(DEEPEST_HOUSING,),
    ),
)
