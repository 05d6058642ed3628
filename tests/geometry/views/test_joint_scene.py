"""What a joint makes of its parts, and how they are cut short round it, by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from geometry.cuts.cut import Blank
from geometry.cuts.groove import Groove
from geometry.cuts.saw import SawCut
from geometry.design.joint import Contact, Joint
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME, Frame
from geometry.solids.cutting import placed
from geometry.views.breaks import broken
from geometry.views.joint_scene import faces_made, joint_scene, made_by, without
from geometry.views.look import look_all
from geometry.views.view import FRONT, PLAN

GROOVE = Groove(300.0, 320.0, 0.0, 100.0, 8.0)
BOARD = Part(
    "board",
    "Board",
    "board",
    "ash",
    Shape(
        Blank(1000.0, 100.0, 20.0),
        (SawCut("end cut", (980.0, 0.0, 0.0), (1.0, 0.0, 0.0)), GROOVE),
    ),
    BENCH_FRAME,
)
SHELF = Part(
    "shelf",
    "Shelf",
    "shelf",
    "ash",
    Shape(Blank(100.0, 400.0, 20.0), ()),
    Frame((300.0, 0.0, 8.0), (0, 1, 0), (0, 0, -1), (-1, 0, 0)),
)
FLOOR = ((300.0, 0.0, 8.0), (320.0, 0.0, 8.0), (320.0, 100.0, 8.0), (300.0, 100.0, 8.0))
HOUSED = Joint(
    "housed",
    "housing",
    ("board", "shelf"),
    0.0,
    (GROOVE,),
    (),
    (),
    (Contact(FLOOR, (0.0, 0.0, -1.0), 0.0),),
)


def test_a_groove_makes_a_floor_and_two_walls():
    """20 wide, 100 long, 8 deep: a floor of 2000 looking to the face side, -z, and two walls of
    800 looking at each other."""
    _, normals, areas = faces_made(BOARD, without(BOARD.shape, (GROOVE,)))
    found = {(-1.0, 0.0, 0.0): 0.0, (1.0, 0.0, 0.0): 0.0, (0.0, 0.0, -1.0): 0.0}
    for normal, area in zip(normals.round(6).tolist(), areas.tolist(), strict=True):
        found[tuple(normal)] += area
    assert found == pytest.approx(
        {(-1.0, 0.0, 0.0): 800.0, (1.0, 0.0, 0.0): 800.0, (0.0, 0.0, -1.0): 2000.0}
    )


def test_an_edge_in_two_pieces_is_no_new_edge():
    """A groove across the first one's end, in its middle, splits an edge that the other bounds: the
    rest of that edge was there before, wherever the kernel puts points on it."""
    other = Groove(500.0, 700.0, 40.0, 60.0, 8.0)
    both = replace(BOARD, shape=Shape(BOARD.shape.blank, (*BOARD.shape.cuts, other)))
    corners, _ = made_by(both, (other,))
    assert corners[:, 0].min() == pytest.approx(500.0)
    assert corners[:, 0].max() == pytest.approx(700.0)


def test_a_groove_makes_eight_corners_and_ten_edges():
    """Four at the mouth and four at the floor; the four sides of the floor, two at the mouth (its
    ends run out in the edges), and four upright ones."""
    corners, edges = made_by(BOARD, (GROOVE,))
    assert sorted(map(tuple, corners.round(6).tolist())) == [
        (x, y, z) for x in (300.0, 320.0) for y in (0.0, 100.0) for z in (0.0, 8.0)
    ]
    assert len(edges) == 10


def test_a_saw_cut_from_corner_to_corner_makes_edges_though_no_corner():
    """A wedge: the plane goes through two edges of the blank, so no corner is new."""
    size = np.hypot(60.0, 10.0)
    cut = SawCut("slope", (0.0, 0.0, 10.0), (-10.0 / size, 0.0, 60.0 / size * -1.0))
    blank = Blank(60.0, 20.0, 10.0)
    # Everything on the side of z = 10 - x / 6 that the face side lies on goes.
    wedge = Part("wedge", "Wedge", "wedge", "ash", Shape(blank, (cut,)), BENCH_FRAME)
    corners, edges = made_by(wedge, (cut,))
    assert len(corners) == 4
    assert len(edges) == 2


def test_parts_are_cut_short_beside_the_joint_and_only_there():
    scene = joint_scene(HOUSED, {"board": BOARD, "shelf": SHELF})
    board, shelf = (placed(one.part) for one in scene.both)
    assert 300.0 - 70.0 < board.low[0] < 300.0 - 10.0
    assert 320.0 + 10.0 < board.high[0] < 320.0 + 70.0
    assert (board.low[1], board.high[1]) == (0.0, 100.0)  # across, it is shown whole
    assert len(scene.first.breaks) == 2
    assert shelf.low[2] > -90.0  # of 400 mm
    assert len(scene.second.breaks) == 1
    whole = placed(BOARD).vertices
    kept = {tuple(p) for p in board.vertices.round(6).tolist()}
    assert {tuple(p) for p in scene.first.corners.round(6).tolist()} <= kept
    assert len(whole) == 16


def test_a_long_run_is_shown_from_one_end():
    groove = Groove(0.0, 1000.0, 40.0, 52.0, 8.0)
    board = Part(
        "board", "Board", "board", "ash", Shape(Blank(1000.0, 100.0, 20.0), (groove,)), BENCH_FRAME
    )
    sheet = Part(
        "sheet",
        "Sheet",
        "sheet",
        "MDF",
        Shape(Blank(1000.0, 300.0, 12.0), ()),
        Frame((0.0, 52.0, 8.0), (1, 0, 0), (0, 0, -1), (0, 1, 0)),
        solid_timber=False,
    )
    floor = ((0.0, 40.0, 8.0), (1000.0, 40.0, 8.0), (1000.0, 52.0, 8.0), (0.0, 52.0, 8.0))
    joint = Joint(
        "grooved",
        "groove",
        ("board", "sheet"),
        0.0,
        (groove,),
        (),
        (),
        (Contact(floor, (0.0, 0.0, -1.0), 0.0),),
    )
    scene = joint_scene(joint, {"board": board, "sheet": sheet})
    for one in scene.both:
        solid = placed(one.part)
        assert solid.low[0] == 0.0  # the left end
        assert solid.high[0] < 150.0


def test_of_two_ends_alike_that_in_front_is_shown():
    """The same joint running from front to back: the front lies at the least y."""
    groove = Groove(0.0, 1000.0, 40.0, 52.0, 8.0)
    frame = Frame((0.0, -1000.0, 0.0), (0, 1, 0), (-1, 0, 0), (0, 0, 1))
    board = Part(
        "board", "Board", "board", "ash", Shape(Blank(1000.0, 100.0, 20.0), (groove,)), frame
    )
    sheet = Part(
        "sheet",
        "Sheet",
        "sheet",
        "MDF",
        Shape(Blank(1000.0, 300.0, 12.0), ()),
        Frame((-40.0, -1000.0, 8.0), (0, 1, 0), (0, 0, -1), (-1, 0, 0)),
        solid_timber=False,
    )
    corners = ((0.0, 40.0, 8.0), (1000.0, 40.0, 8.0), (1000.0, 52.0, 8.0), (0.0, 52.0, 8.0))
    floor = tuple(frame.to_bench(corner) for corner in corners)
    contact = Contact(floor, (0.0, 0.0, -1.0), 0.0)
    names = ("board", "sheet")
    joint = Joint("grooved", "groove", names, 0.0, (groove,), (), (), (contact,))
    for one in joint_scene(joint, {"board": board, "sheet": sheet}).both:
        solid = placed(one.part)
        assert solid.low[1] == pytest.approx(-1000.0)
        assert solid.high[1] < -850.0


def test_lines_at_which_a_part_goes_on_are_told_from_its_edges():
    scene = joint_scene(HOUSED, {"board": BOARD, "shelf": SHELF})
    (linework,) = look_all((scene.first.part,), (PLAN,))
    found = broken(linework, (scene.first,))
    low, high = placed(scene.first.part).low[0], placed(scene.first.part).high[0]
    assert sorted(set(found.ends[:, 0].round(4))) == pytest.approx([low, high])
    real = found.linework.segments
    upright = np.isclose(real[:, 0], real[:, 2])
    assert not np.isclose(real[upright][:, 0], low).any()
    # The whole part, which nothing cuts short, has no such lines.
    (whole,) = look_all((SHELF,), (FRONT,))
    assert not len(broken(whole, (scene.second,)).ends) or scene.second.breaks
