"""The window as a whole: units, words, parts, findings, sizes, light and dark."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QLocale, QPoint, Qt
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from app.look.themes import DARK
from app.panels.finding_detail import MendDetail
from app.panels.finding_line import FindingLine
from app.panels.job_strip import DRAWING, STAGES
from app.scene.preferences import Preferences
from app.scene.sheet_view import SheetView
from app.window.drawing_page import PARTS
from app.window.settings import first_preferences, read_preferences
from app.window.workplace import Workplace
from geometry.drawing.marks import Fill, Label
from shared.units import SHOWN_IN16, SHOWN_IN32, SHOWN_MM
from shared.words import Words
from tests.app.hand import MouseHand


def texts(window: Workplace) -> set[str]:
    return {m.text for m in window.page.canvas.view.laid_out.marks if isinstance(m, Label)}


def test_units_switch_at_once_everywhere(window: Workplace, qtbot: QtBot) -> None:
    assert "1200" in texts(window)
    qtbot.mouseClick(window.unit_button, Qt.MouseButton.LeftButton)
    assert "47 ¼" in texts(window)  # 1200 / 25.4 = 47.244 in
    row = window.page.stick.list.stick
    assert "47 ¼" in row.index(row.place_of("length")).data()
    assert any(value.endswith(" in") for _, value in window.page.title.cells)
    assert any(value.endswith(" lb") for _, value in window.page.title.cells)
    window.commands["other_unit"].trigger()
    assert "1200" in texts(window)


def test_units_and_words_are_remembered(window: Workplace) -> None:
    window.prefer(replace(Preferences().with_shown(SHOWN_IN32), words=Words.AMERICAN))
    again = read_preferences(window._settings, QLocale("de_DE"))
    assert again.shown == SHOWN_IN32
    assert again.words is Words.AMERICAN


def test_the_first_units_come_from_the_country() -> None:
    assert first_preferences(QLocale("en_US")).shown == SHOWN_IN16
    assert first_preferences(QLocale("en_US")).words is Words.AMERICAN
    assert first_preferences(QLocale("de_DE")).shown == SHOWN_MM
    assert first_preferences(QLocale("en_GB")).words is Words.BRITISH


def test_american_words(window: Workplace) -> None:
    window.prefer(replace(window.presenter.preferences, words=Words.AMERICAN))
    stick = window.page.stick.list.stick
    shown = " ".join(str(stick.index(i).data()) for i in range(stick.rowCount()))
    assert "Dado" in shown
    assert "Housing" not in shown
    assert "Lumber" in shown


def test_first_angle_puts_the_plan_below(window: Workplace) -> None:
    def heights() -> tuple[float, float]:
        places = {p.view: p.origin for p in window.page.canvas.view.laid_out.arranged.places}
        return places["plan"][1], places["front"][1]

    plan, front = heights()
    assert plan > front
    window.prefer(replace(window.presenter.preferences, third_angle=False))
    plan, front = heights()
    assert plan < front


def test_the_wheel_keeps_the_point_under_the_pointer(window: Workplace, hand: MouseHand) -> None:
    view = window.page.canvas.view
    spot = view.window_point("front", (800.0, 200.0))
    for notches in (1.0, 2.0, -1.0, 5.0, -4.0):
        hand.wheel(spot, notches)
        assert view.window_point("front", (800.0, 200.0)) == pytest.approx(spot, abs=0.5)


def test_lettering_keeps_its_size_when_zooming(window: Workplace, hand: MouseHand) -> None:
    before = {m.height for m in window.page.canvas.view.laid_out.marks if isinstance(m, Label)}
    hand.wheel((500.0, 300.0), 6.0)
    after = {m.height for m in window.page.canvas.view.laid_out.marks if isinstance(m, Label)}
    assert before == after


def test_middle_button_and_space_slide_the_sheet(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    view, canvas = window.page.canvas.view, window.page.canvas
    start = view.window_point("front", (0.0, 0.0))
    hand.press((400.0, 300.0), Qt.MouseButton.MiddleButton)
    hand.pull((40.0, -25.0))
    hand.release(Qt.MouseButton.MiddleButton)
    assert view.window_point("front", (0.0, 0.0)) == pytest.approx((start[0] + 40, start[1] - 25))
    canvas.setFocus()
    qtbot.keyPress(canvas, Qt.Key.Key_Space)
    hand.drag(hand.text_of("length"), (-40.0, 25.0))
    qtbot.keyRelease(canvas, Qt.Key.Key_Space)
    assert view.window_point("front", (0.0, 0.0)) == pytest.approx(start)
    assert window.desk.undo_count == 0


def test_fit_shows_all_of_it(window: Workplace, hand: MouseHand) -> None:
    view = window.page.canvas.view
    hand.wheel((200.0, 200.0), 12.0)
    assert view.overflows()
    window.commands["fit"].trigger()
    assert not view.overflows()
    left, bottom, right, top = view.laid_out.extent
    used = max(
        (right - left) * view.density / view.size[0], (top - bottom) * view.density / view.size[1]
    )
    assert used > 0.9


def test_a_part_is_picked_out_in_all_views(window: Workplace, hand: MouseHand) -> None:
    view = window.page.canvas.view
    spot = view.window_point("front", (150.0, 230.0))  # the back, seen through the open front
    name = view.part_at(spot)
    assert name
    hand.click(spot)
    under = window.page.canvas.under_hand()
    assert under.picked == name
    assert window.desk.model.bench.part(name).title in under.note
    window.page.go_to(PARTS)
    assert name in {row.name for row in window.page.parts.list.parts.rows}
    assert window.page.parts.list.currentIndex().row() >= 0
    before = window.page.canvas.grab().toImage()
    hand.click(spot)
    hand.move((3.0, 3.0))
    after = window.page.canvas.grab().toImage()
    for place in view.laid_out.arranged.places:
        assert differs_inside(view, place.room, before, after), place.view


def differs_inside(view, room, before, after) -> bool:
    """Whether two pictures of the sheet differ inside a view's rectangle."""
    x0, y0 = view.place.to_window((room[0], room[3]))
    x1, y1 = view.place.to_window((room[2], room[1]))
    area = [round(max(0, v)) for v in (x0, y0, x1, y1)]
    images = []
    for image in (before, after):
        small = image.copy(area[0], area[1], area[2] - area[0], area[3] - area[1])
        images.append(np.frombuffer(small.constBits(), np.uint8).copy())
    return bool((images[0] != images[1]).any())


