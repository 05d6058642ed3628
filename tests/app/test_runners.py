"""The table of drawer runners: copied, typed over, taken for a bench, read and written."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from app.document.own_runners import KEY, OwnRunners
from app.scene.runner_cells import SIZES
from app.window.runners_page import RunnersPage
from app.window.workplace import Workplace
from geometry.bench.runner_numbers import runner_of
from geometry.solids.cutting import placed
from shared.runner_rows import read_runner_rows
from shared.runners import RUNNERS, UNDER
from tests.app.conftest import Answers

ROW = {field: row for row, (field, _, _) in enumerate(SIZES)}


@pytest.fixture
def page(window: Workplace) -> RunnersPage:
    window.desk.set_values({"opening_1_fill": "drawers"})
    window.beside.open_runners()
    assert window.beside.runners is not None
    return window.beside.runners


def click(qtbot: QtBot, button: object) -> None:
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def write(qtbot: QtBot, page: RunnersPage, field: str, column: int, text: str) -> None:
    """Into a cell, by the keyboard."""
    index = page.model.index(ROW[field], column)
    page.table.setCurrentIndex(index)
    page.table.edit(index)
    editor = editor_of(page)
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    done(qtbot, page, editor)


def editor_of(page: RunnersPage) -> QLineEdit:
    editor = page.table.findChild(QLineEdit)
    assert isinstance(editor, QLineEdit)
    return editor


def done(qtbot: QtBot, page: RunnersPage, editor: QLineEdit) -> None:
    """Enter; the table takes the text up and puts the editor away a moment later."""
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: page.table.findChild(QLineEdit) is None)


def width_of_box(window: Workplace) -> float:
    """Over the outsides of the sides, in mm."""
    bench = window.desk.model.bench
    sides = [bench.part(f"drawer_1_1_side_{where}") for where in ("left", "right")]
    return float(np.ptp(np.concatenate([placed(side).vertices[:, 0] for side in sides])))


def shown(page: RunnersPage, field: str, column: int) -> str:
    return str(page.model.index(ROW[field], column).data())


def test_generic_rows_are_shown_and_cannot_be_typed_over(page: RunnersPage) -> None:
    assert [shown(page, "name", k).removesuffix(" (this bench)") for k in range(len(RUNNERS))] == [
        row.name for row in RUNNERS
    ]
    assert shown(page, "name", 0).endswith("(this bench)")
    assert shown(page, "side", 0) == "12.7"
    assert shown(page, "notch_width", 0) == ""  # side-mounted runners have none
    for column in range(len(RUNNERS)):
        for row in range(len(SIZES)):
            assert not page.model.flags(page.model.index(row, column)) & Qt.ItemFlag.ItemIsEditable
    assert not page.away.isEnabled()
    assert not page.write.isEnabled()


def test_a_copy_is_typed_over_taken_and_undone(
    window: Workplace, page: RunnersPage, qtbot: QtBot
) -> None:
    """A drawer's box is as wide as its opening less the clearance at each side: 2 mm more at each
    side makes it 4 mm narrower."""
    before = width_of_box(window)
    click(qtbot, page.copy)
    column = len(RUNNERS)
    write(qtbot, page, "name", column, "shop runners")
    write(qtbot, page, "side", column, "14.7")
    write(qtbot, page, "shortest", column, "10 in")
    assert shown(page, "shortest", column) == "254"
    page.table.setCurrentIndex(page.model.index(0, column))
    click(qtbot, page.use)
    assert runner_of(window.desk.spec).side == 14.7
    assert width_of_box(window) == pytest.approx(before - 4.0)
    assert shown(page, "name", column) == "shop runners (this bench)"
    assert not page.use.isEnabled()
    assert window.desk.undo_words == "Runners: shop runners"
    window.desk.undo()
    assert width_of_box(window) == before
    assert page.use.isEnabled()


def test_rows_that_only_the_table_has_can_be_taken(
    window: Workplace, page: RunnersPage, qtbot: QtBot
) -> None:
    column = next(k for k, row in enumerate(RUNNERS) if row.name == "under-mounted, inch lengths")
    page.table.setCurrentIndex(page.model.index(0, column))
    click(qtbot, page.use)
    taken = runner_of(window.desk.spec)
    assert (taken.kind, taken.shortest, taken.step) == (UNDER, 228.6, 76.2)


def test_own_rows_are_kept_for_the_next_start(
    window: Workplace, page: RunnersPage, qtbot: QtBot, settings: QSettings
) -> None:
    click(qtbot, page.copy)
    click(qtbot, page.copy)
    assert [row.name for row in OwnRunners(settings).rows()] == [
        "side-mounted, full travel, own",
        "side-mounted, full travel, own, own",
    ]
    page.close()
    window.beside.open_runners()
    assert window.beside.runners is not None
    again = window.beside.runners
    assert len(again.model.runners) == len(RUNNERS) + 2
    again.table.setCurrentIndex(again.model.index(0, len(RUNNERS)))
    click(qtbot, again.away)
    assert len(OwnRunners(settings).rows()) == 1
    settings.setValue(KEY, "no table at all")
    assert OwnRunners(settings).rows() == ()


def test_a_cell_that_cannot_be_says_why_and_stays(page: RunnersPage, qtbot: QtBot) -> None:
    click(qtbot, page.copy)
    column = len(RUNNERS)
    write(qtbot, page, "longest", column, "9 mm")
    assert "shortest" in page.note.text()
    assert shown(page, "longest", column) == "700"
    write(qtbot, page, "side", column, "wide")
    assert page.note.isVisible()
    write(qtbot, page, "name", column, RUNNERS[1].name)
    assert "already" in page.note.text()
    write(qtbot, page, "below", column, "7")
    assert not page.note.isVisible()


def test_a_shown_rounding_left_as_it_is_changes_nothing(
    window: Workplace, page: RunnersPage, qtbot: QtBot
) -> None:
    """6 mm is shown as 1/4 in (6.35 mm): Enter on that must not make it so."""
    click(qtbot, page.copy)
    window.prefer(window.presenter.preferences.other_unit())
    column = len(RUNNERS)
    assert shown(page, "below", column) == "¼"
    index = page.model.index(ROW["below"], column)
    page.table.edit(index)
    done(qtbot, page, editor_of(page))
    assert page.model.runners[column].below == 6


def test_a_table_is_written_and_read(
    page: RunnersPage, window: Workplace, qtbot: QtBot, tmp_path: Path
) -> None:
    answers = window.ask
    assert isinstance(answers, Answers)
    click(qtbot, page.copy)
    answers.next = tmp_path / "runners.csv"
    click(qtbot, page.write)
    (row,) = read_runner_rows(answers.next.read_text("utf-8"))
    assert row == page.model.runners[-1]
    click(qtbot, page.away)
    click(qtbot, page.read)
    assert page.model.runners[-1] == row
    click(qtbot, page.read)  # the same again takes the place of the first
    assert len(page.model.runners) == len(RUNNERS) + 1


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda path: path.write_bytes(b"name;kind\n"), "column"),
        (lambda path: path.write_bytes(b"\xff\xfe\x00"), "text"),
        (lambda path: path.mkdir(), "cannot be read"),
    ],
)
def test_a_file_that_is_no_table_changes_nothing(
    page: RunnersPage,
    window: Workplace,
    qtbot: QtBot,
    tmp_path: Path,
    spoil: Callable[[Path], object],
    says: str,
) -> None:
    answers = window.ask
    assert isinstance(answers, Answers)
    answers.next = tmp_path / "bad.csv"
    spoil(answers.next)
    click(qtbot, page.read)
    assert says in page.note.text()
    assert len(page.model.runners) == len(RUNNERS)


def test_a_bench_without_drawers_takes_none(window: Workplace, qtbot: QtBot) -> None:
    window.beside.open_runners()
    assert window.beside.runners is not None
    assert not window.beside.runners.use.isEnabled()
    assert "no drawers" in window.beside.runners.use.toolTip()
    click(qtbot, window.beside.runners.copy)
    assert len(window.beside.runners.model.runners) == len(RUNNERS) + 1
