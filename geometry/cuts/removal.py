"""What a cut takes away, as the few simple solids that the kernel understands.

All coordinates are in the part's own frame, in mm: x along the grain, y across, z through the
thickness; z = 0 is the face side and y = 0 the face edge.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.primitives.frame import Vec3
from geometry.primitives.path import Path


@dataclass(frozen=True, slots=True)
class HalfSpace:
    """Everything on the side of ``point`` that the unit vector ``outward`` points to."""

    point: Vec3
    outward: Vec3


@dataclass(frozen=True, slots=True)
class Prism:
    """A closed path in the xy plane, carried from ``z_low`` to ``z_high``."""

    path: Path
    z_low: float
    z_high: float


@dataclass(frozen=True, slots=True)
class Hull:
    """The convex body spanned by at least four points that do not lie in one plane."""

    points: tuple[Vec3, ...]


Removal = HalfSpace | Prism | Hull
