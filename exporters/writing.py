"""Writing files so that a failure leaves what was there before, and no rubbish.

Method: the bytes go to a new file in the same folder (a rename is only one step within a file
system), are flushed to the disk, and take the old file's place by a rename, which POSIX and
Windows both do as a whole (``os.replace``).  A folder of files is prepared aside in the same
way and then put in place by renames that can be undone one by one.
"""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import stat
from pathlib import Path

from shared.errors import CannotWrite

ASIDE_PREFIX = ".settlewright-"


def write_file(path: Path, data: bytes) -> None:
    """Put ``data`` at ``path``, wholly or not at all.

    A symbolic link is followed, so that the file it points to is replaced and the link stays;
    an old file's permissions are kept.  Raises CannotWrite and leaves the old file alone.
    """
    try:
        target = Path(os.path.realpath(path))
        mode = writable_mode(target)
        aside = target.with_name(f"{ASIDE_PREFIX}{secrets.token_hex(4)}")
        try:
            write_new(aside, data, mode)
            aside.replace(target)
        except BaseException:
            with contextlib.suppress(OSError):
                aside.unlink()
            raise
        sync_folder(target.parent)
    except (OSError, ValueError) as error:
        raise refusal(error, path) from error


def writable_mode(target: Path) -> int | None:
    """The permissions of the file at ``target``, None where nothing is yet.

    Raises CannotWrite for what must not be replaced: a folder, a device, a file that somebody
    has write-protected (a rename would not be stopped by that).
    """
    try:
        found = target.stat()
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(found.st_mode):
        raise CannotWrite(
            "There is a folder of that name.", where=str(target), remedy="Choose another name."
        )
    if not stat.S_ISREG(found.st_mode):
        raise CannotWrite(
            "That is not an ordinary file.", where=str(target), remedy="Choose another name."
        )
    if not found.st_mode & 0o222 or not os.access(target, os.W_OK):
        raise CannotWrite(
            "The file is write-protected.",
            where=str(target),
            remedy="Choose another name, or take the protection off.",
        )
    return stat.S_IMODE(found.st_mode)


def write_new(path: Path, data: bytes, mode: int | None = None) -> None:
    """Create ``path`` with ``data`` and flush it to the disk; OSError when it exists or fails."""
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags, 0o666)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]
        os.fsync(handle)
    finally:
        os.close(handle)
    if mode is not None:
        path.chmod(mode)


def sync_folder(folder: Path) -> None:
    """Flush a folder's list of names; where a system cannot, the rename still stands."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def refusal(error: OSError | ValueError, path: Path) -> CannotWrite:
    """What went wrong with ``path``, in words, with something to do about it."""
    number = error.errno if isinstance(error, OSError) else errno.EINVAL
    what, remedy = _TROUBLES.get(number or 0, (f"Writing failed ({error}).", _ELSEWHERE))
    return CannotWrite(what, where=str(path).replace("\0", "?"), remedy=remedy)


_ELSEWHERE = "Choose another place; what was there before is untouched."
_TROUBLES: dict[int, tuple[str, str]] = {
    errno.ENOSPC: ("The disk is full.", "Free some space or choose another disk."),
    errno.EDQUOT: ("Your share of the disk is used up.", "Free some space or choose another disk."),
    errno.EFBIG: ("The disk takes no file of this size.", _ELSEWHERE),
    errno.EACCES: (
        "Writing here is not allowed.",
        "Close the file in other programs, or choose another place.",
    ),
    errno.EPERM: ("Writing here is not allowed.", _ELSEWHERE),
    errno.EROFS: ("The disk is read-only.", _ELSEWHERE),
    errno.ENOENT: ("The folder does not exist.", "Make the folder first, or choose another place."),
    errno.ENOTDIR: ("A part of the path is a file, not a folder.", _ELSEWHERE),
    errno.ENAMETOOLONG: ("The name is too long.", "Choose a shorter name."),
    errno.ELOOP: ("The link points to itself.", _ELSEWHERE),
    errno.EINVAL: ("The name has characters that a file name cannot have.", "Choose another name."),
    errno.EIO: ("The disk reports a fault.", "Choose another disk, and look after this one."),
}
