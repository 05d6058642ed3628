"""Carving: sizes, fronts and the picked point at the left, the view of the carving on the sheet."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.canvas.carving_canvas import CarvingCanvas
from app.look.beside_paper import BesidePaper
from app.look.flow import FlowLayout
from app.look.paper_frame import PaperFrame
from app.look.type import bold
from app.look.word_button import WordButton
from app.panels.point_fields import PointFields
from app.panels.stick_model import TypeValue
from app.panels.story_stick import StickList


class CarvingPage(BesidePaper):
    """What the pieces do is in the stage.  ``front_switched``: a front is to be carved or not."""

    front_switched = Signal(str)

    def __init__(
        self, canvas: CarvingCanvas, type_value: TypeValue, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.canvas = canvas
        self.stick = StickList(type_value, self)
        self.stick.setAccessibleName("Sizes of the carving")
        self.point = PointFields(self)
        self.advice = QLabel(self)
        self.advice.setWordWrap(True)
        self.advice.setContentsMargins(12, 4, 12, 2)
        self.raise_them = WordButton("Raise them", self)
        self.another = WordButton("Another seed", self)
        self.back = WordButton("Points back to the seed's", self)
        self._fronts = QWidget(self)
        title = QLabel("Fronts that are carved", self._fronts)
        title.setFont(bold(title.font()))
        self._row = FlowLayout(self._fronts)
        self._row.setContentsMargins(12, 4, 4, 2)
        self._row.addWidget(title)
        self._buttons: dict[str, WordButton] = {}
        frame = PaperFrame(self)
        frame.column.addWidget(canvas, 1)
        self.put(self._side(), frame, ems=28, least=300)

    def show_fronts(self, fronts: tuple[tuple[str, str, bool], ...]) -> None:
        """For each drawer its short name, its name in words, and whether its front is carved."""
        if [name for name, _, _ in fronts] != list(self._buttons):
            self._make_buttons([name for name, _, _ in fronts])
        for name, words, on in fronts:
            self._buttons[name].setChecked(on)
            self._buttons[name].setToolTip(words)
            self._buttons[name].setAccessibleName(f"{words}, {'carved' if on else 'plain'}")

    def front_button(self, name: str) -> WordButton:
        return self._buttons[name]

    def show_advice(self, text: str) -> None:
        self.advice.setText(text)
        self.advice.setVisible(bool(text))
        self.raise_them.setVisible(bool(text))

    def _make_buttons(self, names: list[str]) -> None:
        for button in self._buttons.values():
            self._row.removeWidget(button)
            button.deleteLater()
        self._buttons = {}
        for name in names:
            button = WordButton(name, self._fronts)
            button.setCheckable(True)
            button.clicked.connect(lambda _on, name=name: self.front_switched.emit(name))
            self._row.addWidget(button)
            button.show()
            self._buttons[name] = button

    def _side(self) -> QWidget:
        side = QWidget(self)
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 4, 0, 8)
        column.setSpacing(2)
        column.addWidget(self.stick, 1)
        for widget in (self._fronts, self.point, self.advice, self.raise_them):
            column.addWidget(widget)
        column.addWidget(self.another)
        column.addWidget(self.back)
        side.setMinimumWidth(220)
        return side
