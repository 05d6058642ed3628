"""One click on a joint opens it in the pictorial view, taken apart and in a section too."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.panels.job_strip import DRAWING, JOINTS, STAGES
from app.panels.stick_delegate import value_rect
from app.scene.looks import Look
from app.window.workplace import Workplace
from geometry.design.cutting_plane import Plane, Way
from geometry.primitives.frame import Vec3
from tests.app.hand import MouseHand, Spot
from tests.app.opened import open_field, opened
from tests.samples import sample

HAND = Qt.CursorShape.PointingHandCursor
LOOKS = {"pictorial": Look.PICTORIAL, "apart": Look.APART, "section": Look.SECTION}


def shown(window: Workplace, name: str) -> MouseHand:
    """A hand over a look."""
    window.commands[name].trigger()
    QApplication.processEvents()
    looks = window.page.looks
    looks.refresh()
    return MouseHand(looks)


def pixel(window: Workplace, point: Vec3) -> Spot:
    """Where a point of the bench is seen, together or cut through."""
    looks = window.page.looks
    seams = looks.pointer._seams
    (at,) = seams.on_sheet(np.array([seams.view.project(point)])).tolist()
    return looks.to_pixels((at[0], at[1]))


def spots(window: Workplace, step: float = 5.0) -> dict[str, list[Spot]]:
    """All the pixels of a grid at which a joint lights up, by joint."""
    found: dict[str, list[Spot]] = {}
    for joint, at in looked_for(window, step):
        found.setdefault(joint, []).append(at)
    return found


def any_spot(window: Workplace) -> Spot:
    """The first pixel of the grid at which some joint lights up."""
    return next(looked_for(window, 5.0))[1]


def spot_of(window: Workplace, joint: str) -> Spot:
    """The first pixel of the grid at which this joint lights up."""
    return next(at for name, at in looked_for(window, 5.0) if name == joint)


def looked_for(window: Workplace, step: float) -> Iterator[tuple[str, Spot]]:
    """Joints that light up, and where, pixel by pixel."""
    looks = window.page.looks
    looks.refresh()
    for x in np.arange(0.0, looks.width(), step).tolist():
        for y in np.arange(0.0, looks.height(), step).tolist():
            seam = looks.pointer._seams.at(looks.to_sheet((x, y)), looks.density)
            if seam is not None:
                yield seam.joint, (x, y)


@pytest.mark.parametrize("name", LOOKS)
def test_a_seam_lights_up_says_what_it_is_and_opens_with_one_click(
    window: Workplace, qtbot: QtBot, name: str
) -> None:
    hand = shown(window, name)
    looks, page = window.page.looks, window.page
    joint, places = max(spots(window).items(), key=lambda one: len(one[1]))
    at = places[len(places) // 2]
    hand.move((2.0, 2.0))
    assert looks.cursor().shape() != HAND
    assert looks.pointer.lines() == ()
    hand.move(at)
    assert looks.cursor().shape() == HAND
    assert looks.pointer.lines()
    assert "Click to open its detail." in page.stick.note.text()
    qtbot.waitUntil(lambda: "Click to open its detail." in looks.pointer.note)
    assert page.stick.note.text() == looks.pointer.note
    hand.move((2.0, 2.0))
    assert (looks.pointer.seam, looks.pointer.note, page.stick.note.text()) == (None, "", "")
    hand.click(at)
    assert opened(window) == joint
    assert looks.pointer.seam is None


@pytest.mark.parametrize("back", ["escape", "word", "button of the mouse", "stage"])
@pytest.mark.parametrize("name", ["elevations", *LOOKS])
def test_the_way_back_leads_to_where_the_joint_was_clicked(
    window: Workplace, qtbot: QtBot, hand: MouseHand, name: str, back: str
) -> None:
    window.commands[name].trigger()
    if name == "elevations":
        at = window.page.canvas.view.window_point("front", (0.0, 450.0))
    else:
        hand = shown(window, name)
        at = any_spot(window)
    look = window.page.look
    hand.click(at)
    page = window.stages.joints.page
    assert page.isVisible()
    assert page.back.isVisible()
    assert page.back.text().startswith("Back to the ")
    if back == "escape":
        assert page.list.hasFocus()
        qtbot.keyClick(page.list, Qt.Key.Key_Escape)
    elif back == "word":
        qtbot.mouseClick(page.back, Qt.MouseButton.LeftButton)
    elif back == "button of the mouse":
        QTest.mouseClick(page.sheet, Qt.MouseButton.BackButton)
    else:
        window.go_to(STAGES.index(DRAWING))
    assert window.page.isVisible()
    assert window.page.look is look
    shown_now = window.page.canvas if name == "elevations" else window.page.looks
    assert shown_now.isVisible()
    window.go_to(STAGES.index(JOINTS))
    assert not page.back.isVisible(), "come by the strip of the job, there is no way back"
    qtbot.keyClick(page.list, Qt.Key.Key_Escape)
    assert page.isVisible()


def test_escape_in_a_field_gives_the_typing_up_and_goes_nowhere(
    window: Workplace, qtbot: QtBot
) -> None:
    hand = shown(window, "pictorial")
    hand.click(spot_of(window, "housing_bottom_partition_1"))
    page = window.stages.joints.page
    QApplication.processEvents()
    stick = page.stick
    row = stick.visualRect(stick.stick.index(stick.stick.place_of("housing_depth")))
    spot = value_rect(row, stick.fontMetrics()).center()
    qtbot.mouseClick(stick.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    field = open_field()
    qtbot.keyClicks(field, "9")
    qtbot.keyClick(field, Qt.Key.Key_Escape)
    assert page.isVisible()
    assert window.desk.undo_count == 0
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Escape)
    assert window.page.look is Look.PICTORIAL
    assert window.page.isVisible()


@pytest.mark.parametrize("name", LOOKS)
def test_a_number_typed_in_the_detail_changes_the_bench_that_one_comes_back_to(
    window: Workplace, qtbot: QtBot, name: str
) -> None:
    hand = shown(window, name)
    before = window.page.looks.marks
    hand.click(spot_of(window, "housing_bottom_partition_1"))
    page = window.stages.joints.page
    QApplication.processEvents()
    stick = page.stick
    place = stick.stick.place_of("partition_thickness")
    place = place if place >= 0 else stick.stick.place_of("housing_depth")
    row = stick.visualRect(stick.stick.index(place))
    spot = value_rect(row, stick.fontMetrics()).center()
    qtbot.mouseClick(stick.viewport(), Qt.MouseButton.LeftButton, pos=spot)
    field = open_field()
    field.selectAll()
    qtbot.keyClicks(field, "9")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.desk.undo_count == 1
    qtbot.keyClick(page.list, Qt.Key.Key_Escape)
    window.page.looks.refresh()
    assert window.page.looks.marks is not before


@pytest.mark.parametrize("name", LOOKS)
def test_a_hand_that_moves_or_presses_beside_opens_nothing(window: Workplace, name: str) -> None:
    hand = shown(window, name)
    looks = window.page.looks
    at = any_spot(window)
    hand.press(at)
    hand.pull((30.0, 20.0))
    assert looks.pointer.seam is None
    hand.release()
    assert not opened(window)
    hand.press(at)
    QTest.keyClick(looks, Qt.Key.Key_Escape)
    hand.release()
    assert not opened(window)
    hand.press(at, Qt.MouseButton.RightButton)
    hand.release(Qt.MouseButton.RightButton)
    assert not opened(window)
    hand.click((2.0, 2.0))
    assert not opened(window)
    hand.click(at)
    assert opened(window)


def test_the_plane_is_pulled_where_a_seam_lies_in_the_small_view_too(window: Workplace) -> None:
    """There the hand has the plane; no joint lights up."""
    hand = shown(window, "section")
    looks = window.page.looks
    (x0, y0), (x1, y1) = looks._sheet.key.ends
    middle = looks.to_pixels(((x0 + x1) / 2.0, (y0 + y1) / 2.0))
    before = looks.plane
    hand.move(middle)
    assert looks.cursor().shape() == Qt.CursorShape.SizeHorCursor
    assert looks.pointer.seam is None
    hand.drag(middle, (-25.0, 0.0))
    assert looks.plane.at < before.at
    assert not opened(window)


def test_a_joint_that_something_hides_is_not_lit(window: Workplace) -> None:
    """By hand: the housing of the partition in the top lies under the top's upper face."""
    shown(window, "pictorial")
    bench = window.desk.model.bench
    contacts = next(j for j in bench.joints if j.name == "housing_top_partition_1").contacts
    corners = np.array([corner for one in contacts for corner in one.corners])
    x, y, _ = corners.mean(axis=0).tolist()
    looks = window.page.looks
    hidden = pixel(window, (x, y, float(corners[:, 2].max())))
    assert looks.pointer._seams.at(looks.to_sheet(hidden), looks.density) is None


