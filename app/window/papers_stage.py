"""Papers: between the page and the worker that writes the pack."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, QUrl
from PySide6.QtGui import QDesktopServices

from app.document.desk import Desk
from app.panels.papers_page import PapersPage
from app.papers_job import PackJob, PackOrder
from app.scene.first_page import first_page
from app.scene.wording import said_error
from app.window.asking import Asker
from app.window.presenter import Presenter
from shared.errors import MakerError


class PapersStage(QObject):
    """Starts the writing with the values of the moment, and says how it went."""

    def __init__(self, desk: Desk, presenter: Presenter, ask: Asker, parent: QObject) -> None:
        super().__init__(parent)
        self._desk, self._presenter, self._ask = desk, presenter, ask
        self.page = page = PapersPage(presenter.preferences)
        self.job = PackJob(self)
        self._folder = Path()
        self.job.written.connect(self._written)
        self.job.refused.connect(self._refused)
        self.job.failed.connect(self._failed)
        page.folder_asked.connect(self._choose_folder)
        page.write_asked.connect(self.write)
        page.show_asked.connect(self._open_folder)
        page.title_fields.described.connect(desk.describe)
        page.chosen.connect(self._show_page)
        desk.work_changed.connect(self._follow)
        self._follow()

    def write(self) -> None:
        """Write the pack as it stands; what is changed meanwhile goes into the next one."""
        page, preferences = self.page, self._presenter.preferences
        self._folder = page.chosen_folder
        page.busy()
        self.job.start(
            PackOrder(
                self._desk.project,
                self._folder,
                page.chosen_paper,
                page.chosen_units,
                preferences.words,
                preferences.third_angle,
                _today(),
            )
        )

    def shown(self) -> None:
        """The maker has come to the papers."""
        self.page.show_preferences(self._presenter.preferences)
        self.page.show_alarm(self._presenter.alarm_count)
        self._suggest_folder()
        self._show_page()

    def _show_page(self) -> None:
        """The first page as it will print; only while somebody looks."""
        if not self.page.isVisible():
            return
        preferences = self._presenter.preferences
        self.page.preview.show_sheet(
            first_page(
                self._desk.project,
                self._desk.model,
                self.page.chosen_paper,
                self.page.chosen_units,
                preferences.words,
                third_angle=preferences.third_angle,
                on=_today(),
            )
        )

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


def _today() -> date:
    return datetime.now().astimezone().date()
