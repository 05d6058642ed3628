"""Typing a value in place on the sheet, with the reason under it when it can't be."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRect, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.value_field import ValueField

WIDTH = 12  # digits
WIDEST_REASON = 320


class ValueEntry(QWidget):
    """``given`` carries parameter and text; the owner answers with ``refuse`` or ``done``."""

    given = Signal(str, str)
    closed = Signal()

    def __init__(self, sheet: QWidget) -> None:
        super().__init__(sheet)
        self._sheet = sheet
        self.parameter = ""
        self.field = ValueField(self)
        self.field.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.reason = QLabel(self)
        self.reason.setWordWrap(True)
        self.reason.hide()
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(4, 3, 4, 3)
        column.setSpacing(2)
        column.addWidget(self.field, 0, Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(self.reason)
        self.field.given.connect(self._give)
        self.field.given_up.connect(self.done)
        self.field.textEdited.connect(self._clear)
        self.field.installEventFilter(self)
        self.hide()

    def open(self, parameter: str, title: str, text: str, over: QRect, *, typed: bool) -> None:
        """Show the field over a dimension's text.  ``typed`` text is a beginning to go on from."""
        self.parameter = parameter
        self.field.setAccessibleName(title)
        self.field.setText(text)
        self._clear()
        self._stand(over)
        self.show()
        self.raise_()
        self.field.setFocus(Qt.FocusReason.OtherFocusReason)
        if typed:
            self.field.deselect()
            self.field.setCursorPosition(len(text))
        else:
            self.field.selectAll()

    def refuse(self, why: str) -> None:
        """Keep the wrong text and say under it what would be right."""
        self.field.show_wrong(why)
        palette = QPalette(self.reason.palette())
        tone = theme_of(self.palette()).tone(Tone.DO_NOT_CUT)
        palette.setColor(QPalette.ColorRole.WindowText, QColor(tone))
        self.reason.setPalette(palette)
        self.reason.setText(f"✕ {why}")
        self.reason.setFixedWidth(WIDEST_REASON)
        self.reason.show()
        self._stand(self._over)

    def done(self) -> None:
        """Put the field away; the sheet has the keyboard again."""
        if self.isVisible():
            had_focus = self.field.hasFocus()
            self.hide()
            if had_focus:
                self._sheet.setFocus(Qt.FocusReason.OtherFocusReason)
            self.closed.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A right text is taken when the hand goes elsewhere; a wrong one stays to be seen."""
        if event.type() == QEvent.Type.FocusOut and self.isVisible() and self.field.isModified():
            self._give()
        elif event.type() == QEvent.Type.FocusOut and not self.field.wrong:
            self.done()
        return bool(super().eventFilter(watched, event))

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            painter.fillRect(self.rect(), QColor(theme.paper))
            painter.setPen(QPen(QColor(theme.tone(Tone.HAND)), 2))
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))
        finally:
            painter.end()

    def _give(self) -> None:
        self.given.emit(self.parameter, self.field.text())

    def _clear(self) -> None:
        if self.field.wrong:
            self.field.show_wrong("")
        self.reason.hide()
        if self.isVisible():
            self._stand(self._over)

    def _stand(self, over: QRect) -> None:
        """Centred on the text it replaces, inside the sheet."""
        self._over = over
        digit = self.field.fontMetrics().horizontalAdvance("0")
        self.field.setFixedWidth(max(over.width() + 2 * digit, WIDTH * digit))
        self._column.activate()
        size = self.sizeHint()
        if self.reason.isVisibleTo(self):
            size.setHeight(self._column.totalHeightForWidth(size.width()))
        room = self._sheet.rect()
        left = min(max(over.center().x() - size.width() // 2, 0), room.width() - size.width())
        top = over.center().y() - self.field.sizeHint().height() // 2 - 3
        top = min(max(top, 0), max(0, room.height() - size.height()))
        self.setGeometry(left, top, size.width(), size.height())
