"""Tries the mends of what has been found, a few milliseconds at a time, so no hand ever waits.

The findings themselves are told before; a mend is offered once it is known to cure and to spoil
nothing.
"""

from __future__ import annotations

from collections.abc import Generator
from time import perf_counter

from PySide6.QtCore import QObject, QTimer, Signal

from geometry.bench.bench import Bench
from geometry.design.finding import Finding

SLICE_MS = 12.0


class MendJob(QObject):
    """``done`` carries the findings with the mends worth offering."""

    done = Signal(object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._work: Generator[None, None, tuple[Finding, ...]] | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._go_on)

    @property
    def running(self) -> bool:
        return self._work is not None

    def start(self, bench: Bench, found: tuple[Finding, ...]) -> None:
        """Begin with these; what was being tried is given up."""
        from geometry.checks.all_checks import mends_in_steps  # not needed for the first picture

        self._work = mends_in_steps(bench, found)
        self._timer.start(0)

    def stop(self) -> None:
        """Give it up."""
        self._timer.stop()
        self._work = None

    def finish(self) -> None:
        """Try the rest at once, for a hand that asks for a mend now."""
        self._timer.stop()
        while self._work is not None:
            self._step()

    def _go_on(self) -> None:
        end = perf_counter() + SLICE_MS / 1000.0
        while self._work is not None and perf_counter() < end:
            self._step()
        if self._work is not None:
            self._timer.start(0)

    def _step(self) -> None:
        assert self._work is not None
        try:
            next(self._work)
        except StopIteration as stop:
            self._work = None
            self.done.emit(stop.value)
