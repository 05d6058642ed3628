"""The pages that stay open beside the work: preferences, drawer runners, help.

Each is loaded when it is first asked for, so that the window is there before them.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QSettings, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QWidget

from app.document.desk import Desk
from app.document.own_runners import OwnRunners
from app.scene.preferences import Preferences
from app.window.asking import Asker
from app.window.presenter import Presenter

if TYPE_CHECKING:
    from app.window.preferences_dialog import PreferencesDialog
    from app.window.runners_page import RunnersPage


class PagesBeside(QObject):
    """Opens them over ``parent``; ``prefer`` takes up other preferences."""

    def __init__(
        self,
        desk: Desk,
        presenter: Presenter,
        settings: QSettings,
        ask: Asker,
        log: Path,
        prefer: Callable[[Preferences], None],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self._desk, self._presenter, self._settings = desk, presenter, settings
        self.ask, self._log, self._prefer, self._parent = ask, log, prefer, parent
        self._dialog: PreferencesDialog | None = None
        self.runners: RunnersPage | None = None

    def open_preferences(self) -> None:
        """Each change is seen at once."""
        from app.window.preferences_dialog import PreferencesDialog

        if self._dialog is None:
            self._dialog = PreferencesDialog(self._presenter.preferences, self._parent)
            self._dialog.chosen.connect(self._prefer)
            self._dialog.finished.connect(self._forget_dialog)
        self._dialog.show()
        self._dialog.activateWindow()

    def open_runners(self) -> None:
        """The table of drawer runners."""
        from app.window.runners_page import RunnersPage

        if self.runners is None:
            own = OwnRunners(self._settings)
            preferences = self._presenter.preferences
            self.runners = RunnersPage(self._desk, own, self.ask, preferences, self._parent)
            self.runners.finished.connect(self._forget_runners)
        self.runners.show()
        self.runners.activateWindow()

    def show_preferences(self, preferences: Preferences) -> None:
        """In the pages that are open."""
        for page in (self._dialog, self.runners):
            if page is not None:
                page.show_preferences(preferences)

    def show_keys(self) -> None:
        from app.window.help_pages import HelpPage, keys_html

        HelpPage("Keys and mouse", keys_html(self._presenter.preferences), self._parent).show()

    def show_checked(self) -> None:
        from app.scene.checked import checks_html
        from app.window.help_pages import HelpPage

        told = checks_html(self._presenter.preferences, self._desk.project.judging)
        HelpPage("What is looked for", told, self._parent).show()

    def show_cautions(self) -> None:
        from app.window.help_pages import HelpPage, cautions_html

        HelpPage("Cautions", cautions_html(self._presenter.preferences), self._parent).show()

    def show_log(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._log.parent)))

    def _forget_dialog(self) -> None:
        self._dialog = None

    def _forget_runners(self) -> None:
        self.runners = None
