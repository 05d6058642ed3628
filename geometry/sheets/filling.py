"""A figure in its room: how large it may be drawn, and where its origin stands then.

Frame: bounds in mm of the figure, rooms in sheet mm; both left, bottom, right, top.
"""

from __future__ import annotations

from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Room


def largest_in(bounds: Room, room: Room, air: Vec2) -> float:
    """The scale at which a figure fills a room but for the air beside it and above and below."""
    left, bottom, right, top = room
    u0, v0, u1, v1 = bounds
    return min(
        (right - left - 2.0 * air[0]) / max(u1 - u0, 1.0),
        (top - bottom - 2.0 * air[1]) / max(v1 - v0, 1.0),
    )


def centred(bounds: Room, scale: float, room: Room) -> Vec2:
    """Where the (0, 0) of a figure stands with the figure in the middle of a room."""
    left, bottom, right, top = room
    u0, v0, u1, v1 = (c * scale for c in bounds)
    return ((left + right - u0 - u1) / 2.0, (bottom + top - v0 - v1) / 2.0)
