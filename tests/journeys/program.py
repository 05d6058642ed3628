"""The program as a process of its own on a given screen, with a home that nobody else has."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from tests.journeys.screen import Screen, Spot

ROOT = Path(__file__).resolve().parents[2]
PATIENCE = 60.0  # seconds; only a fault takes so long


class Program:
    """Asks the watched window, and waits for what is to come true."""

    def __init__(self, process: subprocess.Popen[str], said: Path) -> None:
        self._process = process
        self.said = said

    def ask(self, **question: object) -> Any:
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write(json.dumps(question) + "\n")
        self._process.stdin.flush()
        line = self._process.stdout.readline()
        assert line, f"the program has ended; it said: {self.said.read_text()}"
        return json.loads(line)

    def state(self, *values: str) -> Any:
        return self.ask(ask="state", values=values)

    def place(self, view: str, u: float, v: float) -> Spot:
        """The pixel where a point of a view (mm) is."""
        x, y = self.ask(ask="place", view=view, point=(u, v))
        return (x, y)

    def text(self, dimension: str) -> Spot:
        x, y = self.ask(ask="text", dimension=dimension)
        return (x, y)

    def end(self) -> int:
        """The exit code, once the window has been closed."""
        return self._process.wait(PATIENCE)


def wait_until(true: Callable[[], object]) -> None:
    """Wait for what follows from a key or a click; the window answers in its own time."""
    give_up = time.monotonic() + PATIENCE
    while not true():
        assert time.monotonic() < give_up, "what was waited for did not come true"
        time.sleep(0.02)


@contextmanager
def open_program(file: Path, screen: Screen, home: Path) -> Iterator[Program]:
    """The window with a file, British and in millimetres; ended at the end whatever happens."""
    home.mkdir()
    own = {"HOME": str(home), "XDG_RUNTIME_DIR": str(home), "LC_ALL": "C.UTF-8", "CI": ""}
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("XDG_", "QT_", "LC_", "LANG"))}
    said = home / "said.txt"
    with said.open("w") as errors:
        process = subprocess.Popen(
            [sys.executable, "-m", "tests.journeys.watched", str(file)],
            env=kept | own | {"DISPLAY": screen.display, "QT_QPA_PLATFORM": "xcb"},
            cwd=ROOT,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=errors,
            text=True,
        )
    try:
        program = Program(process, said)
        wait_until(program.state)
        yield program
    finally:
        process.kill()
        process.communicate()


def command(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """The command line, in a process of its own without any screen."""
    return subprocess.run(
        [sys.executable, "-m", "app", *map(str, arguments)],
        cwd=ROOT,
        env={k: v for k, v in os.environ.items() if k != "DISPLAY"},
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
