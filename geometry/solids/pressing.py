"""Where a clamp finds its pads: the outer faces that a straight line through a joint comes out of.

Frame and units: bench frame, mm, degrees.

Method: the line is cut with the triangles of every solid (a point in a triangle, both seen along
the line), which gives the lengths of it that lie in wood.  From the joint outward it is followed
through wood that touches, and across a part's own hollows, until it comes out with room for a jaw.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.primitives.frame import Vec3
from geometry.solids.solid import Floats, PlacedSolid
from geometry.solids.sweeping import looking_along

JAW = 30.0
"""mm: the room that a clamp's jaw or head needs outside a face (common practice, no source)."""

TOUCHING = 1.0
"""mm: faces this near press on each other."""

_EDGE_ON = 1e-9  # mm²: twice a triangle's area, seen along the line


@dataclass(frozen=True, slots=True)
class Pads:
    """``slant_deg`` is the worse of the two angles between the line and square to a face;
    ``reach`` how far the faces lie apart along the line; ``low`` and ``high`` where.
    """

    slant_deg: float
    reach: float
    low: Vec3
    high: Vec3


@dataclass(frozen=True, slots=True)
class _Wood:
    """A length of the line in one solid; the slants are those of the faces at its two ends."""

    owner: int
    start: float
    end: float
    slant_start: float
    slant_end: float


class Stack:
    """Solids that stand together to be pressed."""

    def __init__(self, solids: Sequence[PlacedSolid]) -> None:
        corners = [solid.vertices[solid.solid.triangles] for solid in solids]
        self._corners = np.concatenate(corners)
        self._owner = np.repeat(np.arange(len(solids)), [len(some) for some in corners])
        self._seen: dict[Vec3, tuple[Floats, Floats, Floats, Floats, Floats]] = {}

    def pads(self, point: Vec3, way: Vec3) -> Pads | None:
        """The pads of a clamp along ``way`` (a unit vector) through ``point``, or None.

        None where the point is not between two pieces of wood, or there is no room for a jaw.
        """
        wood = self._wood(point, way)
        ahead = _outward(wood)
        behind = _outward(
            [_Wood(w.owner, -w.end, -w.start, w.slant_end, w.slant_start) for w in reversed(wood)]
        )
        if ahead is None or behind is None:
            return None
        here = np.array(point)
        x, y, z = (here - behind[0] * np.array(way)).tolist()
        u, v, w = (here + ahead[0] * np.array(way)).tolist()
        return Pads(max(ahead[1], behind[1]), ahead[0] + behind[0], (x, y, z), (u, v, w))

    def _wood(self, point: Vec3, way: Vec3) -> list[_Wood]:
        plan, along, low, high, slant = self._seen_along(way)
        turn = looking_along(way)
        x, y, depth = (turn @ np.array(point)).tolist()
        spot = np.array((x, y))
        near = np.nonzero(((low <= spot) & (spot <= high)).all(axis=1))[0]
        a, b, c = (plan[near, k] - spot for k in range(3))
        areas = np.stack([_turn_of(b, c), _turn_of(c, a), _turn_of(a, b)], axis=1)
        whole = areas.sum(axis=1)
        hit = (np.abs(whole) > _EDGE_ON) & ((areas * np.sign(whole)[:, None]) >= 0.0).all(axis=1)
        share = areas[hit] / whole[hit, None]
        far = (share * along[near[hit]]).sum(axis=1) - depth
        found: list[_Wood] = []
        owners = self._owner[near[hit]]
        for owner in np.unique(owners):
            mine = np.nonzero(owners == owner)[0]
            order = mine[np.argsort(far[mine])]
            if len(order) % 2:
                continue  # along an edge: another point will tell
            for start, end in order.reshape(-1, 2):
                found.append(
                    _Wood(
                        int(owner),
                        float(far[start]),
                        float(far[end]),
                        float(slant[near[hit][start]]),
                        float(slant[near[hit][end]]),
                    )
                )
        return sorted(found, key=lambda wood: wood.start)

    def _seen_along(self, way: Vec3) -> tuple[Floats, Floats, Floats, Floats, Floats]:
        """Triangles in plan (n, 3, 2), along the way (n, 3), their boxes, and faces' slants."""
        if way not in self._seen:
            turned = self._corners @ looking_along(way).T
            plan, along = turned[:, :, :2], turned[:, :, 2]
            normal = np.cross(
                self._corners[:, 1] - self._corners[:, 0], self._corners[:, 2] - self._corners[:, 0]
            )
            long = np.maximum(np.linalg.norm(normal, axis=1), _EDGE_ON)
            upright = np.clip(np.abs(normal @ np.array(way)) / long, 0.0, 1.0)
            slant = np.degrees(np.arccos(upright))
            self._seen[way] = plan, along, plan.min(axis=1), plan.max(axis=1), slant
        return self._seen[way]


def _turn_of(first: Floats, second: Floats) -> Floats:
    found: Floats = first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]
    return found


def _outward(wood: Sequence[_Wood]) -> tuple[float, float] | None:
    """How far ahead the line comes out for a jaw, and the slant of the face there."""
    reach, slant = 0.0, math.inf
    through: set[int] = set()
    for one in wood:
        if one.end <= reach or one.end <= 0.0:
            continue
        gap = one.start - reach
        if gap > TOUCHING and (one.owner not in through or not through):
            if through and gap < JAW:
                return None
            break
        through.add(one.owner)
        reach, slant = one.end, one.slant_end
    return (reach, slant) if through else None
