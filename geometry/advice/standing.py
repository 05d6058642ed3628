"""How a bench stands: its feet's outline, its weight and where that acts, and when it tips.

Bench frame seen from above, mm, N.  A bench with weight W at G tips over an edge of the outline of
its feet when a load F at P lies farther outside that edge than W's arm inside can hold:
W · d(G) + F · d(P) < 0, with d the distance inside the edge (moments about it).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.bench.overall import seat_height
from geometry.primitives.frame import Vec2
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, PlacedSolid
from shared.materials import density_of
from shared.seating import GRAVITY

ON_FLOOR = 0.5  # mm: feet this near the floor stand on it

LEFT, RIGHT, FRONT, BACK = "left", "right", "front", "back"


@dataclass(frozen=True, slots=True)
class Footing:
    """``outline``: the convex outline of the feet, counter-clockwise; ``weight`` in N."""

    outline: tuple[Vec2, ...]
    weight: float
    centre: Vec2


@dataclass(frozen=True, slots=True)
class Tipping:
    """A load and an edge over which it might tip the bench.

    ``side`` is the side of the bench that the edge is on.  ``load_in`` is how far inside the edge
    the load acts, in mm; ``reach`` how far outside it could before the bench tips.
    """

    side: str
    load_in: float
    reach: float

    @property
    def short(self) -> float:
        """By how much the load lies too far out; less than 0 where the bench stands."""
        return -self.load_in - self.reach


@lru_cache(maxsize=32)
def footing_of(bench: Bench) -> Footing | None:
    """None for a bench whose feet have no outline."""
    solids = [placed(part) for part in bench.parts]
    floor = min(float(solid.low[2]) for solid in solids)
    feet = np.vstack([solid.vertices[solid.vertices[:, 2] < floor + ON_FLOOR] for solid in solids])
    hull = shapely.convex_hull(shapely.MultiPoint(feet[:, :2]))
    if hull.geom_type != "Polygon":
        return None
    ring = np.array(shapely.geometry.polygon.orient(hull).exterior.coords)
    weights, moments = 0.0, np.zeros(3)
    for part, solid in zip(bench.parts, solids, strict=True):
        weight = solid.solid.volume * 1e-9 * density_of(part.material) * GRAVITY
        weights += weight
        moments += weight * _centroid(solid)
    centre = moments / weights
    outline = tuple((float(x), float(y)) for x, y in ring)
    return Footing(outline, weights, (float(centre[0]), float(centre[1])))


def tippings(bench: Footing, load: float, at: Vec2) -> tuple[Tipping, ...]:
    """What a load at a place does at each edge of the feet's outline."""
    found = []
    for (ax, ay), (bx, by) in pairwise(bench.outline):
        run = math.hypot(bx - ax, by - ay)
        if run < 1e-9:
            continue
        inward = (-(by - ay) / run, (bx - ax) / run)
        load_in, weight_in = (
            (x - ax) * inward[0] + (y - ay) * inward[1] for x, y in (at, bench.centre)
        )
        found.append(Tipping(_side(inward), load_in, bench.weight * weight_in / load))
    return tuple(found)


def seat_corners(bench: Bench, inside: float) -> tuple[Vec2, ...]:
    """The corners of what is sat on, drawn in by so much; none where nothing is left of it."""
    level = seat_height(bench.spec)
    solids = [placed(part) for part in bench.parts]
    seat = [solid for solid in solids if abs(float(solid.high[2]) - level) < ON_FLOOR]
    if not seat:
        return ()
    points = np.vstack([one.vertices[one.vertices[:, 2] > level - ON_FLOOR] for one in seat])
    hull = shapely.convex_hull(shapely.MultiPoint(points[:, :2]))
    drawn_in = hull.buffer(-inside, join_style="mitre")
    if drawn_in.geom_type != "Polygon" or drawn_in.is_empty:
        return ()
    return tuple((float(x), float(y)) for x, y in drawn_in.exterior.coords[:-1])


def _side(inward: Vec2) -> str:
    """The side of the bench from which an edge looks inward."""
    x, y = inward
    if abs(x) > abs(y):
        return LEFT if x > 0.0 else RIGHT
    return FRONT if y > 0.0 else BACK


def _centroid(solid: PlacedSolid) -> Floats:
    """Of a closed body: tetrahedra from one of its points to each triangle, by volume."""
    corners = solid.vertices[solid.solid.triangles] - solid.vertices[0]
    volumes = np.einsum("ij,ij->i", corners[:, 0], np.cross(corners[:, 1], corners[:, 2]))
    middles = corners.sum(axis=1) / 4.0
    offset = (volumes[:, None] * middles).sum(axis=0) / volumes.sum()
    return np.asarray(solid.vertices[0] + offset)
