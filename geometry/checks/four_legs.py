"""Checks of four legs: their mortises and tenons, and round tenons in the board above."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.bench.apron_numbers import apron_numbers
from geometry.bench.apron_rules import LEAST_WALL as LEAST_BUILT
from geometry.bench.apron_rules import mortise_wall
from geometry.bench.bench import Bench
from geometry.bench.round_legs import tenon_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL, SHORTEST_ROUND
from geometry.checks.where import in_joint
from geometry.design.finding import Finding, Level, Mend
from shared.units import length_mark


def _thin_wall(bench: Bench) -> Iterator[Finding]:
    wall, least = mortise_wall(bench.spec), LEAST_WALL.of(bench)
    if wall >= least - 1e-9:
        return
    yield Finding(
        check="apron_wall",
        level=Level.THINK_AGAIN,
        message=(
            f"The aprons' mortises leave the legs walls of only {length_mark(wall)}, less than "
            f"{length_mark(least)}: set the aprons farther back, or take larger legs."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "leg"),
        place=in_joint(bench, "apron tenon", "leg_front_left"),
        amount=wall,
        limit=least,
    )


def _thin_tenon(bench: Bench) -> Iterator[Finding]:
    a, least = apron_numbers(bench.spec), LEAST_WALL.of(bench)
    if a.tenon >= least - 1e-9:
        return
    yield Finding(
        check="apron_tenon_thin",
        level=Level.THINK_AGAIN,
        message=(
            f"The aprons' tenons are only {length_mark(a.tenon)} thick, less than "
            f"{length_mark(least)}."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "apron"),
        place=in_joint(bench, "apron tenon", "apron_front"),
        amount=a.tenon,
        limit=least,
        mend=_thicker(bench),
    )


def _thicker(bench: Bench) -> Mend | None:
    """A tenon of the least thickness, where apron and leg leave room for it."""
    a, least = apron_numbers(bench.spec), LEAST_WALL.of(bench)
    more = (least - a.tenon) / 2.0
    if a.cheeks[0] - more < 2.0 or mortise_wall(bench.spec) - more < LEAST_BUILT:
        return None
    return Mend(f"Make them {length_mark(least)} thick.", (("apron_tenon", least),))


def _short_round(bench: Bench) -> Iterator[Finding]:
    at = tenon_numbers(bench.spec, "front_right")
    limit = at.diameter * SHORTEST_ROUND.of(bench) / 100.0
    if at.depth >= limit - 1e-9:
        return
    thick = at.diameter * at.depth / limit
    changes: list[tuple[str, float | str]] = [("leg_tenon", thick)]
    if at.wedge > thick / 3.0:
        changes.append(("leg_wedge", thick / 3.0))
    mend = Mend(f"Make them {length_mark(thick)} thick.", tuple(changes))
    yield Finding(
        check="short_round_tenon",
        level=Level.THINK_AGAIN,
        message=(
            f"Round tenons of {length_mark(at.diameter)} hold in only {length_mark(at.depth)} of "
            f"board: they should go at least {length_mark(limit)} into it."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "leg"),
        place=at.middle,
        amount=at.depth,
        limit=limit,
        mend=mend,
    )


CHECKS: tuple[Check, ...] = (
    Check(
        "apron_wall",
        "Thin wall beside an apron's mortise",
        "The wood between a mortise and the outside of the leg splits when the tenon works. Under "
        "{6 mm} it is thin: common practice, no source.",
        _thin_wall,
        ("aprons",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "apron_tenon_thin",
        "Thin tenons of the aprons",
        "The aprons' tenons keep the legs from racking. A third of the apron is usual, and under "
        "{6 mm} they break easily: common practice, no source.",
        _thin_tenon,
        ("aprons",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "short_round_tenon",
        "Round tenon shorter than it is thick",
        "A round tenon without aprons holds by its depth in the board alone. Less deep than its "
        "diameter it levers itself loose: common practice, no source.",
        _short_round,
        ("round legs",),
        limits=(SHORTEST_ROUND,),
    ),
)
