"""Dimensions of a back rest: heights and places from the front, widths and lean from the end."""

from __future__ import annotations

from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import (
    RestNumbers,
    rails,
    rest_frame,
    rest_numbers,
    slat_middles,
)
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    ABOVE,
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
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View


def rest_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    r = rest_numbers(bench.spec)
    return (*_front(bench, r), *_plan(bench, r), *_end(bench, r), *_slats(bench, r))


def _front(bench: Bench, r: RestNumbers) -> list[Dimension]:
    top, right = r.seat.top, r.length
    left_side, right_side = r.side(0, -1.0, 0.0), r.side(r.posts - 1, 1.0, 0.0)
    inner = (r.side(0, 1.0, 0.0), r.side(1, -1.0, 0.0))
    level = top + 0.5 * r.gap
    bay = Place(FRONT, (inner[0], level), (inner[1], level), LEVEL, WITHIN, 1)
    x = inner[0] + 0.15 * (inner[1] - inner[0])
    found = [
        bound(
            bench,
            "rest_height",
            Place(FRONT, (right, top), (right, top + r.height), UPRIGHT, RIGHT_OF, 1),
        ),
        follows(
            bench,
            "rest_top",
            Place(FRONT, (right, 0.0), (right, top + r.height), UPRIGHT, RIGHT_OF, 3),
        ),
        bound(
            bench, "post_in_left", Place(FRONT, (0.0, level), (left_side, level), LEVEL, WITHIN, 1)
        ),
        bound(
            bench,
            "post_in_right",
            Place(FRONT, (right, level), (right_side, level), LEVEL, WITHIN, 1, -1.0),
        ),
        replace(follows(bench, "rest_bay", bay), room=0.5 * r.gap),
    ]
    if r.gap > 0.0:
        at = Place(FRONT, (x, top), (x, top + r.gap), UPRIGHT, WITHIN, 1)
        found.append(bound(bench, "rest_gap", at))
    return found


def _plan(bench: Bench, r: RestNumbers) -> list[Dimension]:
    if r.front >= 0.0:
        return []
    name = "post_let_in" if r.behind else "rest_in"
    start, end = (r.length, 0.0), (r.length, r.front)
    return [bound(bench, name, Place(PLAN, start, end, UPRIGHT, RIGHT_OF, 1, -1.0))]


def _end(bench: Bench, r: RestNumbers) -> list[Dimension]:
    view = end_view(bench)
    top, *others = rails(r)
    found = [_rake(r, view)]
    found.append(_along(bench, r, view, "top_rail_width", top.high, top.low))
    if others:
        last = others[-1]
        found.append(_along(bench, r, view, "rest_rail_width", last.low, last.high))
        upper, lower = (
            (others[0].high, top.low)
            if len(others) == 1 or r.slats
            else (
                others[1].high,
                others[0].low,
            )
        )
        found.append(_along(bench, r, view, "rest_rail_space", upper, lower))
    near, far = (_seen(r, view, (top.low + r.lowest) / 2.0, -z) for z in (0.0, r.post_depth))
    across = _direction(r, view, 0.0, -1.0)
    found.append(bound(bench, "post_depth", Place(view, near, far, across, WITHIN, 1)))
    return found


def _rake(r: RestNumbers, view: View) -> Dimension:
    """At the posts' front faces, from the vertical under their tops."""
    foot, head = _seen(r, view, 0.0, 0.0), _seen(r, view, r.top, 0.0)
    return Dimension(
        name="rest_rake",
        title="Rest rake",
        view=view.name,
        value=r.rake_deg,
        unit="deg",
        start=(head[0], foot[1]),
        end=foot,
        along=LEVEL,
        side=WITHIN,
        rank=1,
        parameter="rest_rake",
        apex=head,
        pull=rake_pull(r, view),
    )


def rake_pull(r: RestNumbers, view: View) -> Pull:
    """The tops move back as the rest leans more."""
    return Pull("rest_rake", view.project((0.0, 1.0, 0.0)), 1.0, r.height)


def _along(
    bench: Bench, r: RestNumbers, view: View, name: str, start: float, end: float
) -> Dimension:
    """A length up or down the lean, beside the posts on the sitter's side."""
    along = _direction(r, view, 1.0, 0.0)
    side = ABOVE
    if abs(along[0]) < 1e-9:
        side = LEFT_OF if view.right[1] > 0.0 else RIGHT_OF
    grows = 1.0 if end > start else -1.0
    at = Place(view, _seen(r, view, start, 0.0), _seen(r, view, end, 0.0), along, side, 1, grows)
    return follows(bench, name, at) if name == "rest_rail_space" else bound(bench, name, at)


def _seen(r: RestNumbers, view: View, y: float, z: float) -> Vec2:
    """A place of the rest frame in an end view."""
    return view.project(rest_frame(r).to_bench((0.0, y, z)))


def _direction(r: RestNumbers, view: View, y: float, z: float) -> Vec2:
    return view.project(rest_frame(r).turn_to_bench((0.0, y, z)))


def _slats(bench: Bench, r: RestNumbers) -> list[Dimension]:
    """A slat's width and the space beside it, where there is room between the rails."""
    if not r.slats:
        return []
    upper, lower = rails(r)[0], rails(r)[-1]
    heights = [rest_frame(r).to_bench((0.0, y, 0.0))[2] for y in (lower.high, upper.low)]
    level, room = sum(heights) / 2.0, (heights[1] - heights[0]) / 2.0
    middle = slat_middles(r, 0)[0]
    left, right = middle - r.slat_width / 2.0, middle + r.slat_width / 2.0
    found = [
        bound(bench, "slat_width", Place(FRONT, (left, level), (right, level), LEVEL, WITHIN, 1))
    ]
    if r.slats > 1:
        after = slat_middles(r, 0)[1] - r.slat_width / 2.0
        at = Place(FRONT, (right, level), (after, level), LEVEL, WITHIN, 1)
        found.append(follows(bench, "slat_space", at))
    return [replace(one, room=room) for one in found]
