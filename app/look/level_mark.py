"""The shape of each level of finding, drawn beside its word: never a colour alone."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from app.look.palettes import theme_of
from app.look.themes import Theme, Tone
from geometry.design.finding import Level

TONES = {
    Level.DO_NOT_CUT: Tone.DO_NOT_CUT,
    Level.THINK_AGAIN: Tone.THINK_AGAIN,
    Level.GOOD_TO_KNOW: Tone.GOOD_TO_KNOW,
}


def paint_level(painter: QPainter, area: QRectF, level: Level, theme: Theme) -> None:
    """A filled square with a bar, a triangle, or a ring, in a square area."""
    colour = QColor(theme.tone(TONES[level]))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if level is Level.DO_NOT_CUT:
        painter.fillRect(area, colour)
        bar = QRectF(area.left() + 2, area.center().y() - 1, area.width() - 4, 2)
        painter.fillRect(bar, QColor(theme.paper))
        return
    painter.setPen(QPen(colour, 1.8))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    inner = area.adjusted(1, 1, -1, -1)
    if level is Level.THINK_AGAIN:
        top = QPointF(inner.center().x(), inner.top())
        painter.drawPolygon(QPolygonF([top, inner.bottomRight(), inner.bottomLeft()]))
    else:
        painter.drawEllipse(inner)


class LevelMark(QWidget):
    """The shape by itself; its word stands beside it."""

    def __init__(self, level: Level, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._level = level

    def show_level(self, level: Level) -> None:
        self._level = level
        self.update()

    def sizeHint(self) -> QSize:
        side = self.fontMetrics().ascent()
        return QSize(side, side)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        side = min(self.width(), self.fontMetrics().ascent())
        area = QRectF(0, (self.height() - side) / 2, side, side)
        painter = QPainter(self)
        try:
            paint_level(painter, area, self._level, theme_of(self.palette()))
        finally:
            painter.end()
