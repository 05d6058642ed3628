"""All that the mouse can do, done with the keyboard."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.window.workplace import Workplace

SHIFT = Qt.KeyboardModifier.ShiftModifier


def test_tab_walks_every_dimension_and_then_leaves(window: Workplace, qtbot: QtBot) -> None:
    canvas = window.page.canvas
    canvas.setFocus()
    names = canvas.view.walk()
    assert set(names) == set(canvas.view.model.dimension_named)
    for name in names:
        qtbot.keyClick(canvas, Qt.Key.Key_Tab)
        assert canvas.sight.focus == name
        assert canvas.under_hand().focus == name
    qtbot.keyClick(canvas, Qt.Key.Key_Tab)
    assert not canvas.hasFocus()
    assert canvas.sight.focus == ""


def test_backtab_walks_back(window: Workplace, qtbot: QtBot) -> None:
    canvas = window.page.canvas
    canvas.setFocus()
    names = canvas.view.walk()
    for _ in range(2):
        qtbot.keyClick(canvas, Qt.Key.Key_Tab)
    qtbot.keyClick(canvas, Qt.Key.Key_Backtab)
    assert canvas.sight.focus == names[0]
    qtbot.keyClick(canvas, Qt.Key.Key_Backtab)
    assert not canvas.hasFocus()


def test_arrows_change_by_a_step_each_press_one_undo(window: Workplace, qtbot: QtBot) -> None:
    canvas = window.page.canvas
    walk_to(window, qtbot, "length")
    qtbot.keyClick(canvas, Qt.Key.Key_Right)
    assert window.desk.spec.number("length") == 1201.0
    qtbot.keyClick(canvas, Qt.Key.Key_Up, SHIFT)
    assert window.desk.spec.number("length") == 1211.0
    qtbot.keyClick(canvas, Qt.Key.Key_Left)
    assert window.desk.spec.number("length") == 1210.0
    assert window.desk.undo_count == 3
    for _ in range(3):
        window.commands["undo"].trigger()
    assert window.desk.spec.number("length") == 1200.0


def test_an_arrow_held_down_is_one_undo(window: Workplace, qtbot: QtBot) -> None:
    canvas = window.page.canvas
    walk_to(window, qtbot, "length")
    for _ in range(5):
        qtbot.keyPress(canvas, Qt.Key.Key_Right)
    qtbot.keyRelease(canvas, Qt.Key.Key_Right)
    assert window.desk.spec.number("length") == 1205.0
    assert window.desk.undo_count == 1


def test_inch_steps_are_fractions(window: Workplace, qtbot: QtBot) -> None:
    window.commands["other_unit"].trigger()
    walk_to(window, qtbot, "length")
    qtbot.keyClick(window.page.canvas, Qt.Key.Key_Right)
    sixteenths = window.desk.spec.number("length") / 25.4 * 16
    assert abs(sixteenths - round(sixteenths)) < 1e-9
    assert 1200.0 < window.desk.spec.number("length") < 1202.0


def test_enter_types_and_enter_again_sets(window: Workplace, qtbot: QtBot) -> None:
    canvas = window.page.canvas
    walk_to(window, qtbot, "base_height")
    qtbot.keyClick(canvas, Qt.Key.Key_Return)
    field = canvas.deeds.entry.field
    assert QApplication.focusWidget() is field
    qtbot.keyClicks(field, "8 in")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.desk.spec.number("base_height") == 203.2
    assert canvas.hasFocus()
    assert canvas.sight.focus == "base_height"


def test_an_arrow_stops_at_the_limit_and_says_why(window: Workplace, qtbot: QtBot) -> None:
    walk_to(window, qtbot, "board_thickness")
    for _ in range(10):
        qtbot.keyClick(window.page.canvas, Qt.Key.Key_Down, SHIFT)
    note = window.page.canvas.under_hand().note
    assert len(note.split("\n")) == 2
    assert window.desk.spec.number("board_thickness") >= 10.0


def test_the_stick_steps_with_left_and_right(window: Workplace, qtbot: QtBot) -> None:
    stick = window.page.stick
    stick.list.setFocus()
    stick.take_up("depth")
    qtbot.keyClick(stick.list, Qt.Key.Key_Right)
    qtbot.keyClick(stick.list, Qt.Key.Key_Right, SHIFT)
    assert window.desk.spec.number("depth") == 371.0
    qtbot.keyClick(stick.list, Qt.Key.Key_Left)
    assert window.desk.spec.number("depth") == 370.0


def test_the_stick_goes_from_size_to_size_over_headings(window: Workplace, qtbot: QtBot) -> None:
    stick = window.page.stick
    stick.list.setFocus()
    stick.take_up("inside_height")
    qtbot.keyClick(stick.list, Qt.Key.Key_Down)
    row = stick.list.stick.row(stick.list.currentIndex())
    assert row is not None
    assert row.name == "left_end"


def test_keys_go_to_sizes_parts_and_sheet(window: Workplace) -> None:
    window.commands["parts"].trigger()
    assert window.page.parts.list.hasFocus()
    window.commands["sizes"].trigger()
    assert window.page.stick.list.hasFocus()
    window.commands["sheet"].trigger()
    assert window.page.canvas.hasFocus()
    window.commands["find"].trigger()
    assert window.page.stick.filter.hasFocus()


def test_each_action_is_in_a_menu_with_its_keys_shown(window: Workplace) -> None:
    wanted = {
        "new": "Ctrl+N",
        "open": "Ctrl+O",
        "save": "Ctrl+S",
        "quit": "Ctrl+Q",
        "undo": "Ctrl+Z",
        "preferences": "Ctrl+,",
        "fit": "Ctrl+0",
        "keys": "F1",
    }
    for name, keys in wanted.items():
        assert keys in [each.toString() for each in window.commands[name].shortcuts()], name
    redo = [each.toString() for each in window.commands["redo"].shortcuts()]
    assert "Ctrl+Shift+Z" in redo


def walk_to(window: Workplace, qtbot: QtBot, name: str) -> None:
    canvas = window.page.canvas
    canvas.setFocus()
    for _ in canvas.view.walk():
        qtbot.keyClick(canvas, Qt.Key.Key_Tab)
        if canvas.sight.focus == name:
            return
    raise AssertionError(name)


def test_what_is_found_is_one_key_away(window: Workplace, qtbot: QtBot) -> None:
    stick = window.page.stick
    for key in (Qt.Key.Key_Down, Qt.Key.Key_Return):
        window.commands["find"].trigger()
        qtbot.keyClicks(stick.filter, "splay")
        qtbot.keyClick(stick.filter, key)
        assert stick.list.hasFocus()
        row = stick.list.stick.row(stick.list.currentIndex())
        assert row is not None
        assert row.name == "splay"
        stick.filter.clear()


def test_where_nothing_is_found_the_keyboard_stays_in_the_field(
    window: Workplace, qtbot: QtBot
) -> None:
    stick = window.page.stick
    window.commands["find"].trigger()
    qtbot.keyClicks(stick.filter, "zzz")
    qtbot.keyClick(stick.filter, Qt.Key.Key_Down)
    assert stick.filter.hasFocus()
