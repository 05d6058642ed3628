"""How far a part must move in a view until it no longer covers others.

Frame and units: (u, v) of the view, mm.

Method: outlines are taken as convex hulls.  Two of them overlap, while one moves along a line, for
one interval of the way, found by the separating axis theorem on all their sides at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.design.part import Part
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats

_STILL = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """A convex polygon in the view: ``points`` (n, 2), unit ``normals`` (n, 2) of its sides."""

    points: Floats
    normals: Floats

    def moved(self, by: Floats) -> Outline:
        return Outline(self.points + by, self.normals)


def outline(part: Part, flat: Floats) -> Outline:
    """The hull of a part; ``flat`` (2, 3) are the view's right and up."""
    hull = shapely.MultiPoint(placed(part).vertices @ flat.T).convex_hull
    points = np.array(hull.exterior.coords[:-1])
    sides = np.roll(points, -1, axis=0) - points
    normals = np.column_stack([sides[:, 1], -sides[:, 0]])
    normals /= np.hypot(*normals.T)[:, None]
    return Outline(points, normals)


def overlap(
    moving: Outline, standing: Outline, step: Floats, air: float
) -> tuple[float, float] | None:
    """The interval of t in which ``moving`` + t ``step`` comes within ``air`` of ``standing``."""
    normals = np.concatenate([moving.normals, standing.normals])
    mine, theirs = moving.points @ normals.T, standing.points @ normals.T
    speed = step @ normals.T
    # On each axis they overlap while  low <= speed t <= high.
    low = theirs.min(axis=0) - mine.max(axis=0) - air
    high = theirs.max(axis=0) - mine.min(axis=0) + air
    still = np.abs(speed) < _STILL
    if (still & ((low > 0.0) | (high < 0.0))).any():
        return None
    moves = np.where(still, 1.0, speed)
    ends = np.sort(np.stack([low / moves, high / moves]), axis=0)
    start = float(np.where(still, -np.inf, ends[0]).max())
    end = float(np.where(still, np.inf, ends[1]).min())
    return (start, end) if start < end else None


def first_clear(taken: Sequence[tuple[float, float]], least: float) -> float:
    """The least value, from ``least`` on, that lies in none of some intervals.

    >>> first_clear([(4.0, 6.0), (-1.0, 2.0), (1.5, 3.0)], 0.5)
    3.0
    """
    distance = least
    for low, high in sorted(taken):
        if low < distance < high:
            distance = high
    return distance
