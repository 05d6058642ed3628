"""How far a lid turns before it strikes something, and how it stands when it is open.

Seen from the right: points (y, z) about the hinge's pin, y to the back and z up.  A lid that opens
turns clockwise.  A rectangle first touches a fixed outline where one of its corners meets a side of
that, or where a corner of that meets one of its sides; each such meeting is where a circle about
the pin crosses a straight line.
"""

from __future__ import annotations

import math
from itertools import pairwise

from geometry.primitives.frame import Vec2

_NEAR = 1e-9


def turned(point: Vec2, opening_deg: float) -> Vec2:
    """Where a point of the closed lid is when the lid is open.

    >>> y, z = turned((-300.0, 0.0), 90.0)
    >>> (round(y, 9) + 0.0, round(z, 9))
    (0.0, 300.0)
    """
    turn = math.radians(opening_deg)
    cosine, sine = math.cos(turn), math.sin(turn)
    y, z = point
    return (y * cosine + z * sine, z * cosine - y * sine)


def free_deg(lid: tuple[Vec2, ...], outline: tuple[Vec2, ...]) -> float:
    """How far the lid (a closed polygon) opens before it meets the outline, at most 180 degrees."""
    found = [180.0]
    for corner in lid:
        for meeting in _on_circle(math.hypot(*corner), outline):
            found.append(_turn_deg(corner, meeting))
    for corner in outline:
        for meeting in _on_circle(math.hypot(*corner), lid):
            found.append(_turn_deg(meeting, corner))
    return min(found)


def _turn_deg(start: Vec2, end: Vec2) -> float:
    """How far clockwise from one direction to another, from 0 up to 360."""
    turn = math.degrees(math.atan2(start[1], start[0]) - math.atan2(end[1], end[0])) % 360.0
    return 0.0 if turn > 360.0 - 1e-7 else turn


def _on_circle(radius: float, outline: tuple[Vec2, ...]) -> list[Vec2]:
    """Where a circle about the pin crosses the sides of a polygon."""
    found = []
    for (y0, z0), (y1, z1) in pairwise((*outline, outline[0])):
        dy, dz = y1 - y0, z1 - z0
        a, b = dy * dy + dz * dz, y0 * dy + z0 * dz
        root = b * b - a * (y0 * y0 + z0 * z0 - radius * radius)
        if a < _NEAR or root < 0.0:
            continue
        for sign in (-1.0, 1.0):
            share = (-b + sign * math.sqrt(root)) / a
            if -_NEAR <= share <= 1.0 + _NEAR:
                found.append((y0 + share * dy, z0 + share * dz))
    return found
