"""One finding on one line: shape, word, sentence, 'show', and 'mend' where there is one."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from app.look.level_mark import TONES, LevelMark
from app.look.themes import Theme
from app.look.type import bold
from app.look.word_button import WordButton
from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.design.finding import Finding, Level


class FindingLine(QWidget):
    """``show_asked`` and ``mend_asked`` carry the finding."""

    show_asked = Signal(object)
    mend_asked = Signal(object)

    def __init__(
        self, finding: Finding, preferences: Preferences, theme: Theme, parent: QWidget | None
    ) -> None:
        super().__init__(parent)
        self.finding = finding
        message = said(finding.message, preferences)
        sentence = QLabel(message, self)
        sentence.setWordWrap(True)
        sentence.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        sentence.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(LevelMark(finding.level, self))
        row.addWidget(self._word(finding.level, theme))
        row.addWidget(sentence, 1)
        row.addWidget(self._button("show", f"Show: {message}", self._show))
        if finding.mend is not None:
            cure = said(finding.mend.sentence, preferences)
            self.mend = self._button("mend", f"Mend: {cure}", self._mend)
            self.mend.setToolTip(cure)
            row.addWidget(self.mend)

    def _word(self, level: Level, theme: Theme) -> QLabel:
        word = QLabel(level.value, self)
        word.setFont(bold(self.font()))
        palette = QPalette(word.palette())
        palette.setColor(QPalette.ColorRole.WindowText, theme.tone(TONES[level]))
        word.setPalette(palette)
        widest = max(word.fontMetrics().horizontalAdvance(each.value) for each in Level)
        word.setMinimumWidth(widest + 4)
        return word

    def _button(self, text: str, name: str, slot: object) -> WordButton:
        button = WordButton(text, self)
        button.setAccessibleName(name)
        button.clicked.connect(slot)
        return button

    def _show(self) -> None:
        self.show_asked.emit(self.finding)

    def _mend(self) -> None:
        self.mend_asked.emit(self.finding)
