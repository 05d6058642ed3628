"""Dragging with real mouse events on the real window, and what must come of it."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from app.window.workplace import Workplace
from tests.app.hand import MouseHand


def test_a_dragged_dimension_takes_all_three_views_along(
    window: Workplace, hand: MouseHand
) -> None:
    before = window.desk.model
    hand.press(hand.text_of("case_height"))
    hand.pull((0.0, -30.0))
    during = window.page.canvas.view.model
    for old, new in zip(before.lineworks[::2], during.lineworks[::2], strict=True):
        assert new.bounds()[3] > old.bounds()[3] + 20.0  # front and end elevation grew upward
    hand.release()
    assert window.desk.spec.number("case_height") > 300.0
    assert window.desk.undo_count == 1
    assert window.desk.undo_words == "Case height"


def test_dragging_the_flare_changes_front_plan_and_end(window: Workplace, hand: MouseHand) -> None:
    before = window.desk.model.lineworks
    hand.press(hand.text_of("flare"))
    hand.pull((0.0, 24.0))
    for old, new in zip(before, window.page.canvas.view.model.lineworks, strict=True):
        same = old.segments.shape == new.segments.shape and np.allclose(old.segments, new.segments)
        assert not same, new.view.name
    hand.release()
    assert window.desk.undo_count == 1


def test_the_hand_and_the_value_move_alike(window: Workplace, hand: MouseHand) -> None:
    """100 px at so many px to the mm, snapped to the step."""
    scale = window.page.canvas.view.pixels_per_mm
    hand.drag(hand.text_of("length"), (100.0, 0.0))
    moved = window.desk.spec.number("length") - 1200.0
    assert moved == pytest.approx(100.0 / scale, abs=5.01)  # a step is 10 mm at most here
    assert moved % 1.0 == 0.0


def test_what_is_dragged_stays_under_the_hand(window: Workplace, hand: MouseHand) -> None:
    """The dragged end of the dimension follows the pointer within a step; the other end stays."""
    view = window.page.canvas.view
    dimension = view.model.dimension_named["length"]
    start = view.window_point(dimension.view, dimension.start)
    end = view.window_point(dimension.view, dimension.end)
    hand.press(hand.text_of("length"))
    hand.pull((80.0, 0.0))
    dimension = view.model.dimension_named["length"]
    step = 10.0 * view.pixels_per_mm
    assert view.window_point(dimension.view, dimension.start) == pytest.approx(start, abs=0.01)
    assert view.window_point(dimension.view, dimension.end)[0] == pytest.approx(
        end[0] + 80.0, abs=step
    )
    hand.release()


def test_a_drag_and_undo_gives_an_equal_spec(window: Workplace, hand: MouseHand) -> None:
    before = window.desk.spec
    hand.drag(hand.text_of("depth"), (0.0, 25.0))
    assert window.desk.spec != before
    window.commands["undo"].trigger()
    assert window.desk.spec == before
    window.commands["redo"].trigger()
    assert window.desk.spec != before


def test_a_drag_there_and_back_is_no_step(window: Workplace, hand: MouseHand) -> None:
    before = window.desk.spec
    hand.press(hand.text_of("length"))
    hand.pull((60.0, 0.0))
    assert window.desk.spec != before
    hand.pull((-60.0, 0.0))
    hand.release()
    assert window.desk.spec == before
    assert window.desk.undo_count == 0


def test_escape_restores(window: Workplace, hand: MouseHand, qtbot: QtBot) -> None:
    before = window.desk.spec
    hand.press(hand.text_of("length"))
    hand.pull((60.0, 0.0))
    assert window.desk.spec != before
    qtbot.keyClick(window.page.canvas, Qt.Key.Key_Escape)
    assert window.desk.spec == before
    hand.pull((90.0, 0.0))
    hand.release()
    assert window.desk.spec == before
    assert window.desk.undo_count == 0


def test_alt_moves_freely(window: Workplace, hand: MouseHand) -> None:
    scale = window.page.canvas.view.pixels_per_mm
    hand.drag(hand.text_of("length"), (33.0, 0.0), keys=Qt.KeyboardModifier.AltModifier)
    assert window.desk.spec.number("length") == pytest.approx(1200.0 + 33.0 / scale, abs=1e-6)


def test_it_stops_at_the_limit_and_says_why(window: Workplace, hand: MouseHand) -> None:
    hand.press(hand.text_of("case_height"))
    hand.pull((0.0, 400.0))
    note = window.page.canvas.under_hand().note
    first, reason = note.split("\n")
    assert first.startswith("Case height")
    assert len(reason) > 10
    assert reason.endswith(".")
    assert "{" not in note
    hand.release()
    assert window.desk.spec.number("case_height") < 300.0


def test_an_edge_can_be_dragged(window: Workplace, hand: MouseHand) -> None:
    """The right edge of the plan sets the length."""
    view = window.page.canvas.view
    edge = view.window_point("plan", (1200.0, -180.0))
    handle = view.handle_at(edge)
    assert handle is not None
    assert handle.dimension == ""
    before = view.model.lineworks
    hand.press(edge)
    hand.pull((50.0, 0.0))
    for old, new in zip(before[:2], view.model.lineworks[:2], strict=True):
        assert new.bounds()[2] > old.bounds()[2]
    hand.release()
    assert window.desk.spec.number("length") > 1200.0
    assert window.desk.undo_words == "Length"


def test_an_edge_says_beforehand_which_way_it_goes(window: Workplace, hand: MouseHand) -> None:
    view = window.page.canvas.view
    hand.move(view.window_point("plan", (1200.0, -180.0)))
    assert window.page.canvas.cursor().shape() == Qt.CursorShape.SizeHorCursor
    hand.move(view.window_point("front", (900.0, 450.0)))
    assert window.page.canvas.cursor().shape() == Qt.CursorShape.SizeVerCursor


def test_a_derived_dimension_cannot_be_dragged(window: Workplace, hand: MouseHand) -> None:
    before = window.desk.spec
    hand.drag(hand.text_of("seat_height"), (0.0, -40.0))
    assert window.desk.spec == before
    assert "Follows from" in window.page.canvas.under_hand().note


def test_one_recompute_a_frame(window: Workplace, hand: MouseHand) -> None:
    """Twenty moves before the event loop runs make one new bench."""
    from PySide6.QtCore import QEvent, QPointF
    from PySide6.QtGui import QMouseEvent
    from PySide6.QtWidgets import QApplication

    shown = []
    window.desk.shown_changed.connect(lambda: shown.append(window.desk.spec))
    hand.press(hand.text_of("length"))
    canvas, (x, y) = window.page.canvas, hand.at
    for step in range(20):
        spot = QPointF(x + 20 + 4 * step, y)
        left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
        event = QMouseEvent(
            QEvent.Type.MouseMove,
            spot,
            canvas.mapToGlobal(spot),
            none,
            left,
            Qt.KeyboardModifier.NoModifier,
        )
        QApplication.sendEvent(canvas, event)
    assert not shown
    QApplication.processEvents()
    assert len(shown) == 1
    hand.release()
    assert window.desk.undo_count == 1
