"""Meshes: a part as binary STL, standing where it belongs in the bench.

Bench frame, millimetres (the format has no unit; the header says so).  Layout of the file: 80
bytes of header, the number of triangles as a 32-bit whole number, then for each triangle twelve
32-bit floats (outward normal and three corners, counter-clockwise from outside) and two bytes
that are zero, all little-endian.  Source: the format's published description (3D Systems, 1989),
from memory; the layout is checked against another library's reader.
"""

from __future__ import annotations

import struct

import numpy as np

from geometry.design.part import Part
from geometry.solids.cutting import placed

_TRIANGLE = np.dtype([("normal", "<f4", (3,)), ("corners", "<f4", (3, 3)), ("zero", "<u2")])


def stl_bytes(part: Part) -> bytes:
    """The part's solid in the bench frame; CannotBuild when nothing is left of it."""
    solid = placed(part)
    corners = solid.vertices[solid.solid.triangles]
    across = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    lengths = np.linalg.norm(across, axis=1, keepdims=True)
    rows = np.zeros(len(corners), dtype=_TRIANGLE)
    # A sliver without area has no normal; zero is what the format has for that.
    rows["normal"] = np.divide(across, lengths, out=np.zeros_like(across), where=lengths > 0.0)
    rows["corners"] = corners
    # A header that begins with "solid" would be taken for the text variant.
    header = f"Settlewright {part.name}, millimetres, bench position".encode("ascii", "replace")
    return header[:80].ljust(80) + struct.pack("<I", len(rows)) + rows.tobytes()
