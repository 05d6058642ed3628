"""Faults of the program itself: nothing is lost and the program goes on."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import textwrap
import time
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings, QTimer
from pytestqt.qtbot import QtBot

import app
from app.trouble import TroubleLog
from app.window.workplace import Workplace
from tests.app.opening import open_window

ROOT = Path(app.__file__).parents[1]


def test_an_exception_in_a_slot_keeps_the_work_and_goes_on(
    window: Workplace, tmp_path: Path, qtbot: QtBot
) -> None:
    log = TroubleLog(tmp_path, window.trouble)
    window.desk.set_values({"length": 1321.0})
    with qtbot.captureExceptions() as caught:
        QTimer.singleShot(0, _fail)
        qtbot.waitUntil(lambda: len(caught) == 1)
    log.caught(*caught[0])
    assert "Something failed" in window.notices.text
    assert "kept" in window.notices.text
    assert "a fault on purpose" in (tmp_path / "trouble.log").read_text(encoding="utf-8")
    (kept,) = (tmp_path / "kept").glob("*.json")
    assert "1321" in json.loads(kept.read_text())["text"]
    window.desk.set_values({"length": 1322.0})
    assert window.page.canvas.view.model.spec.number("length") == 1322.0


def _fail(*_arguments: object) -> None:
    raise RuntimeError("a fault on purpose")


def test_trouble_while_telling_of_trouble_is_only_logged(tmp_path: Path) -> None:
    log = TroubleLog(tmp_path, lambda _what: 1 / 0)
    try:
        _fail()
    except RuntimeError as error:
        log.caught(RuntimeError, error, error.__traceback__)
    text = (tmp_path / "trouble.log").read_text(encoding="utf-8")
    assert "a fault on purpose" in text
    assert "ZeroDivisionError" in text


CHILD = """
    import os, sys
    from pathlib import Path
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from PySide6.QtCore import QSettings, QTimer
    from app.main import application
    from tests.app.opening import open_window
    folder = Path(sys.argv[1])
    app = application()
    settings = QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat)
    window = open_window(settings, folder)
    window.frame.show()
    window.start_with(None)
    window.desk.set_values({"length": 1888.0})
    sys.exit(app.exec())
"""


@pytest.mark.skipif(os.name != "posix", reason="kill")
def test_work_of_a_killed_process_is_offered_again(
    tmp_path: Path, settings: QSettings, qtbot: QtBot
) -> None:
    child = subprocess.Popen(
        [sys.executable, "-c", textwrap.dedent(CHILD), str(tmp_path)], cwd=ROOT
    )
    try:
        wait_for(lambda: any((tmp_path / "kept").glob("*.json")))
        running = open_window(settings, tmp_path)
        qtbot.addWidget(running.frame)
        running.start_with(None)
        assert "was not saved" not in running.notices.text  # it is still being worked on
    finally:
        child.send_signal(signal.SIGKILL)
        child.wait()
    after = open_window(settings, tmp_path)
    qtbot.addWidget(after.frame)
    after.start_with(None)
    assert "was not saved" in after.notices.text
    after.notices.buttons()["Take it up again"].click()
    assert after.desk.spec.number("length") == 1888.0
    assert after.frame.isWindowModified()


def wait_for(true) -> None:
    end = time.monotonic() + 30
    while not true():
        assert time.monotonic() < end
        time.sleep(0.05)


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None cannot be miscounted any more")
def test_none_is_counted_right(window: Workplace) -> None:
    """A broken binding loses a reference to None with each painted line, and crashes later."""
    window.page.canvas.grab()
    before = sys.getrefcount(None)
    for _ in range(200):
        window.page.canvas.update()
        window.page.canvas.repaint()
    assert abs(sys.getrefcount(None) - before) < 100


def test_a_drawing_that_fails_says_so_and_undo_still_works(
    window: Workplace, monkeypatch: pytest.MonkeyPatch
) -> None:
    caught: list[str] = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, *_: caught.append(kind.__name__))
    window.desk.set_values({"length": 1300.0})
    monkeypatch.setattr("app.canvas.sheet_painter.Picture", _fail)
    picture = window.page.canvas.grab().toImage()
    assert caught
    assert len({picture.pixel(x, picture.height() // 2) for x in range(picture.width())}) > 3
    monkeypatch.undo()
    window.commands["undo"].trigger()
    assert window.desk.spec.number("length") == 1200.0


def test_a_fault_at_every_frame_is_told_once(tmp_path: Path) -> None:
    told: list[str] = []
    log = TroubleLog(tmp_path, told.append)
    for _ in range(50):
        try:
            _fail()
        except RuntimeError as error:
            log.caught(RuntimeError, error, error.__traceback__)
    assert len(told) == 1
    assert (tmp_path / "trouble.log").read_text(encoding="utf-8").count("on purpose") <= 3
