"""Dimensions and handholds of a seat that is one board."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.overall import seat_height
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import LEFT_OF, RIGHT_OF, UPRIGHT, Place, bound
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def seat_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    spec = bench.spec
    right, depth = spec.number("length"), spec.number("depth")
    low, top = spec.number("base_height"), seat_height(spec)
    return (
        bound(bench, "seat_thickness", Place(FRONT, (0.0, low), (0.0, top), UPRIGHT, LEFT_OF, 1)),
        bound(
            bench,
            "depth",
            Place(PLAN, (right, 0.0), (right, -depth), UPRIGHT, RIGHT_OF, 2, -1.0),
        ),
    )


def seat_handholds(bench: Bench) -> tuple[Handhold, ...]:
    spec = bench.spec
    right, depth = spec.number("length"), spec.number("depth")
    low, top = spec.number("base_height"), seat_height(spec)
    view = end_view(bench)

    def seen(y: float, z: float) -> tuple[float, float]:
        return view.project((0.0, y, z))

    thicker = Pull("seat_thickness", (0.0, 1.0))
    return (
        Handhold(PLAN.name, (0.0, -depth), (right, -depth), Pull("depth", (0.0, -1.0))),
        Handhold(view.name, seen(-depth, low), seen(-depth, top), Pull("depth", seen(-1.0, 0.0))),
        Handhold(FRONT.name, (0.0, top), (right, top), thicker),
        Handhold(view.name, seen(0.0, top), seen(-depth, top), thicker),
    )
