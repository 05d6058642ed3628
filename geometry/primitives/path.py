"""Paths of straight lines and true arcs in a plane.

A vertex is (x, y, bulge) in mm.  The bulge belongs to the segment that starts at the vertex:
tan(included angle / 4), positive when the arc turns counter-clockwise, 0 for a straight line
(the convention of DXF group code 42, LWPOLYLINE, DXF reference).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.primitives.frame import Vec2

BulgedVertex = tuple[float, float, float]

QUARTER_TURN_BULGE = math.tan(math.pi / 8)
HALF_TURN_BULGE = 1.0


@dataclass(frozen=True, slots=True)
class Path:
    """Vertices joined by lines and arcs; closed paths run counter-clockwise."""

    vertices: tuple[BulgedVertex, ...]
    closed: bool = True

    @staticmethod
    def polygon(points: tuple[Vec2, ...]) -> Path:
        """A closed path of straight lines, turned counter-clockwise if it was not."""
        if signed_area(points) < 0.0:
            points = points[::-1]
        return Path(tuple([(x, y, 0.0) for x, y in points]))

    @staticmethod
    def line(start: Vec2, end: Vec2) -> Path:
        """An open path of one straight line."""
        return Path(((*start, 0.0), (*end, 0.0)), closed=False)

    @staticmethod
    def rectangle(x0: float, y0: float, x1: float, y1: float) -> Path:
        """The closed rectangle between two opposite corners."""
        return Path.polygon(((x0, y0), (x1, y0), (x1, y1), (x0, y1)))

    def flattened(self, chord_error: float) -> tuple[Vec2, ...]:
        """Points along the path, arcs as chords that stray at most ``chord_error`` mm."""
        points: list[Vec2] = []
        count = len(self.vertices)
        spans = count if self.closed else count - 1
        for i in range(spans):
            x0, y0, bulge = self.vertices[i]
            x1, y1, _ = self.vertices[(i + 1) % count]
            points.append((x0, y0))
            if bulge:
                points.extend(_arc_points((x0, y0), (x1, y1), bulge, chord_error))
        if not self.closed:
            points.append(self.vertices[-1][:2])
        return tuple(points)


def signed_area(points: tuple[Vec2, ...]) -> float:
    """Shoelace area in mm², positive for a counter-clockwise polygon."""
    total = 0.0
    x0, y0 = points[0]
    for x1, y1 in points[1:]:
        total += x0 * y1 - x1 * y0
        x0, y0 = x1, y1
    x1, y1 = points[0]
    return (total + (x0 * y1 - x1 * y0)) / 2.0


def arc_centre(start: Vec2, end: Vec2, bulge: float) -> tuple[Vec2, float]:
    """Centre and radius in mm of the arc from ``start`` to ``end``."""
    (x0, y0), (x1, y1) = start, end
    chord = math.hypot(x1 - x0, y1 - y0)
    radius = chord * (1.0 + bulge * bulge) / (4.0 * abs(bulge))
    along = (1.0 - bulge * bulge) / (4.0 * bulge)
    centre = (
        (x0 + x1) / 2.0 - along * (y1 - y0),
        (y0 + y1) / 2.0 + along * (x1 - x0),
    )
    return centre, radius


def _arc_points(start: Vec2, end: Vec2, bulge: float, chord_error: float) -> list[Vec2]:
    (cx, cy), radius = arc_centre(start, end, bulge)
    sweep = 4.0 * math.atan(bulge)
    widest = 2.0 * math.acos(max(0.0, 1.0 - chord_error / radius)) if radius > chord_error else 1.0
    steps = max(2, math.ceil(abs(sweep) / widest))
    begin = math.atan2(start[1] - cy, start[0] - cx)
    return [
        (
            cx + radius * math.cos(begin + sweep * k / steps),
            cy + radius * math.sin(begin + sweep * k / steps),
        )
        for k in range(1, steps)
    ]
