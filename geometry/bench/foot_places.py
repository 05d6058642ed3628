"""Where the feet of a base stand: under every leg, plinth corner or panel end.

Bench coordinates, mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

from geometry.bench.base_numbers import base_numbers, outward, straight_edge
from geometry.bench.feet_numbers import has_feet
from geometry.bench.four_leg_numbers import CORNERS, foot_low, foot_stations, four_legs, stand
from geometry.bench.overall import CROSSED, FOUR_LEGS, PANEL_FEET, PLINTH, TRESTLES
from geometry.bench.panel_numbers import panel_numbers
from geometry.bench.plinth import plinth_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3, add, scale

# Common practice, no source, these:
_CLEAR = 5.0  # mm between a boring and the joint above it
_FROM_END = 40.0  # mm from the corner of a plinth without blocks to its feet
_BETWEEN = 2.0  # mm between two feet

# What the places of feet depend on.
PLACED = (
    "seat base length depth base_height foot foot_height inset_left inset_right inset_back "
    "inset_back_left inset_back_right inset_front inset_front_left inset_front_right splay rake "
    "base_thickness leg_top_width leg_foot_width taper_side leg_size leg_foot leg_joint leg_turn "
    "leg_taper_start apron_height plinth_thickness plinth_blocks plinth_block panel_thickness "
    "panel_pad panel_relief panel_middle panel_count"
)


@dataclass(frozen=True, slots=True)
class FootPlace:
    """``part`` ends at ``middle``; ``inside`` is the radius of the largest circle on its end,
    ``lean`` how far it leans for each mm up, ``free`` how far up nothing else is cut.  From
    ``beside`` up something else stands round the foot, as far off as ``inside``.  mm."""

    name: str
    part: str
    middle: Vec3
    inside: float
    lean: float
    free: float
    beside: float | None = None


@lru_cache(maxsize=512)
def foot_places(spec: BenchSpec) -> tuple[FootPlace, ...]:
    """Where the feet of a bench stand; KeyError for a base that has none."""
    return _PLACES[spec.word("base")](spec) if has_feet(spec) else ()


def _bridled(spec: BenchSpec) -> tuple[FootPlace, ...]:
    b = base_numbers(spec)
    found = []
    for corner, _ in b.tips:
        edge = straight_edge(b, corner)[1]
        half = b.leg_foot / (2.0 * b.cosine)
        way = -half if b.tapered_inside else half
        found.append(
            FootPlace(
                name=corner,
                part=f"leg_{corner}",
                middle=add(edge, scale(outward(b, corner), way)),
                inside=min(half, b.thickness / 2.0),
                lean=b.tangent,
                free=b.rise - b.stretcher_height - _CLEAR,
            )
        )
    return tuple(found)


def _four(spec: BenchSpec) -> tuple[FootPlace, ...]:
    n = four_legs(spec)
    found = []
    for corner in CORNERS:
        at = stand(n, corner)
        frame, low = at.frame(0.0), foot_low(n)
        sides = [(low + y * n.foot, low + z * n.foot) for y in (0.0, 1.0) for z in (0.0, 1.0)]
        points = [
            frame.to_bench((x, y, z)) for x, (y, z) in zip(foot_stations(n, at), sides, strict=True)
        ]
        middle = (
            sum(p[0] for p in points) / 4.0,
            sum(p[1] for p in points) / 4.0,
            n.ground,
        )
        found.append(
            FootPlace(
                name=corner,
                part=f"leg_{corner}",
                middle=middle,
                inside=0.9 * n.foot / 2.0,
                lean=math.hypot(*n.tangents),
                free=n.rise - n.joint_depth - _CLEAR,
            )
        )
    return tuple(found)


def _under_plinth(spec: BenchSpec) -> tuple[FootPlace, ...]:
    """Under the corner blocks, or under front and back a little from the corners."""
    p = plinth_numbers(spec)
    found = []
    for corner in CORNERS:
        fore, side = corner.split("_")
        if p.block > 0.0:
            x, y = p.corner(corner, p.thickness + p.block / 2.0)
            part, inside, level = f"corner_block_{corner}", p.block / 2.0, p.block_foot
        else:
            x, y = p.corner(corner, p.thickness / 2.0)
            x += _FROM_END if side == "left" else -_FROM_END
            part, inside, level = f"plinth_{fore}", p.thickness / 2.0, p.ground
        free = p.height - level - 3.0 * _CLEAR
        beside = p.ground if level > p.ground else None
        found.append(FootPlace(corner, part, (x, y, level), inside, 0.0, free, beside))
    return tuple(found)


def _under_panels(spec: BenchSpec) -> tuple[FootPlace, ...]:
    p = panel_numbers(spec)
    half = p.thickness / 2.0
    panels = [("left", p.left + half), ("right", p.right - half)]
    if p.middle is not None:
        panels.insert(1, ("middle", p.middle))
    pad = p.pad if p.relief > 0.0 else min(2.0 * p.thickness, p.width / 3.0)
    under_rail = p.rail_top - p.rail_height - p.ground - _CLEAR
    whole = p.height - p.ground - 3.0 * _CLEAR
    near = (p.rail_thickness + spec.number("foot_insert")) / 2.0 + _CLEAR
    return tuple(
        FootPlace(
            name=f"{side}_{fore}",
            part=f"panel_foot_{side}",
            middle=(x, y, p.ground),
            inside=min(half, pad / 2.0),
            lean=0.0,
            free=under_rail if abs(y - p.rail_middle) < near else whole,
        )
        for side, x in panels
        for fore, y in (("back", p.back - pad / 2.0), ("front", p.front + pad / 2.0))
    )


_PLACES: dict[str, Callable[[BenchSpec], tuple[FootPlace, ...]]] = {
    CROSSED: _bridled,
    TRESTLES: _bridled,
    FOUR_LEGS: _four,
    PLINTH: _under_plinth,
    PANEL_FEET: _under_panels,
}


_ALONG = {"left": 0, "middle": 1, "right": 2}
_ACROSS = {"front": 0, "back": 1}


def feet_apart(spec: BenchSpec) -> float:
    """Between the two feet that are nearest to each other, less the least.

    Less than nothing where left and right, or front and back, have changed sides.
    """
    gaps = [_gap(one, other) for one, other in combinations(foot_places(spec), 2)]
    return min(gaps) - spec.number("foot_diameter") - _BETWEEN


def _gap(one: FootPlace, other: FootPlace) -> float:
    dx, dy = other.middle[0] - one.middle[0], other.middle[1] - one.middle[1]
    gap = math.hypot(dx, dy)
    along, across = (_rank(other, by) - _rank(one, by) for by in (_ALONG, _ACROSS))
    if along and across:
        return gap
    return math.copysign(gap, dx * along if along else dy * across)


def _rank(place: FootPlace, by: dict[str, int]) -> int:
    return next(by[word] for word in place.name.split("_") if word in by)
