"""Pages of parts and the whole set: nothing off the sheet, no text on text, all of it there."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from geometry.bench.build import build
from geometry.drawing.marks import Role, Strokes
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from geometry.sheets.part_names import group_title
from geometry.sheets.part_sheets import called, part_groups, part_leaves
from geometry.sheets.title_block import title_block_of
from geometry.sheets.trim import proud_ends, proud_regions
from shared.paper import PAPERS
from shared.units import SHOWN_IN32
from shared.words import Words
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, words
from tests.random_benches import random_spec


@pytest.fixture(scope="module")
def layout(project) -> Layout:
    return Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))


def test_alike_parts_share_a_page(bench):
    groups = part_groups(bench)
    assert sum(len(group) for group in groups) == len(bench.parts)
    legs = [group for group in groups if group[0].kind == "leg"]
    assert sum(len(group) for group in legs) == 4
    for group in groups:
        assert len({part.shape for part in group}) == 1


def test_parts_of_two_kinds_never_share_a_page(bench):
    """As a top and a bottom may be of one shape: a page called Top would hide the bottom."""
    top = bench.part("top")
    twin = replace(top, name="bottom", title="Bottom", kind="bottom")
    groups = part_groups(replace(bench, parts=(top, twin)))
    assert [len(group) for group in groups] == [1, 1]


def test_the_set_is_numbered_and_each_part_has_its_page(bench, layout):
    sheets = drawings(bench, layout)
    for number, sheet in enumerate(sheets, start=1):
        assert f"{number} / {len(sheets)}" in words(sheet)
    titles = [sheet.title for sheet in sheets]
    assert titles[0] == "General arrangement"
    for told in called(part_groups(bench)):
        assert told.title in titles


def test_a_group_is_called_by_what_its_parts_share(plain):
    partitions = [replace(plain, title=f"Partition {k}") for k in (1, 2)]
    legs = [replace(plain, title=f"Leg, {where}") for where in ("back left", "back right")]
    assert group_title(partitions) == "Partition"
    assert group_title(legs) == "Leg, back"
    assert group_title(legs[:1]) == "Leg, back left"


def test_a_page_says_how_many_of_what_from_which_blank(bench, layout):
    legs = next(group for group in part_groups(bench) if group[0].kind == "leg")
    page = part_leaves(legs, layout)[0]
    texts = " ".join(m.text for m in page.marks if hasattr(m, "text"))
    assert f"make {len(legs)}" in texts
    assert "White oak, blank" in texts
    assert "grain along the length" in texts


def test_wood_left_proud_is_drawn_and_said(splayed_leg, layout):
    assert proud_ends(splayed_leg) == pytest.approx((3.0, 0.0))
    (region,) = proud_regions(splayed_leg)
    assert region.area == pytest.approx(3.0 * 80.0, rel=1e-6)  # 3 mm along, 80 mm across
    page = part_leaves([splayed_leg], layout)[0]
    assert any(isinstance(m, Strokes) and m.role is Role.TRIM for m in page.marks)
    texts = " ".join(m.text for m in page.marks if hasattr(m, "text"))
    assert "Leave 3 mm on the left end proud, to trim flush after the glue-up" in texts


def test_the_table_names_every_cut(housed, layout):
    page = part_leaves([housed], layout)
    texts = " ".join(m.text for p in page for m in p.marks if hasattr(m, "text"))
    assert "stopped housing" in texts
    assert "18.2 mm wide, 6.4 mm deep in the face side" in texts
    assert "rebate" in texts


def test_small_sizes_are_drawn_as_details(housed, layout):
    """A rebate of 6 mm is less than 1 mm at 1:10, so it is drawn larger beside the views."""
    texts = [m.text for p in part_leaves([housed], layout) for m in p.marks if hasattr(m, "text")]
    assert any(text.startswith("Detail A, ") for text in texts)
    assert "6" in texts
    assert "10" in texts


@pytest.mark.parametrize(("seed", "paper"), [(1, "A4"), (3, "Letter"), (6, "A3"), (11, "Tabloid")])
def test_nothing_overlaps_on_the_sheets_of_odd_benches(seed, paper, project):
    bench = build(random_spec(seed))
    layout = Layout(
        PAPERS[paper],
        third_angle=seed % 2 == 0,
        shown=SHOWN_IN32 if paper in ("Letter", "Tabloid") else Layout(PAPERS[paper]).shown,
        words=Words.AMERICAN if paper == "Letter" else Words.BRITISH,
        title=title_block_of(project, date(2025, 3, 4)),
    )
    for sheet in drawings(bench, layout):
        assert off_the_sheet(sheet) == [], sheet.title
        assert overlapping_texts(sheet) == [], sheet.title


def test_american_words_are_on_the_page(housed, project):
    layout = Layout(
        PAPERS["A4"], words=Words.AMERICAN, title=title_block_of(project, date(2025, 3, 4))
    )
    texts = " ".join(
        m.text for p in part_leaves([housed], layout) for m in p.marks if hasattr(m, "text")
    )
    assert "dado" in texts
    assert "rabbet" in texts
    assert "housing" not in texts.replace("Housed", "")
