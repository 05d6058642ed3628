"""One finding on one line: shape, word, sentence, 'show', 'why', and 'mend' where there is one.

What 'why' and 'mend' ask for unfolds under the line; who made the line gives it.
"""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from app.look.level_mark import TONES, LevelMark
from app.look.themes import Theme, Tone
from app.look.type import bold
from app.look.word_button import WordButton
from app.scene.finding_words import SET_ASIDE, level_words, message_of
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.design.finding import Finding, Level


class FindingLine(QWidget):
    """``show_asked``, ``why_asked`` and ``mend_asked`` carry the line."""

    show_asked = Signal(object)
    why_asked = Signal(object)
    mend_asked = Signal(object)

    def __init__(
        self, finding: Finding, preferences: Preferences, theme: Theme, parent: QWidget | None
    ) -> None:
        super().__init__(parent)
        self.finding = finding
        self.detail: QWidget | None = None
        message = said(message_of(finding), preferences)
        sentence = QLabel(message, self)
        sentence.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        sentence.setWordWrap(True)  # after the policy, which would forget it
        sentence.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(LevelMark(finding.level, self))
        row.addWidget(self._word(finding, theme))
        row.addWidget(sentence, 1)
        self.show_button = self._button("show", f"Show: {message}", self._show)
        self.why = self._button("why", f"Why: {message}", self._why)
        self.why.setCheckable(True)
        row.addWidget(self.show_button)
        row.addWidget(self.why)
        self.mend: WordButton | None = None
        if finding.mend is not None and not finding.set_aside:
            cure = said(finding.mend.sentence, preferences)
            self.mend = self._button("mend", f"Mend: {cure}", self._mend)
            self.mend.setCheckable(True)
            self.mend.setToolTip(cure)
            row.addWidget(self.mend)
        self._column.addLayout(row)

    def unfold(self, detail: QWidget) -> None:
        """Show this under the line, in place of what was there."""
        self.fold()
        self.detail = detail
        self._column.addWidget(detail)
        detail.show()

    def fold(self) -> None:
        """Show the line alone."""
        if self.detail is not None:
            self._column.removeWidget(self.detail)
            self.detail.hide()
            self.detail.deleteLater()
            self.detail = None

    def height_at(self, width: int) -> int:
        """How high it is at this width, with what has unfolded."""
        self._column.invalidate()
        wrapped = self._column.totalHeightForWidth(width)
        return wrapped if wrapped >= 0 else self._column.totalSizeHint().height()

    def mark_open(self, *, why: bool, mend: bool) -> None:
        """Which of the two words is on."""
        self.why.setChecked(why)
        if self.mend is not None:
            self.mend.setChecked(mend)

    def _word(self, finding: Finding, theme: Theme) -> QLabel:
        word = QLabel(level_words(finding), self)
        word.setFont(bold(self.font()))
        palette = QPalette(word.palette())
        tone = Tone.QUIET if finding.set_aside else TONES[finding.level]
        palette.setColor(QPalette.ColorRole.WindowText, theme.tone(tone))
        word.setPalette(palette)
        texts = [SET_ASIDE, *(each.value for each in Level)]
        word.setMinimumWidth(max(map(word.fontMetrics().horizontalAdvance, texts)) + 4)
        return word

    def _button(self, text: str, name: str, slot: object) -> WordButton:
        button = WordButton(text, self)
        button.setAccessibleName(name)
        button.clicked.connect(slot)
        return button

    def _show(self) -> None:
        self.show_asked.emit(self)

    def _why(self) -> None:
        self.why_asked.emit(self)

    def _mend(self) -> None:
        self.mend_asked.emit(self)
