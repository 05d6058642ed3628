"""The section of a maker is kept with the bench: saved, opened, printed, and no step of history."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window.workplace import Workplace
from exporters.pack import PackOptions, pack_pages
from exporters.project_file import load
from geometry.design.cutting_plane import Plane, Way
from geometry.drawing.marks import Label, Sheet
from tests.app.hand import MouseHand

LEFT = Qt.MouseButton.LeftButton


def section(window: Workplace) -> MouseHand:
    window.commands["section"].trigger()
    QApplication.processEvents()
    window.page.looks.refresh()
    return MouseHand(window.page.looks)


def pull(window: Workplace, by: float) -> None:
    """Take the plane's line in its middle and pull it to the right."""
    hand, looks = section(window), window.page.looks
    (x0, y0), (x1, y1) = looks._sheet.key.ends
    hand.drag(looks.to_pixels(((x0 + x1) / 2.0, (y0 + y1) / 2.0)), (by, 0.0))


def reopened(window: Workplace, path: Path) -> None:
    """Save, lay a new bench down, and open the file again."""
    window.ask.next = path
    assert window.files.save_as()
    window.commands["new"].trigger()
    assert window.desk.project.section is None
    assert window.files.open(path)


def titles(pages: tuple[Sheet, ...]) -> list[str]:
    return [page.title for page in pages]


def words(page: Sheet) -> list[str]:
    return [mark.text for mark in page.marks if isinstance(mark, Label)]


def test_only_looking_at_a_section_keeps_none(window: Workplace) -> None:
    section(window)
    for way in (1, 2, 3, 0):
        window.page._way_buttons.button(way).click()
    assert window.desk.project.section is None
    assert window.desk.saved
    assert not window.page.plane.keep.isChecked()


def test_a_plane_that_was_pulled_is_there_again_when_the_file_is_opened(
    window: Workplace, tmp_path: Path
) -> None:
    pull(window, 40.0)
    looks = window.page.looks
    put = looks.plane
    assert put.way is Way.ACROSS
    assert put.at > 600.0
    assert window.desk.project.section == put
    assert window.page.plane.keep.isChecked()
    assert not window.desk.saved, "there is something to save"
    assert window.desk.undo_count == 0, "but nothing to undo"
    reopened(window, tmp_path / "bench.settle")
    assert window.desk.saved
    section(window)
    assert looks.plane == put
    assert load(tmp_path / "bench.settle").section == put


@pytest.mark.parametrize("way", [0, 1, 2, 3])
def test_the_way_the_place_and_the_turn_come_back(
    window: Workplace, qtbot: QtBot, tmp_path: Path, way: int
) -> None:
    section(window)
    page, looks = window.page, window.page.looks
    page._way_buttons.button(way).click()
    qtbot.keyClick(looks, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.keyClick(looks, Qt.Key.Key_PageUp, Qt.KeyboardModifier.ShiftModifier)
    put = looks.plane
    assert window.desk.project.section == put
    reopened(window, tmp_path / "bench.settle")
    assert looks.plane == put
    assert page._way_buttons.checkedId() == way
    assert put.way is tuple(Way)[way]
    looks.refresh()
    first = looks.marks
    window.commands["new"].trigger()
    looks.refresh()
    assert looks.plane != put, "another bench has a section of its own"
    window.files.open(tmp_path / "bench.settle")
    looks.refresh()
    texts = [mark.text for mark in looks.marks if isinstance(mark, Label)]
    assert texts == [mark.text for mark in first if isinstance(mark, Label)]


def test_what_was_kept_follows_the_way_that_is_chosen(window: Workplace) -> None:
    pull(window, 30.0)
    window.page._way_buttons.button(2).click()
    assert window.desk.project.section is not None
    assert window.desk.project.section.way is Way.LEVEL


def test_undo_takes_the_bench_back_and_leaves_the_section(window: Workplace) -> None:
    assert window.presenter.type_value("length", "1300") == ""
    pull(window, 40.0)
    put = window.desk.project.section
    window.desk.undo()
    assert window.desk.spec.number("length") == 1200.0
    assert window.desk.project.section == put
    assert not window.desk.saved
    window.desk.redo()
    assert window.desk.spec.number("length") == 1300.0
    assert window.desk.project.section == put


def test_a_plane_that_is_put_back_by_escape_is_not_kept(window: Workplace, qtbot: QtBot) -> None:
    hand, looks = section(window), window.page.looks
    (x0, y0), (x1, y1) = looks._sheet.key.ends
    hand.press(looks.to_pixels(((x0 + x1) / 2.0, (y0 + y1) / 2.0)))
    hand.pull((30.0, 0.0))
    assert window.desk.project.section is None, "not while the hand is on it"
    qtbot.keyClick(looks, Qt.Key.Key_Escape)
    hand.release()
    assert window.desk.project.section is None
    assert window.desk.saved


def test_a_maker_says_whether_it_goes_into_the_papers(window: Workplace, qtbot: QtBot) -> None:
    section(window)
    keep, looks = window.page.plane.keep, window.page.looks
    qtbot.mouseClick(keep, LEFT)
    assert window.desk.project.section == looks.plane
    qtbot.mouseClick(keep, LEFT)
    assert window.desk.project.section is None
    pull(window, 30.0)
    assert window.desk.project.section is None, "it was said that it does not"
    assert not keep.isChecked()
    qtbot.mouseClick(keep, LEFT)
    assert window.desk.project.section == looks.plane


def test_the_section_is_printed_and_the_others_have_the_letters_after_it(
    window: Workplace,
) -> None:
    """Of the plain bench, cut at 640 of 1200."""
    plain = pack_pages(window.desk.project, PackOptions(), date(2026, 1, 2))
    window.desk.keep_section(Plane(Way.ACROSS, 640.0))
    pages = pack_pages(window.desk.project, PackOptions(), date(2026, 1, 2))
    assert len(pages) == len(plain) + 1
    place = titles(pages).index("Section A–A")
    assert titles(pages)[place + 1] == "Sections"
    own, others = words(pages[place]), words(pages[place + 1])
    assert "A–A" in own
    assert own.count("A") == 2, "at either end of the plane's line"
    assert any(text.startswith("Cut across, 640 mm from the left end, 1:") for text in own)
    assert any(text.startswith("Front elevation, 1:") for text in own)
    assert not any("Pull the line" in text for text in own)
    assert any(text.startswith("Section B–B") for text in others)
    assert any(text.startswith("Section C–C") for text in others)
    assert sorted(text for text in others if text in "ABC") == ["B", "B", "C", "C"]
    before = words(plain[titles(plain).index("Sections")])
    assert any(text.startswith("Section A–A") for text in before)


def test_a_section_that_the_bench_has_shrunk_away_from_is_not_printed(window: Workplace) -> None:
    window.desk.keep_section(Plane(Way.ACROSS, 5000.0))
    pages = pack_pages(window.desk.project, PackOptions(), date(2026, 1, 2))
    assert "Section A–A" not in titles(pages)
    section(window)
    looks = window.page.looks
    assert looks.plane.at == pytest.approx(1200.0)
    assert window.desk.project.section.at == 5000.0
