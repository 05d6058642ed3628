"""Papers: the pack written from the window, in place and beside the work."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.panels.job_strip import PAPERS, STAGES
from app.window.workplace import Workplace
from exporters.pack import PackOptions, pack_pages
from geometry.drawing.marks import Label, Role, Sheet, Strokes
from geometry.sheets.drawings import drawings
from geometry.sheets.layout import Layout
from geometry.sheets.title_block import title_block_of
from shared.units import SHOWN_IN16
from tests.samples import FOLDER

STAGE = STAGES.index(PAPERS)


def test_the_pack_is_written_from_the_window(
    window: Workplace, tmp_path: Path, qtbot: QtBot
) -> None:
    window.desk.set_values({"length": 1100.0})
    window.go_to(STAGE)
    page = window.stages.papers.page
    window.ask.next = tmp_path / "shop"
    qtbot.mouseClick(page.choose, Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(window.stages.papers.job.done, timeout=30_000):
        qtbot.mouseClick(page.write, Qt.MouseButton.LeftButton)
        assert not page.write.isEnabled()
        assert "Writing" in page.outcome.text()
        window.desk.set_values({"length": 1500.0})  # goes into the next pack, not this one
    assert page.write.isEnabled()
    assert str(tmp_path / "shop") in page.outcome.text()
    assert page.show_folder.isVisible()
    written = {path.name for path in (tmp_path / "shop").iterdir()}
    assert {"drawings.pdf", "templates.pdf", "cut_list.csv", "facts.json"} <= written
    facts = json.loads((tmp_path / "shop" / "facts.json").read_text())
    assert facts["parameters"]["length"]["value"] == 1100.0


def test_a_folder_that_cannot_be_written_is_said_in_place(
    window: Workplace, tmp_path: Path, qtbot: QtBot
) -> None:
    (tmp_path / "shop").write_text("a file where the folder should be")
    window.go_to(STAGE)
    page = window.stages.papers.page
    page.folder.setText(str(tmp_path / "shop"))
    with qtbot.waitSignal(window.stages.papers.job.refused, timeout=30_000):
        qtbot.mouseClick(page.write, Qt.MouseButton.LeftButton)
    assert "Nothing is written" in page.outcome.text()
    assert page.write.isEnabled()
    assert (tmp_path / "shop").read_text() == "a file where the folder should be"


def test_the_first_page_follows_paper_and_units(window: Workplace) -> None:
    window.go_to(STAGE)
    page = window.stages.papers.page
    sizes = set()
    for place in range(page.paper.count()):
        page.paper.setCurrentIndex(place)
        sheet = page.leafing.preview._sheet
        assert (sheet.width, sheet.height) == (page.chosen_paper.width, page.chosen_paper.height)
        sizes.add((sheet.width, sheet.height))
    assert len(sizes) == 4
    page.units.setCurrentIndex(1)
    assert page.chosen_units == SHOWN_IN16
    texts = {getattr(mark, "text", "") for mark in page.leafing.preview._sheet.marks}
    assert "47 ¼" in texts


@pytest.mark.parametrize("name", ["boat_club", "bell_tower"])
def test_the_first_page_is_the_one_that_prints(window: Workplace, name: str) -> None:
    """But for how many sheets there are: lines, texts and the way the paper stands."""
    window.files.open_copy(FOLDER / f"{name}_bench.settle")
    window.go_to(STAGE)
    shown = window.stages.papers.page.leafing.preview._sheet
    project, paper = window.desk.project, window.stages.papers.page.chosen_paper
    layout = Layout(paper, title=title_block_of(project, date.today()))  # noqa: DTZ011
    printed = drawings(window.desk.model.bench, layout)[0]
    assert (shown.width, shown.height) == (printed.width, printed.height)
    for role in (Role.HIDDEN, Role.VISIBLE, Role.DIMENSION):
        counts = [
            sum(len(m.segments) for m in sheet.marks if isinstance(m, Strokes) and m.role is role)
            for sheet in (shown, printed)
        ]
        assert counts[0] == counts[1]
    words = [{m.text for m in sheet.marks if isinstance(m, Label)} for sheet in (shown, printed)]
    assert words[0] - words[1] == {"1"}


def test_an_empty_folder_name_cannot_be_written_to(window: Workplace) -> None:
    window.go_to(STAGE)
    window.stages.papers.page.folder.setText("  ")
    assert not window.stages.papers.page.write.isEnabled()


def test_do_not_cut_is_said_before_writing(window: Workplace) -> None:
    window.desk.set_values({"cutter_diameter": 30.0})
    window.presenter.look_for_findings()
    window.go_to(STAGE)
    assert "do not cut" in window.stages.papers.page.alarm.text()
    assert window.stages.papers.page.alarm.isVisible()


@pytest.mark.parametrize("changes", [{"length": 1150.0}])
def test_the_first_page_follows_the_bench(window: Workplace, changes: dict[str, float]) -> None:
    window.go_to(STAGE)
    before = window.stages.papers.page.leafing.preview._sheet
    window.desk.set_values(changes)
    assert window.stages.papers.page.leafing.preview._sheet is not before


def test_a_fault_while_writing_is_told_and_logged(
    window: Workplace, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(*_arguments: object) -> None:
        raise RuntimeError("a fault on purpose")

    monkeypatch.setattr("exporters.pack.write_pack", fail)
    window.go_to(STAGE)
    page = window.stages.papers.page
    page.folder.setText(str(tmp_path / "shop"))
    with qtbot.captureExceptions() as caught:
        qtbot.mouseClick(page.write, Qt.MouseButton.LeftButton)
        qtbot.waitUntil(lambda: len(caught) == 1)
    assert "a fault on purpose" in str(caught[0][1])
    assert "Nothing is written" in page.outcome.text()
    assert page.write.isEnabled()


def test_all_pages_can_be_leafed_through(window: Workplace, qtbot: QtBot) -> None:
    """They are the pages of the files: as many, with the same words."""
    window.go_to(STAGE)
    papers = window.stages.papers
    leafing = papers.page.leafing
    assert not leafing.back.isEnabled()
    first = leafing.preview._sheet
    with qtbot.waitSignal(papers.drawing.done, timeout=30_000):
        qtbot.mouseClick(leafing.on, Qt.MouseButton.LeftButton)
        assert not leafing.on.isEnabled()
    pages = pack_pages(window.desk.project, PackOptions(), datetime.now().astimezone().date())
    assert f"2 of {len(pages)}" in leafing.words.text()
    assert said(leafing.preview._sheet) == said(pages[1]) != said(first)
    for page in pages[2:]:
        qtbot.mouseClick(leafing.on, Qt.MouseButton.LeftButton)
        assert said(leafing.preview._sheet) == said(page)
    assert not leafing.on.isEnabled()
    qtbot.mouseClick(leafing.back, Qt.MouseButton.LeftButton)
    assert said(leafing.preview._sheet) == said(pages[-2])


def test_the_page_that_is_looked_at_follows_the_bench(window: Workplace, qtbot: QtBot) -> None:
    window.go_to(STAGE)
    papers = window.stages.papers
    with qtbot.waitSignal(papers.drawing.done, timeout=30_000):
        qtbot.mouseClick(papers.page.leafing.on, Qt.MouseButton.LeftButton)
    before = said(papers.page.leafing.preview._sheet)
    with qtbot.waitSignal(papers.drawing.done, timeout=30_000):
        window.desk.set_values({"length": 1150.0, "depth": 371.0})
    assert said(papers.page.leafing.preview._sheet) != before
    assert papers.page.leafing.words.text().startswith("2 of ")


def test_a_measured_check_square_corrects_the_templates(window: Workplace, qtbot: QtBot) -> None:
    """A printer that makes 99.5 mm of 100 along its long edge: 100 / 99.5 = 1.0050 (by hand)."""
    window.go_to(STAGE)
    papers = window.stages.papers
    field = papers.page.square.fields[0]
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, "99.5")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.presenter.preferences.square == (99.5, 100.0)
    texts = [text for page in papers._order().pages() for text in said(page)]
    assert any("1.0050" in text for text in texts)
    window.prefer(replace(window.presenter.preferences, text_percent=100))
    assert field.text() == "99.5 mm"


@pytest.mark.parametrize("typed", ["95", "0", "a little", ""])
def test_a_square_that_was_scaled_to_fit_is_refused_in_place(
    window: Workplace, qtbot: QtBot, typed: str
) -> None:
    window.go_to(STAGE)
    square = window.stages.papers.page.square
    square.fields[1].clear()
    qtbot.keyClicks(square.fields[1], typed)
    qtbot.keyClick(square.fields[1], Qt.Key.Key_Return)
    assert square.note.text().startswith("✕")
    assert window.presenter.preferences.square == (100.0, 100.0)


def said(sheet: Sheet) -> list[str]:
    return [mark.text for mark in sheet.marks if isinstance(mark, Label)]
