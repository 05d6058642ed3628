"""Dimensions and handholds of the sizes that every bench has."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.overall import seat_height
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEVEL, RIGHT_OF, UPRIGHT, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def overall_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    right, low = bench.spec.number("length"), bench.spec.number("base_height")
    top = seat_height(bench.spec)
    return (
        bound(bench, "length", Place(FRONT, (0.0, 0.0), (right, 0.0), LEVEL, BELOW, 3)),
        bound(bench, "base_height", Place(FRONT, (right, 0.0), (right, low), UPRIGHT, RIGHT_OF, 1)),
        follows(
            bench, "seat_height", Place(FRONT, (right, 0.0), (right, top), UPRIGHT, RIGHT_OF, 2)
        ),
    )


def overall_handholds(bench: Bench) -> tuple[Handhold, ...]:
    right, depth = bench.spec.number("length"), bench.spec.number("depth")
    low, top = bench.spec.number("base_height"), seat_height(bench.spec)
    view = end_view(bench)
    back, front = view.project((0.0, 0.0, low)), view.project((0.0, -depth, low))
    longer, taller = Pull("length", (1.0, 0.0)), Pull("base_height", (0.0, 1.0))
    return (
        Handhold(FRONT.name, (right, low), (right, top), longer),
        Handhold(PLAN.name, (right, 0.0), (right, -depth), longer),
        Handhold(FRONT.name, (0.0, low), (right, low), taller),
        Handhold(view.name, back, front, taller),
    )
