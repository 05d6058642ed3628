"""Orthographic views: the directions a bench, or a part on its own, is looked at from.

A view turns a point (x, y, z) into (u, v, w): u to the viewer's right, v up, w toward the
viewer, all in mm.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.primitives.frame import Vec2, Vec3, dot


@dataclass(frozen=True, slots=True)
class View:
    """A name and three unit axes with right x up = toward."""

    name: str
    right: Vec3
    up: Vec3
    toward: Vec3

    def project(self, point: Vec3) -> Vec2:
        """Where a point is seen, (u, v) in mm."""
        return (dot(point, self.right), dot(point, self.up))


FRONT = View("front", (1, 0, 0), (0, 0, 1), (0, -1, 0))
PLAN = View("plan", (1, 0, 0), (0, 1, 0), (0, 0, 1))
END_RIGHT = View("end right", (0, 1, 0), (0, 0, 1), (1, 0, 0))
END_LEFT = View("end left", (0, -1, 0), (0, 0, 1), (-1, 0, 0))

# A part by itself, in its own frame: the face side toward the viewer, x to the right.
PART_FACE = View("face", (1, 0, 0), (0, -1, 0), (0, 0, -1))
PART_REVERSE = View("reverse", (-1, 0, 0), (0, -1, 0), (0, 0, 1))
PART_EDGE = View("edge", (1, 0, 0), (0, 0, 1), (0, -1, 0))
PART_END = View("end", (0, 0, 1), (0, -1, 0), (1, 0, 0))
