"""Where a lid's stay is fixed in the box so that it is taut when the lid is open."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.lid_box_numbers import LidBox
from geometry.bench.lid_swing import turned
from geometry.primitives.frame import Vec2

# Common practice, no source, these:
LEAST_SPARE = 5.0  # mm of level distance between the two fixings
LEAST_BESIDE = 10.0  # mm from a fixing to the inside of the box


@dataclass(frozen=True, slots=True)
class StayNumbers:
    """mm; ``from_back`` is how far in front of Y 0 the stay is fixed to an end.

    ``spare`` is by how much it is longer than the height between its two fixings and the least
    that it must lean; ``room`` how far its place keeps within the box.
    """

    from_back: float
    spare: float
    room: float


def on_lid(b: LidBox) -> Vec2:
    """The stay's fixing on the closed lid, on its underside, seen from the pin."""
    return (-b.stay_on_lid, b.rim - b.pin_place[1])


@lru_cache(maxsize=512)
def stay_numbers(b: LidBox) -> StayNumbers:
    """By the theorem of Pythagoras between the fixing on the open lid and that in the box.

    A stay that is too short is taken to stand upright, so that its place changes steadily.
    """
    y, z = turned(on_lid(b), b.opening_deg)
    level = b.rim - b.stay_down - b.pin_place[1]
    upright = abs(z - level)
    rest = b.stay_reach**2 - upright**2
    forward = (math.sqrt(rest) if rest > 0.0 else 0.0) - y
    from_back = forward - b.pin_place[0]
    room = min(from_back - b.thickness, b.depth - b.thickness - from_back) - LEAST_BESIDE
    spare = b.stay_reach - math.hypot(upright, LEAST_SPARE)
    return StayNumbers(from_back, spare, room)
