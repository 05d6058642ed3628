"""A button that is only a word: flat, with a rule under it when it is on, and a visible focus."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from app.look.palettes import theme_of
from app.look.themes import Theme, Tone
from app.look.type import bold

PAD_X, PAD_Y = 10, 6
LEAST_HEIGHT = 28  # a target of at least 24 px (WCAG 2.2, 2.5.8)


class WordButton(QAbstractButton):
    """A word to press.  Checkable ones show a heavy rule under the word while they are on."""

    def __init__(self, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(text)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        # The weight of the word changes when it is on; its place must not.
        metrics = QFontMetrics(bold(self.font()) if self.isCheckable() else self.font())
        wide = metrics.horizontalAdvance(self.text())
        height = max(LEAST_HEIGHT, self.fontMetrics().height() + 2 * PAD_Y)
        return QSize(wide + 2 * PAD_X, height)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        painter = QPainter(self)
        try:
            self._paint(painter, theme)
        finally:
            painter.end()

    def _paint(self, painter: QPainter, theme: Theme) -> None:
        area = QRectF(self.rect())
        on = self.isCheckable() and self.isChecked()
        if self.isDown():
            painter.fillRect(area, QColor(theme.wash))
        painter.setFont(bold(self.font()) if on else self.font())
        painter.setPen(QColor(theme.tone(self._tone(on=on))))
        painter.drawText(area, Qt.AlignmentFlag.AlignCenter, self.text())
        if on:
            rule = QRectF(PAD_X, area.height() - 3, area.width() - 2 * PAD_X, 3)
            painter.fillRect(rule, QColor(theme.tone(Tone.HAND)))
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(QColor(theme.tone(Tone.HAND)), 1.5))
            painter.drawRoundedRect(area.adjusted(1.5, 1.5, -1.5, -1.5), 3, 3)

    def _tone(self, *, on: bool) -> Tone:
        if not self.isEnabled():
            return Tone.QUIET
        if self.isCheckable():
            return Tone.HAND if self.underMouse() and not on else Tone.INK
        return Tone.INK if self.underMouse() else Tone.HAND


class BoxButton(WordButton):
    """A word in a box, for the one thing that a page is there for."""

    def _paint(self, painter: QPainter, theme: Theme) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tone = theme.tone(Tone.HAND if self.isEnabled() else Tone.QUIET)
        painter.setPen(QPen(QColor(tone), 1))
        painter.setBrush(QColor(theme.paper))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)
        super()._paint(painter, theme)
