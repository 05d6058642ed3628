"""The started program as a process of its own: it comes up, shows the bench, and ends quietly."""

from __future__ import annotations

import os
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

import app
from app.window.samples import sample_files

ROOT = Path(app.__file__).parents[1]

CHILD = """
    import sys
    from PySide6.QtCore import QStandardPaths, QTimer
    from PySide6.QtGui import QFileOpenEvent
    QStandardPaths.setTestModeEnabled(True)
    import app.main
    from app.window.frame import Frame
    furnish = app.main.Start.furnish
    def furnish_and_look(start):
        assert start.frame.isVisible()  # the window stands before the engine is loaded
        assert "numpy" not in sys.modules
        furnish(start)
        QTimer.singleShot(300, lambda: look(start))
    def look(start):
        place = start.frame.inhabitant
        if len(sys.argv) > 2:
            app.main.application().sendEvent(start.frame, QFileOpenEvent(sys.argv.pop()))
        print(start.frame.windowTitle().split("[")[0])
        print(len(place.desk.model.bench.parts), place.page.canvas.isVisible(), place.notices.text)
        start.frame.close()
    app.main.Start.furnish = furnish_and_look
    from app.__main__ import main
    sys.exit(main(sys.argv[1:2]))
"""


def start(*arguments: str, home: Path) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "HOME": str(home)}
    environment |= {"XDG_STATE_HOME": str(home), "XDG_CONFIG_HOME": str(home)}
    return subprocess.run(
        [sys.executable, "-c", textwrap.dedent(CHILD), *arguments],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


def noise(stderr: str) -> list[str]:
    return [line for line in stderr.splitlines() if "propagateSizeHints" not in line]


def test_it_opens_a_file_and_ends_quietly(tmp_path: Path) -> None:
    sample = sample_files()[0]
    ended = start(str(sample), home=tmp_path)
    assert ended.returncode == 0, ended.stderr
    assert noise(ended.stderr) == []
    title, facts = ended.stdout.splitlines()
    assert title == sample.stem
    assert int(facts.split()[0]) > 5
    assert facts.split()[1] == "True"


@pytest.mark.parametrize("name", ["missing.settle", "odd\nname.settle"])
def test_a_file_that_is_not_there_is_said_in_the_window(tmp_path: Path, name: str) -> None:
    ended = start(str(tmp_path / name), home=tmp_path)
    assert ended.returncode == 0, ended.stderr
    assert noise(ended.stderr) == []
    assert "cannot be opened" in ended.stdout


def test_a_file_that_the_desktop_hands_over_is_opened(tmp_path: Path) -> None:
    """As a Mac does: not by an argument but by an event."""
    first, second = sample_files()[:2]
    ended = start(str(first), str(second), home=tmp_path)
    assert ended.returncode == 0, ended.stderr
    assert ended.stdout.splitlines()[0] == second.stem
