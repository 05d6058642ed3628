"""One piece of advice: what it is about, now and advised, why, and a word to take it with."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.type import bold, with_tabular_figures
from app.look.word_button import WordButton
from app.scene.advice_words import AdviceWords


class AdviceLine(QWidget):
    """``taken`` carries the advice's name."""

    taken = Signal(str)

    def __init__(self, words: AdviceWords, parent: QWidget) -> None:
        super().__init__(parent)
        self.words = words
        self.button: WordButton | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 6)
        column.setSpacing(1)
        head = QHBoxLayout()
        head.setSpacing(10)
        title = QLabel(words.title, self)
        title.setFont(bold(self.font()))
        head.addWidget(title)
        if words.size:
            size = QLabel(words.size, self)
            size.setFont(with_tabular_figures(self.font()))
            head.addWidget(size)
            tone = Tone.GOOD_TO_KNOW if words.met else Tone.THINK_AGAIN
            if "now" in words.size and "advised" in words.size:
                head.addWidget(self._toned(words.standing, tone))
        head.addStretch(1)
        if words.take:
            self.button = WordButton(words.take, self)
            self.button.setAccessibleName(f"{words.title}: {words.take}")
            self.button.setAccessibleDescription(words.reason)
            self.button.clicked.connect(self._take)
            head.addWidget(self.button)
        column.addLayout(head)
        column.addWidget(self._wrapped(QLabel(words.reason, self)))
        if words.hindrance:
            column.addWidget(self._wrapped(self._toned(words.hindrance, Tone.THINK_AGAIN)))
        column.addWidget(self._wrapped(self._toned(words.source, Tone.QUIET)))

    def _take(self) -> None:
        self.taken.emit(self.words.name)

    def _toned(self, text: str, tone: Tone) -> QLabel:
        label = QLabel(text, self)
        palette = QPalette(label.palette())
        colour = QColor(theme_of(self.palette()).tone(tone))
        palette.setColor(QPalette.ColorRole.WindowText, colour)
        label.setPalette(palette)
        return label

    def _wrapped(self, label: QLabel) -> QLabel:
        label.setWordWrap(True)
        label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        return label
