"""Project files: a bench with its title block, as JSON text with the suffix ``.settle``.

The file, field by field
------------------------
UTF-8 text, one JSON object; every name at most once; no NaN or Infinity; at most SIZE_LIMIT bytes.

========== ======= ============================================================================
field      type    meaning
========== ======= ============================================================================
format     text    always ``settlewright bench``: what the file is
version    number  the version of this table that the file follows, a whole number
title      text    what the bench is called, on the drawings and in the window
place      text    where it is going to stand
designer   text    who made the drawing (ISO 7200: creator)
owner      text    whose drawing it is (ISO 7200: legal owner)
number     text    the drawing's number (ISO 7200: identification number)
revision   text    the drawing's revision (ISO 7200: revision index)
notes      text    anything else; may have several lines
brief      object  name -> object with ``value`` and ``unit``: what the bench is for, where it has
                   been said; left out where nothing has
parameters object  name -> object with ``value`` and ``unit``, in the order of the catalogue
limits     object  name -> object with ``value`` and ``unit``: limits that the maker has changed
set_aside  list    objects with ``check``, ``parts`` (a list of names), ``reason``, and where they
                   are known ``amount`` (a number) and ``level``: findings that the maker has looked
                   at and does not mind
========== ======= ============================================================================

``format``, ``version`` and ``parameters`` must be there; a text that is missing is empty, and so
are ``limits`` and ``set_aside``, which are written only when there are any.  A parameter's ``unit``
is ``mm``, ``deg``, ``count``, ``choice`` or ``text``, the same as in the catalogue, and its
``value`` a number, for a choice one of its words, or a text.  A parameter that is missing has the
catalogue's default.  A name that this version does not know is an error and is not passed over:
saving would lose it.

The brief
---------
A value is written where it differs from what it is when nothing has been said (0, an empty text,
the first of its words, shoes of 25 mm, 20 °C); one that is missing is that.

============= ====== ============================================================================
name          unit   meaning
============= ====== ============================================================================
who           choice who sits: nobody in particular, men, women, men and women, a person
share         choice how many of a group it is to suit: 90, 98 or 50 of 100
person        text   the person's name
lower_leg     mm     of the person, floor to the hollow of the knee, barefoot
upper_leg     mm     of the person, back to the hollow of the knee
shoulders     mm     of the person, across
weight        kg     of the person
shoes         mm     thickness of the soles
use           choice a short sit, a long sit, standing up with weak knees
persons       count  how many sit at once
load          kg     a single load that it must bear
standard      choice a standard that it is held to: none, or ADA 2010, 903
room_length   mm     what its place leaves along it
room_depth    mm     and in front of the wall
room_height   mm     and above the floor
door_width    mm     clear, of the narrowest door on the way
door_height   mm     clear
stair_width   mm     clear, before the stair's corner
landing_depth mm     clear, after the corner
stair_height  mm     headroom at the corner
humidity_low  %      relative humidity of the driest air
humidity_high %      and of the dampest
temperature   °C     of the room
============= ====== ============================================================================

Versions
--------
1. The first.
2. ``limits``, ``set_aside`` and ``brief``.  A file that has none of them is written as version 1,
   with the same bytes as before.
3. The ``amount`` and the ``level`` that a finding was set aside with.  A file without them is
   written as version 2.

Reading and writing are each other's inverse: what is written reads back equal, and what was
written by this version is written again with the same bytes.
"""

from __future__ import annotations

import difflib
import json
import math
import stat
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, NoReturn

from exporters.writing import write_file
from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from geometry.bench.limits import set_values
from geometry.checks.limit_rows import BY_NAME as LIMITS
from geometry.design.brief import NO_BRIEF, Brief, BriefRow, row_of
from geometry.design.brief import ROWS as BRIEF_ROWS
from geometry.design.judging import AS_FOUND, Judging, SetAside
from geometry.design.parameter import Parameter, Value
from geometry.design.project import LINE_FIELDS, Project
from shared.errors import BadProjectFile, MakerError

SUFFIX = ".settle"
FORMAT = "settlewright bench"
VERSION = 3
_BEFORE_JUDGING = 1
_BEFORE_AMOUNTS = 2
NOT_OURS = "This is not a project of Settlewright."
SIZE_LIMIT = 4_000_000

_TEXTS = (*LINE_FIELDS, "notes")
_FIELDS = ("format", "version", *_TEXTS, "brief", "parameters", "limits", "set_aside")
_ANOTHER = "Open another file; this one is left as it is."


