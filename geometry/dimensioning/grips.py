"""The edges that can be dragged, and what each sets.

Points and short edges come first, so that a knee is found before the lines that meet in it.
"""

from __future__ import annotations

from geometry.bench.base_numbers import BaseNumbers, base_numbers, outward, straight_edge
from geometry.bench.bench import Bench
from geometry.bench.case_numbers import CaseNumbers, case_numbers
from geometry.bench.partitions import uprights
from geometry.dimensioning.base_dimensions import splay_pull
from geometry.dimensioning.pull import Grip, Pull
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View

_LEAST_SEEN = 0.25  # a leg is gripped only in views that show at least this share of its lean


def grips(bench: Bench) -> tuple[Grip, ...]:
    """All draggable edges of the three views."""
    c, b = case_numbers(bench.spec), base_numbers(bench.spec)
    view = end_view(bench)
    return (*_front(c), *_plan(c), *_end(c, view), *_legs(b, view), *_stretchers(c, b, view))


def _front(c: CaseNumbers) -> list[Grip]:
    found = []
    low, high = c.inside_low, c.inside_high
    names = {"partition_left": ("left_inset", 1.0), "partition_right": ("right_inset", -1.0)}
    for at in uprights(c):
        name, sign = names.get(at.name, (at.name, 1.0))
        pull = Pull(name, (sign, 0.0))
        for x in (at.x_left, at.x_left + c.partition_thickness):
            found.append(Grip(FRONT.name, (x, low), (x, high), pull))
    right, length = c.length, Pull("length", (1.0, 0.0))
    found += [
        Grip(FRONT.name, (right, c.floor), (right, c.top), length),
        *_levels(c, FRONT, 0.0, right),
    ]
    return found


def _levels(c: CaseNumbers, view: View, u0: float, u1: float) -> list[Grip]:
    """The level edges of the case, as seen in an elevation."""
    return [
        Grip(view.name, (u0, z), (u1, z), Pull(name, along))
        for z, name, along in (
            (c.top, "case_height", (0.0, 1.0)),
            (c.floor, "base_height", (0.0, 1.0)),
            (c.inside_high, "board_thickness", (0.0, -1.0)),
            (c.inside_low, "board_thickness", (0.0, 1.0)),
        )
    ]


def _plan(c: CaseNumbers) -> list[Grip]:
    right = Grip(PLAN.name, (c.length, 0.0), (c.length, -c.depth), Pull("length", (1.0, 0.0)))
    deeper = (0.0, -1.0)
    if c.flare <= 0.0:
        front = Grip(PLAN.name, (0.0, -c.depth), (c.length, -c.depth), Pull("depth", deeper))
        return [right, front]
    deep = -(c.depth + c.flare)
    start: Vec2 = (c.x_at(0.0), deep)
    knee: Vec2 = (c.x_at(c.straight), deep)
    settled: Vec2 = (c.x_at(c.flare_end), -c.depth)
    last: Vec2 = (c.x_at(c.length), -c.depth)
    away = (1.0 if c.deep_left else -1.0, 0.0)
    return [
        Grip(PLAN.name, knee, knee, Pull("flare_straight", away)),
        Grip(PLAN.name, settled, settled, Pull("flare_end", away)),
        Grip(PLAN.name, start, knee, Pull("flare", deeper)),
        Grip(PLAN.name, knee, settled, Pull("flare_end", away)),
        Grip(PLAN.name, settled, last, Pull("depth", deeper)),
        right,
    ]


def _end(c: CaseNumbers, view: View) -> list[Grip]:
    back = view.project((0.0, 0.0, c.top))
    low = view.project((0.0, -c.depth, c.floor))
    high = view.project((0.0, -(c.depth + c.flare), c.top))
    forward = (1.0 if low[0] > back[0] else -1.0, 0.0)
    name = "flare" if c.flare > 0.0 else "depth"
    return [
        Grip(view.name, low, high, Pull(name, forward)),
        *_levels(c, view, back[0], low[0])[:2],
    ]


def _legs(b: BaseNumbers, end: View) -> list[Grip]:
    found = []
    for view in (FRONT, end):
        for corner, _ in b.tips:
            if abs(view.project(outward(b, corner))[0]) < _LEAST_SEEN:
                continue
            top, foot = (view.project(point) for point in straight_edge(b, corner))
            found.append(Grip(view.name, top, foot, splay_pull(b, view, corner)))
    return found


def _stretchers(c: CaseNumbers, b: BaseNumbers, end: View) -> list[Grip]:
    z = b.height - b.stretcher_height
    pull = Pull("stretcher_height", (0.0, -1.0))
    left, right = b.tip("back_left")[0], b.tip("back_right")[0]
    near, far = end.project((0.0, 0.0, z))[0], end.project((0.0, -c.depth, z))[0]
    return [
        Grip(FRONT.name, (left, z), (right, z), pull),
        Grip(end.name, (near, z), (far, z), pull),
    ]
