"""Pictures on a page: inside their room, clear of one another, and as large as may be."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
import shapely

from geometry.drawing.marks import Role, Strokes
from geometry.sheets.layout import Layout, box_lines
from geometry.sheets.picture_page import composed
from geometry.sheets.pictures import Drawn, Easel, Picture
from geometry.sheets.text_block import table
from shared.paper import PAPERS, SCALES


def picture(wide: float, high: float, name: str, *, to_scale: bool = True) -> Picture:
    """A rectangle with 6 mm of other things round it, whatever its scale."""

    def draw(scale: float) -> Drawn:
        w, h = wide * scale, high * scale
        marks = (Strokes(Role.VISIBLE, box_lines(0.0, 0.0, w, h), owner=name),)
        return Drawn((-6.0, -6.0, w + 6.0, h + 6.0), lambda: marks)

    return Picture((wide, high), draw, to_scale)


def make_table(width: float):
    return table(("mm", "Measure"), [("12", "of something"), ("7", "of another")], width, 2.5)


def page_of(pictures, paper="A4"):
    layout = Layout(PAPERS[paper])
    found = composed(Easel(pictures), make_table, (12.0, lambda _corner: ()), layout)
    assert found is not None
    boxes = {}
    for mark in found.marks():
        if isinstance(mark, Strokes) and mark.owner:
            x, y = mark.segments[:, 0::2], mark.segments[:, 1::2]
            boxes[mark.owner] = shapely.box(x.min(), y.min(), x.max(), y.max())
    return found, boxes, layout


SIZES = [(120.0, 80.0), (60.0, 200.0), (300.0, 40.0), (25.0, 25.0), (90.0, 90.0)]


@pytest.mark.parametrize("count", range(1, 6))
@pytest.mark.parametrize("paper", ["A4", "Letter", "A3"])
def test_pictures_keep_apart_and_inside(count, paper):
    pictures = [picture(w, h, f"p{k}") for k, (w, h) in enumerate(SIZES[:count])]
    _, boxes, layout = page_of(pictures, paper)
    left, bottom, right, top = layout.room
    room = shapely.box(left, bottom, right, top - 12.0)
    assert len(boxes) == count
    for box in boxes.values():
        assert room.contains(box.buffer(5.9, join_style="mitre"))
    for one, other in combinations(boxes.values(), 2):
        assert shapely.distance(one, other) >= 12.0


def test_scales_are_standard_ones_unless_nobody_measures():
    _, boxes, _ = page_of(
        [picture(130.0, 70.0, "flat"), picture(130.0, 70.0, "free", to_scale=False)]
    )
    x0, _, x1, _ = boxes["flat"].bounds
    assert any(np.isclose((x1 - x0) / 130.0, step.factor) for step in SCALES)


def test_a_lone_picture_is_made_as_large_as_its_room_or_true_size():
    _, boxes, _ = page_of([picture(90.0, 60.0, "one")])
    x0, _, x1, _ = boxes["one"].bounds
    assert x1 - x0 == pytest.approx(90.0)  # 1:1; twice that is for small things only


def test_what_does_not_fit_is_refused():
    huge = [picture(50000.0, 50000.0, f"p{k}") for k in range(3)]
    layout = Layout(PAPERS["A4"])
    assert composed(Easel(huge), make_table, (12.0, lambda _corner: ()), layout) is None
