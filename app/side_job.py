"""Work beside the window: a worker that gets frozen values and says how it went."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, QRunnable, QThreadPool, Signal

from shared.errors import MakerError


class SideJob(QObject):
    """Does one piece of work at a time.  ``done`` carries what came of it, ``refused`` an error to
    tell, ``failed`` a fault of the program."""

    done = Signal(object)
    refused = Signal(object)
    failed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)

    def start(self, work: Callable[[], object]) -> None:
        """Do it when what was started before is done."""
        self._pool.start(_Run(work, self))

    def wait(self) -> None:
        """Let a running job come to its end."""
        self._pool.waitForDone()


class _Run(QRunnable):
    def __init__(self, work: Callable[[], object], job: SideJob) -> None:
        super().__init__()
        self._work = work
        self._job = job

    def run(self) -> None:
        try:
            self._job.done.emit(self._work())
        except MakerError as error:
            self._job.refused.emit(error)
        except Exception as error:
            self._job.failed.emit(error)
