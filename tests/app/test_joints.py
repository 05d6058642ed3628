"""Joints on the screen: their details, the sizes they follow from, and the way there."""

from __future__ import annotations

import math

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QApplication

from app.panels.job_strip import JOINTS, STAGES
from app.scene.joint_picking import joint_under
from app.window.joints_stage import JointsStage
from app.window.workplace import Workplace
from geometry.drawing.marks import Label
from geometry.sheets.joint_groups import joint_groups
from geometry.views.view import FRONT
from tests.app.hand import MouseHand

STAGE = STAGES.index(JOINTS)


def stage_of(window: Workplace) -> JointsStage:
    window.go_to(STAGE)
    assert window.stages.joints is not None
    return window.stages.joints


def texts(stage: JointsStage) -> list[str]:
    stage.page.sheet.refresh()
    return [mark.text for mark in stage.page.sheet.marks if isinstance(mark, Label)]


def sizes(stage: JointsStage) -> list[str]:
    stick = stage.page.stick.stick
    rows = [stick.row(stick.index(place)) for place in range(stick.rowCount())]
    return [row.name for row in rows if row is not None]


def test_every_different_joint_is_listed(window: Workplace) -> None:
    stage = stage_of(window)
    bench = window.desk.model.bench
    groups = joint_groups(bench.joints, {part.name: part for part in bench.parts})
    assert [row.name for row in stage.page.list.parts.rows] == [group[0].name for group in groups]
    assert stage.page.list.parts.rows[0].spoken


def test_the_picked_joint_has_its_detail_on_the_sheet(window: Workplace) -> None:
    stage = stage_of(window)
    rows = stage.page.list.parts.rows
    place = next(k for k, row in enumerate(rows) if row.title == "Angled lap")
    stage.page.pick(place)
    shown = texts(stage)
    assert any(text.startswith("Angled lap: ") for text in shown)
    assert "Drawn apart" in shown
    assert stage.page.sheet.accessibleDescription().startswith("Angled lap")


def test_a_number_changed_there_changes_the_bench_and_the_detail(window: Workplace) -> None:
    stage = stage_of(window)
    stage.open("housing_bottom_partition_1")
    assert sizes(stage)[0] == "housing_depth"
    stick = stage.page.stick.stick
    index = stick.index(stick.place_of("housing_depth"))
    assert stick.setData(index, "8.5")
    assert window.desk.spec.number("housing_depth") == 8.5
    assert "8.5" in texts(stage)
    assert stage.picked == "housing_bottom_partition_1"
    window.desk.undo()
    assert "8.5" not in texts(stage)


def test_a_number_that_cannot_be_built_says_why(window: Workplace) -> None:
    stage = stage_of(window)
    stage.open("housing_bottom_partition_1")
    stick = stage.page.stick.stick
    before = window.desk.spec
    assert not stick.setData(stick.index(stick.place_of("housing_depth")), "500")
    assert window.desk.spec == before


def test_a_double_click_on_a_joint_opens_it(window: Workplace, hand: MouseHand) -> None:
    canvas = window.page.canvas
    joint = next(j for j in window.desk.model.bench.joints if j.name == "mitre_top_left")
    corners = np.array([FRONT.project(c) for c in joint.contacts[0].corners])
    u, v = corners.mean(axis=0).tolist()
    at = canvas.view.window_point("front", (u, v))
    hand.click(at)
    spot = QPointF(*at)
    keys = Qt.KeyboardModifier.NoModifier
    left = Qt.MouseButton.LeftButton
    event = QMouseEvent(
        QEvent.Type.MouseButtonDblClick, spot, canvas.mapToGlobal(spot), left, left, keys
    )
    QApplication.sendEvent(canvas, event)
    assert window.stages.joints is not None
    assert window.stages.joints.page.isVisible()
    assert window.stages.joints.picked == "mitre_top_left"


def test_units_change_on_the_detail_too(window: Workplace) -> None:
    stage = stage_of(window)
    stage.open("housing_bottom_partition_1")
    assert "mm" in texts(stage)
    window.commands["other_unit"].trigger()
    assert "in" in texts(stage)
    assert "mm" not in texts(stage)


def test_a_joint_that_is_gone_makes_room_for_another(window: Workplace) -> None:
    stage = stage_of(window)
    stage.open("mitre_top_right")
    window.presenter.type_value("right_end", "open")
    names = {joint.name for joint in window.desk.model.bench.joints}
    assert "mitre_top_right" not in names
    assert stage.picked in names


@pytest.mark.parametrize("far", [False, True])
def test_the_nearest_of_small_faces_is_taken(window: Workplace, far: bool) -> None:
    joints = window.desk.model.bench.joints
    joint = next(j for j in joints if j.name == "mitre_top_left")
    (u, v), *_ = [FRONT.project(corner) for corner in joint.contacts[0].corners]
    at = (u - 500.0, v + 500.0) if far else (u + 0.5, v - 0.5)
    assert joint_under(joints, FRONT, at, 4.0) == ("" if far else "mitre_top_left")


def test_long_names_of_joints_are_shown_whole(window: Workplace) -> None:
    """In a narrow column they wrap: every line of a name has its height in the row."""
    page = stage_of(window).page
    page.list.setFixedWidth(120)
    QApplication.processEvents()
    metrics, room = page.list.fontMetrics(), page.list.viewport().width() - 24
    parts = page.list.parts
    for place in range(parts.rowCount()):
        index = parts.index(place)
        row = parts.row(index)
        assert row is not None
        lines = [metrics.horizontalAdvance(text) / room for text in (row.title, row.size)]
        needed = sum(max(1, math.ceil(each)) for each in lines) * metrics.height()
        assert page.list.visualRect(index).height() >= needed
