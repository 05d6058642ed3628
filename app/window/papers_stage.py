"""Papers: between the page and the worker that writes the pack."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, QUrl, Signal
from PySide6.QtGui import QDesktopServices

from app.document.desk import Desk
from app.panels.papers_page import PapersPage
from app.paper_order import PaperOrder
from app.scene.first_page import first_page
from app.scene.wording import said_error
from app.side_job import SideJob
from app.window.asking import Asker
from app.window.presenter import Presenter
from geometry.drawing.marks import Sheet
from geometry.sheets.printer import Edges
from shared.errors import MakerError


class PapersStage(QObject):
    """Starts the writing with the values of the moment, and says how it went; turns the pages.

    The first page is drawn at once; the others beside the window, when somebody turns to them.
    ``preferred`` carries preferences with another check square or paper.
    """

    preferred = Signal(object)

    def __init__(self, desk: Desk, presenter: Presenter, ask: Asker, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._presenter, self._ask = desk, presenter, ask
        self.page = page = PapersPage(presenter.preferences)
        self.job, self.drawing = SideJob(self), SideJob(self)
        self._folder = Path()
        self._number = 1
        self._drawn: tuple[PaperOrder, tuple[Sheet, ...]] | None = None
        self._asked: PaperOrder | None = None
        self.drawing.done.connect(self._pages_drawn)
        self.drawing.refused.connect(self._pages_refused)
        self.drawing.failed.connect(self._pages_failed)
        self.job.done.connect(self._written)
        self.job.refused.connect(self._refused)
        self.job.failed.connect(self._failed)
        page.folder_asked.connect(self._choose_folder)
        page.write_asked.connect(self.write)
        page.show_asked.connect(self._open_folder)
        page.title_fields.described.connect(desk.describe)
        page.chosen.connect(self._chosen)
        page.leafing.turned.connect(self._turn)
        page.square.measured.connect(self._measured)
        desk.work_changed.connect(self._follow)
        self._follow()

    def write(self) -> None:
        """Write the pack as it stands; what is changed meanwhile goes into the next one."""
        self._folder = self.page.chosen_folder
        self.page.busy()
        self.job.start(partial(self._order().write, self._folder))

    def wait(self) -> None:
        """Until what is being written or drawn is done."""
        self.job.wait()
        self.drawing.wait()

    def shown(self) -> None:
        """The maker has come to the papers."""
        self.page.show_preferences(self._presenter.preferences)
        self.page.show_alarm(self._presenter.alarm_count)
        self._suggest_folder()
        self._show_page()

    def _order(self) -> PaperOrder:
        preferences = self._presenter.preferences
        return PaperOrder(
            self._desk.project,
            self.page.chosen_paper,
            self.page.chosen_units,
            preferences.words,
            preferences.third_angle,
            preferences.square,
            _today(),
        )

    def _show_page(self) -> None:
        """The page that is looked at as it will print; only while somebody looks."""
        if not self.page.isVisible():
            return
        order = self._order()
        if self._drawn is not None and self._drawn[0] == order:
            pages = self._drawn[1]
            self._number = min(self._number, len(pages))
            self.page.leafing.show_page(pages[self._number - 1], self._number, len(pages))
        elif self._number == 1:
            self.page.leafing.show_page(first_page(order, self._desk.model), 1, None)
        elif self._asked != order:
            self._asked = order
            self.page.leafing.drawing()
            self.drawing.start(partial(_drawn, order))

    def _turn(self, by: int) -> None:
        self._number = max(1, self._number + by)
        self._show_page()

    def _pages_drawn(self, drawn: tuple[PaperOrder, tuple[Sheet, ...]]) -> None:
        """What was drawn of a bench as it was is of no use."""
        if drawn[0] == self._asked:
            self._drawn, self._asked = drawn, None
        self._show_page()

    def _pages_refused(self, error: MakerError) -> None:
        self._asked, self._number = None, 1
        self._show_page()
        self.page.done(f"✕ {said_error(error, self._presenter.preferences)}", folder=False)

    def _pages_failed(self, error: Exception) -> None:
        self._asked, self._number = None, 1
        self._show_page()
        raise error

    def _chosen(self) -> None:
        """The paper is kept for the next bench too; the units are those of this pack."""
        preferences = self._presenter.preferences
        if self.page.chosen_paper.name != preferences.paper:
            self.preferred.emit(replace(preferences, paper=self.page.chosen_paper.name))
        self._show_page()

    def _measured(self, square: Edges) -> None:
        self.preferred.emit(replace(self._presenter.preferences, square=square))

    def _suggest_folder(self) -> None:
        """A folder beside the project file, or among the maker's documents."""
        if self.page.folder.text():
            return
        path = self._desk.path
        location = QStandardPaths.StandardLocation.DocumentsLocation
        home = path.parent if path else Path(QStandardPaths.writableLocation(location))
        name = path.stem if path else "bench"
        self.page.folder.setText(str(home / f"{name} pack"))

    def _choose_folder(self) -> None:
        folder = self._ask.folder(self.page.chosen_folder)
        if folder is not None:
            self.page.folder.setText(str(folder))

    def _written(self, paths: tuple[Path, ...]) -> None:
        self.page.done(f"{len(paths)} files written to {self._folder}.", folder=True)

    def _refused(self, error: MakerError) -> None:
        text = said_error(error, self._presenter.preferences)
        self.page.done(f"✕ Nothing is written. {text}", folder=False)

    def _failed(self, error: Exception) -> None:
        self.page.done("✕ Nothing is written: the program failed. The log says how.", folder=False)
        raise error

    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._folder)))

    def _follow(self) -> None:
        self.page.title_fields.show_project(self._desk.project)
        self._show_page()


def _drawn(order: PaperOrder) -> tuple[PaperOrder, tuple[Sheet, ...]]:
    return order, order.pages()


def _today() -> date:
    return datetime.now().astimezone().date()
