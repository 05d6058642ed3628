"""What is foremost at some points of a view, asked again and again.

Frame and units: (u, v) of the view and w toward the viewer, mm.

Method: of the flat pieces toward the viewer in which a point lies the nearest one counts.  They are
gathered once for a bench in a view, as a pointer that moves over it asks at every step.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from geometry.design.part import Part
from geometry.primitives.frame import Vec2
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, Indices
from geometry.views.scene import scene_of
from geometry.views.view import View
from shared.tolerances import COPLANAR

NOTHING = -1


class Foremost:
    """Of at least one part."""

    def __init__(self, parts: Sequence[Part], view: View) -> None:
        self._panels = scene_of([placed(part) for part in parts], (view,)).panels

    def under(self, point: Vec2) -> int | None:
        """The place of the part that is seen at a point, None beside the bench."""
        (place,), _ = self.at(np.array([point]))
        return None if place == NOTHING else int(place)

    def at(self, points: Floats) -> tuple[Indices, Floats]:
        """At points (n, 2) near each other: the places of the parts, NOTHING beside the bench, and
        how high their surfaces are there, -inf beside it; each (n,)."""
        panels = self._panels
        low, high = points.min(axis=0) - COPLANAR, points.max(axis=0) + COPLANAR
        inside = (high >= panels.low[:2].T) & (low <= panels.high[:2].T)
        near = np.flatnonzero(inside.all(axis=1))
        if not len(near):
            return np.full(len(points), NOTHING, dtype=np.intp), np.full(len(points), -np.inf)
        u, v = points.T[:, :, None]
        within = np.ones((len(points), len(near)), dtype=np.bool_)
        for p, q, r in panels.sides[:, :, near]:
            within &= p * u + q * v + r >= -COPLANAR
        p, q, r, s = panels.plane[:, near]
        height = np.where(within, -(p * u + q * v + s) / r, -np.inf)
        top = height.argmax(axis=1)
        highest = height[np.arange(len(points)), top]
        places = np.where(np.isfinite(highest), panels.place[near[top]], NOTHING)
        return places, highest
