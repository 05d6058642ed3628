"""Solids whose outline is convex, as covers: what lies behind one and inside it is hidden.

Frame and units: (u, v) of a view, mm; places as geometry.views.scene has them.

Method: the rims of a solid bound its projection, with the solid on their left.  When every rim
has all the others on its left, or on it, the rims run round a convex polygon: inside it no rim
is left, so the surface toward the viewer lies over every point equally often, at least once.
When the rims' length is the polygon's perimeter it lies there exactly once, and the solid hides
none of its own surface that faces the viewer.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices
from geometry.views.scene import Rims, inward
from shared.tolerances import COPLANAR, MERGE

MOST_RIMS = 32
"""A solid with more is left to its panels: trying all its rims against all is not worth it."""


@dataclass(frozen=True, slots=True, eq=False)
class Covers:
    """Convex outlines of places; those without one have no sides.

    ``sides`` (3, n), lines (p, q, r) as panels have them, sorted by place; ``count`` and
    ``first`` (places,) tell which are whose.  ``single`` (places,): the surface toward the
    viewer lies over the outline exactly once.
    """

    sides: Floats
    count: Indices
    first: Indices
    single: Flags


def spread(counts: Indices) -> tuple[Indices, Indices]:
    """For rows that each stand for ``counts`` items: the row of each item and its rank in it."""
    row = np.repeat(np.arange(len(counts)), counts)
    first = np.cumsum(counts) - counts
    return row, np.arange(len(row)) - first.take(row)


def covers_of(rims: Rims, places: int) -> Covers:
    """The covers among all places."""
    held = np.bincount(rims.place, minlength=places)
    chosen = np.flatnonzero((held <= MOST_RIMS).take(rims.place))
    a, b, place = rims.a.take(chosen, axis=1), rims.b.take(chosen, axis=1), rims.place[chosen]
    if not len(place):
        none = np.zeros(places, dtype=np.intp)
        return Covers(np.empty((3, 0)), none, none, none > 0)
    held = np.bincount(place, minlength=places)
    first = np.cumsum(held) - held
    sides = inward(a, b)

    side, rank = spread(held.take(place))
    other = first.take(place).take(side) + rank
    p, q, r = sides.take(side, axis=1)
    # Rims run in closed rounds: where each starts another ends, so their starts tell enough.
    from_a = p * a[0].take(other) + q * a[1].take(other) + r
    bad = np.bincount(place.take(side[from_a < -COPLANAR]), minlength=places)
    convex = (held > 2) & (bad == 0)
    near = np.flatnonzero((np.abs(from_a) < COPLANAR) & convex.take(place.take(side)))
    side, other = side.take(near), other.take(near)
    p, q, r = sides.take(side, axis=1)
    along = np.flatnonzero(np.abs(p * b[0].take(other) + q * b[1].take(other) + r) < COPLANAR)

    # Of rims along one side of the polygon the first stands for all.
    side, other = side.take(along), other.take(along)
    double = ~convex.take(place)
    double[side[other < side]] = True
    starts = np.flatnonzero(np.diff(side, prepend=-1))
    p, q, _ = sides.take(side, axis=1)
    begin = q * a[0].take(other) - p * a[1].take(other)
    finish = q * b[0].take(other) - p * b[1].take(other)
    width = np.zeros(len(place))
    if len(starts):
        width[side[starts]] = np.maximum.reduceat(finish, starts) - np.minimum.reduceat(
            begin, starts
        )
    length = np.hypot(b[0] - a[0], b[1] - a[1])
    surplus = np.bincount(place, length - np.where(double, 0.0, width), places)

    kept = np.flatnonzero(convex.take(place) & ~double)
    count = np.bincount(place[kept], minlength=places)
    return Covers(
        sides=sides.take(kept, axis=1),
        count=count,
        first=np.cumsum(count) - count,
        single=convex & (np.abs(surplus) < MERGE),
    )
