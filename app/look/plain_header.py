"""The titles at the left of a table: words on the bench, a hairline under each."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QHeaderView, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone

_BESIDE = 8  # pixels before and behind a title


class PlainHeader(QHeaderView):
    """As wide as its longest title."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)

    def sizeHint(self) -> QSize:
        model, metrics = self.model(), self.fontMetrics()
        titles = (
            str(model.headerData(row, self.orientation(), Qt.ItemDataRole.DisplayRole))
            for row in range(model.rowCount())
        )
        wide = max((metrics.horizontalAdvance(title) for title in titles), default=0)
        return QSize(wide + 2 * _BESIDE, super().sizeHint().height())

    def paintSection(self, painter: QPainter, rect: QRect, section: int) -> None:
        theme = theme_of(self.palette())
        title = self.model().headerData(section, self.orientation(), Qt.ItemDataRole.DisplayRole)
        painter.fillRect(rect, QColor(theme.bench))
        painter.setPen(QColor(theme.hairline))
        painter.drawLine(rect.bottomLeft(), rect.bottomRight())
        painter.setPen(QColor(theme.tone(Tone.INK)))
        painter.drawText(
            rect.adjusted(_BESIDE, 0, -_BESIDE, 0), Qt.AlignmentFlag.AlignVCenter, str(title)
        )
