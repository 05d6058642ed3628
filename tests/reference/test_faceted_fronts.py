"""Volumes of carved fronts against the outside.

Faceted front: V = W·H·T + Σ plan area × mean height, heights measured from the face (here they
are depths, so they count as negative): the volume of a prism with a slanting top is its plan area
times the mean of its corners' heights (Bronshtein et al., Handbook of Mathematics, truncated
triangular prism; from memory).  The mesh is read back from the exported STL by trimesh, which
shares no code with the solid kernel.  Cove: a quarter round, π r² / 4 times its length.
"""

from __future__ import annotations

import io
import math

import pytest
import trimesh

from exporters.meshes import stl_bytes
from geometry.bench.build import build
from geometry.bench.carving_numbers import carving_of
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import drawers
from geometry.bench.limits import set_values
from geometry.bench.relief_surface import spots_of
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from shared.tolerances import CHORD_ERROR
from tests.unbored import unbored

ONE = set_values(
    set_values(default_spec(), {"partition_count": 0.0, "opening_1_fill": "drawers"}),
    {"carving": "faceted"},
)
TWO = set_values(ONE, {"opening_1_drawers": 2.0, "carving_points": 24.0})


def front(spec: BenchSpec, name: str) -> Part:
    """Before it is bored for its screws."""
    return unbored(build(spec), f"{name}_front")


def exported(part: Part) -> trimesh.Trimesh:
    mesh = trimesh.load_mesh(io.BytesIO(stl_bytes(part)), file_type="stl")
    assert mesh.is_watertight
    return mesh


def test_the_five_points_of_a_pyramid_by_hand() -> None:
    """Four corners at the face and one point 6 deep: a pyramid, a third of its box is gone.

    The front of the one opening, 20..1120 less gaps of 2, is 1096 wide and
    256 high: 1096 x 256 x 18 = 5 050 368; a pyramid of 6 is 1096 x 256 x 6 / 3 = 561 152.
    """
    moved = "1 0 0 0; 2 100 0 0; 3 100 100 0; 4 0 100 0; 5 50 0 0; 6 50 50 100"
    spec = set_values(ONE, {"carving_points": 6.0, "carving_moved": moved})
    (drawer,) = drawers(spec)
    assert (drawer.front_width, drawer.front_height) == pytest.approx((1096.0, 256.0))
    mesh = exported(front(spec, drawer.name))
    assert mesh.volume == pytest.approx(5_050_368 - 561_152, rel=1e-6)


@pytest.mark.parametrize("mirror", ["scattered", "mirrored"])
@pytest.mark.parametrize("seed", [1.0, 2.0, 77.0])
def test_a_seeded_front_by_plan_area_times_mean_height(seed: float, mirror: str) -> None:
    """One front is the whole picture, so every triangle counts in full."""
    spec = set_values(ONE, {"carving_seed": seed, "carving_points": 20.0, "carving_mirror": mirror})
    carving, (drawer,) = carving_of(spec), drawers(spec)
    assert carving is not None
    width, height = drawer.front_width, drawer.front_height
    spots = [spot.at for spot in spots_of(carving.pattern, width, height, carving.depth)]
    from scipy.spatial import Delaunay  # another triangulation of the same points

    # They are joined as in a picture three times as wide as high, whatever its size.
    in_shares = [(3.0 * x / width, y / height) for x, y, _ in spots]
    total = 0.0
    for a, b, c in Delaunay(in_shares).simplices:
        p, q, r = spots[a], spots[b], spots[c]
        area = abs((q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1])) / 2
        total += area * -(p[2] + q[2] + r[2]) / 3
    mesh = exported(front(spec, drawer.name))
    if mirror == "scattered":
        assert mesh.volume == pytest.approx(width * height * 18 + total, rel=1e-6)
    else:
        # Four points and their images lie on one circle, so scipy may join them otherwise; the
        # left half holds as much as the right.
        halves = [
            trimesh.intersections.slice_mesh_plane(
                mesh, (way, 0, 0), mesh.bounds.mean(axis=0), cap=True
            ).volume
            for way in (1, -1)
        ]
        assert halves[0] == pytest.approx(halves[1], rel=1e-5)


def test_the_relief_stands_in_the_bench_where_its_points_say() -> None:
    """Rays from the front meet the fronts at the depth of each point that lies on one."""
    spec, bench = TWO, build(TWO)
    carving = carving_of(spec)
    assert carving is not None
    picture = carving.picture
    found = 0
    for drawer in drawers(spec):
        part = bench.part(f"{drawer.name}_front")
        mesh = exported(part)
        for spot in spots_of(carving.pattern, picture.width, picture.height, carving.depth):
            x, z = picture.x_low + spot.at[0], picture.z_low + spot.at[1]
            inside = drawer.x_low + 1 < x < drawer.x_high - 1
            if not inside or not drawer.z_low + 1 < z < drawer.z_high - 1:
                continue
            at = [(x, -1000.0, z)]
            hits = mesh.ray.intersects_location(at, [(0, 1, 0)], multiple_hits=True)[0]
            assert -hits[:, 1].min() == pytest.approx(drawer.face - spot.at[2], abs=1e-3)
            found += 1
    assert found >= 8


@pytest.mark.parametrize("edge", ["top edge", "bottom edge"])
@pytest.mark.parametrize("radius", [6.35, 10.0])
def test_a_finger_groove_is_a_quarter_round(edge: str, radius: float) -> None:
    """1096 x 256 x 18 less π r² / 4 x 1096, but for the chords of its arc."""
    spec = set_values(ONE, {"carving": "plain"})
    spec = set_values(spec, {"finger_groove": edge})
    spec = set_values(spec, {"finger_radius": radius})
    part = front(spec, drawers(spec)[0].name)
    mesh = exported(part)
    cove = math.pi * radius**2 / 4 * 1096
    taken = 5_050_368 - mesh.volume
    chords = math.pi * radius / 2 * CHORD_ERROR * 1096
    assert cove - chords < taken < cove * (1 + 1e-6)
    # It lies behind, along the edge that was asked for.
    high = mesh.bounds[1]
    middle = trimesh.intersections.slice_mesh_plane(
        mesh, (0, 0, 1 if edge == "top edge" else -1), mesh.bounds.mean(axis=0), cap=True
    )
    assert 1096 * 128 * 18 - middle.volume == pytest.approx(taken, rel=1e-4)
    behind = trimesh.intersections.slice_mesh_plane(
        mesh, (0, 1, 0), (0, high[1] - radius, 0), cap=True
    )
    assert 1096 * 256 * radius - behind.volume == pytest.approx(taken, rel=1e-4)