def load(path: Path) -> Project:
    """Read a project file; BadProjectFile, naming it, if it is none or makes no bench."""
    name = str(path).replace("\0", "?")
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            raise BadProjectFile("This is not a file.", where=name, remedy=_ANOTHER)
        with path.open("rb") as file:
            data = file.read(SIZE_LIMIT + 1)
    except FileNotFoundError as error:
        raise BadProjectFile(
            "There is no such file.", where=name, remedy="Look whether it was moved or renamed."
        ) from error
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else str(error)
        raise BadProjectFile(
            f"The file cannot be read ({reason}).", where=name, remedy=_ANOTHER
        ) from error
    return read_project(data, name)


def save(project: Project, path: Path) -> None:
    """Write a project file, wholly or not at all; CannotWrite if it cannot be."""
    write_file(path, project_bytes(project))


def project_bytes(project: Project) -> bytes:
    """The file's content; the same project gives the same bytes."""
    judging = project.judging
    version = _BEFORE_JUDGING
    if judging != AS_FOUND or not project.brief.blank:
        version = _BEFORE_AMOUNTS
    if any(one.amount is not None or one.level for one in judging.set_aside):
        version = VERSION
    head: dict[str, object] = {"format": FORMAT, "version": version}
    head |= {field: getattr(project, field) for field in _TEXTS}
    lines = [f"  {_json(field)}: {_json(value)}," for field, value in head.items()]
    rows = [
        f"    {_json(row.name)}: {_json(_entry(row, project.spec.value(row.name)))}"
        for row in PARAMETERS
    ]
    blocks = [_block("parameters", "{", rows, "}"), *_judging_blocks(judging)]
    text = "\n".join(["{", *lines, *_brief_lines(project.brief), ",\n".join(blocks), "}", ""])
    return text.encode("utf-8")


def _block(name: str, opening: str, rows: list[str], closing: str) -> str:
    return "\n".join([f"  {_json(name)}: {opening}", ",\n".join(rows), f"  {closing}"])


def _judging_blocks(judging: Judging) -> list[str]:
    blocks = []
    if judging.limits:
        rows = [
            f"    {_json(name)}: {_json({'value': value, 'unit': LIMITS[name].unit})}"
            for name, value in judging.limits
        ]
        blocks.append(_block("limits", "{", rows, "}"))
    if judging.set_aside:
        rows = [f"    {_json(_aside_entry(one))}" for one in judging.set_aside]
        blocks.append(_block("set_aside", "[", rows, "]"))
    return blocks


def _aside_entry(one: SetAside) -> dict[str, object]:
    entry: dict[str, object] = {"check": one.check, "parts": list(one.parts), "reason": one.reason}
    if one.amount is not None:
        entry["amount"] = one.amount
    return entry | {"level": one.level} if one.level else entry


def read_project(data: bytes, name: str = "") -> Project:
    """The project in a file's content; BadProjectFile, saying ``name``, if it is none."""
    try:
        return _project(_parsed(data))
    except MakerError as error:
        where = f"{name}, {error.where}" if name and error.where else name or error.where
        raise BadProjectFile(error.what, where=where, remedy=error.remedy or _ANOTHER) from error


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def _entry(row: Parameter | BriefRow, value: Value) -> dict[str, object]:
    if isinstance(value, float) and value == round(value):
        return {"value": round(value), "unit": row.unit}
    return {"value": value, "unit": row.unit}


def _brief_lines(brief: Brief) -> list[str]:
    """What has been said; no lines at all where nothing has."""
    rows = []
    for row in BRIEF_ROWS:
        value = getattr(brief, row.name)
        if value != getattr(NO_BRIEF, row.name):
            rows.append(f"    {_json(row.name)}: {_json(_entry(row, value))}")
    return ['  "brief": {', ",\n".join(rows), "  },"] if rows else []


