"""Full-size sheets: squares, crosses at the same true place, corrections, words."""

from __future__ import annotations

from collections import Counter
from datetime import date
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.drawing.marks import Label, Role, Strokes
from geometry.sheets.layout import Layout
from geometry.sheets.template import templates_of
from geometry.sheets.template_overview import Numbered, overview, pages_needed
from geometry.sheets.templates import templates
from geometry.sheets.title_block import title_block_of
from shared.errors import ValueOutOfRange
from shared.paper import PAPERS
from shared.units import SHOWN_IN16
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, words

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
TRACED = (Role.CUT, Role.SCRIBE, Role.HIDDEN, Role.TRIM)


@pytest.fixture(scope="module")
def tall():
    """Legs too long for one sheet, left proud."""
    return build(set_values(default_spec(), {"base_height": 420.0, "proud": 3.0}))


@pytest.fixture(scope="module")
def layout(project) -> Layout:
    return Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))


@pytest.fixture(scope="module")
def sheets(tall, layout):
    return templates(tall, layout)


def owned(sheet, prefix: str) -> dict[str, np.ndarray]:
    return {
        mark.owner: mark.segments
        for mark in sheet.marks
        if isinstance(mark, Strokes) and mark.owner.startswith(prefix)
    }


def size(segments: np.ndarray) -> tuple[float, float]:
    xs, ys = segments[:, 0::2], segments[:, 1::2]
    return (float(xs.max() - xs.min()), float(ys.max() - ys.min()))


def test_every_sheet_proves_itself(sheets):
    for sheet in sheets[1:]:
        squares = owned(sheet, "check")
        assert size(squares["check 100 mm"]) == pytest.approx((100.0, 100.0))
        assert size(squares["check 4 in"]) == pytest.approx((101.6, 101.6))  # 4 x 25.4, exact
        assert any("Measure before you cut" in text for text in words(sheet))
        assert any("print at 100 %" in text for text in words(sheet))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_squares_touch_nothing_that_is_traced(path):
    """Beside an outline a side of a square would be taken for one."""
    for sheet in templates(build(load(path).spec), Layout(PAPERS["A4"])):
        squares = owned(sheet, "check")
        if not squares:
            continue
        traced = np.concatenate(
            [np.empty((0, 4))]
            + [m.segments for m in sheet.marks if isinstance(m, Strokes) and m.role in TRACED]
        )
        corners = np.concatenate(list(squares.values())).reshape(-1, 2)
        block = shapely.box(*corners.min(axis=0), *corners.max(axis=0)).buffer(2.0)
        lines = shapely.linestrings(traced.reshape(-1, 2, 2))
        assert not shapely.intersects(lines, block).any(), sheet.title


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_crosses_of_neighbours_are_on_both_sheets(path):
    """Each name of a cross stands on two sheets, or on none."""
    found = Counter(
        name
        for sheet in templates(build(load(path).spec), Layout(PAPERS["A4"]))
        for name in owned(sheet, "cross")
    )
    assert set(found.values()) <= {2}


def test_nothing_is_outside_the_printable_room_and_no_text_on_text(sheets):
    for sheet in sheets:
        assert off_the_sheet(sheet) == []
        assert overlapping_texts(sheet) == []
        for mark in sheet.marks:
            if isinstance(mark, Strokes) and len(mark.segments):
                assert mark.segments.min() >= 8.0 - 1e-9
                assert mark.segments[:, 0::2].max() <= sheet.width - 8.0 + 1e-9
                assert mark.segments[:, 1::2].max() <= sheet.height - 8.0 + 1e-9


