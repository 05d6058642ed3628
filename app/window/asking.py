"""Asking for a file or a folder; tests give answers of their own instead."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

from exporters.project_file import SUFFIX

KIND = f"Settlewright bench (*{SUFFIX})"
TABLE = "Comma-separated values (*.csv)"


class Asker:
    """The platform's own dialogs; None when the maker thinks better of it."""

    def __init__(self, parent: QWidget) -> None:
        self._parent = parent

    def file(self, start: Path) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self._parent, "Open a bench", str(start), KIND)
        return Path(name) if name else None

    def target(self, suggestion: Path) -> Path | None:
        name, _ = QFileDialog.getSaveFileName(self._parent, "Save as", str(suggestion), KIND)
        return Path(name) if name else None

    def folder(self, start: Path) -> Path | None:
        name = QFileDialog.getExistingDirectory(self._parent, "Folder for the pack", str(start))
        return Path(name) if name else None

    def table(self, start: Path) -> Path | None:
        name, _ = QFileDialog.getOpenFileName(self._parent, "Read a table", str(start), TABLE)
        return Path(name) if name else None

    def table_target(self, suggestion: Path) -> Path | None:
        name, _ = QFileDialog.getSaveFileName(self._parent, "Write a table", str(suggestion), TABLE)
        return Path(name) if name else None
