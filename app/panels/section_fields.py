"""The place and the turn of a section's plane, typed, and whether it is kept with the bench."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from app.look.value_field import ValueField
from app.look.word_button import WordButton
from shared.errors import MakerError

NAMES = ("Place", "Turned")
KEEP = "In the papers"
KEEP_TIP = "Keep this section with the bench, and print it among the drawings"
_WIDEST = "−8888 ⁸⁸⁄₈₈ in"


class SectionFields(QWidget):
    """``given`` carries the place of a field in ``NAMES`` and its text; ``given_up`` is Escape;
    ``kept`` whether the maker wants the section kept and printed."""

    given = Signal(int, str)
    given_up = Signal()
    kept = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fields = tuple(ValueField(self) for _ in NAMES)
        self._shown, self._told = ("", ""), ""
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 2, 8, 0)
        row.setSpacing(4)
        for place, (name, field) in enumerate(zip(NAMES, self.fields, strict=True)):
            label = QLabel(name, self)
            label.setBuddy(field)
            row.addWidget(label)
            row.addWidget(field)
            field.setAccessibleName(f"{name}, the plane of the section")
            field.setFixedWidth(field.fontMetrics().horizontalAdvance(_WIDEST) // (1 + place))
            field.given.connect(lambda text, place=place: self.given.emit(place, text))
            field.given_up.connect(self._give_up)
        self.keep = WordButton(KEEP, self)
        self.keep.setCheckable(True)
        self.keep.setToolTip(KEEP_TIP)
        self.keep.clicked.connect(self.kept)
        row.addWidget(self.keep)

    def show_kept(self, *, kept: bool) -> None:
        """Whether the section that is shown is the one in the file."""
        self.keep.setChecked(kept)

    def show_numbers(self, texts: tuple[str, str], told: str) -> None:
        """What the plane is now, and its place in words."""
        self._shown, self._told = texts, told
        self.fields[0].setToolTip(told)
        self.fields[1].setToolTip("Degrees from square; with a minus the other way")
        for field, text in zip(self.fields, texts, strict=True):
            if not (field.hasFocus() and field.isModified()):
                field.setText(text)
                field.show_wrong("")

    def refuse(self, place: int, error: MakerError) -> None:
        """Keep a wrong text, and say what would be right."""
        why = f"{error.what} {error.remedy}"
        self.fields[place].show_wrong(why)
        self.fields[place].setToolTip(f"✕ {why}")

    def _give_up(self) -> None:
        for field in self.fields:
            field.setModified(False)
        self.show_numbers(self._shown, self._told)
        self.given_up.emit()
