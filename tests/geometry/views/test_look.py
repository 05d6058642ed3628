"""Views of a few boxes and rounds, worked by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.cuts.removal import Prism
from geometry.primitives.frame import Frame
from geometry.primitives.path import HALF_TURN_BULGE, Path
from geometry.solids.cutting import placed
from geometry.views.foremost import NOTHING, Foremost
from geometry.views.look import look, look_all, look_at_part
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PART_FACE, PLAN
from shared.errors import CannotBuild
from tests.random_assemblies import box, part


def lines(linework, *, visible, owner=None):
    """The segments as a set of unordered pairs of points, rounded to a thousandth."""
    found = set()
    for segment, seen, whose in zip(
        linework.segments.tolist(), linework.visible, linework.owner, strict=True
    ):
        if seen == visible and owner in (None, whose):
            u0, v0, u1, v1 = (round(value, 3) + 0.0 for value in segment)
            found.add(frozenset({(u0, v0), (u1, v1)}))
    return found


def rectangle(u0, v0, u1, v1):
    corners = [(u0, v0), (u1, v0), (u1, v1), (u0, v1)]
    return {frozenset({a, b}) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)}


def line(u0, v0, u1, v1):
    return frozenset({(u0, v0), (u1, v1)})


@pytest.mark.parametrize(
    ("view", "outline"),
    [
        (FRONT, (0, 0, 60, 20)),
        (PLAN, (0, 0, 60, 30)),
        (END_RIGHT, (0, 0, 30, 20)),
        (END_LEFT, (-30, 0, 0, 20)),
    ],
)
def test_a_box_is_four_lines_from_every_side(view, outline):
    seen = look_all([box("a", (0, 0, 0), (60, 30, 20))], [view])[0]
    assert lines(seen, visible=True) == rectangle(*outline)
    assert lines(seen, visible=False) == set()
    assert seen.bounds() == outline


def test_a_box_behind_a_larger_one_is_hidden_and_still_drawn():
    parts = [box("front", (0, 0, 0), (100, 10, 50)), box("rear", (20, 10, 10), (60, 30, 40))]
    seen = look_all(parts, [FRONT])[0]
    assert lines(seen, visible=True) == rectangle(0, 0, 100, 50)
    assert lines(seen, visible=False, owner=1) == rectangle(20, 10, 60, 40)


def test_a_box_half_behind_shows_its_other_half():
    parts = [box("front", (0, 0, 0), (100, 10, 50)), box("rear", (80, 40, 10), (150, 60, 40))]
    seen = look_all(parts, [FRONT])[0]
    assert lines(seen, visible=True, owner=1) == {
        line(100, 10, 150, 10),
        line(150, 10, 150, 40),
        line(100, 40, 150, 40),
    }
    assert lines(seen, visible=False) == {
        line(80, 10, 100, 10),
        line(80, 10, 80, 40),
        line(80, 40, 100, 40),
    }


def test_flush_parts_that_touch_show_their_joint_once():
    parts = [box("left", (0, 0, 0), (40, 20, 50)), box("right", (40, 0, 0), (100, 20, 50))]
    seen = look_all(parts, [FRONT])[0]
    assert lines(seen, visible=False) == set()
    assert lines(seen, visible=True) == rectangle(0, 0, 40, 50) | rectangle(40, 0, 100, 50)
    assert len(seen.segments) == 7


def test_an_edge_in_a_contact_face_is_seen_where_nothing_stands_before_it():
    # A rail stands on a board, set back: in plan the board's top shows round it, and the rail's
    # lower edges, which lie in the board's top face, coincide with its upper ones.
    parts = [box("board", (0, 0, 0), (100, 60, 20)), box("rail", (0, 30, 20), (100, 50, 70))]
    plan, front = look_all(parts, [PLAN, FRONT])
    assert lines(plan, visible=False) == set()
    assert lines(plan, visible=True, owner=1) >= {line(0, 30, 100, 30), line(0, 50, 100, 50)}
    assert lines(front, visible=False) == set()
    assert line(0, 20, 100, 20) in lines(front, visible=True)
    assert len(front.segments) == 7


def test_a_tenon_inside_its_mortise_is_hidden_from_all_sides():
    mortise = Prism(Path.rectangle(20, 10, 50, 30), -1.0, 41.0)
    leg = part("leg", (80, 40, 40), (mortise,))
    tenon = box("tenon", (20, 10, 0), (50, 30, 40))
    front, plan = look_all([leg, tenon], [FRONT, PLAN])
    # From the front both hide behind the leg's cheek; in plan the tenon's end fills the mortise.
    assert lines(front, visible=True) == rectangle(0, 0, 80, 40)
    assert lines(front, visible=False) == {line(20, 0, 20, 40), line(50, 0, 50, 40)}
    assert lines(plan, visible=True) == rectangle(0, 0, 80, 40) | rectangle(20, 10, 50, 30)
    assert lines(plan, visible=False) == set()


def test_a_groove_along_an_edge_is_hidden_by_its_upper_cheek():
    # From above both cheeks have one outline; only the upper one is seen.
    groove = Prism(Path.rectangle(-1, 20, 101, 31), 8.0, 14.0)
    plan, end = look_all([part("rail", (100, 30, 20), (groove,))], [PLAN, END_RIGHT])
    assert lines(plan, visible=True) == rectangle(0, 0, 100, 30)
    assert lines(plan, visible=False) == {line(0, 20, 100, 20)}
    assert len(end.segments) == 8


def test_a_round_shows_its_outline_and_no_chords():
    # A half-round end of radius 15: from the front the end is one upright line at the outline.
    path = Path(((85, 31, 0), (85, 30, -HALF_TURN_BULGE), (85, 0, 0), (85, -1, 0), (101, -1, 0),
                 (101, 31, 0)))  # fmt: skip
    stub = part("stub", (100, 30, 20), (Prism(path, -1.0, 21.0),))
    front, plan = look_all([stub], [FRONT, PLAN])
    reach = front.bounds()[2]
    assert reach == pytest.approx(100.0, abs=0.05)
    # The straight side runs into the round without an edge where it starts.
    assert lines(front, visible=True) == rectangle(0, 0, round(reach, 3), 20)
    assert lines(front, visible=False) == set()
    arc = plan.segments[plan.segments[:, [0, 2]].max(axis=1) > 85.001]
    length = np.hypot(arc[:, 2] - arc[:, 0], arc[:, 3] - arc[:, 1]).sum()
    # chords of 0.1 mm sagitta on a radius of 15 mm: short by angle²/24 = 2.2e-3
    assert length == pytest.approx(math.pi * 15, rel=2.5e-3)


def test_a_part_alone_is_seen_in_its_own_frame():
    frame = Frame.of((500, 500, 500), (0, 0, 1), (1, 0, 0))
    board = part("board", (300, 80, 20), frame=frame)
    seen = look_at_part(board, PART_FACE)
    assert seen.bounds() == (0, -80, 300, 0)
    assert set(seen.owner.tolist()) == {0}


def test_owners_index_what_was_looked_at():
    parts = [box("a", (0, 0, 0), (10, 10, 10)), box("b", (50, 0, 0), (60, 10, 10))]
    seen = look([placed(piece) for piece in parts], FRONT)
    assert lines(seen, visible=True, owner=0) == rectangle(0, 0, 10, 10)
    assert lines(seen, visible=True, owner=1) == rectangle(50, 0, 60, 10)


def test_nothing_to_look_at():
    empty = look_all([], [FRONT, PLAN])
    assert [len(seen.segments) for seen in empty] == [0, 0]
    assert empty[0].bounds() == (0, 0, 0, 0)
    assert look_all([box("a", (0, 0, 0), (1, 1, 1))], []) == ()


def test_the_part_under_a_point_is_the_one_in_front():
    mortise = Prism(Path.rectangle(20, 10, 50, 30), -1.0, 41.0)
    parts = [
        part("pierced", (80, 40, 40), (mortise,)),
        box("below", (0, 0, -20), (80, 40, -10)),
        box("above", (60, 0, 50), (80, 40, 60)),
    ]
    foremost = Foremost(parts, PLAN)
    assert foremost.under((10, 20)) == 0
    assert foremost.under((35, 20)) == 1  # through the mortise
    assert foremost.under((70, 20)) == 2
    assert foremost.under((81, 20)) is None
    some = np.array([(10.0, 20.0), (35.0, 20.0), (70.0, 20.0), (81.0, 20.0)])
    assert foremost.at(some)[0].tolist() == [0, 1, 2, NOTHING]


def test_the_part_whose_cuts_leave_nothing_is_named():
    gone = part("shelf", (10, 10, 10), (Prism(Path.rectangle(-1, -1, 11, 11), -1, 11),))
    with pytest.raises(CannotBuild, match="Shelf"):
        look_all([box("a", (0, 0, 0), (1, 1, 1)), gone], [FRONT])
