"""Every page can be read: no line through a text, no text on another, none cut off or cut short."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.drawing.marks import Sheet
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from geometry.sheets.templates import templates
from geometry.sheets.title_block import title_block_of
from shared.paper import PAPERS
from shared.units import SHOWN_MM
from tests.geometry.sheets.on_sheet import off_the_sheet, overlapping_texts, struck_texts, words

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
# One with raking legs and short aprons, whose details stand close to their dimensions.
QUICK = ("apiary_bench", "choir_loft_bench")
# The pages of parts, of joints and of the whole are held for every sample in files of their own.
SWEPT = [path for path in SAMPLES if path.stem not in QUICK][::3]


def samples() -> list[object]:
    return [
        pytest.param(path, id=path.stem, marks=() if path.stem in QUICK else pytest.mark.sweep)
        for path in SAMPLES
        if path.stem in QUICK or path in SWEPT
    ]


def pages(path: Path, changes: dict[str, float | str], layout: Layout) -> tuple[Sheet, ...]:
    project = load(path)
    bench = build(set_values(project.spec, changes))
    own = Layout(layout.paper, shown=layout.shown, title=title_block_of(project, date(2025, 3, 4)))
    return (*drawings(bench, own), *templates(bench, own))


def hold_readable(sheets: tuple[Sheet, ...]) -> None:
    for sheet in sheets:
        assert struck_texts(sheet) == [], sheet.title
        assert overlapping_texts(sheet) == [], sheet.title
        assert off_the_sheet(sheet) == [], sheet.title
        assert [text for text in words(sheet) if text.endswith("…")] == [], sheet.title


@pytest.mark.parametrize("path", samples())
def test_the_pages_of_a_sample_can_be_read(path):
    hold_readable(pages(path, {}, Layout(PAPERS["A4"], shown=SHOWN_MM)))
