"""Checks of a panel bench: its housings, its dovetails, its rail, and whether it stands."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.bench.bench import Bench
from geometry.bench.panel_ends_numbers import HOUSED, panel_ends
from geometry.bench.seat_rail_numbers import STUB, seat_rail
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import DEEPEST_HOUSING, FLATTEST_IN_SOFT, SHORTEST_STUB
from geometry.checks.where import in_joint
from geometry.design.finding import Finding, Level, Mend
from shared.cutters import widest_cutter_for
from shared.timber import TIMBERS
from shared.units import length_mark


def _cutter(bench: Bench) -> Iterator[Finding]:
    n = panel_ends(bench.spec)
    cutter, width = 2.0 * n.cutter_radius, n.thickness + n.housing_fit
    if cutter <= width + 1e-9:
        return
    fitting = widest_cutter_for(width)
    housed = tuple(f"end_{end.side}" for end in n.ends if end.joint == HOUSED)
    mend = None
    if fitting is not None:
        sentence = f"Take a cutter of {length_mark(fitting.diameter)}."
        mend = Mend(sentence, (("cutter_diameter", fitting.diameter),))
    yield Finding(
        check="end_cutter",
        level=Level.DO_NOT_CUT,
        message=(
            f"A cutter of {length_mark(cutter)} cannot cut a housing of {length_mark(width)}: "
            "the ends would rattle."
        ),
        parts=housed,
        place=in_joint(bench, "stopped housing", housed[0]),
        amount=cutter,
        limit=width,
        mend=mend,
    )


def _deep_housing(bench: Bench) -> Iterator[Finding]:
    n = panel_ends(bench.spec)
    limit = n.seat_thickness * DEEPEST_HOUSING.of(bench) / 100.0
    if n.housing_depth <= limit + 1e-9:
        return
    yield Finding(
        check="deep_end_housing",
        level=Level.THINK_AGAIN,
        message=(
            f"Housings of {length_mark(n.housing_depth)} leave only "
            f"{length_mark(n.seat_thickness - n.housing_depth)} of the seat, which breaks there."
        ),
        parts=("seat",),
        place=in_joint(bench, "stopped housing", "seat"),
        amount=n.housing_depth,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} deep.", (("housing_depth", limit),)),
    )


def _slope(bench: Bench) -> Iterator[Finding]:
    n = panel_ends(bench.spec)
    hard = TIMBERS[bench.spec.word("timber")].hardwood
    flattest = FLATTEST_IN_SOFT.of(bench)
    if hard or n.tails.slope <= flattest + 1e-9:
        return
    yield Finding(
        check="seat_tail_slope",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"Tails of 1 in {n.tails.slope:g} in soft timber crush and pull out; 1 in 6 holds "
            "better."
        ),
        parts=("seat",),
        place=in_joint(bench, "through dovetail", "seat"),
        amount=math.degrees(math.atan(1.0 / n.tails.slope)),
        limit=math.degrees(math.atan(1.0 / flattest)),
        unit="deg",
        mend=Mend("Make them 1 in 6.", (("tail_slope", "1:6"),)),
    )


def _short_stub(bench: Bench) -> Iterator[Finding]:
    r = seat_rail(bench.spec)
    limit = r.end_thickness * SHORTEST_STUB.of(bench) / 100.0
    if r.joint != STUB or r.let_in >= limit - 1e-9:
        return
    yield Finding(
        check="short_stub_tenon",
        level=Level.THINK_AGAIN,
        message=(
            f"The rail's stub tenons are only {length_mark(r.let_in)} long, in ends of "
            f"{length_mark(r.end_thickness)}: they work loose."
        ),
        parts=("rail",),
        place=r.end("right").face,
        amount=r.let_in,
        limit=limit,
        mend=Mend(f"Make them {length_mark(limit)} long.", (("seat_rail_in", limit),)),
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "end_cutter",
        "Cutter wider than an end's housing",
        "A cutter that is wider than the end is thick leaves a loose housing in the seat. The "
        "limit is the housing's own width.",
        _cutter,
        ("housed ends",),
    ),
    Check(
        "deep_end_housing",
        "Housing deeper than half the seat",
        "A housing right across the seat weakens it just where it bends over the end. Between a "
        "quarter and a third of the thickness is usual and a half the most: common practice, no "
        "source.",
        _deep_housing,
        ("housed ends",),
        limits=(DEEPEST_HOUSING,),
    ),
    Check(
        "seat_tail_slope",
        "Flat dovetails in soft timber",
        "Looks for flat tails in a seat of soft timber, which crushes and lets them pull out. It "
        "is cut 1 in 6, hard timber 1 in 8: common practice, no source.",
        _slope,
        ("dovetailed ends",),
        limits=(FLATTEST_IN_SOFT,),
    ),
    Check(
        "short_stub_tenon",
        "Short stub tenons of a seat rail",
        "A stub tenon holds by its length. About two thirds of the piece is usual and under half "
        "is short: common practice, no source.",
        _short_stub,
        ("seat rail",),
        limits=(SHORTEST_STUB,),
    ),
)
