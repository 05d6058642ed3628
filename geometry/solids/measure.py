"""Measures of solids: volume, bounding box, shared volume.

Frame and units: bench frame for placed parts, mm and mm³.
"""

from __future__ import annotations

from geometry.design.part import Part, Shape
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import body_of, placed, solid_of
from geometry.solids.kernel.between import common_volume
from geometry.solids.solid import PlacedSolid
from shared.tolerances import COPLANAR


def volume_of(shape: Shape) -> float:
    """Volume in mm³ of the finished piece."""
    return solid_of(shape).volume


def bounding_box(part: Part) -> tuple[Vec3, Vec3]:
    """The least and the greatest corner of the box around a part, in bench coordinates."""
    return _corners(placed(part))


def shared_volume(part_a: Part, part_b: Part) -> float:
    """Volume in mm³ where two parts are both; 0 for parts that only touch."""
    if not _boxes_overlap(placed(part_a), placed(part_b), -COPLANAR):
        return 0.0
    return common_volume(body_of(part_a.shape), part_a.frame, body_of(part_b.shape), part_b.frame)


def _corners(solid: PlacedSolid) -> tuple[Vec3, Vec3]:
    low, high = solid.low.tolist(), solid.high.tolist()
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _boxes_overlap(first: PlacedSolid, second: PlacedSolid, reach: float) -> bool:
    return bool(
        (first.low <= second.high + reach).all() and (second.low <= first.high + reach).all()
    )
