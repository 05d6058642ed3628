"""How a lid stands when it is open.

Seen from the right: points (y, z) about the hinge's pin, y to the back and z up.  A lid that opens
turns clockwise.
"""

from __future__ import annotations

import math

from geometry.primitives.frame import Vec2


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
