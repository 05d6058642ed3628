"""A small note beside the pointer: the value under the hand, why it stopped, what a part is."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from app.look.themes import Theme, Tone

PAD = 8.0
AWAY = 18.0
WIDEST = 340.0


def paint_note(
    painter: QPainter, text: str, at: QPointF, room: QRectF, font: QFont, theme: Theme
) -> QRectF:
    """Paint the note near ``at`` and wholly inside ``room``; returns where it stands."""
    area = note_rect(text, at, room, font)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setFont(font)
    painter.setPen(QPen(QColor(theme.tone(Tone.QUIET)), 1))
    painter.setBrush(QColor(theme.paper))
    painter.drawRoundedRect(area.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
    painter.setPen(QColor(theme.tone(Tone.INK)))
    painter.drawText(area.adjusted(PAD, PAD / 2, -PAD, -PAD / 2), _FLAGS, text)
    painter.restore()
    return area


def note_rect(text: str, at: QPointF, room: QRectF, font: QFont) -> QRectF:
    """Below and right of the pointer; on the other side where there is no room."""
    metrics = QFontMetricsF(font)
    widest = min(WIDEST, room.width() - 2 * PAD)
    box = metrics.boundingRect(QRectF(0, 0, widest - 2 * PAD, 1000), _FLAGS, text)
    width, height = box.width() + 2 * PAD + 1, box.height() + PAD
    left = at.x() + AWAY if at.x() + AWAY + width <= room.right() else at.x() - AWAY - width
    top = at.y() + AWAY if at.y() + AWAY + height <= room.bottom() else at.y() - AWAY - height
    left = min(max(left, room.left()), room.right() - width)
    top = min(max(top, room.top()), room.bottom() - height)
    return QRectF(left, top, width, height)


_FLAGS = Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft
