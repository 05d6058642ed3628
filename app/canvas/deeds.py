"""What the hand does on the sheet, carried out on the desk; and typing a value in place."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QPolygonF
from PySide6.QtWidgets import QWidget

from app.canvas.sight import Sight
from app.canvas.value_entry import ValueEntry
from app.document.desk import Desk
from app.gestures.moments import (
    Deed,
    Handle,
    LeavePlane,
    Moment,
    Pan,
    PickAt,
    PutPlane,
    Restore,
    Settle,
    Shift,
    ShiftPlane,
    TypeInto,
)
from app.scene.joint_seams import Seam
from app.scene.notes import handle_note, joint_note, part_note, value_note
from app.scene.preferences import Preferences
from app.scene.sheet_view import Hold, SheetView
from app.scene.steps import drag_step
from app.scene.wording import size_text
from geometry.bench.catalogue import parameter
from geometry.bench.through import settable
from geometry.primitives.frame import Vec2

_OPENS = Qt.CursorShape.PointingHandCursor
_PULLS = {
    # by what a hand has of a section's plane
    "END": Qt.CursorShape.SizeAllCursor,
    "LEVEL": Qt.CursorShape.SizeVerCursor,
    "UPRIGHT": Qt.CursorShape.SizeHorCursor,
}
REST_MS = 450
"""A pointer that rests so long gets a note."""

TypeValue = Callable[[str, str], str]
"""Sets a named value from a text; the answer is what is wrong with it, or nothing."""


class Deeds(QObject):
    """Changes the desk, the view and what stands out; never paints.

    ``plane_put``: a section's plane has been moved, and the hand has let go of it.
    """

    plane_put = Signal()

    def __init__(
        self, canvas: QWidget, desk: Desk, view: SheetView, sight: Sight, type_value: TypeValue
    ) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        self._desk = desk
        self._view = view
        self._sight = sight
        self._type_value = type_value
        self._held: Hold | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self.rest)
        self.entry = ValueEntry(canvas)
        self.entry.given.connect(self._typed)

    @property
    def holding(self) -> bool:
        """True while the hand is closed on a value."""
        return self._held is not None

    def show_bench(self, preferences: Preferences) -> None:
        """Lay out the desk's bench; while it is dragged, its view's origin stays put."""
        self._view.show(self._desk.model, preferences, self._held)
        self._sight.forget_lost()

    # The mouse

    def point_at(self, at: Vec2 | None) -> None:
        """The pointer is there, with nothing held; None when it has left."""
        self._sight.note = ""
        self._rest.stop()
        handle = self._view.handle_at(at) if at is not None else None
        grip = self._sight.grip_at(at, handle) if at is not None else None
        handle = handle if grip is None else None
        seam = self._view.seam_at(at, handle) if at is not None and grip is None else None
        on_part = at is not None and handle is None and seam is None and grip is None
        part = self._view.part_at(at) if at is not None and on_part else ""
        self._sight.grip = grip
        if at is not None:
            self._sight.at = at
            self._canvas.setCursor(self._cursor_over(handle, seam))
            if handle is not None or seam is not None or grip is not None or part:
                self._rest.start()
        self._sight.point(handle, part, seam)

    def _cursor_over(self, handle: Handle | None, seam: Seam | None) -> Qt.CursorShape:
        if self._sight.grip is not None:
            return _PULLS[self._sight.grip.name]
        return _cursor(handle) if seam is None else _OPENS

    def rest(self) -> None:
        """The pointer has rested: say what lies under it."""
        sight, model, preferences = self._sight, self._desk.model, self._view.preferences
        if sight.grip is not None and sight.plane is not None:
            sight.note = sight.plane.note(preferences, at_rest=True)
        elif sight.seam is not None:
            sight.note = joint_note(model.bench, sight.seam.joint, preferences)
        elif sight.handle is not None:
            sight.note = handle_note(model, sight.handle, preferences)
        elif sight.part:
            sight.note = part_note(model, sight.part, preferences)
        sight.changed.emit()

    def take_hold(self, at: Vec2) -> Handle | None:
        """The hand closes on what is there."""
        self.point_at(at)
        self._rest.stop()
        self._sight.show_place(None)
        handle = self._sight.handle
        if self._sight.grip is not None and self._sight.plane is not None:
            self._sight.plane.press(at)
        if handle is not None:
            self._sight.focus = handle.dimension
            self._held = self._view.hold(handle.view, (0.0, 0.0))
            self._desk.take_hold()
        return handle

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
                self.open(deed.handle)
            case PickAt():
                self._pick(deed.at)
            case ShiftPlane() | PutPlane() | LeavePlane():
                self._move_plane(deed)
            case Pan():
                self._view.pan(deed.by)

    def let_go(self, moment: Moment, *, keep_note: bool) -> None:
        """The hand is open again."""
        self._held = None
        note = self._sight.note
        if moment.at != (0.0, 0.0):
            self.point_at(moment.at)
        self._sight.note = note if keep_note else ""

    def _pick(self, at: Vec2) -> None:
        part = self._view.part_at(at)
        self._sight.pick("" if part == self._sight.picked else part)
        self._sight.at = at
        model, preferences = self._desk.model, self._view.preferences
        self._sight.note = part_note(model, part, preferences) if part else ""

    def _shift(self, deed: Shift, moment: Moment) -> None:
        pull = deed.handle.pull
        assert pull is not None
        self._sight.seam = None
        row, preferences = parameter(pull.parameter), self._view.preferences
        step = drag_step(row.unit, row.step, preferences.shown, self._view.pixels_per_mm)
        why = self._desk.pull(pull, self._view.view_mm(deed.by), None if deed.free else step)
        self._sight.at = moment.at
        self._sight.note = value_note(self._desk.model, pull.name, preferences, why)

    def _move_plane(self, deed: ShiftPlane | PutPlane | LeavePlane) -> None:
        sight = self._sight
        assert sight.plane is not None
        match deed:
            case ShiftPlane():
                sight.plane.pull(deed.at, free=deed.free)
                sight.at = deed.at
                sight.note = sight.plane.note(self._view.preferences, at_rest=False)
            case PutPlane() if sight.plane.release():
                self.plane_put.emit()
            case _:
                sight.plane.give_up()

    # Typing

    def open(self, handle: Handle, typed: str = "") -> None:
        """Open a value for typing where it stands; a derived one says what it follows from."""
        sight, preferences = self._sight, self._view.preferences
        self._rest.stop()
        if handle.pull is None:
            sight.note = handle_note(self._desk.model, handle, preferences)
            sight.at = sight.middle_of(handle.dimension)
            return
        name = handle.pull.name
        size = settable(self._desk.model.bench.derived, name)
        row = parameter(handle.pull.parameter)
        title, value = (
            (row.title, self._desk.spec.value(name)) if size is None else (size.title, size.value)
        )
        sight.note = ""
        shown = typed or size_text(value, row.unit, preferences)
        over = handle.dimension or next(iter(sorted(self._view.dimensions_of(name))), "")
        corners = self._view.text_corners(over) or (sight.at,)
        box = QPolygonF([QPointF(x, y) for x, y in corners]).boundingRect().toRect()
        self.entry.open(name, title, shown, box, typed=bool(typed))

    def _typed(self, name: str, text: str) -> None:
        why = self._type_value(name, text)
        if why:
            self.entry.refuse(why)
        else:
            self.entry.done()


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
