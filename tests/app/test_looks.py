"""The sheet turned to pictorial views and sections, with a real mouse."""

from __future__ import annotations

import math

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from app.scene.looks import Look
from app.window.workplace import Workplace
from geometry.drawing.marks import Label, Role, Strokes
from geometry.primitives.frame import dot

LEFT = Qt.MouseButton.LeftButton


def texts(window: Workplace) -> list[str]:
    looks = window.page.looks
    looks.refresh()
    return [mark.text for mark in looks.marks if isinstance(mark, Label)]


def pull(window: Workplace, start: tuple[float, float], at: tuple[float, float]) -> None:
    """Press on the section, move and release."""
    looks = window.page.looks
    for kind, buttons, place in (
        (QEvent.Type.MouseButtonPress, LEFT, start),
        (QEvent.Type.MouseMove, LEFT, at),
        (QEvent.Type.MouseButtonRelease, Qt.MouseButton.NoButton, at),
    ):
        spot = QPointF(*place)
        button = Qt.MouseButton.NoButton if kind is QEvent.Type.MouseMove else LEFT
        keys = Qt.KeyboardModifier.NoModifier
        event = QMouseEvent(kind, spot, looks.mapToGlobal(spot), button, buttons, keys)
        QApplication.sendEvent(looks, event)
        QApplication.processEvents()


@pytest.mark.parametrize("name", ["pictorial", "apart"])
def test_parts_have_their_names_in_the_pictorial_views(window: Workplace, name: str) -> None:
    window.commands[name].trigger()
    assert window.page.look is (Look.PICTORIAL if name == "pictorial" else Look.APART)
    assert window.page.looks.isVisible()
    assert "Top" in texts(window)
    window.commands["elevations"].trigger()
    assert window.page.canvas.isVisible()


def test_what_is_typed_shows_at_once_in_the_pictorial_view(window: Workplace) -> None:
    window.commands["pictorial"].trigger()
    assert "Partition 2" not in texts(window)
    assert window.presenter.type_value("partition_count", "3") == ""
    assert "Partition 2" in texts(window)


def test_the_plane_of_a_section_follows_the_hand(window: Workplace, qtbot: QtBot) -> None:
    window.commands["section"].trigger()
    looks = window.page.looks
    assert "Cut across, 600 mm from the left end" in texts(window)  # half of 1200
    (line,) = [m for m in looks.marks if isinstance(m, Strokes) and m.role is Role.CENTRE]
    middle = line.segments.reshape(2, 2).mean(axis=0)
    x = float(middle[0]) * looks._density
    y = looks.height() - float(middle[1]) * looks._density
    with qtbot.waitSignal(looks.moved):
        pull(window, (x, y), (x - 40.0, y))
    assert looks.plane.at < 600.0
    assert looks.plane.at == round(looks.plane.at)  # on whole millimetres
    assert f"Cut across, {looks.plane.at:g} mm from the left end" in texts(window)
    pull(window, (x - 40.0, y), (-5000.0, y))
    assert looks.plane.at == pytest.approx(0.0)  # no farther than the bench


@pytest.mark.parametrize("way", [0, 1, 2, 3])
def test_a_press_on_the_section_itself_leaves_the_plane(window: Workplace, way: int) -> None:
    """Only in the small view is it taken hold of."""
    window.commands["section"].trigger()
    page, looks = window.page, window.page.looks
    page._way_buttons.button(way).click()
    looks.refresh()
    before = looks.plane.at
    (caption,) = [m for m in looks.marks if isinstance(m, Label) and m.text.startswith("Cut ")]
    x, y = caption.at[0] * looks._density, looks.height() - (caption.at[1] + 40) * looks._density
    pull(window, (x, y), (x + 30.0, y + 30.0))
    assert looks.plane.at == before
    assert looks.cursor().shape() is Qt.CursorShape.ArrowCursor


@pytest.mark.parametrize("end", [0, 1])
@pytest.mark.parametrize("way", [0, 1, 2, 3])
def test_the_plane_turns_by_an_end_of_its_line(window: Workplace, way: int, end: int) -> None:
    """About its middle, which stays; and Escape puts it back."""
    window.commands["section"].trigger()
    page, looks = window.page, window.page.looks
    page._way_buttons.button(way).click()
    looks.refresh()
    before, key = looks.plane, looks._sheet.key
    x, y = key.ends[end][0] * looks._density, looks.height() - key.ends[end][1] * looks._density
    pull(window, (x, y), (x + 25.0, y + 25.0))
    turned = looks.plane
    assert turned.turn != before.turn
    assert dot(turned.normal, key.pivot) == pytest.approx(turned.at)
    looks.refresh()
    assert any(text.startswith("Cut ") and "°" in text for text in texts(window))
    assert math.dist(looks._sheet.key.ends[end], looks.to_sheet((x + 25.0, y + 25.0))) < 40.0


