"""Brief: what the bench is for at the left, what follows from it at the right."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from app.panels.advice_line import AdviceLine
from app.panels.brief_fields import BriefFields
from app.scene.advice_words import AdviceWords

NOTHING = (
    "Nothing yet. Say who sits, what for, or where the bench will stand, and what follows for its "
    "sizes is listed here, each with its reason. It is advice: take it with one press, or leave it."
)


class BriefPage(QWidget):
    """``taken`` carries the name of the advice that the maker takes."""

    taken = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fields = BriefFields(self)
        self._words: tuple[AdviceWords, ...] = ()
        self._list = QWidget(self)
        self._heading = QLabel("What follows", self)
        self._heading.setFont(bold(self.font()))
        self._said = QLabel(self)
        self._said.setWordWrap(True)
        self._said.hide()
        row = QHBoxLayout(self)
        row.setContentsMargins(24, 0, 0, 0)
        row.setSpacing(24)
        row.addWidget(self._column(self.fields, "Brief"), 2)
        self._area = self._column(self._right(), "What follows from the brief")
        row.addWidget(self._area, 3)

    def lines(self) -> list[AdviceLine]:
        return self._list.findChildren(AdviceLine)

    def show_advice(self, words: tuple[AdviceWords, ...]) -> None:
        """List it; nothing is rebuilt when nothing changed, and the keyboard stays where it was."""
        self._said.hide()
        if words != self._words:
            self._words = words
            self._fill()

    def say(self, text: str) -> None:
        """Why what was asked for cannot be done."""
        self._said.setText(text)
        self._said.show()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._fill()

    def _right(self) -> QWidget:
        side = QWidget(self)
        self._right_column = column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 16, 16)
        column.addWidget(self._heading)
        column.addWidget(self._said)
        column.addWidget(self._list)
        column.addStretch(1)
        self._fill()
        return side

    def _fill(self) -> None:
        if not hasattr(self, "_right_column"):
            return
        held = next((one.words.name for one in self.lines() if one.isAncestorOf(self._at())), "")
        fresh = QWidget(self)
        column = QVBoxLayout(fresh)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        if not self._words:
            nothing = QLabel(NOTHING, fresh)
            nothing.setWordWrap(True)
            column.addWidget(nothing)
        for words in self._words:
            line = AdviceLine(words, fresh)
            line.taken.connect(self.taken)
            column.addWidget(line)
        self._right_column.replaceWidget(self._list, fresh)
        self._list.hide()
        self._list.deleteLater()
        self._list = fresh
        fresh.show()
        if held:
            self._give_keyboard(held)

    def _at(self) -> QWidget:
        return self.focusWidget() or self

    def _give_keyboard(self, name: str) -> None:
        """To the button of the same advice, else to another one, else to the first field."""
        buttons = [(one.words.name == name, one.button) for one in self.lines() if one.button]
        buttons.sort(key=lambda pair: not pair[0])
        target = buttons[0][1] if buttons else next(iter(self.fields.fields.values()))
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def _column(self, inner: QWidget, name: str) -> QScrollArea:
        area = QScrollArea(self)
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        quiet_scrolling(area)
        area.setAccessibleName(name)
        body = QWidget(area)
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 14, 8, 16)
        column.addWidget(inner)
        column.addStretch(1)
        area.setWidget(body)
        return area
