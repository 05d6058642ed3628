"""One finding on one line: shape, word, sentence, 'mend' where there is one, 'show' and 'why'.

The words that every line has stand last, so that they stand under one another.  What 'why' and
'mend' ask for unfolds under the line; who made the line gives it.
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
        self._theme = theme
        self.detail: QWidget | None = None
        self._sentence = QLabel(self)
        self._sentence.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._sentence.setWordWrap(True)  # after the policy, which would forget it
        self._sentence.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._mark = LevelMark(finding.level, self)
        self._word = self._level_word()
        self._mend_button = self._button("mend", self._mend)
        self.show_button = self._button("show", self._show)
        self.why = self._button("why", self._why)
        self._mend_button.setCheckable(True)
        # A mend comes later than its finding, and nothing moves then.
        room = self._mend_button.sizePolicy()
        room.setRetainSizeWhenHidden(True)
        self._mend_button.setSizePolicy(room)
        self.why.setCheckable(True)
        self._put_together()
        self.tell(finding, preferences)

    @property
    def mend(self) -> WordButton | None:
        """The word that shows the mend; None where there is none to make."""
        made = self.finding.mend is not None and not self.finding.set_aside
        return self._mend_button if made else None

    def tell(self, finding: Finding, preferences: Preferences) -> None:
        """Say this of the same matter, in the same place."""
        self.finding = finding
        message = said(message_of(finding), preferences)
        self._sentence.setText(message)
        self._mark.show_level(finding.level)
        self._word.setText(level_words(finding))
        palette = QPalette(self._word.palette())
        tone = Tone.QUIET if finding.set_aside else TONES[finding.level]
        palette.setColor(QPalette.ColorRole.WindowText, self._theme.tone(tone))
        self._word.setPalette(palette)
        self.show_button.setAccessibleName(f"Show: {message}")
        self.why.setAccessibleName(f"Why: {message}")
        cure = said(finding.mend.sentence, preferences) if finding.mend is not None else ""
        self._mend_button.setAccessibleName(f"Mend: {cure}")
        self._mend_button.setToolTip(cure)
        self._mend_button.setVisible(self.mend is not None)

    def _put_together(self) -> None:
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._row = row = QHBoxLayout()
        row.setSpacing(8)
        # Beside a sentence of several lines the words stand at its first.
        high = self.why.sizeHint().height()
        top = Qt.AlignmentFlag.AlignTop
        for label in (self._mark, self._word):
            label.setFixedHeight(high)
            row.addWidget(label, 0, top)
        above = max(0, (high - self.fontMetrics().height()) // 2)
        self._sentence.setContentsMargins(0, above, 0, above)
        row.addWidget(self._sentence, 1, top)
        for button in (self._mend_button, self.show_button, self.why):
            row.addWidget(button, 0, top)
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
        self._row.invalidate()
        self._column.invalidate()
        wrapped = self._column.totalHeightForWidth(width)
        return wrapped if wrapped >= 0 else self._column.totalSizeHint().height()

    def mark_open(self, *, why: bool, mend: bool) -> None:
        """Which of the two words is on."""
        self.why.setChecked(why)
        if self.mend is not None:
            self.mend.setChecked(mend)

    def _level_word(self) -> QLabel:
        word = QLabel(self)
        word.setFont(bold(self.font()))
        texts = [SET_ASIDE, *(each.value for each in Level)]
        word.setMinimumWidth(max(map(word.fontMetrics().horizontalAdvance, texts)) + 4)
        return word

    def _button(self, text: str, slot: object) -> WordButton:
        button = WordButton(text, self)
        button.clicked.connect(slot)
        return button

    def _show(self) -> None:
        self.show_asked.emit(self)

    def _why(self) -> None:
        self.why_asked.emit(self)

    def _mend(self) -> None:
        self.mend_asked.emit(self)
