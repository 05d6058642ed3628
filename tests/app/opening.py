"""Opening a window the way the program does, with everything it keeps in one folder."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSettings

from app.document.keeping import Keeper
from app.look.themes import LIGHT
from app.scene.preferences import Preferences
from app.window.frame import Frame
from app.window.workplace import Workplace


def open_window(settings: QSettings, folder: Path) -> Workplace:
    """In millimetres, light, with a plain bench; not shown yet."""
    frame = Frame(settings)
    frame.resize(1280, 820)
    keeper = Keeper(folder / "kept")
    return Workplace(frame, settings, Preferences(theme=LIGHT), keeper, folder / "trouble.log")