def test_where_the_outer_corner_of_a_mitre_is_seen_the_mitre_is_lit(window: Workplace) -> None:
    """By hand: the plain bench is 450 high, and its left end, at x = 0, mitred and deeper by its
    flare."""
    hand = shown(window, "pictorial")
    looks, spec = window.page.looks, window.desk.spec
    at = pixel(window, (0.0, -spec.number("depth") - spec.number("flare"), 450.0))
    hand.move(at)
    assert looks.pointer.seam is not None
    assert looks.pointer.seam.joint == "mitre_top_left"
    lines = np.array(looks.pointer.lines()).reshape(-1, 2)
    assert np.hypot(*(lines - at).T).min() < 8.0


def test_taken_apart_faces_on_both_parts_are_lit(window: Workplace) -> None:
    """Each face lies on one of the two parts, as they are drawn."""
    hand = shown(window, "apart")
    looks = window.page.looks
    found = spots(window)
    assert set(found) == {joint.name for joint in window.desk.model.bench.joints}
    for joint, places in found.items():
        hand.move(places[0])
        seam = looks.pointer.seam
        assert seam is not None
        assert seam.joint == joint
        contacts = next(j for j in window.desk.model.bench.joints if j.name == joint).contacts
        view = looks.pointer._seams.view
        once = sum(
            math.dist(view.project(start), view.project(end))
            for one in contacts
            for start, end in pairwise((*one.corners, one.corners[0]))
        )
        lit = np.concatenate([seam.lines, seam.hidden])
        long = np.hypot(*(lit[:, 2:] - lit[:, :2]).T).sum()
        assert long == pytest.approx(2.0 * once, abs=0.01), "every outline once on each part"


