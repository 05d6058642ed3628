"""The title block against the table of ISO 7200:2004."""

from __future__ import annotations

import csv
import io
from dataclasses import fields, replace
from datetime import date

import pytest

from geometry.drawing.marks import Label, Sheet
from geometry.sheets.lettering_fit import fitted
from geometry.sheets.projection_symbol import projection_symbol
from geometry.sheets.title_block import (
    TITLE_BLOCK_HEIGHT,
    Reading,
    TitleBlock,
    title_block_marks,
    title_block_of,
)
from shared.lettering import text_width
from shared.paper import TITLE_BLOCK_WIDTH
from tests.geometry.sheets.on_sheet import overlapping_texts, struck_texts, words

# ISO 7200:2004, read in a page that tabulates it: field, mandatory.
ISO_7200 = """\
legal owner,yes
identification number,yes
revision index,no
date of issue,yes
segment/sheet number,yes
number of segments/sheets,no
language code,no
title,yes
supplementary title,no
responsible department,no
technical reference,no
approval person,yes
creator,yes
document type,yes
document status,no
"""

READING = Reading("1:10", "mm", third_angle=True)


def block() -> TitleBlock:
    return TitleBlock(
        legal_owner="Marsh & Reed",
        identification_number="FL-7",
        date_of_issue="2025-03-04",
        title="Ferry landing bench",
        creator="I. Marsh",
        approval_person="J. Reed",
        document_type="Part drawing",
        sheet_number=3,
        number_of_sheets=12,
        revision_index="C",
        supplementary_title="Leg",
        responsible_department="bench room",
        technical_reference="Tide survey 2",
        document_status="for making",
    )


def test_every_field_of_the_standard_is_in_the_block():
    names = {field.name.replace("_", " ") for field in fields(TitleBlock)}
    for name, _ in csv.reader(io.StringIO(ISO_7200)):
        assert name.replace("segment/", "").replace("segments/", "") in names


def test_every_word_given_is_lettered():
    texts = [
        m.text for m in title_block_marks(block(), READING, (0.0, 0.0)) if isinstance(m, Label)
    ]
    for field in fields(TitleBlock):
        value = getattr(block(), field.name)
        if isinstance(value, str):
            assert value in texts, field.name
    assert "3 / 12" in texts
    assert "1:10" in texts
    assert "mm" in texts


def test_it_is_as_wide_as_the_standard_says():
    """180 mm, ISO 7200 (from memory): the width of A4 less its borders."""
    assert TITLE_BLOCK_WIDTH == 180.0
    for mark in title_block_marks(block(), READING, (200.0, 10.0)):
        if isinstance(mark, Label):
            width = text_width(mark.text, mark.height, mark.bold)
            assert mark.at[0] >= 20.0
            assert mark.at[0] + width <= 200.0
            assert 10.0 <= mark.at[1] <= 10.0 + TITLE_BLOCK_HEIGHT


def test_a_long_title_is_lettered_smaller_and_then_cut():
    text, height = fitted("short", 60.0, 3.5)
    assert (text, height) == ("short", 3.5)
    text, height = fitted("a title that wants rather more room", 50.0, 3.5)
    assert height < 3.5
    assert text == "a title that wants rather more room"
    text, height = fitted("w" * 200, 30.0, 3.5)
    assert text.endswith("…")
    assert text_width(text, height) <= 30.0


def test_a_project_fills_the_block(project):
    found = title_block_of(project, date(2025, 3, 4))
    assert found.title == "Ferry landing bench"
    assert found.legal_owner == "Marsh & Reed"
    assert found.date_of_issue == "2025-03-04"
    assert found.on_sheet(2, 9).number_of_sheets == 9
    assert found.about("Part drawing", "Leg").supplementary_title == "Leg"
    assert found.about("General arrangement drawing").supplementary_title == "North quay"


@pytest.mark.parametrize("third_angle", [True, False])
def test_the_symbol_shows_both_circles_from_the_small_end(third_angle):
    """In third angle the view from the left stands on the left, in first angle on the right."""
    marks = projection_symbol((0.0, 0.0), 2.0, third_angle=third_angle)
    cone, small, large, _ = marks
    assert (small.centre[0] < 0.0) is third_angle
    assert large.radius == 2.0 * small.radius
    # The cone's small end is its left end: the end that a viewer from the left sees nearer.
    left = min(cone.segments.tolist(), key=lambda row: row[0] + row[2])
    assert abs(left[3] - left[1]) == pytest.approx(2.0 * small.radius)


def test_what_is_too_long_for_a_line_takes_two():
    """In a cell 38 wide, less 1.5 on each side, and below the title, 70 wide."""
    long = replace(
        block(),
        approval_person="Farthing Street school of dance",
        supplementary_title="Half-blind dovetail: Drawer side and Drawer box front (6 alike)",
    )
    marks = title_block_marks(long, READING, (200.0, 10.0))
    sheet = Sheet("", 300.0, 200.0, marks)
    texts = words(sheet)
    for whole in (long.approval_person, long.supplementary_title):
        assert whole not in texts
        first = next(text for text in texts if whole.startswith(text))
        assert whole.removeprefix(first).strip() in texts
    assert not any(text.endswith("…") for text in texts)
    assert overlapping_texts(sheet) == []
    assert struck_texts(sheet) == []
