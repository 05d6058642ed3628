"""Notices: one quiet line between the job strip and the sheet, with things to press.

Never a box that stops the work.  A new notice takes the place of the old one, but what must not
be lost (an offer of unsaved work) waits its turn, and takes no refusal away unread.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from app.look.flow import FlowLayout
from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.word_button import WordButton


@dataclass(frozen=True, slots=True)
class Notice:
    """A sentence, what can be done about it (word and deed), and whether it waits to be seen."""

    text: str
    deeds: tuple[tuple[str, Callable[[], object]], ...] = ()
    tone: Tone = Tone.GOOD_TO_KNOW
    waits: bool = False
    kind: str = field(default="")


class NoticeStrip(QWidget):
    """Shows one notice at a time, and nothing at all when there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._waiting: list[Notice] = []
        self.notice: Notice | None = None
        self._text = QLabel(self)
        self._text.setWordWrap(True)
        self._text.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        self._row = FlowLayout(self)
        self._row.setContentsMargins(16, 2, 8, 2)
        self._row.addWidget(self._text)
        self._buttons: list[WordButton] = []
        self.hide()

    @property
    def text(self) -> str:
        return self._text.text()

    def buttons(self) -> dict[str, WordButton]:
        """What can be pressed now, by its word."""
        return {button.text(): button for button in self._buttons}

    def tell(self, notice: Notice) -> None:
        """Show a notice now; one that waits comes back after it, and takes its turn."""
        shown = self.notice
        if shown is not None and notice.waits and (shown.waits or shown.tone is Tone.DO_NOT_CUT):
            self._waiting.append(notice)
            return
        if shown is not None and shown.waits:
            self._waiting.insert(0, shown)
        self._show(notice)

    def dismiss(self) -> None:
        """Put the notice away and show the next that waits."""
        if self._waiting:
            self._show(self._waiting.pop(0))
        else:
            self.notice = None
            self._clear_buttons()
            self._text.clear()
            self.hide()

    def withdraw(self, kind: str) -> None:
        """Put a notice of this kind away when it no longer holds."""
        self._waiting = [each for each in self._waiting if each.kind != kind]
        if self.notice is not None and self.notice.kind == kind:
            self.dismiss()

    def _show(self, notice: Notice) -> None:
        self.notice = notice
        self._clear_buttons()
        self._text.setText(notice.text)
        for word, deed in notice.deeds:
            self._add_button(word, deed)
        self._add_button("Put away", self.dismiss)
        self.show()
        self.update()
        announcement = QAccessibleAnnouncementEvent(self, notice.text)
        QAccessible.updateAccessibility(announcement)

    def _add_button(self, word: str, deed: Callable[[], object]) -> None:
        button = WordButton(word, self)
        button.clicked.connect(deed)
        self._row.addWidget(button)
        button.show()
        self._buttons.append(button)

    def _clear_buttons(self) -> None:
        for button in self._buttons:
            self._row.removeWidget(button)
            button.hide()
            button.deleteLater()
        self._buttons.clear()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: ARG002
        theme = theme_of(self.palette())
        tone = self.notice.tone if self.notice else Tone.QUIET
        painter = QPainter(self)
        try:
            painter.fillRect(self.rect(), QColor(theme.wash))
            painter.fillRect(0, 0, 4, self.height(), QColor(theme.tone(tone)))
        finally:
            painter.end()
