"""Where a screw goes up through a corner block into the seat, and why one may have no place.

The seat moves across its depth, and so does the slot, at 45° to the block.  mm.
"""

from __future__ import annotations

import math
from functools import lru_cache

from geometry.bench.corner_block_numbers import (
    CornerBlocks,
    corner_blocks,
    has_corner_blocks,
    inward,
    place,
)
from geometry.bench.fixing_numbers import (
    EASE,
    LEAST_EDGE,
    SCREWS,
    FixingNumbers,
    fixing_numbers,
    within_seat,
)
from geometry.bench.four_leg_numbers import CORNERS
from geometry.design.spec import BenchSpec
from geometry.joints.slotted_screw import SlottedScrew, rectangle
from geometry.primitives.frame import Vec3, add, scale

# common practice, no source
_BEARING = 8.0  # mm on either side of a slot where the block bears on the seat
_LEAST_WALL = 3.0  # mm of wood beside a slot; common practice, no source
_HALF = math.sqrt(0.5)


def screws_up(spec: BenchSpec) -> bool:
    """Whether corner blocks should hold the seat too: only diagonal ones have room for it."""
    if spec.value("fixing") != SCREWS or not has_corner_blocks(spec):
        return False
    return corner_blocks(spec).diagonal


@lru_cache(maxsize=512)
def seat_screw(spec: BenchSpec, corner: str) -> SlottedScrew | str:
    """The screw in a diagonal block, or why it has no place."""
    b, f = corner_blocks(spec), fixing_numbers(spec)
    middle = (b.near + b.far) / 2.0
    p = (b.end_in + middle - b.side_in) / 2.0
    at = place(b, corner, p, middle - p, 0.0)
    shrink, swell = f.room_back(at[1]), f.room_on(at[1])
    moved = _HALF * max(shrink, swell) + EASE / 2.0
    wide = f.head
    why = _hindered(b, f, moved, wide)
    if within_seat(spec, at) < LEAST_EDGE:
        why = "it does not lie under the seat there"
    if why:
        return why
    off = moved + wide / 2.0
    ex, ey = inward(corner)
    along, across = scale(add(ex, scale(ey, -1.0)), _HALF), scale(add(ex, ey), _HALF)
    bearing = tuple(
        rectangle(
            add(at, scale(along, side * (off + _BEARING / 2.0))),
            along,
            across,
            (_BEARING / 2.0, b.thickness / 2.0),
        )
        for side in (-1.0, 1.0)
    )
    away: Vec3 = f.away(at[1])
    return SlottedScrew(
        screw=at,
        away=away,
        shrink=shrink,
        swell=swell,
        travel=f.shrink(at[1]) + f.swell(at[1]),
        shank=f.shank,
        pilot=f.pilot,
        head=wide,
        ease=EASE,
        land=min(f.land, b.height),
        depth=b.height,
        bite=f.bite,
        bearing=bearing,
    )


def _hindered(b: CornerBlocks, f: FixingNumbers, moved: float, wide: float) -> str:
    """Whether the block is too thin or too short for the slot beside its own screws."""
    across = wide if f.land < b.height else f.shank + EASE
    if b.thickness / 2.0 - moved - across / 2.0 < _LEAST_WALL:
        return "the corner block is too thin for the slot"
    within = b.end_in + b.side_in
    half_near = (b.near - within) * _HALF
    half_middle = ((b.near + b.far) / 2.0 - within) * _HALF
    free = half_middle - b.thickness / 2.0 - b.head if b.screws else half_middle
    if min(half_near - _BEARING, free - _LEAST_WALL) < moved + wide / 2.0:
        return "the corner block is too short for the slot"
    return ""


def lacking(spec: BenchSpec) -> tuple[tuple[str, str], ...]:
    """The corners whose block holds no seat screw though it should, each with the reason."""
    if not screws_up(spec):
        return ()
    found = []
    for corner in CORNERS:
        at = seat_screw(spec, corner)
        if isinstance(at, str):
            found.append((corner, at))
    return tuple(found)
