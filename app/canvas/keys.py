"""The keyboard on the sheet: all that a hand can do there, without a mouse."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent
from PySide6.QtWidgets import QWidget

from app.canvas.deeds import Deeds
from app.canvas.sight import Sight, name_of
from app.document.desk import Desk
from app.scene.notes import handle_note, value_note
from app.scene.sheet_view import SheetView
from app.scene.steps import BIG_STEPS, finest_step
from geometry.bench.catalogue import parameter
from geometry.dimensioning.pull import Pull

TYPED = "0123456789.,½¼¾-"
"""A key of these begins a value."""

ARROWS = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Down: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Up: 1,
}


class Keys(QObject):
    """Walks the dimensions, changes them by steps, and opens them for typing."""

    def __init__(
        self, canvas: QWidget, desk: Desk, view: SheetView, sight: Sight, deeds: Deeds
    ) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        self._desk = desk
        self._view = view
        self._sight = sight
        self._deeds = deeds

    def walk(self, *, forward: bool) -> bool:
        """Go to the next dimension; False after the last, which leaves the sheet."""
        names = self._view.walk()
        focus = self._sight.focus
        here = names.index(focus) if focus in names else (-1 if forward else len(names))
        there = here + (1 if forward else -1)
        self._desk.settle()
        self._sight.note = ""
        if not 0 <= there < len(names):
            self._sight.focus = ""
            self._sight.say("")
            return False
        self._sight.focus = names[there]
        handle = self._sight.focused()
        assert handle is not None
        dimension = self._desk.model.dimension_named[names[there]]
        self._view.show_point(dimension.view, dimension.end)
        self._sight.say(name_of(handle))
        self._announce(handle_note(self._desk.model, handle, self._view.preferences))
        return True

    def pressed(self, event: QKeyEvent) -> bool:
        """Arrows change a value by a step, Enter and digits type, Escape lets go."""
        key, text = Qt.Key(event.key()), event.text()
        if key == Qt.Key.Key_Escape:
            self._desk.restore()
            return self._sight.clear()
        focused = self._sight.focused()
        handle = focused or self._sight.handle
        if handle is None:
            return False
        if focused is not None and focused.pull is not None and key in ARROWS:
            big = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._nudge(focused.pull, ARROWS[key] * (int(BIG_STEPS) if big else 1))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._deeds.open(handle)
        elif handle.pull is not None and text and text in TYPED:
            self._deeds.open(self._sight.handle or handle, text)
        else:
            return False
        return True

    def released(self, event: QKeyEvent) -> None:
        """An arrow key let go: what it did becomes one step."""
        if event.key() in ARROWS and not self._deeds.holding:
            self._desk.settle()

    def lost(self) -> None:
        """The keyboard is elsewhere now."""
        if not self._deeds.holding:
            self._desk.settle()

    def _nudge(self, pull: Pull, steps: int) -> None:
        row = parameter(pull.parameter)
        step = finest_step(row.unit, row.step, self._view.preferences.shown)
        why = self._desk.nudge(pull.name, steps, step)
        self._sight.note = value_note(self._desk.model, pull.name, self._view.preferences, why)
        self._sight.at = self._sight.middle_of(self._sight.focus)
        self._announce(self._sight.note)

    def _announce(self, text: str) -> None:
        """Say it to a screen reader."""
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._canvas, text))
