"""The brief's values as a maker writes and reads them; an empty text says nothing."""

from __future__ import annotations

import re

from geometry.design.brief import BriefRow, BriefValue
from shared.errors import UnreadableValue
from shared.units import (
    Shown,
    format_length,
    format_quantity,
    read_as,
    read_count,
    read_length,
    unit_beside,
)

_NUMBER = re.compile(r"([-−]?\d{1,6}(?:[.,]\d{1,4})?)\s*([^\d\s].*)?")

_WORKS = {"kg": "Write it like 85 kg or 187 lb.", "%": "Write it like 45 %."}


def asked_for(row: BriefRow, shown: Shown) -> str:
    """What an empty field asks for: the unit of a bare number."""
    words = {"mm": shown.unit, "kg": unit_beside("kg", shown), "%": "% humidity"}
    return {**words, "count": "how many"}.get(row.unit, "")


def read_brief_value(row: BriefRow, text: str, shown: Shown) -> BriefValue:
    """The value in the row's own unit; UnreadableValue, with the row's title, says what works."""
    if row.unit in ("choice", "text"):
        return text.strip()
    if not text.strip():
        return 0.0
    try:
        if row.unit == "mm":
            return read_length(text, shown)
        if row.unit == "count":
            return float(read_count(text))
    except UnreadableValue as error:
        raise UnreadableValue(error.what, where=row.title, remedy=error.remedy) from None
    return _with_unit(row, text.strip(), shown)


def brief_text(row: BriefRow, value: BriefValue, shown: Shown) -> str:
    """A value as it stands in its field; empty where nothing has been said."""
    if isinstance(value, str):
        return value
    if value == 0.0 and row.optional:
        return ""
    if row.unit == "mm":
        return format_length(value, shown, with_unit=True)
    if row.unit == "count":
        return str(round(value))
    return format_quantity(value, row.unit, shown, 1)


def _with_unit(row: BriefRow, text: str, shown: Shown) -> float:
    found = _NUMBER.fullmatch(text)
    works = _WORKS.get(row.unit, "Write it like 20 °C or 68 °F.")
    if found is None:
        raise UnreadableValue(f"“{text[:25]}” is no number.", where=row.title, remedy=works)
    number = float(found[1].replace("−", "-").replace(",", "."))
    unit = (found[2] or "").strip()
    value = read_as(number, unit, row.unit, shown)
    if value is None:
        raise UnreadableValue(
            f"“{unit[:12]}” is no unit that fits here.", where=row.title, remedy=works
        )
    return round(value, 6)
