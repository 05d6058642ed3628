"""A maker's own rows of the table of runners, kept for all benches as one text in the settings."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSettings

from shared.errors import UnreadableValue
from shared.runner_rows import read_runner_rows, runner_table
from shared.runners import Runner

KEY = "own_runners"


class OwnRunners:
    """Reads and writes the rows."""

    def __init__(self, settings: QSettings) -> None:
        self._settings = settings

    def rows(self) -> tuple[Runner, ...]:
        """The rows as they were left; none where the settings were spoilt."""
        text = str(self._settings.value(KEY, "", type=str))
        try:
            return read_runner_rows(text) if text else ()
        except UnreadableValue:
            return ()

    def keep(self, rows: Sequence[Runner]) -> None:
        self._settings.setValue(KEY, runner_table(rows))
