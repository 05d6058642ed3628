"""Papers: what the shop gets, how it is shown, where it goes, and how the writing went."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from app.look.flat_field import FlatField
from app.look.thin_scroll_bar import quiet_scrolling
from app.look.type import bold
from app.look.word_button import BoxButton, WordButton
from app.panels.leafing import Leafing
from app.panels.square_fields import SquareFields
from app.panels.title_fields import TitleFields
from app.scene.preferences import UNIT_CHOICES, Preferences, unit_name
from app.scene.wording import said
from shared.paper import PAPERS, Paper
from shared.units import Shown

CONTENTS = (
    # file, what it is
    ("drawings.pdf", "general arrangement, a page for each part and each joint, pictures"),
    ("templates.pdf", "angled pieces at full size, with check squares to measure"),
    ("cut_list.csv", "every piece with its sizes and timber"),
    ("dxf/", "one cutting file a part, millimetres, true arcs"),
    ("meshes/", "one solid a part, where it stands in the bench"),
    ("facts.json", "every number, joint and finding, for other programs"),
)


class PapersPage(QScrollArea):
    """``chosen``: other units or paper.  ``turned``: so many pages on.  ``measured``: what the
    printer makes of a check square.  ``folder_asked``: the maker wants to choose one.
    ``write_asked``: write the pack now.  ``show_asked``: open the folder."""

    chosen = Signal()
    folder_asked = Signal()
    write_asked = Signal()
    show_asked = Signal()

    def __init__(self, preferences: Preferences, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.setWidgetResizable(True)
        quiet_scrolling(self)
        self.setAccessibleName("Papers")
        self._shown: Shown | None = None
        self.title_fields = TitleFields(self)
        self.units = QComboBox(self)
        self.units.addItems([unit_name(choice) for choice in UNIT_CHOICES])
        self.contents = QLabel(self)
        self.contents.setWordWrap(True)
        self.paper = QComboBox(self)
        self.paper.addItems(list(PAPERS))
        self.folder = FlatField(self)
        self.choose = WordButton("Choose…", self)
        self.write = BoxButton("Write the pack", self)
        self.progress = QProgressBar(self)
        self.outcome = QLabel(self)
        self.alarm = QLabel(self)
        self.show_folder = WordButton("Open the folder", self)
        self.square = SquareFields(self)
        self.leafing = Leafing(self)
        self._name_everything()
        self.setWidget(self._body())
        self.choose.clicked.connect(self.folder_asked)
        self.write.clicked.connect(self.write_asked)
        self.show_folder.clicked.connect(self.show_asked)
        self.folder.textChanged.connect(self._ready)
        self.units.currentIndexChanged.connect(self.chosen)
        self.paper.currentIndexChanged.connect(self.chosen)
        self.show_preferences(preferences)
        self._ready()

    @property
    def chosen_paper(self) -> Paper:
        return list(PAPERS.values())[self.paper.currentIndex()]

    @property
    def chosen_units(self) -> Shown:
        return UNIT_CHOICES[self.units.currentIndex()]

    @property
    def chosen_folder(self) -> Path:
        return Path(self.folder.text().strip()).expanduser()

    def show_preferences(self, preferences: Preferences) -> None:
        """A change of unit on the screen changes it here; the other way round it does not."""
        if preferences.shown != self._shown:
            self._shown = preferences.shown
            self.units.setCurrentIndex(UNIT_CHOICES.index(preferences.shown))
        self.paper.setCurrentIndex(list(PAPERS).index(preferences.paper))
        for place, choice in enumerate(UNIT_CHOICES):
            self.units.setItemText(place, said(unit_name(choice), preferences))
        for place, paper in enumerate(PAPERS.values()):
            self.paper.setItemText(place, said(_paper_text(paper), preferences))
        self.contents.setText(said(_contents(), preferences))
        self.square.show_square(preferences.square, preferences.shown)

    def show_alarm(self, count: int) -> None:
        """Say when findings mean 'do not cut'; the pack can be written all the same."""
        verb = "finding says" if count == 1 else "findings say"
        self.alarm.setText(f"■ do not cut: {count} {verb} so. The papers can be written anyway.")
        self.alarm.setVisible(count > 0)

    def busy(self) -> None:
        """Writing has begun."""
        self.write.setEnabled(False)
        self.progress.show()
        self.show_folder.hide()
        self.outcome.setText("Writing. You can go on working.")

    def done(self, text: str, *, folder: bool) -> None:
        """Writing has ended, well or not."""
        self.progress.hide()
        self.outcome.setText(text)
        self.outcome.setAccessibleName(text)
        self.show_folder.setVisible(folder)
        self._ready()

    def _ready(self) -> None:
        self.write.setEnabled(bool(self.folder.text().strip()) and not self.progress.isVisible())

    def _name_everything(self) -> None:
        for widget, name in (
            (self.units, "Units on the papers"),
            (self.paper, "Paper"),
            (self.folder, "Folder for the pack"),
            (self.choose, "Choose the folder for the pack"),
            (self.progress, "Writing the pack"),
            (self.outcome, "Nothing is written yet"),
        ):
            widget.setAccessibleName(name)
        self.folder.setPlaceholderText("A folder of its own is best")
        self.progress.setRange(0, 0)
        self.progress.setTextVisible(False)
        self.progress.setMaximumHeight(6)
        self.progress.hide()
        self.show_folder.hide()
        self.outcome.setWordWrap(True)
        self.outcome.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.alarm.setWordWrap(True)
        self.alarm.hide()

    def _body(self) -> QWidget:
        body = QWidget(self)
        sides = QHBoxLayout(body)
        sides.setContentsMargins(32, 20, 32, 20)
        sides.setSpacing(32)
        column = QVBoxLayout()
        sides.addLayout(column, 2)
        sides.addWidget(self.leafing, 3)
        column.setSpacing(14)
        column.addWidget(self.title_fields)
        column.addSpacing(8)
        column.addWidget(_heading("The pack for the shop", body))
        column.addWidget(self.contents)
        column.addLayout(self._form())
        column.addWidget(self.alarm)
        row = QHBoxLayout()
        row.addWidget(self.write)
        row.addWidget(self.show_folder)
        row.addStretch(1)
        column.addLayout(row)
        column.addWidget(self.progress)
        column.addWidget(self.outcome)
        column.addStretch(1)
        return body

    def _form(self) -> QFormLayout:
        form = QFormLayout()
        form.addRow("&Units", self.units)
        form.addRow("&Paper", self.paper)
        form.addRow("Check square", self.square)
        row = QHBoxLayout()
        row.addWidget(self.folder, 1)
        row.addWidget(self.choose)
        label = QLabel("&Folder", self)
        label.setBuddy(self.folder)
        form.addRow(label, row)
        return form


def _heading(text: str, parent: QWidget) -> QLabel:
    label = QLabel(text, parent)
    label.setFont(bold(label.font()))
    return label


def _contents() -> str:
    rows = "".join(
        f"<tr><td style='padding-right:18px'>{file}</td><td>{what}</td></tr>"
        for file, what in CONTENTS
    )
    return f"<table>{rows}</table>"


def _paper_text(paper: Paper) -> str:
    return f"{paper.name} ({{{paper.width:g} mm}} × {{{paper.height:g} mm}})"
