"""The drawing stage: the sheet with its title strip, and the sizes and parts beside it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.canvas.sheet_canvas import SheetCanvas
from app.document.desk import Desk
from app.look.paper_frame import PaperFrame
from app.look.word_button import WordButton
from app.panels.parts_page import PartsPage
from app.panels.stick_model import TypeValue
from app.panels.story_stick import StoryStick
from app.panels.title_strip import TitleStrip
from app.scene.preferences import Preferences

SIZES, PARTS = 0, 1


class DrawingPage(QSplitter):
    """Sizes or parts at the left, the sheet in the middle."""

    def __init__(
        self, desk: Desk, preferences: Preferences, type_value: TypeValue, parent: QWidget
    ) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.stick = StoryStick(type_value, self)
        self.parts = PartsPage(self)
        self.canvas = SheetCanvas(desk, preferences, type_value, self)
        self.title = TitleStrip(self)
        self._pages = QStackedWidget(self)
        self._tabs = QButtonGroup(self)
        self.addWidget(self._side())
        self.addWidget(self._sheet())
        self.setStretchFactor(0, 0)
        self.setStretchFactor(1, 1)
        self.setCollapsible(1, False)
        self.setHandleWidth(1)
        em = self.fontMetrics().horizontalAdvance("m")
        self.setSizes([max(250, 23 * em), 4000])

    def go_to(self, page: int) -> None:
        """Show the sizes or the parts."""
        self._pages.setCurrentIndex(page)
        self._tabs.button(page).setChecked(True)

    @property
    def page(self) -> int:
        return self._pages.currentIndex()

    def _side(self) -> QWidget:
        side = QWidget(self)
        tabs = QHBoxLayout()
        tabs.setContentsMargins(8, 2, 8, 0)
        tabs.setSpacing(0)
        for place, word in enumerate(("Sizes", "Parts")):
            button = WordButton(word, side)
            button.setCheckable(True)
            self._tabs.addButton(button, place)
            tabs.addWidget(button)
        tabs.addStretch(1)
        self._tabs.idClicked.connect(self.go_to)
        self._pages.addWidget(self.stick)
        self._pages.addWidget(self.parts)
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(tabs)
        column.addWidget(self._pages, 1)
        side.setMinimumWidth(200)
        self.go_to(SIZES)
        return side

    def _sheet(self) -> QWidget:
        sheet = PaperFrame(self)
        sheet.column.addWidget(self.canvas, 1)
        sheet.column.addWidget(self.title)
        return sheet
