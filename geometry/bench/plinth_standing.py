"""How a plinth stands under a bench."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.bench.four_leg_numbers import CORNERS
from geometry.bench.plinth import plinth_numbers
from geometry.bench.plinth_arrises import lower_taken
from geometry.bench.standing import (
    CLEAR,
    CLEAR_OF_BORING,
    Bearer,
    FootPlace,
    Standing,
    Top,
)
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2, Vec3, add, scale

_FROM_END = 40.0  # mm from the corner of a plinth without blocks to its feet; common practice

_BOARDS: Mapping[str, tuple[Vec3, Vec3]] = {
    # board: the direction along it, the direction inward
    "left": ((0.0, -1.0, 0.0), (1.0, 0.0, 0.0)),
    "front": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    "right": ((0.0, 1.0, 0.0), (-1.0, 0.0, 0.0)),
    "back": ((-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)),
}


def _bearers(spec: BenchSpec, inward_by: float) -> tuple[Bearer, ...]:
    p = plinth_numbers(spec)
    t = p.thickness
    ends = max(p.block, inward_by) + CLEAR
    corners = {
        "left": ((p.left + t, p.back - t), (p.left + t, p.front + t)),
        "front": ((p.left + t, p.front + t), (p.right - t, p.front + t)),
        "right": ((p.right - t, p.front + t), (p.right - t, p.back - t)),
        "back": ((p.right - t, p.back - t), (p.left + t, p.back - t)),
    }
    found = []
    for name, (along, inward) in _BOARDS.items():
        (x0, y0), (x1, y1) = corners[name]
        run = math.dist((x0, y0), (x1, y1))
        first, last = ends, max(ends, run - ends)
        start: Vec3 = (x0, y0, p.height)
        across = (p.back - p.front if name in ("front", "back") else p.right - p.left) / 2.0 - t
        found.append(
            Bearer(
                name=f"plinth_{name}",
                part=f"plinth_{name}",
                start=add(start, scale(along, first)),
                end=add(start, scale(along, last)),
                along=along,
                inward=inward,
                slope=0.0,
                thickness=t,
                height=p.height - p.ground,
                room=across,
                solid=False,
            )
        )
    return tuple(found)


def _feet(spec: BenchSpec) -> tuple[FootPlace, ...]:
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
        free = p.height - level - 3.0 * CLEAR_OF_BORING
        eased = 0.0 if p.block > 0.0 else lower_taken(spec)
        beside = p.ground if level > p.ground else None
        found.append(FootPlace(corner, part, (x, y, level), inside, 0.0, free, beside, eased))
    return tuple(found)


def _tops(spec: BenchSpec) -> tuple[Top, ...]:
    p = plinth_numbers(spec)
    middle = ((p.left + p.right) / 2.0, (p.back + p.front) / 2.0)
    sides: dict[str, Vec2] = {
        "left": (p.left, middle[1]),
        "front": (middle[0], p.front),
        "right": (p.right, middle[1]),
        "back": (middle[0], p.back),
    }
    return tuple(Top(f"plinth_{side}", f"the plinth's {side}", (at,)) for side, at in sides.items())


_FEET_READ = (
    "inset_back inset_front plinth_thickness plinth_blocks plinth_block plinth_edge "
    "plinth_edge_size plinth_edge_where"
)
STANDING = Standing(_bearers, _feet, _FEET_READ, _tops)
