"""Isometric views: all three axes of the bench equally foreshortened.

Frame and units: as any view, mm.  The line of sight is a diagonal of the cube, so X and Y are seen
at 30 degrees to the level and Z upright, each shortened by the square root of 2/3, the cosine of
35.264 degrees (ISO 5456-3, from memory).  The shortening is left as it is.
"""

from __future__ import annotations

from geometry.primitives.frame import Vec3, cross, unit
from geometry.views.view import View

_UP: Vec3 = (0.0, 0.0, 1.0)


def isometric(name: str, toward: Vec3, upright: Vec3 = _UP) -> View:
    """The view from ``toward``, with ``upright`` drawn upright; the two may not be parallel."""
    sight = unit(toward)
    right = unit(cross(upright, sight))
    return View(name, right, cross(sight, right), sight)


FROM_RIGHT = isometric("pictorial from the right", (1.0, -1.0, 1.0))
"""From in front, the right and above."""

FROM_LEFT = isometric("pictorial from the left", (-1.0, -1.0, 1.0))

CORNERS: tuple[View, ...] = tuple(
    isometric(f"pictorial {x:+.0f} {y:+.0f} {z:+.0f}", (x, y, z))
    for z in (1.0, -1.0)
    for y in (-1.0, 1.0)
    for x in (1.0, -1.0)
)
"""From all eight corners of the cube, those from in front and above first."""
