"""The view of the carving: points pulled by the hand or moved by the keyboard.

A drag moves a point over the fronts; with Shift it goes deeper or shallower instead.  Tab walks
the points, the arrow keys move one by a millimetre, Page Up and Page Down raise and lower it by
half of one (with Shift ten times as far), Enter goes to its numbers.  Every drag is one step of
the history, and so are the keys until they are let go.
"""

from __future__ import annotations

import sys

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QColor,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.carving_painter import CarvingPainter, paint_words
from app.canvas.pointer_note import paint_note
from app.look.palettes import theme_of
from app.scene.carving_notes import NOTHING, point_note, whole_text
from app.scene.carving_scene import CarvingScene
from app.scene.preferences import Preferences
from geometry.design.spec import BenchSpec
from geometry.dimensioning.point_pull import pull_point
from geometry.primitives.frame import Vec2, Vec3

STEP, DEEP_STEP, BIG = 1.0, 0.5, 10.0  # mm a press of a key, and how many times with Shift
DEPTH_TRAVEL = 120.0  # px of the hand for the whole depth
MOVES: dict[int, Vec3] = {
    Qt.Key.Key_Left: (-STEP, 0.0, 0.0),
    Qt.Key.Key_Right: (STEP, 0.0, 0.0),
    Qt.Key.Key_Down: (0.0, -STEP, 0.0),
    Qt.Key.Key_Up: (0.0, STEP, 0.0),
    Qt.Key.Key_PageUp: (0.0, 0.0, -DEEP_STEP),
    Qt.Key.Key_PageDown: (0.0, 0.0, DEEP_STEP),
}


