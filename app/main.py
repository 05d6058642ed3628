"""Starts the desktop program: one application, one window, and a net under both."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QLocale, QObject, QSettings, QStandardPaths, Signal
from PySide6.QtWidgets import QApplication

from app.document.keeping import Keeper
from app.trouble import TroubleLog
from app.window.main_window import MainWindow
from app.window.settings import read_preferences

NAME = "Settlewright"


class Bell(QObject):
    """Carries trouble from any thread to the window's own."""

    rung = Signal(str)


def run(path: Path | None) -> int:
    """Open the window, with a project file if one is given; the exit code of the program."""
    app = application()
    state = state_folder()
    bell = Bell()
    log = TroubleLog(state, bell.rung.emit)
    log.install()
    settings = QSettings()
    window = MainWindow(
        settings, read_preferences(settings, QLocale.system()), Keeper(state / "kept"), log.file
    )
    bell.rung.connect(window.trouble)
    window.start_with(path)
    window.show()
    return app.exec()


def application() -> QApplication:
    """The one QApplication, in our own style on every desktop."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        app = QApplication([NAME])
    app.setApplicationName(NAME)
    app.setOrganizationName(NAME)
    app.setStyle("Fusion")
    return app


def state_folder() -> Path:
    """Where the log and the kept work lie."""
    return Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.StateLocation))
