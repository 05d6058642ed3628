"""Names for screen readers, places for the keyboard, and contrast."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtGui import QAccessible, QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QScrollBar,
    QWidget,
)

from app.look.palettes import palette_of
from app.look.themes import NIGHT, PAPER, Theme, Tone
from app.look.value_field import ValueField
from app.panels.job_strip import PAPERS, STAGES
from app.panels.papers_page import PapersPage
from app.window.preferences_dialog import PreferencesDialog
from app.window.workplace import Workplace
from tests.contrast import contrast

CONTROLS = (QAbstractButton, QLineEdit, QComboBox, QAbstractItemView)


def name_of(widget: QObject) -> str:
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name)


@pytest.mark.parametrize("stage", range(len(STAGES)), ids=STAGES)
def test_every_control_has_a_name(window: Workplace, stage: int) -> None:
    window.desk.set_values({"cutter_diameter": 30.0})
    window.presenter.look_for_findings()
    window.go_to(stage)
    if STAGES[stage] == PAPERS:
        assert isinstance(window.stages.papers.page, PapersPage)
    window.beside.open_preferences()
    seen = 0
    for widget in window.frame.findChildren(QWidget):
        inner = isinstance(widget.parent(), QComboBox) or widget.objectName().startswith("qt_")
        if inner or widget.focusPolicy() == Qt.FocusPolicy.NoFocus:
            continue
        if isinstance(widget, QScrollBar | ValueField):
            continue
        if isinstance(widget.parent(), QAbstractItemView) or widget.window() is not window.frame:
            continue
        seen += 1
        assert name_of(widget), f"{type(widget).__name__} {widget.objectName()}"
    assert seen > 10


def test_the_sheet_says_what_it_shows(window: Workplace) -> None:
    interface = QAccessible.queryAccessibleInterface(window.page.canvas)
    assert interface.text(QAccessible.Text.Name) == "Drawing sheet"
    description = interface.text(QAccessible.Text.Description)
    assert "1200" in description
    assert "Tab" in description


def test_rows_are_spoken_with_their_standing(window: Workplace) -> None:
    stick = window.page.stick.list.stick
    role = Qt.ItemDataRole.AccessibleTextRole
    spoken = [str(stick.index(i).data(role)) for i in range(stick.rowCount())]
    assert "Length: 1200, free" in spoken
    assert any(text.startswith("Seat height: (450), derived") for text in spoken)


def test_tab_reaches_sheet_stick_findings_and_job(window: Workplace) -> None:
    """Walk the focus chain once round the window."""
    reached: list[QWidget] = []
    widget = window.page.canvas
    for _ in range(200):
        widget = widget.nextInFocusChain()
        if widget is window.page.canvas:
            break
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisibleTo(window.frame):
            reached.append(widget)
    assert window.page.stick.filter in reached
    assert window.page.stick.list in reached
    assert window.job.button(0) in reached


@pytest.mark.parametrize("theme", [PAPER, NIGHT], ids=lambda theme: theme.name)
@pytest.mark.parametrize("tone", list(Tone), ids=lambda tone: tone.value)
def test_each_tone_is_readable_on_each_ground(theme: Theme, tone: Tone) -> None:
    """WCAG 2.2, 1.4.3: text at least 4.5 to 1."""
    for ground in (theme.paper, theme.bench, theme.wash):
        assert contrast(theme.tone(tone), ground) >= 4.5, ground


def test_contrast_by_the_standard() -> None:
    """WCAG 2.2: black on white is 21 to 1; #777777 on white is 4.48 (a known near miss)."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.005)


@pytest.mark.parametrize("theme", [PAPER, NIGHT], ids=lambda theme: theme.name)
def test_the_palette_keeps_the_contrast(theme: Theme) -> None:
    palette = palette_of(theme)
    role = QPalette.ColorRole
    for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
        for text, ground in (
            (role.WindowText, role.Window),
            (role.Text, role.Base),
            (role.ButtonText, role.Button),
            (role.HighlightedText, role.Highlight),
            (role.PlaceholderText, role.Base),
            (role.ToolTipText, role.ToolTipBase),
        ):
            pair = (palette.color(group, text).name(), palette.color(group, ground).name())
            assert contrast(*pair) >= 4.5, (group, text)


def test_preferences_are_one_page_however_often_they_are_asked_for(window: Workplace) -> None:
    window.beside.open_preferences()
    window.beside.open_preferences()
    (page,) = window.frame.findChildren(PreferencesDialog)
    assert page.isVisible()
    page.close()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    window.beside.open_preferences()
    (other,) = window.frame.findChildren(PreferencesDialog)
    assert other.isVisible()
