"""True arcs for outlines that went through a polygon library as short chords.

Plane coordinates in mm.  Method: nothing is fitted.  The circles that the outline was flattened
from are known; a run of vertices that lies on one of them, with chords as short as flattening
makes them, is one arc of exactly that circle.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.primitives.frame import Vec2
from geometry.primitives.path import BulgedVertex, Path, arc_centre, signed_area

# A chord lies inside its circle, by no more than the chord error where it was flattened; half as
# much again where another edge has cut it short.  Tangent lines lie outside and are no chords.
_INSIDE = 1.5
_OUTSIDE = 1e-5  # mm, rounding


@dataclass(frozen=True, slots=True)
class Circle:
    """Centre and radius in mm."""

    centre: Vec2
    radius: float


def circles_of(path: Path) -> tuple[Circle, ...]:
    """The circles that the arcs of a path belong to, each once."""
    found: dict[Circle, None] = {}
    following = path.vertices[1:] + path.vertices[:1]
    for (x0, y0, bulge), (x1, y1, _) in zip(path.vertices, following, strict=True):
        if bulge:
            found[Circle(*arc_centre((x0, y0), (x1, y1), bulge))] = None
    return tuple(found)


def whole_circle(path: Path) -> Circle | None:
    """The circle that a closed path goes round once, None when it is anything else."""
    if not path.closed or not all(bulge > 0.0 for _, _, bulge in path.vertices):
        return None
    first, *others = circles_of(path)
    turned = sum(4.0 * math.atan(bulge) for _, _, bulge in path.vertices)
    same = all(
        math.dist(first.centre, other.centre) < 1e-6 and abs(first.radius - other.radius) < 1e-6
        for other in others
    )
    return first if same and abs(turned - 2.0 * math.pi) < 1e-9 else None


def with_arcs(ring: Sequence[Vec2], circles: Iterable[Circle], chord_error: float) -> Path:
    """The closed counter-clockwise path of ``ring`` (first point not repeated) with true arcs.

    ``chord_error`` in mm is what the circles were flattened with.
    """
    points = list(ring) if signed_area(tuple(ring)) > 0.0 else list(ring)[::-1]
    known = tuple(circles)
    count = len(points)
    owner = [
        _circle_of(points[i], points[(i + 1) % count], known, chord_error) for i in range(count)
    ]
    start = next((i for i in range(count) if owner[i] is None or owner[i] != owner[i - 1]), None)
    if start is None:
        circle = owner[0]
        assert circle is not None, "an outline has at least three points"
        (x, y), r = circle.centre, circle.radius
        return Path(((x - r, y, 1.0), (x + r, y, 1.0)))
    points = points[start:] + points[:start]
    owner = owner[start:] + owner[:start]
    vertices: list[BulgedVertex] = []
    i = 0
    while i < count:
        circle, j = owner[i], i + 1
        if circle is None:
            vertices.append((*points[i], 0.0))
        else:
            while j < count and owner[j] == circle:
                j += 1
            vertices.append((*points[i], _bulge([*points, points[0]][i : j + 1], circle)))
        i = j
    return Path(tuple(vertices))


def _circle_of(a: Vec2, b: Vec2, circles: tuple[Circle, ...], chord_error: float) -> Circle | None:
    middle = ((a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0)
    for circle in circles:
        depths = [circle.radius - math.dist(p, circle.centre) for p in (a, b, middle)]
        if min(depths) > -_OUTSIDE and max(depths) < _INSIDE * chord_error:
            return circle
    return None


def _bulge(run: list[Vec2], circle: Circle) -> float:
    cx, cy = circle.centre
    swept = 0.0
    for (x0, y0), (x1, y1) in pairwise(run):
        ax, ay, bx, by = x0 - cx, y0 - cy, x1 - cx, y1 - cy
        swept += math.atan2(ax * by - ay * bx, ax * bx + ay * by)
    return math.tan(swept / 4.0)
