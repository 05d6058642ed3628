"""Cut faces by hand, and against trimesh's section of the same triangles."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
import shapely
import trimesh

from geometry.bench.build import build
from geometry.cuts.removal import HalfSpace, Prism
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Frame, Vec3, cross, unit
from geometry.primitives.path import Path
from geometry.solids.cutting import placed
from geometry.solids.section import cut_region
from geometry.solids.solid import PlacedSolid
from tests.judges.inside import inside
from tests.random_assemblies import box, part
from tests.random_benches import random_spec

_SIZE = (200.0, 80.0, 20.0)


def level(z: float) -> Frame:
    return Frame((0.0, 0.0, z), X_AXIS, Y_AXIS, Z_AXIS)


def judged_area(solid: PlacedSolid, plane: Frame) -> float:
    """Area of the section: trimesh finds its lines, shapely the faces between them, and winding
    numbers which of those are wood."""
    mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
    lines = trimesh.intersections.mesh_plane(mesh, np.array(plane.z_axis), np.array(plane.origin))
    if not len(lines):
        return 0.0
    axes = np.array((plane.x_axis, plane.y_axis))
    flat = np.round((lines - plane.origin) @ axes.T, 7)
    faces = shapely.get_parts(shapely.polygonize(list(shapely.linestrings(flat))))
    if not len(faces):
        return 0.0
    points = np.array([face.representative_point().coords[0] for face in faces])
    wood = inside(solid, points @ axes + plane.origin)
    return float(shapely.area(faces)[wood].sum())


def test_a_board_cut_square_and_askew_by_hand():
    board = placed(box("board", (0.0, 0.0, 0.0), _SIZE))
    across = Frame((50.0, 0.0, 0.0), Y_AXIS, Z_AXIS, X_AXIS)
    assert cut_region(board, across).area == pytest.approx(80.0 * 20.0)
    assert cut_region(board, across).bounds == pytest.approx((0.0, 0.0, 80.0, 20.0))
    # At 60 degrees to the length through the thickness: 80 wide, 20 / cos 30 long.
    lean = math.radians(30.0)
    normal = (math.cos(lean), 0.0, math.sin(lean))
    askew = Frame((100.0, 0.0, 10.0), Y_AXIS, cross(normal, Y_AXIS), normal)
    assert cut_region(board, askew).area == pytest.approx(80.0 * 20.0 / math.cos(lean))


def test_a_hole_is_a_hole_and_two_legs_are_two_faces():
    hole = Prism(Path.rectangle(60.0, 20.0, 100.0, 60.0), -1.0, 30.0)
    board = placed(part("board", _SIZE, (hole,)))
    region = cut_region(board, level(10.0))
    assert region.area == pytest.approx(200.0 * 80.0 - 40.0 * 40.0)
    assert [len(one.interiors) for one in region.geoms] == [1]
    notch = Prism(Path.rectangle(60.0, 20.0, 201.0, 60.0), -1.0, 30.0)
    fork = placed(part("fork", _SIZE, (notch,)))
    across = Frame((150.0, 0.0, 0.0), Y_AXIS, Z_AXIS, X_AXIS)
    assert sorted(one.area for one in cut_region(fork, across).geoms) == pytest.approx(
        [400.0, 400.0]
    )


def test_a_plane_beside_the_wood_or_in_its_face_cuts_nothing():
    board = placed(box("board", (0.0, 0.0, 0.0), _SIZE))
    for z in (-1.0, 0.0, 20.0, 21.0):
        assert cut_region(board, level(z)).is_empty


def test_a_plane_in_the_floor_of_a_housing_cuts_only_beside_it():
    """At the depth of the floor there is wood above and below only outside the housing."""
    housing = Prism(Path.rectangle(60.0, -1.0, 100.0, 81.0), 12.0, 30.0)
    board = placed(part("board", _SIZE, (housing,)))
    region = cut_region(board, level(12.0))
    assert region.area == pytest.approx(200.0 * 80.0 - 40.0 * 80.0)
    assert cut_region(board, level(11.9)).area == pytest.approx(200.0 * 80.0)
    # Through the arris of a bevel that starts half way up.
    bevel = HalfSpace((0.0, 0.0, 10.0), unit((-1.0, 0.0, 1.0)))
    bevelled = placed(part("bevelled", _SIZE, (bevel,)))
    assert cut_region(bevelled, level(10.0)).area == pytest.approx(200.0 * 80.0)


@pytest.mark.parametrize("seed", range(4))
def test_sections_of_benches_have_the_area_that_others_find(seed):
    dice = random.Random(seed)
    bench = build(random_spec(seed))
    solids = [placed(one) for one in bench.parts]
    low = np.min([one.low for one in solids], axis=0)
    high = np.max([one.high for one in solids], axis=0)
    cut = 0
    for _ in range(6):
        normal = unit(tuple(dice.gauss(0.0, 1.0) for _ in range(3)))
        right = unit(cross(normal, (0.3, 0.5, 0.8)))
        origin: Vec3 = tuple(dice.uniform(a, b) for a, b in zip(low, high, strict=True))
        plane = Frame(origin, right, cross(normal, right), normal)
        for solid in solids:
            region = cut_region(solid, plane)
            assert region.is_valid
            assert region.area == pytest.approx(judged_area(solid, plane), abs=0.01)
            cut += not region.is_empty
    assert cut > 10
