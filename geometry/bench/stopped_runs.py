"""Where stopped mouldings run on the front arris of a board of the case.

An arris is a line of points (x, y) in the board's own frame, x along the board from end to end; mm.
"""

from __future__ import annotations

import math
from itertools import pairwise

from geometry.bench.arris_rows import LEAST_RUN
from geometry.cuts.removal import HalfSpace
from geometry.primitives.frame import Vec2

_STRETCH = 2.0  # sizes left of the stretch in which it begins; common practice, no source


def between(arris: tuple[Vec2, ...], stop: float, size: float) -> tuple[Vec2, ...]:
    """What of an arris lies ``stop`` and more from both ends, measured along the board.

    Where a knee follows so soon that there is no room to run out, it begins at the knee.  Nothing
    where the whole is too short.
    """
    last = arris[-1][0]
    began = _begun(arris, arris[0][0] + stop, _STRETCH * size)
    back = _begun(tuple((last - x, y) for x, y in reversed(began)), stop, _STRETCH * size)
    found = tuple((last - x, y) for x, y in reversed(back))
    return found if found and found[-1][0] - found[0][0] >= LEAST_RUN * size else ()


def _begun(points: tuple[Vec2, ...], start: float, least: float) -> tuple[Vec2, ...]:
    """The points from x = ``start`` on, in the first stretch of which there is enough left."""
    for k, (p, q) in enumerate(pairwise(points)):
        x = max(p[0], start)
        if q[0] - x >= least:
            y = p[1] + (q[1] - p[1]) * (x - p[0]) / (q[0] - p[0])
            return ((x, y), *points[k + 1 :])
    return ()


def square_ends(p: Vec2, q: Vec2, z: float, stops: tuple[bool, bool]) -> tuple[HalfSpace, ...]:
    """Planes square to a stretch at its stopped ends, so that nothing is cut beyond a knee."""
    run = math.dist(p, q)
    along = ((q[0] - p[0]) / run, (q[1] - p[1]) / run)
    ends = ((p, -1.0, stops[0]), (q, 1.0, stops[1]))
    return tuple(
        HalfSpace((*point, z), (way * along[0], way * along[1], 0.0))
        for point, way, stopped in ends
        if stopped
    )
