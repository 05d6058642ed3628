"""Centre lines: where they stand on the sheet, how far out, and what they keep clear of."""

from __future__ import annotations

import numpy as np
import pytest

from geometry.cuts.bore import Bore
from geometry.cuts.cut import Blank
from geometry.design.part import Part, Shape
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.drawing.marks import Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import X_AXIS, Y_AXIS, Frame
from geometry.sheets.arrangement import arrange
from geometry.sheets.centre_lines import centre_lines
from geometry.sheets.layout import Layout
from geometry.views.bench_views import bench_views
from geometry.views.look import look_all
from geometry.views.view import FRONT, PLAN
from shared.paper import PAPERS
from tests.samples import spoiled

# A board lying with its face side down at z = 100, a bore of 20 mm at x = 60, y = 30 from below.
BOARD = Part(
    "board",
    "Board",
    "board",
    "white oak",
    Shape(Blank(200.0, 80.0, 25.0), (Bore(60.0, 30.0, 20.0, 15.0),)),
    Frame.of((10.0, 5.0, 100.0), X_AXIS, Y_AXIS),
)


def lines(view, scale, texts=()):
    marks = centre_lines((BOARD,), view, scale, texts)
    return np.vstack([mark.segments for mark in marks]) if marks else np.zeros((0, 4))


def test_a_bore_seen_end_on_has_a_cross_that_stands_out():
    """In plan at (70, 35) mm; at half size the radius is 5 mm, and 1.5 mm more each way."""
    assert lines(PLAN, 0.5) == pytest.approx(
        np.array([(28.5, 17.5, 41.5, 17.5), (35.0, 11.0, 35.0, 24.0)])
    )


def test_from_the_side_it_has_its_axis():
    """From z = 100 up to 115, at x = 70; at half size 1.5 mm longer at each end."""
    (line,) = lines(FRONT, 0.5)
    low, high = sorted((line[1], line[3]))
    assert (line[0], line[2]) == pytest.approx((35.0, 35.0))
    assert (low, high) == pytest.approx((48.5, 59.0))


def test_far_out_it_has_none():
    assert len(lines(PLAN, 0.13)) == 2  # 2.6 mm on the sheet
    assert len(lines(PLAN, 0.12)) == 0  # 2.4 mm: hardly more than a dot


def test_a_text_interrupts_it():
    """A text over the middle of the level line, 4 mm wide: 0.6 mm of air on each side."""
    text = TextBox(35.0, 17.5, 2.0, 1.0)
    level = [line for line in lines(PLAN, 0.5, [text]) if line[1] == line[3] == 17.5]
    assert sorted(tuple(line[[0, 2]]) for line in level) == [
        pytest.approx((28.5, 32.4)),
        pytest.approx((37.6, 41.5)),
    ]


@pytest.mark.parametrize("name", ["kiln_yard", "apiary"])
def test_the_general_arrangement_shows_them_once(name):
    """Four round tenons in their holes: a cross each in plan, or an axis where they lean."""
    bench = spoiled(name, {})
    sheet = arrange(
        bench, look_all(bench.parts, bench_views(bench)), dimensions(bench), Layout(PAPERS["A3"])
    ).sheet
    found = [m for m in sheet.marks if isinstance(m, Strokes) and m.role is Role.CENTRE]
    assert len(found) == 3  # a mark each view
    owners = {mark.owners[k] for mark in found for k in mark.owner_of}
    assert len(owners) >= 4
