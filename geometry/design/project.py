"""A project: one bench, its brief, and the words that stand in the title block of its drawings.

The words follow the data fields of a title block after ISO 7200:2004 (legal owner,
identification number, revision, title, creator).  How a project is kept in a file is not
known here.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from geometry.design.brief import NO_BRIEF, Brief
from geometry.design.cutting_plane import Plane
from geometry.design.judging import AS_FOUND, Judging
from geometry.design.spec import BenchSpec
from shared.errors import UnreadableValue

LINE_LIMIT = 200
NOTES_LIMIT = 10_000

LINE_FIELDS = ("title", "place", "designer", "owner", "number", "revision")

# Control characters, lone halves of a surrogate pair, line and paragraph separators: none can
# be drawn on a sheet, and the halves cannot even be written to a file.
_UNWRITABLE = frozenset({"Cc", "Cs", "Zl", "Zp"})


@dataclass(frozen=True, slots=True)
class Project:
    """One bench with its title, the place it is made for, and who answers for it.

    ``title`` to ``revision`` are single lines of at most ``LINE_LIMIT`` characters; ``notes`` may
    have several lines, ``NOTES_LIMIT`` characters in all.  ``judging`` is how findings are taken,
    ``section`` where the maker has cut the bench through to look into it.
    Raises UnreadableValue, with the field's name in ``where``, for a text that cannot stand on a
    drawing.
    """

    spec: BenchSpec
    title: str = ""
    place: str = ""
    designer: str = ""
    owner: str = ""
    number: str = ""
    revision: str = ""
    notes: str = ""
    judging: Judging = AS_FOUND
    brief: Brief = NO_BRIEF
    section: Plane | None = None

    def __post_init__(self) -> None:
        for field in LINE_FIELDS:
            _check_text(field, getattr(self, field), LINE_LIMIT, allowed="")
        _check_text("notes", self.notes, NOTES_LIMIT, allowed="\n\t")


def _check_text(field: str, text: str, limit: int, allowed: str) -> None:
    if len(text) > limit:
        raise UnreadableValue(
            f"The text has {len(text)} characters, and there is room for {limit}.",
            where=field,
            remedy="Shorten it.",
        )
    for character in text:
        if character not in allowed and unicodedata.category(character) in _UNWRITABLE:
            raise UnreadableValue(
                f"The text has a character that cannot be drawn (U+{ord(character):04X}).",
                where=field,
                remedy="Take it out, or type the text again.",
            )
