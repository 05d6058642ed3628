"""One limit: its name, its value to type over, where it comes from, and the way back."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from app.look.value_field import ValueField
from app.look.word_button import WordButton
from app.scene.finding_words import amount_text, source_text
from app.scene.limit_value import read_limit
from app.scene.preferences import Preferences
from app.scene.wording import said, said_error
from geometry.checks.limit import Limit
from shared.errors import MakerError

_FIELD_CHARACTERS = 11


class LimitField(QWidget):
    """``changed`` carries the limit's name and its new value, None for the default."""

    changed = Signal(str, object)

    def __init__(
        self, row: Limit, value: float, preferences: Preferences, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.row, self._value, self._preferences = row, value, preferences
        title = said(row.title, preferences)
        self.field = ValueField(self)
        self.field.setAccessibleName(title)
        wide = self.field.fontMetrics().horizontalAdvance("0") * _FIELD_CHARACTERS
        self.field.setFixedWidth(wide)
        self.field.setText(amount_text(value, row.unit, preferences))
        self.field.given.connect(self._given)
        self.field.given_up.connect(self._give_up)
        self.field.editingFinished.connect(self._left)
        self._source = QLabel(source_text(row, preferences), self)
        self._source.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._source.setWordWrap(True)  # after the policy, which would forget it
        name = QLabel(title, self)
        name.setWordWrap(True)
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(10)
        line.addWidget(name, 2, Qt.AlignmentFlag.AlignVCenter)
        line.addWidget(self.field)
        line.addWidget(self._source, 3)
        self.back = WordButton("default", self)
        self.back.setAccessibleName(f"Default: {title}")
        keeping = self.back.sizePolicy()
        keeping.setRetainSizeWhenHidden(True)  # or one row's columns stand beside the others'
        self.back.setSizePolicy(keeping)
        self.back.setVisible(value != row.default)
        self.back.clicked.connect(self._default)
        line.addWidget(self.back)

    def _given(self, text: str) -> None:
        if text == amount_text(self._value, self.row.unit, self._preferences):
            return
        try:
            value = read_limit(self.row, text, self._preferences.shown)
        except MakerError as error:
            wrong = said_error(error, self._preferences, here=self.row.title)
            self.field.show_wrong(wrong)
            self._source.setText(wrong)
            return
        self.changed.emit(self.row.name, None if value == self.row.default else value)

    def _left(self) -> None:
        if not self.field.wrong:
            self._given(self.field.text())

    def _give_up(self) -> None:
        self.field.show_wrong("")
        self.field.setText(amount_text(self._value, self.row.unit, self._preferences))
        self._source.setText(source_text(self.row, self._preferences))

    def _default(self) -> None:
        self.changed.emit(self.row.name, None)
