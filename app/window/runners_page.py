"""Drawer runners: the table of their kinds, a maker's own among them, and which the bench takes."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHeaderView,
    QLabel,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from app.document.desk import Desk
from app.document.own_runners import OwnRunners
from app.look.flow import FlowLayout
from app.look.palettes import theme_of
from app.look.plain_header import PlainHeader
from app.look.themes import Tone
from app.look.thin_scroll_bar import ThinScrollBar
from app.look.word_button import WordButton
from app.panels.runner_model import RunnerModel
from app.scene.preferences import Preferences
from app.scene.runner_cells import is_used, own_copy
from app.scene.wording import said, said_error
from app.window.asking import Asker
from exporters.writing import write_file
from geometry.bench.drawers import has_drawers
from geometry.bench.runner_numbers import runner_values
from shared.errors import MakerError, UnreadableValue
from shared.runner_rows import read_runner_rows, runner_table
from shared.runners import RUNNERS, Runner

_ABOUT = (
    "What each kind of runners asks of a drawer. The first ones are generic: check your runner's "
    "sheet. Copy one and type over it what your sheet says; your own are kept for all benches. "
    "A bench takes over the numbers, so that it stays as it is when a table changes."
)


class RunnersPage(QDialog):
    """Every change of the own rows is kept at once; what the bench takes is one step of its own."""

    def __init__(
        self, desk: Desk, own: OwnRunners, ask: Asker, preferences: Preferences, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._desk, self._own, self._ask, self._preferences = desk, own, ask, preferences
        self.model = RunnerModel(desk.spec, preferences, self)
        self.model.show_own(own.rows())
        self.table = self._table()
        self._about = QLabel(self)
        self.note = QLabel(self)
        self.note.setWordWrap(True)
        self.use = self._button("Take for this bench", self._use)
        self.copy = self._button("Copy as your own", self._copy)
        self.away = self._button("Take away", self._take_away)
        self.read = self._button("Read a table…", self._read)
        self.write = self._button("Write your own…", self._write)
        self._lay_out()
        self._name()
        self.model.typed_over.connect(self._keep)
        self.model.refused.connect(self.say)
        self.table.selectionModel().currentChanged.connect(self._follow)
        desk.shown_changed.connect(self._show_bench)
        self.table.setCurrentIndex(self.model.index(0, self._column_of_bench()))
        self._follow()

    def show_preferences(self, preferences: Preferences) -> None:
        """Lengths in another unit, words of another country."""
        self._preferences = preferences
        self._name()
        self._colour()
        self._show_bench()

    def say(self, words: str) -> None:
        """A line under the table: what was wrong, or what was done."""
        self.note.setText(words)
        self.note.setVisible(bool(words))

    @property
    def picked(self) -> Runner:
        return self.model.runners[max(self.table.currentIndex().column(), 0)]

    # Putting together

    def _table(self) -> QTableView:
        table = QTableView(self)
        table.setModel(self.model)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectColumns)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.setWordWrap(True)
        table.setVerticalScrollBar(ThinScrollBar(table))
        table.horizontalHeader().hide()
        em = table.fontMetrics().horizontalAdvance("m")
        table.horizontalHeader().setDefaultSectionSize(14 * em)
        table.setVerticalHeader(PlainHeader(table))
        table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        return table

    def _button(self, text: str, deed: Callable[[], None]) -> WordButton:
        button = WordButton(text, self)
        button.clicked.connect(partial(_call, deed))
        return button

    def _lay_out(self) -> None:
        em = self.fontMetrics().horizontalAdvance("m")
        self.resize(88 * em, 48 * em)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 16)
        self._about.setWordWrap(True)
        column.addWidget(self._about)
        column.addWidget(self.table, 1)
        row = FlowLayout()
        row.addWidget(self.note)
        for button in (self.use, self.copy, self.away, self.read, self.write):
            row.addWidget(button)
        column.addLayout(row)
        self.say("")
        self._colour()

    # Following

    def _name(self) -> None:
        """What the page and its table are called, in the maker's words."""
        self.setWindowTitle(said("Drawer runners", self._preferences))
        self.table.setAccessibleName(said("Kinds of drawer runners", self._preferences))
        self._about.setText(said(_ABOUT, self._preferences))

    def _colour(self) -> None:
        """The picked column is to be read as the others are."""
        theme, palette = theme_of(self.palette()), self.palette()
        palette.setColor(QPalette.ColorRole.Highlight, QColor(theme.wash))
        palette.setColor(QPalette.ColorRole.HighlightedText, QColor(theme.tone(Tone.INK)))
        self.table.setPalette(palette)

    def _column_of_bench(self) -> int:
        runners, spec = self.model.runners, self._desk.spec
        return next((k for k, row in enumerate(runners) if is_used(spec, row)), 0)

    def _show_bench(self) -> None:
        self.model.show_bench(self._desk.spec, self._preferences)
        self._follow()

    def _follow(self) -> None:
        there = has_drawers(self._desk.spec)
        self.use.setEnabled(there and not is_used(self._desk.spec, self.picked))
        self.use.setToolTip("" if there else "This bench has no drawers.")
        self.away.setEnabled(self.model.is_own(self.table.currentIndex().column()))
        self.write.setEnabled(len(self.model.runners) > len(RUNNERS))

    # What the buttons do

    def _keep(self, own: tuple[Runner, ...]) -> None:
        self._own.keep(own)
        self.say("")
        self._follow()

    def _show_own(self, own: tuple[Runner, ...], pick: int) -> None:
        """Keep other rows of one's own, and pick one of them."""
        at = self.table.horizontalScrollBar().value()
        self.model.show_own(own)
        self._keep(own)
        self.table.horizontalScrollBar().setValue(at)
        self.table.setCurrentIndex(self.model.index(0, len(RUNNERS) + pick if own else 0))

    def _own_rows(self) -> tuple[Runner, ...]:
        return self.model.runners[len(RUNNERS) :]

    def _use(self) -> None:
        row = self.picked
        try:
            self._desk.set_values(runner_values(row), f"Runners: {row.name}")
        except MakerError as error:
            self.say(said_error(error, self._preferences))
            return
        self.say("")

    def _copy(self) -> None:
        row = own_copy(self.picked, [each.name for each in self.model.runners])
        own = (*self._own_rows(), row)
        self._show_own(own, len(own) - 1)

    def _take_away(self) -> None:
        column = self.table.currentIndex().column()
        if self.model.is_own(column):
            place, own = column - len(RUNNERS), self._own_rows()
            left = (*own[:place], *own[place + 1 :])
            self._show_own(left, max(min(place, len(left) - 1), 0))

    def _read(self) -> None:
        """Rows of a file come to one's own; those of the same name take the place of the old."""
        path = self._ask.table(Path.home())
        if path is None:
            return
        try:
            rows = _rows_in(path)
        except MakerError as error:
            self.say(said_error(error, self._preferences))
            return
        names = {row.name for row in rows}
        own = (*(row for row in self._own_rows() if row.name not in names), *rows)
        self._show_own(own, len(own) - 1)

    def _write(self) -> None:
        path = self._ask.table_target(Path.home() / "runners.csv")
        if path is None:
            return
        try:
            write_file(path, runner_table(self._own_rows()).encode())
        except MakerError as error:
            self.say(said_error(error, self._preferences))
            return
        self.say(f"Written to {path}.")


def _call(deed: Callable[[], None], _checked: bool = False) -> None:
    deed()


def _rows_in(path: Path) -> tuple[Runner, ...]:
    """The rows of a table in a file; raises MakerError."""
    try:
        rows = read_runner_rows(path.read_text("utf-8"))
    except OSError as error:
        raise UnreadableValue(f"{path.name} cannot be read: {error.strerror}.") from error
    except UnicodeDecodeError as error:
        raise UnreadableValue(
            f"{path.name} is no text that can be read.",
            remedy="Save it as comma-separated values in UTF-8.",
        ) from error
    generic = {row.name for row in RUNNERS}
    return tuple(own_copy(row, ()) if row.name in generic else row for row in rows)
