"""The outline of a finished part: the shadow of its solid on the xy plane of its own frame.

mm.  Method: a closed solid covers its shadow with the triangles that face up, so their union is
the shadow.  Edges that lie one above the other differ by rounding only; the union works on a grid
far finer than any tool, and what slits are left between rounded edges are closed by moving the
outline out and in again, which leaves its corners where they were.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from exporters.arcs import Circle, circles_of, with_arcs
from geometry.cuts.removal import Prism
from geometry.design.part import Part
from geometry.primitives.frame import Frame, Vec2
from geometry.primitives.path import Path
from geometry.solids.solid import Solid
from shared.tolerances import CHORD_ERROR, SHORTEST_SEGMENT

_GRID = 1e-6
_SLIT = 1e-5
_SHARPEST = 100.0  # corners are kept down to an angle of 2 asin(1 / 100), about a degree
_SQUARE = 1e-9
_SLIVER = 1e-3  # mm²; a hole that no cutter and no eye can find
_STRAIGHT = 2e-6  # a vertex nearer to the line between its neighbours is on it


def shadow(solid: Solid, left_on: Sequence[BaseGeometry] = ()) -> tuple[Polygon, ...]:
    """What the solid covers, seen square to its face, with what is left on beside it.

    One piece, maybe with holes; several where the cuts have parted the board.
    """
    corners = solid.vertices[solid.triangles][:, :, :2]
    a, b, c = corners[:, 0], corners[:, 1], corners[:, 2]
    ab, ac = b - a, c - a
    doubled = ab[:, 0] * ac[:, 1] - ab[:, 1] * ac[:, 0]
    facing = corners[doubled > _GRID]
    rings = np.concatenate([facing, facing[:, :1]], axis=1)
    region = shapely.union_all([*shapely.polygons(rings), *left_on], grid_size=_GRID)
    for step in (_SLIT, -_SLIT):
        region = shapely.buffer(region, step, join_style="mitre", mitre_limit=_SHARPEST)
    return tuple(_cleaned(piece) for piece in shapely.get_parts(region) if piece.area > _SLIVER)


def outline_paths(region: Polygon, part: Part) -> tuple[Path, tuple[Path, ...]]:
    """The outer path of a shadow and those of its holes, arcs of the part's own cuts kept true."""
    blank = part.shape.blank
    circles = tuple(
        circle
        for cut in part.shape.cuts
        for removal in cut.removals(blank)
        if isinstance(removal, Prism) and abs(abs(removal.frame.z_axis[2]) - 1.0) < _SQUARE
        for circle in _laid(circles_of(removal.path), removal.frame)
    )
    outer = with_arcs(region.exterior.coords[:-1], circles, CHORD_ERROR)
    holes = tuple(with_arcs(h.coords[:-1], circles, CHORD_ERROR) for h in region.interiors)
    return outer, holes


def _laid(circles: Sequence[Circle], frame: Frame) -> list[Circle]:
    """Circles of a frame square to the face, in the part's plane."""
    return [Circle(frame.to_bench((*one.centre, 0.0))[:2], one.radius) for one in circles]


def _cleaned(piece: Polygon) -> Polygon:
    holes = [h.coords[:-1] for h in piece.interiors if Polygon(h).area > _SLIVER]
    outer = spaced(straightened(piece.exterior.coords[:-1]))
    return Polygon(outer, [spaced(straightened(hole)) for hole in holes])


def spaced(ring: list[Vec2]) -> list[Vec2]:
    """A closed ring without points that crowd the one before: rounds seen askew cross by a hair."""
    kept = [
        point
        for before, point in zip(ring[-1:] + ring[:-1], ring, strict=True)
        if math.dist(before, point) > SHORTEST_SEGMENT
    ]
    return kept if len(kept) > 2 else ring


def straightened(ring: object) -> list[Vec2]:
    """A closed ring of points without those that lie on the line between their neighbours."""
    points = np.asarray(ring, dtype=np.float64)
    while len(points) > 3:
        before, after = np.roll(points, 1, axis=0), np.roll(points, -1, axis=0)
        across = after - before
        lengths = np.maximum(np.hypot(across[:, 0], across[:, 1]), _GRID)
        offset = points - before
        away = np.abs(across[:, 0] * offset[:, 1] - across[:, 1] * offset[:, 0]) / lengths
        keep = away > _STRAIGHT
        # Neighbours are judged by each other, so no two in a row go in one pass.
        for i in range(len(keep)):
            if not keep[i] and not keep[i - 1]:
                keep[i] = True
        if keep.all():
            break
        points = points[keep]
    return [(float(x), float(y)) for x, y in np.round(points, 6)]
