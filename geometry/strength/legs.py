"""What a leg bears: those who sit where it bears most, its lean and its slenderness.  N, mm.

A seat on four legs, taken as a body that gives a little: a load goes to the legs by the lever,
along the bench and across it.  A leg that leans is bent by the upright force at its foot, less what
the floor's grip takes: at a height h above the floor by V (out - grip h), where the foot stands
``out`` mm out from the middle of the leg's section there.  Its foot is free to move sideways, so it
buckles as a column of twice its length (K = 2), of the section a third of the way up from its thin
end (common practice in timber standards, from memory).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.bench.base_numbers import BaseNumbers, base_numbers, outward, straight_edge
from geometry.bench.case_numbers import case_numbers
from geometry.bench.four_leg_numbers import (
    CORNERS,
    FourLegs,
    foot_low,
    four_legs,
    outward_signs,
    stand,
    taper_stations,
)
from geometry.bench.lid_box_numbers import lid_box
from geometry.bench.overall import CASE, FOUR_LEGS, LID_BOX, base_form, base_is, stands_on_base
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3
from geometry.strength.beam import Floats
from geometry.strength.column import column_stress, euler_load, pressed_and_bent
from geometry.strength.loads import NEAREST, Case, Loads
from geometry.strength.stuff import stuff_of

SWAYING = 2.0  # K of a column held at its top alone
_STATIONS = 13


@dataclass(frozen=True, slots=True)
class Leg:
    """A leg from the floor up to its joint, as sections at heights.

    ``heights`` (n) above its foot, lowest first; ``sizes`` (n, 2) of the section in the two
    directions it may be bent in; ``outs`` (n, 2) how far the foot stands out from the section's
    middle in each; ``lean`` of the leg, mm along it for each mm up.
    """

    part: str
    foot: Vec2
    ground: float
    heights: tuple[float, ...]
    sizes: tuple[Vec2, ...]
    outs: tuple[Vec2, ...]
    lean: float

    @property
    def length(self) -> float:
        return self.heights[-1] * self.lean


@dataclass(frozen=True, slots=True)
class Stress:
    """``share`` of strength in %, at a height above the floor, under ``force`` N on the leg."""

    share: float
    height: float
    force: float
    case: Case


def has_legs(spec: BenchSpec) -> bool:
    return stands_on_base(spec) and base_form(spec).legs


@lru_cache(maxsize=64)
def legs(spec: BenchSpec) -> tuple[Leg, ...]:
    """The four legs of a bench that has legs, in the order of CORNERS."""
    if base_is(FOUR_LEGS, spec):
        return tuple(_raking(four_legs(spec), corner) for corner in CORNERS)
    return tuple(_bridled(base_numbers(spec), corner) for corner in CORNERS)


def _bridled(b: BaseNumbers, corner: str) -> Leg:
    """In the plane of its stretcher; of one thickness, tapered on one edge below the joint."""
    out, bottom = outward(b, corner), straight_edge(b, corner)[1]
    way = -1.0 if b.tapered_inside else 1.0
    joint = b.rise - b.stretcher_height
    heights = np.linspace(0.0, joint, _STATIONS)
    taper = joint - b.taper_start
    widths = b.leg_foot + (b.leg_top - b.leg_foot) * np.minimum(1.0, heights / taper)
    # Along the stretcher, from the straight edge's lower end: its middle at each height.
    middles = -heights * b.tangent + way * widths / 2.0 / b.cosine
    outs = middles[0] - middles
    level = float(middles[0])
    return Leg(
        part=f"leg_{corner}",
        foot=(bottom[0] + out[0] * level, bottom[1] + out[1] * level),
        ground=b.ground,
        heights=tuple(float(h) for h in heights),
        sizes=tuple((float(w), b.thickness) for w in widths),
        outs=tuple((float(o), 0.0) for o in outs),
        lean=1.0 / b.cosine,
    )


def _raking(n: FourLegs, corner: str) -> Leg:
    """Four legs lean both ways, tapered below the aprons, or below the seat with round tenons."""
    at = stand(n, corner)
    frame, low = at.frame(0.0), foot_low(n)
    begin, end = taper_stations(n, at)
    slope = -at.down[2]
    joint = n.rise - n.joint_depth
    signs = outward_signs(corner)
    heights = np.linspace(0.0, joint, _STATIONS)
    sizes, middles = [], []
    for height in heights:
        # Down the grain to this height, near enough on the leg's middle.
        station = end - height / slope
        narrowed = min(1.0, max(0.0, (station - begin) / (end - begin)))
        size = n.size - narrowed * (n.size - n.foot)
        middle = narrowed * low + size / 2.0
        sizes.append((size, size))
        middles.append(_on_axis(frame.to_bench((station, middle, middle)), at.down, n, height))
    foot = middles[0]
    outs = [((foot[0] - x) * signs[0], (foot[1] - y) * signs[1]) for x, y in middles]
    if n.turned:  # it leans square to two of its faces
        outs = [(math.hypot(*out), 0.0) for out in outs]
    return Leg(
        part=f"leg_{corner}",
        foot=foot,
        ground=n.ground,
        heights=tuple(float(h) for h in heights),
        sizes=tuple(sizes),
        outs=tuple(outs),
        lean=1.0 / slope,
    )


def _on_axis(point: Vec3, down: Vec3, n: FourLegs, height: float) -> Vec2:
    """X and Y of the line through a point along the grain, at a height above the feet."""
    run = (point[2] - n.ground - height) / -down[2]
    return point[0] + run * down[0], point[1] + run * down[1]


def seat_edges(spec: BenchSpec, x: float) -> tuple[float, float]:
    """Y of the seat's front and back edge at X."""
    if spec.value("seat") == CASE:
        c = case_numbers(spec)
        return -c.depth_at(min(max(x, 0.0), c.length)), 0.0
    if spec.value("seat") == LID_BOX:
        return lid_box(spec).lid_front, 0.0
    return -spec.number("depth"), 0.0


