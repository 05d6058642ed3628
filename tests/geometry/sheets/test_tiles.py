"""Tiling by hand, and the regions worth tracing."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.sheets.tiles import MARGIN, OVERLAP, STRIP, printable, tilings
from geometry.sheets.tracing import tracings
from shared.paper import PAPERS

PLAIN = (1.0, 1.0)


def everywhere(_box) -> bool:
    return True


def test_a_leg_of_500_takes_two_sheets_of_a4():
    """A4 lying: 297 - 2 x 8 = 281 printable; two sheets less 15 overlap show 547 (by hand)."""
    best, *_, other = tilings((0.0, 0.0, 500.0, 90.0), PAPERS["A4"], PLAIN, everywhere)
    assert (best.width, best.height) == (297.0, 210.0)
    assert len(best.tiles) == 2
    assert len(other.tiles) == 3  # standing: 194 printable, ceil((500 - 15) / (194 - 15)) = 3


@pytest.mark.parametrize(("length", "sheets"), [(281.0, 1), (281.1, 2), (547.0, 2), (547.1, 3)])
def test_the_count_changes_just_where_the_formula_says(length, sheets):
    """n = ceil((L - o) / (h - o)) for one row of A4 lying, h = 281, o = 15."""
    ways = tilings((0.0, 0.0, length, 100.0), PAPERS["A4"], PLAIN, everywhere)
    lying = next(way for way in ways if way.width > way.height)
    assert len(lying.tiles) == sheets == max(1, math.ceil((length - 15.0) / (281.0 - 15.0) - 1e-9))


@given(
    st.floats(50.0, 2000.0),
    st.floats(50.0, 800.0),
    st.sampled_from(sorted(PAPERS)),
    st.tuples(st.floats(0.97, 1.03), st.floats(0.97, 1.03)),
)
def test_the_sheets_cover_the_drawing_and_overlap_by_15_mm(wide, high, paper, correction):
    content = (-20.0, -high, wide - 20.0, 0.0)
    for way in tilings(content, PAPERS[paper], correction, everywhere):
        boxes = [shapely.box(*tile.box) for tile in way.tiles]
        assert shapely.union_all(boxes).buffer(1e-6).covers(shapely.box(*content))
        left, bottom, right, top = printable(way.width, way.height)
        x, y = correction if way.width >= way.height else correction[::-1]
        for tile in way.tiles:
            assert (tile.box[2] - tile.box[0]) * x == pytest.approx(right - left)
            assert (tile.box[3] - tile.box[1]) * y == pytest.approx(top - bottom)
            beside = way.neighbour(tile, 1, 0)
            if beside is not None:
                assert tile.box[2] - beside.box[0] == pytest.approx(OVERLAP)
            below = way.neighbour(tile, 0, 1)
            if below is not None:
                assert below.box[3] - tile.box[1] == pytest.approx(OVERLAP)


def test_sheets_with_nothing_on_them_are_left_out():
    best, *_ = tilings((0.0, 0.0, 800.0, 100.0), PAPERS["A4"], PLAIN, lambda box: box[0] < 200.0)
    assert {tile.column for tile in best.tiles} == {0}


def test_what_is_to_spare_may_be_all_on_one_side():
    """A drawing of 41 on A4 standing, 194 printable: 76.5 on both sides, or 153 on one."""
    ways = tilings((0.0, 0.0, 41.0, 250.0), PAPERS["A4"], PLAIN, everywhere)
    assert {round(way.tiles[0].box[0], 6) for way in ways if len(way.tiles) == 1} == {
        -76.5,
        0.0,
        -153.0,
    }


def test_the_margins_are_those_that_printers_need():
    assert printable(297.0, 210.0) == (MARGIN, MARGIN + STRIP, 289.0, 202.0)
    assert MARGIN == 8.0
    assert STRIP >= 4 * 4.0  # four lines of words


def test_a_square_part_is_not_traced(plain, housed, mitred):
    """A mitre and a housing are set at the machine; nothing on their face is askew."""
    assert tracings(plain) == ()
    assert tracings(housed) == ()
    assert tracings(mitred) == ()


def test_a_splayed_leg_is_traced_whole_with_its_proud_end(splayed_leg):
    """Outline: 80 wide, 400 along the grain at every height, and 3 proud: 80 x 403 mm².

    Its two ends lean by 15 degrees, so each is 80 / cos 15 long.
    """
    (tracing,) = tracings(splayed_leg)
    assert tracing.whole
    assert tracing.wood.area == pytest.approx(80.0 * 403.0, rel=1e-6)
    lengths = np.hypot(*(tracing.cut[:, 2:] - tracing.cut[:, :2]).T)
    slanted = 80.0 / math.cos(math.radians(15.0))
    assert sorted(lengths) == pytest.approx([slanted, slanted, 403.0, 403.0], abs=1e-3)
    trim = np.hypot(*(tracing.trim[:, 2:] - tracing.trim[:, :2]).T).sum()
    assert trim == pytest.approx(slanted, abs=0.01)
    # The mortise's floor, parallel to the ends, is hidden between its walls.
    floor = np.hypot(*(tracing.reverse[:, 2:] - tracing.reverse[:, :2]).T).max()
    assert floor == pytest.approx(slanted, abs=0.01)


def test_only_the_ends_of_a_long_stretcher_are_traced(bench):
    stretcher = next(part for part in bench.parts if part.kind == "stretcher")
    ends = tracings(stretcher)
    assert len(ends) == 2
    assert ends[0].box[0] == pytest.approx(0.0, abs=1e-6)
    assert ends[1].box[2] == pytest.approx(stretcher.shape.blank.length, abs=1e-6)
    assert ends[0].box[2] < ends[1].box[0]
    assert len(ends[0].broken)
