"""The sheet of paper: its edge, its margin, and the border line of a drawing."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
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
            _edge(painter, paper, QColor(theme.hairline))
            border = paper.adjusted(MARGIN, MARGIN, -MARGIN, -MARGIN)
            _edge(painter, border, QColor(theme.tone(Tone.INK)))
        finally:
            painter.end()


def _edge(painter: QPainter, area: QRect, colour: QColor) -> None:
    """An area's own outermost pixels; a pen's line would lie half beside them on a fine screen."""
    inner = area.adjusted(1, 1, -1, -1)
    for strip in (
        QRect(area.topLeft(), QSize(area.width(), 1)),
        QRect(area.left(), inner.bottom() + 1, area.width(), 1),
        QRect(area.topLeft(), QSize(1, area.height())),
        QRect(inner.right() + 1, area.top(), 1, area.height()),
    ):
        painter.fillRect(strip, colour)
