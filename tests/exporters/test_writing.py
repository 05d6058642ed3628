"""Files arrive whole or not at all; failures are made by the system itself where it can be had."""

from __future__ import annotations

import errno
import os
import stat
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from exporters.writing import write_file
from shared.errors import CannotWrite

OLD = b"the old file\n"
NEW = b"the new file, somewhat longer\n" * 200

posix_only = pytest.mark.skipif(sys.platform == "win32", reason="POSIX permissions and links")


@contextmanager
def files_limited_to(size: int) -> Iterator[None]:
    """Let the kernel refuse files beyond ``size`` bytes: a real failure in mid-write (EFBIG)."""
    import resource

    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def names_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_has_the_bytes_and_the_usual_permissions(tmp_path: Path) -> None:
    target = tmp_path / "bench.settle"
    write_file(target, NEW)
    plain = tmp_path / "plain"
    plain.write_bytes(b"")
    assert target.read_bytes() == NEW
    assert target.stat().st_mode == plain.stat().st_mode
    assert names_in(tmp_path) == ["bench.settle", "plain"]


@posix_only
def test_an_old_file_keeps_its_permissions(tmp_path: Path) -> None:
    target = tmp_path / "bench.settle"
    target.write_bytes(OLD)
    target.chmod(0o640)
    write_file(target, NEW)
    assert target.read_bytes() == NEW
    assert stat.S_IMODE(target.stat().st_mode) == 0o640


@posix_only
def test_a_link_stays_and_what_it_points_to_is_replaced(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    target = tmp_path / "real" / "bench.settle"
    target.write_bytes(OLD)
    link = tmp_path / "link.settle"
    link.symlink_to(target)
    write_file(link, NEW)
    assert link.is_symlink()
    assert target.read_bytes() == NEW
    assert names_in(tmp_path / "real") == ["bench.settle"]


@posix_only
def test_a_write_that_the_system_breaks_off_leaves_the_old_file(tmp_path: Path) -> None:
    target = tmp_path / "bench.settle"
    target.write_bytes(OLD)
    with files_limited_to(1000), pytest.raises(CannotWrite) as caught:
        write_file(target, NEW)
    assert target.read_bytes() == OLD
    assert names_in(tmp_path) == ["bench.settle"]
    assert str(target) in str(caught.value)
    assert caught.value.remedy


@pytest.mark.parametrize("call", ["write", "fsync", "open", "replace"])
@pytest.mark.parametrize(
    ("number", "word"),
    [
        (errno.ENOSPC, "full"),
        (errno.EACCES, "not allowed"),
        (errno.EROFS, "read-only"),
        (errno.EBADF, "failed"),
    ],
)
def test_any_failing_step_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, number: int, word: str
) -> None:
    target = tmp_path / "bench.settle"
    target.write_bytes(OLD)

    def fail(*_args: object, **_more: object) -> None:
        raise OSError(number, os.strerror(number))

    with monkeypatch.context() as patch:
        patch.setattr(os, call, fail)
        with pytest.raises(CannotWrite) as caught:
            write_file(target, NEW)
    assert target.read_bytes() == OLD
    assert names_in(tmp_path) == ["bench.settle"]
    assert word in caught.value.what
    assert caught.value.remedy


def test_short_writes_are_carried_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """POSIX write(2) may take fewer bytes than it is given."""
    whole = os.write
    monkeypatch.setattr(os, "write", lambda handle, data: whole(handle, data[:7]))
    write_file(tmp_path / "x", NEW)
    assert (tmp_path / "x").read_bytes() == NEW


def test_an_interrupt_leaves_no_rubbish(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "bench.settle"
    target.write_bytes(OLD)

    def interrupt(_handle: int) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", interrupt)
        with pytest.raises(KeyboardInterrupt):
            write_file(target, NEW)
    assert target.read_bytes() == OLD
    assert names_in(tmp_path) == ["bench.settle"]


def test_a_folder_in_the_way(tmp_path: Path) -> None:
    (tmp_path / "bench.settle").mkdir()
    with pytest.raises(CannotWrite, match="folder of that name"):
        write_file(tmp_path / "bench.settle", NEW)
    assert names_in(tmp_path) == ["bench.settle"]


@posix_only
def test_a_write_protected_file_is_respected_even_for_root(tmp_path: Path) -> None:
    target = tmp_path / "bench.settle"
    target.write_bytes(OLD)
    target.chmod(0o444)
    with pytest.raises(CannotWrite, match="write-protected"):
        write_file(target, NEW)
    assert target.read_bytes() == OLD


@posix_only
def test_a_pipe_or_device_is_not_replaced(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    with pytest.raises(CannotWrite, match="not an ordinary file"):
        write_file(pipe, NEW)
    assert stat.S_ISFIFO(pipe.stat().st_mode)


@pytest.mark.parametrize("name", ["missing/bench.settle", "x" * 300, "nul\0byte", "file/bench"])
def test_impossible_names(tmp_path: Path, name: str) -> None:
    (tmp_path / "file").write_bytes(OLD)
    with pytest.raises(CannotWrite) as caught:
        write_file(tmp_path / name, NEW)
    assert caught.value.remedy
    assert names_in(tmp_path) == ["file"]
