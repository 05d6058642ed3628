"""Meshes: a part as binary STL, standing where it belongs in the bench.

Bench frame, millimetres (the format has no unit; the header says so).  Layout of the file: 80
bytes of header, the number of triangles as a 32-bit whole number, then for each triangle twelve
32-bit floats (outward normal and three corners, counter-clockwise from outside) and two bytes
that are zero, all little-endian.  Source: the format's published description (3D Systems, 1989),
from memory; the layout is checked against another library's reader.

Method: the format has no shared corners, so a reader takes equal coordinates for one point, and
32-bit floats round a point two metres out to a ten-thousandth of a millimetre.  Where rounding
makes points equal, the triangles that shrink to nothing are left out.  Should that leave the
mesh open, which takes hair-thin faces, every point is kept instead, moved just far enough
to tell it from the others.
"""

from __future__ import annotations

import struct
from collections import Counter

import numpy as np
from numpy.typing import NDArray

from geometry.design.part import Part
from geometry.solids.cutting import placed

Floats32 = NDArray[np.float32]
Indices = NDArray[np.intp]

_STEP = np.float32(1e-4)  # mm; near zero the least step would be nothing to any reader
_TRIANGLE = np.dtype([("normal", "<f4", (3,)), ("corners", "<f4", (3, 3)), ("zero", "<u2")])


def stl_bytes(part: Part) -> bytes:
    """The part's solid in the bench frame; CannotBuild when nothing is left of it."""
    solid = placed(part)
    points, triangles = rounded_mesh(solid.vertices, solid.solid.triangles)
    corners = points[triangles].astype(np.float64)
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    lengths = np.linalg.norm(across, axis=1, keepdims=True)
    rows = np.zeros(len(corners), dtype=_TRIANGLE)
    # A sliver without area has no normal; zero is what the format has for that.
    rows["normal"] = np.divide(across, lengths, out=np.zeros_like(across), where=lengths > 0.0)
    rows["corners"] = corners
    # A header that begins with "solid" would be taken for the text variant.
    header = f"Settlewright {part.name}, millimetres, bench position".encode("ascii", "replace")
    return header[:80].ljust(80) + struct.pack("<I", len(rows)) + rows.tobytes()


def rounded_mesh(vertices: NDArray[np.float64], triangles: Indices) -> tuple[Floats32, Indices]:
    """A closed mesh (n, 3), (m, 3) with corners rounded to 32 bits, no two of them equal."""
    rounded = vertices.astype(np.float32)
    points, place = np.unique(rounded, axis=0, return_inverse=True)
    a, b, c = joined = place.reshape(-1)[triangles.T]
    joined = joined.T[(a != b) & (b != c) & (c != a)]
    if is_closed(joined):
        return points, joined
    return _told_apart(rounded), triangles


def is_closed(triangles: Indices) -> bool:
    """Whether each side of each triangle is the side of exactly one other, the other way round."""
    sides = Counter(
        (start, end) for a, b, c in triangles.tolist() for start, end in ((a, b), (b, c), (c, a))
    )
    return all(number == 1 and (end, start) in sides for (start, end), number in sides.items())


def _told_apart(points: Floats32) -> Floats32:
    """The points, those equal to an earlier one moved along x until they differ."""
    apart = points.copy()
    taken: set[tuple[float, ...]] = set()
    for i in range(len(apart)):
        while tuple(apart[i].tolist()) in taken:
            apart[i, 0] += max(_STEP, np.spacing(abs(apart[i, 0])))
        taken.add(tuple(apart[i].tolist()))
    return apart
