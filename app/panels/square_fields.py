"""What the check square on printed templates measures: a printer's own, kept for all benches.

Templates carry a square of 100 mm and one of 4 in; a maker in inches is asked about the latter.
Both say the same about the printer, which is kept as what it makes of 100 mm.
"""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from app.look.flat_field import FlatField
from geometry.sheets.printer import TRUE, Edges, correction_of
from shared.errors import MakerError
from shared.units import MM_PER_INCH, SHOWN_MM, Shown, read_length

_EDGES = ("long edge", "short edge")
_INCHES = 4.0  # the side of the other square


def _hint(square_text: str) -> str:
    return (
        f"Print the templates with {square_text} here, and measure their {square_text} square. If "
        "it is a little off, say what you measured along the edges of the paper, and print again."
    )


class SquareFields(QWidget):
    """``measured`` carries both sizes, mm, once both can be used."""

    measured = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._square, self._shown = TRUE, SHOWN_MM
        self.fields = tuple(FlatField(self) for _ in _EDGES)
        self.note = QLabel(self)
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
        self.show_square(TRUE, SHOWN_MM)

    def show_square(self, square: Edges, shown: Shown) -> None:
        """``square`` is what the printer makes of 100 mm, whatever unit it is shown in."""
        self._square, self._shown = square, shown
        for field, size in zip(self.fields, square, strict=True):
            field.setText(self._text(size))
        self.note.setText(_hint(self._text(TRUE[0])))

    def _text(self, size: float) -> str:
        if self._shown.unit == "mm":
            return f"{size:g} mm"
        return f"{size / TRUE[0] * _INCHES:.5g} in"

    def _size(self, typed: str) -> float:
        """What 100 mm measure; a maker in inches who types millimetres has measured those."""
        size = read_length(typed, self._shown)
        if self._shown.unit == "mm" or typed.strip().endswith("m"):
            return size
        return size / (_INCHES * MM_PER_INCH) * TRUE[0]

    def _typed(self) -> None:
        try:
            long, short = (
                old if field.text() == self._text(old) else self._size(field.text())
                for field, old in zip(self.fields, self._square, strict=True)
            )
            correction_of((long, short))
        except MakerError as error:
            self.note.setText(f"✕ {error.what} {error.remedy}")
            return
        self.note.setText(_hint(self._text(TRUE[0])))
        if (long, short) != self._square:
            self._square = (long, short)
            self.measured.emit(self._square)
