"""A window of one's own for each test, with its settings and kept work in a temporary folder."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

if not (os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from app.main import application
from app.window.workplace import Workplace
from tests.app.hand import MouseHand
from tests.app.opening import open_window


class Answers:
    """Stands in for the file dialogs: the answers are set beforehand."""

    def __init__(self) -> None:
        self.next: Path | None = None

    def file(self, start: Path) -> Path | None:  # noqa: ARG002
        return self.next

    def target(self, suggestion: Path) -> Path | None:  # noqa: ARG002
        return self.next

    def folder(self, start: Path) -> Path | None:  # noqa: ARG002
        return self.next

    def table(self, start: Path) -> Path | None:  # noqa: ARG002
        return self.next

    def table_target(self, suggestion: Path) -> Path | None:  # noqa: ARG002
        return self.next


@pytest.fixture(scope="session")
def qapp_cls() -> type[QApplication]:
    return QApplication


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    return QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)


@pytest.fixture
def window(qtbot: QtBot, settings: QSettings, tmp_path: Path) -> Iterator[Workplace]:
    """The window at 1280 x 820 in millimetres, light, with a plain bench."""
    app = application()
    font = app.font()
    made = open_window(settings, tmp_path)
    made.ask = made.stages.ask = made.beside.ask = Answers()
    made.start_with(None)
    with qtbot.waitExposed(made.frame):
        made.frame.show()
    made.presenter.look_for_findings()
    yield made
    made.frame.close()
    made.frame.deleteLater()
    app.setFont(font)


@pytest.fixture
def hand(window: Workplace) -> MouseHand:
    return MouseHand(window.page.canvas)
