"""The open lid's outline on the general arrangement: where it stands by hand, and how it is drawn.

Source of the line type: ISO 128-24, line 05.1 for extreme positions of movable parts (from memory).
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.drawing.marks import Role, Strokes
from geometry.sheets.arrangement import Arranged, arrange
from geometry.sheets.layout import Layout
from geometry.sheets.phantoms import phantom_lines
from geometry.views.bench_views import bench_views
from geometry.views.look import look_all
from geometry.views.view import END_RIGHT, FRONT
from shared.line_styles import LINE_STYLES
from shared.paper import PAPERS

BOX = set_values(default_spec(), {"seat": "box with a lid"})


def arranged() -> Arranged:
    bench = build(BOX)
    return arrange(
        bench, look_all(bench.parts, bench_views(bench)), dimensions(bench), Layout(PAPERS["A3"])
    )


def test_a_lid_opened_square_stands_upright_behind_its_pins() -> None:
    """On a strip 40 wide the pins are level with the upper faces: a quarter turn brings the lid's
    upper face to the pins' upright, its depth above them, its thickness in front."""
    spec = set_values(BOX, {"lid_opening": 90.0, "lid_strip": 40.0})
    bench = build(spec)
    lines = phantom_lines(bench, END_RIGHT)
    outline = lines[:4].reshape(-1, 2)
    lid = bench.part("lid").shape.blank
    gap, thick = spec.number("lid_gap"), spec.number("lid_thickness")
    top = spec.number("base_height") + spec.number("box_height")
    assert outline.min(axis=0) == pytest.approx((-40.0 - thick, top), abs=gap)
    assert np.ptp(outline, axis=0) == pytest.approx((thick, lid.width), abs=1e-9)


def test_the_stay_is_as_long_as_it_is() -> None:
    bench = build(BOX)
    start, end = phantom_lines(bench, END_RIGHT)[4].reshape(2, 2)
    assert np.linalg.norm(end - start) == pytest.approx(bench.spec.number("stay_reach"))


def test_only_the_end_elevation_of_a_lid_box_has_it() -> None:
    assert not len(phantom_lines(build(BOX), FRONT))
    assert not len(phantom_lines(build(default_spec()), END_RIGHT))


def test_it_is_drawn_as_the_standard_has_it() -> None:
    found = [
        mark
        for mark in arranged().sheet.marks
        if isinstance(mark, Strokes) and mark.role is Role.PHANTOM
    ]
    assert [len(mark.segments) for mark in found] == [5]
    assert LINE_STYLES["phantom"].line_type == "05.1"
    assert LINE_STYLES["phantom"].width == LINE_STYLES["dimension"].width


def test_it_stays_in_its_view_s_room() -> None:
    """So that no other view or border is drawn over it."""
    lying = arranged()
    (mark,) = (
        mark
        for mark in lying.sheet.marks
        if isinstance(mark, Strokes) and mark.role is Role.PHANTOM
    )
    left, bottom, right, top = lying.place_of(END_RIGHT.name).room
    points = mark.segments.reshape(-1, 2)
    assert (points >= np.array((left, bottom)) - 1e-6).all()
    assert (points <= np.array((right, top)) + 1e-6).all()
