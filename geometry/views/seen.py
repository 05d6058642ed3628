"""Where in a view each part is really seen.

Frame and units: (u, v) of the view, mm.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from geometry.design.part import Part
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, Indices
from geometry.views.scene import Panels, scene_of
from geometry.views.view import View
from shared.tolerances import COPLANAR

_EDGE_ON = 0.05  # of a normal
_NEAR = 1e-2  # mm


def seen_points(parts: Sequence[Part], view: View, across: int) -> tuple[Floats, ...]:
    """For each part the points (n, 2) of a grid over it, ``across`` wide and high, at which it is
    the nearest to the viewer; none for a part that is covered."""
    if not parts:
        return ()
    scene = scene_of([placed(part) for part in parts], (view,))
    steps = (np.arange(across) + 0.5) / across
    spread = np.stack(np.meshgrid(steps, steps), axis=-1).reshape(-1, 2)
    found: list[Floats] = []
    for place in range(len(parts)):
        low, high = scene.low[:2, place], scene.high[:2, place]
        points = low + (high - low) * spread
        found.append(points[_nearest(scene.panels, points) == place])
    return tuple(found)


def _nearest(panels: Panels, points: Floats) -> Indices:
    """The place of the panel nearest to the viewer at each point (n, 2), -1 for none; (n,)."""
    low, high = points.min(axis=0), points.max(axis=0)
    near = np.flatnonzero(
        (panels.low[:2] <= high[:, None]).all(axis=0)
        & (panels.high[:2] >= low[:, None]).all(axis=0)
    )
    u, v = points.T[:, :, None]
    inside = np.ones((len(points), len(near)), dtype=np.bool_)
    for p, q, r in panels.sides[:, :, near]:
        inside &= p * u + q * v + r >= 0.0
    p, q, r, s = panels.plane[:, near]
    height = np.where(inside, -(p * u + q * v + s) / r, -np.inf)
    top = height.argmax(axis=1)
    return np.where(inside.any(axis=1), panels.place[near[top]], -1)


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
