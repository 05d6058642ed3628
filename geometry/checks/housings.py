"""Checks of housings and rebates."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import case_numbers
from geometry.bench.partitions import uprights
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import DEEPEST_HOUSING, DEEPEST_REBATE, LEAST_COVER
from geometry.checks.where import in_joint
from geometry.design.finding import Finding, Level, Mend
from shared.cutters import widest_cutter_for
from shared.units import length_mark


def _cutter(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    standing = uprights(c)
    cutter, width = 2.0 * c.cutter_radius, c.partition_thickness + c.housing_fit
    if not standing or cutter <= width + 1e-9:
        return
    fitting = widest_cutter_for(width)
    mend = None
    if fitting is not None:
        sentence = f"Take a cutter of {length_mark(fitting.diameter)}."
        mend = Mend(sentence, (("cutter_diameter", fitting.diameter),))
    first = standing[0]
    yield Finding(
        check="housing_cutter",
        level=Level.DO_NOT_CUT,
        message=(
            f"A cutter of {length_mark(cutter)} cannot cut a housing of {length_mark(width)}: "
            "the partitions would rattle."
        ),
        parts=("top", "bottom", *(at.name for at in standing)),
        place=(first.x_left, -c.upright_front, c.inside_low),
        amount=cutter,
        limit=width,
        mend=mend,
    )


def _round_stop(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    standing, least = uprights(c), LEAST_COVER.of(bench)
    if not standing or c.cover >= least - 1e-9:
        return
    first = standing[0]
    yield Finding(
        check="round_stop",
        level=Level.THINK_AGAIN,
        message=(
            f"The housings stop only {length_mark(c.cover)} behind the partitions' fronts: easing "
            "the arrises would bare the rounds that the router leaves."
        ),
        parts=tuple(at.name for at in standing),
        place=(first.x_left, -c.upright_front, c.inside_low),
        amount=c.cover,
        limit=least,
        mend=Mend(
            f"Stop them {length_mark(least + 3.0)} behind.", (("housing_cover", least + 3.0),)
        ),
    )


def _deep_housing(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    limit = c.thickness * DEEPEST_HOUSING.of(bench) / 100.0
    if not uprights(c) or c.housing_depth <= limit + 1e-9:
        return
    yield Finding(
        check="deep_housing",
        level=Level.THINK_AGAIN,
        message=(
            f"Housings of {length_mark(c.housing_depth)} leave only "
            f"{length_mark(c.thickness - c.housing_depth)} of the boards."
        ),
        parts=("top", "bottom"),
        place=in_joint(bench, "stopped housing", "top"),
        amount=c.housing_depth,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} deep.", (("housing_depth", limit),)),
    )


def _deep_rebate(bench: Bench) -> Iterator[Finding]:
    c = case_numbers(bench.spec)
    around = [("top", c.thickness)]
    around += [
        (f"partition_{end.side}", c.partition_thickness)
        for end in (c.left, c.right)
        if not end.mitred
    ]
    name, thickness = min(around, key=lambda row: row[1])
    limit = thickness * DEEPEST_REBATE.of(bench) / 100.0
    if c.rebate_depth <= limit + 1e-9:
        return
    yield Finding(
        check="deep_rebate",
        level=Level.THINK_AGAIN,
        message=(
            f"Rebates of {length_mark(c.rebate_depth)} leave only "
            f"{length_mark(thickness - c.rebate_depth)} behind the back."
        ),
        parts=(name,),
        place=in_joint(bench, "rebate", name),
        amount=c.rebate_depth,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} deep.", (("rebate_depth", limit),)),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "housing_cutter",
        "Cutter wider than its housing",
        "Compares the cutter with the housings it has to cut. A cutter that is wider than the "
        "partition is thick leaves a loose housing, and the board is spoiled. The limit is the "
        "housing's own width.",
        _cutter,
        ("case", "partitions"),
    ),
    Check(
        "round_stop",
        "Round stop nearly showing",
        "Looks at how far a housing stops behind the partition's front. The router leaves a round "
        "there; a partition that hardly covers it shows it as soon as its arris is eased. The "
        "limit of {1 mm} is common practice, no source.",
        _round_stop,
        ("case", "partitions"),
        limits=(LEAST_COVER,),
    ),
    Check(
        "deep_housing",
        "Housing deeper than half the board",
        "A housing weakens the board it crosses. Between a quarter and a third of the thickness "
        "is usual and a half the most: common practice, no source.",
        _deep_housing,
        ("case", "partitions"),
        limits=(DEEPEST_HOUSING,),
    ),
    Check(
        "deep_rebate",
        "Rebate leaving little wood",
        "A rebate leaves a tongue outside the back. It is usually half to two thirds of the "
        "thickness deep, and no more: common practice, no source.",
        _deep_rebate,
        ("case", "partitions"),
        limits=(DEEPEST_REBATE,),
    ),
)
