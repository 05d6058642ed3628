"""The outline of a slot: two straight sides and two half circles."""

from __future__ import annotations

from geometry.primitives.frame import Vec2
from geometry.primitives.path import QUARTER_TURN_BULGE, BulgedVertex, Path


def stadium(
    length: float, width: float, middle: Vec2 = (0.0, 0.0), along: Vec2 = (1.0, 0.0)
) -> Path:
    """``length`` over its round ends along a unit direction, ``width`` across; mm.

    Counter-clockwise, of true quarter circles, so that its full length is at corners.
    """
    r = width / 2.0
    half = max(0.0, length / 2.0 - r)
    (x, y), (dx, dy) = middle, along
    corners: tuple[BulgedVertex, ...] = (
        (-half, -r, 0.0),
        (half, -r, QUARTER_TURN_BULGE),
        (half + r, 0.0, QUARTER_TURN_BULGE),
        (half, r, 0.0),
        (-half, r, QUARTER_TURN_BULGE),
        (-half - r, 0.0, QUARTER_TURN_BULGE),
    )
    if half <= 1e-9:  # a round hole has no straight sides
        corners = tuple(corners[k] for k in (1, 2, 4, 5))
    return Path(tuple((x + u * dx - v * dy, y + u * dy + v * dx, bulge) for u, v, bulge in corners))
