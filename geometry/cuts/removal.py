"""What a cut takes away, as the few simple solids that the kernel understands.

All coordinates are in the part's own frame, in mm: x along the grain, y across, z through the
thickness; z = 0 is the face side and y = 0 the face edge.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.primitives.facets import Facets
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Frame, Vec3
from geometry.primitives.path import Path

PART_FRAME = Frame((0.0, 0.0, 0.0), X_AXIS, Y_AXIS, Z_AXIS)
SECTION_FRAME = Frame((0.0, 0.0, 0.0), Y_AXIS, Z_AXIS, X_AXIS)
"""For what runs along the grain: x across the piece, y through it, z along it."""


@dataclass(frozen=True, slots=True)
class HalfSpace:
    """Everything on the side of ``point`` that the unit vector ``outward`` points to."""

    point: Vec3
    outward: Vec3


@dataclass(frozen=True, slots=True)
class Prism:
    """A closed path in the xy plane of ``frame``, carried from ``z_low`` to ``z_high`` of it.

    ``frame`` is the part's own unless the prism runs in another direction: a groove along an
    edge, a hole askew.  ``ends`` cut it short: nothing beyond those planes, given in the part's
    frame, is taken away.
    """

    path: Path
    z_low: float
    z_high: float
    frame: Frame = PART_FRAME
    ends: tuple[HalfSpace, ...] = ()


@dataclass(frozen=True, slots=True)
class Hull:
    """The convex body spanned by at least four points that do not lie in one plane."""

    points: tuple[Vec3, ...]


@dataclass(frozen=True, slots=True)
class Hollow:
    """Everything from a faceted surface to the plane z = ``z_open``, which lies below all of it.

    The facets are one piece without holes; their sides are upright.
    """

    facets: Facets
    z_open: float


Removal = HalfSpace | Prism | Hull | Hollow
