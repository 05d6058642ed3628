"""The title strip along the foot of the sheet: a title block that is alive.

Cells keep their width while sizes change under the hand, so that nothing dances.
"""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from app.canvas.picture import Picture
from app.look.palettes import theme_of
from app.look.themes import Theme, Tone
from app.look.type import scaled, with_tabular_figures
from geometry.sheets.projection_symbol import projection_symbol

PAD = 10
SYMBOL = 3.5  # mm, the small end of the cone
Cell = tuple[str, str]
"""A small word and what stands under it."""


class TitleStrip(QWidget):
    """Painted like the block on a drawing; its words are its accessible description."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Title strip")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._cells: tuple[Cell, ...] = ()
        self._third_angle = True

    @property
    def cells(self) -> tuple[Cell, ...]:
        return self._cells

    def show_projection(self, *, third_angle: bool) -> None:
        """The symbol for how the views are arranged, in the last cell."""
        if third_angle != self._third_angle:
            self._third_angle = third_angle
            self.update()

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
        placed = self._placed(QFontMetrics(label_font), QFontMetrics(value_font))
        for place, ((label, value), width) in enumerate(placed):
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
        self._paint_symbol(painter, theme, round(left))

    def _paint_symbol(self, painter: QPainter, theme: Theme, left: int) -> None:
        painter.setPen(QPen(QColor(theme.hairline), 1))
        painter.drawLine(left, 1, left, self.height())
        marks = projection_symbol((0.0, 0.0), SYMBOL, third_angle=self._third_angle)
        picture = Picture(marks, self._symbol_density(), self.devicePixelRatioF())
        painter.translate(left + self._symbol_room() // 2, (self.height() + 1) // 2)
        picture.paint(painter, theme)

    def _symbol_density(self) -> float:
        """Pixels to the mm at which the symbol, three times its size high, fits the strip."""
        return (self.height() - 8) / (3.0 * SYMBOL)

    def _symbol_room(self) -> int:
        return round(5.0 * SYMBOL * self._symbol_density()) + PAD

    def _placed(self, labels: QFontMetrics, values: QFontMetrics) -> list[tuple[Cell, float]]:
        """Cells and their widths.  The first takes what the others leave; where there is no room
        for all, the last ones are left out of sight (they stay in the description)."""
        if not self._cells:
            return []
        room = self.width() - self._symbol_room()
        digit = values.horizontalAdvance("0")
        least = 10 * digit + 2 * PAD
        found: list[tuple[Cell, float]] = []
        taken = 0.0
        for label, value in self._cells[1:]:
            steady = -(-len(value) // 4) * 4 * digit * 0.9  # grows in steps of four characters
            text = max(labels.horizontalAdvance(label), values.horizontalAdvance(value), steady)
            if taken + text + 2 * PAD > room - least:
                break
            taken += text + 2 * PAD
            found.append(((label, value), text + 2 * PAD))
        return [(self._cells[0], room - taken), *found]
