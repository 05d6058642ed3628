"""STL files, judged by trimesh's reader and by volumes worked by hand."""

from __future__ import annotations

import io
import struct

import numpy as np
import pytest
import trimesh

from exporters.meshes import stl_bytes
from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.primitives.frame import Frame
from geometry.solids.cutting import placed, solid_of

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


def test_a_turned_part_is_turned(upright: Part) -> None:
    """Stood on end by hand: x up, y away to the front, z to the left."""
    from dataclasses import replace

    stood = replace(upright, frame=Frame.of((10.0, 0.0, 5.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0)))
    mesh = read(stood)
    assert mesh.bounds == pytest.approx(np.array([[10, -300, 5], [28, 0, 295]]), abs=1e-4)
    assert mesh.volume > 0.0


def test_the_same_part_gives_the_same_bytes(any_part: Part) -> None:
    assert stl_bytes(any_part) == stl_bytes(any_part)
