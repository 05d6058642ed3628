"""The crossed base: two stretchers from corner to corner, lapped where they cross."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.base_numbers import DIAGONALS, base_numbers, crossing, outward
from geometry.bench.base_place import SNUG_CORNERS
from geometry.bench.base_rules import CONSTRAINTS
from geometry.bench.bridled_legs import SNUG_LEGS, words
from geometry.bench.derived import Derived, derived_angle, derived_length
from geometry.bench.member import Member
from geometry.bench.overall import CROSSED, base_is
from geometry.design.joint import Joint
from geometry.design.parameter import Parameter, length
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.joints.angled_lap import LapNumbers, angled_lap

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "lap_fit",
        "Lap fit",
        "Base",
        0.2,
        0,
        2,
        "Clearance of a stretcher in the lap's notch, both sides together.",
        step=0.05,
    ),
)


def _joints(spec: BenchSpec, parts: Mapping[str, Part]) -> tuple[Joint, ...]:
    """The lap in the middle."""
    b = base_numbers(spec)
    place = crossing(b)
    assert place is not None, "the constraints keep the stretchers crossed"
    lap = LapNumbers((place[0], place[1], b.height), b.stretcher_height, b.thickness, b.lap_fit)
    first, second = (parts[f"stretcher_{a}"] for a, _ in DIAGONALS)
    return (angled_lap("lap", first, second, lap),)


def _derived(spec: BenchSpec) -> tuple[Derived, ...]:
    b = base_numbers(spec)
    place = crossing(b)
    assert place is not None, "the constraints keep the stretchers crossed"
    rows = [
        derived_length(
            f"lap_from_{start}",
            f"Lap from {words(start)}",
            "Base",
            math.dist(b.tip(start), place),
            "where the stretchers cross, along the top edge from the tip",
        )
        for start, _ in DIAGONALS
    ]
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    between = math.degrees(math.acos(min(1.0, abs(u[0] * v[0] + u[1] * v[1]))))
    rows += [
        derived_angle("lap_angle", "Lap angle", "Base", between, "leg places"),
        derived_length(
            "lap_depth", "Lap depth", "Base", b.stretcher_height / 2.0, "half stretcher height"
        ),
    ]
    return tuple(rows)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return ({**SNUG_LEGS, **SNUG_CORNERS},)


def has_crossed_base(spec: BenchSpec) -> bool:
    return base_is(CROSSED, spec)


MEMBER = Member(
    "crossed base",
    PARAMETERS,
    CONSTRAINTS,
    joints=_joints,
    derived=_derived,
    present=has_crossed_base,
    snug=_snug,
)
