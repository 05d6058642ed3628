"""Where in a view each part is really seen.

Frame and units: (u, v) of the view, mm.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from geometry.design.part import Part
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, Indices
from geometry.views.foremost import NOTHING, Foremost
from geometry.views.scene import scene_of
from geometry.views.view import View
from shared.tolerances import COPLANAR

Polygons = NDArray[np.object_]

_EDGE_ON = 0.05  # of a normal
_NEAR = 1e-2  # mm
_SNAP = 1e-2  # mm: ends of lines that are nearer than this meet
_CRUMB = 1e-2  # mm²: what is left between lines that only nearly lie on one another
_TOGETHER = 48  # points looked under at once


def seen_pieces(parts: Sequence[Part], view: View, lines: Floats) -> tuple[Polygons, ...]:
    """For each part the pieces of the view in which it is the nearest to the viewer; none for a
    part that is covered.

    ``lines`` (n, 4) are those seen in the view: they divide it into pieces, each of one part or of
    none, as wherever the view goes over from one part to another there is a line.
    """
    found: list[list[Polygon]] = [[] for _ in parts]
    if parts and len(lines):
        strokes = shapely.linestrings(lines.reshape(-1, 2, 2))
        pieces = shapely.get_parts(
            shapely.polygonize(shapely.get_parts(shapely.union_all(strokes, grid_size=_SNAP)))
        )
        pieces = pieces[shapely.area(pieces) > _CRUMB]
        middles = shapely.get_coordinates(shapely.point_on_surface(pieces))
        for piece, place in zip(pieces, nearest(parts, view, middles).tolist(), strict=True):
            if place != NOTHING:
                found[place].append(piece)
    return tuple(np.array(own, dtype=object) for own in found)


def nearest(parts: Sequence[Part], view: View, points: Floats) -> Indices:
    """The part that is seen at each point (n, 2), NOTHING beside the parts; (n,)."""
    foremost = Foremost(parts, view)
    found = np.full(len(points), NOTHING, dtype=np.intp)
    order = np.lexsort(points.T[::-1])
    for start in range(0, len(order), _TOGETHER):
        some = order[start : start + _TOGETHER]
        found[some], _ = foremost.at(points[some])
    return found


def seen_of_faces(
    parts: Sequence[Part], views: Sequence[View], faces: tuple[Floats, Floats, Floats]
) -> Floats:
    """In each view how much of some flat faces of the parts shows, as it is foreshortened, of all
    their area; (views,).

    ``faces`` are their middles and outward unit normals (n, 3) and their areas (n,); a face is
    taken to show where its middle does.
    """
    middles, normals, areas = faces
    panels = scene_of([placed(part) for part in parts], views).panels
    shares = np.zeros(len(views))
    for k, view in enumerate(views):
        facing = normals @ np.array(view.toward)
        own = np.flatnonzero(facing > _EDGE_ON)
        u, v, w = (np.array((view.right, view.up, view.toward)) @ middles[own].T)[:, :, None]
        here = np.flatnonzero(panels.place // len(parts) == k)
        p, q, r, s = panels.plane[:, here]
        above = p * u + q * v + r * w + s < -_NEAR * r
        for sides in panels.sides[:, :, here]:
            above &= sides[0] * u + sides[1] * v + sides[2] > -COPLANAR
        clear = ~above.any(axis=1)
        shares[k] = float((facing[own] * areas[own])[clear].sum())
    return np.asarray(shares / max(float(areas.sum()), _NEAR))
