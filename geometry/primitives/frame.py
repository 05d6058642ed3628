"""Places and directions: a right-handed frame that carries a part into the bench.

Method: plain tuples of floats, so that every value is frozen, hashable and exact to read;
numpy enters only where many points move at once.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Vec2 = tuple[float, float]
Vec3 = tuple[float, float, float]

X_AXIS: Vec3 = (1.0, 0.0, 0.0)
Y_AXIS: Vec3 = (0.0, 1.0, 0.0)
Z_AXIS: Vec3 = (0.0, 0.0, 1.0)


def add(a: Vec3, b: Vec3) -> Vec3:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def subtract(a: Vec3, b: Vec3) -> Vec3:
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def scale(a: Vec3, factor: float) -> Vec3:
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def opposite(way: Vec3) -> Vec3:
    """The other way, without a negative nought."""
    return (0.0 - way[0], 0.0 - way[1], 0.0 - way[2])


def dot(a: Vec3, b: Vec3) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vec3, b: Vec3) -> Vec3:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def norm(a: Vec3) -> float:
    return math.sqrt(dot(a, a))


def unit(a: Vec3) -> Vec3:
    """``a`` at length 1; raises ZeroDivisionError for the zero vector."""
    return scale(a, 1.0 / norm(a))


def rounded(place: Vec3) -> Vec3:
    """Far below anything that can be marked, so that pieces meant to be alike come out equal."""
    x, y, z = place
    return (round(x, 9) + 0.0, round(y, 9) + 0.0, round(z, 9) + 0.0)


@dataclass(frozen=True, slots=True)
class Frame:
    """A right-handed frame: origin in mm and three unit axes, all in bench coordinates."""

    origin: Vec3
    x_axis: Vec3
    y_axis: Vec3
    z_axis: Vec3

    @staticmethod
    def of(origin: Vec3, x_axis: Vec3, y_axis: Vec3) -> Frame:
        """The frame with these x and y directions; z follows by the right-hand rule."""
        return Frame(origin, x_axis, y_axis, cross(x_axis, y_axis))

    def to_bench(self, local: Vec3) -> Vec3:
        """A point of this frame in bench coordinates."""
        return add(self.origin, self.turn_to_bench(local))

    def to_local(self, point: Vec3) -> Vec3:
        """A bench point in this frame's coordinates."""
        return self.turn_to_local(subtract(point, self.origin))

    def turn_to_bench(self, local: Vec3) -> Vec3:
        """A direction of this frame in bench coordinates."""
        x, y, z = local
        ax, ay, az = self.x_axis, self.y_axis, self.z_axis
        return (
            x * ax[0] + y * ay[0] + z * az[0],
            x * ax[1] + y * ay[1] + z * az[1],
            x * ax[2] + y * ay[2] + z * az[2],
        )

    def turn_to_local(self, direction: Vec3) -> Vec3:
        """A bench direction in this frame's coordinates."""
        return (
            dot(direction, self.x_axis),
            dot(direction, self.y_axis),
            dot(direction, self.z_axis),
        )

    def matrix(self) -> NDArray[np.float64]:
        """Shape (3, 4): columns x, y, z axis and origin, so that bench = M @ (x, y, z, 1)."""
        return np.array([self.x_axis, self.y_axis, self.z_axis, self.origin], dtype=np.float64).T


BENCH_FRAME = Frame((0.0, 0.0, 0.0), X_AXIS, Y_AXIS, Z_AXIS)
