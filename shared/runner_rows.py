"""A maker's own runners from a table of comma-separated values.

The first line names the columns, in any order: those of ``shared.runners.Runner``.  Lengths may
carry a unit (``12.7``, ``1/2 in``, ``5 cm``); a bare number is millimetres.  An empty cell is 0, an
empty ``side_to`` the outside.  ``name``, ``kind``, ``side``, ``below``, ``above``, ``shortest`` and
``longest`` must be there.  Empty lines and lines that begin with ``#`` are passed over.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping, Sequence
from dataclasses import asdict, fields, replace

from shared.errors import MakerError, UnreadableValue
from shared.runners import RUNNER_KINDS, TO_INSIDE, TO_OUTSIDE, UNDER, WOODEN, Runner
from shared.units import SHOWN_MM, Shown, read_length

_COLUMNS = tuple(field.name for field in fields(Runner))
_TEXTS = ("name", "kind", "side_to", "source")
_PLAIN = ("load", "travel")  # kg and percent
_LENGTHS = tuple(name for name in _COLUMNS if name not in (*_TEXTS, *_PLAIN))
_NEEDED = ("name", "kind", "side", "below", "above", "shortest", "longest")
_UNDER_ONLY = ("recess", "notch_width", "notch_height", "bore_diameter")
_LONGEST_TEXT = 1_000_000
_OWN_SOURCE = "the maker's own table"


def read_runner_rows(text: str) -> tuple[Runner, ...]:
    """The rows of a table; UnreadableValue, saying the line and the column, for a bad one."""
    if len(text) > _LONGEST_TEXT:
        raise UnreadableValue("The table is longer than any list of runners.")
    try:
        lines = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"))))
    except csv.Error as error:
        raise UnreadableValue(f"This is no table ({error}).") from error
    numbered = [
        (number, [cell.strip() for cell in line])
        for number, line in enumerate(lines, 1)
        if any(cell.strip() for cell in line) and not line[0].lstrip().startswith("#")
    ]
    if not numbered:
        raise UnreadableValue("The table is empty.", remedy=f"Its columns are {_listed(_COLUMNS)}.")
    head = _columns(*numbered[0])
    rows = [_row(head, number, cells) for number, cells in numbered[1:]]
    _check_once(rows)
    return tuple(row for _, row in rows)


def runner_table(rows: Sequence[Runner]) -> str:
    """The table of ``rows``, which ``read_runner_rows`` reads back as they are."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(_COLUMNS)
    writer.writerows([_cell(value) for value in asdict(row).values()] for row in rows)
    return text.getvalue()


def _cell(value: str | float) -> str:
    return value if isinstance(value, str) else f"{value:.9g}"


def with_cell(row: Runner, name: str, text: str, shown: Shown) -> Runner:
    """A row with one of its columns as written; a bare length is in the shown unit.

    UnreadableValue, saying the column, for what no runner can have.
    """
    text = text.strip()
    value: str | float
    match name:
        case "name":
            value = _name(text)
        case "kind":
            value = _one_of(text, RUNNER_KINDS, name)
        case "side_to":
            value = _one_of(text or TO_OUTSIDE, (TO_OUTSIDE, TO_INSIDE), name)
        case "source":
            value = text or _OWN_SOURCE
        case _:
            value = _number({name: text}, name, shown)
    changed = replace(row, **{name: value})  # type: ignore[arg-type]
    _check(changed)
    return changed


def _columns(number: int, cells: list[str]) -> list[str]:
    names = [cell.casefold() for cell in cells]
    for name in names:
        if name not in _COLUMNS:
            raise UnreadableValue(
                f"There is no column called {name[:40]!r}.",
                where=f"line {number}",
                remedy=f"The columns are {_listed(_COLUMNS)}.",
            )
        if names.count(name) > 1:
            raise UnreadableValue(f"The column {name} is there twice.", where=f"line {number}")
    missing = [name for name in _NEEDED if name not in names]
    if missing:
        raise UnreadableValue(
            f"The column {missing[0]} is missing.",
            where=f"line {number}",
            remedy="The first line names the columns.",
        )
    return names


def _row(head: list[str], number: int, cells: list[str]) -> tuple[int, Runner]:
    if len(cells) != len(head):
        raise UnreadableValue(
            f"There are {len(cells)} cells under {len(head)} columns.",
            where=f"line {number}",
            remedy="A cell with a comma in it stands in quotation marks.",
        )
    found = dict(zip(head, cells, strict=True))
    try:
        texts = {name: found.get(name, "") for name in _TEXTS}
        kind = _one_of(texts["kind"], RUNNER_KINDS, "kind")
        sizes = {name: _number(found, name, SHOWN_MM) for name in (*_LENGTHS, *_PLAIN)}
        row = Runner(
            name=_name(texts["name"]),
            kind=kind,
            side_to=_one_of(texts["side_to"] or TO_OUTSIDE, (TO_OUTSIDE, TO_INSIDE), "side_to"),
            source=texts["source"] or _OWN_SOURCE,
            **sizes,
        )
        _check(row)
    except MakerError as error:
        raise UnreadableValue(
            error.what, where=f"line {number}, {error.where}", remedy=error.remedy
        ) from error
    return number, row


def _name(text: str) -> str:
    if not text or len(text) > 80:
        raise UnreadableValue("A runner needs a name of 1 to 80 characters.", where="name")
    return text


def _one_of(text: str, choices: tuple[str, ...], column: str) -> str:
    for choice in choices:
        if text.casefold() == choice:
            return choice
    raise UnreadableValue(
        f"{text[:40]!r} is not one of its words.", where=column, remedy=f"Write {_listed(choices)}."
    )


def _number(found: Mapping[str, str], name: str, shown: Shown) -> float:
    text = found.get(name, "")
    if not text:
        if name in _NEEDED:
            raise UnreadableValue("It is empty.", where=name, remedy="Write a length.")
        return 0.0
    try:
        if name in _LENGTHS:
            return read_length(text, shown)
        value = float(text)
    except (UnreadableValue, ValueError) as error:
        remedy = error.remedy if isinstance(error, UnreadableValue) else "Write a plain number."
        raise UnreadableValue(f"{text[:40]!r} cannot be read.", where=name, remedy=remedy) from None
    if not 0.0 <= value < 1000.0:
        raise UnreadableValue(f"{text[:40]} is no possible {name}.", where=name)
    return value


def _check(row: Runner) -> None:
    """What no real runner can be."""
    if not 0.0 < row.shortest <= row.longest:
        raise UnreadableValue(
            f"The shortest is {{{row.shortest:.6g} mm}} and the longest {{{row.longest:.6g} mm}}.",
            where="shortest",
            remedy="The shortest length comes first, and it is more than nothing.",
        )
    if row.kind != UNDER:
        for name in _UNDER_ONLY:
            if getattr(row, name):
                raise UnreadableValue(
                    f"Only an under-mounted runner has a {name.replace('_', ' ')}.", where=name
                )
    if row.kind == WOODEN and not row.strip_width > row.side:
        raise UnreadableValue(
            "A wooden runner that is no wider than the clearance carries nothing.",
            where="strip_width",
        )


def _check_once(rows: list[tuple[int, Runner]]) -> None:
    seen: dict[str, int] = {}
    for number, row in rows:
        if row.name in seen:
            raise UnreadableValue(
                f"{row.name!r} is there already, on line {seen[row.name]}.", where=f"line {number}"
            )
        seen[row.name] = number


def _listed(words: tuple[str, ...]) -> str:
    return ", ".join(words)
