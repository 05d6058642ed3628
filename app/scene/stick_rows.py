"""The rows of the story stick: every size of the bench, set or following, grouped by piece."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from functools import lru_cache

from app.scene.preferences import Preferences
from app.scene.wording import said, size_text, value_text
from geometry.bench.bench import Bench
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.derived import Derived
from geometry.design.parameter import Parameter, Value
from shared.words import in_words


class Standing(Enum):
    """What a size is; the words are those on the screen."""

    FREE = "free"  # the maker sets it
    DERIVED = "derived"  # it follows from others


@dataclass(frozen=True, slots=True)
class Heading:
    """A piece of the bench, over its sizes."""

    title: str


@dataclass(frozen=True, slots=True)
class StickRow:
    """One size.  ``value_text`` is as shown; ``note`` says what it is or what it follows from.

    Some that follow can be ``settable`` too, through what they follow.
    """

    name: str
    title: str
    group: str
    value_text: str
    standing: Standing
    unit: str
    note: str
    choices: tuple[str, ...] = ()
    settable: bool = True

    @property
    def edit_text(self) -> str:
        """What a maker begins from who types it anew: a size that follows without its brackets."""
        return self.value_text[1:-1] if self.standing is Standing.DERIVED else self.value_text

    @property
    def spoken(self) -> str:
        """The row in words, for a screen reader."""
        return f"{self.title}: {self.value_text}, {self.standing.value}"


Entry = Heading | StickRow


def stick_rows(bench: Bench, preferences: Preferences) -> tuple[StickRow, ...]:
    """What the maker sets and what follows from it, group by group."""
    free = [
        _free(row, bench.spec.value(row.name), preferences)
        for row in PARAMETERS
        if row.applies(bench.spec)
    ]
    derived = [_derived(row, preferences) for row in bench.derived]
    groups = list(dict.fromkeys(row.group for row in (*free, *derived)))
    order = {group: place for place, group in enumerate(groups)}
    return tuple(sorted((*free, *derived), key=lambda row: order[row.group]))


@lru_cache(maxsize=1024)  # most rows stay as they are from frame to frame
def _free(row: Parameter, value: Value, preferences: Preferences) -> StickRow:
    words = preferences.words
    return StickRow(
        row.name,
        in_words(row.title, words),
        in_words(row.group, words),
        value_text(row, value, preferences),
        Standing.FREE,
        row.unit,
        said(row.description, preferences),
        tuple(in_words(choice, words) for choice in row.choices),
    )


@lru_cache(maxsize=1024)
def _derived(row: Derived, preferences: Preferences) -> StickRow:
    words = preferences.words
    return StickRow(
        row.name,
        in_words(row.title, words),
        in_words(row.group, words),
        f"({size_text(row.value, row.unit, preferences)})",
        Standing.DERIVED,
        row.unit,
        said(f"Follows from {row.follows_from}.", preferences),
        settable=bool(row.through),
    )


def entries(rows: tuple[StickRow, ...], sought: str) -> tuple[Entry, ...]:
    """The rows whose names hold every word of ``sought``, or if there are none, whose choices or
    notes do; each group under its heading."""
    words = sought.casefold().split()
    found = [row for row in rows if _holds(_called(row), words)]
    found = found or [row for row in rows if _holds(f"{_called(row)} {_told(row)}", words)]
    under: list[Entry] = []
    group = None
    for row in found:
        if row.group != group:
            group = row.group
            under.append(Heading(group))
        under.append(row)
    return tuple(under)


def _called(row: StickRow) -> str:
    return f"{row.title} {row.group} {row.name} {row.standing.value}"


def _told(row: StickRow) -> str:
    return f"{' '.join(row.choices)} {row.note}"


def _holds(text: str, words: list[str]) -> bool:
    text = text.casefold()
    return all(word in text for word in words)