def test_picking_in_the_list_picks_on_the_sheet(window: Workplace) -> None:
    window.page.go_to(PARTS)
    parts = window.page.parts.list
    parts.setCurrentIndex(parts.parts.index(2))
    assert window.page.canvas.sight.picked == parts.parts.rows[2].name
    assert parts.parts.rows[2].title in window.page.parts.note.text()
    for joint in window.desk.model.bench.joints_of(parts.parts.rows[2].name):
        assert joint.kind.lower() in window.page.parts.note.text().lower()


def test_pointing_at_a_row_lights_the_dimension_and_back(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    stick = window.page.stick.list
    index = stick.stick.index(stick.stick.place_of("depth"))
    qtbot.mouseMove(stick.viewport(), stick.visualRect(index).center())
    qtbot.waitUntil(lambda: "depth" in window.page.canvas.under_hand().dimensions)
    hand.move(hand.text_of("base_height"))
    lit = [i for i in range(stick.stick.rowCount()) if stick.stick.index(i).data(Qt.UserRole + 3)]
    assert lit == [stick.stick.place_of("base_height")]


def test_the_filter_finds_sizes(window: Workplace, qtbot: QtBot) -> None:
    qtbot.keyClicks(window.page.stick.filter, "leg")
    stick = window.page.stick.list.stick
    names = {
        stick.row(stick.index(i)).name for i in range(stick.rowCount()) if stick.row(stick.index(i))
    }
    assert "splay" not in names
    assert "leg_top_width" in names
    qtbot.keyClicks(window.page.stick.filter, "zzz")
    assert window.page.stick.nothing.isVisible()
    assert window.page.stick.nothing.text() == "No size goes by that name."


def test_the_filter_tells_what_a_choice_would_bring(window: Workplace, qtbot: QtBot) -> None:
    stick = window.page.stick
    qtbot.keyClicks(stick.filter, "shelf housing depth")
    assert "With “Opening 1: shelf”: Shelf housing depth" in stick.nothing.text()
    window.desk.set_values({"opening_1_fill": "shelf"})
    assert not stick.nothing.isVisible(), "it has come in"
    assert stick.list.stick.place_of("shelf_housing_depth") >= 0


def test_undo_in_an_empty_field_is_the_benchs(window: Workplace, qtbot: QtBot) -> None:
    window.desk.set_values({"depth": 400.0})
    field = window.page.stick.filter
    field.setFocus()
    qtbot.keyClick(field, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.undo_count == 0


def test_the_filter_finds_by_a_choice_where_no_name_holds_it(
    window: Workplace, qtbot: QtBot
) -> None:
    qtbot.keyClicks(window.page.stick.filter, "panel bench")
    assert window.page.stick.list.stick.place_of("seat") >= 0


def test_findings_come_after_the_frame_and_can_be_mended(window: Workplace, qtbot: QtBot) -> None:
    """A cutter wider than its partition cannot clear the housing's width."""
    window.desk.set_values({"cutter_diameter": 30.0})
    qtbot.waitUntil(lambda: any(line.finding.mend for line in window.foot.lines()), timeout=20_000)
    qtbot.waitUntil(lambda: not window.presenter.clerk.mends_are_tried, timeout=20_000)
    lines = window.foot.lines()
    words = [label.text() for label in lines[0].findChildren(QLabel)]
    assert lines[0].finding.level.value in words
    assert window.job.button(
        STAGES.index(DRAWING)
    ).accessibleName() == f"Drawing, {len(lines)} finding" + ("s" if len(lines) > 1 else "")
    mendable = next(line for line in lines if line.finding.mend is not None)
    before = window.desk.undo_count
    shown = window.desk.spec
    mendable.mend.click()
    assert window.desk.undo_count == before, "a mend is shown before it is made"
    assert window.desk.spec != shown
    assert isinstance(mendable.detail, MendDetail)
    mendable.detail.make.click()
    assert window.desk.undo_count == before + 1
    gone = mendable.finding.check
    qtbot.waitUntil(
        lambda: gone not in {line.finding.check for line in window.foot.lines()}, timeout=20_000
    )


def test_show_picks_the_part_out(window: Workplace) -> None:
    window.desk.set_values({"cutter_diameter": 30.0})
    window.presenter.look_for_findings()
    line: FindingLine = window.foot.lines()[0]
    line.show_button.click()
    assert window.page.canvas.sight.picked == line.finding.parts[0]


@pytest.mark.parametrize("percent", [100, 200])
def test_the_window_works_at_1024_by_768(window: Workplace, percent: int) -> None:
    window.prefer(replace(window.presenter.preferences, text_percent=percent))
    window.frame.resize(1024, 768)
    QApplication.processEvents()
    assert window.frame.minimumSizeHint().width() <= 1024
    assert window.frame.minimumSizeHint().height() <= 768
    canvas = window.page.canvas
    assert canvas.width() > 300
    assert canvas.height() > 250
    corner = canvas.mapTo(window.frame, QPoint(canvas.width(), canvas.height()))
    assert corner.x() <= 1024
    assert corner.y() <= 768
    assert not canvas.view.overflows()


def test_text_grows_with_the_preference(window: Workplace) -> None:
    window.frame.resize(1900, 1400)
    QApplication.processEvents()
    small = window.page.canvas.view.density
    window.prefer(replace(window.presenter.preferences, text_percent=200))
    QApplication.processEvents()
    assert window.page.canvas.view.density == pytest.approx(2 * small, rel=0.1)


def test_dark_is_dark_everywhere(window: Workplace) -> None:
    window.prefer(replace(window.presenter.preferences, theme=DARK))
    QApplication.processEvents()
    image = window.frame.grab().toImage()
    for x in range(5, image.width() - 4, 97):
        # Of two columns near one another, as an upright line of the drawing may stand in one.
        middles = []
        for near in (x, x + 4):
            column = [image.pixelColor(near, y).lightness() for y in range(5, image.height(), 11)]
            middles.append(sorted(column)[len(column) // 2])
        assert min(middles) < 90


def test_the_start_line_goes_when_the_work_begins(window: Workplace) -> None:
    assert "plain bench" in window.notices.text
    window.desk.set_values({"length": 1300.0})
    assert not window.notices.isVisible()


def test_a_notice_or_a_finding_leaves_the_drawing_where_it_is(window: Workplace) -> None:
    """The paper never jumps: not when a notice goes, not when findings come."""
    canvas = window.page.canvas

    def spot() -> tuple[float, float]:
        x, y = canvas.view.window_point("front", (0.0, 0.0))
        top = canvas.mapTo(window.frame, QPoint(0, 0))
        return (x + top.x(), y + top.y())

    assert window.notices.isVisible()
    before, scale = spot(), canvas.view.scale
    window.notices.dismiss()
    QApplication.processEvents()
    assert canvas.view.size[1] == canvas.height()
    assert spot() == pytest.approx(before, abs=0.01)
    window.desk.set_values({"cutter_diameter": 30.0, "reveal": 0.0})
    window.presenter.look_for_findings()
    QApplication.processEvents()
    assert spot() == pytest.approx(before, abs=0.01)
    assert canvas.view.scale == scale
    # Nothing but less room makes it smaller.
    window.frame.resize(window.frame.size() / 2)
    QApplication.processEvents()
    assert canvas.view.scale < scale


def test_the_part_under_the_pointer_shows_its_grain_and_its_reference_faces(
    window: Workplace, hand: MouseHand
) -> None:
    """They come with the pointer and go with it; the sheet itself stays quiet."""
    view = window.page.canvas.view
    assert view.pencil_marks("no such part") == []
    spots = (view.window_point("plan", (x, -150.0)) for x in range(100, 1100, 40))
    hand.move(next(spot for spot in spots if view.handle_at(spot) is None))
    assert window.page.canvas.sight.part == "top"
    pencilled = view.pencil_marks("top")
    assert any(isinstance(mark, Fill) for mark in pencilled)
    before = window.page.canvas.grab().toImage()
    hand.move((2.0, 2.0))
    after = window.page.canvas.grab().toImage()
    arrow = next(m for m in pencilled if isinstance(m, Fill) and _in_view(view, "plan", m))
    x, y = view.place.to_window(np.mean(arrow.points, axis=0))
    ratio = before.devicePixelRatio()
    at = (round(x * ratio), round(y * ratio))
    assert before.pixelColor(*at) != after.pixelColor(*at)


def test_the_row_of_what_is_pointed_at_is_seen_whole(window: Workplace, qtbot: QtBot) -> None:
    """A long note under the list takes room from it, which must not cover that row."""
    window.frame.resize(1024, 560)
    QApplication.processEvents()
    window.commands["fit"].trigger()
    page = window.page
    stick = page.stick.list
    for name in ("splay", "length", "inset_left", "base_height"):
        page.canvas.sight.say(name)
        index = stick.stick.index(stick.stick.place_of(name))
        qtbot.waitUntil(
            lambda index=index: stick.viewport().rect().contains(stick.visualRect(index))
        )
        qtbot.wait(10)
        assert stick.viewport().rect().contains(stick.visualRect(index)), name


def _in_view(view: SheetView, name: str, mark: Fill) -> bool:
    place = view.laid_out.arranged.place_of(name)
    left, bottom, right, top = place.room
    return left < mark.points[0][0] < right and bottom < mark.points[0][1] < top
