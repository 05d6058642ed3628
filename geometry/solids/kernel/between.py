"""Measures of bodies and between them: what two share, how near they come, and where.

Frame and units: that of the bodies, or the bench's where they are placed by frames; mm and mm³.
"""

from __future__ import annotations

import manifold3d
import numpy as np

from geometry.primitives.frame import Frame, Vec3, add, scale
from geometry.solids.kernel.body import Body, check, placed
from geometry.solids.solid import Floats
from shared.tolerances import COPLANAR

_PLACED = 0.2  # mm to which the place where two bodies come nearest is told
_SOME = 0.1  # share of a cube


def common_volume(first: Body, first_frame: Frame, second: Body, second_frame: Frame) -> float:
    """Volume in mm³ that two placed bodies share."""
    shared = placed(first, first_frame) ^ placed(second, second_frame)
    check(shared, "comparing two parts")
    return float(shared.volume())


def gap(first: Body, first_frame: Frame, second: Body, second_frame: Frame, search: float) -> float:
    """Least distance in mm between two placed bodies, at most ``search``."""
    return float(placed(first, first_frame).min_gap(placed(second, second_frame), search))


def box_of(body: Body) -> tuple[Vec3, Vec3]:
    """The least and the greatest corner of the box round a body."""
    x, y, z, x_high, y_high, z_high = body.manifold.bounding_box()
    return (x, y, z), (x_high, y_high, z_high)


def box_within(body: Body, frame: Frame, low: Vec3, high: Vec3) -> tuple[Vec3, Vec3] | None:
    """The box round what of a placed body lies within a box; None for nothing."""
    size = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    met = placed(body, frame) ^ manifold3d.Manifold.cube(size).translate(low)
    return None if met.is_empty() else box_of(Body(met))


def corners_of(body: Body) -> Floats:
    """The corners of a body, (n, 3)."""
    return np.asarray(body.manifold.to_mesh64().vert_properties)[:, :3]


def common_middle(first: Body, second: Body) -> Vec3:
    """The middle of the box round what two bodies share."""
    low, high = box_of(Body(first.manifold ^ second.manifold))
    return scale(add(low, high), 0.5)


def nearest_point(first: Body, second: Body, search: float) -> Vec3:
    """Where the first body comes nearest to the second, which is less than ``search`` away.

    The middle of the place where that is a line or a face square to the axes.
    """
    body = first.manifold
    tied: set[int] = set()
    while True:
        box = body.bounding_box()
        sizes = {axis: box[axis + 3] - box[axis] for axis in range(3) if axis not in tied}
        axis = max(sizes, key=lambda one: sizes[one], default=-1)
        if axis < 0 or sizes[axis] < _PLACED:
            return ((box[0] + box[3]) / 2.0, (box[1] + box[4]) / 2.0, (box[2] + box[5]) / 2.0)
        middle = (box[axis] + box[axis + 3]) / 2.0
        normal = tuple(float(k == axis) for k in range(3))
        halves = body.split_by_plane(normal, middle)
        gaps = [half.min_gap(second.manifold, search) for half in halves]
        if abs(gaps[0] - gaps[1]) < COPLANAR:
            tied.add(axis)
        else:
            body = halves[0] if gaps[0] < gaps[1] else halves[1]


def is_wood(body: Body, middle: Vec3, size: float) -> bool:
    """Whether a cube of this size has some of a body in it, be it at a face or an arris."""
    cube = manifold3d.Manifold.cube((size, size, size), True).translate(middle)
    return float((body.manifold ^ cube).volume()) > _SOME * size**3
