"""The drawing sheet: paints the marks, follows the hand, and lets values be typed in place.

Moves of the mouse are noted and acted on once a frame.  What a gesture means is in
``app.gestures``, where things lie in ``app.scene.sheet_view``, how they look in ``sheet_painter``;
this class joins them to Qt's events.
"""

from __future__ import annotations

import sys

from PySide6.QtCore import QEvent, QPoint, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.deeds import Deeds, TypeValue
from app.canvas.keys import Keys
from app.canvas.sheet_painter import SheetPainter, UnderHand
from app.canvas.sight import Sight
from app.document.desk import Desk
from app.gestures.hands import Hand, hold_value, slide_sheet, touch_joint, touch_part, touch_plane
from app.gestures.moments import Act, Gesture, Moment, OpenJoint, OpenSection, PickAt, TypeInto
from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.type import cap_height
from app.scene.laying_out import TEXT_HEIGHT
from app.scene.notes import sheet_text
from app.scene.preferences import Preferences
from app.scene.sheet_view import SheetView

CANNOT_DRAW = "The drawing failed. The sizes are as you set them; undo still works."
FREE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ControlModifier
"""Alt moves freely; Control too, since some desktops keep Alt and the mouse to themselves."""


class SheetCanvas(QWidget):
    """What it says to the rest of the window it says through ``sight``.

    ``joint_opened`` names the joint whose detail is wanted; ``section_opened``: the section is.
    """

    scale_changed = Signal()
    joint_opened = Signal(str)
    section_opened = Signal()

    def __init__(
        self,
        desk: Desk,
        preferences: Preferences,
        type_value: TypeValue,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(240, 200)
        self.setAccessibleName("Drawing sheet")
        self._desk = desk
        self.view = SheetView(desk.model, preferences)
        self._describe()
        self.sight = Sight(self.view, self)
        self.sight.changed.connect(self.update)
        self.deeds = Deeds(self, desk, self.view, self.sight, type_value)
        self._keys = Keys(self, desk, self.view, self.sight, self.deeds)
        self._painter = SheetPainter(self.view)
        self._hand: Hand | None = None
        self._latest: Moment | None = None
        self._sliding = False
        self._room = (QSize(), 0)
        self._top = 0
        self._frame = QTimer(self)
        self._frame.setSingleShot(True)
        self._frame.setInterval(0)
        self._frame.timeout.connect(self._act)

    # Showing

    def show_bench(self, preferences: Preferences) -> None:
        """The desk has another bench, or the maker other preferences.

        A typed value that makes a fitted bench outgrow the window fits it again; a hand on a
        value never has the sheet pulled from under it.
        """
        model = self._desk.model
        if model is self.view.model and preferences == self.view.preferences:
            return
        self.deeds.show_bench(preferences)
        if not self._desk.previewing:
            self._describe()
        if self.view.fitted and not self._desk.previewing and self.view.overflows():
            self.view.fit()
            self.scale_changed.emit()
        self.update()

    def under_hand(self) -> UnderHand:
        """What stands out now."""
        return self.sight.under_hand(has_keyboard=self.hasFocus())

    def _describe(self) -> None:
        """The sheet in words, as it stands when no hand is on it."""
        self.setAccessibleDescription(sheet_text(self.view.model, self.view.preferences))

    def fit(self) -> None:
        self.view.fit()
        self._rescaled()

    def zoom(self, notches: float) -> None:
        """Larger or smaller about the middle; the wheel does it about the pointer."""
        self.view.zoom((self.width() / 2, self.height() / 2), notches)
        self._rescaled()

    def _rescaled(self) -> None:
        self.deeds.entry.done()
        self.scale_changed.emit()
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        painter = QPainter(self)
        theme = theme_of(self.palette())
        try:
            self._painter.paint(
                painter,
                self.size(),
                self.devicePixelRatioF(),
                theme,
                self.font(),
                self.under_hand(),
            )
        except Exception:
            sys.excepthook(*sys.exc_info())
            painter.resetTransform()
            painter.fillRect(self.rect(), QColor(theme.paper))
            painter.setPen(QColor(theme.tone(Tone.DO_NOT_CUT)))
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, CANNOT_DRAW)
        finally:
            painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """A window of another size fits a fitted sheet again; a notice over it leaves the drawing
        where it is on the screen, and so do findings below it that have room enough."""
        super().resizeEvent(event)
        top = self.mapTo(self.window(), QPoint(0, 0)).y()
        frame = (self.window().size(), self.width())
        if self.isVisible() and frame == self._room:
            down = self._top - top
            held = self._hand is not None or self.deeds.entry.isVisible()
            self.view.give_way(float(self.height()), float(down), held=held)
            self.deeds.entry.move(self.deeds.entry.pos() + QPoint(0, down))
            self.scale_changed.emit()
            self.update()
        else:
            self._measure()
        self._room, self._top = frame, top

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._room = (QSize(), 0)  # all around it is laid out anew
            self._measure()

    def _measure(self) -> None:
        """Lettering on the sheet is as large as that of the window around it."""
        density = cap_height(self.font()) / TEXT_HEIGHT
        self.view.resize((float(self.width()), float(self.height())), density)
        self._rescaled()

    # The mouse

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self._hand is not None:
            return
        press = _moment(Act.PRESS, event)
        button = event.button()
        if button == Qt.MouseButton.MiddleButton or (
            self._sliding and button == Qt.MouseButton.LeftButton
        ):
            self._hand = Hand(slide_sheet(press))
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif button == Qt.MouseButton.LeftButton:
            self.deeds.entry.done()
            self._hand = Hand(self._touched(press))

    def _touched(self, press: Moment) -> Gesture:
        """What the hand is on, where it has come down."""
        handle = self.deeds.take_hold(press.at)
        if self.sight.grip is not None:
            return touch_plane(press)
        if self.sight.seam is not None:
            return touch_joint(self.sight.seam.joint, handle, press)
        return hold_value(handle, press) if handle else touch_part(press)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """A joint opens; anywhere else the second press is a press like the first."""
        at = (event.position().x(), event.position().y())
        joint = ""
        if event.button() == Qt.MouseButton.LeftButton and not self._sliding:
            handle = self.view.handle_at(at)
            if handle is None or not handle.dimension:
                joint = self.view.joint_at(at)
        if joint:
            self.joint_opened.emit(joint)
        else:
            self.mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._latest = _moment(Act.MOVE, event)
        if not self._frame.isActive():
            self._frame.start()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._hand is None:
            return
        if self._latest is not None:
            self._latest = _moment(Act.MOVE, event)
            self._act()
        self._feed(_moment(Act.RELEASE, event))

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._latest = None
        if self._hand is None:
            self.deeds.point_at(None)
            self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer; a sideways wheel, or Shift, slides the sheet."""
        turn = event.angleDelta()
        at = event.position()
        if self._hand is not None:
            event.ignore()
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier or abs(turn.x()) > abs(turn.y()):
            self.view.pan((float(turn.x() or turn.y()) / 2, 0.0))
        else:
            self.view.zoom((at.x(), at.y()), turn.y() / 120.0)
        self._rescaled()
        self.deeds.point_at((at.x(), at.y()))

    def _act(self) -> None:
        """Once a frame: the latest move of the mouse."""
        moment, self._latest = self._latest, None
        if moment is None:
            return
        if self._hand is not None:
            self._feed(moment)
        else:
            self.deeds.point_at(moment.at)
            self.update()

    def _feed(self, moment: Moment) -> None:
        hand = self._hand
        if hand is None:
            return
        deed = hand.feed(moment)
        if not hand.busy:
            self._hand = None
        if deed is not None:
            self.deeds.do(deed, moment)
        if self._hand is None:
            self.deeds.let_go(moment, keep_note=isinstance(deed, PickAt | TypeInto))
        self.update()
        if isinstance(deed, OpenJoint | OpenSection):
            self.deeds.point_at(None)
        if isinstance(deed, OpenJoint):
            self.joint_opened.emit(deed.joint)
        elif isinstance(deed, OpenSection):
            self.section_opened.emit()

    # The keyboard

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key == Qt.Key.Key_Escape and self._hand is not None:
            self._latest = None
            self._feed(Moment(Act.ESCAPE, (0.0, 0.0)))
        elif key == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._sliding = True
            self.setCursor(Qt.CursorShape.OpenHandCursor)
        elif key == Qt.Key.Key_F and not event.modifiers():
            self.fit()
        elif not self._keys.pressed(event):
            super().keyPressEvent(event)
            return
        self.update()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.isAutoRepeat():
            return
        if event.key() == Qt.Key.Key_Space:
            self._sliding = False
            self.unsetCursor()
        self._keys.released(event)
        self.update()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab walks the dimensions, and leaves the sheet after the last."""
        if self.hasFocus() and self._keys.walk(forward=forward):
            self.update()
            return True
        return bool(super().focusNextPrevChild(forward))

    def focusOutEvent(self, event: object) -> None:
        super().focusOutEvent(event)  # type: ignore[arg-type]
        self._sliding = False
        self._keys.lost()
        self.update()


def _moment(act: Act, event: QMouseEvent) -> Moment:
    at = event.position()
    return Moment(act, (at.x(), at.y()), bool(event.modifiers() & FREE_KEYS))
