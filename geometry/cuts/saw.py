"""A saw cut by a plane: crosscut, mitre, bevel, taper or level end cut."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Removal
from geometry.primitives.frame import Vec2, Vec3
from geometry.primitives.path import Path

FLATTEST_DEG = 60.0  # blade tilt from square, with the board on its face, beyond any saw's


@dataclass(frozen=True, slots=True)
class SawCut:
    """Takes off everything beyond a plane; ``outward`` is a unit vector into the waste."""

    title: str
    point: Vec3
    outward: Vec3

    @property
    def tilt_deg(self) -> float:
        """Blade tilt from square, with the board flat on its face."""
        return math.degrees(math.asin(min(1.0, abs(self.outward[2]))))

    @property
    def swing_deg(self) -> float:
        """How far the cut is turned from square across the grain, seen on the face."""
        return math.degrees(math.atan2(abs(self.outward[1]), abs(self.outward[0])))

    def removals(self, blank: Blank) -> tuple[Removal, ...]:  # noqa: ARG002
        return (HalfSpace(self.point, self.outward),)

    def contours(self, blank: Blank) -> tuple[Contour, ...]:
        """For a tilted cut, its line on the face where it bites deeper.

        A square cut draws none, nor one so flat that the piece is stood on edge for it.
        """
        across = self.outward[2]
        if abs(across) < 1e-9 or self.tilt_deg > FLATTEST_DEG:
            return ()
        face, z = (Face.REVERSE, blank.thickness) if across > 0.0 else (Face.FACE_SIDE, 0.0)
        ends = self.line_at(z, blank)
        if ends is None:
            return ()
        return (Contour(Operation.SAW_LINE, face, Path.line(*ends), tilt_deg=self.tilt_deg),)

    def line_at(self, z: float, blank: Blank) -> tuple[Vec2, Vec2] | None:
        """Where the plane meets the blank at height ``z``; None where it misses it."""
        nx, ny, nz = self.outward
        reach = nx * self.point[0] + ny * self.point[1] + nz * (self.point[2] - z)
        return line_in_rectangle(nx, ny, reach, blank.length, blank.width)


def line_in_rectangle(
    nx: float, ny: float, reach: float, length: float, width: float
) -> tuple[Vec2, Vec2] | None:
    """The stretch of the line nx x + ny y = reach inside [0, length] x [0, width]."""
    points: list[Vec2] = []
    if abs(ny) > 1e-12:
        points += [(x, (reach - nx * x) / ny) for x in (0.0, length)]
    if abs(nx) > 1e-12:
        points += [((reach - ny * y) / nx, y) for y in (0.0, width)]
    inside = sorted(
        {
            (round(x, 9), round(y, 9))
            for x, y in points
            if -1e-6 <= x <= length + 1e-6 and -1e-6 <= y <= width + 1e-6
        }
    )
    if len(inside) < 2 or math.dist(inside[0], inside[-1]) < 1e-6:
        return None
    return inside[0], inside[-1]
