"""How a mitre gapes when its two pieces were not sawn on one plane.

Frame and units: bench coordinates, mm; angles in degrees.

Method: each piece is held in line, and its sawn face leans off the plane of the joint by what the
saw was off.  Moved square to that plane until they touch, the two faces are apart by what is left
between them; as both are flat, the least and the most of it are at corners of the joint.  For a
tilt that is off by d alone, over a face w wide, the gap is w tan(d); for a fence that is off by e
alone, with tilts of 45 degrees, a distance y along the joint opens by sqrt(2) y tan(e / 2).
"""

from __future__ import annotations

import math

from geometry.cuts.saw import SawCut
from geometry.primitives.frame import Vec3, dot, subtract, unit


def sawn_outward(drawn: SawCut, tilt_deg: float, off_square_deg: float) -> Vec3:
    """The direction square to a sawn end and out of the piece, in the part's frame.

    ``tilt_deg`` is the blade's tilt from square, toward the side that is drawn; ``off_square_deg``
    how much longer than square the fence leaves the piece along its y, in degrees.
    """
    tilt, off = math.radians(tilt_deg), math.radians(off_square_deg)
    x, _, z = drawn.outward
    return (
        math.copysign(math.cos(tilt) * math.cos(off), x),
        -math.cos(tilt) * math.sin(off),
        math.copysign(math.sin(tilt), z),
    )


def gaps(corners: tuple[Vec3, ...], normal: Vec3, first: Vec3, second: Vec3) -> tuple[float, ...]:
    """How far apart the faces are at each corner of the joint, 0 where they touch.

    ``normal`` points from the first piece into the second; ``first`` and ``second`` are the
    directions out of the two sawn faces, all in bench coordinates.
    """
    start = corners[0]
    apart = [
        _beyond(corner, start, normal, second) - _beyond(corner, start, normal, first)
        for corner in corners
    ]
    return tuple(gap - min(apart) for gap in apart)


def _beyond(point: Vec3, start: Vec3, normal: Vec3, outward: Vec3) -> float:
    """How far along the normal a face through ``start`` lies from a point of the joint's plane."""
    across = unit(outward)
    return -dot(across, subtract(point, start)) / dot(across, normal)
