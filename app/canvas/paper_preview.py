"""A page as it will print, small: the same marks on the chosen paper."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.picture import Picture
from app.look.palettes import theme_of
from app.look.themes import PAPER, Tone
from geometry.drawing.marks import Sheet


class PaperPreview(QWidget):
    """Paper is paper-coloured at night too."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sheet: Sheet | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_sheet(self, sheet: Sheet) -> None:
        self._sheet = sheet
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(420, 300)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        sheet = self._sheet
        if sheet is None:
            return
        density = min((self.width() - 2) / sheet.width, (self.height() - 2) / sheet.height)
        area = QRectF(0, 0, sheet.width * density, sheet.height * density)
        painter = QPainter(self)
        try:
            painter.translate(round((self.width() - area.width()) / 2), 1)
            painter.fillRect(area, QColor(PAPER.paper))
            painter.setPen(QPen(QColor(theme_of(self.palette()).tone(Tone.QUIET)), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(area)
            painter.setClipRect(area)
            painter.translate(0, area.height())
            Picture(sheet.marks, density, self.devicePixelRatioF()).paint(painter, PAPER)
        finally:
            painter.end()
