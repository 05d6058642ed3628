"""Where a plane cuts through a solid, as flat regions with holes.

Frame and units: mm; the plane is the xy plane of a frame, and regions are in that frame's x, y.

Method: every triangle that reaches both sides of the plane gives one directed segment between
two edges of the mesh, the wood on its left; each crossed edge belongs to two triangles, so the
segments close into loops.  A corner that lies in the plane counts for one side, as if the plane
stood a hair off, which keeps the loops whole.  Where corners lie in the plane the two sides may
differ, a face lying in it; only what is wood on both sides is cut through.
"""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.primitives.frame import Frame
from geometry.solids.solid import Floats, Indices, PlacedSolid
from shared.tolerances import COPLANAR, MERGE

_SLIVER = 1e-4  # mm²: less is rounding
_AREA = "Polygon"


def cut_region(solid: PlacedSolid, plane: Frame) -> BaseGeometry:
    """The region in which the plane through ``plane``'s origin, square to its z, cuts the solid.

    Empty where it misses the solid or only touches it; ``plane`` in the solid's own frame.
    """
    turned = (solid.vertices - np.array(plane.origin)) @ np.array(
        (plane.x_axis, plane.y_axis, plane.z_axis)
    ).T
    height = turned[:, 2].copy()
    flat = np.abs(height) < COPLANAR
    height[flat] = 0.0
    if not (height > 0.0).any() or not (height < 0.0).any():
        return shapely.MultiPolygon()
    triangles = solid.solid.triangles
    region = _region(_loops(turned[:, :2], height, triangles, height > 0.0))
    if flat.any():
        other = _region(_loops(turned[:, :2], height, triangles, height >= 0.0))
        region = _areas(region.intersection(other, grid_size=COPLANAR))
    return region


def _loops(points: Floats, height: Floats, triangles: Indices, above: np.ndarray) -> list[Floats]:
    """Closed loops (n, 2) with the wood on their left, seen with z toward the viewer."""
    side = above[triangles]
    crossed = triangles[side.any(axis=1) & ~side.all(axis=1)]
    side = above[crossed]
    # Turn each triangle so that its first corner is alone on its side.
    alone_up = side.sum(axis=1) == 1
    lone = np.where(alone_up, side.argmax(axis=1), (~side).argmax(axis=1))
    order = (lone[:, None] + (0, 1, 2)) % 3
    a, b, c = np.take_along_axis(crossed, order, axis=1).T
    count = len(points)
    leaving = np.minimum(a, b) * count + np.maximum(a, b)
    arriving = np.minimum(a, c) * count + np.maximum(a, c)
    # With the lone corner up, the wood lies to the left from side a-b to side a-c.
    start = np.where(alone_up, leaving, arriving)
    end = np.where(alone_up, arriving, leaving)
    places = dict(
        zip(start.tolist(), _crossings(points, height, start, count).tolist(), strict=True)
    )
    following = dict(zip(start.tolist(), end.tolist(), strict=True))
    loops: list[Floats] = []
    while following:
        first, at = following.popitem()
        chain = [first]
        while at != first:
            chain.append(at)
            at = following.pop(at)
        loops.append(np.array([places[key] for key in chain]))
    return loops


def _crossings(points: Floats, height: Floats, keys: Indices, count: int) -> Floats:
    """Where mesh edges, given as low * count + high, meet the plane, (n, 2)."""
    low, high = np.divmod(keys, count)
    rise = height[high] - height[low]
    part = np.divide(-height[low], rise, out=np.zeros_like(rise), where=rise != 0.0)
    return np.asarray(points[low] + (points[high] - points[low]) * part[:, None])


def _region(loops: list[Floats]) -> BaseGeometry:
    """Loops to a region: those that turn left bound wood, those that turn right holes in it."""
    signed = [(_area(loop), loop) for loop in loops if len(loop) > 2]
    region: BaseGeometry = shapely.Polygon()
    for area, loop in sorted(signed, key=lambda one: -abs(one[0])):
        if abs(area) < _SLIVER:
            continue
        piece = shapely.Polygon(loop)
        if not piece.is_valid:
            piece = shapely.make_valid(piece)
        region = region.union(piece) if area > 0.0 else region.difference(piece)
    return _areas(region)


def _area(loop: Floats) -> float:
    x, y = loop.T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum()) / 2.0


def _areas(region: BaseGeometry) -> BaseGeometry:
    """The polygons of a region without needless corners; lines and points, which a touch leaves,
    go."""
    kept = [
        piece
        for piece in shapely.get_parts(region)
        if piece.geom_type == _AREA and piece.area > _SLIVER
    ]
    return shapely.MultiPolygon([shapely.simplify(piece, MERGE) for piece in kept])
