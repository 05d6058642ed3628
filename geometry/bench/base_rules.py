"""What a crossed base must leave room for."""

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


_TAPER = "base_height splay stretcher_height taper_start leg_top_width leg_foot_width taper_side"

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
    rule(
        "taper_room",
        _TAPER,
        lambda s: _taper_run(s) - 20.0,
        "the taper needs at least {20 mm} between the joint and the floor",
    ),
    rule(
        "leg_order",
        "leg_top_width leg_foot_width",
        lambda s: s.number("leg_top_width") - s.number("leg_foot_width"),
        "the foot would be wider than the top",
    ),
    rule(
        "tenon_walls",
        "tenon_rule tenon_thickness base_thickness bridle_fit",
        lambda s: base_numbers(s).mortise_wall - 3.0,
        "the mortise would leave walls under {3 mm}",
    ),
    rule(
        "tenon_least",
        "tenon_rule tenon_thickness base_thickness",
        lambda s: base_numbers(s).tenon - 4.0,
        "the tenon would be thinner than {4 mm}",
    ),
)


def _taper_run(spec: BenchSpec) -> float:
    """How far the taper runs, along the leg or in height, whichever is less.

    A taper that fell less than the level foot rises would cut the foot away from under the leg.
    """
    b = base_numbers(spec)
    slope = -b.tangent if b.tapered_inside else b.tangent
    along = b.leg_edge + slope * b.leg_foot - b.drop
    return min(along, b.height - b.stretcher_height - b.taper_start)
