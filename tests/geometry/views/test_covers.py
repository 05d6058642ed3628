"""Which solids hide as one convex piece, worked by hand."""

from __future__ import annotations

import pytest

from geometry.cuts.removal import HalfSpace, Prism
from geometry.primitives.frame import unit
from geometry.primitives.path import Path
from geometry.solids.cutting import placed
from geometry.views.covers import covers_of
from geometry.views.scene import scene_of
from geometry.views.view import END_RIGHT, FRONT, PLAN
from tests.random_assemblies import part, stopped_housing

BOARD = (100.0, 30.0, 20.0)
VIEWS = (FRONT, PLAN, END_RIGHT)


def covers(*removed):
    """Sides and whether the surface lies over them once, from the front, above and the end."""
    scene = scene_of([placed(part("board", BOARD, removed))], VIEWS)
    found = covers_of(scene.rims, len(VIEWS))
    return found.count.tolist(), found.single.tolist()


def test_a_board_covers_a_rectangle_in_every_view():
    assert covers() == ([4, 4, 4], [True, True, True])


def test_a_sawn_corner_adds_a_side_where_it_is_seen_edge_on():
    assert covers(HalfSpace((90, 30, 0), unit((1, 1, 0)))) == ([4, 5, 4], [True] * 3)


@pytest.mark.parametrize("z_low", [13.0, -1.0])
def test_a_pocket_toward_or_away_from_the_viewer_leaves_a_board_its_outline(z_low):
    housing = stopped_housing(60.0, 10.0, 8.0, z_low, z_low + 8.0)
    sides, single = covers(housing)
    assert sides[1:] == [4, 4]
    assert single[1:] == [True, True]


def test_a_mouth_in_the_outline_leaves_no_cover():
    groove = Prism(Path.rectangle(-1, 20, 101, 31), 8.0, 14.0)
    sides, _ = covers(groove)
    # From above the cheeks lie twice over the groove and once beside it; from the end it is open.
    assert sides == [4, 0, 0]


def test_two_leaves_of_one_outline_cover_it_twice():
    # Sawn in two through the thickness: from above the lower leaf lies behind the upper one.
    slit = Prism(Path.rectangle(-1, -1, 101, 31), 8.0, 14.0)
    sides, single = covers(slit)
    assert sides == [0, 4, 0]
    assert single == [False, False, False]


@pytest.mark.parametrize("depth", [5.0, 15.0])
def test_a_notched_corner_is_no_cover_from_above(depth):
    notch = Prism(Path.rectangle(80, 30 - depth, 101, 31), -1.0, 21.0)
    assert covers(notch) == ([4, 0, 4], [True, False, True])