def test_crosses_of_two_sheets_stand_at_the_same_true_place(sheets):
    """Two crosses on each seam: their distance is the same on both sheets they join."""
    seen: dict[str, list[tuple[int, np.ndarray]]] = {}
    for number, sheet in enumerate(sheets):
        for name, arms in owned(sheet, "cross").items():
            seen.setdefault(name, []).append((number, arms.mean(axis=0)[:2]))
    assert seen
    for name, places in seen.items():
        assert len(places) == 2, name
    letters = {name[:-1] for name in seen}
    for letter in letters:
        (first_a, second_a), (first_b, second_b) = (
            (dict(seen[f"{letter}1"])[n], dict(seen[f"{letter}2"])[n])
            for n in sorted(dict(seen[f"{letter}1"]))
        )
        assert second_a - first_a == pytest.approx(second_b - first_b)
        assert np.linalg.norm(second_a - first_a) > 50.0


def test_lines_go_on_across_a_seam(tall, layout):
    """What both sheets show of the overlap is the same in true millimetres."""
    template = next(
        t
        for t in templates_of(tall, layout.paper, (1.0, 1.0), layout.style)
        if len(t.ways[0].tiles) > 1
    )
    a, b = template.ways[0].tiles[:2]
    low, high = max(a.box[0], b.box[0]), min(a.box[2], b.box[2])
    assert high - low == pytest.approx(15.0)


@pytest.mark.parametrize("correction", [(1.02, 0.985), (0.97, 1.03)])
def test_a_correction_stretches_the_square_with_the_part(tall, layout, correction):
    """With the edges of the paper, as it runs through the printer: a sheet that stands has its long
    edge up."""
    for sheet in templates(tall, layout, correction)[1:]:
        x, y = correction if sheet.width > sheet.height else correction[::-1]
        assert size(owned(sheet, "check")["check 100 mm"]) == pytest.approx((100.0 * x, 100.0 * y))
        assert any(f"x {x:.4f}, y {y:.4f}" in text for text in words(sheet))
        assert off_the_sheet(sheet) == []


@pytest.mark.parametrize("correction", [(1.031, 1.0), (1.0, 0.969)])
def test_more_than_three_per_cent_is_refused(tall, layout, correction):
    with pytest.raises(ValueOutOfRange, match="scaled to fit") as error:
        templates(tall, layout, correction)
    assert error.value.limit in (1.03, 0.97)


def test_stations_are_numbered_from_the_finished_left_end(sheets):
    leg = next(s for s in sheets if s.title.startswith("Leg"))
    labels = {m.text: m.at[0] for m in leg.marks if isinstance(m, Label)}
    assert labels["100"] - labels["50"] == pytest.approx(50.0)


def test_stations_are_in_inches_for_those_who_measure_so(tall, project):
    layout = Layout(
        PAPERS["Letter"], shown=SHOWN_IN16, title=title_block_of(project, date(2025, 3, 4))
    )
    leg = next(s for s in templates(tall, layout) if s.title.startswith("Leg"))
    labels = {m.text: m.at[0] for m in leg.marks if isinstance(m, Label)}
    assert labels["4"] - labels["2"] == pytest.approx(2.0 * 25.4)


def test_cut_scribe_and_trim_lines_are_told_apart(sheets):
    roles = {mark.role for sheet in sheets for mark in sheet.marks}
    assert {Role.CUT, Role.SCRIBE, Role.TRIM, Role.GRID} <= roles


def test_the_angles_are_written(sheets):
    texts = [text for sheet in sheets for text in words(sheet)]
    assert "15°" in texts


def test_the_overview_maps_every_sheet(sheets):
    first = words(sheets[0])
    assert "Full-size templates, 1 / " + str(len(sheets)) in first
    for number in range(2, len(sheets) + 1):
        assert str(number) in first


def test_many_templates_take_more_overview_pages(tall, layout):
    template = templates_of(tall, layout.paper, (1.0, 1.0), layout.style)[0]
    many = [Numbered(template, template.ways[0], 3 + k) for k in range(14)]
    pages = overview(many, layout, 20, (1.0, 1.0))
    assert len(pages) == pages_needed(14, layout) > 1


def test_a_bench_without_angles_says_so(layout):
    bench = build(set_values(default_spec(), {"flare": 0.0, "splay": 0.0, "leg_foot_width": 76.2}))
    (page,) = templates(bench, layout)
    assert any("No part of this bench has an angle" in text for text in words(page))
