"""A face that is nothing but rounding is no face.  Worked by hand."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from geometry.solids.kernel.mesh import Mesh
from geometry.solids.prism import FLAT
from geometry.solids.surface import solid_from


def box_with_a_sliver(width: float) -> Mesh:
    """10 x 10 x 5, one upright arris cut off at 45 degrees by a face so wide; as a mesh."""
    cut = width / np.sqrt(2.0)
    outline = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0 - cut), (10.0 - cut, 10.0), (0.0, 10.0)]
    n = len(outline)
    vertices = np.array([(x, y, z) for z in (0.0, 5.0) for x, y in outline])
    triangles, faces = [], []
    for k in range(1, n - 1):
        triangles += [(0, k + 1, k), (n, n + k, n + k + 1)]
        faces += [0, 1]
    for k in range(n):
        after = (k + 1) % n
        triangles += [(k, after, n + after), (k, n + after, n + k)]
        faces += [2 + k, 2 + k]
    return Mesh(
        vertices=vertices,
        triangles=np.array(triangles),
        faces=np.array(faces),
        arcs=np.full(n + 2, FLAT),
        axes=np.empty((0, 2, 3)),
    )


def test_a_face_as_wide_as_rounding_is_left_out() -> None:
    solid = solid_from(box_with_a_sliver(3e-9))
    assert len(solid.vertices) == 8
    assert len(solid.edges) == 12
    assert solid.volume == pytest.approx(500.0)
    # Two triangles to each of six faces; all panels are whole rectangles.
    assert len(solid.triangles) == 12
    assert len(solid.panels) == 6


def test_a_narrow_face_stays() -> None:
    solid = solid_from(box_with_a_sliver(0.01))
    assert len(solid.edges) == 15
    assert solid.volume == pytest.approx(500.0 - 5.0 * 0.01**2 / 4.0, abs=1e-9)


def wedge_that_just_misses_its_corner() -> Mesh:
    """10 x 10 x 5, its end sawn on a slant that leaves a nothing of the upright end at A.

    Of the corners there, B lies over A by less than rounding, C beside it by rather more: with B
    gone, one triangle of the underside and one of the slant lie back to back.
    """
    corners = {
        "O": (0, 0, 0), "P": (0, 10, 0), "A": (10, 10, 0), "C": (10, 10 - 4e-7, 0), "D": (9, 0, 0),
        "o": (0, 0, 5), "p": (0, 10, 5), "B": (10, 10, 3e-8), "E": (5, 10, 5), "F": (4, 0, 5),
    }  # fmt: skip
    faces = ["ACD OAD OPA", "DCB DBF FBE", "ABC", "AEB APE PpE", "ODF OFo", "oFE oEp", "Oop OpP"]
    names, each = list(corners), [face.split() for face in faces]
    triangles = [[names.index(corner) for corner in three] for face in each for three in face]
    return Mesh(
        vertices=np.array([corners[name] for name in names], dtype=float),
        triangles=np.array(triangles),
        faces=np.repeat(np.arange(len(each)), [len(face) for face in each]),
        arcs=np.full(len(each), FLAT),
        axes=np.empty((0, 2, 3)),
    )


def test_triangles_back_to_back_are_left_out() -> None:
    solid = solid_from(wedge_that_just_misses_its_corner())
    # A wedge of 8 corners and 12 edges; Simpson's rule over its sections of 95, 70 and 45.
    assert len(solid.vertices) == 8
    assert len(solid.edges) == 12
    assert len(solid.triangles) == 12
    assert solid.volume == pytest.approx(5.0 * (95.0 + 4.0 * 70.0 + 45.0) / 6.0)
    judged = trimesh.Trimesh(solid.vertices, solid.triangles, process=False)
    assert judged.is_watertight
