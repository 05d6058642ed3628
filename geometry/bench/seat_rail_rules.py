"""What the rail of a panel bench must leave room for in its ends."""

from __future__ import annotations

from geometry.bench.constraint import Constraint, rule
from geometry.bench.seat_rail_numbers import PLAIN, STUB, WEDGED, seat_rail
from geometry.design.spec import BenchSpec
from geometry.joints.leaning_tenon import GLUE_ROOM

# Common practice, no source, these:
LEAST_WALL = 10.0  # mm of an end above, below and beside a mortise
LEAST_BEYOND = 3.0  # mm of an end behind a blind mortise or a housing

_ENDS = "depth left_joint right_joint end_reveal seat_rail_back seat_rail_thickness"


def _walls(spec: BenchSpec) -> float:
    """The least wood of an end above the mortise, between it and the relief, and beside it."""
    r = seat_rail(spec)
    half = r.half_grain + r.wedge_room
    beside = min(r.middle, r.least_front - r.middle) - r.half_cross - r.fit / 2.0
    return min(r.underside - r.level - half, r.level - half - r.relief, beside) - LEAST_WALL


def _within(spec: BenchSpec) -> float:
    """How far the rail keeps inside the ends' edges."""
    r = seat_rail(spec)
    return min(r.least_front - r.front, r.front - r.thickness)


def _beyond(spec: BenchSpec) -> float:
    """The wood of an end behind what is let into it."""
    r = seat_rail(spec)
    if r.joint in (PLAIN, WEDGED):
        return 1.0
    room = GLUE_ROOM if r.joint == STUB else 0.0
    return r.end_thickness - r.let_in - room - LEAST_BEYOND


def _tenon(spec: BenchSpec) -> float:
    """By how much the tenon is higher than the least."""
    return 2.0 * seat_rail(spec).half_grain - 10.0


def _cheeks(spec: BenchSpec) -> float:
    r = seat_rail(spec)
    return r.thickness - 2.0 * r.half_cross


CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "seat_rail_walls",
        f"{_ENDS} base_height end_relief seat_rail_joint seat_rail_height seat_rail_down "
        "seat_rail_tenon seat_rail_shoulder seat_rail_wedge seat_rail_fit",
        _walls,
        "the rail's mortise would leave less than {10 mm} of an end",
    ),
    rule(
        "seat_rail_low",
        "base_height end_relief seat_rail_height seat_rail_down",
        lambda s: seat_rail(s).top - seat_rail(s).height - seat_rail(s).relief,
        "the rail would reach below the floor, or into the relief of the ends",
    ),
    rule("seat_rail_within", _ENDS, _within, "the rail would stand out beside the ends"),
    rule(
        "seat_rail_beyond",
        "end_thickness seat_rail_joint seat_rail_in",
        _beyond,
        "less than {3 mm} of an end would be left behind the rail",
    ),
    rule(
        "seat_rail_tenon_least",
        "seat_rail_joint seat_rail_height seat_rail_shoulder",
        _tenon,
        "the tenon would be lower than {10 mm}",
    ),
    rule(
        "seat_rail_tenon_within",
        "seat_rail_joint seat_rail_tenon seat_rail_thickness",
        _cheeks,
        "the tenon would be thicker than the rail",
    ),
)
