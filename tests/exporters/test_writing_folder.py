"""A pack arrives whole or not at all, and touches nothing that it did not write."""

from __future__ import annotations

import errno
import os
import sys
import time
from pathlib import Path

import pytest

from exporters.writing_folder import write_folder
from shared.errors import CannotWrite

OLD = {"facts.json": b"old facts", "dxf/leg.dxf": b"old leg", "dxf/gone.dxf": b"old gone"}
NEW = {"facts.json": b"new facts", "dxf/leg.dxf": b"new leg", "meshes/leg.stl": b"new mesh"}


def contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


@pytest.fixture
def pack(tmp_path: Path) -> Path:
    """An old pack with a file of somebody else's in it."""
    folder = tmp_path / "pack"
    write_folder(folder, OLD)
    (folder / "dxf" / "mine.txt").write_bytes(b"mine")
    return folder


def test_a_new_folder_and_those_above_it(tmp_path: Path) -> None:
    folder = tmp_path / "a" / "b" / "pack"
    written = write_folder(folder, NEW)
    assert contents(tmp_path) == {f"a/b/pack/{name}": data for name, data in NEW.items()}
    assert written == tuple(folder / name for name in NEW)
    plain = tmp_path / "plain"
    plain.mkdir()
    assert folder.stat().st_mode == plain.stat().st_mode


def test_an_old_pack_is_exchanged_and_other_files_stay(pack: Path) -> None:
    write_folder(pack, NEW, stale=["dxf/gone.dxf", "dxf/leg.dxf", "dxf/never.dxf"])
    assert contents(pack) == {**NEW, "dxf/mine.txt": b"mine"}
    assert sorted(path.name for path in pack.iterdir()) == ["dxf", "facts.json", "meshes"]


@pytest.mark.parametrize("failing", range(8))
def test_a_rename_that_fails_anywhere_is_undone(
    pack: Path, monkeypatch: pytest.MonkeyPatch, failing: int
) -> None:
    """Two files to exchange, one new and one stale: six renames; none may stay half done."""
    before = contents(pack)
    rename = os.rename
    done = 0

    def sometimes(source: object, target: object) -> None:
        nonlocal done
        done += 1
        if done == failing + 1:
            raise OSError(errno.EACCES, os.strerror(errno.EACCES))
        rename(source, target)  # type: ignore[arg-type]

    with monkeypatch.context() as patch:
        patch.setattr(os, "rename", sometimes)
        if failing < 6:
            with pytest.raises(CannotWrite):
                write_folder(pack, NEW, stale=["dxf/gone.dxf"])
        else:
            write_folder(pack, NEW, stale=["dxf/gone.dxf"])
    after = contents(pack)
    assert after == (before if failing < 6 else {**NEW, "dxf/mine.txt": b"mine"})
    if failing < 6:
        assert sorted(path.name for path in pack.iterdir()) == ["dxf", "facts.json"]


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EROFS])
@pytest.mark.parametrize("fresh", [True, False])
def test_a_full_disk(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, fresh: bool
) -> None:
    folder = tmp_path / "out" / "pack"
    if not fresh:
        write_folder(folder, OLD)
    before = contents(tmp_path)
    folders = sorted(tmp_path.rglob("*"))
    written = 0
    write = os.write

    def until_full(handle: int, data: bytes) -> int:
        nonlocal written
        if written > 10:
            raise OSError(number, os.strerror(number))
        written += len(data)
        return write(handle, data)

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", until_full)
        with pytest.raises(CannotWrite):
            write_folder(folder, NEW)
    assert contents(tmp_path) == before
    assert sorted(tmp_path.rglob("*")) == folders


@pytest.mark.skipif(sys.platform == "win32", reason="needs a limit on the size of files")
def test_a_write_that_the_system_itself_breaks_off(pack: Path) -> None:
    import resource

    before = contents(pack)
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (2000, hard))
    try:
        with pytest.raises(CannotWrite):
            write_folder(pack, {**NEW, "drawings.pdf": b"x" * 5000})
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
    assert contents(pack) == before


def test_a_file_in_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "pack").write_bytes(b"a file")
    with pytest.raises(CannotWrite, match="a file of that name"):
        write_folder(tmp_path / "pack", NEW)
    with pytest.raises(CannotWrite, match="not a folder"):
        write_folder(tmp_path / "pack" / "inner", NEW)
    assert contents(tmp_path) == {"pack": b"a file"}


@pytest.mark.parametrize("clash", ["dxf", "facts.json/inner"])
def test_names_that_clash_inside(tmp_path: Path, clash: str) -> None:
    """A file named ``dxf``, a folder named ``facts.json``."""
    path = tmp_path / clash
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(b"somebody's")
    with pytest.raises(CannotWrite) as caught:
        write_folder(tmp_path, NEW)
    assert caught.value.remedy
    assert contents(tmp_path) == {clash: b"somebody's"}


def test_a_write_protected_file_in_the_pack(pack: Path) -> None:
    before = contents(pack)
    (pack / "facts.json").chmod(0o444)
    with pytest.raises(CannotWrite, match="write-protected"):
        write_folder(pack, NEW)
    assert contents(pack) == before


def test_what_a_killed_process_left_goes_with_the_next_writing(pack: Path) -> None:
    left, fresh = pack / ".settlewright-dead", pack / ".settlewright-live"
    for folder in (left, fresh):
        folder.mkdir()
        (folder / "x").write_bytes(b"x")
    long_ago = time.time() - 7200.0
    os.utime(left, (long_ago, long_ago))
    write_folder(pack, NEW)
    assert not left.exists()
    assert fresh.exists()


def test_names_may_not_leave_the_folder(tmp_path: Path) -> None:
    with pytest.raises(AssertionError):
        write_folder(tmp_path / "pack", {"../escaped": b""})
