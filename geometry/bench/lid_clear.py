"""The lid of a storage box as it opens: its outline from the end.

Points (Y, Z) of the bench, mm.
"""

from __future__ import annotations

from geometry.bench.lid_box_numbers import LidBox
from geometry.bench.lid_swing import turned
from geometry.primitives.frame import Vec2


def closed_corners(b: LidBox) -> tuple[Vec2, ...]:
    """Lower back, lower front, upper front, upper back."""
    return (
        (b.lid_back, b.rim),
        (b.lid_front, b.rim),
        (b.lid_front, b.top),
        (b.lid_back, b.top),
    )


def about_pin(b: LidBox, points: tuple[Vec2, ...]) -> tuple[Vec2, ...]:
    pin_y, pin_z = b.pin_place
    return tuple((y - pin_y, z - pin_z) for y, z in points)


def open_corners(b: LidBox, opening_deg: float | None = None) -> tuple[Vec2, ...]:
    """The same corners of the lid when it is open."""
    pin_y, pin_z = b.pin_place
    turn = b.opening_deg if opening_deg is None else opening_deg
    found = []
    for corner in about_pin(b, closed_corners(b)):
        y, z = turned(corner, turn)
        found.append((y + pin_y, z + pin_z))
    return tuple(found)
