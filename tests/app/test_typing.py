"""Typing values: on the sheet and on the story stick, in any unit, right and wrong."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox
from pytestqt.qtbot import QtBot

from app.look.value_field import ValueField
from app.panels.stick_delegate import value_rect
from app.panels.stick_model import StickRole
from app.window.workplace import Workplace
from tests.app.hand import MouseHand

# The five forms, and what they are in millimetres (1 in = 25.4 mm exactly).
FORMS = [
    ("36 1/2", 927.1),
    ("36.5 in", 927.1),
    ("927 mm", 927.0),
    ("92.7 cm", 927.0),
    ("3' 1/2\"", 927.1),
]


@pytest.mark.parametrize("inches", [False, True])
@pytest.mark.parametrize(("text", "mm"), FORMS)
def test_the_five_forms_on_the_sheet(
    window: Workplace, hand: MouseHand, qtbot: QtBot, text: str, mm: float, inches: bool
) -> None:
    if inches:
        window.commands["other_unit"].trigger()
    hand.click(hand.text_of("length"))
    field = window.page.canvas.deeds.entry.field
    assert field.isVisible()
    assert field.selectedText() == field.text()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.desk.spec.number("length") == pytest.approx(mm, abs=1e-9)
    assert not window.page.canvas.deeds.entry.isVisible()
    assert window.desk.undo_count == 1


@pytest.mark.parametrize(("text", "mm"), FORMS)
def test_the_five_forms_on_the_story_stick(
    window: Workplace, qtbot: QtBot, text: str, mm: float
) -> None:
    type_on_stick(window, qtbot, "length", text)
    assert window.desk.spec.number("length") == pytest.approx(mm, abs=1e-9)
    assert window.desk.undo_words == "Length"


def test_a_wrong_text_on_the_sheet_stays_with_what_would_be_right(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    hand.click(hand.text_of("length"))
    entry = window.page.canvas.deeds.entry
    qtbot.keyClicks(entry.field, "9 m")
    qtbot.keyClick(entry.field, Qt.Key.Key_Return)
    assert entry.isVisible()
    assert entry.field.text() == "9 m"
    assert "3600 mm" in entry.reason.text()
    assert entry.reason.isVisible()
    assert window.desk.spec.number("length") == 1200.0
    assert window.desk.undo_count == 0
    qtbot.keyClick(entry.field, Qt.Key.Key_Escape)
    assert not entry.isVisible()
    assert window.page.canvas.hasFocus()


def test_a_wrong_text_is_not_lost_when_the_hand_goes_elsewhere(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    hand.click(hand.text_of("length"))
    entry = window.page.canvas.deeds.entry
    qtbot.keyClicks(entry.field, "about a yard")
    window.page.stick.filter.setFocus()
    assert entry.isVisible()
    assert entry.reason.isVisible()


def test_a_wrong_text_on_the_stick_stays_in_its_row(window: Workplace, qtbot: QtBot) -> None:
    field = type_on_stick(window, qtbot, "length", "12 ells")
    index = row_of(window, "length")
    assert field.isVisible()
    assert field.wrong
    assert index.data(StickRole.WRONG_TEXT) == "12 ells"
    assert index.data(StickRole.WRONG_WHY)
    assert index.data(StickRole.WRONG_WHY) in index.data(Qt.ItemDataRole.AccessibleTextRole)
    assert window.desk.spec.number("length") == 1200.0
    field.selectAll()
    qtbot.keyClicks(field, "1300")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.desk.spec.number("length") == 1300.0
    assert not row_of(window, "length").data(StickRole.WRONG_TEXT)


def test_a_value_that_cannot_be_built_keeps_the_last_good_drawing(
    window: Workplace, qtbot: QtBot
) -> None:
    """A case 90 high leaves no inside between boards 49 thick."""
    type_on_stick(window, qtbot, "board_thickness", "49")
    good = window.page.canvas.view.model
    assert good.spec.number("board_thickness") == 49.0
    field = type_on_stick(window, qtbot, "case_height", "90")
    assert "least it can be" in field.wrong
    assert window.page.canvas.view.model is good
    assert window.desk.undo_count == 1


def test_a_digit_over_a_dimension_starts_its_value(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    window.page.canvas.setFocus()
    hand.move(hand.text_of("depth"))
    qtbot.keyClick(window.page.canvas, "4")
    entry = window.page.canvas.deeds.entry
    assert entry.field.text() == "4"
    qtbot.keyClicks(entry.field, "00")
    qtbot.keyClick(entry.field, Qt.Key.Key_Return)
    assert window.desk.spec.number("depth") == 400.0


def test_a_choice_is_chosen_from_a_list(window: Workplace) -> None:
    stick = window.page.stick
    stick.take_up("deep_end")
    stick.list.setFocus()
    stick.list.edit(stick.list.currentIndex())
    box = stick.list.findChild(QComboBox)
    assert box is not None
    box.setCurrentText("right")
    box.activated.emit(box.currentIndex())
    assert window.desk.spec.word("deep_end") == "right"
    assert window.desk.undo_count == 1


def test_a_click_on_a_value_of_the_stick_opens_it(window: Workplace, qtbot: QtBot) -> None:
    stick = window.page.stick.list
    area = value_rect(stick.visualRect(row_of(window, "depth")), stick.fontMetrics())
    qtbot.mouseClick(stick.viewport(), Qt.MouseButton.LeftButton, pos=area.center())
    assert stick.findChild(ValueField) is not None


def test_a_derived_row_cannot_be_typed_into(window: Workplace, qtbot: QtBot) -> None:
    window.page.stick.take_up("seat_height")
    window.page.stick.list.setFocus()
    qtbot.keyClick(window.page.stick.list, Qt.Key.Key_Return)
    assert window.page.stick.list.findChild(ValueField) is None
    assert "ollows from" in str(
        row_of(window, "seat_height").data(Qt.ItemDataRole.AccessibleDescriptionRole)
    )


def type_on_stick(window: Workplace, qtbot: QtBot, name: str, text: str) -> ValueField:
    """Go to a row with the keyboard and type."""
    stick = window.page.stick
    stick.list.setFocus()
    stick.take_up(name)
    qtbot.keyClick(stick.list, Qt.Key.Key_Return)
    field = QApplication.focusWidget()
    assert isinstance(field, ValueField)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)
    return field


def row_of(window: Workplace, name: str):
    stick = window.page.stick.list.stick
    return stick.index(stick.place_of(name))


@pytest.mark.parametrize("on_sheet", [True, False])
def test_a_value_opened_and_left_as_it_is_shown_is_not_rounded(
    window: Workplace, hand: MouseHand, qtbot: QtBot, on_sheet: bool
) -> None:
    """4' 11 3/8" are 1508.125 mm, shown as 1508.1: Enter on that changes nothing."""
    assert window.presenter.type_value("length", "4' 11 3/8") == ""
    qtbot.wait(20)
    steps = window.desk.undo_count
    if on_sheet:
        hand.click(hand.text_of("length"))
        field = window.page.canvas.deeds.entry.field
        assert field.text() == "1508.1"
        qtbot.keyClick(field, Qt.Key.Key_Return)
    else:
        stick = window.page.stick.list.stick
        index = stick.index(stick.place_of("length"))
        assert stick.setData(index, index.data(Qt.ItemDataRole.EditRole))
    assert window.desk.spec.number("length") == 1508.125
    assert window.desk.undo_count == steps
