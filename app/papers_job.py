"""Writing the pack beside the window: a worker that gets frozen values and says how it went."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from geometry.design.project import Project
from shared.errors import MakerError
from shared.paper import Paper
from shared.units import Shown
from shared.words import Words


@dataclass(frozen=True, slots=True)
class PackOrder:
    """What is written, where, and how it is shown."""

    project: Project
    folder: Path
    paper: Paper
    shown: Shown
    words: Words
    third_angle: bool
    on: date


class PackJob(QObject):
    """Runs one order at a time.  ``written`` carries the paths, ``refused`` an error to tell."""

    written = Signal(object)
    refused = Signal(object)
    failed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)

    def start(self, order: PackOrder) -> None:
        self._pool.start(_Run(order, self))

    def wait(self) -> None:
        """Let a running job come to its end."""
        self._pool.waitForDone()


class _Run(QRunnable):
    def __init__(self, order: PackOrder, job: PackJob) -> None:
        super().__init__()
        self._order = order
        self._job = job

    def run(self) -> None:
        try:
            self._job.written.emit(_written(self._order))
        except MakerError as error:
            self._job.refused.emit(error)
        except Exception as error:
            self._job.failed.emit(error)


def _written(order: PackOrder) -> tuple[Path, ...]:
    from exporters.pack import PackOptions, write_pack  # the window starts without it

    options = PackOptions(
        paper=order.paper, shown=order.shown, words=order.words, third_angle=order.third_angle
    )
    return write_pack(order.project, order.folder, options, order.on)
