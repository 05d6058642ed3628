"""The table of limits: every limit with its unit, its default and its source, to be typed over."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialog, QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from app.panels.limit_field import LimitField
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.checks.limit_rows import KINS
from geometry.design.judging import Judging

_ABOUT = (
    "Findings go by these limits. What is changed here is kept with this project. They are advice: "
    "local codes, and the word of a licensed engineer, go before them."
)


class LimitsPage(QDialog):
    """``changed`` carries a limit's name and its new value, None for the default."""

    changed = Signal(str, object)

    def __init__(self, judging: Judging, preferences: Preferences, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Limits of findings")
        self.resize(820, 560)
        self._preferences = preferences
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 12, 16)
        about = QLabel(said(_ABOUT, preferences), self)
        about.setWordWrap(True)
        column.addWidget(about)
        self._area = QScrollArea(self)
        self._area.setFrameShape(QFrame.Shape.NoFrame)
        self._area.setWidgetResizable(True)
        quiet_scrolling(self._area)
        column.addWidget(self._area, 1)
        self.fields: dict[str, LimitField] = {}
        self.show_judging(judging)

    def show_judging(self, judging: Judging) -> None:
        """The values of now, at the same place of the table."""
        at = self._area.verticalScrollBar().value()
        body = QWidget()
        rows = QVBoxLayout(body)
        rows.setContentsMargins(0, 8, 8, 8)
        rows.setSpacing(8)
        own = dict(judging.limits)
        self.fields = {}
        for heading, kin in KINS:
            title = QLabel(said(heading, self._preferences), body)
            title.setFont(bold(title.font()))
            title.setContentsMargins(0, 10, 0, 0)
            rows.addWidget(title)
            for row in kin:
                field = LimitField(row, own.get(row.name, row.default), self._preferences, body)
                field.changed.connect(self.changed)
                self.fields[row.name] = field
                rows.addWidget(field)
        rows.addStretch(1)
        self._area.setWidget(body)
        self._area.verticalScrollBar().setValue(at)
