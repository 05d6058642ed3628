"""Text boxes against shapely."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing.text_box import Ground, TextBox, broken_around
from shared.lettering import ASCENT_RATIO, DESCENT_RATIO

small = st.floats(-20.0, 20.0)
lines = st.tuples(small, small, small, small)
boxes = st.builds(
    lambda x, y, w, h, deg: TextBox.about((x, y), w, h, deg),
    small,
    small,
    st.floats(1.0, 15.0),
    st.floats(1.0, 5.0),
    st.floats(-90.0, 90.0),
)


def polygon(box: TextBox, margin: float = 0.0) -> shapely.Polygon:
    return shapely.Polygon(box.corners()).buffer(margin, join_style="mitre")


@given(boxes, lines)
def test_the_stretch_inside_is_what_shapely_cuts_out(box, line):
    found = box.stretch_of(line)
    inside = polygon(box).intersection(shapely.LineString([line[:2], line[2:]])).length
    length = math.dist(line[:2], line[2:])
    measured = 0.0 if found is None else (found[1] - found[0]) * length
    assert measured == pytest.approx(inside, abs=1e-6)


@given(boxes, st.lists(lines, min_size=1, max_size=6))
def test_clear_ground_is_what_shapely_finds_apart(box, drawn):
    ground = Ground(np.array(drawn))
    meets = [polygon(box).distance(shapely.LineString([d[:2], d[2:]])) for d in drawn]
    if min(meets) > 1e-6:
        assert ground.clear([box], 0.0)[0]
    elif any(
        polygon(box).buffer(-1e-6).intersects(shapely.LineString([d[:2], d[2:]])) for d in drawn
    ):
        assert not ground.clear([box], 0.0)[0]


@given(st.lists(boxes, min_size=1, max_size=4), st.lists(lines), st.lists(lines))
def test_lines_to_come_are_told_apart_from_those_there(texts, drawn, ahead):
    def of(some):
        return np.array(some).reshape(-1, 4)

    now, later = Ground(of(drawn), of(ahead)).clear_now_and_later(texts, 0.5)
    for box, is_free, stays in zip(texts, now, later, strict=True):
        assert is_free == Ground(of(drawn)).clear([box], 0.5)[0]
        assert stays == Ground(of(ahead)).clear([box], 0.5)[0]


def test_lines_are_made_room_for():
    """A thousand level lines, 1 mm apart from 0 on: none comes near a text below the first."""
    ground = Ground(np.zeros((0, 4)))
    for k in range(1000):
        ground.add([(0.0, float(k), 50.0, float(k))], [])
        assert not ground.clear([TextBox.about((25.0, float(k)), 10.0, 2.5)], 0.0)[0]
    assert ground.clear([TextBox.about((25.0, -5.0), 10.0, 2.5)], 0.0)[0]
    assert not ground.runs_along((0.0, 999.6, 50.0, 999.6))
    assert ground.runs_along((0.0, 998.9, 50.0, 998.9))


@given(boxes, boxes)
def test_a_text_on_a_text_is_seen(one, other):
    ground = Ground(np.zeros((0, 4)))
    ground.add([], [other])
    if polygon(one).distance(polygon(other)) > 1e-6:
        assert ground.clear([one], 0.0)[0]
    # A box wholly inside another meets its diagonal only when it lies on it.
    elif polygon(one).buffer(-1e-6).intersects(polygon(other).exterior):
        assert not ground.clear([one], 0.0)[0]


@given(lines, st.lists(boxes, max_size=3))
def test_a_broken_line_keeps_out_of_every_box(line, texts):
    for piece in broken_around(line, texts, 0.5):
        stroke = shapely.LineString([piece[:2], piece[2:]])
        assert all(polygon(box).buffer(-1e-9).disjoint(stroke) for box in texts)


def test_a_label_stands_in_its_box():
    """The box reaches as far above and below the baseline as the font's ink."""
    box = TextBox.about((0.0, 0.0), 20.0, 5.0)
    x, y = box.baseline_middle(5.0)
    assert x == 0.0
    assert box.corners()[0][1] == pytest.approx(y - 5.0 * DESCENT_RATIO)
    assert box.corners()[2][1] == pytest.approx(y + 5.0 * ASCENT_RATIO)


@pytest.mark.parametrize(
    ("line", "lies"),
    [
        ((2.0, 0.2, 8.0, 0.2), True),
        ((8.0, 0.0, 2.0, 0.0), True),
        ((9.5, 0.0, 20.0, 0.0), False),  # ends that touch
        ((2.0, 0.6, 8.0, 0.6), False),
        ((5.0, -5.0, 5.0, 5.0), False),  # across it
        ((22.0, 0.1, 26.0, 4.1), True),
        ((22.0, 1.0, 26.0, 5.0), False),
    ],
)
def test_a_line_that_lies_on_another_is_seen(line, lies):
    """One drawn from (0, 0) to (10, 0), one at 45 degrees from (20, -2) to (30, 8)."""
    assert (
        Ground(np.array([(0.0, 0.0, 10.0, 0.0), (20.0, -2.0, 30.0, 8.0)])).runs_along(line) is lies
    )
    assert not Ground(np.zeros((0, 4))).runs_along(line)
