"""The carving's own view: points under a real mouse and the keyboard, typed numbers, fronts."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.canvas.carving_canvas import CarvingCanvas
from app.panels.job_strip import CARVING, STAGES
from app.scene.carving_notes import NOTHING
from app.window.carving_stage import CarvingStage
from app.window.workplace import Workplace
from geometry.bench.carving_numbers import carving_of
from geometry.design.parameter import Value
from geometry.dimensioning.point_pull import spot_of

STAGE = STAGES.index(CARVING)
LEFT, NONE = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
NO_KEY, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier
# One front 1096 x 256 x 18; points 1 to 4 at the corners, 5 on a border, 6 in the middle.
PLACES = "1 0 0 0; 2 100 0 0; 3 100 100 0; 4 0 100 0; 5 50 0 0; 6 50 50 50"


class Hand:
    """A mouse over the view."""

    def __init__(self, canvas: CarvingCanvas) -> None:
        self.canvas = canvas

    def send(
        self, kind: QEvent.Type, at: tuple[float, float], held: bool, keys: Qt.KeyboardModifier
    ) -> None:
        spot = QPointF(*at)
        button = NONE if kind == QEvent.Type.MouseMove else LEFT
        buttons = LEFT if held else NONE
        event = QMouseEvent(kind, spot, self.canvas.mapToGlobal(spot), button, buttons, keys)
        QApplication.sendEvent(self.canvas, event)
        QApplication.processEvents()

    def press(self, at: tuple[float, float]) -> None:
        self.send(QEvent.Type.MouseMove, at, False, NO_KEY)
        self.send(QEvent.Type.MouseButtonPress, at, True, NO_KEY)

    def pull(
        self,
        at: tuple[float, float],
        by: tuple[float, float],
        keys: Qt.KeyboardModifier = NO_KEY,
        *,
        let_go: bool = True,
    ) -> None:
        self.press(at)
        for k in range(1, 6):
            there = (at[0] + by[0] * k / 5, at[1] + by[1] * k / 5)
            self.send(QEvent.Type.MouseMove, there, True, keys)
        if let_go:
            self.send(QEvent.Type.MouseButtonRelease, there, False, keys)


def stage_of(window: Workplace, **changes: Value) -> CarvingStage:
    """The stage, with one carved front."""
    window.desk.set_values({"partition_count": 0.0, "opening_1_fill": "drawers"})
    window.desk.set_values({"carving": "faceted", "carving_points": 6.0, "carving_moved": PLACES})
    if changes:
        window.desk.set_values(changes)
    window.go_to(STAGE)
    QApplication.processEvents()
    assert window.stages.carving is not None
    return window.stages.carving


def place(window: Workplace, number: int) -> tuple[float, float, float]:
    carving = carving_of(window.desk.spec)
    assert carving is not None
    spot = spot_of(carving, number)
    assert spot is not None
    return spot.at


def pixel(stage: CarvingStage, number: int, *, image: bool = False) -> tuple[float, float]:
    scene = stage.canvas.scene
    spot = next(s for s in scene.spots if s.number == number and s.mirrored == image)
    return scene.to_window(spot.at)


def test_only_a_bench_with_drawers_has_the_stage(window: Workplace) -> None:
    assert not window.job.button(STAGE).isVisible()
    assert not window.commands["stage_carving"].isEnabled()
    stage_of(window)
    assert window.job.button(STAGE).isVisible()
    window.desk.set_values({"opening_1_fill": "open"})
    assert not window.job.button(STAGE).isVisible()
    assert window.page.isVisible()


def test_with_nothing_carved_it_says_what_to_do(window: Workplace) -> None:
    stage = stage_of(window)
    window.desk.set_values({"carving": "plain"})
    assert stage.canvas.accessibleDescription() == NOTHING
    stage.canvas.grab()
    Hand(stage.canvas).pull((100.0, 100.0), (20.0, 0.0))
    assert window.desk.undo_words == "Carving of the fronts"


def test_a_point_is_pulled_and_one_undo_takes_it_back(window: Workplace) -> None:
    stage = stage_of(window)
    steps, before = window.desk.undo_count, window.desk.spec
    scale = stage.canvas.scene.scale
    Hand(stage.canvas).pull(pixel(stage, 6), (60.0, -20.0))
    assert place(window, 6) == pytest.approx((548 + 60 / scale, 128 + 20 / scale, 3.0), abs=0.1)
    assert window.desk.undo_count == steps + 1
    assert window.desk.undo_words == "Point 6 of the carving"
    window.desk.undo()
    assert window.desk.spec == before
    window.desk.redo()
    assert place(window, 6)[0] > 548


def test_while_it_is_held_the_view_moves_and_the_history_does_not(window: Workplace) -> None:
    stage = stage_of(window)
    steps = window.desk.undo_count
    Hand(stage.canvas).pull(pixel(stage, 6), (60.0, 0.0), let_go=False)
    assert stage.canvas.spec != window.desk.spec
    assert window.desk.undo_count == steps
    assert stage.page.point.fields[0].text() != "548"
    QTest.keyClick(stage.canvas, Qt.Key.Key_Escape)
    assert stage.canvas.spec == window.desk.spec
    assert window.desk.undo_count == steps
    assert stage.page.point.fields[0].text() == "548"


def test_a_click_only_picks(window: Workplace) -> None:
    stage = stage_of(window)
    steps = window.desk.undo_count
    hand = Hand(stage.canvas)
    hand.press(pixel(stage, 6))
    hand.send(QEvent.Type.MouseButtonRelease, pixel(stage, 6), False, NO_KEY)
    assert stage.canvas.number == 6
    assert [field.text() for field in stage.page.point.fields] == ["548", "128", "3"]
    assert window.desk.undo_count == steps


def test_with_shift_it_goes_deeper_until_the_front_is_as_thin_as_it_may_be(
    window: Workplace,
) -> None:
    """18 less 8 wanted leaves 10 of 12; 120 pixels are the whole depth."""
    stage = stage_of(window, carving_depth=12.0)
    hand = Hand(stage.canvas)
    hand.pull(pixel(stage, 6), (0.0, 10.0), SHIFT)
    assert place(window, 6)[2] == pytest.approx(6.0 + 1.0, abs=1e-3)
    hand.pull(pixel(stage, 6), (0.0, 115.0), SHIFT, let_go=False)
    assert "keeps 8 mm of its front" in stage.canvas._note
    hand.send(QEvent.Type.MouseButtonRelease, (0.0, 0.0), False, SHIFT)
    assert place(window, 6)[2] == pytest.approx(10.0, abs=1e-3)
    window.presenter.look_for_findings()
    assert not [f for f in window.presenter.clerk.findings if "carving" in f.check]


def test_the_image_of_a_point_pulls_it_the_other_way(window: Workplace) -> None:
    stage = stage_of(window, carving_mirror="mirrored", carving_moved="6 20 50 50")
    before = place(window, 6)
    scale = stage.canvas.scene.scale
    Hand(stage.canvas).pull(pixel(stage, 6, image=True), (40.0, 0.0))
    assert place(window, 6)[0] == pytest.approx(before[0] - 40.0 / scale, abs=0.1)


def test_keys_walk_the_points_and_move_them(window: Workplace) -> None:
    stage = stage_of(window)
    canvas = stage.canvas
    canvas.setFocus()
    for _ in range(6):
        QTest.keyClick(canvas, Qt.Key.Key_Tab)
    assert canvas.number == 6
    steps = window.desk.undo_count
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    QTest.keyClick(canvas, Qt.Key.Key_Up, SHIFT)
    QTest.keyClick(canvas, Qt.Key.Key_PageDown)
    assert place(window, 6) == pytest.approx((549.0, 138.0, 3.5), abs=0.02)
    assert window.desk.undo_count == steps + 3
    QTest.keyClick(canvas, Qt.Key.Key_Backtab)
    assert canvas.number == 5
    QTest.keyClick(canvas, Qt.Key.Key_Tab)
    QTest.keyClick(canvas, Qt.Key.Key_Tab)
    assert canvas.number == 0


def test_a_number_is_typed_in_any_unit(window: Workplace) -> None:
    stage = stage_of(window)
    stage.canvas.pick(6)
    QTest.keyClick(stage.canvas, Qt.Key.Key_Return)
    field = stage.page.point.fields[0]
    assert field.hasFocus()
    field.setText("20 in")
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert place(window, 6)[0] == pytest.approx(508.0, abs=0.02)
    deep = stage.page.point.fields[2]
    deep.setText("99")
    QTest.keyClick(deep, Qt.Key.Key_Return)
    assert place(window, 6)[2] == pytest.approx(6.0)
    assert "goes no deeper" in stage.page.point.reason.text()
    deep.setText("deep")
    QTest.keyClick(deep, Qt.Key.Key_Return)
    assert deep.wrong
    QTest.keyClick(deep, Qt.Key.Key_Escape)
    assert deep.text() == "6"
    assert stage.canvas.hasFocus()


def test_what_holds_a_corner_cannot_be_typed(window: Workplace) -> None:
    stage = stage_of(window)
    stage.canvas.pick(3)
    assert [field.isReadOnly() for field in stage.page.point.fields] == [True, True, False]
    assert "held" in stage.page.point.fields[0].accessibleName()


def test_fronts_are_switched_one_by_one(window: Workplace) -> None:
    stage = stage_of(window, opening_1_drawers=2.0)
    button = stage.page.front_button("1.1")
    assert button.accessibleName() == "Drawer 1 of opening 1, carved"
    button.click()
    assert window.desk.spec.word("carved_fronts") == "1.2"
    assert stage.page.front_button("1.1").accessibleName().endswith("plain")
    stage.page.front_button("1.1").click()
    assert window.desk.spec.word("carved_fronts") == "all"
    for name in ("1.1", "1.2"):
        stage.page.front_button(name).click()
    assert window.desk.spec.word("carving") == "plain"


def test_another_seed_and_back(window: Workplace) -> None:
    stage = stage_of(window)
    stage.page.another.click()
    assert window.desk.spec.count("carving_seed") == 2
    assert stage.page.back.isVisible()
    stage.page.back.click()
    assert window.desk.spec.word("carving_moved") == ""
    assert not stage.page.back.isVisible()


def test_what_would_give_the_finger_more_is_said_and_done(window: Workplace) -> None:
    """Point 3 is 10 deep at a corner of the top edge; 7.65 keeps a land of 4."""
    moved = PLACES.replace("3 100 100 0", "3 100 100 100")
    stage = stage_of(window, carving_depth=10.0, carving_moved=moved, finger_groove="top edge")
    assert stage.canvas.scene.lacking
    assert "Raise point 3 by 2.3" in stage.page.advice.text().replace("2.4", "2.3")
    stage.page.raise_them.click()
    assert not stage.canvas.scene.lacking
    assert not stage.page.raise_them.isVisible()
    assert place(window, 3)[2] == pytest.approx(7.65, abs=0.01)


def test_sizes_typed_beside_it_change_it(window: Workplace) -> None:
    stage = stage_of(window)
    stick = stage.page.stick.stick
    assert stick.setData(stick.index(stick.place_of("carving_depth")), "8")
    assert place(window, 6)[2] == pytest.approx(4.0)
    assert stick.setData(stick.index(stick.place_of("carving_moved")), "6 25 50 50")
    assert place(window, 6)[0] == pytest.approx(274.0)
    assert not stick.setData(stick.index(stick.place_of("carving_moved")), "6 25 50")
    assert place(window, 6)[0] == pytest.approx(274.0)


def test_it_is_painted_in_every_state(window: Workplace) -> None:
    stage = stage_of(window, finger_groove="bottom edge")
    stage.canvas.pick(6)
    image = stage.canvas.grab().toImage()
    colours = {image.pixelColor(x, y).name() for x in range(0, 400, 7) for y in range(0, 200, 5)}
    assert len(colours) > 4
    window.commands["other_unit"].trigger()
    assert stage.page.point.fields[0].text() == "21 ⁹⁄₁₆"
    stage.canvas.grab()
