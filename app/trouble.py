"""Faults of the program itself: written to a log that the maker can find, and never fatal.

An exception in a slot or an event goes through ``sys.excepthook``.  It is logged, the work is
kept, and a quiet message says so; the program goes on.
"""

from __future__ import annotations

import contextlib
import sys
import threading
import time
import traceback
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from types import TracebackType

LOG_NAME = "trouble.log"
AGAIN_AFTER_S = 5.0  # the same fault at every frame is one fault
LARGEST_LOG = 1_000_000  # bytes; an older log is put beside it once


class TroubleLog:
    """Catches what nobody caught; ``on_trouble`` keeps the work and tells the maker."""

    def __init__(self, folder: Path, on_trouble: Callable[[str], None]) -> None:
        self.file = folder / LOG_NAME
        self._on_trouble = on_trouble
        self._busy = False
        self._last = ""
        self._last_at = 0.0

    def install(self) -> None:
        """Take over from here; an interrupt from the keyboard still ends the program."""
        sys.excepthook = self.caught
        threading.excepthook = self._caught_in_thread

    def uninstall(self) -> None:
        sys.excepthook = sys.__excepthook__
        threading.excepthook = threading.__excepthook__

    def caught(
        self,
        kind: type[BaseException],
        error: BaseException,
        trace: TracebackType | None,
    ) -> None:
        """Write one fault down and say so.  A fault while doing that is only written down."""
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, error, trace)
            return
        text = "".join(traceback.format_exception(kind, error, trace))
        if text == self._last and time.monotonic() - self._last_at < AGAIN_AFTER_S:
            return
        self._last, self._last_at = text, time.monotonic()
        self._write(text)
        sys.stderr.write(text)
        if self._busy:
            return
        self._busy = True
        try:
            self._on_trouble(f"{kind.__name__}: {error}")
        except Exception:
            self._write(traceback.format_exc())
        finally:
            self._busy = False

    def _caught_in_thread(self, arguments: threading.ExceptHookArgs) -> None:
        error = arguments.exc_value or arguments.exc_type()
        self.caught(arguments.exc_type, error, arguments.exc_traceback)

    def _write(self, text: str) -> None:
        stamp = datetime.now().astimezone().strftime("%Y-%m-%d %H:%M:%S")
        with contextlib.suppress(OSError):
            self.file.parent.mkdir(parents=True, exist_ok=True)
            if self.file.exists() and self.file.stat().st_size > LARGEST_LOG:
                self.file.replace(self.file.with_suffix(".old.log"))
            with self.file.open("a", encoding="utf-8") as log:
                log.write(f"{stamp}\n{text}\n")
