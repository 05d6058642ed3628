"""Dimensions of bridled legs, crossed or in trestles, in the three views."""

from __future__ import annotations

from geometry.bench.base_numbers import (
    DIAGONALS,
    BaseNumbers,
    base_numbers,
    crossing,
    outward,
    straight_edge,
)
from geometry.bench.bench import Bench
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    LEFT_OF,
    LEVEL,
    RIGHT_OF,
    UPRIGHT,
    WITHIN,
    Place,
    bound,
    follows,
)
from geometry.dimensioning.pull import Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View


def base_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    b = base_numbers(bench.spec)
    return (*_heights(bench, b), *_splay(bench, b))


def crossing_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    """The angle at which the stretchers cross."""
    b = base_numbers(bench.spec)
    place = crossing(b)
    if place is None:
        return ()
    reach = b.thickness * 3.0
    u, v = outward(b, DIAGONALS[0][1]), outward(b, DIAGONALS[1][1])
    start = (place[0] + reach * v[0], place[1] + reach * v[1])
    end = (place[0] + reach * u[0], place[1] + reach * u[1])
    # The acute angle: between the two right-hand ends where they lie within a quarter turn.
    if u[0] * v[0] + u[1] * v[1] < 0.0:
        start = (place[0] - reach * v[0], place[1] - reach * v[1])
    at = Place(PLAN, start, end, LEVEL, WITHIN, 1)
    return (follows(bench, "lap_angle", at, apex=place),)


def _heights(bench: Bench, b: BaseNumbers) -> list[Dimension]:
    view = end_view(bench)
    u = view.project((*b.tip("back_left"), 0.0))[0]
    low, high = b.height - b.stretcher_height, b.height
    side = RIGHT_OF if view.right[1] > 0 else LEFT_OF
    at = Place(view, (u, high), (u, low), UPRIGHT, side, 1, -1.0)
    return [bound(bench, "stretcher_height", at)]


def _splay(bench: Bench, b: BaseNumbers) -> list[Dimension]:
    if b.crossed:
        return [splay_dimension(b, FRONT, "front_right")]
    view = end_view(bench)
    side = "right" if view.right[1] > 0.0 else "left"
    return [splay_dimension(b, view, f"front_{side}")]


def splay_dimension(b: BaseNumbers, view: View, corner: str) -> Dimension:
    """The splay at one leg's straight edge, between the edge and the vertical.

    A front view of crossed stretchers shows the lean foreshortened; the value is the true angle,
    in the plane of the stretcher.
    """
    tip, foot = (view.project(point) for point in straight_edge(b, corner))
    return Dimension(
        name="splay",
        title="Splay, true angle in the stretcher's plane",
        view=view.name,
        value=b.splay_deg,
        unit="deg",
        start=(tip[0], b.ground),
        end=foot,
        along=LEVEL,
        side=WITHIN,
        rank=1,
        parameter="splay",
        apex=tip,
        pull=splay_pull(b, view, corner),
        note="true" if b.crossed else "",
    )


def splay_pull(b: BaseNumbers, view: View, corner: str) -> Pull:
    """Moving a foot sideways in a view by d moves it d / cosine along its stretcher."""
    step = view.project(outward(b, corner))[0]
    return Pull("splay", (1.0 if step > 0.0 else -1.0, 0.0), 1.0 / abs(step), b.rise)
