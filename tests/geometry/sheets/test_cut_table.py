"""The table of cuts, whole and in pieces: nothing is lost however long it is."""

from __future__ import annotations

from datetime import date

import pytest

from geometry.sheets.cut_table import CutTable, divided
from geometry.sheets.layout import Layout
from geometry.sheets.page_plan import DrawnPart, planned
from geometry.sheets.title_block import title_block_of
from geometry.views.look import look_at_part
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from shared.paper import PAPERS

VIEWS = (PART_FACE, PART_EDGE, PART_END)


@pytest.fixture
def layout(project) -> Layout:
    return Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))


def pages_of(part, table: CutTable, layout: Layout):
    views = [look_at_part(part, view) for view in VIEWS]
    bare = DrawnPart(views, [], lambda blocks, *_: tuple(blocks))
    return planned(bare, table, 20.0, layout)


def test_a_slice_runs_on_from_the_cuts_into_the_points(layout):
    """Two cuts and three points: rows 1 to 3 are the second cut and the first two points."""
    cuts = (("1", "rebate", "wide"), ("2", "notch", "deep"))
    points = tuple((str(k), "10", "20", "3") for k in (7, 8, 9))
    table = CutTable(cuts, points, layout)
    assert len(table) == 5
    texts = [line.text for line in table(80.0, slice(1, 4)).lines]
    assert "notch" in texts
    assert "rebate" not in texts
    assert {"7", "8"} <= set(texts)
    assert "9" not in texts
    assert table(80.0, slice(5, 6)).height == 0.0


def test_points_beyond_a_page_go_on_to_the_next_and_none_is_lost(plain, layout):
    """Nine hundred points: on A4 lying a page has room for some forty rows, and in a width of some
    250 mm for some six columns of points, so that they take several pages."""
    points = tuple((f"no{k}", "1000", "100", "12") for k in range(900))
    table = CutTable((("1", "faceted relief", "see the table of points"),), points, layout)
    pages = pages_of(plain, table, layout)
    told = [line.text for page in pages for line in page.table.lines]
    assert [told.count(f"no{k}") for k in range(900)] == [1] * 900
    assert len(pages) > 3
    left, _, right, top = layout.room
    for page in pages:
        x, y = page.table_corner
        if page.table.height:
            assert y <= top
            assert y - page.table.height >= layout.border[1]
            assert left <= x <= right - page.table.width + 1e-6


def test_a_row_that_no_page_has_room_for_is_printed_all_the_same(plain, layout):
    """Without a comma there is nowhere to divide it."""
    rows = (("1", "odd", "word " * 4000), ("2", "notch", "deep"))
    told = [
        line.text
        for page in pages_of(plain, CutTable(rows, (), layout), layout)
        for line in page.table.lines
    ]
    assert sum(text.split().count("word") for text in told) == 4000
    assert "notch" in told


def test_a_long_list_is_divided_at_its_commas():
    """Eleven letters a place and a blank between: four places take 47 letters, five 59."""
    places = [f"1{k} to 2{k}00," for k in range(9)]
    assert {len(place) for place in places} == {11}
    pieces = divided(" ".join(places), 50)
    assert [piece.count(",") for piece in pieces] == [4, 4, 1]
    assert " ".join(pieces) == " ".join(places)
    assert divided("no stop in it at all", 5) == ["no stop in it at all"]
