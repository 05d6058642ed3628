"""What the check square on printed templates measures: a printer's own, kept for all benches."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from app.look.flat_field import FlatField
from geometry.sheets.printer import TRUE, Edges, correction_of
from shared.errors import MakerError
from shared.units import SHOWN_MM, read_length

_EDGES = ("long edge", "short edge")
_HINT = (
    "Print the templates with 100 mm here, and measure their 100 mm square. If it is a little off, "
    "say what you measured along the edges of the paper, and print again."
)


class SquareFields(QWidget):
    """``measured`` carries both sizes, mm, once both can be used."""

    measured = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._square = TRUE
        self.fields = tuple(FlatField(self) for _ in _EDGES)
        self.note = QLabel(_HINT, self)
        self.note.setWordWrap(True)
        form = QGridLayout(self)
        form.setContentsMargins(0, 0, 0, 0)
        for place, (edge, field) in enumerate(zip(_EDGES, self.fields, strict=True)):
            label = QLabel(edge, self)
            label.setBuddy(field)
            field.setAccessibleName(f"Check square as printed along the paper's {edge}")
            field.setMaxLength(20)
            field.editingFinished.connect(self._typed)
            form.addWidget(label, 0, 2 * place)
            form.addWidget(field, 0, 2 * place + 1)
        form.addWidget(self.note, 1, 0, 1, 2 * len(_EDGES))
        self.show_square(TRUE)

    def show_square(self, square: Edges) -> None:
        self._square = square
        for field, size in zip(self.fields, square, strict=True):
            field.setText(f"{size:g} mm")
        self.note.setText(_HINT)

    def _typed(self) -> None:
        try:
            long, short = (read_length(field.text(), SHOWN_MM) for field in self.fields)
            correction_of((long, short))
        except MakerError as error:
            self.note.setText(f"✕ {error.what} {error.remedy}")
            return
        self.note.setText(_HINT)
        if (long, short) != self._square:
            self._square = (long, short)
            self.measured.emit(self._square)