def greatest_forces(spec: BenchSpec, loads: Loads, own: float) -> dict[str, tuple[float, Case]]:
    """By leg the greatest upright force, with a quarter of ``own`` weight, and who sits there.

    No more than all that sit: farther out they would lift the other legs, and tip the bench.
    """
    feet = {corner: leg.foot for corner, leg in zip(CORNERS, legs(spec), strict=True)}
    length = spec.number("length")
    found = {}
    for corner, (_, y) in feet.items():
        fore, side = corner.split("_")
        far = "right" if side == "left" else "left"
        near_x, far_x = (
            (feet[f"back_{way}"][0] + feet[f"front_{way}"][0]) / 2.0 for way in (side, far)
        )
        other_y = feet[f"{'front' if fore == 'back' else 'back'}_{side}"][1]
        best: tuple[float, Case] | None = None
        for case in loads.cases(length):
            inside = max(NEAREST, case.half)
            middle = inside if side == "left" else length - inside
            front, back = seat_edges(spec, middle)
            sits = front + NEAREST if fore == "front" else back - NEAREST
            across = (sits - other_y) / (y - other_y)
            along = sum((middle + at - far_x) / (near_x - far_x) for at in case.offsets)
            borne = min(along, len(case.offsets)) * min(1.0, max(0.0, across))
            force = float(case.force * borne + own / 4.0)
            if best is None or force > best[0]:
                best = (force, case)
        assert best is not None, "there is always a single load"
        found[f"leg_{corner}"] = best
    return found


def leg_stress(leg: Leg, material: str, force: float, case: Case, grip: float) -> Stress:
    """Where a leg is strained most; ``grip`` is what the floor holds, of the force on it."""
    stuff = stuff_of(material)
    assert stuff.crushing is not None, "legs are timber"
    sizes, outs, heights = np.array(leg.sizes), np.array(leg.outs), np.array(leg.heights)
    third = sizes[0] + (sizes[-1] - sizes[0]) / 3.0
    weak, broad = sorted(float(one) for one in third)
    inertia = broad * weak**3 / 12.0
    limit = euler_load(stuff.elasticity, inertia, SWAYING * leg.length)
    areas = sizes[:, 0] * sizes[:, 1]
    along = force * leg.lean
    stands = column_stress(stuff.crushing, limit / (weak * broad))
    moments = _moments(outs, heights, force, grip)
    modulus = sizes[:, ::-1] * sizes**2 / 6.0
    bent = (moments / modulus).sum(axis=1)
    shares = [
        pressed_and_bent(along / area, stands, stress, stuff.rupture, along / limit)
        for area, stress in zip(areas, bent, strict=True)
    ]
    worst = int(np.argmax(shares))
    return Stress(shares[worst], leg.ground + float(heights[worst]), force, case)


def moment_at_joint(leg: Leg, force: float, grip: float) -> Vec2:
    """N mm in the joint at the top of a leg, in each of its two directions."""
    ((first, second),) = _moments(np.array(leg.outs[-1:]), np.array(leg.heights[-1:]), force, grip)
    return float(first), float(second)


def _moments(outs: Floats, heights: Floats, force: float, grip: float) -> Floats:
    """At each height in both directions, (n, 2); the grip acts against the way the foot is out."""
    size = np.hypot(outs[:, 0], outs[:, 1])
    left = np.maximum(0.0, size - grip * heights)
    share = np.divide(left, size, out=np.zeros_like(left), where=size > 0.0)
    return np.asarray(force * np.abs(outs) * share[:, None])
