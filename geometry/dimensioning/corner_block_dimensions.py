"""Dimensions and handholds of the blocks in the corners between aprons: plan and front view."""

from __future__ import annotations

import math

from geometry.bench.bench import Bench
from geometry.bench.corner_block_numbers import CornerBlocks, corner_blocks, inward, place
from geometry.bench.four_leg_numbers import CORNERS
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import UPRIGHT, WITHIN, Place, bound
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec2
from geometry.views.view import FRONT, PLAN

_SHOWN = "back_left"
_HALF = math.sqrt(0.5)


def corner_block_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """The thickness of the block at the back left, and its height in front of it."""
    b = corner_blocks(bench.spec)
    along = _inward(b, _SHOWN)
    if b.diagonal:
        half = (b.near + b.end_in - b.side_in) / 2.0
        start = PLAN.project(place(b, _SHOWN, half, b.near - half, 0.0))
        end = (start[0] + along[0] * b.thickness, start[1] + along[1] * b.thickness)
    else:
        p, q = b.outer
        middle = (b.on_end(0.0)[0] + q) / 2.0
        start = PLAN.project(place(b, _SHOWN, p - b.thickness, middle, 0.0))
        end = PLAN.project(place(b, _SHOWN, p, middle, 0.0))
    x = FRONT.project(place(b, "front_left", b.reach[0], 0.0, 0.0))[0]
    top, low = (x, b.legs.height), (x, b.legs.height - b.height)
    return (
        bound(bench, "corner_block_thickness", Place(PLAN, start, end, along, WITHIN, 1)),
        bound(bench, "corner_block_height", Place(FRONT, top, low, UPRIGHT, WITHIN, 1, -1.0)),
    )


def corner_block_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The inner faces of all blocks in plan, and the lower edges of the front ones."""
    b = corner_blocks(bench.spec)
    found = []
    for corner in CORNERS:
        if b.diagonal:
            ends = ((b.end_in, b.far - b.end_in), (b.far - b.side_in, b.side_in))
        else:
            p, q = b.outer
            ends = ((p, b.on_end(0.0)[0]), (p, q))
        start, end = (PLAN.project(place(b, corner, p, q, 0.0)) for p, q in ends)
        found.append(
            Handhold(PLAN.name, start, end, Pull("corner_block_thickness", _inward(b, corner)))
        )
    lower = Pull("corner_block_height", (0.0, -1.0))
    for corner in ("front_left", "front_right"):
        span = [place(b, corner, p, 0.0, b.height) for p in (b.legs.size, b.reach[0])]
        start, end = (FRONT.project(point) for point in span)
        found.append(Handhold(FRONT.name, start, end, lower))
    return tuple(found)


def _inward(b: CornerBlocks, corner: str) -> Vec2:
    """Which way in plan a block grows thicker."""
    (x, _, _), (_, y, _) = inward(corner)
    return (x * _HALF, y * _HALF) if b.diagonal else (x, 0.0)
