"""Pockets that leave the edge of a board: their open sides carried out past the edge.

Plane coordinates in mm.  Without it a round cutter that follows the drawn contour leaves a round
of wood in each corner at the open side.  Method: a straight side with no wood beyond it moves out
square to itself, and its neighbours are made longer; closed sides and arcs stay as they are.
"""

from __future__ import annotations

import math

import shapely
from shapely.geometry import LineString, MultiPolygon, Polygon

from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path
from shared.tolerances import MERGE

_FLAT = 1e-9


def run_over(path: Path, outline: MultiPolygon, distance: float) -> Path:
    """``path`` (closed, counter-clockwise) with its open sides ``distance`` mm off the outline.

    A side is open when no wood lies against its outer side.
    """
    wood = MultiPolygon([Polygon(piece.exterior) for piece in outline.geoms])
    shapely.prepare(wood)
    count = len(path.vertices)
    sides = [_Side(path, i) for i in range(count)]
    moved = [_outward(side, wood, distance) for side in sides]
    if not any(moved):
        return path
    vertices: list[tuple[float, float, float]] = []
    for i in range(count):
        bulge = path.vertices[i][2]
        corners = _corner(sides[i - 1], moved[i - 1], sides[i], moved[i])
        vertices += [(x, y, 0.0) for x, y in corners[:-1]]
        vertices.append((*corners[-1], bulge))
    return Path(tuple(vertices))


class _Side:
    """One side of a closed path: its ends, and its direction when it is straight."""

    def __init__(self, path: Path, i: int) -> None:
        x0, y0, self.bulge = path.vertices[i]
        x1, y1, _ = path.vertices[(i + 1) % len(path.vertices)]
        self.start: Vec2 = (x0, y0)
        self.end: Vec2 = (x1, y1)
        length = math.dist(self.start, self.end)
        self.along: Vec2 = ((x1 - x0) / length, (y1 - y0) / length)

    def shifted(self, distance: float) -> tuple[Vec2, Vec2]:
        """Both ends moved square to the side, to its right, which is outside."""
        (ax, ay), d = self.along, distance
        (x0, y0), (x1, y1) = self.start, self.end
        return (x0 + ay * d, y0 - ax * d), (x1 + ay * d, y1 - ax * d)


def _outward(side: _Side, wood: MultiPolygon, distance: float) -> float:
    """How far the side has to move, 0 for one that stays."""
    if side.bulge:
        return 0.0
    against = LineString(side.shifted(100.0 * MERGE))
    if against.intersection(wood).length > 100.0 * MERGE:
        return 0.0
    clear: float = LineString((side.start, side.end)).distance(wood)
    return max(0.0, distance - clear)


def _corner(before: _Side, moved_before: float, after: _Side, moved_after: float) -> list[Vec2]:
    """Where two neighbouring sides meet once they have moved: one point, or two with a step."""
    if not moved_before and not moved_after:
        return [after.start]
    end, start = before.shifted(moved_before)[1], after.shifted(moved_after)[0]
    if before.bulge or after.bulge:
        return [end, start]
    (ax, ay), (bx, by) = before.along, after.along
    turn = ax * by - ay * bx
    if abs(turn) < _FLAT:
        return [end] if math.dist(end, start) < _FLAT else [end, start]
    t = ((start[0] - end[0]) * by - (start[1] - end[1]) * bx) / turn
    return [(end[0] + t * ax, end[1] + t * ay)]
