"""Findings: a quiet list at the foot, the gravest first, folded to one line when there are none."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.look.palettes import theme_of
from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from app.panels.finding_line import FindingLine
from app.scene.preferences import Preferences
from geometry.design.finding import Finding, Level

MOST_LINES = 4


class FindingsFoot(QFrame):
    """``show_asked`` and ``mend_asked`` carry the finding."""

    show_asked = Signal(object)
    mend_asked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._findings: tuple[Finding, ...] = ()
        self._preferences = Preferences()
        self.heading = QLabel(self)
        self.heading.setFont(bold(self.font()))
        self._area = QScrollArea(self)
        self._body = QWidget()
        self._area.setAccessibleName("Findings")
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        quiet_scrolling(self._area)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 4, 8, 4)
        row.setSpacing(20)
        row.addWidget(self.heading, 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self._area, 1)
        self._fill()

    def show_findings(self, findings: tuple[Finding, ...], preferences: Preferences) -> None:
        """List them; nothing is rebuilt when nothing changed."""
        ranked = tuple(sorted(findings, key=lambda each: _RANK[each.level]))
        if (ranked, preferences) != (self._findings, self._preferences):
            self._findings, self._preferences = ranked, preferences
            self._fill()

    def say(self, text: str) -> None:
        """A word on what was asked for, such as why a mend cannot be made."""
        self.heading.setText(text)

    def lines(self) -> list[FindingLine]:
        return self._body.findChildren(FindingLine)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._fill()

    def _fill(self) -> None:
        theme = theme_of(self.palette())
        self._body = body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for finding in self._findings:
            line = FindingLine(finding, self._preferences, theme, body)
            line.show_asked.connect(self.show_asked)
            line.mend_asked.connect(self.mend_asked)
            column.addWidget(line)
        column.addStretch(1)
        self._area.setWidget(body)
        line_height = max(28, self.fontMetrics().height() + 12)
        self.heading.setText(count_text(len(self._findings)))
        self.heading.setMinimumHeight(line_height)
        self._area.setVisible(bool(self._findings))
        wanted = min(body.sizeHint().height(), MOST_LINES * line_height)
        self._area.setFixedHeight(max(line_height, wanted))


_RANK = {level: place for place, level in enumerate(Level)}


def count_text(count: int) -> str:
    """``No findings``, ``1 finding``, ``3 findings``."""
    return "No findings" if not count else f"{count} finding{'s' if count > 1 else ''}"
