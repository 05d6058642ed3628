"""Files worked on lately, newest first; kept as one JSON text in the settings."""

from __future__ import annotations

import json
from pathlib import Path

from PySide6.QtCore import QSettings

MOST_RECENT = 9
KEY = "recent_files"


class RecentFiles:
    """Reads and writes the list; a file that has gone is listed until it is taken off."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    def files(self) -> tuple[Path, ...]:
        try:
            found = json.loads(str(self._settings.value(KEY, "[]", type=str)))
        except ValueError:
            return ()
        if not isinstance(found, list):
            return ()
        return tuple(Path(name) for name in found if isinstance(name, str))[:MOST_RECENT]

    def add(self, path: Path) -> None:
        """Put a file first."""
        whole = path.absolute()
        self._write((whole, *(file for file in self.files() if file != whole)))

    def remove(self, path: Path) -> None:
        self._write(tuple(file for file in self.files() if file != path))

    def _write(self, files: tuple[Path, ...]) -> None:
        self._settings.setValue(KEY, json.dumps([str(file) for file in files[:MOST_RECENT]]))
