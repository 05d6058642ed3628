"""The numbers of one point of the carving, typed: across, up and deep."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from app.look.palettes import theme_of
from app.look.themes import Tone
from app.look.type import bold
from app.look.value_field import ValueField

NAMES = ("Across", "Up", "Deep")
NONE_PICKED = "No point is picked"


class PointFields(QWidget):
    """``given`` carries the place of a field in ``NAMES`` and its text; ``given_up`` is Escape."""

    given = Signal(int, str)
    given_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = QLabel(NONE_PICKED, self)
        self.title.setFont(bold(self.title.font()))
        self.fields = tuple(ValueField(self) for _ in NAMES)
        self.reason = QLabel(self)
        self.reason.setWordWrap(True)
        self.reason.hide()
        grid = QGridLayout(self)
        grid.setContentsMargins(12, 2, 12, 2)
        grid.setSpacing(4)
        grid.addWidget(self.title, 0, 0, 1, 3)
        for place, (name, field) in enumerate(zip(NAMES, self.fields, strict=True)):
            label = QLabel(name, self)
            label.setBuddy(field)
            grid.addWidget(label, 1, place)
            grid.addWidget(field, 2, place)
            field.given.connect(lambda text, place=place: self.given.emit(place, text))
            field.given_up.connect(self.given_up)
            field.textEdited.connect(self.reason.hide)
        grid.addWidget(self.reason, 3, 0, 1, 3)

    def show_point(self, number: int, texts: tuple[str, ...], held: tuple[bool, ...]) -> None:
        """The point's numbers; those that it cannot change are only to be read."""
        self.title.setText(f"Point {number}" if number else NONE_PICKED)
        for name, field, text, fast in zip(NAMES, self.fields, texts, held, strict=True):
            if field.hasFocus() and field.isModified():
                continue
            field.setText(text)
            field.setReadOnly(fast)
            field.setEnabled(bool(number))
            field.setAccessibleName(f"{name}, point {number}{', held' if fast else ''}")
            if field.wrong:
                field.show_wrong("")

    def refuse(self, place: int, why: str) -> None:
        """Keep a wrong text, and say what would be right; with place -1 only say it."""
        if place >= 0:
            self.fields[place].show_wrong(why)
        palette = QPalette(self.reason.palette())
        tone = theme_of(self.palette()).tone(Tone.DO_NOT_CUT)
        palette.setColor(QPalette.ColorRole.WindowText, QColor(tone))
        self.reason.setPalette(palette)
        self.reason.setText(f"✕ {why}")
        self.reason.show()

    def begin(self) -> None:
        """The keyboard goes to the first field that can be changed."""
        field = next((one for one in self.fields if not one.isReadOnly()), self.fields[-1])
        field.setFocus(Qt.FocusReason.OtherFocusReason)
        field.selectAll()

    def accepted(self) -> None:
        """All texts are as the bench has them."""
        self.reason.hide()
        for field in self.fields:
            field.setModified(False)
