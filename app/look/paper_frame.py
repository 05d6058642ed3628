"""The sheet of paper: its edge, its margin, and the border line of a drawing."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone

DESK = 10  # pixels of bench round the paper
MARGIN = 8  # pixels of paper outside the border line


class PaperFrame(QFrame):
    """What is put in ``column`` stands inside the border line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        edge = DESK + MARGIN + 1
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(edge, edge, edge, edge)
        self.column.setSpacing(0)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        paper = self.rect().adjusted(DESK, DESK, -DESK, -DESK)
        painter = QPainter(self)
        try:
            painter.fillRect(paper, QColor(theme.paper))
            painter.setPen(QPen(QColor(theme.hairline), 1))
            painter.drawRect(_inside(paper))
            border = paper.adjusted(MARGIN, MARGIN, -MARGIN, -MARGIN)
            painter.setPen(QPen(QColor(theme.tone(Tone.INK)), 1))
            painter.drawRect(_inside(border))
        finally:
            painter.end()


def _inside(area: QRect) -> QRect:
    """The rectangle whose one-pixel outline fills the area's own outermost pixels."""
    return area.adjusted(0, 0, -1, -1)
