"""Dimensions of the case in the three views."""

from __future__ import annotations

from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.case_numbers import CaseNumbers, case_numbers
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
from geometry.views.view import FRONT, PLAN

MOST_ROWS = 2  # partitions that are dimensioned in rows of their own


def case_dimensions(bench: Bench) -> tuple[Dimension, ...]:
    c = case_numbers(bench.spec)
    found = [*_heights(bench, c), *_along_the_front(bench, c), *_plan(bench, c)]
    if c.flare > 0.0:
        found += _flare(bench, c)
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
    # The depth is measured at the end where the top is no deeper than the bottom.
    x, side = (0.0, LEFT_OF) if c.flare > 0.0 and not c.deep_left else (c.length, RIGHT_OF)
    found = [bound(bench, "depth", Place(PLAN, (x, 0.0), (x, -c.depth), UPRIGHT, side, 2, -1.0))]
    standing = uprights(c)
    if standing and c.reveal > 0.0:
        view = end_view(bench)
        near = view.project((0.0, -c.upright_front, c.top))
        edge = view.project((0.0, -c.depth, c.top))
        grows = 1.0 if near[0] > edge[0] else -1.0
        found.append(bound(bench, "reveal", Place(view, edge, near, LEVEL, ABOVE, 1, grows)))
    return found


def _flare(bench: Bench, c: CaseNumbers) -> list[Dimension]:
    deep = c.x_at(0.0)
    side = LEFT_OF if c.deep_left else RIGHT_OF
    front = -(c.depth + c.flare)
    straight, end = c.x_at(c.straight), c.x_at(c.flare_end)
    grows = 1.0 if c.deep_left else -1.0
    view = end_view(bench)
    foot = view.project((0.0, -c.depth, c.floor))
    head = view.project((0.0, front, c.top))
    return [
        bound(bench, "flare", Place(PLAN, (deep, -c.depth), (deep, front), UPRIGHT, side, 1, -1.0)),
        follows(bench, "greatest_depth", Place(PLAN, (deep, 0.0), (deep, front), UPRIGHT, side, 2)),
        bound(
            bench,
            "flare_straight",
            Place(PLAN, (deep, front), (straight, front), LEVEL, BELOW, 1, grows),
        ),
        bound(
            bench, "flare_end", Place(PLAN, (deep, front), (end, -c.depth), LEVEL, BELOW, 2, grows)
        ),
        follows(
            bench,
            "front_lean",
            Place(view, (foot[0], head[1]), head, LEVEL, WITHIN, 1),
            apex=foot,
        ),
    ]
