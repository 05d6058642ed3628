"""A screen of one's own: an X server that nobody sees, a real pointer and keyboard, and pixels.

Places are pixels of that screen, x to the right and y down.
"""

from __future__ import annotations

import os
import subprocess
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager

import numpy as np
from numpy.typing import NDArray
from PIL import ImageGrab

Spot = tuple[float, float]
Shades = NDArray[np.uint8]

INK = 128
"""Darker than this is a line or a letter: between ink (about 40) and paper (about 248)."""
MOVES = 20


class Screen:
    """Everything goes through the X server, as it would from a desk."""

    def __init__(self, display: str) -> None:
        self.display = display

    def shades(self) -> Shades:
        """The whole screen as grey values, rows by columns, 0 black to 255 white."""
        return np.asarray(ImageGrab.grab(xdisplay=self.display).convert("L"))

    def move(self, at: Spot) -> None:
        self.do("mousemove", *_whole(at))

    def press(self, at: Spot) -> None:
        self.move(at)
        self.do("mousedown", "1")

    def pull(self, start: Spot, by: Spot) -> None:
        """Move the pressed pointer as a hand does, in many small moves."""
        for step in range(1, MOVES + 1):
            share = step / MOVES
            self.do("mousemove", *_whole((start[0] + by[0] * share, start[1] + by[1] * share)))
            time.sleep(0.01)

    def let_go(self) -> None:
        self.do("mouseup", "1")

    def click(self, at: Spot) -> None:
        self.press(at)
        self.let_go()

    def keys(self, *names: str) -> None:
        """Press keys by the names that X gives them, such as ``ctrl+s``."""
        self.do("key", "--delay", "30", *names)

    def type(self, text: str) -> None:
        self.do("type", "--delay", "30", text)

    def take_focus(self, title: str) -> None:
        """Give the keyboard to the window of that title; with no desktop here nobody else does."""
        found = self.do("search", "--sync", "--onlyvisible", "--name", title)
        self.do("windowfocus", "--sync", found.split()[-1])

    def do(self, *words: str) -> str:
        """One command to the pointer and keyboard; what it answers."""
        done = subprocess.run(
            ["xdotool", *words],
            env=os.environ | {"DISPLAY": self.display},
            check=True,
            capture_output=True,
            text=True,
            timeout=20,
        )
        return done.stdout


@contextmanager
def screen_of_ones_own(width: int = 1600, height: int = 1000) -> Iterator[Screen]:
    """A running X server with a free number; ended at the end."""
    reader, writer = os.pipe()
    size = f"{width}x{height}x24"
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(writer), "-screen", "0", size, "-nolisten", "tcp", "-noreset"],
        pass_fds=[writer],
        stderr=subprocess.DEVNULL,
    )
    os.close(writer)
    try:
        with os.fdopen(reader) as answer:
            number = answer.readline().strip()
        assert number, "the X server did not start"
        yield Screen(f":{number}")
    finally:
        server.terminate()
        server.wait(10)


def ink_share(shades: Shades, spots: Sequence[Spot], reach: int = 2) -> float:
    """Of these places, the share with ink within ``reach`` pixels."""
    found = 0
    for x, y in spots:
        column, row = round(x), round(y)
        around = shades[row - reach : row + reach + 1, column - reach : column + reach + 1]
        found += bool((around < INK).any())
    return found / len(spots)


def _whole(at: Spot) -> tuple[str, str]:
    return str(round(at[0])), str(round(at[1]))
