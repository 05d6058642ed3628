"""One click on the seam of a joint opens its detail; whatever else a hand does there goes on."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.job_strip import DRAWING, STAGES
from app.panels.stick_delegate import value_rect
from app.window.workplace import Workplace
from geometry.drawing.marks import Label
from geometry.primitives.frame import Vec2
from geometry.views.view import FRONT, PLAN, View
from tests.app.hand import MouseHand, Spot
from tests.app.opened import open_field, opened
from tests.samples import sample

HAND = Qt.CursorShape.PointingHandCursor


def seam(window: Workplace, joint: str, view: View) -> Spot:
    """The pixel in the middle of the faces that meet in a joint."""
    contacts = next(j for j in window.desk.model.bench.joints if j.name == joint).contacts
    points = np.array([view.project(corner) for one in contacts for corner in one.corners])
    u, v = ((points.min(axis=0) + points.max(axis=0)) / 2.0).tolist()
    return window.page.canvas.view.window_point(view.name, (u, v))


def lit(window: Workplace) -> tuple[tuple[float, float, float, float], ...]:
    return window.page.canvas.under_hand().seam


def test_a_seam_lights_up_says_what_it_is_and_opens_with_one_click(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    at, canvas = seam(window, "mitre_top_left", FRONT), window.page.canvas
    hand.move(at)
    assert canvas.cursor().shape() == HAND
    ends = np.array(lit(window)).reshape(-1, 2)
    corner = canvas.view.window_point("front", (0.0, 450.0))
    assert np.hypot(*(ends - corner).T).min() < 2.0, "from the outer corner of the case"
    assert np.hypot(*(ends - at).T).max() < 20.0
    qtbot.waitUntil(lambda: canvas.sight.note.startswith("Mitre: Top and End panel, left"))
    assert not opened(window)
    hand.click(at)
    assert opened(window) == "mitre_top_left"
    window.go_to(STAGES.index(DRAWING))
    assert lit(window) == ()


def test_beside_a_seam_all_is_as_it_was(window: Workplace, hand: MouseHand) -> None:
    away = window.page.canvas.view.window_point("plan", (300.0, -60.0))
    hand.move(away)
    assert lit(window) == ()
    hand.click(away)
    assert window.page.canvas.sight.picked == "top"
    assert not opened(window)


@pytest.mark.parametrize(
    ("joint", "parameter"),
    [("housing_top_partition_1", "partition_1"), ("mitre_top_left", None)],
)
def test_a_pull_from_a_seam_still_pulls_the_edge(
    window: Workplace, hand: MouseHand, joint: str, parameter: str | None
) -> None:
    at = seam(window, joint, FRONT)
    hand.move(at)
    assert lit(window)
    before = window.desk.spec
    hand.press(at)
    hand.pull((25.0, 14.0))
    assert lit(window) == (), "what is pulled is lit in its place"
    hand.release()
    assert not opened(window)
    assert window.desk.undo_count == 1
    assert window.desk.spec != before
    if parameter is not None:
        assert window.desk.spec.number(parameter) > before.number(parameter)
    window.desk.undo()
    assert window.desk.spec == before


def test_a_long_seam_gives_way_to_an_edge_beside_it(window: Workplace, hand: MouseHand) -> None:
    """Click on the very edge of the case, far from any corner: its value is typed, as ever."""
    at = window.page.canvas.view.window_point("front", (900.0, 450.0))
    hand.move(at)
    assert lit(window) == ()
    hand.click(at)
    assert window.page.canvas.deeds.entry.isVisible()
    assert not opened(window)


def test_a_dimensions_text_goes_before_a_seam(window: Workplace, hand: MouseHand) -> None:
    for dimension in window.page.canvas.view.walk():
        hand.move(hand.text_of(dimension))
        assert lit(window) == (), dimension
    hand.click(hand.text_of("length"))
    assert window.page.canvas.deeds.entry.isVisible()


def test_a_joint_behind_something_is_not_lit(window: Workplace, hand: MouseHand) -> None:
    """From above the top covers the partitions' housings, and a double click alone finds them."""
    at, canvas = seam(window, "housing_top_partition_1", PLAN), window.page.canvas
    assert canvas.view.joint_at(at)
    hand.move(at)
    assert lit(window) == ()
    assert canvas.cursor().shape() != HAND
    hand.click(at)
    assert not opened(window)


def test_a_press_that_is_taken_back_opens_nothing(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    hand.press(seam(window, "mitre_top_left", FRONT))
    qtbot.keyClick(window.page.canvas, Qt.Key.Key_Escape)
    hand.release()
    assert not opened(window)


@pytest.mark.parametrize("name", ["porch", "boat_club", "weigh_house"])
def test_each_joint_that_is_seen_opens_with_one_click(
    window: Workplace, hand: MouseHand, qtbot: QtBot, name: str
) -> None:
    """Whatever lights up under the pointer is what opens."""
    window.desk.lay_down(sample(name), None, saved=True)
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20000)
    qtbot.wait(100)  # the list at the foot has its height, and the drawing its place
    canvas = window.page.canvas
    found: dict[str, list[Spot]] = {}
    wide, high = canvas.view.size
    for x in np.arange(0.0, wide, 5.0).tolist():
        for y in np.arange(0.0, high, 5.0).tolist():
            at: Vec2 = (x, y)
            one = canvas.view.seam_at(at, canvas.view.handle_at(at))
            if one is not None:
                found.setdefault(one.joint, []).append(at)
    assert len(found) > 8
    for joint, spots in found.items():
        at = spots[len(spots) // 2]
        hand.move((1.0, 1.0))
        hand.move(at)
        assert canvas.cursor().shape() == HAND
        hand.click(at)
        assert opened(window) == joint
        window.go_to(STAGES.index(DRAWING))


def test_a_number_typed_in_the_detail_changes_the_bench(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    """Click the joint, click the value beside its detail, type, Enter; and undo."""
    hand.click(seam(window, "housing_top_partition_1", FRONT))
    joints = window.stages.joints
    assert joints is not None
    stick = joints.page.stick
    QApplication.processEvents()
    row = stick.visualRect(stick.stick.index(stick.stick.place_of("housing_depth")))
    spot = value_rect(row, stick.fontMetrics()).center()
    qtbot.mouseClick(stick.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    field = open_field()
    qtbot.keyClicks(field, "8.5")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    bench = window.desk.model.bench
    assert bench.spec.number("housing_depth") == 8.5
    cut = next(j for j in bench.joints if j.name == "housing_top_partition_1").cuts_first[0]
    assert cut.depth == 8.5  # type: ignore[attr-defined]
    assert opened(window) == "housing_top_partition_1"
    joints.page.sheet.refresh()
    assert "8.5" in [mark.text for mark in joints.page.sheet.marks if isinstance(mark, Label)]
    qtbot.keyClick(joints.page, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.spec.number("housing_depth") != 8.5
