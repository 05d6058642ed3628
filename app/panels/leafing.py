"""The papers as they will print, one page at a time, with the words to turn them by."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from app.canvas.paper_preview import PaperPreview
from app.look.word_button import WordButton
from geometry.drawing.marks import Sheet


class Leafing(QWidget):
    """``turned`` carries how many pages on, negative for back."""

    turned = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.preview = PaperPreview(self)
        self.back = WordButton("Page before", self)
        self.on = WordButton("Next page", self)
        self.words = QLabel(self)
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        # A long title is cut short rather than pushing the page aside.
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.back.clicked.connect(lambda: self.turned.emit(-1))
        self.on.clicked.connect(lambda: self.turned.emit(1))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        row = QHBoxLayout()
        row.addWidget(self.back)
        row.addWidget(self.words, 1)
        row.addWidget(self.on)
        column.addLayout(row)
        column.addWidget(self.preview, 1)

    def show_page(self, sheet: Sheet, number: int, count: int | None) -> None:
        """``count`` is None while only the first page is known."""
        self.preview.show_sheet(sheet)
        of = f" of {count}" if count else ""
        self.words.setText(f"{number}{of}: {sheet.title}")
        self.words.setToolTip(self.words.text())
        self.preview.setAccessibleName(f"Page {number}{of} as it will print: {sheet.title}")
        self.back.setEnabled(number > 1)
        self.on.setEnabled(number != count)

    def drawing(self) -> None:
        """The other pages are being drawn."""
        self.words.setText("Drawing the pages …")
        self.back.setEnabled(False)
        self.on.setEnabled(False)
