"""Short segments of a curve joined to one line, so that its dashes run on round it.

Frame: any plane, in and out the same.

Method: where the ends of just two segments meet and the line hardly turns, it goes on.  Corners
stay corners: there dashes begin anew, as a draughtsman lets them meet.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from geometry.primitives.frame import Vec2

HARDLY = math.cos(math.radians(25.0))
"""Cosine of the turn up to which a line goes on."""
DECIMALS = 3
"""To which ends are rounded that meet."""

Spot = tuple[float, float]


def chains(segments: NDArray[np.float64]) -> list[list[Vec2]]:
    """Lines of two or more points that cover the segments (n, 4) once, in their order.

    A closed curve ends where it begins.
    """
    ends = segments.reshape(-1, 2, 2)
    steps = ends[:, 1] - ends[:, 0]
    ways = (steps / np.maximum(np.hypot(*steps.T), 1e-12)[:, None]).tolist()
    points: list[list[list[float]]] = ends.tolist()
    meet: dict[Spot, list[tuple[int, int]]] = {}
    for place, pair in enumerate(np.round(ends, DECIMALS).tolist()):
        for side, (x, y) in enumerate(pair):
            meet.setdefault((x, y), []).append((place, side))
    follows: dict[tuple[int, int], tuple[int, int]] = {}
    for here in meet.values():
        if len(here) == 2 and here[0][0] != here[1][0] and _goes_on(ways, *here):
            follows[here[0]], follows[here[1]] = here[1], here[0]
    return list(_walked(points, follows))


def _goes_on(ways: list[list[float]], one: tuple[int, int], other: tuple[int, int]) -> bool:
    """Whether a line that comes to a spot on one segment hardly turns to leave on the other."""
    (a, side_a), (b, side_b) = one, other
    (ax, ay), (bx, by) = ways[a], ways[b]
    turn = ax * bx + ay * by
    return (turn if side_a != side_b else -turn) > HARDLY


def _walked(
    points: list[list[list[float]]], follows: dict[tuple[int, int], tuple[int, int]]
) -> Iterator[list[Vec2]]:
    left = dict.fromkeys(range(len(points)))
    starts = [place for place in left if not {(place, 0), (place, 1)} <= follows.keys()]
    for first in (*starts, *range(len(points))):
        if first not in left:
            continue
        side = 1 if (first, 0) in follows and (first, 1) not in follows else 0
        place, line = first, [_spot(points[first][side])]
        while True:
            del left[place]
            line.append(_spot(points[place][1 - side]))
            after = follows.get((place, 1 - side))
            if after is None or after[0] not in left:
                break
            place, side = after
        yield line


def _spot(point: list[float]) -> Vec2:
    return (point[0], point[1])
