"""A line to write on: a field without a box, ruled underneath."""

from __future__ import annotations

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone


class FlatField(QLineEdit):
    """The rule is heavy and in the hand's tone while the field has the keyboard."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrame(False)
        self.setTextMargins(6, 4, 6, 5)

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
