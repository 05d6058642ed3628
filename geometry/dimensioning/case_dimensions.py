"""Dimensions of the case in the three views."""

from __future__ import annotations

from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import LEFT, RIGHT, CaseNumbers, case_numbers
from geometry.bench.flares import flare_suffix
from geometry.bench.members import has
from geometry.bench.partitions import uprights
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.making import (
    ABOVE,
    BELOW,
    LEFT_OF,
    LEVEL,
    RIGHT_OF,
    UPRIGHT,
    WITHIN,
    Place,
    bound,
    follows,
)
from geometry.views.bench_views import end_view
from geometry.views.view import END_LEFT, FRONT, PLAN

MOST_ROWS = 2  # partitions that are dimensioned in rows of their own


def case_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    c = case_numbers(bench.spec)
    found = [*_heights(bench, c), *_along_the_front(bench, c), *_plan(bench, c)]
    for side in (LEFT, RIGHT):
        if c.flare_of(side).amount > 0.0:
            found += _flare(bench, c, side)
    return tuple(found)


def _heights(bench: Bench, c: CaseNumbers) -> list[Dimension]:
    right = c.length
    return [
        bound(
            bench,
            "case_height",
            Place(FRONT, (right, c.floor), (right, c.top), UPRIGHT, RIGHT_OF, 1),
        ),
        bound(
            bench,
            "board_thickness",
            Place(FRONT, (0.0, c.top), (0.0, c.inside_high), UPRIGHT, LEFT_OF, 1, -1.0),
        ),
        follows(
            bench,
            "inside_height",
            Place(FRONT, (0.0, c.inside_low), (0.0, c.inside_high), UPRIGHT, LEFT_OF, 1),
        ),
    ]


def _along_the_front(bench: Bench, c: CaseNumbers) -> list[Dimension]:
    top = c.top
    found: list[Dimension] = []
    if not c.left.mitred:
        at = Place(FRONT, (0.0, top), (c.left.inset, top), LEVEL, ABOVE, 1)
        found.append(bound(bench, "left_inset", at))
    if not c.right.mitred:
        end = (c.length - c.right.inset, top)
        found.append(
            bound(bench, "right_inset", Place(FRONT, (c.length, top), end, LEVEL, ABOVE, 1, -1.0))
        )
    running = len(c.partitions) > MOST_ROWS
    for k, x in enumerate(c.partitions, 1):
        # A few partitions have a row each; more share one row of running dimensions.
        rank = 2 if running else 1 + k
        at = Place(FRONT, (0.0, top), (x, top), LEVEL, ABOVE, rank)
        found.append(replace(bound(bench, f"partition_{k}", at), running=running))
    return found


def _plan(bench: Bench, c: CaseNumbers) -> list[Dimension]:
    # The depth is measured at the end where the top is no deeper than the bottom, if there is one.
    x, side = (0.0, LEFT_OF) if c.flare_right.amount > 0.0 else (c.length, RIGHT_OF)
    found = [bound(bench, "depth", Place(PLAN, (x, 0.0), (x, -c.depth), UPRIGHT, side, 2, -1.0))]
    standing = uprights(c)
    if standing and c.reveal > 0.0:
        view = end_view(bench)
        near = view.project((0.0, -c.upright_front, c.top))
        edge = view.project((0.0, -c.depth, c.top))
        grows = 1.0 if near[0] > edge[0] else -1.0
        # Under a back rest there is no room above the case.
        side = WITHIN if has(bench.spec, "back rest") else ABOVE
        found.append(bound(bench, "reveal", Place(view, edge, near, LEVEL, side, 1, grows)))
    return found


def _flare(bench: Bench, c: CaseNumbers, end: str) -> list[Dimension]:
    """The flare of one end, its stations in plan and its lean where the end elevation shows it."""
    flare, suffix = c.flare_of(end), flare_suffix(c, end)
    deep = c.x_at(end, 0.0)
    side = LEFT_OF if end == LEFT else RIGHT_OF
    front = -(c.depth + flare.amount)
    knee, settled = (c.x_at(end, flare.straight), front), (c.x_at(end, flare.end), -c.depth)
    grows = 1.0 if end == LEFT else -1.0
    start = (deep, front)
    found = [
        bound(
            bench,
            f"flare{suffix}",
            Place(PLAN, (deep, -c.depth), start, UPRIGHT, side, 1, -1.0),
        ),
        follows(
            bench,
            f"greatest_depth{suffix}",
            Place(PLAN, (deep, 0.0), start, UPRIGHT, side, 2),
        ),
        bound(bench, f"flare_straight{suffix}", Place(PLAN, start, knee, LEVEL, BELOW, 1, grows)),
        bound(bench, f"flare_end{suffix}", Place(PLAN, start, settled, LEVEL, BELOW, 2, grows)),
    ]
    view = end_view(bench)
    if (view is END_LEFT) == (end == LEFT):
        foot = view.project((0.0, -c.depth, c.floor))
        head = view.project((0.0, front, c.top))
        lean = Place(view, (foot[0], head[1]), head, LEVEL, WITHIN, 1)
        found.append(follows(bench, f"front_lean{suffix}", lean, apex=foot))
    return found
