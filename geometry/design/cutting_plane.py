"""The plane of a section: how it stands, how far it is turned, and where it goes through.

Frame and units: bench coordinates, mm, degrees.

Unturned it is square to an axis of the bench; turned, its normal leans from that axis toward
another one, the two lying in the view in which the plane is seen as a line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Vec3, add, dot, scale


class Way(Enum):
    """How the plane stands until it is turned."""

    ACROSS = "across"  # square to the length
    ALONG = "along"  # square to the depth
    LEVEL = "level"
    ASKEW = "askew"  # upright, turned in plan


NORMAL: dict[Way, Vec3] = {
    Way.ACROSS: X_AXIS,
    Way.ALONG: Y_AXIS,
    Way.LEVEL: Z_AXIS,
    Way.ASKEW: Y_AXIS,
}
TOWARD: dict[Way, Vec3] = {
    Way.ACROSS: Z_AXIS,
    Way.ALONG: Z_AXIS,
    Way.LEVEL: X_AXIS,
    Way.ASKEW: X_AXIS,
}

FIRST_TURN: dict[Way, float] = dict.fromkeys(Way, 0.0) | {Way.ASKEW: 45.0}


@dataclass(frozen=True, slots=True)
class Plane:
    """``turn`` in (-90, 90] degrees; ``at`` is how far along its normal it stands."""

    way: Way
    at: float
    turn: float = 0.0

    @property
    def normal(self) -> Vec3:
        return normal_of(self.way, self.turn)


def normal_of(way: Way, turn: float) -> Vec3:
    """The normal of a plane; just an axis where it is not turned."""
    if turn == 0.0:
        return NORMAL[way]
    angle = math.radians(turn)
    return add(scale(NORMAL[way], math.cos(angle)), scale(TOWARD[way], math.sin(angle)))


def through(way: Way, turn: float, point: Vec3) -> Plane:
    """The plane so turned that goes through a point."""
    return Plane(way, dot(normal_of(way, turn), point), turn)


def half_turn(turn: float) -> float:
    """The same plane's turn in (-90, 90] degrees."""
    return 90.0 - (90.0 - turn) % 180.0
