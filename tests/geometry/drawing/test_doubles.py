"""Dashed lines on one another: by hand, and on the pages of a sample."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.drawing.chains import chains
from geometry.drawing.doubles import without_doubles
from geometry.drawing.marks import Role, Strokes
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from shared.line_styles import LINE_STYLES
from shared.paper import PAPERS

SAMPLES = Path(__file__).parents[3] / "sample_projects"


def circle(radius: float, corners: int, start_deg: float = 0.0) -> np.ndarray:
    turns = np.radians(start_deg + np.linspace(0.0, 360.0, corners + 1))
    points = radius * np.column_stack([np.cos(turns), np.sin(turns)])
    return np.hstack([points[:-1], points[1:]])


def length(strokes: Strokes) -> float:
    runs = strokes.segments[:, 2:] - strokes.segments[:, :2]
    return float(np.hypot(*runs.T).sum())


def test_of_a_tenon_and_its_bore_one_circle_is_left():
    """27 in 27.2 at 1:5: radii of 2.7 and 2.72, of 40 and of 36 corners; the wider stays whole."""
    lines = np.concatenate([circle(2.7, 40, 5.0), circle(2.72, 36)])
    both = Strokes(Role.HIDDEN, lines, owners=("a", "b"), owner_of=np.repeat([0, 1], (40, 36)))
    (left,) = without_doubles((both,))
    assert len(left.segments) == 36
    assert left.owner_of.tolist() == [1] * 36
    assert length(left) == pytest.approx(2.0 * 36 * 2.72 * np.sin(np.pi / 36))


def test_ends_that_meet_but_for_a_hair_keep_their_owners():
    """A corner of a curve as two solids make it, a millionth of a millimetre apart."""
    lines = np.array([(0.0, 0.0, 5.0, 0.0), (5.000001, 0.0, 10.0, 0.1), (1.0, 0.05, 4.0, 0.05)])
    owned = Strokes(Role.HIDDEN, lines, owners=("a", "b"), owner_of=np.array([0, 1, 1]))
    (left,) = without_doubles((owned,))
    assert left.owner_of.tolist() == [0, 1]


def test_lines_as_far_apart_as_they_are_wide_both_stay():
    """0.25 wide (ISO 128, group 0.5): a second line 0.3 beside the first, and one across it."""
    lines = np.array([(0.0, 0.0, 20.0, 0.0), (0.0, 0.3, 20.0, 0.3), (10.0, -5.0, 10.0, 5.0)])
    marks = (Strokes(Role.HIDDEN, lines), Strokes(Role.VISIBLE, lines[:1]))
    assert without_doubles(marks) == marks


def test_what_sticks_out_of_the_other_stays():
    lines = np.array([(0.0, 0.0, 20.0, 0.0), (15.0, 0.1, 25.0, 0.1), (3.0, 0.1, 9.0, 0.1)])
    (left,) = without_doubles((Strokes(Role.HIDDEN, lines),))
    assert left.segments.tolist() == lines[:2].tolist()


@pytest.mark.parametrize("name", ["apiary", "bowling_green"])
def test_no_hidden_line_fills_the_gaps_of_another(name):
    for sheet in drawings(build(load(SAMPLES / f"{name}_bench.settle").spec), Layout(PAPERS["A4"])):
        for mark in sheet.marks:
            if not isinstance(mark, Strokes) or mark.role is not Role.HIDDEN:
                continue
            lines = np.array([shapely.LineString(points) for points in chains(mark.segments)])
            wide = shapely.buffer(lines, 0.8 * LINE_STYLES["hidden"].width)
            inner, outer = shapely.STRtree(lines).query(wide, predicate="contains")[::-1]
            assert (inner == outer).all(), sheet.title
