"""Starts the desktop program: one application, one window, and a net under both.

The window is on the screen before the engine is loaded; what needs it is imported then.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import (
    QCoreApplication,
    QEvent,
    QLocale,
    QObject,
    QSettings,
    QStandardPaths,
    Signal,
)
from PySide6.QtGui import QFileOpenEvent
from PySide6.QtWidgets import QApplication

from app.collecting import collect_all, collect_rarely
from app.window.frame import TITLE, Frame

if TYPE_CHECKING:
    from app.trouble import TroubleLog
    from app.window.workplace import Workplace


class Start(QObject):
    """From an empty sheet to the bench.  ``trouble`` carries faults from any thread.

    On a Mac the Finder names the files to open in events, before the window is furnished or
    at any time after.
    """

    trouble = Signal(str)

    def __init__(self, path: Path | None) -> None:
        super().__init__()
        self._path = path
        self._settings = QSettings()
        self._log: TroubleLog | None = None
        self._workplace: Workplace | None = None
        self.frame = Frame(self._settings)
        application().installEventFilter(self)
        self.frame.show_paper(self.furnish)

    def furnish(self) -> None:
        """Load the engine, fill the window, open the file."""
        from app.document.keeping import Keeper
        from app.memory import keep_memory
        from app.trouble import TroubleLog
        from app.window.settings import read_preferences
        from app.window.workplace import Workplace

        keep_memory()
        state = state_folder()
        log = self._log = TroubleLog(state, self.trouble.emit)
        log.install()
        preferences = read_preferences(self._settings, QLocale.system())
        keeper = Keeper(state / "kept")
        workplace = Workplace(self.frame, self._settings, preferences, keeper, log.file)
        self.trouble.connect(workplace.trouble)
        workplace.start_with(self._path)
        self._workplace = workplace
        collect_rarely()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if not isinstance(event, QFileOpenEvent):
            return super().eventFilter(watched, event)
        path = Path(event.file())
        if self._workplace is None:
            self._path = path
        else:
            self._workplace.files.open(path)
        return True

    def end(self) -> None:
        """Let go of everything in order, so that nothing is left for the interpreter's end."""
        if self._log is not None:
            self._log.uninstall()
        application().removeEventFilter(self)
        self._workplace = None
        self.frame.inhabitant = None
        self.frame.deleteLater()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        collect_all()


def run(path: Path | None) -> int:
    """Open the window, with a project file if one is given; the exit code of the program."""
    app = application()
    start = Start(path)
    code = app.exec()
    start.end()
    return code


def application() -> QApplication:
    """The one QApplication, in our own style on every desktop."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        app = QApplication([TITLE])
    app.setApplicationName(TITLE)
    app.setOrganizationName(TITLE)
    # The style that Qt draws by itself, so nothing of the desktop shows through.
    app.setStyle("fusion")
    return app


def state_folder() -> Path:
    """Where the log and the kept work lie."""
    return Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.StateLocation))
