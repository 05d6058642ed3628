"""Writing a folder of files that belong together, all of them or none.

Method: everything is written to a folder aside first, on the same file system, so that a full
disk shows before anything is touched.  A folder that does not exist yet comes into being by one
rename.  In one that does, other people's files are left alone: each file is exchanged by
renames, and each rename is undone if a later one fails.
"""

from __future__ import annotations

import contextlib
import os
import secrets
import shutil
import time
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path, PurePosixPath

from exporters.writing import ASIDE_PREFIX, refusal, sync_folder, writable_mode, write_new
from shared.errors import CannotWrite

# A folder aside that is older than this was left by a process that was killed.
_FORGOTTEN_AFTER_S = 3600.0


def write_folder(
    folder: Path, files: Mapping[str, bytes], *, stale: Iterable[str] = ()
) -> tuple[Path, ...]:
    """Put ``files`` (name with forward slashes -> bytes) into ``folder``; return their paths.

    ``stale`` names files of an earlier writing that go away with it.  Anything else in the
    folder stays.  Raises CannotWrite and leaves the folder as it was.
    """
    for name in (*files, *stale):
        pure = PurePosixPath(name)
        assert not pure.is_absolute(), f"{name} leaves the folder"
        assert ".." not in pure.parts, f"{name} leaves the folder"
    try:
        place = Path(os.path.realpath(folder))
        if place.exists():
            if not place.is_dir():
                raise CannotWrite(
                    "There is a file of that name.",
                    where=str(folder),
                    remedy="Choose another name for the folder.",
                )
            _forget_left_over(place)
            _exchange(place, files, [name for name in stale if name not in files])
        else:
            _create(place, files)
    except (OSError, ValueError) as error:
        raise refusal(error, folder) from error
    return tuple(folder / name for name in files)


def _create(place: Path, files: Mapping[str, bytes]) -> None:
    """Build the folder, and those above it that are missing, aside; one rename shows them all."""
    missing = place
    while not missing.parent.exists():
        missing = missing.parent
    aside = _folder_aside(missing.parent)
    try:
        _fill(aside / place.relative_to(missing), files)
        aside.rename(missing)
    except BaseException:
        shutil.rmtree(aside, ignore_errors=True)
        raise
    sync_folder(missing.parent)


def _exchange(place: Path, files: Mapping[str, bytes], stale: list[str]) -> None:
    for name in files:
        _refuse_clash(place, name)
    aside = _folder_aside(place)
    undo: list[Callable[[], object]] = []
    try:
        try:
            new, old = aside / "new", aside / "old"
            old.mkdir()
            _fill(new, files)
            for number, name in enumerate((*files, *stale)):
                target = place / name
                if os.path.lexists(target):
                    _move(target, old / str(number), undo)
                if name in files:
                    _make_folders(target.parent, undo)
                    _move(new / name, target, undo)
        except BaseException:
            for step in reversed(undo):
                with contextlib.suppress(OSError):
                    step()
            raise
    finally:
        shutil.rmtree(aside, ignore_errors=True)
    sync_folder(place)


def _refuse_clash(place: Path, name: str) -> None:
    for above in list(PurePosixPath(name).parents)[:-1]:
        between = place / above
        if between.exists() and not between.is_dir():
            raise CannotWrite(
                "There is a file where a folder has to go.",
                where=str(between),
                remedy="Move it away, or choose another folder.",
            )
    writable_mode(place / name)


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        write_new(path, data)


def _move(source: Path, target: Path, undo: list[Callable[[], object]]) -> None:
    source.rename(target)
    undo.append(lambda: target.rename(source))


def _make_folders(folder: Path, undo: list[Callable[[], object]]) -> None:
    if not folder.exists():
        _make_folders(folder.parent, undo)
        folder.mkdir()
        undo.append(folder.rmdir)


def _folder_aside(parent: Path) -> Path:
    aside = parent / f"{ASIDE_PREFIX}{secrets.token_hex(4)}"
    aside.mkdir()
    return aside


def _forget_left_over(place: Path) -> None:
    for path in place.glob(f"{ASIDE_PREFIX}*"):
        with contextlib.suppress(OSError):
            if time.time() - path.stat().st_mtime > _FORGOTTEN_AFTER_S:
                shutil.rmtree(path)
