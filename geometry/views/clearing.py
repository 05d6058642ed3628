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
from geometry.solids.solid import Floats, Indices

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


@dataclass(frozen=True, slots=True, eq=False)
class Standing:
    """Some outlines, of all their points (n, 2) and normals (m, 2) those of each from ``first`` and
    ``first_normal`` on; ``low`` and ``high`` (m,) are how far each reaches along its own."""

    points: Floats
    first: Indices
    normals: Floats
    first_normal: Indices
    low: Floats
    high: Floats


def standing(outlines: Sequence[Outline]) -> Standing:
    """The same outlines, at least one, to be tried all at once."""
    own = [one.points @ one.normals.T for one in outlines]
    return Standing(
        np.concatenate([one.points for one in outlines]),
        _firsts([len(one.points) for one in outlines]),
        np.concatenate([one.normals for one in outlines]),
        _firsts([len(one.normals) for one in outlines]),
        np.concatenate([along.min(axis=0) for along in own]),
        np.concatenate([along.max(axis=0) for along in own]),
    )


def _firsts(counts: Sequence[int]) -> Indices:
    return np.cumsum([0, *counts[:-1]])


def overlaps(
    moving: Outline, others: Standing, step: Floats, air: float
) -> list[tuple[float, float]]:
    """The intervals of t in which ``moving`` + t ``step`` comes within ``air`` of any of others."""
    mine = moving.points @ moving.normals.T
    theirs = others.points @ moving.normals.T
    first = _between(
        np.minimum.reduceat(theirs, others.first) - mine.max(axis=0) - air,
        np.maximum.reduceat(theirs, others.first) - mine.min(axis=0) + air,
        step @ moving.normals.T,
    )
    mine = moving.points @ others.normals.T
    second = _between(
        others.low - mine.max(axis=0) - air,
        others.high - mine.min(axis=0) + air,
        step @ others.normals.T,
    )
    start = np.maximum(
        first[0].max(axis=1), np.maximum.reduceat(second[0], others.first_normal)
    ).tolist()
    end = np.minimum(
        first[1].min(axis=1), np.minimum.reduceat(second[1], others.first_normal)
    ).tolist()
    return [(low, high) for low, high in zip(start, end, strict=True) if low < high]


def _between(low: Floats, high: Floats, speed: Floats) -> tuple[Floats, Floats]:
    """From when to when low <= speed t <= high; the other way round for never."""
    still = np.abs(speed) < _STILL
    moves = np.where(still, 1.0, speed)
    ends = np.sort(np.stack([low / moves, high / moves]), axis=0)
    never = still & ((low > 0.0) | (high < 0.0))
    start = np.where(never, np.inf, np.where(still, -np.inf, ends[0]))
    return start, np.where(still, np.inf, ends[1])


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
