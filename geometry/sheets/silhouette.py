"""The outline of a part as it is seen from one side.

Frame: (u, v) of the view, mm.

Method: the union of the part's triangles laid flat in the view (shapely), on a fine grid so that
neighbours close up.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.design.part import Shape
from geometry.solids.cutting import solid_of
from geometry.views.view import View

_GRID = 1e-6  # mm
_SLIVER = 1e-6  # mm²
_KEPT = 256  # shapes of one bench and the one before


@lru_cache(maxsize=_KEPT)
def silhouette(shape: Shape, view: View) -> BaseGeometry:
    """The region that the part covers in the view."""
    solid = solid_of(shape)
    flat = solid.vertices @ np.array((view.right, view.up), dtype=np.float64).T
    triangles = flat[solid.triangles]
    sides = triangles[:, 1:] - triangles[:, :1]
    area = np.abs(sides[:, 0, 0] * sides[:, 1, 1] - sides[:, 0, 1] * sides[:, 1, 0]) / 2.0
    polygons = shapely.polygons(triangles[area > _SLIVER])
    return shapely.union_all(polygons, grid_size=_GRID)
