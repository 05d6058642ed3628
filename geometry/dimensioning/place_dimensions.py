"""Dimensions and handholds of a base's place under the bench: its insets from ends and edges."""

from __future__ import annotations

from geometry.bench.base_numbers import base_numbers
from geometry.bench.bench import Bench
from geometry.bench.overall import EDGES, ENDS, base_form
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    BELOW,
    LEFT_OF,
    LEVEL,
    RIGHT_OF,
    UPRIGHT,
    Place,
    bound,
)
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def place_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    spec = bench.spec
    length, z = spec.number("length"), spec.number("base_height")
    left, right = spec.number("inset_left"), length - spec.number("inset_right")
    ends = (
        bound(bench, "inset_left", Place(FRONT, (0.0, z), (left, z), LEVEL, BELOW, 1)),
        bound(bench, "inset_right", Place(FRONT, (length, z), (right, z), LEVEL, BELOW, 1, -1.0)),
    )
    found = (*ends, *(_by_corner(bench) if base_form(spec).by_corner else _by_edge(bench)))
    # What stands flush needs no size to say so.
    return tuple(one for one in found if one.value != 0.0)


def _by_corner(bench: Bench) -> list[Dimension]:
    length, depth = bench.spec.number("length"), bench.spec.number("depth")
    found = []
    for corner, tip in base_numbers(bench.spec).tips:
        edge_x, side = (0.0, LEFT_OF) if corner.endswith("left") else (length, RIGHT_OF)
        edge_y = 0.0 if corner.startswith("back") else -depth
        grows = -1.0 if corner.startswith("back") else 1.0
        at = Place(PLAN, (edge_x, edge_y), tip, UPRIGHT, side, 1, grows)
        found.append(bound(bench, f"inset_{corner}", at))
    return found


def _by_edge(bench: Bench) -> list[Dimension]:
    spec = bench.spec
    length, depth = spec.number("length"), spec.number("depth")
    x = length - spec.number("inset_right")
    back, front = -spec.number("inset_back"), spec.number("inset_front") - depth
    return [
        bound(
            bench,
            "inset_back",
            Place(PLAN, (length, 0.0), (x, back), UPRIGHT, RIGHT_OF, 1, -1.0),
        ),
        bound(
            bench, "inset_front", Place(PLAN, (length, -depth), (x, front), UPRIGHT, RIGHT_OF, 1)
        ),
    ]


def place_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The upright outsides of a base, in front and end elevation."""
    spec = bench.spec
    found: list[Handhold] = []
    z = spec.number("base_height")
    # An outside that stands upright can be dragged wherever it is taken.
    upright = base_form(spec).upright
    if ENDS in upright:
        for x, name, sign in (
            (spec.number("inset_left"), "inset_left", 1.0),
            (spec.number("length") - spec.number("inset_right"), "inset_right", -1.0),
        ):
            found.append(Handhold(FRONT.name, (x, 0.0), (x, z), Pull(name, (sign, 0.0))))
    if EDGES in upright:
        view = end_view(bench)
        for y, name, sign in (
            (-spec.number("inset_back"), "inset_back", -1.0),
            (spec.number("inset_front") - spec.number("depth"), "inset_front", 1.0),
        ):
            low, high = view.project((0.0, y, 0.0)), view.project((0.0, y, z))
            toward = view.project((0.0, sign, 0.0))
            found.append(Handhold(view.name, low, high, Pull(name, toward)))
    return tuple(found)
