"""Joints: those of the bench at the left with the sizes that the picked one follows from, and its
detail on the sheet."""

from __future__ import annotations

from PySide6.QtCore import QItemSelectionModel, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.canvas.joint_sheet import JointSheet
from app.look.beside_paper import BesidePaper
from app.look.paper_frame import PaperFrame
from app.look.type import bold
from app.look.word_button import WordButton
from app.panels.parts_page import PartsList
from app.panels.stick_model import TypeValue
from app.panels.story_stick import StickList
from app.scene.joint_rows import JointRow
from app.scene.stick_rows import StickRow

NO_SIZES = "No size of the bench bears on this joint."


class JointsPage(BesidePaper):
    """The list of joints, the sizes and the sheet; what they do is in the stage.

    ``went_back``: to where a joint was clicked, by the word over the list, by Escape or by the
    mouse's button for it.
    """

    went_back = Signal()

    def __init__(self, type_value: TypeValue, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.list = PartsList(self)
        self.list.setAccessibleName("Joints of the bench")
        self.stick = StickList(type_value, self)
        self.stick.setAccessibleName("Sizes that this joint follows from")
        self.sheet = JointSheet(self)
        self.back = WordButton("", self)
        self.back.setAccessibleName("Back to the sheet")
        self.back.clicked.connect(self.went_back)
        self.note = QLabel(NO_SIZES, self)
        self.note.setWordWrap(True)
        self.note.setContentsMargins(12, 6, 12, 8)
        frame = PaperFrame(self)
        frame.column.addWidget(self.sheet, 1)
        self.put(self._side(), frame, ems=26, least=280)

    def show_way_back(self, words: str) -> None:
        """Where the maker has come from with a click; empty when they have come otherwise."""
        self.back.setText(words)
        self.back.setVisible(bool(words))
        self.back.updateGeometry()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self.back.text():
            self.went_back.emit()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.BackButton and self.back.text():
            self.went_back.emit()
        else:
            super().mousePressEvent(event)

    def show_rows(self, rows: tuple[JointRow, ...]) -> None:
        self.list.parts.show_rows(rows)

    def show_sizes(self, rows: tuple[StickRow, ...]) -> None:
        self.stick.stick.show_rows(rows)
        self.note.setVisible(not rows)

    def pick(self, place: int) -> None:
        """Make a row the current one."""
        index = self.list.parts.index(place)
        flag = QItemSelectionModel.SelectionFlag.ClearAndSelect
        self.list.selectionModel().setCurrentIndex(index, flag)
        self.list.scrollTo(index)

    def _side(self) -> QWidget:
        side = QWidget(self)
        title = QLabel("Sizes that it follows from", side)
        title.setFont(bold(title.font()))
        title.setContentsMargins(12, 8, 12, 2)
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 4, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.list, 3)
        column.addWidget(title)
        column.addWidget(self.stick, 2)
        column.addWidget(self.note)
        side.setMinimumWidth(200)
        self.show_way_back("")
        return side
