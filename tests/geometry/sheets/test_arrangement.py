"""The general arrangement: places of the views, scale steps, owners, and nothing overlapping."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.drawing.marks import Role, Strokes
from geometry.sheets.arrangement import arrange
from geometry.sheets.layout import Layout, scale_text
from geometry.sheets.title_block import title_block_of
from geometry.views.bench_views import bench_views
from geometry.views.look import look_all
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from shared.paper import PAPERS
from shared.units import SHOWN_IN16, SHOWN_MM
from shared.words import Words
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, words

# ISO 5455:1979 reductions and full size, from memory: 1:1 1:2 1:5 1:10 1:20 1:50 1:100
ISO_5455 = [1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01]


@pytest.fixture(scope="module")
def layout(project) -> Layout:
    return Layout(PAPERS["A3"], title=title_block_of(project, date(2025, 3, 4)))


def arranged(bench, layout, views=(FRONT, PLAN, END_RIGHT)):
    return arrange(bench, look_all(bench.parts, views), dimensions(bench), layout)


def test_third_angle_puts_each_view_on_its_own_side(bench, layout):
    """ISO 5456-2, from memory: plan above the front elevation, right end to the right."""
    found = arranged(bench, replace(layout, third_angle=True))
    front, plan, end = (found.place_of(v.name) for v in (FRONT, PLAN, END_RIGHT))
    assert plan.origin[0] == front.origin[0]
    assert plan.room[1] > front.room[3]
    assert end.origin[1] == front.origin[1]
    assert end.room[0] > front.room[2]


def test_first_angle_puts_each_view_on_the_far_side(bench, layout):
    found = arranged(bench, replace(layout, third_angle=False))
    front, plan, end = (found.place_of(v.name) for v in (FRONT, PLAN, END_RIGHT))
    assert plan.room[3] < front.room[1]
    assert end.room[2] < front.room[0]


def test_the_left_end_stands_opposite_the_right_end(bench, layout):
    found = arranged(bench, layout, (FRONT, PLAN, END_LEFT))
    assert found.place_of("end left").room[2] < found.place_of("front").room[0]


@pytest.mark.parametrize("paper", ["A4", "A3", "Letter", "Tabloid"])
@pytest.mark.parametrize("length", [700.0, 1200.0, 2400.0])
def test_the_scale_is_a_standard_step_and_everything_fits(paper, length, project):
    changes = {"flare": 0.0, "length": length, "partition_count": 0.0}
    spec = set_values(default_spec(), changes)
    bench = build(spec)
    layout = Layout(PAPERS[paper], title=title_block_of(project, date(2025, 3, 4)))
    found = arranged(bench, layout)
    scale = found.places[0].scale
    assert min(abs(scale - step) for step in ISO_5455) < 1e-12
    assert off_the_sheet(found.sheet) == []
    assert overlapping_texts(found.sheet) == []
    assert scale_text(scale) in words(found.sheet)
    left, bottom, right, top = layout.room
    for place in found.places:
        assert left <= place.room[0] <= place.room[2] <= right
        assert bottom <= place.room[1] <= place.room[3] <= top


def test_a_sheet_point_turns_into_view_millimetres_and_back(bench, layout):
    place = arranged(bench, layout).place_of("plan")
    u, v = place.in_view(place.on_sheet((431.5, -77.25)))
    assert (u, v) == pytest.approx((431.5, -77.25))


def test_every_line_knows_its_part_and_stands_where_the_view_says(bench, layout):
    found = arranged(bench, layout)
    names = {f"part:{part.name}" for part in bench.parts}
    strokes = [
        m
        for m in found.sheet.marks
        if isinstance(m, Strokes) and m.role in (Role.VISIBLE, Role.HIDDEN)
    ]
    assert strokes
    for mark in strokes:
        assert set(mark.owners) == names
        assert mark.owner_of is not None
        assert len(mark.owner_of) == len(mark.segments)
    linework = look_all(bench.parts, (FRONT,))[0]
    place = found.place_of("front")
    first = linework.segments[linework.visible][0]
    expected = [*place.on_sheet(first[:2]), *place.on_sheet(first[2:])]
    visible = np.concatenate([m.segments for m in strokes if m.role is Role.VISIBLE])
    assert np.abs(visible - np.array(expected)).sum(axis=1).min() < 1e-9


def test_held_views_do_not_move_while_a_value_changes(layout):
    spec = default_spec()
    before = arranged(build(spec), layout)
    bench = build(set_values(spec, {"length": 1260.0}))
    lineworks = look_all(bench.parts, (FRONT, PLAN, END_RIGHT))
    after = arrange(bench, lineworks, dimensions(bench), layout, held=before.places)
    for place in before.places:
        assert after.place_of(place.view).origin == place.origin
        assert after.place_of(place.view).scale == place.scale


def test_a_dimension_is_found_by_its_text_and_its_view(bench, layout):
    found = arranged(bench, layout, bench_views(bench))
    assert {t.name for t in found.targets} == {d.name for d in dimensions(bench)}
    target = next(t for t in found.targets if t.name == "length")
    middle = np.mean(target.text_corners, axis=0)
    view = found.view_at((float(middle[0]), float(middle[1])))
    assert view is not None
    assert view.view == next(d.view for d in dimensions(bench) if d.name == "length")
    assert found.view_at((0.0, 0.0)) is None


def test_the_same_sheet_in_inches_and_american_words(bench, layout):
    found = arranged(bench, replace(layout, shown=SHOWN_IN16, words=Words.AMERICAN))
    assert "47 ¼" in words(found.sheet)  # 1200 mm = 47.244 in
    assert "in" in words(found.sheet)


def test_without_frame_and_title_only_the_views_are_left(bench, layout):
    bare = arranged(bench, replace(layout, frame=False, title=None, shown=SHOWN_MM))
    assert not any(mark.role is Role.FRAME for mark in bare.sheet.marks)
    assert "Front elevation" in words(bare.sheet)
