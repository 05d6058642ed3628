"""The surface of a prism: a closed path carried from one height to another.

Frame and units: as the path, mm.  Every side has a number of its own, so that after a boolean
each triangle still tells which side of which cutter made it; that is how the chords of an arc
are known from real corners, which no angle could tell (a chord of a 6 mm cutter turns by more
than the lean of many a flared front).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from geometry.cuts.removal import Prism
from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path
from geometry.solids.solid import Flags, Floats, Indices
from shared.tolerances import CHORD_ERROR

TANGENT_DEG = 0.5
"""A line and an arc that meet at less run into one another without a corner."""


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """A path with its arcs flattened: n points, counter-clockwise.

    ``points`` (n, 2) mm.  ``smooth`` (n,): the side that ends at a point runs on smoothly into
    the side that starts there.
    """

    points: Floats
    smooth: Flags


def is_convex_polygon(path: Path) -> bool:
    """Whether a closed path has straight sides only and turns left at every corner."""
    if any(bulge for _, _, bulge in path.vertices):
        return False
    points = path.vertices
    for before, here, after in zip(
        points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True
    ):
        turn = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (
            after[0] - here[0]
        )
        if turn <= 0.0:
            return False
    return len(points) > 2


def outline(path: Path) -> Outline:
    """The flattened ``path``, with the points inside arcs and at tangents marked smooth."""
    points: list[Vec2] = []
    smooth: list[bool] = []
    count = len(path.vertices)
    for i in range(count):
        x1, y1, _ = path.vertices[(i + 1) % count]
        span = Path((path.vertices[i], (x1, y1, 0.0)), closed=False).flattened(CHORD_ERROR)[:-1]
        points.extend(span)
        smooth.append(_is_tangent(path, i))
        smooth.extend([True] * (len(span) - 1))
    return Outline(np.array(points), np.array(smooth))


def side_surface(prism: Prism, flat: Outline, caps: Indices) -> tuple[Floats, Indices, Indices]:
    """Vertices (2n, 3), triangles (m, 3) and the face number of each triangle.

    ``caps`` (c, 3) are counter-clockwise triangles of the outline.  Faces 0 to n - 1 are the
    sides, face i starting at point i; n is the low cap and n + 1 the high one.
    """
    count = len(flat.points)
    vertices = np.empty((2 * count, 3))
    vertices[:count, :2] = vertices[count:, :2] = flat.points
    vertices[:count, 2] = prism.z_low
    vertices[count:, 2] = prism.z_high
    triangles = np.empty((2 * count + 2 * len(caps), 3), dtype=np.intp)
    here = np.arange(count)
    following = np.roll(here, -1)
    triangles[:count, 0] = triangles[count : 2 * count, 0] = here
    triangles[:count, 1] = following
    triangles[:count, 2] = triangles[count : 2 * count, 1] = following + count
    triangles[count : 2 * count, 2] = here + count
    triangles[2 * count : 2 * count + len(caps)] = caps[:, ::-1]
    triangles[2 * count + len(caps) :] = caps + count
    faces = np.concatenate((here, here, np.repeat((count, count + 1), len(caps))))
    return vertices, triangles, faces


def _is_tangent(path: Path, index: int) -> bool:
    """Whether the span before a vertex, or after it, is an arc that meets the other smoothly."""
    count = len(path.vertices)
    before, here, after = (path.vertices[(index + step) % count] for step in (-1, 0, 1))
    if not (before[2] or here[2]):
        return False
    arriving = _heading(before[:2], here[:2], before[2], at_end=True)
    leaving = _heading(here[:2], after[:2], here[2], at_end=False)
    turn = math.degrees(leaving - arriving)
    return abs((turn + 180.0) % 360.0 - 180.0) < TANGENT_DEG


def _heading(start: Vec2, end: Vec2, bulge: float, *, at_end: bool) -> float:
    """Direction of travel in radians at one end of a line or arc."""
    chord = math.atan2(end[1] - start[1], end[0] - start[0])
    # An arc leaves its chord by half its sweep on either side: sweep = 4 atan(bulge).
    return chord + (2.0 if at_end else -2.0) * math.atan(bulge)
