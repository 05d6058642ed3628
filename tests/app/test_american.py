"""An American maker: every word of the window in their words, every length in inches.

British words are looked for by the table of words itself, millimetres by their sign.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import (
    QAbstractItemModel,
    QAbstractTableModel,
    QLocale,
    QModelIndex,
    QSettings,
    Qt,
)
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLabel,
    QLineEdit,
    QTextBrowser,
    QWidget,
)
from pytestqt.qtbot import QtBot

from app.panels.job_strip import PAPERS, STAGES
from app.window.settings import first_preferences
from app.window.workplace import Workplace
from shared.units import SHOWN_IN16
from shared.words import AMERICAN_FOR, Words, in_words

SAMPLES = Path(__file__).resolve().parents[2] / "sample_projects"
OURS = ("British: housing, rebate, mitre", "36 1/2 36.5 in 927 mm 92.7 cm 3' 1/2\"")
"""What is meant so: the choice of British words, and examples of what can be typed."""


@pytest.fixture
def american(window: Workplace) -> Workplace:
    window.prefer(
        replace(
            window.presenter.preferences, shown=SHOWN_IN16, words=Words.AMERICAN, paper="Letter"
        )
    )
    return window


def texts_of(widget: QWidget) -> Iterator[str]:
    """All that a widget and those in it show or tell."""
    for each in (widget, *widget.findChildren(QWidget)):
        yield from (each.toolTip(), each.accessibleName(), each.accessibleDescription())
        match each:
            case QLabel() | QAbstractButton():
                yield each.text()
            case QLineEdit():
                yield each.placeholderText()
            case QComboBox():
                yield from (each.itemText(place) for place in range(each.count()))
            case QTextBrowser():
                yield from each.toPlainText().splitlines()
            case QAbstractItemView():
                yield from _cells(each)
    for action in widget.findChildren(QAction):
        yield from (action.text(), action.toolTip())


def _cells(view: QAbstractItemView) -> Iterator[str]:
    model = view.model()
    if model is None:
        return
    for row in range(model.rowCount(QModelIndex())):
        for column in range(_columns(model)):
            for role in (
                Qt.ItemDataRole.DisplayRole,
                Qt.ItemDataRole.ToolTipRole,
                Qt.ItemDataRole.AccessibleTextRole,
                Qt.ItemDataRole.AccessibleDescriptionRole,
            ):
                yield str(model.index(row, column).data(role) or "")


def _columns(model: QAbstractItemModel) -> int:
    return model.columnCount() if isinstance(model, QAbstractTableModel) else 1


def amiss(texts: Iterator[str]) -> set[str]:
    """The texts with a British word, a mark that nobody rendered, or millimetres in them."""
    return {
        text
        for text in texts
        if text not in OURS
        and (
            in_words(text, Words.AMERICAN) != text
            or re.search(r"\d mm\b|\{[^}]* (?:mm|deg)\}", text)
        )
    }


def test_the_word_table_does_not_turn_its_own_words_again() -> None:
    for american in AMERICAN_FOR.values():
        assert in_words(american, Words.AMERICAN) == american


@pytest.mark.parametrize(
    "sample", ["", "bakehouse_bench", "map_room_bench", "rehearsal_room_bench", "sail_loft_bench"]
)
def test_the_window_speaks_american_on_every_stage(
    american: Workplace, qtbot: QtBot, sample: str
) -> None:
    if sample:
        american.files.open(SAMPLES / f"{sample}.settle")
    american.presenter.look_for_findings()
    for stage in STAGES:
        american.stages.go_to(stage)
        qtbot.wait(20)
        assert amiss(texts_of(american.frame)) == set()


def test_the_pages_beside_the_window_speak_american(american: Workplace, qtbot: QtBot) -> None:
    for name in ("preferences", "keys", "cautions", "limits", "runners"):
        american.commands[name].trigger()
        qtbot.wait(20)
        assert amiss(texts_of(american.frame)) == set(), name


def test_an_open_page_of_runners_follows_the_words(american: Workplace) -> None:
    """Its title, the name of its table and what stands above it, not the cells alone."""
    american.beside.open_runners()
    page = american.beside.runners
    assert page is not None
    assert page.windowTitle() == "Drawer slides"
    american.prefer(replace(american.presenter.preferences, words=Words.BRITISH))
    assert page.windowTitle() == "Drawer runners"
    assert page.table.accessibleName() == "Kinds of drawer runners"
    assert any("check your runner's sheet" in text for text in texts_of(page))
    american.prefer(replace(american.presenter.preferences, words=Words.AMERICAN))
    assert page.windowTitle() == "Drawer slides"
    assert amiss(texts_of(page)) == set()


def test_british_words_come_back(american: Workplace) -> None:
    american.prefer(replace(american.presenter.preferences, words=Words.BRITISH))
    assert american.commands["other_unit"].text() == "&Millimetres or inches"


def test_letter_stays_the_paper(american: Workplace, settings: QSettings) -> None:
    """Chosen once under Papers, in inches there; units chosen for one pack stay beside it."""
    american.stages.go_to(PAPERS)
    assert american.stages.papers is not None
    page = american.stages.papers.page
    assert page.chosen_paper.name == "Letter"
    assert page.paper.currentText() == "Letter (11 in × 8 ½ in)"
    page.units.setCurrentIndex(0)
    page.paper.setCurrentIndex(page.paper.findText("Tabloid", Qt.MatchFlag.MatchStartsWith))
    assert settings.value("paper") == "Tabloid"
    assert page.chosen_paper.name == "Tabloid"
    assert page.chosen_units.unit == "mm"


def test_a_printer_is_measured_by_the_square_of_4_inches(american: Workplace) -> None:
    """3.98 in of 4 are 99.5 mm of 100: 0.5 % too small.  Millimetres typed are of the other."""
    american.stages.go_to(PAPERS)
    assert american.stages.papers is not None
    square = american.stages.papers.page.square
    assert [field.text() for field in square.fields] == ["4 in", "4 in"]
    assert "measure their 4 in square" in square.note.text()
    for typed, measured, shown in (
        ("3.98", 99.5, "3.98 in"),
        ("99 mm", 99.0, "3.96 in"),
        ("4 1/16", 101.5625, "4.0625 in"),
    ):
        square.fields[0].setText(typed)
        square.fields[0].editingFinished.emit()
        assert american.presenter.preferences.square == pytest.approx((measured, 100.0))
        assert square.fields[0].text() == shown


def test_paper_is_first_that_of_the_country() -> None:
    assert first_preferences(QLocale("en_US")).paper == "Letter"
    assert first_preferences(QLocale("fr_CA")).paper == "Letter"
    assert first_preferences(QLocale("en_GB")).paper == "A4"


def test_a_bench_to_begin_with_is_round_in_the_unit_that_is_shown(window: Workplace) -> None:
    """48 in, 1200 mm; another unit alone never changes a size."""
    metric = window.presenter.preferences
    window.prefer(replace(metric, shown=SHOWN_IN16))
    assert window.desk.spec.number("length") == 1200.0
    window.commands["new"].trigger()
    assert window.desk.spec.number("length") == pytest.approx(48.0 * 25.4)
    assert window.desk.saved
    window.prefer(metric)
    assert window.desk.spec.number("length") == pytest.approx(48.0 * 25.4)
    window.commands["new"].trigger()
    assert window.desk.spec.number("length") == 1200.0
