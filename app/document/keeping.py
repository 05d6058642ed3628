"""Work that is not saved yet, kept aside so that neither a crash nor closing loses it.

Each open window keeps one JSON file ``KEY.json`` beside a lock file ``KEY.lock``: title, path of
the project file (empty for a new bench) and its digest, time, and the project's text.  A lock
whose process is gone marks the file as left over, and the next start offers it.  What the maker
throws away is moved to ``thrown away`` beside it, of which the newest ``MOST_THROWN`` stay.
"""

from __future__ import annotations

import json
import uuid
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QLockFile

from exporters.writing import refusal, write_file

MOST_THROWN = 20


@dataclass(frozen=True, slots=True)
class Kept:
    """One piece of unsaved work.

    ``basis`` is the digest of the project file that it grew from, as it was on disk.
    """

    file: Path
    title: str
    path: str
    basis: str
    when: str  # local time, ISO 8601 to the minute
    text: str


class Keeper:
    """The folder of unsaved work, and the one file in it that belongs to this window."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._key = uuid.uuid4().hex
        self._lock: QLockFile | None = None

    @property
    def file(self) -> Path:
        return self._folder / f"{self._key}.json"

    def keep(self, title: str, path: Path | None, basis: str, text: str, now: datetime) -> None:
        """Write the work down; raises CannotWrite."""
        self._own()
        record = {
            "title": title,
            "path": str(path) if path else "",
            "basis": basis,
            "when": now.strftime("%Y-%m-%dT%H:%M"),
            "text": text,
        }
        write_file(self.file, json.dumps(record, ensure_ascii=True).encode("ascii"))

    def drop(self) -> None:
        """Nothing is unsaved any more."""
        self.file.unlink(missing_ok=True)

    def put_aside(self) -> Kept | None:
        """Leave what was kept for later, and keep the next work in a file of its own."""
        kept = _read(self.file)
        self.release()
        self._key = uuid.uuid4().hex
        return kept

    def release(self) -> None:
        """Let go of the lock, so that what is kept counts as left over."""
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None

    def left_over(self) -> tuple[Kept, ...]:
        """Work that no running window holds, newest first."""
        found = [
            kept
            for file in sorted(self._folder.glob("*.json"))
            if file != self.file and self._free(file) and (kept := _read(file))
        ]
        return tuple(sorted(found, key=lambda kept: kept.when, reverse=True))

    def forget(self, kept: Kept) -> None:
        """It has been taken up, and is kept under this window's own key now."""
        if kept.file != self.file:
            kept.file.unlink(missing_ok=True)

    def throw_away(self, kept: Kept) -> Kept:
        """Move it out of sight; the result can still be brought back."""
        bin_folder = self._folder / "thrown away"
        bin_folder.mkdir(parents=True, exist_ok=True)
        target = bin_folder / kept.file.name
        kept.file.replace(target)
        target.touch()  # by when it was thrown away, not by when it was worked on
        earlier = [file for file in _newest_first(bin_folder) if file != target]
        for old in earlier[MOST_THROWN - 1 :]:
            old.unlink(missing_ok=True)
        return replace(kept, file=target)

    def bring_back(self, thrown: Kept) -> Kept:
        target = self._folder / thrown.file.name
        thrown.file.replace(target)
        return replace(thrown, file=target)

    def _own(self) -> None:
        if self._lock is None:
            try:
                self._folder.mkdir(parents=True, exist_ok=True)
            except OSError as error:
                raise refusal(error, self._folder) from error
            self._lock = _lock(self.file)
            self._lock.tryLock(0)

    @staticmethod
    def _free(file: Path) -> bool:
        lock = _lock(file)
        if not lock.tryLock(0):
            return False
        lock.unlock()
        return True


def _lock(file: Path) -> QLockFile:
    """A lock that goes stale only when its process is gone, however long the work takes."""
    lock = QLockFile(str(file.with_suffix(".lock")))
    lock.setStaleLockTime(0)
    return lock


def _newest_first(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.json"), key=lambda file: file.stat().st_mtime, reverse=True)


def _read(file: Path) -> Kept | None:
    """What a file keeps; None when it is not one of ours or has been damaged."""
    try:
        record = json.loads(file.read_bytes())
        return Kept(
            file,
            str(record["title"]),
            str(record["path"]),
            str(record["basis"]),
            str(record["when"]),
            str(record["text"]),
        )
    except (OSError, ValueError, KeyError, TypeError):
        return None
