"""Reading project files: a bench with its title block, as JSON text with the suffix ``.settle``.

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
section    object  ``way``, ``place`` and ``turn``, each an object with ``value`` and ``unit``: the
                   plane in which the maker has cut the bench through
========== ======= ============================================================================

``format``, ``version`` and ``parameters`` must be there; a text that is missing is empty, and so
are ``limits``, ``set_aside`` and ``section``, which are written only when there are any.  A
parameter's ``unit`` is ``mm``, ``deg``, ``count``, ``choice`` or ``text``, the same as in the
catalogue, and its ``value`` a number, for a choice one of its words, or a text.  A parameter that
is missing has the catalogue's default.  A name that this version does not know is an error and is
not passed over: saving would lose it.  Only the limits ``post_screw`` and ``post_screw_thread``
are: they stood for screws that a joint now tells itself.

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

The section
-----------
All three must be there.

===== ====== ====================================================================================
name  unit   meaning
===== ====== ====================================================================================
way   choice how the plane stands until it is turned: across (square to the length), along (square
             to the depth), level, or askew (square to the depth, and turned in plan)
place mm     how far along its normal it stands from the origin of the bench's frame: X runs to the
             right along the length, Y toward the back, whose edges lie in y = 0, Z up from the
             floor
turn  deg    by how much its normal leans upward, of a level and an askew one to the right; more
             than -90, at most 90
===== ====== ====================================================================================

Versions
--------
1. The first.
2. ``limits``, ``set_aside`` and ``brief``.  A file that has none of them is written as version 1,
   with the same bytes as before.
3. The ``amount`` and the ``level`` that a finding was set aside with.  A file without them is
   written as version 2.
4. ``section``.  A file without it is written as one of the versions before.

Reading (here) and writing (``project_writing``) are each other's inverse: what is written reads
back equal, and what was written by this version is written again with the same bytes.
"""

from __future__ import annotations

import json
import stat
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from exporters.file_fields import (
    fields_of,
    list_of,
    no_constant,
    number_of,
    once,
    only_known,
    refuse,
    shown,
    text_of,
    with_unit,
)
from exporters.kept_section import section_of
from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from geometry.bench.limits import set_values
from geometry.checks.limit_rows import BY_NAME as LIMITS
from geometry.design.brief import ROWS as BRIEF_ROWS
from geometry.design.brief import Brief, BriefRow, row_of
from geometry.design.judging import Judging, SetAside
from geometry.design.parameter import Parameter, Value
from geometry.design.project import LINE_FIELDS, Project
from shared.errors import BadProjectFile, MakerError

SUFFIX = ".settle"
FORMAT = "settlewright bench"
VERSION = 4
BEFORE_JUDGING = 1
BEFORE_AMOUNTS = 2
BEFORE_SECTIONS = 3
NOT_OURS = "This is not a project of Settlewright."
SIZE_LIMIT = 4_000_000

TEXTS = (*LINE_FIELDS, "notes")
_FIELDS = ("format", "version", *TEXTS, "brief", "parameters", "limits", "set_aside", "section")
_TOLD_BY_A_JOINT = {"post_screw", "post_screw_thread"}
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


def read_project(data: bytes, name: str = "") -> Project:
    """The project in a file's content; BadProjectFile, saying ``name``, if it is none."""
    try:
        return _project(_parsed(data))
    except MakerError as error:
        where = f"{name}, {error.where}" if name and error.where else name or error.where
        raise BadProjectFile(error.what, where=where, remedy=error.remedy or _ANOTHER) from error


def _parsed(data: bytes) -> Any:
    if len(data) > SIZE_LIMIT:
        refuse(f"The file is larger than any project ({SIZE_LIMIT // 1_000_000} MB).")
    try:
        # An editor may have put a byte order mark in front.
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        refuse("The file is not text, or not in UTF-8.")
    if not text.strip():
        refuse("The file is empty.")
    try:
        return json.loads(text, object_pairs_hook=once, parse_constant=no_constant)
    except json.JSONDecodeError as error:
        if error.pos == 0:
            refuse(NOT_OURS)  # another sort of text altogether
        refuse(
            f"The text breaks off or is damaged at line {error.lineno}, column {error.colno}.",
            remedy="Open an earlier copy of the file.",
        )
    except RecursionError:
        refuse("The file is nested deeper than any project.")
    except ValueError:
        refuse("A number in the file is longer than any size.")


def _project(content: Any) -> Project:
    fields = fields_of(content, "the file")
    if fields.get("format") != FORMAT:
        refuse(NOT_OURS)
    version = fields.get("version")
    if type(version) is not int or version < 1:
        refuse("The file does not say which version it is.", where="version")
    if version > VERSION:
        refuse(
            "The file was written by a newer Settlewright "
            f"(its version is {shown(version)}, and this program reads up to {VERSION}).",
            remedy="Open it with the newer program.",
        )
    only_known(fields, _FIELDS, "the file")
    if "parameters" not in fields:
        refuse("The file has no parameters.", where="parameters")
    values = _values(fields_of(fields["parameters"], "parameters"))
    brief = _brief(fields_of(fields.get("brief", {}), "brief"))
    judging = _judging(fields.get("limits", {}), fields.get("set_aside", []))
    return Project(
        set_values(default_spec(), values),
        **{field: text_of(fields.get(field, ""), field) for field in TEXTS},
        judging=judging,
        brief=brief,
        section=section_of(fields["section"]) if "section" in fields else None,
    )


def _brief(rows: Mapping[str, Any]) -> Brief:
    only_known(rows, [row.name for row in BRIEF_ROWS], "brief")
    said: dict[str, Any] = {name: _value(row_of(name), entry) for name, entry in rows.items()}
    return Brief(**said)


def _values(rows: Mapping[str, Any]) -> dict[str, Value]:
    only_known(rows, [row.name for row in PARAMETERS], "parameters")
    return {name: _value(parameter(name), entry) for name, entry in rows.items()}


def _value(row: Parameter | BriefRow, entry: Any) -> Value:
    value = with_unit(entry, row.unit, row.name)
    if row.unit in ("choice", "text"):
        return text_of(value, row.name)
    return number_of(value, row.name)


def _judging(limits: Any, set_aside: Any) -> Judging:
    """How findings are taken; a limit at its default is no change."""
    rows = fields_of(limits, "limits")
    only_known(rows, (*LIMITS, *_TOLD_BY_A_JOINT), "limits")
    changed = []
    for name in sorted(rows.keys() - _TOLD_BY_A_JOINT):
        written = with_unit(rows[name], LIMITS[name].unit, name)
        value = LIMITS[name].checked(number_of(written, name))
        if value != LIMITS[name].default:
            changed.append((name, value))
    return Judging(
        tuple(changed), tuple(_set_aside(entry) for entry in list_of(set_aside, "set_aside"))
    )


def _set_aside(entry: Any) -> SetAside:
    fields = fields_of(entry, "set_aside")
    only_known(fields, ("check", "parts", "reason", "amount", "level"), "set_aside")
    amount = fields.get("amount")
    return SetAside(
        text_of(fields.get("check"), "set_aside, check"),
        tuple(
            text_of(name, "set_aside, parts") for name in list_of(fields.get("parts"), "set_aside")
        ),
        text_of(fields.get("reason"), "set_aside, reason"),
        None if amount is None else number_of(amount, "set_aside, amount"),
        text_of(fields.get("level", ""), "set_aside, level"),
    )
