"""Values out of a JSON file that anybody may have written, or a refusal in words.

Each asks for one sort of value and raises BadProjectFile, saying where in the file, for any other.
"""

from __future__ import annotations

import difflib
import json
import math
from collections.abc import Iterable
from typing import Any, NoReturn

from shared.errors import BadProjectFile


def fields_of(value: Any, where: str) -> dict[str, Any]:
    if not isinstance(value, dict):
        refuse(f"{shown(value)} stands where named fields should.", where=where)
    return value


def list_of(value: Any, where: str) -> list[Any]:
    if not isinstance(value, list):
        refuse(f"{shown(value)} stands where a list should.", where=where)
    return value


def text_of(value: Any, where: str) -> str:
    if not isinstance(value, str):
        refuse(f"{shown(value)} is not a text.", where=where)
    return value


def number_of(value: Any, where: str) -> float:
    """A finite number; True and False are none."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        refuse(f"{shown(value)} is not a number.", where=where)
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        refuse("The number is larger than any size.", where=where)
    return number


def with_unit(entry: Any, unit: str, name: str) -> Any:
    """The ``value`` of an entry whose ``unit`` is as it should be."""
    fields = fields_of(entry, name)
    only_known(fields, ("value", "unit"), name)
    if fields.get("unit") != unit:
        refuse(
            f"The unit is {shown(fields.get('unit'))}.", where=name, remedy=f"It should be {unit}."
        )
    return fields.get("value")


def only_known(fields: Iterable[str], known: Iterable[str], where: str) -> None:
    """Refuse a name that is none of the known ones, with the nearest of them."""
    names = list(known)
    for name in fields:
        if name not in names:
            near = difflib.get_close_matches(name[:60], names, n=1)
            refuse(
                f"There is an unknown name, {shown(name)}.",
                where=where,
                remedy=f"Did you mean {near[0]}?" if near else "A newer program may know it.",
            )


def once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """An object of the file, in which no name may be there twice."""
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            refuse(f"{shown(name)} is there twice.", remedy="Leave one of the two.")
        found[name] = value
    return found


def no_constant(word: str) -> NoReturn:
    """``NaN`` and ``Infinity``, which a reader of JSON would let pass."""
    refuse(f"{word} is not a size.")


def shown(value: object) -> str:
    """A value out of the file, short and printable whatever it is."""
    if isinstance(value, dict | list):
        return "a list" if isinstance(value, list) else "a group of fields"
    if isinstance(value, int) and not isinstance(value, bool) and abs(value) > 10**15:
        return "a very long number"
    if value is None or isinstance(value, bool):
        return json.dumps(value)
    text = ascii(value)
    return text if len(text) <= 60 else f"{text[:57]}..."


def refuse(what: str, *, where: str = "", remedy: str = "") -> NoReturn:
    raise BadProjectFile(what, where=where, remedy=remedy)
