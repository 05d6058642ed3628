"""What the carving leaves of a front: its thickness at any place, and where it is least.

Frame and units: the front's part frame, mm.  Facets are flat, so the deepest of a front is at a
corner of one, its own or where the front's edge cuts it.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.bench.carving_numbers import facets_on_front
from geometry.bench.drawer_numbers import Drawer, fronts_of
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec2


@dataclass(frozen=True, slots=True)
class Left:
    """So much wood at a place of the front."""

    wood: float
    at: Vec2


def thinnest(spec: BenchSpec, drawer: Drawer) -> Left:
    """Where a front is thinnest: the first such place from the left, at its left end if plain."""
    thickness = fronts_of(spec).thickness
    facets = facets_on_front(spec, drawer)
    if facets is None:
        return Left(thickness, (0.0, 0.0))
    x, y, deep = min(facets.points, key=lambda point: (-point[2], point[0], point[1]))
    return Left(thickness - deep, (x, y))
