"""A line to write on: a field without a box, ruled underneath."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF
from PySide6.QtGui import QColor, QKeyEvent, QKeySequence, QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone


class FlatField(QLineEdit):
    """The rule is heavy and in the hand's tone while the field has the keyboard."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrame(False)
        self.setTextMargins(6, 4, 6, 5)

    def event(self, event: QEvent) -> bool:
        """Undo and redo go on to the bench where there is no text to take back or do again."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            none_back = event.matches(QKeySequence.StandardKey.Undo) and not self.isUndoAvailable()
            none_on = event.matches(QKeySequence.StandardKey.Redo) and not self.isRedoAvailable()
            if none_back or none_on:
                event.ignore()
                return False
        return super().event(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        theme = theme_of(self.palette())
        on = self.hasFocus()
        height = 2 if on else 1
        painter = QPainter(self)
        try:
            rule = QRectF(0, self.height() - height, self.width(), height)
            painter.fillRect(rule, QColor(theme.tone(Tone.HAND if on else Tone.QUIET)))
        finally:
            painter.end()