def _parsed(data: bytes) -> Any:
    if len(data) > SIZE_LIMIT:
        _refuse(f"The file is larger than any project ({SIZE_LIMIT // 1_000_000} MB).")
    try:
        # An editor may have put a byte order mark in front.
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        _refuse("The file is not text, or not in UTF-8.")
    if not text.strip():
        _refuse("The file is empty.")
    try:
        return json.loads(text, object_pairs_hook=_once, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        if error.pos == 0:
            _refuse(NOT_OURS)  # another sort of text altogether
        _refuse(
            f"The text breaks off or is damaged at line {error.lineno}, column {error.colno}.",
            remedy="Open an earlier copy of the file.",
        )
    except RecursionError:
        _refuse("The file is nested deeper than any project.")
    except ValueError:
        _refuse("A number in the file is longer than any size.")


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            _refuse(f"{_shown(name)} is there twice.", remedy="Leave one of the two.")
        found[name] = value
    return found


def _no_constant(word: str) -> NoReturn:
    _refuse(f"{word} is not a size.")


def _project(content: Any) -> Project:
    fields = _object(content, "the file")
    if fields.get("format") != FORMAT:
        _refuse(NOT_OURS)
    version = fields.get("version")
    if type(version) is not int or version < 1:
        _refuse("The file does not say which version it is.", where="version")
    if version > VERSION:
        _refuse(
            "The file was written by a newer Settlewright "
            f"(its version is {_shown(version)}, and this program reads up to {VERSION}).",
            remedy="Open it with the newer program.",
        )
    _only(fields, _FIELDS, "the file")
    if "parameters" not in fields:
        _refuse("The file has no parameters.", where="parameters")
    values = _values(_object(fields["parameters"], "parameters"))
    brief = _brief(_object(fields.get("brief", {}), "brief"))
    judging = _judging(fields.get("limits", {}), fields.get("set_aside", []))
    return Project(
        set_values(default_spec(), values),
        **{field: _text(field, fields.get(field, "")) for field in _TEXTS},
        judging=judging,
        brief=brief,
    )


def _brief(rows: Mapping[str, Any]) -> Brief:
    _only(rows, [row.name for row in BRIEF_ROWS], "brief")
    said: dict[str, Any] = {name: _value(row_of(name), entry) for name, entry in rows.items()}
    return Brief(**said)


def _values(rows: Mapping[str, Any]) -> dict[str, Value]:
    _only(rows, [row.name for row in PARAMETERS], "parameters")
    return {name: _value(parameter(name), entry) for name, entry in rows.items()}


def _value(row: Parameter | BriefRow, entry: Any) -> Value:
    fields = _object(entry, row.name)
    _only(fields, ("value", "unit"), row.name)
    if fields.get("unit") != row.unit:
        _refuse(
            f"The unit is {_shown(fields.get('unit'))}.",
            where=row.name,
            remedy=f"It should be {row.unit}.",
        )
    value = fields.get("value")
    if row.unit in ("choice", "text"):
        return _text(row.name, value)
    return _number(row.name, value)


def _judging(limits: Any, set_aside: Any) -> Judging:
    """How findings are taken; a limit at its default is no change."""
    rows = _object(limits, "limits")
    _only(rows, LIMITS, "limits")
    changed = []
    for name in sorted(rows):
        fields = _object(rows[name], name)
        _only(fields, ("value", "unit"), name)
        if fields.get("unit") != LIMITS[name].unit:
            _refuse(
                f"The unit is {_shown(fields.get('unit'))}.",
                where=name,
                remedy=f"It should be {LIMITS[name].unit}.",
            )
        value = LIMITS[name].checked(_number(name, fields.get("value")))
        if value != LIMITS[name].default:
            changed.append((name, value))
    return Judging(tuple(changed), tuple(_set_aside(entry) for entry in _list(set_aside)))


def _set_aside(entry: Any) -> SetAside:
    fields = _object(entry, "set_aside")
    _only(fields, ("check", "parts", "reason", "amount", "level"), "set_aside")
    amount = fields.get("amount")
    return SetAside(
        _text("set_aside, check", fields.get("check")),
        tuple(_text("set_aside, parts", name) for name in _list(fields.get("parts"))),
        _text("set_aside, reason", fields.get("reason")),
        None if amount is None else _number("set_aside, amount", amount),
        _text("set_aside, level", fields.get("level", "")),
    )


def _list(value: Any) -> list[Any]:
    if not isinstance(value, list):
        _refuse(f"{_shown(value)} stands where a list should.", where="set_aside")
    return value


def _number(where: str, value: Any) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float):
        _refuse(f"{_shown(value)} is not a number.", where=where)
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        _refuse("The number is larger than any size.", where=where)
    return number


def _object(value: Any, where: str) -> dict[str, Any]:
    if not isinstance(value, dict):
        _refuse(f"{_shown(value)} stands where named fields should.", where=where)
    return value


def _text(field: str, value: Any) -> str:
    if not isinstance(value, str):
        _refuse(f"{_shown(value)} is not a text.", where=field)
    return value


def _only(fields: Iterable[str], known: Iterable[str], where: str) -> None:
    names = list(known)
    for name in fields:
        if name not in names:
            near = difflib.get_close_matches(name[:60], names, n=1)
            _refuse(
                f"There is an unknown name, {_shown(name)}.",
                where=where,
                remedy=f"Did you mean {near[0]}?" if near else "A newer program may know it.",
            )


def _shown(value: object) -> str:
    """A value out of the file, short and printable whatever it is."""
    if isinstance(value, dict | list):
        return "a list" if isinstance(value, list) else "a group of fields"
    if isinstance(value, int) and not isinstance(value, bool) and abs(value) > 10**15:
        return "a very long number"
    if value is None or isinstance(value, bool):
        return json.dumps(value)
    text = ascii(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _refuse(what: str, *, where: str = "", remedy: str = "") -> NoReturn:
    raise BadProjectFile(what, where=where, remedy=remedy)
