"""The outermost of the fixings in a stretch, in plan: how far in they stand."""

from __future__ import annotations

import math

from geometry.bench.bench import Bench
from geometry.bench.fixing_numbers import (
    FixingNumbers,
    Place,
    fixed,
    fixing_numbers,
    half_along,
    screw_at,
)
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import add, scale
from geometry.views.view import PLAN

_HAIR = 1e-6  # mm


def fixing_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """Where several stand in a stretch; those that have no room to stand farther out stay, and of
    those that had no room at all nothing is there to be taken hold of."""
    f = fixing_numbers(bench.spec)
    places: dict[str, list[Place]] = {}
    for place in fixed(bench.spec).places:
        places.setdefault(place.bearer.name, []).append(place)
    found = []
    for row in places.values():
        bearer = row[0].bearer
        if len(row) < 2 or f.inward <= half_along(f, bearer):
            continue
        for place, from_end, way in ((row[0], bearer.start, 1.0), (row[-1], bearer.end, -1.0)):
            if abs(math.dist(place.at, from_end) - f.inward) < _HAIR:
                found.append(_handhold(f, place, way))
    return tuple(found)


def _handhold(f: FixingNumbers, place: Place, way: float) -> Handhold:
    at, across = screw_at(f, place), scale(place.bearer.inward, f.shank)
    start, end = (PLAN.project(add(at, scale(across, side))) for side in (-1.0, 1.0))
    u, v = PLAN.project(place.bearer.along)
    return Handhold(PLAN.name, start, end, Pull("fixing_in", (way * u, way * v)))
