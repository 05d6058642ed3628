"""The outermost of the fixings in a stretch, in plan: how far in they stand."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.fixing_numbers import fixed, fixing_numbers, half_along, screw_at
from geometry.dimensioning.pull import Grip, Pull
from geometry.primitives.frame import add, scale
from geometry.views.view import PLAN


def fixing_grips(bench: Bench) -> tuple[Grip, ...]:
    """Where several stand in a stretch; those that have no room to stand farther out stay."""
    f = fixing_numbers(bench.spec)
    by_bearer: dict[str, list[Grip]] = {}
    for place in fixed(bench.spec).places:
        bearer = place.bearer
        if f.inward <= half_along(f, bearer):
            continue
        at, across = screw_at(f, place), scale(bearer.inward, f.shank)
        start, end = (PLAN.project(add(at, scale(across, way))) for way in (-1.0, 1.0))
        pull = Pull("fixing_in", PLAN.project(bearer.along))
        by_bearer.setdefault(bearer.name, []).append(Grip(PLAN.name, start, end, pull))
    return tuple(
        grip
        for row in by_bearer.values()
        if len(row) > 1
        for grip in (row[0], _from_far_end(row[-1]))
    )


def _from_far_end(grip: Grip) -> Grip:
    u, v = grip.pull.along
    return Grip(grip.view, grip.start, grip.end, Pull(grip.pull.parameter, (-u, -v)))
