"""A field for a size: a wrong text stays, with a sentence that says what would be right."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QPalette
from PySide6.QtWidgets import QLineEdit, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.type import with_tabular_figures


class ValueField(QLineEdit):
    """``given`` carries the text at Enter; ``given_up`` is Escape.

    The owner answers a wrong text with ``show_wrong``; typing clears the mark again.
    """

    given = Signal(str)
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFont(with_tabular_figures(self.font()))
        self.setFrame(False)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.wrong = ""
        self.textEdited.connect(self._clear_wrong)

    def show_wrong(self, message: str) -> None:
        """Mark the text as wrong and say why; an empty message clears the mark."""
        self.wrong = message
        self.setAccessibleDescription(message)
        theme = theme_of(self.palette())
        palette = QPalette(self.palette())
        tone = Tone.DO_NOT_CUT if message else Tone.INK
        palette.setColor(QPalette.ColorRole.Text, theme.tone(tone))
        self.setPalette(palette)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.given.emit(self.text())
            event.accept()
        elif event.key() == Qt.Key.Key_Escape:
            self.given_up.emit()
            event.accept()
        else:
            super().keyPressEvent(event)

    def _clear_wrong(self) -> None:
        if self.wrong:
            self.show_wrong("")
