"""The flat faces of a part where it stands, fitted to the triangles of its solid.

Frame and units: bench frame, mm.  Nothing here knows how a part was laid out: planes are found
from vertices alone, so that what is measured is what would be cut.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.design.part import Part
from geometry.solids.cutting import placed

Floats = NDArray[np.float64]

SAME_DIRECTION = 1e-5  # of unit normals: 0.0006 deg
SAME_PLANE = 1e-4  # mm
SLIVER = 1e-4  # mm² below which a triangle has no direction of its own


@dataclass(frozen=True, eq=False)
class FlatFace:
    """One plane of a part: all coplanar triangles that look the same way, even when apart.

    ``normal`` is the outward unit normal, ``offset`` = normal . point in mm, ``area`` in mm²,
    ``corners`` (n, 3) the vertices that lie on it.
    """

    normal: Floats
    offset: float
    area: float
    corners: Floats

    def extent(self, direction: Sequence[float]) -> tuple[float, float]:
        """Least and greatest coordinate of the corners along a unit direction."""
        along = self.corners @ np.asarray(direction, dtype=float)
        return float(along.min()), float(along.max())


def flat_faces(part: Part) -> list[FlatFace]:
    """All planes of the part, the largest first."""
    solid = placed(part)
    return faces_of_mesh(solid.vertices, solid.solid.triangles)


def faces_of_mesh(vertices: Floats, triangles: NDArray[np.intp]) -> list[FlatFace]:
    points = vertices[triangles]
    crosses = np.cross(points[:, 1] - points[:, 0], points[:, 2] - points[:, 0])
    size = np.linalg.norm(crosses, axis=1)
    left = np.argsort(-size)
    left = left[size[left] > 2.0 * SLIVER]
    found = []
    while len(left):
        seed = left[0]
        normal = crosses[seed] / size[seed]
        offset = float(points[seed].mean(axis=0) @ normal)
        same = (np.abs(points[left] @ normal - offset) < SAME_PLANE).all(axis=1)
        same &= crosses[left] @ normal > (1.0 - SAME_DIRECTION) * size[left]
        same[0] = True
        members = left[same]
        corners = np.unique(points[members].reshape(-1, 3), axis=0)
        found.append(FlatFace(normal, offset, float(size[members].sum()) / 2.0, corners))
        left = left[~same]
    return sorted(found, key=lambda face: -face.area)


def facing(faces: list[FlatFace], direction: Sequence[float], within_deg: float = 0.01) -> FlatFace:
    """The largest face that looks in a direction."""
    found = all_facing(faces, direction, within_deg)
    assert found, f"no face looks toward {direction}"
    return found[0]


def all_facing(
    faces: list[FlatFace], direction: Sequence[float], within_deg: float = 0.01
) -> list[FlatFace]:
    """All faces that look in a direction, the largest first."""
    wanted = np.asarray(direction, dtype=float)
    return [face for face in faces if between_deg(face.normal, wanted) < within_deg]


def between_deg(a: Sequence[float] | Floats, b: Sequence[float] | Floats) -> float:
    """The angle between two directions, exact also when they are nearly parallel."""
    p, q = np.asarray(a, dtype=float), np.asarray(b, dtype=float)
    return math.degrees(math.atan2(float(np.linalg.norm(np.cross(p, q))), float(p @ q)))


def corner_of(*faces: FlatFace) -> Floats:
    """The point where three planes meet."""
    return np.linalg.solve(
        np.array([face.normal for face in faces]), np.array([face.offset for face in faces])
    )
