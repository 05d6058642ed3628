"""Looks into whether the bench goes together, a few milliseconds at a time, so no hand ever waits.

It begins when the work has rested a little and is given up as soon as the bench is another one.
"""

from __future__ import annotations

from collections.abc import Generator
from time import perf_counter
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from geometry.bench.bench import Bench

if TYPE_CHECKING:
    from geometry.checks.looked import Looked

REST_MS = 400
SLICE_MS = 12.0

LOOKING, TOGETHER, LOCKED = "goes together?", "goes together", "does not go together"


def state_of(looked: Looked | None) -> str:
    """What is known of a bench, in words; None for nothing yet."""
    if looked is None:
        return LOOKING
    return LOCKED if looked.assembly.locked else TOGETHER


class AssemblyJob(QObject):
    """``state_changed`` carries what is known, in words; ``done`` the bench and what was found."""

    state_changed = Signal(str)
    done = Signal(object, object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._bench: Bench | None = None
        self._work: Generator[None, None, Looked] | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._go_on)

    def start(self, bench: Bench) -> None:
        """Look into this bench, unless that is what is being done."""
        if self._bench == bench:
            return
        self._bench, self._work = bench, None
        self.state_changed.emit(LOOKING)
        self._timer.start(REST_MS)

    def stop(self) -> None:
        """Give it up; the next start begins anew."""
        self._timer.stop()
        self._bench = self._work = None

    def _go_on(self) -> None:
        if self._bench is None:
            return
        if self._work is None:
            from geometry.checks.looked import looked_in_steps  # not needed for the first picture

            self._work = looked_in_steps(self._bench)
        end = perf_counter() + SLICE_MS / 1000.0
        try:
            while perf_counter() < end:
                next(self._work)
        except StopIteration as stop:
            bench, self._bench, self._work = self._bench, None, None
            looked: Looked = stop.value
            self.state_changed.emit(state_of(looked))
            self.done.emit(bench, looked)
            return
        self._timer.start(0)
