"""The dovetails between the seat and the ends of a panel bench, the same at both ends."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.member import Member
from geometry.bench.panel_ends_numbers import has_dovetailed_end, panel_ends
from geometry.design.parameter import Parameter, Value, choice, count, length
from geometry.design.spec import BenchSpec
from geometry.joints.dovetail_spacing import SLOPES

LEAST_LENGTH = 8.0  # mm of tail, from its end to its base line; common practice, no source

PARAMETERS: tuple[Parameter, ...] = (
    count(
        "tail_count",
        "Tails",
        "Dovetails",
        5,
        1,
        20,
        "How many tails the seat has at a dovetailed end.",
    ),
    choice(
        "tail_slope",
        "Slope",
        "Dovetails",
        "1:8",
        tuple(SLOPES),
        "Of the dovetails: 1:6 for soft timber and 1:8 for hard, common practice.",
    ),
    length(
        "tail_pin",
        "Pins",
        "Dovetails",
        14,
        3,
        80,
        "Width of the pins at their narrow ends.",
        step=0.5,
    ),
    length(
        "tail_half_pin",
        "Half pins",
        "Dovetails",
        14,
        3,
        80,
        "Width of the half pins at both edges, at their narrow ends.",
        step=0.5,
    ),
    length(
        "tail_lap",
        "Lap",
        "Dovetails",
        0,
        0,
        40,
        "What the end keeps in front of the tails, so that they don't show there; 0 lets them "
        "through.",
        step=0.5,
    ),
    length(
        "tail_fit",
        "Dovetail fit",
        "Dovetails",
        0.1,
        0,
        0.5,
        "Clearance of a tail between its pins, both flanks together.",
        step=0.05,
    ),
)

_READS = "depth end_thickness tail_count tail_slope tail_pin tail_half_pin tail_lap"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "seat_tails",
        _READS,
        lambda s: panel_ends(s).tails.room(panel_ends(s).tail_count),
        "the tails would be narrower than {5 mm} at their base",
    ),
    rule(
        "seat_tail_length",
        "end_thickness tail_lap",
        lambda s: panel_ends(s).tails.length - LEAST_LENGTH,
        "the lap would leave tails shorter than {8 mm}",
    ),
)


def fitted(spec: BenchSpec) -> dict[str, Value]:
    """Fewer tails, where those kept have no room on a seat of this depth."""
    if not has_dovetailed_end(spec):
        return {}
    n = panel_ends(spec)
    most = next((k for k in range(n.tail_count, 1, -1) if n.tails.room(k) >= 0.0), 1)
    return {"tail_count": float(most)} if most < n.tail_count else {}


def _snug(_spec: BenchSpec) -> tuple[dict[str, float], ...]:
    return ({"tail_pin": 3.0, "tail_half_pin": 3.0, "tail_lap": 0.0},)


MEMBER = Member("dovetailed ends", PARAMETERS, CONSTRAINTS, present=has_dovetailed_end, snug=_snug)
