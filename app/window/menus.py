"""The menus that change with the work: recent files, samples, units, light and dark."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from app.document.recent import RecentFiles
from app.scene.preferences import THEME_CHOICES, UNIT_CHOICES, Preferences, unit_name
from app.window.actions import choices
from app.window.samples import sample_files, spoken_name
from shared.words import in_words

THEME_TEXTS = ("As the desktop", "Light: paper", "Dark: night")

OpenPath = Callable[[Path], object]


def fill_recent(menu: QMenu, recent: RecentFiles, open_path: OpenPath) -> None:
    """Files worked on lately; one that has gone can only be taken off the list."""
    menu.clear()
    files = recent.files()
    for file in files:
        if file.exists():
            menu.addAction(f"{file.stem}   {file.parent}").triggered.connect(
                partial(_open, open_path, file)
            )
        else:
            row = menu.addMenu(f"{file.stem} (not there any more)")
            row.addAction("Take it off the list").triggered.connect(
                partial(_take_off, recent, file)
            )
    if not files:
        menu.addAction("None yet").setEnabled(False)


def fill_samples(menu: QMenu, open_path: OpenPath) -> None:
    for file in sample_files():
        menu.addAction(spoken_name(file)).triggered.connect(partial(_open, open_path, file))
    menu.menuAction().setVisible(not menu.isEmpty())


class PreferenceMenus:
    """Units and colours, straight from the View menu."""

    def __init__(
        self,
        units: QMenu,
        theme: QMenu,
        choose_unit: Callable[[int], None],
        choose_theme: Callable[[int], None],
    ) -> None:
        self._units: list[QAction] = choices(
            units, tuple(unit_name(choice) for choice in UNIT_CHOICES), choose_unit
        )
        self._themes: list[QAction] = choices(theme, THEME_TEXTS, choose_theme)

    def show(self, preferences: Preferences) -> None:
        """Tick what is on; the units by the maker's spelling."""
        for action, choice in zip(self._units, UNIT_CHOICES, strict=True):
            action.setText(in_words(unit_name(choice), preferences.words))
        self._units[UNIT_CHOICES.index(preferences.shown)].setChecked(True)
        self._themes[THEME_CHOICES.index(preferences.theme)].setChecked(True)


def _open(open_path: OpenPath, file: Path, _checked: bool = False) -> None:
    open_path(file)


def _take_off(recent: RecentFiles, file: Path, _checked: bool = False) -> None:
    recent.remove(file)
