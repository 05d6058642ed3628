"""The edges of a crossed base that can be dragged."""

from __future__ import annotations

from geometry.bench.base_numbers import BaseNumbers, base_numbers, outward, straight_edge
from geometry.bench.bench import Bench
from geometry.dimensioning.base_dimensions import splay_pull
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec2, add, scale
from geometry.views.bench_views import end_view
from geometry.views.view import FRONT, PLAN, View

_LEAST_SEEN = 0.25  # a leg is held only in views that show at least this share of its lean


def base_handholds(bench: Bench) -> tuple[Handhold, ...]:
    return (
        *_sizes(bench),
        *_legs(bench),
        *_stretchers(bench),
        *_thickness(base_numbers(bench.spec)),
    )


def _sizes(bench: Bench) -> list[Handhold]:
    """Where legs' tapers begin, their width above that, and the tapered edges: on the legs' middle
    planes, in the views that show enough of their lean."""
    b = base_numbers(bench.spec)
    shown = [
        (view, corner)
        for view in (FRONT, end_view(bench))
        for corner, _ in b.tips
        if abs(view.project(outward(b, corner))[0]) >= _LEAST_SEEN
    ]
    points, edges = [], []
    for view, corner in shown:
        point, *lines = _leg_sizes(b, view, corner)
        points.append(point)
        edges += lines
    return [*points, *edges]


def _leg_sizes(b: BaseNumbers, view: View, corner: str) -> tuple[Handhold, Handhold, Handhold]:
    """The leg's width at the top is taken hold of at that of its edges which moves with it, between
    the heights of the stretcher's edges."""
    step = view.project(outward(b, corner))[0]
    gain = b.cosine / abs(step)
    inner = (-1.0 if step > 0.0 else 1.0, 0.0)
    tapered = inner if b.tapered_inside else (-inner[0], 0.0)
    across, begins = b.leg_top / b.cosine, b.stretcher_height + b.taper_start
    # How far out from the tip the tapered edge is, above the taper and at the lower end.
    wide = -across if b.tapered_inside else 0.0
    top, low = (
        _on_leg(b, view, corner, down * b.tangent - across, down)
        for down in (0.0, b.stretcher_height)
    )
    knee = _on_leg(b, view, corner, wide + begins * b.tangent, begins)
    foot = _on_leg(
        b,
        view,
        corner,
        b.foot_out - (b.leg_foot / b.cosine if b.tapered_inside else 0.0),
        b.rise,
    )
    return (
        Handhold(view.name, knee, knee, Pull("taper_start", (0.0, -1.0))),
        Handhold(view.name, top, low, Pull("leg_top_width", inner, gain)),
        Handhold(view.name, knee, foot, Pull("leg_foot_width", tapered, gain)),
    )


def _on_leg(b: BaseNumbers, view: View, corner: str, out: float, down: float) -> Vec2:
    """The point so far out from the leg's tip and below it, as it is seen."""
    tip = (*b.tip(corner), b.height - down)
    return view.project(add(tip, scale(outward(b, corner), out)))


def _thickness(b: BaseNumbers) -> list[Handhold]:
    """Of crossed stretchers in plan, about their middles; of trestles from their outsides."""
    found = []
    for first, second in b.pairs:
        along = outward(b, second)
        start, end = b.tip(first), b.tip(second)
        for way in (-1.0, 1.0):
            across = scale((-along[1], along[0], 0.0), way)
            if not b.crossed and across[0] * (1.0 if first.endswith("left") else -1.0) < 0.0:
                continue
            side = [
                (x + across[0] * b.thickness / 2.0, y + across[1] * b.thickness / 2.0)
                for x, y in (start, end)
            ]
            gain = 2.0 if b.crossed else 1.0
            pull = Pull("base_thickness", (across[0], across[1]), gain)
            found.append(Handhold(PLAN.name, side[0], side[1], pull))
    return found


def _legs(bench: Bench) -> list[Handhold]:
    b = base_numbers(bench.spec)
    found = []
    for view in (FRONT, end_view(bench)):
        for corner, _ in b.tips:
            if abs(view.project(outward(b, corner))[0]) < _LEAST_SEEN:
                continue
            top, foot = (view.project(point) for point in straight_edge(b, corner))
            found.append(Handhold(view.name, top, foot, splay_pull(b, view, corner)))
    return found


def _stretchers(bench: Bench) -> list[Handhold]:
    b, end = base_numbers(bench.spec), end_view(bench)
    z = b.height - b.stretcher_height
    pull = Pull("stretcher_height", (0.0, -1.0))
    (left, back), (right, front) = b.tip("back_left"), b.tip("front_right")
    near, far = end.project((0.0, back, z)), end.project((0.0, front, z))
    return [
        Handhold(FRONT.name, (left, z), (right, z), pull),
        Handhold(end.name, near, far, pull),
    ]
