"""How far two solids differ, judged by the kernel that neither is read from again."""

from __future__ import annotations

import manifold3d
import numpy as np

from geometry.solids.solid import Solid


def volume_apart(one: Solid, other: Solid) -> float:
    """mm³ that only one of two solids takes up; both must be closed and sound."""
    a, b = (_body(solid) for solid in (one, other))
    for body in (a, b):
        assert body.status() == manifold3d.Error.NoError
    return float((a - b).volume() + (b - a).volume())


def _body(solid: Solid) -> manifold3d.Manifold:
    """The kernel takes nothing that is read-only."""
    return manifold3d.Manifold(
        manifold3d.Mesh64(
            np.array(solid.vertices, order="C"),
            np.array(solid.triangles, dtype=np.uint64, order="C"),
        )
    )
