"""The edges of a case that can be dragged.

Points and short edges come first, so that a knee is found before the lines that meet in it.
"""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.flares import flare_suffix
from geometry.bench.partitions import partition_lip, uprights
from geometry.dimensioning.pull import Handhold, Pull
from geometry.primitives.frame import Vec2
from geometry.views.bench_views import end_view
from geometry.views.view import END_LEFT, FRONT, PLAN, View


def case_handholds(bench: Bench) -> tuple[Handhold, ...]:
    c = case_numbers(bench.spec)
    return (*_front(c), *_plan(c), *_end(c, end_view(bench)))


def partition_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """In plan: the sides of partitions, which grow thicker about their middle, those of set-in ones
    from their outside; their fronts, and the joints behind their lippings."""
    c, lip = case_numbers(bench.spec), partition_lip(bench.spec)
    found = []
    for at in uprights(c):
        left, right = at.x_left, at.x_left + c.partition_thickness
        gain = 1.0 if at.end else 2.0
        for x, way, outside in ((left, -1.0, LEFT), (right, 1.0, RIGHT)):
            if at.end != outside:
                side = ((x, -at.back), (x, -c.upright_front))
                pull = Pull("partition_thickness", (way, 0.0), gain)
                found.append(Handhold(PLAN.name, *side, pull))
        front = ((left, -c.upright_front), (right, -c.upright_front))
        found.append(Handhold(PLAN.name, *front, Pull("reveal", (0.0, 1.0))))
        if lip > 0.0:
            y = lip - c.upright_front
            found.append(
                Handhold(PLAN.name, (left, y), (right, y), Pull("partition_lip", (0.0, 1.0)))
            )
    return tuple(found)


def back_handholds(bench: Bench) -> tuple[Handhold, ...]:
    """In plan: the inside of the back, and its outside where it is let in."""
    c = case_numbers(bench.spec)
    forward = (0.0, -1.0)
    faces = [(c.rebate_width, "back_thickness")]
    if c.back_let_in > 0.0:
        faces.append((c.back_let_in, "back_let_in"))
    return tuple(
        Handhold(PLAN.name, (c.inside_left, -y), (c.inside_right, -y), Pull(name, forward))
        for y, name in faces
    )


def _front(c: CaseNumbers) -> list[Handhold]:
    found = []
    low, high = c.inside_low, c.inside_high
    names = {"partition_left": ("left_inset", 1.0), "partition_right": ("right_inset", -1.0)}
    for at in uprights(c):
        name, sign = names.get(at.name, (at.name, 1.0))
        pull = Pull(name, (sign, 0.0))
        for x in (at.x_left, at.x_left + c.partition_thickness):
            found.append(Handhold(FRONT.name, (x, low), (x, high), pull))
    return [*found, *_levels(c, FRONT, 0.0, c.length)]


def _levels(c: CaseNumbers, view: View, u0: float, u1: float) -> list[Handhold]:
    """The level edges of the case, as seen in an elevation."""
    return [
        Handhold(view.name, (u0, z), (u1, z), Pull(name, along))
        for z, name, along in (
            (c.top, "case_height", (0.0, 1.0)),
            (c.inside_high, "board_thickness", (0.0, -1.0)),
            (c.inside_low, "board_thickness", (0.0, 1.0)),
        )
    ]


def _plan(c: CaseNumbers) -> list[Handhold]:
    deeper = (0.0, -1.0)
    points: list[Handhold] = []
    lines: list[Handhold] = []
    shallow: list[Vec2] = [(0.0, -c.depth), (c.length, -c.depth)]
    for place, end in enumerate((LEFT, RIGHT)):
        flare, suffix = c.flare_of(end), flare_suffix(c, end)
        if flare.amount <= 0.0:
            continue
        deep = -(c.depth + flare.amount)
        start: Vec2 = (c.x_at(end, 0.0), deep)
        knee: Vec2 = (c.x_at(end, flare.straight), deep)
        settled: Vec2 = (c.x_at(end, flare.end), -c.depth)
        away = (1.0 if end == LEFT else -1.0, 0.0)
        points += [
            Handhold(PLAN.name, knee, knee, Pull(f"flare_straight{suffix}", away)),
            Handhold(PLAN.name, settled, settled, Pull(f"flare_end{suffix}", away)),
        ]
        lines += [
            Handhold(PLAN.name, start, knee, Pull(f"flare{suffix}", deeper)),
            Handhold(PLAN.name, knee, settled, Pull(f"flare_end{suffix}", away)),
        ]
        shallow[place] = settled
    return [*points, *lines, Handhold(PLAN.name, shallow[0], shallow[1], Pull("depth", deeper))]


def _end(c: CaseNumbers, view: View) -> list[Handhold]:
    back = view.project((0.0, 0.0, c.top))
    low = view.project((0.0, -c.depth, c.floor))
    end = LEFT if view is END_LEFT else RIGHT
    flare = c.flare_of(end).amount
    high = view.project((0.0, -(c.depth + flare), c.top))
    forward = (1.0 if low[0] > back[0] else -1.0, 0.0)
    name = f"flare{flare_suffix(c, end)}" if flare > 0.0 else "depth"
    return [
        Handhold(view.name, low, high, Pull(name, forward)),
        _levels(c, view, back[0], low[0])[0],
    ]
