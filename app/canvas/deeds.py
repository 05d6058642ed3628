"""What the hand and the keyboard do on the sheet, carried out on the desk."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent, QPolygonF
from PySide6.QtWidgets import QWidget

from app.canvas.sheet_painter import UnderHand
from app.canvas.value_entry import ValueEntry
from app.document.desk import Desk
from app.gestures.moments import (
    Deed,
    Handle,
    Moment,
    Pan,
    PickAt,
    Restore,
    Settle,
    Shift,
    TypeInto,
)
from app.scene.notes import handle_note, part_note, value_note
from app.scene.preferences import Preferences
from app.scene.sheet_view import Hold, SheetView
from app.scene.steps import BIG_STEPS, drag_step, finest_step
from app.scene.wording import size_text
from geometry.bench.catalogue import parameter
from geometry.primitives.frame import Vec2

REST_MS = 450
"""A pointer that rests so long gets a note."""

TypeValue = Callable[[str, str], str]
"""Sets a named value from a text; the answer is what is wrong with it, or nothing."""


class Deeds(QObject):
    """Knows what is under the hand; changes the desk and the view, never paints."""

    pointed = Signal(str)
    part_pointed = Signal(str)
    part_picked = Signal(str)
    changed = Signal()

    def __init__(self, canvas: QWidget, desk: Desk, view: SheetView, type_value: TypeValue) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        self._desk = desk
        self._view = view
        self._type_value = type_value
        self._handle: Handle | None = None
        self._held: Hold | None = None
        self._at: Vec2 = (0.0, 0.0)
        self._part = ""
        self._lit: frozenset[str] = frozenset()
        self._pointed = ""
        self.picked = ""
        self.focus = ""
        self._note = ""
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._rested)
        self.entry = ValueEntry(canvas)
        self.entry.given.connect(self._typed)

    # Showing

    def show_bench(self, preferences: Preferences) -> None:
        """Lay out the desk's bench; while it is dragged, its view's origin stays put."""
        self._view.show(self._desk.model, preferences, self._held)
        if self.focus and self._view.target(self.focus) is None:
            self.focus = ""
        if self.picked not in {part.name for part in self._desk.model.bench.parts}:
            self.pick("")

    def under_hand(self) -> UnderHand:
        handle = self._handle
        dimensions = set(self._lit)
        edge = None
        if handle is not None and handle.dimension:
            dimensions.add(handle.dimension)
        elif handle is not None and handle.pull is not None:
            dimensions |= self._view.dimensions_of(handle.pull.parameter)
            edge = self._view.edge_pixels(handle, self._at)
        focus = self.focus if self._canvas.hasFocus() else ""
        if focus:
            dimensions.add(focus)
        return UnderHand(
            frozenset(dimensions),
            focus,
            self._part,
            self.picked,
            edge,
            self._note,
            self._at,
        )

    def light(self, name: str) -> None:
        """Light the dimensions of a value pointed at elsewhere."""
        self._lit = self._view.dimensions_of(name) if name else frozenset()
        self.changed.emit()

    def light_part(self, name: str) -> None:
        self._part = name
        self.changed.emit()

    def pick(self, name: str) -> None:
        """Pick a part out, or none."""
        if name != self.picked:
            self.picked = name
            self.part_picked.emit(name)
            self.changed.emit()

    # The mouse

    def point_at(self, at: Vec2 | None) -> None:
        """The pointer is there, with nothing held; None when it has left."""
        self._note = ""
        self._rest.stop()
        handle = self._view.handle_at(at) if at is not None else None
        part = "" if at is None or handle is not None else self._view.part_at(at)
        self._handle = handle
        if at is not None:
            self._at = at
            self._canvas.setCursor(_cursor(handle))
            if handle is not None or part:
                self._rest.start()
        if part != self._part:
            self._part = part
            self.part_pointed.emit(part)
        self._say_pointed(_name_of(handle))

    def take_hold(self, at: Vec2) -> Handle | None:
        """The hand closes on what is there."""
        self.point_at(at)
        self._rest.stop()
        if self._handle is not None:
            self.focus = self._handle.dimension
            self._held = self._view.hold(self._handle.view, (0.0, 0.0))
        return self._handle

    def do(self, deed: Deed, moment: Moment) -> None:
        """Carry out one deed of a gesture."""
        match deed:
            case Shift():
                self._shift(deed, moment)
            case Settle():
                self._desk.settle()
            case Restore():
                self._desk.restore()
            case TypeInto():
                self._open(deed.handle)
            case PickAt():
                part = self._view.part_at(deed.at)
                self.pick("" if part == self.picked else part)
                self._at = deed.at
                self._note = (
                    part_note(self._desk.model, part, self._view.preferences) if part else ""
                )
            case Pan():
                self._view.pan(deed.by)

    def let_go(self, moment: Moment, *, keep_note: bool) -> None:
        """The hand is open again."""
        self._held = None
        note = self._note
        if moment.at != (0.0, 0.0):
            self.point_at(moment.at)
        self._note = note if keep_note else ""

    def _shift(self, deed: Shift, moment: Moment) -> None:
        pull = deed.handle.pull
        assert pull is not None
        row = parameter(pull.parameter)
        shown = self._view.preferences.shown
        step = None if deed.free else drag_step(row.unit, row.step, shown, self._view.pixels_per_mm)
        why = self._desk.pull(pull, self._view.view_mm(deed.by), step)
        self._at = moment.at
        self._note = value_note(self._desk.model, pull.parameter, self._view.preferences, why)

    def _rested(self) -> None:
        if self._handle is not None:
            self._note = handle_note(self._desk.model, self._handle, self._view.preferences)
        elif self._part:
            self._note = part_note(self._desk.model, self._part, self._view.preferences)
        self.changed.emit()

    def _say_pointed(self, name: str) -> None:
        if name != self._pointed:
            self._pointed = name
            self.pointed.emit(name)

    # The keyboard

    def walk(self, *, forward: bool) -> bool:
        """Go to the next dimension; False after the last, which leaves the sheet."""
        names = self._view.walk()
        here = names.index(self.focus) if self.focus in names else (-1 if forward else len(names))
        there = here + (1 if forward else -1)
        self._desk.settle()
        self._note = ""
        if not 0 <= there < len(names):
            self.focus = ""
            self._say_pointed("")
            return False
        self.focus = names[there]
        dimension = self._desk.model.dimension_named[self.focus]
        self._view.show_point(dimension.view, dimension.end)
        handle = Handle(dimension.view, dimension.pull, dimension.name)
        self._say_pointed(_name_of(handle))
        self._announce(handle_note(self._desk.model, handle, self._view.preferences))
        return True

    def key_pressed(self, event: QKeyEvent) -> bool:
        """Arrows change a value by a step, Enter and digits type, Escape lets go."""
        key, text = Qt.Key(event.key()), event.text()
        handle = self._focused() or self._handle
        if key == Qt.Key.Key_Escape:
            return self._escape()
        if handle is None:
            return False
        if handle.pull is not None and key in _ARROWS and self._focused() is not None:
            big = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._nudge(handle.pull.parameter, _ARROWS[key] * (int(BIG_STEPS) if big else 1))
            return True
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._open(handle)
            return True
        if handle.pull is not None and text and text in "0123456789.,½¼¾-":
            self._open(handle, text)
            return True
        return False

    def key_released(self, event: QKeyEvent) -> None:
        """An arrow key let go: what it did becomes one step."""
        if event.key() in _ARROWS and self._held is None:
            self._desk.settle()

    def focus_lost(self) -> None:
        """The keyboard is elsewhere now."""
        if self._held is None:
            self._desk.settle()

    def _nudge(self, name: str, steps: int) -> None:
        row = parameter(name)
        step = finest_step(row.unit, row.step, self._view.preferences.shown)
        why = self._desk.nudge(name, steps, step)
        self._note = value_note(self._desk.model, name, self._view.preferences, why)
        self._at = self._middle_of(self.focus)
        self._announce(self._note)

    def _escape(self) -> bool:
        if self.focus or self.picked or self._note:
            self._desk.restore()
            self.focus = self._note = ""
            self.pick("")
            return True
        return False

    def _focused(self) -> Handle | None:
        if not self.focus:
            return None
        dimension = self._desk.model.dimension_named[self.focus]
        return Handle(dimension.view, dimension.pull, dimension.name)

    def _announce(self, text: str) -> None:
        """Say it to a screen reader."""
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self._canvas, text))

    # Typing

    def close_entry(self) -> None:
        self.entry.done()

    def _open(self, handle: Handle, typed: str = "") -> None:
        """Open a value for typing where it stands; a derived one says what it follows from."""
        preferences = self._view.preferences
        if handle.pull is None:
            self._note = handle_note(self._desk.model, handle, preferences)
            self._at = self._middle_of(handle.dimension)
            return
        name = handle.pull.parameter
        row = parameter(name)
        self._note = ""
        self._rest.stop()
        shown = typed or size_text(self._desk.spec.value(name), row.unit, preferences)
        over = handle.dimension or next(iter(sorted(self._view.dimensions_of(name))), "")
        corners = self._view.text_corners(over) or (self._at,)
        box = QPolygonF([QPointF(x, y) for x, y in corners]).boundingRect().toRect()
        self.entry.open(name, row.title, shown, box, typed=bool(typed))

    def _typed(self, name: str, text: str) -> None:
        why = self._type_value(name, text)
        if why:
            self.entry.refuse(why)
        else:
            self.entry.done()

    def _middle_of(self, dimension: str) -> Vec2:
        corners = self._view.text_corners(dimension)
        if not corners:
            return self._at
        return (
            sum(x for x, _ in corners) / len(corners),
            sum(y for _, y in corners) / len(corners),
        )


_ARROWS = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Down: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_Up: 1,
}


def _name_of(handle: Handle | None) -> str:
    """The value that a handle stands for, as the story stick names it."""
    if handle is None:
        return ""
    return handle.pull.parameter if handle.pull is not None else handle.dimension


def _cursor(handle: Handle | None) -> Qt.CursorShape:
    """The way a value can be pulled, seen before the press."""
    if handle is None:
        return Qt.CursorShape.ArrowCursor
    if handle.pull is None:
        return Qt.CursorShape.WhatsThisCursor
    across, up = abs(handle.pull.along[0]), abs(handle.pull.along[1])
    if across > 2 * up:
        return Qt.CursorShape.SizeHorCursor
    return Qt.CursorShape.SizeVerCursor if up > 2 * across else Qt.CursorShape.SizeAllCursor
