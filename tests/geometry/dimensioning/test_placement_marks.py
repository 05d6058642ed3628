"""From placed dimensions to marks: owners, arrowheads, brackets, running rows."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.dimension_marks import arrowhead, dimension_marks, owner_of, targets
from geometry.dimensioning.placed import DimensionStyle
from geometry.dimensioning.placement import place
from geometry.dimensioning.running import FEWEST, spread
from geometry.drawing.marks import Fill, Label, Role, Strokes

LINES = np.array([(0.0, 0.0, 1000.0, 0.0), (0.0, 400.0, 1000.0, 400.0)])


def length(name: str, end: float, rank: int = 0, parameter: str = "size") -> Dimension:
    return Dimension(
        name, name, "front", end, "mm", (0.0, 400.0), (end, 400.0), (1.0, 0.0), 1, rank, parameter
    )


def test_marks_carry_their_dimension_as_owner():
    placed = place(
        [length("depth", 600.0), length("back", 900.0, 1, "")], LINES, 0.1, DimensionStyle()
    )
    marks = dimension_marks(placed, (50.0, 60.0))
    strokes = [mark for mark in marks if isinstance(mark, Strokes)]
    assert {mark.role for mark in strokes} == {Role.DIMENSION, Role.DERIVED}
    for mark in strokes:
        assert mark.owner_of is not None
        assert len(mark.owner_of) == len(mark.segments)
    labels = {mark.owner: mark.text for mark in marks if isinstance(mark, Label)}
    assert labels == {owner_of("depth"): "600", owner_of("back"): "(900)"}


def test_the_dimension_line_measures_what_it_says():
    """At 1:10 a dimension of 600 is a line of 60 mm on the sheet."""
    placed = place([length("depth", 600.0)], LINES, 0.1, DimensionStyle())
    x0, y0, x1, y1 = targets(placed, (50.0, 60.0))[0].line
    assert math.dist((x0, y0), (x1, y1)) == pytest.approx(60.0)
    assert y0 == pytest.approx(60.0 + 40.0 + 10.0)


def test_arrowheads_touch_what_they_measure():
    placed = place([length("depth", 600.0)], LINES, 0.1, DimensionStyle())
    fills = [mark for mark in dimension_marks(placed, (0.0, 0.0)) if isinstance(mark, Fill)]
    assert sorted(fill.points[0][0] for fill in fills) == pytest.approx([0.0, 60.0])


def test_an_arrowhead_is_three_millimetres_long_and_slim():
    tip, left, right = arrowhead((0.0, 0.0), (0.0, 1.0))
    assert tip == (0.0, 0.0)
    assert left[1] == right[1] == pytest.approx(-3.0)
    assert abs(left[0] - right[0]) < 1.0


def test_many_sizes_from_one_point_share_a_row():
    ends = [150.0 * k for k in range(1, FEWEST + 1)]
    placed = place([length(f"p{k}", e) for k, e in enumerate(ends)], LINES, 0.1, DimensionStyle())
    assert len({one.line[1] for one in placed.dimensions}) == 1
    assert all(one.box.cos == 0.0 for one in placed.dimensions)  # read along the extension lines
    few = place([length(f"p{k}", e) for k, e in enumerate(ends[:-1])], LINES, 0.1, DimensionStyle())
    assert len({one.line[1] for one in few.dimensions}) == FEWEST - 1


def test_sizes_that_read_alike_are_shown_once_in_a_row():
    """150 and 150.04 at 1:10 end in one place and read alike; 150.3 reads otherwise."""
    ends = [150.0, 150.04, 150.3, *(150.0 * k for k in range(2, FEWEST + 1))]
    placed = place([length(f"p{k}", e) for k, e in enumerate(ends)], LINES, 0.1, DimensionStyle())
    texts = [one.text for one in placed.dimensions]
    assert texts.count("150") == 1
    assert texts.count("150.3") == 1
    assert len(texts) == len(ends) - 1


def test_spread_texts_keep_their_order_and_their_distance():
    wanted = [1.0, 2.0, 2.5, 30.0, 31.0, 60.0]
    found = spread(wanted, 4.0)
    assert found == sorted(found)
    assert min(b - a for a, b in pairwise(found)) >= 4.0 - 1e-9
    assert found[0] >= 4.0 - 1e-9  # clear of the origin's own extension line
    assert found[-1] == 60.0


def test_hit_boxes_stand_on_the_texts():
    placed = place([length("depth", 600.0)], LINES, 0.1, DimensionStyle())
    (target,) = targets(placed, (50.0, 60.0))
    label = next(m for m in dimension_marks(placed, (50.0, 60.0)) if isinstance(m, Label))
    xs = [x for x, _ in target.text_corners]
    ys = [y for _, y in target.text_corners]
    assert min(xs) < label.at[0] < max(xs)
    assert min(ys) < label.at[1] < max(ys)
