"""Notices take turns: none that matters goes unread."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from app.document.keeping import Keeper
from exporters.project_writing import project_bytes
from geometry.bench.catalogue import default_spec
from geometry.design.project import Project
from tests.app.opening import open_window


def test_a_file_that_cannot_be_opened_is_said_before_work_is_offered(
    tmp_path: Path, settings: QSettings, qtbot: QtBot
) -> None:
    earlier = Keeper(tmp_path / "kept")
    text = project_bytes(Project(default_spec(), "Left over")).decode()
    earlier.keep("Left over", None, "", text, datetime(2025, 3, 4, 5, 6))  # noqa: DTZ001
    earlier.release()
    newer = tmp_path / "newer.settle"
    newer.write_text(text.replace('"version": ', '"version": 9'))
    window = open_window(settings, tmp_path)
    qtbot.addWidget(window.frame)
    window.start_with(newer)
    assert "newer Settlewright" in window.notices.text
    window.notices.buttons()["Put away"].click()
    assert "was not saved" in window.notices.text
    assert "Take it up again" in window.notices.buttons()
