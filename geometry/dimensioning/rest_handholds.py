"""The edges of a back rest that can be dragged.

A mm along the lean is cos(rake) mm of height, so rails' edges seen from the front move by that.
"""

from __future__ import annotations

import math

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import (
    RestNumbers,
    rails,
    rest_frame,
    rest_numbers,
    slat_middles,
)
from geometry.dimensioning.pull import Handhold, Pull
from geometry.dimensioning.rest_dimensions import rake_pull
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN


def rest_handholds(bench: Bench) -> tuple[Handhold, ...]:
    r = rest_numbers(bench.spec)
    return (*_splay(r), *_slats(r), *_rails(r), *_posts(r), *_end(bench, r), *_plan(r))


def _front(r: RestNumbers, x: float, y: float, z: float) -> Vec2:
    return FRONT.project(rest_frame(r).to_bench((x, y, z)))


def _splay(r: RestNumbers) -> list[Handhold]:
    """The outer corners at the tops of straight outer posts, which lean out with the splay."""
    if r.behind:
        return []
    found = []
    for post, way in ((0, -1.0), (r.posts - 1, 1.0)):
        corner = _front(r, r.side(post, way, r.top), r.top, 0.0)
        found.append(
            Handhold(FRONT.name, corner, corner, Pull("post_splay", (way, 0.0), 1.0, r.height))
        )
    return found


def _plan(r: RestNumbers) -> list[Handhold]:
    """The upper arrises of the top rail: how far it is set back, and its thickness."""
    flat, y = rest_frame(r), rails(r)[0].high
    found = []
    for z, name in (
        (r.set_back, "rest_set_back"),
        (r.set_back + r.rail_thickness, "rest_rail_thickness"),
    ):
        for bay in range(r.posts - 1):
            ends = [
                PLAN.project(flat.to_bench((x, y, -z)))
                for x in (r.side(bay, 1.0, y), r.side(bay + 1, -1.0, y))
            ]
            found.append(
                Handhold(PLAN.name, ends[0], ends[1], Pull(name, (0.0, 1.0), 1.0 / r.cosine))
            )
    return found


def _posts(r: RestNumbers) -> list[Handhold]:
    """Tops, outer sides and inner sides of the outer posts, and in plan where straight ones
    stand."""
    found = []
    last = r.posts - 1
    for post, way, name in ((0, -1.0, "post_in_left"), (last, 1.0, "post_in_right")):
        (outer, outer_top), (inner, inner_top) = (
            (
                _front(r, r.side(post, side, 0.0), 0.0, 0.0),
                _front(r, r.side(post, side, r.top), r.top, 0.0),
            )
            for side in (way, -way)
        )
        wider = Pull("post_width", (-way, 0.0), 1.0 / math.hypot(1.0, r.lean_of(post)))
        found += [
            Handhold(FRONT.name, outer_top, inner_top, Pull("rest_height", (0.0, 1.0))),
            Handhold(FRONT.name, outer, outer_top, Pull(name, (-way, 0.0))),
            Handhold(FRONT.name, inner, inner_top, wider),
        ]
    if not r.behind:
        start, end = (r.side(0, -1.0, 0.0), r.front), (r.side(last, 1.0, 0.0), r.front)
        found.append(Handhold(PLAN.name, start, end, Pull("rest_in", (0.0, -1.0))))
    return found


def _rails(r: RestNumbers) -> list[Handhold]:
    top, *others = rails(r)
    pulls = [(top.low, Pull("top_rail_width", (0.0, -1.0), 1.0 / r.cosine))]
    if others:
        last = others[-1]
        pulls += [
            (last.low, Pull("rest_gap", (0.0, 1.0))),
            (last.high, Pull("rest_rail_width", (0.0, 1.0), 1.0 / r.cosine)),
        ]
    pulls.append((top.high, Pull("post_over", (0.0, -1.0), 1.0 / r.cosine)))
    return [
        Handhold(
            FRONT.name,
            _front(r, r.side(bay, 1.0, y), y, -r.set_back),
            _front(r, r.side(bay + 1, -1.0, y), y, -r.set_back),
            pull,
        )
        for y, pull in pulls
        for bay in range(r.posts - 1)
    ]


def _slats(r: RestNumbers) -> list[Handhold]:
    """The outer edges of the outermost slats: of n slats, each wider by one, such an edge moves
    out by n / (n + 1), as the spaces share what is left."""
    if not r.slats:
        return []
    upper, lower = rails(r)[0], rails(r)[-1]
    gain = (r.slats + 1.0) / r.slats
    found = []
    for bay in range(r.posts - 1):
        middles = slat_middles(r, bay)
        for middle, way in ((middles[0], -1.0), (middles[-1], 1.0)):
            x = middle + way * r.slat_width / 2.0
            start, end = (_front(r, x, y, -r.set_back) for y in (lower.high, upper.low))
            found.append(Handhold(FRONT.name, start, end, Pull("slat_width", (way, 0.0), gain)))
    return found


def _end(bench: Bench, r: RestNumbers) -> list[Handhold]:
    """The posts' front faces lean, their back faces give the depth."""
    view, flat = end_view(bench), rest_frame(r)

    def seen(y: float, z: float) -> Vec2:
        return view.project(flat.to_bench((0.0, y, z)))

    back = view.project(flat.turn_to_bench((0.0, 0.0, -1.0)))
    slats = []
    if r.slats:
        # In the middle of the rails' thickness.
        upper, lower = rails(r)[0], rails(r)[-1]
        middle = -r.set_back - r.rail_thickness / 2.0
        for way in (-1.0, 1.0):
            z = middle - way * r.slat_thickness / 2.0
            pull = Pull("slat_thickness", (back[0] * way, back[1] * way), 2.0)
            slats.append(Handhold(view.name, seen(lower.high, z), seen(upper.low, z), pull))
    return [
        *slats,
        Handhold(view.name, seen(0.0, 0.0), seen(r.top, 0.0), rake_pull(r, view)),
        Handhold(
            view.name,
            seen(r.post_depth, -r.post_depth),
            seen(r.top, -r.post_depth),
            Pull("post_depth", back),
        ),
    ]
