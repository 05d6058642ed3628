"""The flare: how much deeper the top is at its left end, its right end, or at both.

An end with a flare has a deep stretch, along which the front leans, and a run-out back to the depth
of the bottom.  With one flared end its three numbers are those of that end, whichever it is.  With
two, they are the left one's, and the right end has three of its own.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.bench.case_numbers import BOTH, LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.constraint import Constraint, rule
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import Member
from geometry.bench.overall import CASE, seat_is
from geometry.design.parameter import Parameter, Value, choice, length
from geometry.design.spec import BenchSpec

# common practice, no source: the deep stretch and the run-out as shares of the length
DEEP_SHARE, RUN_OUT_SHARE = 0.2, 0.6
DEEP_SHARE_RIGHT, RUN_OUT_SHARE_RIGHT = 0.15, 0.4

# Common practice, no source:
LEAST_RUN_OUT = 20.0  # mm


def _both(spec: BenchSpec) -> bool:
    return spec.value("deep_end") == BOTH


def _flared(spec: BenchSpec) -> bool:
    """Whether the first flare's stations mean something."""
    return spec.number("flare") > 0.0 or _both(spec)


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "flare",
        "Flare",
        "Flare",
        60,
        0,
        300,
        "How much deeper the top is at its deep end; of two deep ends, at the left one.",
    ),
    choice(
        "deep_end",
        "Deep end",
        "Flare",
        LEFT,
        (LEFT, RIGHT, BOTH),
        "The end at which the top is deeper, or both.",
        applies=_flared,
    ),
    length(
        "flare_straight",
        "Deep stretch",
        "Flare",
        240,
        20,
        3500,
        "From the deep end to where the run-out begins.",
        applies=_flared,
    ),
    length(
        "flare_end",
        "Run-out ends",
        "Flare",
        700,
        40,
        3600,
        "From the deep end to where the top is back to the depth of the bottom.",
        applies=_flared,
    ),
    length(
        "flare_right",
        "Flare, right",
        "Flare",
        40,
        0,
        300,
        "How much deeper the top is at its right end, where both are deep.",
        applies=_both,
    ),
    length(
        "flare_straight_right",
        "Deep stretch, right",
        "Flare",
        180,
        20,
        3500,
        "From the right end to where its run-out begins.",
        applies=_both,
    ),
    length(
        "flare_end_right",
        "Run-out ends, right",
        "Flare",
        480,
        40,
        3600,
        "From the right end to where the top is back to the depth of the bottom.",
        applies=_both,
    ),
)


def _if(bound: Callable[[BenchSpec], bool], spec: BenchSpec, slack: float) -> float:
    """The stations of a plain bench are kept, and bind nothing."""
    return slack if bound(spec) else 1.0


def _of_one(suffix: str, bound: Callable[[BenchSpec], bool]) -> tuple[Constraint, ...]:
    """The rules of one flare, whose names end in ``suffix``."""
    flare, straight, end = f"flare{suffix}", f"flare_straight{suffix}", f"flare_end{suffix}"

    def run_out(spec: BenchSpec) -> float:
        return spec.number(end) - spec.number(straight)

    return (
        rule(
            f"flare_order{suffix}",
            f"flare deep_end {straight} {end}",
            lambda s: _if(bound, s, run_out(s) - LEAST_RUN_OUT),
            "the run-out needs at least {20 mm} after the deep stretch",
        ),
        rule(
            f"flare_within{suffix}",
            f"flare deep_end {end} length",
            lambda s: _if(bound, s, s.number("length") - s.number(end)),
            "the run-out must end on the bench",
        ),
        rule(
            f"flare_slope{suffix}",
            f"{flare} deep_end {straight} {end}",
            lambda s: _if(bound, s, run_out(s) - s.number(flare) / 2.0),
            "the run-out would be steeper than 2 to 1",
        ),
        rule(
            f"flare_lean{suffix}",
            f"{flare} deep_end case_height",
            lambda s: _if(bound, s, s.number("case_height") - s.number(flare)),
            "the front would lean more than {45 deg}, which no saw tilts to",
        ),
    )


CONSTRAINTS: tuple[Constraint, ...] = (
    *_of_one("", _flared),
    *_of_one("_right", _both),
    rule(
        "flares_apart",
        "deep_end flare_end flare_end_right length",
        lambda s: _if(
            _both,
            s,
            s.number("length") - s.number("flare_end") - s.number("flare_end_right"),
        ),
        "the run-outs from both ends would run into each other",
    ),
)


def flare_suffix(c: CaseNumbers, side: str) -> str:
    """What the names of an end's three numbers end in."""
    return "_right" if c.both_flare and side == RIGHT else ""


def stations(spec: BenchSpec) -> dict[str, Value]:
    """Places for the flares' stations where those kept do not fit the bench; empty if they do."""
    if not _flared(spec) or _fit(spec):
        return {}
    whole = spec.number("length")
    found: dict[str, Value] = {
        "flare_straight": round(whole * DEEP_SHARE),
        "flare_end": round(whole * RUN_OUT_SHARE),
    }
    if _both(spec):
        straight, end = round(whole * DEEP_SHARE_RIGHT), math.floor(whole * RUN_OUT_SHARE_RIGHT)
        most = min(2.0 * (end - straight), spec.number("case_height"))
        found |= {
            "flare_end": math.floor(whole * RUN_OUT_SHARE),
            "flare_straight_right": straight,
            "flare_end_right": end,
            "flare_right": min(spec.number("flare_right"), most),
        }
    return found


def _fit(spec: BenchSpec) -> bool:
    return all(each.slack(spec) >= 0.0 for each in CONSTRAINTS)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    c = case_numbers(spec)
    return (*_of_end(c, LEFT), *_of_end(c, RIGHT))


def _of_end(c: CaseNumbers, side: str) -> tuple[Derived, ...]:
    flare, suffix = c.flare_of(side), flare_suffix(c, side)
    which = ", right" if suffix else ""
    if flare.amount <= 0.0:
        return ()
    return (
        derived_length(
            f"greatest_depth{suffix}",
            f"Greatest depth{which}",
            "Flare",
            c.depth + flare.amount,
            "depth + flare",
        ),
        derived_angle(
            f"front_lean{suffix}",
            f"Front lean{which}",
            "Flare",
            c.lean_deg(side),
            "atan(flare / case height), from the vertical",
        ),
        derived_length(
            f"front_slant{suffix}",
            f"Front slant{which}",
            "Flare",
            math.hypot(c.height, flare.amount),
            "case height and flare",
        ),
        derived_angle(
            f"run_out_angle{suffix}",
            f"Run-out angle{which}",
            "Flare",
            math.degrees(math.atan2(flare.amount, flare.end - flare.straight)),
            "flare over the run-out's length, from the back edge",
        ),
    )


MEMBER = Member(
    "flare",
    PARAMETERS,
    CONSTRAINTS,
    derived=_derived,
    present=lambda spec: seat_is(CASE, spec),
)
