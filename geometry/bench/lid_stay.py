"""Where a lid's stays are fixed in the box so that they are taut when the lid is open.

There is one at each end of the box, beside the inside of the end.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.lid_box_numbers import LidBox
from geometry.bench.lid_swing import turned
from geometry.joints.lid_stay import LidStay
from geometry.joints.screw_rows import bite_in
from geometry.primitives.frame import Vec2, Vec3
from shared.fixings import WOOD_SCREWS

# Common practice, no source, these:
LEAST_SPARE = 5.0  # mm of level distance between the two fixings
LEAST_BESIDE = 10.0  # mm from a fixing to the inside of the box
BESIDE_END = 12.0  # mm from the inside of an end to the screw in the lid
SCREW = WOOD_SCREWS["no. 6"]
_ABOUT = 20.0  # mm of the rim to either side of the screws that are told of with them


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


def stay_at(b: LidBox, lying: tuple[Vec3, ...]) -> LidStay:
    """The stay at the end of which the lid lies on the rectangle ``lying``: its corners start at
    the left in front, and are told from above against the clock."""
    (left, front, z), (right, _, _), (_, back, _), _ = lying
    t, y_end = b.thickness, -stay_numbers(b).from_back
    y_lid = b.pin_place[0] - b.stay_on_lid
    low = max(front, min(y_end, y_lid) - _ABOUT)
    high = min(back, max(y_end, y_lid) + _ABOUT)
    inside, beside = (right, BESIDE_END) if left < t else (left, -BESIDE_END)
    return LidStay(
        on_end=(inside, y_end, b.rim - b.stay_down),
        on_lid=(inside + beside, y_lid, b.rim),
        end_bite=bite_in(t),
        lid_bite=bite_in(b.lid),
        screw=SCREW,
        down=b.stay_down,
        reach=b.stay_reach,
        opening_deg=b.opening_deg,
        corners=((left, low, z), (right, low, z), (right, high, z), (left, high, z)),
    )
