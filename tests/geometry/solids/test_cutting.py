"""Solids of shapes: volumes by hand, closed surfaces by trimesh, edges and panels by counting.

trimesh shares no code with the solid kernel; it reads vertices and triangles only.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Hull, Prism
from geometry.design.part import Shape
from geometry.primitives.frame import Frame, unit
from geometry.primitives.path import HALF_TURN_BULGE, Path
from geometry.solids import cutting
from geometry.solids.cutting import placed, solid_of
from geometry.solids.kernel import cutters
from geometry.solids.solid import Solid
from shared.errors import CannotBuild
from shared.tolerances import CHORD_ERROR
from tests.random_assemblies import Waste, bars, blocks, part, stopped_housing

BOARD = (600.0, 200.0, 20.0)


def judged(solid):
    """The same triangles as a trimesh mesh, in double precision."""
    return trimesh.Trimesh(solid.vertices, solid.triangles, process=False, validate=False)


def edge_count(solid, *, smooth=False):
    return int((solid.smooth == smooth).sum())


def test_a_blank_is_a_box():
    solid = solid_of(part("board", BOARD).shape)
    assert solid.volume == pytest.approx(600 * 200 * 20)
    assert len(solid.vertices) == 8
    assert len(solid.edges) == 12
    assert len(solid.panels) == 6
    assert solid.vertices.min(axis=0) == pytest.approx((0, 0, 0))
    assert solid.vertices.max(axis=0) == pytest.approx(BOARD)


@pytest.mark.parametrize(
    ("removed", "taken", "edges"),
    [
        # A 45° mitre over the end takes half of a 20 x 20 x 200 prism; still six faces.
        ((HalfSpace((600, 0, 20), unit((1, 0, -1))),), 20 * 20 * 200 / 2, 12),
        # A rebate 8 x 6 along the back edge: an L section has eight faces and 18 edges.
        ((Prism(Path.rectangle(-1, 192, 601, 201), 14.0, 21.0),), 8 * 6 * 600, 18),
        # A closed pocket 50 x 30 x 5: twelve more edges.
        ((Prism(Path.rectangle(100, 50, 150, 80), 15.0, 21.0),), 50 * 30 * 5, 24),
        # A corner sawn off 30 x 30 x 20 through all three faces: a tetrahedron, volume / 6.
        (
            (Hull(((600, 200, 20), (570, 200, 20), (600, 170, 20), (600, 200, 0))),),
            30 * 30 * 20 / 6,
            14,
        ),
        # Two equal cuts take no more than one, and one beside the board nothing.
        ((Prism(Path.rectangle(100, 50, 150, 80), 15.0, 21.0),) * 2, 50 * 30 * 5, 24),
        ((Prism(Path.rectangle(100, 250, 150, 280), -1.0, 21.0),), 0.0, 12),
    ],
)
def test_volumes_and_edges_by_hand(removed, taken, edges):
    solid = solid_of(part("board", BOARD, removed).shape)
    assert solid.volume == pytest.approx(600 * 200 * 20 - taken, rel=1e-12)
    assert edge_count(solid) == edges
    assert edge_count(solid, smooth=True) == 0


def test_a_stopped_housing_has_a_round_end_within_the_chord_error():
    width, reach, depth = 12.7, 150.0, 7.0
    removed = (stopped_housing(reach, 60.0, width, 13.0, 21.0),)
    solid = solid_of(part("board", BOARD, removed).shape)
    radius = width / 2
    true = depth * (width * (reach - radius) + math.pi * radius**2 / 2)
    taken = 600 * 200 * 20 - solid.volume
    # Chords cut inside the arc: less is taken, at most the chord error along the half circle.
    assert true - depth * math.pi * radius * CHORD_ERROR < taken < true
    # The wall runs on smoothly from straight to round, so only the rims and the open end show:
    # two straight rims above and two below, the chords' rims, two upright corners at the end
    # face, the floor's end; and the board's edge at the end is cut in two.
    chords = edge_count(solid, smooth=True) - 1
    assert chords >= 8
    assert edge_count(solid) == 12 + 4 + 2 * chords + 2 + 1 + 1


def test_two_housings_have_twice_the_edges_of_one():
    one = stopped_housing(150.0, 60.0, 12.7, 13.0, 21.0)
    other = stopped_housing(220.0, 120.0, 12.7, 11.0, 21.0)
    plain, single, double = (
        solid_of(part("board", BOARD, removed).shape) for removed in ((), (one,), (one, other))
    )
    for smooth in (True, False):
        counts = [edge_count(solid, smooth=smooth) for solid in (plain, single, double)]
        assert counts[2] - counts[1] == counts[1] - counts[0] > 0


def test_a_line_that_meets_an_arc_at_a_corner_keeps_its_edge():
    # A half round of radius 10 set into the edge: both of its ends meet the edge squarely.
    path = Path(((290, 205, 0), (290, 200, HALF_TURN_BULGE), (310, 200, 0), (310, 205, 0)))
    solid = solid_of(part("board", BOARD, (Prism(path, -1.0, 21.0),)).shape)
    upright = np.abs(np.diff(solid.vertices[solid.edges], axis=1)[:, 0, 2]) > 19.0
    assert int((upright & ~solid.smooth).sum()) == 4 + 2


@pytest.mark.parametrize("build", [blocks, bars])
@pytest.mark.parametrize("seed", range(8))
def test_every_solid_is_closed_turned_outward_and_as_large_as_trimesh_finds_it(build, seed):
    for piece in build(seed):
        solid = solid_of(piece.shape)
        mesh = judged(solid)
        assert mesh.is_watertight
        assert mesh.is_winding_consistent
        assert mesh.volume == pytest.approx(solid.volume, rel=1e-9)
        assert mesh.volume > 0


@pytest.mark.parametrize("build", [blocks, bars])
@pytest.mark.parametrize("seed", range(8))
def test_panels_cover_the_surface_once_and_are_convex(build, seed):
    for piece in build(seed):
        solid = solid_of(piece.shape)
        corners = solid.vertices[solid.panels]
        halves = [
            np.cross(corners[:, k + 1] - corners[:, 0], corners[:, k + 2] - corners[:, 0]) / 2
            for k in (0, 1)
        ]
        area = sum(np.einsum("ij,ij->i", half, solid.panel_normals) for half in halves)
        assert area.sum() == pytest.approx(judged(solid).area, rel=1e-9)
        for k in range(4):
            before, here, after = (corners[:, (k + step) % 4] for step in (3, 0, 1))
            turn = np.einsum("ij,ij->i", np.cross(here - before, after - here), solid.panel_normals)
            assert turn.min() >= -1e-6


@pytest.mark.parametrize("build", [blocks, bars])
@pytest.mark.parametrize("seed", range(8))
def test_edge_normals_are_those_of_the_faces_that_trimesh_finds_beside_the_edge(build, seed):
    for piece in build(seed):
        solid = solid_of(piece.shape)
        mesh = judged(solid)
        beside = {
            tuple(sorted(edge)): faces
            for edge, faces in zip(
                mesh.face_adjacency_edges.tolist(), mesh.face_adjacency.tolist(), strict=True
            )
        }
        for edge, normals in zip(solid.edges.tolist(), solid.edge_normals, strict=True):
            faces = beside[tuple(sorted(edge))]
            if mesh.area_faces[faces].min() < 0.1:
                continue  # a sliver's own normal says little; the solid takes its whole face's
            found = mesh.face_normals[faces]
            assert min(
                np.abs(found - normals).max(), np.abs(found[::-1] - normals).max()
            ) == pytest.approx(0.0, abs=1e-6)


@given(
    slope=st.floats(-0.9, 0.9),
    at=st.floats(100.0, 500.0),
    depth=st.floats(0.5, 19.5),
    width=st.floats(5.0, 60.0),
)
@settings(max_examples=30, deadline=None)
def test_a_saw_cut_and_a_trench_take_what_arithmetic_says(slope, at, depth, width):
    # The cut runs through the middle of the thickness at x = at; the trench lies before it.
    removed = (
        HalfSpace((at, 0, 10), unit((1, 0, slope))),
        Prism(Path.rectangle(20, -1, 20 + width, 201), 20 - depth, 21),
    )
    solid = solid_of(part("board", BOARD, removed).shape)
    assert solid.volume == pytest.approx(200 * (20 * at - width * depth), rel=1e-9)


def test_nothing_left_is_said_in_the_parts_name():
    gone = part("shelf", BOARD, (HalfSpace((-1, 0, 0), (1, 0, 0)),))
    with pytest.raises(CannotBuild, match=r"Shelf: .*waste.* leave nothing"):
        placed(gone)


def test_equal_shapes_share_one_solid_and_stand_where_their_frames_say():
    frame = Frame.of((10, 20, 30), (0, 1, 0), (-1, 0, 0))
    here, there = part("a", BOARD), part("b", BOARD, frame=frame)
    assert placed(here).solid is placed(there).solid
    assert placed(there).low == pytest.approx((10 - 200, 20, 30))
    assert placed(there).high == pytest.approx((10, 20 + 600, 50))
    for local, stands in zip(placed(there).solid.vertices, placed(there).vertices, strict=True):
        assert tuple(stands) == pytest.approx(frame.to_bench(tuple(local)))


def test_a_solid_does_not_tell_what_was_cut_before_it():
    # Same design, same bytes: the order of triangles must not hang on the age of the cutters.
    boards = [
        part("board", BOARD, (stopped_housing(150.0, y, 12.0, 13.0, 21.0), HalfSpace((590, 0, 0),
             unit((1, 0, slope))))) for y in (40.0, 90.0) for slope in (0.2, 0.3)
    ]  # fmt: skip
    forget()
    cutters._rounded.cache_clear()
    cutters._prism.cache_clear()
    first = [solid_of(board.shape) for board in boards]  # each prism younger than its blank
    forget()
    again = [solid_of(board.shape) for board in reversed(boards)][::-1]  # and now older
    for one, other in zip(first, again, strict=True):
        assert one is not other
        for name in ("vertices", "triangles", "edges", "edge_normals", "panels", "volume"):
            assert np.array_equal(getattr(one, name), getattr(other, name)), name


def forget():
    for kept in (cutting.body_of, cutting.solid_of, cutting.placed_shape):
        kept.cache_clear()


def test_arrays_cannot_be_changed():
    solid = placed(part("a", BOARD))
    for array in (solid.vertices, solid.solid.edges, solid.solid.panels, solid.low):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 0


def test_a_round_stays_round_however_many_were_cut_meanwhile() -> None:
    """A hole is cut again long after its cutter was made; its chords are no arrises."""

    def holed(length: float, radius: float) -> Solid:
        path = Path(((40.0 - radius, 50.0, 1.0), (40.0 + radius, 50.0, 1.0)))
        shape = Shape(Blank(length, 100.0, 20.0), (Waste((Prism(path, -5.0, 25.0),)),))
        return solid_of(shape)

    first = holed(100.0, 8.0)
    assert first.smooth.sum() > 8
    for k in range(600):  # more than are remembered
        holed(100.0, 9.0 + 0.01 * k)
    assert holed(120.0, 8.0).smooth.sum() == first.smooth.sum()
