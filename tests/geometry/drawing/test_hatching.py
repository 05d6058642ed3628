"""Hatching stays inside what it fills, and each manner looks like itself."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from geometry.drawing.hatching import Cut, Manner, hatched

_FRAME = shapely.Polygon(
    [(0, 0), (60, 0), (70, 30), (40, 26), (0, 30)], [[(20, 8), (30, 8), (30, 20), (20, 20)]]
)
_TWO = shapely.union_all([shapely.box(0, 0, 12, 9), shapely.box(20, 3, 44, 12)])
_MANNERS = [
    Manner(cut, along, turn, (1.0, 13.5))
    for cut in Cut
    for along in ((1.0, 0.0), (0.0, 1.0), (0.6, -0.8))
    for turn in range(4)
]


@pytest.mark.parametrize("region", [_FRAME, _TWO], ids=["holed", "in two"])
@pytest.mark.parametrize("manner", _MANNERS, ids=str)
def test_no_stroke_leaves_its_region(region, manner):
    strokes = shapely.linestrings(hatched(region, manner).reshape(-1, 2, 2))
    assert shapely.covers(region.buffer(1e-7), strokes).all()
    if manner.cut is not Cut.PLIES:
        assert len(strokes) > 5


def test_a_region_without_area_is_left_alone():
    assert hatched(shapely.Polygon(), Manner(Cut.END_GRAIN, (0.0, 1.0))).shape == (0, 4)


def test_long_grain_runs_along_the_grain_at_a_spacing_that_reads():
    lines = hatched(shapely.box(0, 0, 80, 40), Manner(Cut.LONG_GRAIN, (1.0, 0.0)))
    assert np.allclose(lines[:, 1], lines[:, 3])
    levels = np.unique(np.round(lines[:, 1], 6))
    assert np.diff(levels).min() > 1.0
    # 40 mm at 2.4 mm a line
    assert len(levels) == pytest.approx(40 / 2.4, abs=1)


def test_end_grain_is_arcs_about_one_pith():
    """The middles of three chords of one ring lie on a circle whose centre all rings share."""
    lines = hatched(shapely.box(0, 0, 40, 30), Manner(Cut.END_GRAIN, (0.0, 1.0)))
    directions = np.degrees(np.arctan2(lines[:, 3] - lines[:, 1], lines[:, 2] - lines[:, 0]))
    assert np.ptp(directions) > 40.0  # they turn
    normals = np.column_stack([-np.sin(np.radians(directions)), np.cos(np.radians(directions))])
    middles = (lines[:, :2] + lines[:, 2:]) / 2.0
    # Every chord that is whole has its bisector through the pith: least squares finds it.
    whole = np.hypot(*(lines[:, 2:] - lines[:, :2]).T) > 1.5
    along = np.column_stack([normals[whole, 1], -normals[whole, 0]])
    pith = np.linalg.lstsq(along, (along * middles[whole]).sum(axis=1), rcond=None)[0]
    assert pith[1] < 0.0  # below the piece
    off = np.abs(((middles[whole] - pith) * along).sum(axis=1))
    assert np.median(off) < 0.1


def test_plies_are_odd_in_number_and_fill_the_thickness():
    sheet = shapely.box(0, 2, 60, 8.3)
    lines = hatched(sheet, Manner(Cut.PLIES, (1.0, 0.0), 0, (2.0, 8.3)))
    level = lines[np.isclose(lines[:, 1], lines[:, 3])]
    between = np.unique(np.round(level[:, 1], 6))
    assert len(between) % 2 == 0  # an odd number of plies
    spaces = np.diff([2.0, *between, 8.3])
    assert spaces == pytest.approx(np.full(len(spaces), spaces[0]))
    assert spaces[0] >= 0.9 - 1e-9
    slanting = lines[~np.isclose(lines[:, 1], lines[:, 3])]
    assert len(slanting) > 10


def test_a_sheet_too_thin_for_plies_has_strokes_alone():
    lines = hatched(shapely.box(0, 0, 30, 1.2), Manner(Cut.PLIES, (1.0, 0.0), 0, (0.0, 1.2)))
    assert len(lines)
    assert not np.isclose(lines[:, 1], lines[:, 3]).any()


def test_fibres_cross():
    lines = hatched(shapely.box(0, 0, 30, 20), Manner(Cut.FIBRES, (1.0, 0.0)))
    turns = np.mod(
        np.degrees(np.arctan2(lines[:, 3] - lines[:, 1], lines[:, 2] - lines[:, 0])), 180
    )
    assert sorted({round(turn) for turn in turns}) == [45, 135]


def test_turns_differ():
    region = shapely.box(0, 0, 50, 30)
    for cut in (Cut.END_GRAIN, Cut.LONG_GRAIN, Cut.FIBRES):
        found = [hatched(region, Manner(cut, (1.0, 0.0), turn)) for turn in range(3)]
        ink = [float(np.hypot(*(one[:, 2:] - one[:, :2]).T).sum()) for one in found]
        assert all(
            not math.isclose(a, b, rel_tol=0.1) for a, b in ((ink[0], ink[1]), (ink[1], ink[2]))
        )
