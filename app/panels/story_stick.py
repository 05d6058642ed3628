"""The story stick: every size of the bench in one narrow list, typed into and filtered.

It is also the keyboard and screen-reader way to all that the mouse can drag: the arrow keys go
up and down, left and right change a value by a step (with Shift by ten), Enter or any character
types.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QItemSelectionModel, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QLabel,
    QListView,
    QVBoxLayout,
    QWidget,
)

from app.look.flat_field import FlatField
from app.look.thin_scroll_bar import quiet_scrolling
from app.panels.stick_delegate import StickDelegate, value_rect
from app.panels.stick_model import Index, StickModel, TypeValue
from app.scene.absent_sizes import NOTHING
from app.scene.stick_rows import StickRow

BIG = 10


class StickList(QListView):
    """The list itself.  ``pointed`` names the row under the pointer or the keyboard, or ''.

    ``stepped`` asks for a value to be changed by so many steps.
    """

    pointed = Signal(str)
    stepped = Signal(str, int)

    def __init__(self, type_value: TypeValue, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.stick = StickModel(type_value, self)
        self.setModel(self.stick)
        self.setItemDelegate(StickDelegate(self))
        self.setAccessibleName("Story stick: sizes of the bench")
        self.setFrameShape(QListView.Shape.NoFrame)
        self.setMouseTracking(True)
        self.setEditTriggers(
            QAbstractItemView.EditTrigger.AnyKeyPressed
            | QAbstractItemView.EditTrigger.EditKeyPressed
        )
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        quiet_scrolling(self)
        self.viewport().setAutoFillBackground(False)

    def currentChanged(self, current: Index, previous: Index) -> None:
        super().currentChanged(current, previous)
        if self.hasFocus():
            self._point(current)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        super().mouseMoveEvent(event)
        self._point(self.indexAt(event.position().toPoint()))

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit("")

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click on the value opens it for typing."""
        super().mouseReleaseEvent(event)
        place = event.position().toPoint()
        index = self.indexAt(place)
        if index.flags() & Qt.ItemFlag.ItemIsEditable:
            area = value_rect(self.visualRect(index), self.fontMetrics())
            if area.contains(place):
                self.edit(index)
                box = self.findChild(QComboBox)
                if box is not None:
                    box.showPopup()  # a second click would be one too many

    def keyPressEvent(self, event: QKeyEvent) -> None:
        row = self.stick.row(self.currentIndex())
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.currentIndex().flags() & Qt.ItemFlag.ItemIsEditable:
                self.edit(self.currentIndex())
        elif row is not None and key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            big = BIG if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            self.stepped.emit(row.name, big if key == Qt.Key.Key_Right else -big)
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()  # a reason wraps to the width

    def _point(self, index: Index) -> None:
        row = self.stick.row(index)
        self.pointed.emit(row.name if row else "")


class StoryStick(QWidget):
    """A field to filter with, the list, and a note on the row at hand.

    ``absent`` says what there is to say of words by which no size goes.
    """

    def __init__(self, type_value: TypeValue, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.absent: Callable[[str], str] = lambda _sought: NOTHING
        self.filter = FlatField(self)
        self.filter.setPlaceholderText("Find a size")
        self.filter.setAccessibleName("Find a size")
        self.filter.setClearButtonEnabled(True)
        self.list = StickList(type_value, self)
        self._followed = ""
        self.note = QLabel(self)
        self.note.setWordWrap(True)
        self.note.setContentsMargins(10, 6, 10, 8)
        self.note.setMinimumHeight(self.fontMetrics().height() * 3 + 14)
        self.note.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.nothing = QLabel(self)
        self.nothing.setWordWrap(True)
        self.nothing.setContentsMargins(10, 8, 10, 8)
        self.nothing.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for widget in (self.filter, self.nothing, self.list, self.note):
            column.addWidget(widget, 1 if widget is self.list else 0)
        self.filter.textChanged.connect(self._seek)
        self.filter.returnPressed.connect(self._to_the_first)

    def show_rows(self, rows: tuple[StickRow, ...]) -> None:
        self.list.stick.show_rows(rows)
        self._tell_of_nothing()

    def light(self, name: str, *, scroll: bool = False) -> None:
        """Light the row of a value; ``scroll`` brings it into sight."""
        self.list.stick.light(name)
        self._followed = name if scroll else ""
        self._show_followed()

    def take_up(self, name: str) -> None:
        """Make a value's row the current one, clearing a filter that hides it."""
        if self.list.stick.place_of(name) < 0:
            self.filter.clear()
        place = self.list.stick.place_of(name)
        if place >= 0:
            index = self.list.stick.index(place)
            self.list.selectionModel().setCurrentIndex(
                index, QItemSelectionModel.SelectionFlag.ClearAndSelect
            )
            self.list.scrollTo(index)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Down from the field, which has no use for it, goes on to what was found."""
        if self.filter.hasFocus() and event.key() == Qt.Key.Key_Down:
            self._to_the_first()
        else:
            super().keyPressEvent(event)

    def say(self, note: str) -> None:
        """The sentence under the list: what the row at hand is, and how far it can go.

        A long one takes room from the list; the row at hand stays in sight all the same.
        """
        self.note.setText(note)
        if self._followed and note:
            QTimer.singleShot(0, self, self._show_followed)

    def _show_followed(self) -> None:
        place = self.list.stick.place_of(self._followed)
        if place >= 0:
            self.list.scrollTo(self.list.stick.index(place))

    def _to_the_first(self) -> None:
        """The keyboard goes to the first size that was found."""
        stick = self.list.stick
        places = (stick.index(place) for place in range(stick.rowCount()))
        first = next((i for i in places if i.flags() & Qt.ItemFlag.ItemIsSelectable), None)
        if first is not None:
            self.list.setFocus(Qt.FocusReason.ShortcutFocusReason)
            self.list.setCurrentIndex(first)

    def _seek(self, sought: str) -> None:
        self.list.stick.seek(sought)
        self._tell_of_nothing()

    def _tell_of_nothing(self) -> None:
        sought = self.filter.text()
        nothing = bool(sought) and self.list.stick.rowCount() == 0
        if nothing:
            self.nothing.setText(self.absent(sought))
        self.nothing.setVisible(nothing)
