"""The title strip along the foot of the sheet: a title block that is alive.

Cells keep their width while sizes change under the hand, so that nothing dances.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.look.palettes import theme_of
from app.look.themes import Theme, Tone
from app.look.type import scaled, with_tabular_figures

PAD = 10
Cell = tuple[str, str]
"""A small word and what stands under it."""


class TitleStrip(QWidget):
    """Painted like the block on a drawing; its words are its accessible description."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Title strip")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._cells: tuple[Cell, ...] = ()

    @property
    def cells(self) -> tuple[Cell, ...]:
        return self._cells

    def show_cells(self, cells: tuple[Cell, ...]) -> None:
        if cells != self._cells:
            self._cells = cells
            words = "; ".join(f"{label}: {value}" for label, value in cells)
            self.setAccessibleDescription(words)
            self.setToolTip("\n".join(f"{label}: {value}" for label, value in cells))
            self.update()

    def sizeHint(self) -> QSize:
        small = QFontMetrics(scaled(self.font(), 0.8)).height()
        return QSize(400, small + self.fontMetrics().height() + 12)

    def minimumSizeHint(self) -> QSize:
        return QSize(0, self.sizeHint().height())

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            painter.fillRect(self.rect(), QColor(theme.paper))
            self._paint(painter, theme)
        finally:
            painter.end()

    def _paint(self, painter: QPainter, theme: Theme) -> None:
        ink, quiet = QColor(theme.tone(Tone.INK)), QColor(theme.tone(Tone.QUIET))
        painter.setPen(QPen(ink, 1))
        painter.drawLine(0, 0, self.width(), 0)
        label_font = scaled(self.font(), 0.8)
        value_font = with_tabular_figures(self.font())
        label_height = QFontMetrics(label_font).height()
        left = 0.0
        for place, ((label, value), width) in enumerate(
            zip(self._cells, self._widths(label_font, value_font), strict=True)
        ):
            if place:
                painter.setPen(QPen(QColor(theme.hairline), 1))
                painter.drawLine(round(left), 1, round(left), self.height())
            room = width - 2 * PAD
            top = QRectF(left + PAD, 5, room, label_height)
            painter.setFont(label_font)
            painter.setPen(quiet)
            metrics = QFontMetrics(label_font)
            elided = metrics.elidedText(label, Qt.TextElideMode.ElideRight, round(room))
            painter.drawText(top, Qt.AlignmentFlag.AlignLeft, elided)
            under = QRectF(left + PAD, 5 + label_height, room, self.height() - 7 - label_height)
            painter.setFont(value_font)
            painter.setPen(ink)
            metrics = QFontMetrics(value_font)
            elided = metrics.elidedText(value, Qt.TextElideMode.ElideRight, round(room))
            painter.drawText(under, Qt.AlignmentFlag.AlignVCenter, elided)
            left += width

    def _widths(self, label_font: object, value_font: object) -> list[float]:
        """The first cell takes what the others leave; narrow windows shrink all alike."""
        if not self._cells:
            return []
        labels, values = QFontMetrics(label_font), QFontMetrics(value_font)
        digit = values.horizontalAdvance("0")
        wanted = []
        for label, value in self._cells:
            steady = -(-len(value) // 4) * 4 * digit * 0.9  # grows in steps of four characters
            text = max(labels.horizontalAdvance(label), values.horizontalAdvance(value), steady)
            wanted.append(text + 2 * PAD)
        spare = self.width() - sum(wanted)
        if spare < 0:
            return [width * self.width() / sum(wanted) for width in wanted]
        return [wanted[0] + spare, *wanted[1:]]
