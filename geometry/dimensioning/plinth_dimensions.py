"""Dimensions of a plinth."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.four_leg_numbers import CORNERS
from geometry.bench.plinth import PlinthNumbers, plinth_numbers
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import BELOW, LEVEL, WITHIN, Place, bound, follows
from geometry.dimensioning.pull import Handhold, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def plinth_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    p = plinth_numbers(bench.spec)
    view = end_view(bench)
    back, front = view.project((0.0, p.back, 0.0)), view.project((0.0, p.front, 0.0))
    y = p.front + 0.4 * (p.back - p.front)
    return (
        follows(
            bench, "plinth_length", Place(FRONT, (p.left, 0.0), (p.right, 0.0), LEVEL, BELOW, 2)
        ),
        follows(bench, "plinth_depth", Place(view, back, front, LEVEL, BELOW, 1)),
        bound(
            bench,
            "plinth_thickness",
            Place(PLAN, (p.left, y), (p.left + p.thickness, y), LEVEL, WITHIN, 1),
        ),
    )


def plinth_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """The inside faces of the boards, seen in plan."""
    p = plinth_numbers(bench.spec)
    t = p.thickness
    low, high = (p.left + t, p.front + t), (p.right - t, p.back - t)
    blocks = tuple(_block_face(p, corner) for corner in CORNERS if p.block > 0.0)
    return blocks + tuple(
        Handhold(PLAN.name, start, end, Pull("plinth_thickness", along))
        for start, end, along in (
            (low, (low[0], high[1]), (1.0, 0.0)),
            ((high[0], low[1]), high, (-1.0, 0.0)),
            (low, (high[0], low[1]), (0.0, 1.0)),
            ((low[0], high[1]), high, (0.0, -1.0)),
        )
    )


def _block_face(p: PlinthNumbers, corner: str) -> Handhold:
    """The side of a corner block toward the middle of the length."""
    x, y = p.corner(corner, p.thickness)
    far_x, far_y = p.corner(corner, p.thickness + p.block)
    way = 1.0 if far_x > x else -1.0
    return Handhold(PLAN.name, (far_x, y), (far_x, far_y), Pull("plinth_block", (way, 0.0)))
