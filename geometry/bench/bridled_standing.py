"""How bases of stretchers and bridled legs stand under a bench: crossed stretchers and trestles."""

from __future__ import annotations

import math
from dataclasses import replace

from geometry.bench.arris_rows import taken_by
from geometry.bench.base_numbers import BaseNumbers, base_numbers, crossing, outward, straight_edge
from geometry.bench.bridled_legs import stretcher_words
from geometry.bench.standing import (
    CLEAR,
    CLEAR_OF_BORING,
    Bearer,
    FootPlace,
    Standing,
    Top,
    leg_top,
)
from geometry.bench.trestles import rail_numbers
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale, unit


def _crossed(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """Both halves of both stretchers; fixings stand in the wider quarters between them."""
    b = base_numbers(spec)
    middle = crossing(b)
    assert middle is not None, "the constraints keep the stretchers crossed"
    half = b.thickness / 2.0
    found = []
    for first, second in b.pairs:
        part = stretcher_words(b, first, second)[0]
        for corner in (first, second):
            out = outward(b, corner)
            fore, side = corner.split("_")
            beside = outward(b, f"{fore}_{'right' if side == 'left' else 'left'}")
            behind = outward(b, f"{'front' if fore == 'back' else 'back'}_{side}")
            partner = min((beside, behind), key=lambda way: round(dot(out, way), 6))
            cosine = dot(out, partner)
            sine = math.sqrt(max(1e-9, 1.0 - cosine * cosine))
            inward = unit(add(partner, scale(out, -cosine)))
            # Along the stretcher until its side clears the other, and its fixings their partner's.
            near = max(
                (half + CLEAR + half * abs(cosine)) / sine,
                (half + inward_by + CLEAR) * (1.0 + cosine) / sine,
            )
            far = math.dist(middle, b.tip(corner)) - b.leg_top / b.cosine - CLEAR
            found.append(
                _on_stretcher(b, f"{part}_{corner}", part, middle, out, inward, (near, far))
            )
    return _eased(spec, found)


def _on_stretcher(
    b: BaseNumbers,
    name: str,
    part: str,
    origin: Vec2,
    along: Vec3,
    inward: Vec3,
    span: tuple[float, float],
) -> Bearer:
    """From ``span[0]`` to ``span[1]`` mm along a stretcher from a point on its middle."""
    arris = add((*origin, b.height), scale(inward, b.thickness / 2.0))
    near, far = span[0], max(span)
    return Bearer(
        name=name,
        part=part,
        start=add(arris, scale(along, near)),
        end=add(arris, scale(along, far)),
        along=along,
        inward=inward,
        slope=0.0,
        thickness=b.thickness,
        height=b.stretcher_height,
        room=math.inf,
        solid=True,
    )


def _trestles(spec: BenchSpec, _inward_by: float) -> tuple[Bearer, ...]:
    """Both sides of the rail on both stretchers."""
    r = rail_numbers(spec)
    b = r.legs
    found = []
    for first, second in b.pairs:
        part = stretcher_words(b, first, second)[0]
        side = 1.0 if part.endswith("left") else -1.0
        for corner in (first, second):
            out = outward(b, corner)
            tip = b.tip(corner)
            to_rail = abs(tip[1] - r.middle) - r.width / 2.0 - CLEAR
            leg = b.leg_top / b.cosine + CLEAR
            half = _on_stretcher(
                b,
                f"{part}_{corner.split('_')[0]}",
                part,
                tip,
                scale(out, -1.0),
                (side, 0.0, 0.0),
                (leg, to_rail),
            )
            found.append(replace(half, room=r.between / 2.0))
    return _eased(spec, found)


def _eased(spec: BenchSpec, found: list[Bearer]) -> tuple[Bearer, ...]:
    taken = taken_by(spec, "rail_edge")
    return tuple(replace(one, eased=taken) for one in found) if taken else tuple(found)


def _feet(spec: BenchSpec) -> tuple[FootPlace, ...]:
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
                free=b.rise - b.stretcher_height - CLEAR_OF_BORING,
                eased=taken_by(spec, "foot_edge"),
            )
        )
    return tuple(found)


def _tops(spec: BenchSpec) -> tuple[Top, ...]:
    b = base_numbers(spec)
    half = 0.0 if b.crossed else b.thickness / 2.0
    return tuple(leg_top(corner, ((x - half, y), (x + half, y))) for corner, (x, y) in b.tips)


_FEET_READ = (
    "foot_edge foot_edge_size "
    "inset_back_left inset_back_right inset_front_left inset_front_right splay base_thickness "
    "leg_top_width leg_foot_width taper_side"
)
CROSSED_STANDING = Standing(_crossed, _feet, _FEET_READ, _tops)
TRESTLE_STANDING = Standing(_trestles, _feet, _FEET_READ, _tops)
