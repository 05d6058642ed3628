"""Ends of a panel bench that are set in and housed in the seat: where they stand."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import (
    HOUSED,
    LIP_READS,
    SIDES,
    has_housed_end,
    panel_ends,
)
from geometry.design.parameter import Parameter, length
from geometry.design.spec import BenchSpec

# Common practice, no source, these:
LEAST_TONGUE = 30.0  # mm
LEAST_LEFT = 3.0  # mm of seat above a housing


def _set_in(side: str) -> Parameter:
    return length(
        f"{side}_end_in",
        f"{side.capitalize()} end set in",
        "Panel ends",
        120,
        15,
        1500,
        f"From the seat's {side} end to the end's outside.",
        applies=lambda spec: spec.value(f"{side}_joint") == HOUSED,
    )


PARAMETERS: tuple[Parameter, ...] = (
    *(_set_in(side) for side in SIDES),
    length(
        "end_reveal",
        "Ends back from the front",
        "Panel ends",
        12,
        0,
        300,
        "How far housed ends stand back behind the seat's front edge.",
    ),
)

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "end_tongue",
        f"depth end_reveal housing_cover cutter_diameter housing_fit {LIP_READS}",
        lambda s: panel_ends(s).tongue_front - panel_ends(s).back_lip - LEAST_TONGUE,
        "the tongue in the housing would be shorter than {30 mm}",
    ),
    rule(
        "end_housing_within",
        "housing_depth seat_thickness",
        lambda s: s.number("seat_thickness") - s.number("housing_depth") - LEAST_LEFT,
        "the housing would leave less than {3 mm} of the seat",
    ),
)


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return (
        {
            "left_end_in": 15.0,
            "right_end_in": 15.0,
            "end_reveal": 0.0,
            "housing_depth": 2.0,
            "housing_cover": 0.0,
        },
    )


MEMBER = Member("housed ends", PARAMETERS, CONSTRAINTS, present=has_housed_end, snug=_snug)
