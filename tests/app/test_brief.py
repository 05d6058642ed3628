"""The brief on the screen: said, advised, taken, undone; by mouse and by keyboard."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit
from pytestqt.qtbot import QtBot

from app.panels.brief_page import BriefPage
from app.panels.job_strip import BRIEF, STAGES
from app.scene.brief_text import brief_text, read_brief_value
from app.window.workplace import Workplace
from geometry.bench.overall import seat_height
from geometry.design.brief import ADULTS, ROWS, Brief, row_of
from shared.errors import UnreadableValue
from shared.units import SHOWN_IN16, SHOWN_MM, Shown


def page_of(window: Workplace) -> BriefPage:
    window.go_to(STAGES.index(BRIEF))
    assert window.stages.brief is not None
    return window.stages.brief.page


def choose(page: BriefPage, name: str, words: str) -> None:
    field = page.fields.fields[name]
    assert isinstance(field, QComboBox)
    field.setCurrentText(words)
    field.activated.emit(field.currentIndex())


def write(qtbot: QtBot, page: BriefPage, name: str, text: str) -> None:
    field = page.fields.fields[name]
    assert isinstance(field, QLineEdit)
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)


def advised(page: BriefPage) -> list[str]:
    return [line.words.name for line in page.lines()]


def test_a_blank_brief_advises_nothing(window: Workplace) -> None:
    page = page_of(window)
    assert advised(page) == []
    assert window.desk.saved


def test_what_is_said_is_a_step_and_brings_advice_and_findings(
    window: Workplace, qtbot: QtBot
) -> None:
    page = page_of(window)
    choose(page, "who", ADULTS)
    write(qtbot, page, "persons", "2")
    assert window.desk.project.brief == Brief(who=ADULTS, persons=2)
    assert advised(page)[:3] == ["seat_height", "seat_depth", "seat_length"]
    assert window.desk.undo_words == "Brief, persons"
    window.presenter.look_for_findings()
    assert "seat_height" in {one.told_by for one in window.presenter.clerk.findings}
    window.desk.undo()
    window.desk.undo()
    assert window.desk.project.brief.blank
    assert advised(page) == []


def test_advice_is_taken_with_one_press_and_one_undo(window: Workplace, qtbot: QtBot) -> None:
    page = page_of(window)
    choose(page, "who", ADULTS)
    before = window.desk.spec
    line = next(line for line in page.lines() if line.words.name == "seat_height")
    assert line.button is not None
    line.button.setFocus()
    qtbot.keyClick(line.button, Qt.Key.Key_Space)
    # 90 of 100 men and women on a short sit: 1.1 x 350 + 25 = 410
    assert seat_height(window.desk.spec) == pytest.approx(410.0)
    assert window.desk.undo_words == "Seat height as advised"
    again = next(line for line in page.lines() if line.words.name == "seat_height")
    assert again.words.met
    assert again.button is None
    window.desk.undo()
    assert window.desk.spec == before
    assert window.desk.project.brief.who == ADULTS


def test_a_wrong_text_stays_with_its_reason(window: Workplace, qtbot: QtBot) -> None:
    page = page_of(window)
    write(qtbot, page, "door_width", "wide")
    field = page.fields.fields["door_width"]
    assert isinstance(field, QLineEdit)
    assert field.text() == "wide"
    assert "is no length" in field.accessibleDescription()
    assert window.desk.project.brief.blank
    write(qtbot, page, "humidity_low", "99 %")
    assert "from 5 % to 95 %" in page.fields.fields["humidity_low"].accessibleDescription()


def test_what_is_wrong_is_said_under_its_field(window: Workplace, qtbot: QtBot) -> None:
    """And no longer once something else is written there."""
    page = page_of(window)
    for name, text in (("humidity_low", "wet"), ("persons", "six"), ("door_height", "high")):
        write(qtbot, page, name, text)
        QApplication.processEvents()
        wrong, field = page.fields._wrong, page.fields.fields[name]
        assert wrong.isVisible()
        assert 0 <= wrong.y() - (field.y() + field.height()) < 20
        assert wrong.x() == field.x()
    qtbot.keyClicks(page.fields.fields["door_height"], "2")
    assert not page.fields._wrong.isVisible()


def test_empty_fields_say_what_they_ask_for(window: Workplace) -> None:
    fields = page_of(window).fields.fields

    def asked(name: str) -> str:
        field = fields[name]
        assert isinstance(field, QLineEdit)
        return field.placeholderText()

    names = ("room_length", "load", "humidity_low", "persons")
    assert [asked(name) for name in names] == ["mm", "kg", "% humidity", "how many"]
    window.commands["other_unit"].trigger()
    assert [asked(name) for name in names] == ["in", "lb", "% humidity", "how many"]


def test_only_what_means_something_is_asked(window: Workplace) -> None:
    page = page_of(window)
    fields = page.fields.fields
    assert not fields["lower_leg"].isVisible()
    choose(page, "who", "a person")
    assert fields["lower_leg"].isVisible()
    assert not fields["share"].isVisible()
    choose(page, "who", ADULTS)
    assert fields["share"].isVisible()


def test_units_change_here_too(window: Workplace, qtbot: QtBot) -> None:
    page = page_of(window)
    write(qtbot, page, "room_length", "1524")
    window.commands["other_unit"].trigger()
    field = page.fields.fields["room_length"]
    assert isinstance(field, QLineEdit)
    assert field.text() == "60 in"
    assert window.desk.project.brief.room_length == 1524.0


def test_every_field_is_reached_by_tab(window: Workplace) -> None:
    page = page_of(window)
    choose(page, "who", ADULTS)
    reached = set()
    widget = page.fields.fields["who"]
    for _ in range(300):
        widget = widget.nextInFocusChain()  # type: ignore[assignment]
        if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisible():
            reached.add(widget)
    for name, field in page.fields.fields.items():
        assert field in reached or not field.isVisible(), name
    for line in page.lines():
        assert line.button is None or line.button in reached


@pytest.mark.parametrize("shown", [SHOWN_MM, SHOWN_IN16])
@pytest.mark.parametrize("row", [row for row in ROWS if row.unit != "choice"], ids=lambda r: r.name)
def test_what_is_shown_reads_back(row: object, shown: Shown) -> None:
    row = row_of(row.name)  # type: ignore[attr-defined]
    value = "Agnes" if row.unit == "text" else round((row.minimum + row.maximum) / 2)
    text = brief_text(row, value, shown)
    again = read_brief_value(row, text, shown)
    within = 0.8 if row.unit == "mm" else 0.03
    assert again == value if isinstance(value, str) else again == pytest.approx(value, abs=within)
    assert brief_text(row, again, shown) == text


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("weight", "187 lb", 84.821768),
        ("weight", "84,5", 84.5),
        ("temperature", "68 °F", 20.0),
        ("temperature", "-5", -5.0),
        ("humidity_low", "45 %", 45.0),
        ("persons", "", 0.0),
        ("room_length", "5 ft 2 in", 1574.8),
    ],
)
def test_texts_that_are_read(name: str, text: str, value: float) -> None:
    assert read_brief_value(row_of(name), text, SHOWN_MM) == pytest.approx(value)


@pytest.mark.parametrize(
    ("name", "text"), [("weight", "heavy"), ("weight", "80 mm"), ("humidity_low", "45 kg")]
)
def test_texts_that_are_not(name: str, text: str) -> None:
    with pytest.raises(UnreadableValue) as caught:
        read_brief_value(row_of(name), text, SHOWN_MM)
    assert caught.value.where == row_of(name).title
