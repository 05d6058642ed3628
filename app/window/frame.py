"""The window itself: it stands at once, empty paper on a bench, and is furnished a moment later.

Only Qt and the colours are needed for that; the engine and all panels are loaded after the first
picture is on the screen.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QPaintEvent
from PySide6.QtWidgets import QApplication, QMainWindow

from app.look.palettes import chosen_theme, palette_of
from app.look.paper_frame import PaperFrame
from app.look.themes import SYSTEM

TITLE = "Settlewright"


class Inhabitant(Protocol):
    """What works in the window once it is furnished."""

    def may_close(self) -> bool: ...

    def drag_entered(self, event: QDragEnterEvent) -> None: ...

    def dropped(self, event: QDropEvent) -> None: ...


class Frame(QMainWindow):
    """``inhabitant`` is asked about closing and dropped files; None before it has moved in."""

    def __init__(self, settings: QSettings) -> None:
        super().__init__()
        self.inhabitant: Inhabitant | None = None
        app = QApplication.instance()
        assert isinstance(app, QApplication)
        app.setPalette(palette_of(chosen_theme(str(settings.value("theme", SYSTEM, type=str)))))
        self.setWindowTitle(TITLE)
        room = self.screen().availableSize()
        self.resize(min(1360, room.width()), min(860, room.height()))
        geometry = settings.value("window")
        if geometry is not None:
            self.restoreGeometry(geometry)
        self.setAcceptDrops(True)

    def show_paper(self, then: Callable[[], None]) -> None:
        """Show the window with an empty sheet, and go on when that has been painted."""
        self.setCentralWidget(_EmptySheet(then))
        self.show()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if self.inhabitant is not None:
            self.inhabitant.drag_entered(event)

    def dropEvent(self, event: QDropEvent) -> None:
        if self.inhabitant is not None:
            self.inhabitant.dropped(event)

    def closeEvent(self, event: QCloseEvent) -> None:
        """The inhabitant keeps the work first; it may ask to stay."""
        event.setAccepted(self.inhabitant is None or self.inhabitant.may_close())


class _EmptySheet(PaperFrame):
    """Calls back once, after its first picture."""

    def __init__(self, then: Callable[[], None]) -> None:
        super().__init__()
        self._then: Callable[[], None] | None = then

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._then is not None:
            then, self._then = self._then, None
            QTimer.singleShot(0, then)
