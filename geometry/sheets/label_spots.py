"""Where a leader may meet each part of a view: points at which the part is seen, clear of lines.

Frame and units: (u, v) of the view in mm; ``scaled`` spots in sheet mm about the view's origin.

Method: the view's lines divide it into pieces, each of one part; points are spread over the
largest pieces of a part, in rows along the longest side of each.  The first spot is that of the
clearest points which lies nearest to the middle of the part; the others are as far from those
before them as can be, for leaders that the first one does not suit.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.design.part import Part
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.views.seen import Polygons, nearest, seen_pieces
from geometry.views.view import View

_LEAST_SEEN = 0.125
"""mm of the sheet from the middle of what is seen of a part to the nearest line: where it is less,
the lines round it are broader than what they leave of it."""

_OPEN = 0.5  # of a part, seen: it is only small, not hidden
_PIECES = 4  # of a part, the largest
_ALONG, _ACROSS = 15, 5  # points over a piece
_CLEAREST, _CLEAR = 0.7, 0.35  # of the clearest point's distance from lines
_SPOTS = 6


@dataclass(frozen=True, slots=True, eq=False)
class Spot:
    """Where leaders may meet a part: ``points`` (n, 2), the best first, how far its clearest point
    is from any line, and the share of its outline in which it is seen."""

    index: int
    points: Floats
    clear: float
    share: float

    def scaled(self, scale: float) -> Spot:
        """The same on a sheet."""
        return Spot(self.index, self.points * scale, self.clear * scale, self.share)

    def shows(self, scale: float) -> bool:
        """Whether lines leave anything of the part to be seen on a sheet."""
        return self.share >= _OPEN or self.clear * scale >= _LEAST_SEEN


def spots_of(
    parts: Sequence[Part], view: View, lines: Floats, indices: Sequence[int] | None = None
) -> tuple[Spot, ...]:
    """Spots on each part that is seen; ``lines`` (n, 4) are the view's, in mm.

    A spot has the index of its part, or the one that ``indices`` has for it.
    """
    found: list[Spot] = []
    for index, pieces in enumerate(seen_pieces(parts, view, lines)):
        points, clear = _spread(pieces)
        if len(points):
            share = float(shapely.area(pieces).sum()) / _outline_area(parts[index], view)
            found.append(Spot(index, _chosen(points, clear), float(clear.max()), share))
    if not found:
        return ()
    counts = [len(one.points) for one in found]
    owners = nearest(parts, view, np.concatenate([one.points for one in found]))
    own = np.split(owners, np.cumsum(counts)[:-1])
    names = range(len(parts)) if indices is None else indices
    return tuple(
        Spot(names[one.index], one.points[here == one.index], one.clear, one.share)
        for one, here in zip(found, own, strict=True)
        if (here == one.index).any()
    )


def _outline_area(part: Part, view: View) -> float:
    """Of a part seen by itself, hollows counted in."""
    points = placed(part).vertices @ np.array((view.right, view.up)).T
    return float(shapely.MultiPoint(points).convex_hull.area)


def _spread(pieces: Polygons) -> tuple[Floats, Floats]:
    """Points (n, 2) over the largest pieces of a part, and how far each is from their edges."""
    largest = pieces[np.argsort(-shapely.area(pieces), kind="stable")[:_PIECES]]
    if not len(largest):
        return np.empty((0, 2)), np.empty(0)
    grids = [_rows(shapely.get_coordinates(shapely.get_exterior_ring(one))) for one in largest]
    points = np.concatenate([*grids, shapely.get_coordinates(shapely.point_on_surface(largest))])
    each = np.repeat(np.arange(len(largest)), [len(grid) for grid in grids])
    owner = np.concatenate([each, np.arange(len(largest))])
    shapely.prepare(largest)
    inside = shapely.contains_xy(largest[owner], *points.T)
    points, owner = points[inside], owner[inside]
    clear = shapely.distance(shapely.boundary(largest)[owner], shapely.points(points))
    return points, np.asarray(clear)


def _rows(ring: Floats) -> Floats:
    """Points in rows along the longest side of a ring, over all of it."""
    sides = np.diff(ring, axis=0)
    x, y = sides[np.hypot(*sides.T).argmax()]
    along = np.array([(x, y), (-y, x)]) / np.hypot(x, y)
    turned = ring @ along.T
    low, high = turned.min(axis=0), turned.max(axis=0)
    steps = np.meshgrid((np.arange(_ALONG) + 0.5) / _ALONG, (np.arange(_ACROSS) + 0.5) / _ACROSS)
    spread = low + (high - low) * np.stack(steps, axis=-1).reshape(-1, 2)
    return np.asarray(spread @ along)


def _chosen(points: Floats, clear: Floats) -> Floats:
    """Some of the points, the first the best of the clearest, each farthest from those before."""
    near = np.hypot(*(points - points.mean(axis=0)).T)
    first = int(np.where(clear >= _CLEAREST * clear.max(), near, np.inf).argmin())
    left = clear >= _CLEAR * clear.max()
    chosen = [first]
    away = np.where(left, np.hypot(*(points - points[first]).T), 0.0)
    while len(chosen) < _SPOTS and away.max() > 0.0:
        chosen.append(int(away.argmax()))
        away = np.minimum(away, np.hypot(*(points - points[chosen[-1]]).T))
    return points[chosen]
