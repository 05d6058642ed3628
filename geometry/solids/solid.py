"""A solid as plain numbers: vertices, triangles, drawn edges and the panels that hide things.

Frame and units: the part's own frame, mm.  All arrays are read-only.  Nothing here knows the
solid kernel; it is what the rest of the program holds on to.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from geometry.primitives.frame import Frame

Floats = NDArray[np.float64]
Indices = NDArray[np.intp]
Flags = NDArray[np.bool_]
AnyArray = TypeVar("AnyArray", bound=NDArray[Any])


@dataclass(frozen=True, slots=True, eq=False)
class Solid:
    """One closed body with n vertices, m triangles, k edges and q panels.

    ``vertices`` (n, 3).  ``triangles`` (m, 3) vertex indices, counter-clockwise from outside.
    ``edges`` (k, 2) vertex indices of the lines where two faces meet; ``edge_normals``
    (k, 2, 3) the outward unit normals of those two faces; ``smooth`` (k,) marks the chords'
    edges of one flattened arc, which show only as outlines.  ``panels`` (q, 4) vertex indices
    of convex flat pieces that cover the surface, counter-clockwise from outside, a triangle
    repeating its last index; ``panel_normals`` (q, 3).  ``edge_faces`` (k, 2) and
    ``panel_faces`` (q,) number the flat faces that these normals are of.  ``volume`` in mm³.
    """

    vertices: Floats
    triangles: Indices
    edges: Indices
    edge_normals: Floats
    smooth: Flags
    panels: Indices
    panel_normals: Floats
    edge_faces: Indices
    panel_faces: Indices
    volume: float


@dataclass(frozen=True, eq=False)
class PlacedSolid:
    """A solid where it stands: its vertices and normals in another frame, usually the bench's."""

    solid: Solid
    vertices: Floats
    edge_normals: Floats
    panel_normals: Floats

    @cached_property
    def low(self) -> Floats:
        """The least corner of its bounding box there, (3,)."""
        return frozen(self.vertices.min(axis=0))

    @cached_property
    def high(self) -> Floats:
        """The greatest corner of its bounding box, (3,)."""
        return frozen(self.vertices.max(axis=0))


def place(solid: Solid, frame: Frame) -> PlacedSolid:
    """``solid`` carried from its own frame into the one that ``frame`` is given in."""
    turn = np.array((frame.x_axis, frame.y_axis, frame.z_axis))
    vertices = solid.vertices @ turn
    vertices += frame.origin
    return PlacedSolid(
        solid,
        frozen(vertices),
        frozen((solid.edge_normals.reshape(-1, 3) @ turn).reshape(-1, 2, 3)),
        frozen(solid.panel_normals @ turn),
    )


def frozen(array: AnyArray) -> AnyArray:
    """The same array, from now on read-only."""
    array.flags.writeable = False
    return array