def test_what_the_plane_has_cut_away_has_no_seams(window: Workplace) -> None:
    """Cut across at 300 of 1200 and seen from the left, what lay to the left is gone."""
    hand = shown(window, "section")
    looks = window.page.looks
    looks._stand(Plane(Way.ACROSS, 300.0))
    looks.refresh()
    assert looks._sheet.cut.view.toward == (-1, 0, 0)
    found = spots(window)
    assert found
    assert not any("left" in joint for joint in found)
    at = found["housing_bottom_partition_1"][0]
    hand.move(at)
    assert looks.cursor().shape() == HAND


@pytest.mark.parametrize("name", ["porch", "boat_club", "weigh_house"])
def test_each_joint_that_lights_up_opens(window: Workplace, qtbot: QtBot, name: str) -> None:
    window.desk.lay_down(sample(name), None, saved=True)
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20000)
    for look, there in LOOKS.items():
        hand = shown(window, look)
        qtbot.wait(50)
        found = spots(window, 9.0)
        assert len(found) > 5
        for joint in sorted(found)[::5]:
            at = found[joint][len(found[joint]) // 2]
            hand.move((1.0, 1.0))
            hand.click(at)
            assert opened(window) == joint
            qtbot.keyClick(window.stages.joints.page.list, Qt.Key.Key_Escape)
            assert window.page.look is there


def test_while_the_bench_changes_nothing_stays_lit(window: Workplace) -> None:
    hand = shown(window, "pictorial")
    looks = window.page.looks
    hand.move(any_spot(window))
    assert looks.pointer.seam is not None
    assert window.presenter.type_value("length", "1300") == ""
    looks.refresh()
    assert looks.pointer.seam is None


def test_the_hand_leaves_and_nothing_is_lit(window: Workplace) -> None:
    hand = shown(window, "pictorial")
    looks = window.page.looks
    hand.move(any_spot(window))
    assert looks.pointer.seam is not None
    QApplication.sendEvent(looks, QEvent(QEvent.Type.Leave))
    assert looks.pointer.seam is None
    hand.move(any_spot(window))
    assert looks.pointer.seam is not None
    window.commands["apart"].trigger()
    looks.refresh()
    assert looks.pointer.seam is None
    assert looks.pointer.point_at((-5.0, -5.0)) is False