class CarvingCanvas(QWidget):
    """``pulled``: the bench under the hand, before it is let go.  ``settled``: the bench that the
    hand left, and ``given_up`` when it left none.  ``picked``: the number of the picked point.
    ``typing_asked``: its numbers are to be typed."""

    pulled = Signal(object)
    settled = Signal(object)
    given_up = Signal()
    picked = Signal(int)
    typing_asked = Signal()

    def __init__(self, spec: BenchSpec, preferences: Preferences, parent: QWidget | None) -> None:
        super().__init__(parent)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(320, 260)
        self.setAccessibleName("Carving of the fronts")
        self._spec, self._preferences = spec, preferences
        self._preview: BenchSpec | None = None
        self._at: Vec2 | None = None
        self._scene: CarvingScene | None = None
        self.number = 0
        self._pointed = 0
        self._note, self._note_at = "", (0.0, 0.0)
        self._press: tuple[Vec2, Vec3, bool] | None = None
        self._latest: tuple[Vec2, bool] | None = None
        self._frame = QTimer(self)
        self._frame.setSingleShot(True)
        self._frame.setInterval(0)
        self._frame.timeout.connect(self._act)

    # Showing

    @property
    def spec(self) -> BenchSpec:
        """The bench on the screen."""
        return self._preview or self._spec

    @property
    def scene(self) -> CarvingScene:
        """Where things lie now."""
        size = (float(self.width()), float(self.height()))
        at = self._at or (0.0, 0.0)
        old = self._scene
        if old is None or old.spec is not self.spec or (old.size, old.at) != (size, at):
            self._scene = CarvingScene(self.spec, size, at)
        assert self._scene is not None
        return self._scene

    def show_bench(self, spec: BenchSpec, preferences: Preferences) -> None:
        self._spec, self._preferences = spec, preferences
        self._preview, self._press = None, None
        numbers = [spot.number for spot in self.scene.spots] if self.scene.carving else []
        if self.number not in numbers:
            self.number = 0
        if self._at is None and self.scene.carving:
            picture = self.scene.carving.picture
            self._at = (picture.width / 2.0, picture.height / 2.0)
        self.setAccessibleDescription(whole_text(spec, preferences))
        self.update()

    def pick(self, number: int) -> None:
        """Make a point the picked one; the sections go through it."""
        self.number = number
        spot = self._spot()
        if spot is not None:
            self._at = spot[:2]
        self.picked.emit(number)
        self.update()

    def _spot(self) -> Vec3 | None:
        """The picked point in the picture."""
        if self.scene.carving is None:
            return None
        spots = [s.at for s in self.scene.spots if s.number == self.number and not s.mirrored]
        return spots[0] if spots else None

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            painter.fillRect(self.rect(), QColor(theme.paper))
            room = QRectF(self.rect())
            if self.scene.carving is None:
                paint_words(painter, NOTHING, room, theme, self.font())
                return
            CarvingPainter(painter, self.scene, self._preferences, theme).paint(
                self.number, self._pointed
            )
            if self._note:
                at = QPointF(*self._note_at)
                paint_note(painter, self._note, at, room, self.font(), theme)
        except Exception:
            sys.excepthook(*sys.exc_info())
        finally:
            painter.end()

    # The mouse

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton or self.scene.carving is None:
            return
        at = (event.position().x(), event.position().y())
        spot = self.scene.spot_under(at)
        self._settle()
        if spot is None:
            self.pick(0)
            return
        self.pick(spot.number)
        own = self._spot()
        assert own is not None
        self._press = (at, own, spot.mirrored)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = (event.position().x(), event.position().y())
        self._latest = (at, bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        if not self._frame.isActive():
            self._frame.start()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton or self._press is None:
            return
        self._act()
        self._press = None
        self._settle()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)
        if self.number:
            self.typing_asked.emit()

    def leaveEvent(self, event: object) -> None:
        super().leaveEvent(event)  # type: ignore[arg-type]
        if self._press is None:
            self._pointed, self._note = 0, ""
            self.update()

    def _act(self) -> None:
        """Once a frame: the latest move of the mouse."""
        latest, self._latest = self._latest, None
        if latest is None or self.scene.carving is None:
            return
        at, deeper = latest
        self._note_at = at
        if self._press is not None:
            self._pull(at, deeper=deeper)
            return
        spot = self.scene.spot_under(at)
        self._pointed = spot.number if spot else 0
        if self.scene.on_picture(at):
            self._at = self.scene.to_picture(at)
        self._note = point_note(
            self.spec, self._pointed, self.scene.to_picture(at), self._preferences
        )
        self.setCursor(Qt.CursorShape.SizeAllCursor if spot else Qt.CursorShape.CrossCursor)
        self.update()

    def _pull(self, at: Vec2, *, deeper: bool) -> None:
        assert self._press is not None
        start, own, mirrored = self._press
        if max(abs(at[0] - start[0]), abs(at[1] - start[1])) < 3.0 and self._preview is None:
            return
        dx, dy = at[0] - start[0], start[1] - at[1]
        carving = self.scene.carving
        assert carving is not None
        if deeper:
            to = (own[0], own[1], own[2] - dy / DEPTH_TRAVEL * carving.depth)
        else:
            scale = self.scene.scale
            across = -dx if mirrored else dx
            to = (own[0] + across / scale, own[1] + dy / scale, own[2])
        self._go(to, self._spec)

    def _go(self, to: Vec3, start: BenchSpec) -> None:
        """The picked point to a place, or as near as is held."""
        dragged = pull_point(start, self.number, to)
        self._preview = dragged.spec
        spot = self._spot()
        if spot is not None:
            self._at = spot[:2]
        self._note = point_note(
            self.spec, self.number, self._at or (0.0, 0.0), self._preferences, dragged.stopped_by
        )
        self.pulled.emit(dragged.spec)
        self.update()

    def _settle(self) -> None:
        """What was pulled becomes a step."""
        preview, self._preview = self._preview, None
        self._note = ""
        if preview is not None and preview != self._spec:
            self._spec = preview
            self.settled.emit(preview)
        elif preview is not None:
            self.given_up.emit()
        self.update()

    # The keyboard

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key == Qt.Key.Key_Escape and (self._preview is not None or self._press is not None):
            self._preview, self._press, self._note = None, None, ""
            self.given_up.emit()
            self.update()
        elif key in MOVES and self.number and self._press is None:
            self._nudge(MOVES[key], big=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.number:
            self.typing_asked.emit()
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() in MOVES and not event.isAutoRepeat() and self._press is None:
            self._settle()
        super().keyReleaseEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab walks the points, and leaves the view after the last."""
        numbers = (
            [s.number for s in self.scene.spots if not s.mirrored] if self.scene.carving else []
        )
        if not self.hasFocus() or not numbers:
            return bool(super().focusNextPrevChild(forward))
        here = (
            numbers.index(self.number)
            if self.number in numbers
            else (-1 if forward else len(numbers))
        )
        there = here + (1 if forward else -1)
        if not 0 <= there < len(numbers):
            self.pick(0)
            return bool(super().focusNextPrevChild(forward))
        self._settle()
        self.pick(numbers[there])
        self._announce(point_note(self.spec, self.number, (0.0, 0.0), self._preferences))
        return True

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        if self._press is None:
            self._settle()

    def _nudge(self, by: Vec3, *, big: bool) -> None:
        own = self._spot()
        if own is None:
            return
        times = BIG if big else 1.0
        x, y, z = (a + times * b for a, b in zip(own, by, strict=True))
        self._note_at = self.scene.to_window(own)
        self._go((x, y, z), self.spec)
        self._announce(self._note)

    def _announce(self, text: str) -> None:
        """Say it to a screen reader."""
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, text))
