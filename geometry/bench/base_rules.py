"""What crossed stretchers must leave room for."""

from __future__ import annotations

import math

from geometry.bench.base_numbers import DIAGONALS, base_numbers, crossing, outward
from geometry.bench.constraint import Constraint, rule
from geometry.design.spec import BenchSpec

_TIPS = (
    "length depth inset_left inset_right inset_back_left inset_back_right inset_front_left "
    "inset_front_right"
)


def _spread(spec: BenchSpec) -> float:
    """Least distance between the tips at one end, or one side, less what legs need."""
    b = base_numbers(spec)
    (bl, br, fl, fr) = (b.tip(k) for k in ("back_left", "back_right", "front_left", "front_right"))
    least = b.thickness * 1.5 + 10.0
    return min(bl[1] - fl[1], br[1] - fr[1], br[0] - bl[0], fr[0] - fl[0]) - least


def _lap_room(spec: BenchSpec) -> float:
    """What is left of the stretcher between the lap and the nearest shoulder."""
    b = base_numbers(spec)
    place = crossing(b)
    if place is None or _spread(spec) < 0.0:
        return -1.0
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    sine = abs(u[0] * v[1] - u[1] * v[0])
    cosine = abs(u[0] * v[0] + u[1] * v[1])
    half = (b.thickness + b.lap_fit) / 2.0 / sine + b.thickness / 2.0 * cosine / sine
    nearest = min(math.dist(place, b.tip(corner)) for pair in DIAGONALS for corner in pair)
    return nearest - half - b.leg_top / b.cosine - 15.0


def _crossing_angle(spec: BenchSpec) -> float:
    b = base_numbers(spec)
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    return math.degrees(math.asin(min(1.0, abs(u[0] * v[1] - u[1] * v[0])))) - 5.0


CONSTRAINTS: tuple[Constraint, ...] = (
    rule("spread", f"{_TIPS} base_thickness", _spread, "the legs would run into each other"),
    rule(
        "lap_room",
        f"{_TIPS} base_thickness lap_fit leg_top_width splay",
        _lap_room,
        "the lap would come within {15 mm} of a leg",
    ),
    rule(
        "lap_angle",
        _TIPS,
        _crossing_angle,
        "the stretchers would cross at less than {5 deg}",
    ),
)
