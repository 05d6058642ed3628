"""Dimensions and handholds of the feet under a base, in the front view."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.feet_numbers import ground
from geometry.bench.foot_places import foot_places
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEFT_OF, LEVEL, UPRIGHT, Place, bound
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.view import FRONT


def foot_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """Height and diameter of the foot that stands farthest to the left in front."""
    spec = bench.spec
    place = min(foot_places(spec), key=lambda one: (one.middle[0], one.middle[1]))
    half, x = spec.number("foot_diameter") / 2.0, place.middle[0]
    high = ground(spec)
    return (
        bound(
            bench,
            "foot_height",
            Place(FRONT, (x - half, 0.0), (x - half, high), UPRIGHT, LEFT_OF, 1),
        ),
        bound(
            bench,
            "foot_diameter",
            Place(FRONT, (x - half, 0.0), (x + half, 0.0), LEVEL, BELOW, 1),
        ),
    )


def foot_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The upper edges of the feet."""
    half, high = bench.spec.number("foot_diameter") / 2.0, ground(bench.spec)
    return tuple(
        Handhold(FRONT.name, (x - half, high), (x + half, high), Pull("foot_height", (0.0, 1.0)))
        for x in dict.fromkeys(round(place.middle[0], 6) for place in foot_places(bench.spec))
    )
