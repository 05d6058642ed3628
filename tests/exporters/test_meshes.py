"""STL files, judged by trimesh's reader and by volumes worked by hand."""

from __future__ import annotations

import io
import struct
from pathlib import Path

import numpy as np
import pytest
import trimesh

from exporters.meshes import is_closed, rounded_mesh, stl_bytes
from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.design.part import Part
from geometry.primitives.frame import Frame
from geometry.solids.cutting import placed, solid_of

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.settle"))

# mm³, by hand: outline times thickness, less what is cut from a face.
VOLUMES = {
    "plain": 300 * 200 * 20,
    "upright": (290 * 300 - 2 * 6 * 40) * 18,
    "stretcher": 900 * 80 * 38 - 2 * 70 * 80 * (12.5 + 12.5),
}


def read(part: Part) -> trimesh.Trimesh:
    mesh = trimesh.load(io.BytesIO(stl_bytes(part)), file_type="stl")
    assert isinstance(mesh, trimesh.Trimesh)
    return mesh


def test_every_mesh_is_closed_and_faces_outward(any_part: Part) -> None:
    mesh = read(any_part)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    # 32-bit floats carry seven digits: a part in two million.
    assert mesh.volume == pytest.approx(solid_of(any_part.shape).volume, rel=1e-6)


@pytest.mark.parametrize("name", ["plain", "upright", "stretcher"])
def test_volumes_by_hand(name: str, request: pytest.FixtureRequest) -> None:
    mesh = read(request.getfixturevalue(name))
    assert mesh.volume == pytest.approx(VOLUMES[name], rel=1e-6)


def test_the_layout_of_the_file(plain: Part) -> None:
    data = stl_bytes(plain)
    (count,) = struct.unpack_from("<I", data, 80)
    assert len(data) == 84 + 50 * count
    assert count == 12
    assert data[:80].startswith(b"Settlewright plain, millimetres")
    assert not data.startswith(b"solid")


def test_normals_point_out(plain: Part) -> None:
    data = stl_bytes(plain)
    middle = np.array([150.0, 100.0, 10.0])
    for i in range(12):
        values = np.array(struct.unpack_from("<12f", data, 84 + 50 * i))
        normal, corners = values[:3], values[3:].reshape(3, 3)
        assert np.linalg.norm(normal) == pytest.approx(1.0, abs=1e-6)
        assert normal @ (corners.mean(axis=0) - middle) > 0.0


def test_the_part_stands_in_the_bench(bench: Bench) -> None:
    """The seat is base height + case height = 150 + 300 above the floor, feet stand on it."""
    meshes = {part.name: read(part) for part in bench.parts}
    assert max(mesh.bounds[1, 2] for mesh in meshes.values()) == pytest.approx(450.0, abs=1e-3)
    feet = [mesh.bounds[0, 2] for name, mesh in meshes.items() if name.startswith("leg")]
    assert feet == pytest.approx([0.0] * 4, abs=1e-3)
    for part in bench.parts:
        assert meshes[part.name].is_watertight
        low, high = placed(part).low, placed(part).high
        assert meshes[part.name].bounds == pytest.approx(np.array([low, high]), abs=1e-3)


TETRAHEDRON = np.array([(0, 2, 1), (0, 1, 3), (1, 2, 3), (0, 3, 2)])


def test_an_edge_that_rounding_shrinks_to_a_point_is_left_out() -> None:
    """At 2000 mm 32-bit floats are 1.2e-4 apart, so an edge of 1e-5 has no length.

    A tetrahedron with one corner cut off that small has four triangles more; they go.
    """
    e = 1e-5
    vertices = 2000.0 + np.array(
        [(0, 0, 0), (9, 0, 0), (0, 9, 0), (0, e, 9), (e, 0, 9), (0, 0, 9 - e)]
    )
    triangles = np.array(
        [(0, 2, 1), (0, 1, 4), (0, 4, 5), (1, 2, 3), (1, 3, 4), (0, 3, 2), (0, 5, 3), (3, 5, 4)]
    )
    assert is_closed(triangles)
    points, kept = rounded_mesh(vertices, triangles)
    assert len(points) == 4
    assert len(kept) == len(triangles) - 4 == 4
    assert is_closed(kept)


def test_bodies_that_rounding_would_join_along_an_edge_stay_apart() -> None:
    """Two tetrahedra back to back: four faces on one edge are no closed surface for a reader."""
    first = np.array([(2000.0, 0, 0), (2000.0, 9, 0), (2009.0, 0, 0), (2009.0, 0, 9)])
    second = first * (-1, 1, 1) + (4000.0 - 1e-6, 0, 0)
    vertices = np.concatenate([first, second])
    triangles = np.concatenate([TETRAHEDRON, TETRAHEDRON[:, ::-1] + 4])
    assert is_closed(triangles)
    points, kept = rounded_mesh(vertices, triangles)
    assert len(np.unique(points, axis=0)) == 8
    assert is_closed(kept)
    assert np.abs(points - vertices).max() < 5e-4


def test_an_open_surface_is_told() -> None:
    assert is_closed(TETRAHEDRON)
    assert not is_closed(TETRAHEDRON[1:])
    assert not is_closed(np.concatenate([TETRAHEDRON[1:], TETRAHEDRON[:1, ::-1]]))


@pytest.mark.parametrize("file", SAMPLES, ids=lambda file: file.stem)
def test_every_mesh_of_every_sample_is_closed(file: Path) -> None:
    for part in build(load(file).spec).parts:
        mesh = read(part)
        assert mesh.is_watertight, part.name
        assert mesh.volume == pytest.approx(solid_of(part.shape).volume, rel=1e-5)


def test_a_turned_part_is_turned(upright: Part) -> None:
    """Stood on end by hand: x up, y away to the front, z to the left."""
    from dataclasses import replace

    stood = replace(upright, frame=Frame.of((10.0, 0.0, 5.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0)))
    mesh = read(stood)
    assert mesh.bounds == pytest.approx(np.array([[10, -300, 5], [28, 0, 295]]), abs=1e-4)
    assert mesh.volume > 0.0


def test_the_same_part_gives_the_same_bytes(any_part: Part) -> None:
    assert stl_bytes(any_part) == stl_bytes(any_part)
