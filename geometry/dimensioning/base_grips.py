"""The edges of a crossed base that can be dragged."""

from __future__ import annotations

from geometry.bench.base_numbers import base_numbers, outward, straight_edge
from geometry.bench.bench import Bench
from geometry.dimensioning.base_dimensions import splay_pull
from geometry.dimensioning.pull import Grip, Pull
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT

_LEAST_SEEN = 0.25  # a leg is gripped only in views that show at least this share of its lean


def base_grips(bench: Bench) -> tuple[Grip, ...]:
    return (*_legs(bench), *_stretchers(bench))


def _legs(bench: Bench) -> list[Grip]:
    b = base_numbers(bench.spec)
    found = []
    for view in (FRONT, end_view(bench)):
        for corner, _ in b.tips:
            if abs(view.project(outward(b, corner))[0]) < _LEAST_SEEN:
                continue
            top, foot = (view.project(point) for point in straight_edge(b, corner))
            found.append(Grip(view.name, top, foot, splay_pull(b, view, corner)))
    return found


def _stretchers(bench: Bench) -> list[Grip]:
    b, end = base_numbers(bench.spec), end_view(bench)
    z = b.height - b.stretcher_height
    pull = Pull("stretcher_height", (0.0, -1.0))
    (left, back), (right, front) = b.tip("back_left"), b.tip("front_right")
    near, far = end.project((0.0, back, z)), end.project((0.0, front, z))
    return [
        Grip(FRONT.name, (left, z), (right, z), pull),
        Grip(end.name, near, far, pull),
    ]
