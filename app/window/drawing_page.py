"""The drawing stage: the sheet with its title strip, and the sizes and parts beside it.

The sheet shows the elevations; the words over it turn it to a pictorial view, to the bench taken
apart, and to a section.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.canvas.sheet_canvas import SheetCanvas
from app.document.desk import Desk
from app.look.beside_paper import BesidePaper
from app.look.paper_frame import PaperFrame
from app.look.word_button import WordButton
from app.panels.parts_page import PartsPage
from app.panels.section_fields import SectionFields
from app.panels.stick_model import TypeValue
from app.panels.story_stick import StoryStick
from app.panels.title_strip import TitleStrip
from app.scene.looks import Look
from app.scene.preferences import Preferences

if TYPE_CHECKING:
    from app.canvas.look_canvas import LookCanvas
    from app.window.section_keeper import SectionKeeper

SIZES, PARTS = 0, 1
WAYS = ("Across", "Along", "Level", "Askew")


class DrawingPage(BesidePaper):
    """Sizes or parts at the left, the sheet in the middle.

    ``joint_pointed`` carries the joint that a click on the sheet would open, or ''; whatever the
    sheet shows, ``joint_opened`` the one that was clicked.
    """

    joint_pointed = Signal(str)
    joint_opened = Signal(str)

    def __init__(
        self, desk: Desk, preferences: Preferences, type_value: TypeValue, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.stick = StoryStick(type_value, self)
        self.parts = PartsPage(self)
        self.canvas = SheetCanvas(desk, preferences, type_value, self)
        self.canvas.sight.joint_pointed.connect(self.joint_pointed)
        self.canvas.joint_opened.connect(self.joint_opened)
        self._desk, self._preferences = desk, preferences
        self._looks: LookCanvas | None = None
        self._keeper: SectionKeeper | None = None
        self.title = TitleStrip(self)
        self._drawings = QStackedWidget(self)
        self._look_buttons = QButtonGroup(self)
        self._way_buttons = QButtonGroup(self)
        self.plane = SectionFields(self)
        desk.work_changed.connect(self._follow_section)
        self._pages = QStackedWidget(self)
        self._tabs = QButtonGroup(self)
        self.put(self._side(), self._sheet(), ems=23, least=250)

    def go_to(self, page: int) -> None:
        """Show the sizes or the parts."""
        self._pages.setCurrentIndex(page)
        self._tabs.button(page).setChecked(True)

    @property
    def looks(self) -> LookCanvas:
        """The bench otherwise; made when it is first looked at."""
        if self._looks is None:
            from app.canvas.look_canvas import LookCanvas
            from app.window.section_keeper import SectionKeeper

            self._looks = LookCanvas(self._desk.model.bench, self._preferences, self)
            self._drawings.addWidget(self._looks)
            self._looks.joint_pointed.connect(self.joint_pointed)
            self._looks.joint_opened.connect(self.joint_opened)
            self._keeper = SectionKeeper(self._desk, self._looks, self.plane)
            self._keeper.way_shown.connect(self._mark_way)
            self._keeper.begin()
        return self._looks

    def _follow_section(self) -> None:
        """Once a maker has made a section, its plane is a line in the elevations too."""
        sight = self.canvas.sight
        if sight.plane is None and self._desk.project.section is not None:
            from app.scene.plane_line import PlaneLine

            looks = self.looks
            sight.plane = PlaneLine(
                self.canvas.view, looks.planes, lambda: self._desk.project.section is not None
            )
            self.canvas.deeds.plane_put.connect(looks.put)
            self.canvas.section_opened.connect(lambda: self.show_look(Look.SECTION))
        if sight.plane is not None:
            self.canvas.update()

    def show_bench(self, preferences: Preferences) -> None:
        """The desk's bench, on whatever the sheet shows."""
        self._preferences = preferences
        self.canvas.show_bench(preferences)
        if self._looks is not None:
            self._looks.show_bench(self._desk.model.bench, preferences)

    @property
    def look(self) -> Look:
        """What the sheet shows."""
        return tuple(Look)[self._look_buttons.checkedId()]

    def show_look(self, look: Look) -> None:
        """Turn the sheet to the elevations, a pictorial view or a section."""
        self._look_buttons.button(tuple(Look).index(look)).setChecked(True)
        self._drawings.setCurrentWidget(self.canvas if look is Look.ELEVATIONS else self.looks)
        if look is not Look.ELEVATIONS:
            self.looks.show_look(look)
        for button in self._way_buttons.buttons():
            button.setVisible(look is Look.SECTION)
        self.plane.setVisible(look is Look.SECTION)

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
        self._drawings.addWidget(self.canvas)
        sheet.column.addLayout(self._over_the_sheet(sheet))
        sheet.column.addWidget(self.plane, 0, Qt.AlignmentFlag.AlignRight)
        sheet.column.addWidget(self._drawings, 1)
        sheet.column.addWidget(self.title)
        self.show_look(Look.ELEVATIONS)
        return sheet

    def _over_the_sheet(self, sheet: QWidget) -> QHBoxLayout:
        """The words that turn the sheet."""
        row = QHBoxLayout()
        row.setContentsMargins(6, 0, 6, 0)
        row.setSpacing(0)
        for place, look in enumerate(Look):
            row.addWidget(_choice(look.value, place, self._look_buttons, sheet))
        row.addStretch(1)
        for place, word in enumerate(WAYS):
            row.addWidget(_choice(word, place, self._way_buttons, sheet))
        self._way_buttons.button(0).setChecked(True)
        self._look_buttons.idClicked.connect(self._show_place)
        self._way_buttons.idClicked.connect(self._show_way)
        return row

    def _show_place(self, place: int) -> None:
        self.show_look(tuple(Look)[place])

    def _show_way(self, place: int) -> None:
        from geometry.design.cutting_plane import Way

        assert self._keeper is not None
        self._keeper.choose_way(tuple(Way)[place])

    def _mark_way(self, place: int) -> None:
        self._way_buttons.button(place).setChecked(True)


def _choice(word: str, place: int, group: QButtonGroup, parent: QWidget) -> WordButton:
    """One of a few words of which one is on."""
    button = WordButton(word, parent)
    button.setCheckable(True)
    group.addButton(button, place)
    return button
