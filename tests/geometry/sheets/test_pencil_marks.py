"""What is pencilled on a part under the pointer, against places worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from geometry.cuts.cut import Blank
from geometry.design.part import Part, Shape
from geometry.drawing.marks import Fill, Role, Strokes
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import X_AXIS, Y_AXIS, Z_AXIS, Frame
from geometry.sheets.pencil_marks import pencil_marks
from geometry.views.view import END_RIGHT, FRONT, PLAN

# Upright on its face edge, its face side toward the viewer of the front elevation: x along, y up,
# so that z, into the wood, points to the back.
PANEL = Part(
    "panel",
    "Panel",
    "panel",
    "white oak",
    Shape(Blank(600.0, 200.0, 40.0), ()),
    Frame((0.0, -40.0, 100.0), X_AXIS, Z_AXIS, Y_AXIS),
)


def strokes(marks, role):
    found = [m.segments for m in marks if isinstance(m, Strokes) and m.role is role]
    return np.vstack(found).reshape(-1, 2, 2) if found else np.zeros((0, 2, 2))


def test_the_grain_is_an_arrow_in_the_middle_of_the_face():
    """At 1:10 the panel is 60 by 20 mm, its middle at (30, 20); the arrow is 26 mm long."""
    marks = pencil_marks(PANEL, FRONT, 0.1, (0.0, 0.0))
    tips = sorted({m.points[0] for m in marks if isinstance(m, Fill)})
    assert tips == [pytest.approx((17.0, 20.0)), pytest.approx((43.0, 20.0))]


def test_there_is_no_arrow_on_end_grain_nor_on_a_sheet():
    for part, view in (
        (PANEL, END_RIGHT),
        (Part("p", "P", "p", "birch plywood", PANEL.shape, PANEL.frame, False), FRONT),
    ):
        assert not [m for m in pencil_marks(part, view, 0.1, (0.0, 0.0)) if isinstance(m, Fill)]


def test_the_face_mark_runs_from_the_face_edge_into_the_face():
    """The face edge is at z = 100, below: the loop stands over it, its tail on the arris."""
    loop = strokes(pencil_marks(PANEL, FRONT, 0.1, (0.0, 0.0)), Role.TEXT)
    loop = loop[np.abs(loop[:, :, 0] - 18.0).max(axis=1) < 4.0]  # 0.3 of the length
    assert loop[:, :, 1].min() == pytest.approx(10.0)
    assert 15.0 < loop[:, :, 1].max() < 17.0


def test_the_edge_mark_is_a_v_on_the_face_edge_seen_from_its_side():
    """In plan the face edge looks down, away from the viewer: the V is dashed, and points at the
    face side's arris at y = -40."""
    vee = strokes(pencil_marks(PANEL, PLAN, 0.1, (0.0, 0.0)), Role.HIDDEN)
    assert len(vee) == 2
    (start, _), (other, _) = vee
    assert start == pytest.approx(other)
    assert start[1] == pytest.approx(-4.0)
    assert (vee[:, 1, 1] > -4.0).all()


def test_marks_keep_clear_of_texts():
    """A text over the middle: the arrow goes elsewhere on the face."""
    text = TextBox(30.0, 20.0, 5.0, 2.0)
    marks = pencil_marks(PANEL, FRONT, 0.1, (0.0, 0.0), [text])
    tips = sorted({m.points[0] for m in marks if isinstance(m, Fill)})
    assert abs(tips[0][1] - 20.0) > 2.0 or tips[0][0] > 35.0 or tips[1][0] < 25.0
    assert all(10.0 < y < 30.0 for _, y in tips)


def test_far_out_there_are_none():
    assert pencil_marks(PANEL, FRONT, 0.01, (0.0, 0.0)) == []
