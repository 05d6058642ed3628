"""Where the feet of a base stand: under every leg, plinth corner or panel end.

Bench coordinates, mm.
"""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import combinations

from geometry.bench.bases import STANDINGS, standing
from geometry.bench.feet_numbers import has_feet
from geometry.bench.standing import FootPlace
from geometry.design.spec import BenchSpec

_BETWEEN = 2.0  # mm between two feet; common practice, no source

# What the places of feet depend on.
PLACED = " ".join(
    (
        "seat base length depth base_height foot foot_height inset_left inset_right",
        *dict.fromkeys(one.feet_read for one in STANDINGS.values()),
    )
)


@lru_cache(maxsize=512)
def foot_places(spec: BenchSpec) -> tuple[FootPlace, ...]:
    """Where the feet of a bench stand; none without feet."""
    return standing(spec).feet(spec) if has_feet(spec) else ()


_ALONG = {"left": 0, "middle": 1, "right": 2}
_ACROSS = {"front": 0, "back": 1}


def feet_apart(spec: BenchSpec) -> float:
    """Between the two feet that are nearest to each other, less the least.

    Less than nothing where left and right, or front and back, have changed sides.
    """
    gaps = [_gap(one, other) for one, other in combinations(foot_places(spec), 2)]
    return min(gaps) - spec.number("foot_diameter") - _BETWEEN


def _gap(one: FootPlace, other: FootPlace) -> float:
    dx, dy = other.middle[0] - one.middle[0], other.middle[1] - one.middle[1]
    gap = math.hypot(dx, dy)
    along, across = (_rank(other, by) - _rank(one, by) for by in (_ALONG, _ACROSS))
    if along and across:
        return gap
    return math.copysign(gap, dx * along if along else dy * across)


def _rank(place: FootPlace, by: dict[str, int]) -> int:
    return next(by[word] for word in place.name.split("_") if word in by)
