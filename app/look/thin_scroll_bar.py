"""A quiet scroll bar: a rounded bar on nothing, for lists that scroll inside a panel."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractScrollArea, QScrollBar, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone

WIDTH = 12
LEAST = 28


class ThinScrollBar(QScrollBar):
    """Upright; Qt moves it, only its look is ours."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        return QSize(WIDTH, 3 * LEAST)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        span = self.maximum() - self.minimum()
        if span <= 0:
            return
        theme = theme_of(self.palette())
        length = max(LEAST, self.height() * self.pageStep() / (span + self.pageStep()))
        top = (self.height() - length) * (self.value() - self.minimum()) / span
        painter = QPainter(self)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(Qt.PenStyle.NoPen)
            busy = self.underMouse() or self.isSliderDown()
            painter.setBrush(QColor(theme.tone(Tone.QUIET) if busy else theme.hairline))
            painter.drawRoundedRect(QRectF(3, top + 2, WIDTH - 6, length - 4), 3, 3)
        finally:
            painter.end()


def quiet_scrolling(area: QAbstractScrollArea) -> None:
    """Give an area the quiet bar, and none across."""
    area.setVerticalScrollBar(ThinScrollBar(area))
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
