"""What unfolds under a finding: why it matters and by which limit, or what its mend changes."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from app.look.flat_field import FlatField
from app.look.word_button import WordButton
from app.panels.limit_field import LimitField
from app.scene.finding_words import measure_text, mend_text
from app.scene.preferences import Preferences
from app.scene.wording import said, said_error
from geometry.checks.check import Check
from geometry.checks.setting_aside import aside
from geometry.design.finding import Finding
from geometry.design.judging import REASON_LIMIT
from geometry.design.spec import BenchSpec
from shared.errors import MakerError

_INDENT = 24


class WhyDetail(QWidget):
    """The check's paragraph, its limits to change, and the way to set the finding aside.

    ``limit_changed`` carries a name and a value, ``set_aside`` a SetAside, ``taken_up`` the
    finding.
    """

    limit_changed = Signal(str, object)
    set_aside = Signal(object)
    taken_up = Signal(object)

    def __init__(
        self,
        finding: Finding,
        check: Check,
        values: Sequence[float],
        preferences: Preferences,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.finding, self._preferences = finding, preferences
        column = _column(self)
        column.addWidget(_sentence(said(check.about, preferences), self))
        measure = measure_text(finding, preferences)
        if measure:
            column.addWidget(_sentence(said(f"Here: {measure}.", preferences), self))
        if finding.worse:
            column.addWidget(_sentence(said(finding.worse, preferences), self))
        self.limits = [
            LimitField(row, value, preferences, self)
            for row, value in zip(check.limits, values, strict=True)
        ]
        for field in self.limits:
            field.changed.connect(self.limit_changed)
            column.addWidget(field)
        column.addLayout(self._aside_row())

    def _aside_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(8)
        self.reason: FlatField | None = None
        if self.finding.set_aside:
            row.addWidget(_sentence(f"Set aside because: {self.finding.set_aside}", self), 1)
            self.take_up = WordButton("take up again", self)
            self.take_up.clicked.connect(self._take_up)
            row.addWidget(self.take_up)
            return row
        self.reason = FlatField(self)
        self.reason.setPlaceholderText("Why it does not matter here; printed with the drawings")
        self.reason.setAccessibleName("Reason for setting the finding aside")
        self.reason.setMaxLength(REASON_LIMIT)
        self.reason.returnPressed.connect(self._set_aside)
        self.wrong = QLabel(self)
        self.aside = WordButton("set aside", self)
        self.aside.clicked.connect(self._set_aside)
        row.addWidget(self.reason, 1)
        row.addWidget(self.wrong)
        row.addWidget(self.aside)
        return row

    def keep_reason(self, other: WhyDetail) -> None:
        """What has been typed in another one that this takes the place of."""
        if self.reason is not None and other.reason is not None:
            self.reason.setText(other.reason.text())

    def _set_aside(self) -> None:
        assert self.reason is not None
        try:
            one = aside(self.finding, self.reason.text().strip())
        except MakerError as error:
            self.wrong.setText(said_error(error, self._preferences, here="Reason"))
            self.reason.setFocus()
            return
        self.set_aside.emit(one)

    def _take_up(self) -> None:
        self.taken_up.emit(self.finding)


class MendDetail(QWidget):
    """What a mend would change, while the sheet shows it.  ``made`` carries the finding."""

    made = Signal(object)
    left = Signal()

    def __init__(
        self,
        finding: Finding,
        spec: BenchSpec,
        preferences: Preferences,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        assert finding.mend is not None
        self.finding = finding
        column = _column(self)
        text = mend_text(spec, finding.mend, preferences)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(_sentence(text, self), 1)
        self.make = WordButton("make it so", self)
        self.make.clicked.connect(self._make)
        self.leave = WordButton("leave it", self)
        self.leave.clicked.connect(self.left)
        row.addWidget(self.make)
        row.addWidget(self.leave)
        column.addLayout(row)

    def _make(self) -> None:
        self.made.emit(self.finding)


def _column(widget: QWidget) -> QVBoxLayout:
    column = QVBoxLayout(widget)
    column.setContentsMargins(_INDENT, 2, 0, 8)
    column.setSpacing(4)
    return column


def _sentence(text: str, parent: QWidget) -> QLabel:
    label = QLabel(text, parent)
    label.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
    label.setWordWrap(True)  # after the policy, which would forget it
    return label
