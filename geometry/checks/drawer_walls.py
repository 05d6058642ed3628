"""Where the walls beside a drawer really stand, along the whole of its way in.

Frame and units: bench frame, mm.  Method: of every part that is not the drawer's own, what lies
beside the box between its lower and its upper edge, from the fronts of the uprights back to its
end; the nearest of that to the middle of the opening is the wall.  A box that is pushed straight in
passes all of it, so the tightest place counts wherever it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from geometry.design.part import Part
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import body_of, placed
from geometry.solids.kernel.between import box_within

_BESIDE = 60.0  # mm to either side of the opening in which its walls are looked for
_FLAT = 1e-6


@dataclass(frozen=True, slots=True)
class Wall:
    """The tightest place at one side: its X, a point of it, and the part that it is of."""

    x: float
    place: Vec3
    part: str


@lru_cache(maxsize=1024)
def wall(parts: tuple[Part, ...], low: Vec3, high: Vec3, *, right: bool, otherwise: Wall) -> Wall:
    """Of ``parts``, within a box from the middle of the opening out to one side; ``otherwise``
    where nothing stands there."""
    found = otherwise
    nearest = high[0] if right else low[0]
    for part in parts:
        solid = placed(part)
        if any(solid.low[axis] >= high[axis] or solid.high[axis] <= low[axis] for axis in range(3)):
            continue
        met = box_within(body_of(part.shape), part.frame, low, high)
        if met is None:
            continue
        (x_low, *from_), (x_high, *to) = met
        x = x_low if right else x_high
        if (x < nearest - _FLAT) if right else (x > nearest + _FLAT):
            nearest = x
            middle = (x, (from_[0] + to[0]) / 2.0, (from_[1] + to[1]) / 2.0)
            found = Wall(x, _at(part, x, low, high, middle, right=right), part.name)
    return found


def _at(part: Part, x: float, low: Vec3, high: Vec3, middle: Vec3, *, right: bool) -> Vec3:
    """A point of the wall where it stands out most: the middle of its last hundredth."""
    edge = 0.01
    near = (low[0], low[1], low[2]) if right else (x - edge, low[1], low[2])
    far = (x + edge, high[1], high[2]) if right else (high[0], high[1], high[2])
    met = box_within(body_of(part.shape), part.frame, near, far)
    if met is None:
        return middle
    (_, y, z), (_, y_high, z_high) = met
    return x, (y + y_high) / 2.0, (z + z_high) / 2.0


def beside(
    low: Vec3, high: Vec3, at_left: float, at_right: float, *, right: bool
) -> tuple[Vec3, Vec3]:
    """The box in which the wall at one side of a drawer's box is looked for."""
    middle = (at_left + at_right) / 2.0
    if right:
        return (middle, low[1], low[2]), (at_right + _BESIDE, high[1], high[2])
    return (at_left - _BESIDE, low[1], low[2]), (middle, high[1], high[2])
