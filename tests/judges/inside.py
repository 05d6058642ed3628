"""An outside judge of what is wood and what is air: winding numbers of points.

Frame and units: those of the vertices, mm.

Method: the solid angles that all triangles fill as seen from a point add up to 4 pi inside a
closed surface and to 0 outside.  The angle of one triangle after A. van Oosterom and J.
Strackee, "The solid angle of a plane triangle", IEEE Trans. Biomed. Eng. 30 (1983) 125-126.  No
rays, so no ray can graze an edge; a point a hundredth of a millimetre off a face is judged
safely in double precision.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from geometry.solids.solid import PlacedSolid

Floats = NDArray[np.float64]


def inside(solid: PlacedSolid, points: Floats) -> NDArray[np.bool_]:
    """For each of n points (n, 3) whether it lies in the wood."""
    return winding(solid.vertices, solid.solid.triangles, points) > 0.5


def winding(vertices: Floats, triangles: NDArray[np.intp], points: Floats) -> Floats:
    """How often the surface goes round each point: 1 inside, 0 outside a sound solid."""
    corners = vertices[triangles][None] - np.asarray(points, dtype=float)[:, None, None]
    a, b, c = corners[:, :, 0], corners[:, :, 1], corners[:, :, 2]
    la, lb, lc = (np.linalg.norm(side, axis=2) for side in (a, b, c))
    above = np.einsum("ijk,ijk->ij", a, np.cross(b, c))
    below = (
        la * lb * lc
        + np.einsum("ijk,ijk->ij", a, b) * lc
        + np.einsum("ijk,ijk->ij", b, c) * la
        + np.einsum("ijk,ijk->ij", c, a) * lb
    )
    return np.asarray(2.0 * np.arctan2(above, below).sum(axis=1) / (4.0 * np.pi))
