"""Errors addressed to the maker: what is wrong, where, and what would be right.

Three sorts of trouble are kept apart in this program.  Wrong input raises one of these
errors; a poor design is a finding, returned as data; our own mistake is an assertion.
"""

from __future__ import annotations


class MakerError(Exception):
    """Something the maker can put right.

    ``what`` is a full sentence with the number in it, ``where`` names the value, part or
    file, ``remedy`` says what to do.  ``str(error)`` is all of it on one line.
    """

    def __init__(self, what: str, *, where: str = "", remedy: str = "") -> None:
        super().__init__(what, where, remedy)
        self.what = what
        self.where = where
        self.remedy = remedy

    def __str__(self) -> str:
        head = f"{self.where}: {self.what}" if self.where else self.what
        return f"{head} {self.remedy}" if self.remedy else head


class UnreadableValue(MakerError):
    """A text that is no length, angle, number or choice."""


class ValueOutOfRange(MakerError):
    """A value outside what can be built; ``limit`` is the nearest value that can be."""

    def __init__(
        self, what: str, *, where: str = "", remedy: str = "", limit: float | None = None
    ) -> None:
        super().__init__(what, where=where, remedy=remedy)
        self.limit = limit


class UnknownName(MakerError):
    """A parameter, part or material that does not exist."""


class CannotBuild(MakerError):
    """Numbers that are each in range but make no bench together."""


class BadProjectFile(MakerError):
    """A project file that cannot be read; the file itself is left as it was."""


class CannotWrite(MakerError):
    """A file or folder that cannot be written; nothing half-written is left behind."""
