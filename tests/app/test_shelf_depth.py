"""A shelf's depth follows from its set-back, and is typed and dragged all the same."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.stick_delegate import value_rect
from app.window.workplace import Workplace
from geometry.bench.limits import limits
from geometry.bench.openings import filled_with
from tests.app.hand import MouseHand
from tests.app.test_typing import type_on_stick

SET_BACK, DEPTH = "opening_1_shelf_set_back", "shelf_1_depth"


@pytest.fixture
def shelf(window: Workplace) -> Workplace:
    window.desk.set_values({"opening_1_fill": "shelf"})
    QApplication.processEvents()
    return window


def depth(window: Workplace) -> float:
    return next(s.value for s in window.desk.model.bench.derived if s.name == DEPTH)


def whole(window: Workplace) -> float:
    """From the uprights' fronts to the back."""
    (at,) = filled_with(window.desk.spec, "shelf")
    return at.front - at.back


def test_a_depth_typed_on_the_stick_sets_the_set_back(shelf: Workplace, qtbot: QtBot) -> None:
    type_on_stick(shelf, qtbot, DEPTH, "250")
    assert depth(shelf) == pytest.approx(250.0, abs=1e-6)
    assert shelf.desk.spec.number(SET_BACK) == pytest.approx(whole(shelf) - 250.0, abs=1e-6)
    assert shelf.desk.undo_words.startswith("Shelf depth")


def test_a_depth_typed_in_plan_is_held_within_its_limits(
    shelf: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    hand.click(hand.text_of(DEPTH))
    entry = shelf.page.canvas.deeds.entry
    assert entry.field.text() == entry.field.selectedText()
    assert entry.field.text().startswith(f"{depth(shelf):.0f}"[:2])
    qtbot.keyClicks(entry.field, "9 m")
    qtbot.keyClick(entry.field, Qt.Key.Key_Return)
    assert "Shelf set back, opening 1” goes no lower than 0" in entry.reason.text()
    entry.field.selectAll()
    qtbot.keyClicks(entry.field, "200")
    qtbot.keyClick(entry.field, Qt.Key.Key_Return)
    assert depth(shelf) == pytest.approx(200.0, abs=1e-6)


def test_a_depth_is_dragged_in_plan_until_it_is_stopped(shelf: Workplace, hand: MouseHand) -> None:
    before, up = shelf.desk.spec.number(SET_BACK), 10.0 / shelf.page.canvas.view.pixels_per_mm
    hand.press(hand.text_of(DEPTH))
    hand.pull((0.0, -10.0))  # toward the back of the bench
    assert shelf.desk.spec.number(SET_BACK) == pytest.approx(before + up, abs=5.0)
    assert depth(shelf) + shelf.desk.spec.number(SET_BACK) == pytest.approx(whole(shelf))
    hand.pull((0.0, -4000.0))
    assert "Shelf depth" in shelf.page.canvas.sight.note
    hand.release()
    assert shelf.desk.spec.number(SET_BACK) == limits(shelf.desk.spec, SET_BACK).maximum


def test_arrows_on_the_row_of_a_depth(shelf: Workplace, qtbot: QtBot) -> None:
    """And on the row of a size that nothing sets they do nothing."""
    page = shelf.page.stick
    for name, more in ((DEPTH, 1.0), ("shelf_1_length", 0.0)):
        before, place = depth(shelf), page.list.stick.place_of(name)
        index = page.list.stick.index(place)
        page.list.setCurrentIndex(index)
        assert value_rect(page.list.visualRect(index), page.list.fontMetrics()).isValid()
        qtbot.keyClick(page.list, Qt.Key.Key_Right)
        assert depth(shelf) == pytest.approx(before + more)
