"""Which points a removal takes away.

Frame and units: the part's own frame, mm.

Method: a prism is its path in its own frame between two heights, a hull lies behind all of its
faces, a hollow is the outline of its facets down to the deepest of them.  On a surface the answer
is either: ask a little beside it.
"""

from __future__ import annotations

import numpy as np
import shapely

from geometry.cuts.removal import HalfSpace, Hollow, Hull, Prism, Removal
from geometry.solids.kernel.cutters import hull_faces
from geometry.solids.solid import Flags, Floats
from shared.tolerances import CHORD_ERROR


def taken(removal: Removal, points: Floats) -> Flags:
    """For each of some points (n, 3), whether it lies in what is taken away; (n,)."""
    match removal:
        case HalfSpace():
            return _beyond(removal, points)
        case Prism():
            return _in_prism(removal, points)
        case Hull():
            normals, _, _ = hull_faces(removal.points)
            far = (np.array(removal.points) @ normals.T).max(axis=0)
            behind: Flags = (points @ normals.T < far).all(axis=1)
            return behind
        case Hollow():
            return _in_hollow(removal, points)


def _beyond(plane: HalfSpace, points: Floats) -> Flags:
    found: Flags = (points - np.array(plane.point)) @ np.array(plane.outward) > 0.0
    return found


def _in_prism(prism: Prism, points: Floats) -> Flags:
    frame = prism.frame
    axes = np.array((frame.x_axis, frame.y_axis, frame.z_axis))
    x, y, z = ((points - np.array(frame.origin)) @ axes.T).T
    path = shapely.Polygon(prism.path.flattened(CHORD_ERROR))
    found: Flags = (z > prism.z_low) & (z < prism.z_high) & shapely.contains_xy(path, x, y)
    for end in prism.ends:
        found &= ~_beyond(end, points)
    return found


def _in_hollow(hollow: Hollow, points: Floats) -> Flags:
    facets = hollow.facets
    flat = [shapely.Polygon([(x, y) for x, y, _ in facets.corners(face)]) for face in facets.faces]
    deepest = max(z for _, _, z in facets.points)
    found: Flags = shapely.contains_xy(shapely.union_all(flat), points[:, 0], points[:, 1])
    return found & (points[:, 2] > hollow.z_open) & (points[:, 2] < deepest)
