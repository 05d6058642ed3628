"""How four raking legs stand under a bench: their aprons bear, unless round tenons hold it."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.apron_numbers import ENDS, apron_frame, apron_numbers
from geometry.bench.arris_rows import taken_by
from geometry.bench.corner_block_numbers import corner_blocks, has_corner_blocks
from geometry.bench.four_leg_numbers import (
    APRONS,
    CORNERS,
    foot_low,
    foot_stations,
    four_legs,
    stand,
)
from geometry.bench.standing import (
    CLEAR,
    CLEAR_OF_BORING,
    Bearer,
    FootPlace,
    Standing,
    Top,
    leg_top,
)
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3, scale

_OUT: Mapping[str, Vec3] = {
    "front": (0.0, -1.0, 0.0),
    "back": (0.0, 1.0, 0.0),
    "left": (-1.0, 0.0, 0.0),
    "right": (1.0, 0.0, 0.0),
}


def _aprons(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    """Each apron between its legs, clear of the fixings of its neighbours."""
    a = apron_numbers(spec)
    n = a.legs
    leans = {side: math.radians(a.lean_deg(side)) for side in ENDS}
    blocks = corner_blocks(spec).reach if has_corner_blocks(spec) else (0.0, 0.0)
    within = {side: (a.reveal + a.thickness) / math.cos(leans[side]) for side in ENDS}
    found = []
    for side, out in _OUT.items():
        lengthways = side in ("front", "back")
        next_to = "left" if lengthways else "front"
        leg = n.size / math.cos(leans[next_to]) + CLEAR
        block = blocks[0 if lengthways else 1] + CLEAR
        ends = max(leg, within[next_to] + inward_by + CLEAR, block)
        frame = apron_frame(a, side)
        x, y, _ = frame.to_bench((0.0, 0.0, a.thickness))
        low, high = (n.left, n.right) if lengthways else (n.front, n.back)
        first, last = low + ends, max(low + ends, high - ends)
        along: Vec3 = (1.0, 0.0, 0.0) if lengthways else (0.0, 1.0, 0.0)
        room = (n.back - n.front if lengthways else n.right - n.left) / 2.0 - within[side]
        found.append(
            Bearer(
                name=f"apron_{side}",
                part=f"apron_{side}",
                start=(first, y, n.height) if lengthways else (x, first, n.height),
                end=(last, y, n.height) if lengthways else (x, last, n.height),
                along=along,
                inward=scale(out, -1.0),
                slope=math.tan(leans[side]),
                thickness=a.thickness / math.cos(leans[side]),
                height=a.height,
                room=room,
                solid=False,
                eased=taken_by(spec, "rail_edge"),
            )
        )
    return tuple(found)


def _feet(spec: BenchSpec) -> tuple[FootPlace, ...]:
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
                free=n.rise - n.joint_depth - CLEAR_OF_BORING,
                eased=taken_by(spec, "foot_edge"),
            )
        )
    return tuple(found)


def _tops(spec: BenchSpec) -> tuple[Top, ...]:
    n = four_legs(spec)
    found = []
    for corner in CORNERS:
        at = stand(n, corner)
        frame = at.frame(0.0)
        points = [
            frame.to_bench((at.station(y, z, n.height), y, z))
            for y in (0.0, n.size)
            for z in (0.0, n.size)
        ]
        found.append(leg_top(corner, tuple((x, y) for x, y, _ in points)))
    return tuple(found)


_FEET_READ = (
    "foot_edge foot_edge_size "
    "inset_back inset_front splay rake leg_size leg_foot leg_joint leg_turn leg_taper_start "
    "apron_height"
)
STANDING = Standing(
    _aprons, _feet, _FEET_READ, _tops, holds=lambda spec: spec.value("leg_joint") != APRONS
)
