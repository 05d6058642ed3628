"""Which changes of a shape a solid follows, and which have to be cut.  Worked by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Hollow, Prism, Removal
from geometry.design.part import Shape
from geometry.primitives.facets import Facets
from geometry.primitives.path import Path
from geometry.solids.cutting import solid_of
from geometry.solids.following import follow
from geometry.solids.solid import Solid
from tests.judges.differing import volume_apart
from tests.random_assemblies import Waste

LEAN = math.radians(30.0)


def board(length: float, *removed: Removal) -> Shape:
    return Shape(Blank(length, 100.0, 20.0), (Waste(removed),))


def slot(x: float, width: float = 20.0, depth: float = 10.0) -> Prism:
    return Prism(Path.rectangle(x, -5.0, x + width, 105.0), 20.0 - depth, 25.0)


def hole(x: float, y: float, radius: float = 8.0) -> Prism:
    return Prism(Path(((x - radius, y, 1.0), (x + radius, y, 1.0))), -5.0, 25.0)


def relief(x: float, deep: float, ridge: float = 60.0) -> Hollow:
    """Over 80 x 110 from ``x``: two facets that fall from both edges to a ridge line."""
    points = [
        (0, -5, 2),
        (80, -5, 2),
        (80, ridge, deep),
        (0, ridge, deep),
        (80, 105, 2),
        (0, 105, 2),
    ]
    facets = Facets(
        tuple((x + u, float(v), float(w)) for u, v, w in points), ((0, 1, 2, 3), (3, 2, 4, 5))
    )
    return Hollow(facets, -2.0)


def slanting_end(x: float, lean: float = LEAN) -> HalfSpace:
    return HalfSpace((x, 0.0, 0.0), (math.cos(lean), 0.0, math.sin(lean)))


def one(before: Shape, after: Shape) -> Solid | None:
    (solid,) = follow([before], [after])
    if solid is not None:
        assert volume_apart(solid, solid_of(after)) < 1e-5  # mm³, of a million
    return solid


def test_a_longer_board_with_its_slot_elsewhere() -> None:
    solid = one(board(500.0, slot(200.0)), board(650.0, slot(180.0, 30.0)))
    assert solid is not None
    assert solid.volume == pytest.approx(650 * 100 * 20 - 30 * 100 * 10)


def test_a_slot_that_moves_past_another_is_cut() -> None:
    here = board(500.0, slot(100.0), slot(200.0))
    assert one(here, board(500.0, slot(150.0), slot(200.0))) is not None
    assert one(here, board(500.0, slot(250.0), slot(200.0))) is None
    assert one(here, board(500.0, slot(190.0), slot(200.0))) is None


def test_a_slot_that_comes_out_at_the_other_face_is_cut() -> None:
    here = board(500.0, slot(100.0))
    assert one(here, board(500.0, slot(100.0, depth=11.0))) is not None
    assert one(here, board(500.0, slot(100.0, depth=21.0))) is None


def test_pockets_from_both_faces_that_break_into_one_another_are_cut() -> None:
    """No panel reaches from one to the other, so that only the order of their floors tells."""

    def pockets(deep: float) -> Shape:
        path = Path.rectangle(100.0, 20.0, 140.0, 80.0)
        return board(500.0, Prism(path, -5.0, deep), Prism(path, 12.0, 25.0))

    assert one(pockets(8.0), pockets(11.0)) is not None
    assert one(pockets(8.0), pockets(14.0)) is None


def test_a_slanting_end_goes_along_but_does_not_turn() -> None:
    here = board(500.0, slanting_end(480.0), slot(100.0))
    assert one(here, board(620.0, slanting_end(600.0), slot(140.0))) is not None
    assert one(here, board(500.0, slanting_end(480.0, LEAN + 0.01), slot(100.0))) is None


def test_a_slot_in_a_slanting_end_moves_with_it_or_is_cut() -> None:
    here = board(500.0, slanting_end(480.0), slot(470.0, 3.0))
    assert one(here, board(600.0, slanting_end(580.0), slot(570.0, 3.0))) is not None
    assert one(here, board(600.0, slanting_end(580.0), slot(571.0, 3.0))) is None


def test_a_relief_goes_along_but_is_cut_when_a_point_of_it_moves() -> None:
    here = board(500.0, relief(100.0, 6.0), slot(300.0))
    assert one(here, board(600.0, relief(140.0, 6.0), slot(330.0))) is not None
    assert one(here, board(500.0, relief(100.0, 7.0), slot(300.0))) is None
    assert one(here, board(500.0, relief(100.0, 6.0, 50.0), slot(300.0))) is None


def test_a_hole_keeps_its_round() -> None:
    here = board(500.0, hole(100.0, 50.0))
    assert one(here, board(600.0, hole(120.0, 45.0))) is not None
    assert one(here, board(500.0, hole(100.0, 50.0, 9.0))) is None


def test_holes_in_different_places_along_move_each_its_own_way() -> None:
    here = board(500.0, hole(100.0, 50.0), hole(300.0, 55.0))
    assert one(here, board(500.0, hole(100.0, 40.0), hole(300.0, 60.0))) is not None
    beside = board(500.0, hole(100.0, 30.0), hole(105.0, 70.0))
    assert one(beside, board(500.0, hole(100.0, 30.0), hole(110.0, 70.0))) is None


def test_another_number_of_cuts_is_another_form() -> None:
    assert one(board(500.0, slot(100.0)), board(500.0, slot(100.0), slot(200.0))) is None


def test_several_shapes_at_once_each_get_their_own() -> None:
    before = [board(500.0, slot(100.0)), board(300.0, hole(50.0, 50.0)), board(400.0)]
    after = [board(510.0, slot(90.0)), board(300.0, hole(50.0, 50.0, 9.0)), board(410.0)]
    first, second, third = follow(before, after)
    assert first is not None
    assert first.volume == pytest.approx(510 * 100 * 20 - 20 * 100 * 10)
    assert second is None
    assert third is not None
    assert third.volume == pytest.approx(410 * 100 * 20)


def test_a_face_whose_triangles_would_fold_over_is_cut() -> None:
    """From one corner of its face to the other: some triangle between is turned over."""
    assert one(board(500.0, hole(30.0, 30.0)), board(500.0, hole(470.0, 70.0))) is None


def tail(y: float, width: float, slope: float = 3.0) -> Prism:
    """A notch in the end, wider at its bottom than at its mouth."""
    mouth = ((-5.0, y + slope), (-5.0, y + width - slope))
    floor = ((15.0, y + width), (15.0, y))
    return Prism(Path.polygon((*mouth, *floor)), -5.0, 25.0)


def test_what_slants_is_drawn_out_evenly_and_its_normals_turn() -> None:
    """A notch twice as wide, its slanting sides twice as slanting: all of it in one stretch."""
    here = board(500.0, tail(20.0, 20.0))
    solid = one(here, board(500.0, tail(20.0, 24.0, 3.6)))
    assert solid is not None
    cut = solid_of(board(500.0, tail(20.0, 24.0, 3.6)))
    normals, expected = (
        np.array(sorted(np.round(one.panel_normals, 9).tolist())) + 0.0 for one in (solid, cut)
    )
    assert normals == pytest.approx(expected)


# A relief over the whole face: the crown of its piece


def carved(length: float, *removed: Removal, peak: float = 200.0, deep: float = 6.0) -> Shape:
    """A face whose four corners lie at 2 deep and one point, ``peak`` along and half across, at
    ``deep``; the facets reach 10 past the ends and 5 past the edges."""
    x, y = (-10.0, length + 10.0), (-5.0, 105.0)
    points = (
        (x[0], y[0], 2.0),
        (x[1], y[0], 2.0),
        (x[1], y[1], 2.0),
        (x[0], y[1], 2.0),
        (peak, 50.0, deep),
    )
    facets = Facets(points, ((0, 1, 4), (1, 2, 4), (2, 3, 4), (3, 0, 4)))
    return board(length, Hollow(facets, -2.0), *removed)


def test_a_carved_board_grows_with_its_relief() -> None:
    """Over the facets' own rectangle the relief is 2 deep and a pyramid more; within the board
    the judge compares it with one that was cut."""
    solid = one(carved(500.0, slot(300.0)), carved(520.0, slot(310.0), peak=205.0, deep=6.5))
    assert solid is not None
    whole = carved(500.0, peak=200.0)
    assert one(whole, carved(500.0, peak=210.0, deep=7.0)) is not None
    assert one(whole, whole) is not None


def test_a_trimmed_board_is_carved_to_its_new_edges() -> None:
    def trimmed_to(x: float) -> Shape:
        return carved(500.0, HalfSpace((x, 0.0, 0.0), (1.0, 0.0, 0.0)))

    assert one(trimmed_to(480.0), trimmed_to(440.0)) is not None
    # Past the point in which the facets meet, others come to the edge.
    assert one(trimmed_to(480.0), trimmed_to(190.0)) is None


def test_a_relief_that_comes_down_to_a_slot_is_cut() -> None:
    here = carved(500.0, slot(300.0, depth=12.0))
    assert one(here, carved(500.0, slot(300.0, depth=12.0), deep=7.9)) is not None
    assert one(here, carved(500.0, slot(300.0, depth=12.0), deep=8.1)) is None
    through = carved(500.0, hole(300.0, 50.0))
    assert one(through, carved(510.0, hole(300.0, 50.0))) is None


def test_facets_that_come_into_one_plane_are_cut() -> None:
    """Between them lies no arris any more, or none yet."""
    flat, peaked = carved(500.0, deep=2.0), carved(500.0)
    assert one(peaked, flat) is None
    assert one(flat, peaked) is None
    assert one(peaked, carved(500.0, deep=2.1)) is not None


def test_a_slanting_end_lets_no_relief_follow() -> None:
    here = carved(500.0, slanting_end(480.0))
    assert one(here, carved(500.0, slanting_end(470.0))) is None
