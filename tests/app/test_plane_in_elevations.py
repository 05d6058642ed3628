"""The line of a section's plane in the elevations: there once there is a section, and to be pulled.

The plain bench, 1200 long, with a section across at 640 from its left end.
"""

from __future__ import annotations

import math

import pytest
import shapely
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.scene.looks import Look
from app.scene.plane_line import PlaneLine
from app.window.workplace import Workplace
from geometry.design.cutting_plane import Plane, Way
from geometry.drawing.marks import Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2
from tests.app.hand import MouseHand


def kept(window: Workplace, plane: Plane) -> PlaneLine:
    window.desk.keep_section(plane)
    window.page.looks.planes.begin(plane)
    QApplication.processEvents()
    line = window.page.canvas.sight.plane
    assert line is not None
    return line


def pixel(window: Workplace, line: PlaneLine, end: int | None = None) -> Vec2:
    assert line.key is not None
    at = line.key.middle if end is None else line.key.ends[end]
    return window.page.canvas.view.place.to_window(at)


def test_there_is_no_line_without_a_section(window: Workplace) -> None:
    """And what draws it is not even loaded."""
    sight = window.page.canvas.sight
    assert sight.plane is None
    line = kept(window, Plane(Way.ACROSS, 640.0))
    assert line.marks
    window.desk.keep_section(None)
    assert line.marks == ()
    assert sight.under_hand(has_keyboard=False).plane == ()


def test_the_line_is_pulled_and_the_section_goes_with_it(
    window: Workplace, hand: MouseHand
) -> None:
    line = kept(window, Plane(Way.ACROSS, 640.0))
    by = 30.0
    hand.press(pixel(window, line))
    hand.pull((by, 0.0))
    there = 640.0 + by / window.page.canvas.view.pixels_per_mm
    assert window.page.looks.plane.at == pytest.approx(there, abs=1.0)
    assert "Cut across" in window.page.canvas.sight.note
    assert window.desk.project.section == Plane(Way.ACROSS, 640.0), "not while the hand is on it"
    hand.release()
    assert window.desk.project.section == window.page.looks.plane
    assert window.desk.undo_count == 0
    window.commands["section"].trigger()
    QApplication.processEvents()
    told = window.page.looks.accessibleDescription()
    assert f"{window.page.looks.plane.at:.0f} mm from the left end" in told


def test_an_end_turns_it_about_its_middle_and_escape_gives_it_back(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    line = kept(window, Plane(Way.ACROSS, 640.0))
    assert line.key is not None
    (x, y), end = line.key.middle, line.key.ends[1]
    high = math.dist((x, y), end) * window.page.canvas.view.density
    hand.press(pixel(window, line, 1))
    hand.pull((high, 0.0))  # as far aside as it is up: 45 degrees
    assert abs(window.page.looks.plane.turn) == pytest.approx(45.0, abs=1.0)
    qtbot.keyClick(window.page.canvas, Qt.Key.Key_Escape)
    assert window.page.looks.plane == Plane(Way.ACROSS, 640.0)
    hand.release()
    assert window.desk.project.section == Plane(Way.ACROSS, 640.0)


def test_a_click_on_the_line_shows_the_section(window: Workplace, hand: MouseHand) -> None:
    line = kept(window, Plane(Way.ACROSS, 640.0))
    hand.click(pixel(window, line))
    assert window.page.look is Look.SECTION


@pytest.mark.parametrize(
    "plane",
    [
        Plane(Way.ACROSS, 640.0),
        Plane(Way.ACROSS, 300.0, 20.0),
        Plane(Way.LEVEL, 300.0),
        Plane(Way.ALONG, -150.0),
        Plane(Way.ASKEW, 300.0, 45.0),
    ],
)
def test_letters_stand_on_no_dimension_and_the_line_runs_through_no_number(
    window: Workplace, plane: Plane
) -> None:
    line = kept(window, plane)
    letters = [mark for mark in line.marks if isinstance(mark, Label)]
    assert [mark.text for mark in letters] == ["A", "A"]
    there = window.page.canvas.view.laid_out
    numbers = shapely.union_all([shapely.Polygon(one.text_corners) for one in there.targets])
    lines = _lines(there.marks, Role.DIMENSION)
    for mark in letters:
        box = shapely.Point(mark.at[0], mark.at[1] + mark.height / 2.0).buffer(mark.height / 2.0)
        assert not box.intersects(numbers)
        assert not box.intersects(lines)
    assert not _lines(line.marks, Role.CENTRE).intersects(numbers)


def _lines(marks: tuple[Mark, ...], role: Role) -> shapely.Geometry:
    rows = [one.segments for one in marks if isinstance(one, Strokes) and one.role is role]
    return shapely.multilinestrings([segment for row in rows for segment in row.reshape(-1, 2, 2)])
