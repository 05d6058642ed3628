"""The table of runners as it is read and typed: its sizes in words, its cells as texts."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from app.scene.preferences import Preferences
from geometry.bench.runner_numbers import PARAMETERS, means_something, runner_values
from geometry.design.spec import BenchSpec
from shared.errors import UnreadableValue
from shared.runner_rows import with_cell
from shared.runners import Runner
from shared.units import format_length

NAME, KIND, SOURCE = "name", "kind", "source"
_TEXTS = (NAME, KIND, SOURCE, "side_to")
_PLAIN = ("load", "travel")
_TITLES = {row.name.removeprefix("runner_"): (row.title, row.description) for row in PARAMETERS}

SIZES: tuple[tuple[str, str, str], ...] = (
    # field, title, what it means
    (NAME, "Name", "What you call these runners."),
    (KIND, "Kind", "A row of your own keeps the kind of the row that it was copied from."),
    *((field, title, about) for field, (title, about) in _TITLES.items() if field != KIND),
    (SOURCE, "From", "Where the numbers come from."),
)


def cell_text(row: Runner, field: str, preferences: Preferences) -> str:
    """A cell as it is shown; empty where runners of this kind have no such number."""
    if field not in (NAME, KIND, SOURCE) and not means_something(row, field):
        return ""
    value = getattr(row, field)
    if field in _TEXTS:
        return str(value)
    return f"{value:g}" if field in _PLAIN else format_length(value, preferences.shown)


def can_be_typed(row: Runner, field: str) -> bool:
    return field in (NAME, SOURCE) or (field != KIND and means_something(row, field))


def typed(
    row: Runner, field: str, text: str, preferences: Preferences, taken: Collection[str]
) -> Runner:
    """The row with a cell as typed.  What is left as it is shown stays, unrounded.

    Raises UnreadableValue, so for a name that is ``taken``.
    """
    if text.strip() == cell_text(row, field, preferences):
        return row
    changed = with_cell(row, field, text, preferences.shown)
    if field == NAME and changed.name in taken:
        raise UnreadableValue(f"There are runners called “{changed.name}” already.")
    return changed


def own_copy(row: Runner, taken: Sequence[str]) -> Runner:
    """The row under a name of its own that none of ``taken`` is."""
    stem = f"{row.name}, own"
    names = (stem, *(f"{stem} {number}" for number in range(2, len(taken) + 3)))
    return replace(row, name=next(name for name in names if name not in taken))


def is_used(spec: BenchSpec, row: Runner) -> bool:
    """Whether the runners of a bench are just those of a row."""
    return all(spec.value(name) == value for name, value in runner_values(row).items())
