"""The surface of a prism: a closed path carried from one height to another.

Frame and units: as the path, mm.  Every side has a number of its own and remembers the arc it
is a chord of, so that after a boolean each triangle still tells which way the true surface
faces; that is how the chords of an arc are known from real corners, which no angle could tell
(a chord of a 6 mm cutter turns by more than the lean of many a flared front).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.primitives.frame import Vec2
from geometry.primitives.path import Path, arc_centre
from geometry.solids.solid import Floats, Indices
from shared.tolerances import CHORD_ERROR

FLAT = -1


@dataclass(frozen=True, slots=True, eq=False)
class Outline:
    """A path with its arcs flattened: n points, counter-clockwise.

    ``points`` (n, 2) mm.  ``arc`` (n,): which of the ``centres`` (k, 2) the side that starts at
    a point is a chord about, FLAT for a straight side.
    """

    points: Floats
    arc: Indices
    centres: tuple[Vec2, ...]


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
    """The flattened ``path``, its sides knowing their arcs."""
    points: list[Vec2] = []
    arc: list[int] = []
    centres: list[Vec2] = []
    following = path.vertices[1:] + path.vertices[:1]
    for start, (x, y, _) in zip(path.vertices, following, strict=True):
        span = Path((start, (x, y, 0.0)), closed=False).flattened(CHORD_ERROR)[:-1]
        points.extend(span)
        if start[2]:
            arc.extend([len(centres)] * len(span))
            centres.append(arc_centre(start[:2], (x, y), start[2])[0])
        else:
            arc.append(FLAT)
    return Outline(np.array(points), np.array(arc), tuple(centres))


def side_surface(flat: Outline, height: float, caps: Indices) -> tuple[Floats, Indices, Indices]:
    """Vertices (2n, 3), triangles (m, 3) and the face number of each triangle, from z = 0 up.

    ``caps`` (c, 3) are counter-clockwise triangles of the outline.  Faces 0 to n - 1 are the
    sides, face i starting at point i; n is the low cap and n + 1 the high one.
    """
    count = len(flat.points)
    vertices = np.empty((2 * count, 3))
    vertices[:count, :2] = vertices[count:, :2] = flat.points
    vertices[:count, 2] = 0.0
    vertices[count:, 2] = height
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
