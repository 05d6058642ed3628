"""Stopped housings, all cut with one cutter: of a case's uprights, of a bench's housed ends."""

from __future__ import annotations

from geometry.bench.case import has_case
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import has_housed_end
from geometry.design.parameter import Parameter, length
from geometry.design.spec import BenchSpec

PARAMETERS: tuple[Parameter, ...] = (
    length(
        "housing_depth",
        "Housing depth",
        "Housings",
        7,
        2,
        30,
        "Depth of the housings in top and bottom, or in the seat.",
        step=0.5,
    ),
    length(
        "cutter_diameter",
        "Cutter",
        "Housings",
        12.7,
        3,
        40,
        "Diameter of the router cutter that cuts the housings.",
        step=0.1,
    ),
    length(
        "housing_cover",
        "Cover at the stop",
        "Housings",
        4,
        0,
        60,
        "How far a housing stops behind the front edge of what stands in it.",
        step=0.5,
    ),
    length(
        "housing_fit",
        "Housing fit",
        "Housings",
        0.2,
        0,
        2,
        "Clearance of a piece in its housing, both sides together.",
        step=0.05,
    ),
)


def has_housings(spec: BenchSpec) -> bool:
    return has_case(spec) or has_housed_end(spec)


MEMBER = Member("housings", PARAMETERS, present=has_housings)
