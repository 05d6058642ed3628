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
