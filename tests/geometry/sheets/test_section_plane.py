"""Planes that stand at any angle: what they cut, how they are told, and what a hand does to them.

Areas are judged by trimesh, which cuts the meshes by itself; sizes of a leg and of a board that are
cut askew are worked by hand.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.cutting_plane import FIRST_TURN, Plane, Way, normal_of, through
from geometry.primitives.frame import Frame, dot, norm
from geometry.sheets.layout import Layout
from geometry.sheets.section_plane import (
    key_view_of,
    reach_of,
    standing_at,
    standing_of,
    told,
    turn_of_line,
    view_of,
)
from geometry.sheets.section_sheet import section_sheet
from geometry.solids.cutting import placed
from geometry.views.sections import section
from shared.paper import PAPERS
from tests.random_assemblies import part
from tests.random_benches import random_spec

PLAIN = build(default_spec())
LAYOUT = Layout(PAPERS["A4"], frame=False)
turns = st.floats(-89.9, 90.0)


def cut_by(bench, plane):
    view = view_of(bench, plane.way, plane.turn)
    return section(bench.parts, view, plane.at * dot(view.toward, plane.normal))


@pytest.mark.parametrize("way", Way)
@given(turn=turns)
def test_the_view_looks_square_at_the_plane(way, turn):
    """Its axes are a right-handed frame, and the key view sees the plane as a line."""
    view, normal = view_of(PLAIN, way, turn), normal_of(way, turn)
    assert abs(dot(view.toward, normal)) == pytest.approx(1.0)
    axes = np.array([view.right, view.up, view.toward])
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.cross(axes[0], axes[1]) == pytest.approx(axes[2], abs=1e-12)
    assert dot(normal, key_view_of(PLAIN, way).toward) == pytest.approx(0.0, abs=1e-12)
    assert norm(normal) == pytest.approx(1.0)


@pytest.mark.parametrize("way", Way)
@given(turn=turns)
def test_a_line_gives_back_its_turn(way, turn):
    """Drawn either way round."""
    view, normal = key_view_of(PLAIN, way), normal_of(way, turn)
    run = (-dot(normal, view.up), dot(normal, view.right))
    for way_round in (run, (-run[0], -run[1])):
        found = turn_of_line(way, view, way_round)
        assert -90.0 < found <= 90.0
        assert abs((found - turn + 90.0) % 180.0 - 90.0) < 1e-6


@pytest.mark.parametrize("seed", range(6))
def test_what_an_oblique_plane_cuts_is_what_trimesh_cuts(seed):
    bench = build(random_spec(seed))
    dice = np.random.default_rng(seed)
    judged = 0
    for way in Way:
        turn = float(dice.uniform(-80.0, 80.0))
        low, high = reach_of(bench, way, turn)
        plane = Plane(way, float(dice.uniform(low, high)), turn)
        areas = {face.owner: face.region.area for face in cut_by(bench, plane).faces}
        for index, piece in enumerate(bench.parts):
            solid = placed(piece)
            mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
            ours, theirs = areas.get(index, 0.0), area_cut(mesh, plane)
            assert ours == pytest.approx(theirs, rel=1e-6, abs=1e-3), (piece.name, plane)
            judged += ours > 0.0
    assert judged > 4


def area_cut(mesh: trimesh.Trimesh, plane: Plane) -> float:
    """mm² between the lines in which the plane meets the mesh, each run with wood at its left."""
    normal = np.array(plane.normal)
    lines, faces = trimesh.intersections.mesh_plane(
        mesh, normal, normal * plane.at, return_faces=True
    )
    if not len(lines):
        return 0.0
    runs = lines[:, 1] - lines[:, 0]
    outward = np.cross(runs, normal)
    turned = np.einsum("ij,ij->i", outward, mesh.face_normals[faces]) < 0.0
    lines[turned] = lines[turned][:, ::-1]
    crosses = np.cross(lines[:, 0], lines[:, 1]) @ normal
    return abs(float(crosses.sum()) / 2.0)


def test_a_board_cut_at_45_degrees_shows_its_thickness_times_root_2():
    """A case with no flare: its end panel, 20 mm thick, cut upright at 45 degrees."""
    spec = set_values(default_spec(), {"flare": 0.0, "board_thickness": 20.0, "chamfer": 0.0})
    bench = build(spec)
    left, back = reach_of(bench, Way.ACROSS)[0], reach_of(bench, Way.ALONG)[1]
    plane = through(Way.ASKEW, 45.0, (left + 10.0, back - 200.0, 0.0))
    (face,) = (
        one for one in cut_by(bench, plane).faces if bench.parts[one.owner].kind == "end panel"
    )
    u0, _, u1, _ = face.region.bounds
    assert u1 - u0 == pytest.approx(20.0 * math.sqrt(2.0))


def test_a_leaning_leg_cut_square_to_its_length_shows_its_own_section():
    """Of 45 x 30, leaning 20 degrees in the front view: cut square to it 45 x 30, and level 45 as
    wide by 30 / cos 20 (by hand)."""
    cos, sin = math.cos(math.radians(20.0)), math.sin(math.radians(20.0))
    frame = Frame((100.0, -60.0, 400.0), (-sin, 0.0, -cos), (0.0, 1.0, 0.0), (cos, 0.0, -sin))
    leg = part("leg", (400.0, 45.0, 30.0), frame=frame)
    middle = frame.to_bench((200.0, 22.5, 15.0))
    for turn, area in ((20.0, 45.0 * 30.0), (0.0, 45.0 * 30.0 / cos)):
        plane = through(Way.LEVEL, turn, middle)
        view = view_of(PLAIN, plane.way, plane.turn)
        (face,) = section((leg,), view, plane.at * dot(view.toward, plane.normal)).faces
        assert face.region.area == pytest.approx(area)
        low, _, high, _ = face.region.bounds
        assert high - low == pytest.approx(area / 45.0)


@pytest.mark.parametrize(
    ("plane", "words"),
    [
        # From a bench of which the left end is at x = 0, the right at 1200 and the back at y = 0.
        (Plane(Way.ACROSS, 600.0), "Cut across, {600 mm} from the left end"),
        (Plane(Way.LEVEL, 180.0), "Cut level, {180 mm} above the floor"),
        # Through x = 300 on the floor, over to the right by 30 degrees.
        (
            through(Way.ACROSS, -30.0, (300.0, 0.0, 0.0)),
            "Cut leaning {30 deg} to the right, on the floor {300 mm} from the left end",
        ),
        # Through z = 200 at the left end, falling to the right.
        (
            through(Way.LEVEL, 20.0, (0.0, 0.0, 200.0)),
            "Cut falling {20 deg} to the right, at the left end {200 mm} above the floor",
        ),
        # Through a point 50 in front of the back on the floor, its top further forward.
        (
            through(Way.ALONG, 10.0, (0.0, -50.0, 0.0)),
            "Cut leaning {10 deg} forward, on the floor {50 mm} in front of the back",
        ),
        # Through the left end's line 100 in front of the back.
        (
            through(Way.ASKEW, 60.0, (0.0, -100.0, 0.0)),
            "Cut upright at {60 deg} to the length, at the left end {100 mm} in front of the back",
        ),
        (
            through(Way.ASKEW, 60.0, (700.0, 0.0, 0.0)),
            "Cut upright at {60 deg} to the length, at the back {700 mm} from the left end",
        ),
    ],
)
def test_where_a_plane_stands_is_told(plane, words):
    assert told(PLAIN, plane) == words


@pytest.mark.parametrize("way", Way)
@given(turn=st.integers(-89, 90), share=st.floats(0.2, 0.8), more=st.floats(-30.0, 30.0))
def test_a_size_given_is_the_size_told(way, turn, share, more):
    """Where the plane is still measured from the same thing."""
    low, high = reach_of(PLAIN, way, turn)
    plane = Plane(way, low + share * (high - low), float(turn))
    now = standing_of(PLAIN, plane)
    then = standing_of(PLAIN, standing_at(PLAIN, plane, now.size + more))
    if (then.manner, then.on) == (now.manner, now.on):
        assert then.size == pytest.approx(now.size + more, abs=1e-6)


@pytest.mark.parametrize("way", Way)
def test_an_end_pulled_round_catches_on_the_bench_and_on_whole_degrees(way):
    turn = FIRST_TURN[way]
    low, high = reach_of(PLAIN, way, turn)
    key = section_sheet(PLAIN, Plane(way, (low + high) / 2.0, turn), LAYOUT).key
    pivot = key.pivot
    middle = key.place.on_sheet(key.view.project(pivot))
    (x, y), _ = key.ends
    run = math.degrees(math.atan2(y - middle[1], x - middle[0]))

    def pulled(by: float, *, free: bool) -> float:
        angle = math.radians(run + by)
        at = (middle[0] + 30.0 * math.cos(angle), middle[1] + 30.0 * math.sin(angle))
        plane = key.turned_to(at, pivot, free=free)
        assert dot(plane.normal, pivot) == pytest.approx(plane.at)
        return plane.turn

    assert abs(abs(pulled(17.34, free=True) - turn) - 17.3) < 0.051
    assert pulled(33.4, free=False) == pytest.approx(round(pulled(33.4, free=False)), abs=0.5)
    back = pulled(0.9 - (45.0 if way is Way.ASKEW else 0.0), free=False)
    assert back in (0.0, 90.0)  # along an edge of the bench, or square to it
    assert key.turned_to(middle, pivot, free=False).turn == turn  # no way to go by


def test_a_plane_that_only_grazes_the_bench_is_drawn_and_can_be_taken_hold_of():
    """At the very end of its reach a leaning plane meets one edge; its line is still there."""
    for way in Way:
        for turn in (-60.0, 25.0, 90.0):
            for at in reach_of(PLAIN, way, turn):
                found = section_sheet(PLAIN, Plane(way, at, turn), LAYOUT)
                assert math.dist(*found.key.ends) >= 15.9
                assert [found.key.end_at(end) for end in found.key.ends] == [0, 1]
                assert found.key.end_at((-500.0, 0.0)) is None


def test_of_several_lines_that_an_end_nearly_follows_the_nearest_to_the_hand_is_caught():
    """Two lines of the small view, level and rising by a degree; at half a degree, 0.2 nearer to
    the level one, the hand is by the other one, and far from both by neither."""
    found = section_sheet(PLAIN, Plane(Way.LEVEL, 200.0), LAYOUT).key
    rise = 400.0 * math.tan(math.radians(1.0))
    edges = np.array([(0.0, 0.0, 400.0, 0.0), (400.0, 300.0, 800.0, 300.0 + rise)])
    key = replace(found, edges=edges)

    def caught(turn: float, far: float, v: float) -> float:
        """The turn at which an end is caught that is pulled to ``far`` from the left, ``v`` high,
        on a line so turned."""
        pivot = (far - 300.0, 0.0, v - 300.0 * math.tan(math.radians(turn)))
        plane = key.turned_to(key.place.on_sheet((far, v)), pivot, free=False)
        return abs(plane.turn)

    assert caught(0.4, 600.0, 300.0) == pytest.approx(1.0, abs=1e-3)
    assert caught(0.4, 200.0, 10.0) == pytest.approx(0.0, abs=1e-3)
    assert caught(0.6, 200.0, 10.0) == pytest.approx(0.0, abs=1e-3)
    assert caught(0.6, 600.0, 300.0) == pytest.approx(1.0, abs=1e-3)
    assert caught(7.2, 600.0, 300.0) == pytest.approx(7.0), "nothing to catch on: whole degrees"