def test_names_come_back_when_the_hand_lets_go(window: Workplace, qtbot: QtBot) -> None:
    window.commands["section"].trigger()
    looks = window.page.looks
    assert "Top" in texts(window)
    x, y = looks._sheet.key.ends[0]
    spot = QPoint(round(x * looks._density), round(looks.height() - y * looks._density))
    qtbot.mousePress(looks, LEFT, pos=spot)
    qtbot.mouseMove(looks, spot + QPoint(20, 0))
    assert "Top" not in texts(window)
    assert any(text.startswith("Cut ") for text in texts(window))
    qtbot.mouseRelease(looks, LEFT, pos=spot + QPoint(20, 0))
    assert "Top" in texts(window)


def test_a_turned_plane_is_put_back(window: Workplace, qtbot: QtBot) -> None:
    """By Escape while it is held, by Home and by a double click afterwards."""
    window.commands["section"].trigger()
    looks = window.page.looks
    looks.refresh()
    before, key = looks.plane, looks._sheet.key
    spot = QPoint(
        round(key.ends[0][0] * looks._density),
        round(looks.height() - key.ends[0][1] * looks._density),
    )
    qtbot.mousePress(looks, LEFT, pos=spot)
    qtbot.mouseMove(looks, spot + QPoint(30, -5))
    QApplication.processEvents()
    assert looks.plane.turn != 0.0
    qtbot.keyClick(looks, Qt.Key.Key_Escape)
    assert looks.plane == before
    qtbot.mouseRelease(looks, LEFT, pos=spot)
    qtbot.keyClick(looks, Qt.Key.Key_PageUp)
    qtbot.keyClick(looks, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ShiftModifier)
    assert looks.plane.turn == -9.0
    qtbot.keyClick(looks, Qt.Key.Key_Home)
    assert looks.plane.turn == 0.0
    qtbot.keyClick(looks, Qt.Key.Key_PageUp)
    looks.refresh()
    qtbot.mouseDClick(looks, LEFT, pos=spot + QPoint(0, -20))
    assert looks.plane.turn == 0.0


def test_the_place_and_the_turn_of_a_plane_are_typed(window: Workplace, qtbot: QtBot) -> None:
    window.commands["section"].trigger()
    looks, (place, turned) = window.page.looks, window.page.plane.fields
    assert "Cut across, 600 mm from the left end" in texts(window)
    assert (place.text(), turned.text()) == ("600 mm", "0°")

    def typed(field: QLineEdit, text: str) -> None:
        field.setFocus()
        field.selectAll()
        qtbot.keyClicks(field, text)
        qtbot.keyClick(field, Qt.Key.Key_Return)

    typed(place, "45 cm")
    assert "Cut across, 450 mm from the left end" in texts(window)
    assert place.text() == "450 mm"
    typed(turned, "-12")
    assert looks.plane.turn == -12.0
    assert any(text.startswith("Cut leaning 12° to the right") for text in texts(window))
    typed(place, "300")
    assert "Cut leaning 12° to the right, on the floor 300 mm from the left end" in texts(window)
    before = looks.plane
    typed(turned, "askew")
    assert looks.plane == before
    assert turned.wrong
    assert turned.text() == "askew"
    qtbot.keyClick(turned, Qt.Key.Key_Escape)
    assert turned.text() == "−12°"
    assert not turned.wrong


def test_a_long_section_has_the_width_of_the_sheet(window: Workplace) -> None:
    """The small view stands over it then, not beside it; across, it stands beside."""
    window.commands["section"].trigger()
    page, looks = window.page, window.page.looks

    def wide() -> float:
        looks.refresh()
        runs = [m.segments for m in looks.marks if isinstance(m, Strokes) and m.role is Role.HATCH]
        return max(float(np.ptp(s[:, 0::2])) for s in runs) / looks.sheet_size[0]

    page._way_buttons.button(1).click()
    assert wide() > 0.7
    page._way_buttons.button(0).click()
    assert wide() < 0.7


def test_the_plane_moves_by_the_keyboard_and_is_told(window: Workplace, qtbot: QtBot) -> None:
    window.commands["section"].trigger()
    looks = window.page.looks
    before = looks.plane.at
    qtbot.keyClick(looks, Qt.Key.Key_Right)
    qtbot.keyClick(looks, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert looks.plane.at == pytest.approx(before - 9.0)
    texts(window)
    assert looks.accessibleDescription() == "Cut across, 591 mm from the left end"


def test_the_plane_stands_along_and_level_too(window: Workplace) -> None:
    window.commands["section"].trigger()
    page = window.page
    for place, words in ((1, "Cut along"), (2, "Cut level")):
        page._way_buttons.button(place).click()
        assert any(text.startswith(words) for text in texts(window))
    page._look_buttons.button(0).click()
    assert page.look is Look.ELEVATIONS
    assert not page._way_buttons.button(0).isVisible()
