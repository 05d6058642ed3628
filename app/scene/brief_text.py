"""The brief's values as a maker writes and reads them; an empty text says nothing."""

from __future__ import annotations

import re

from geometry.design.brief import BriefRow, BriefValue
from shared.errors import UnreadableValue
from shared.units import (
    KG_PER_POUND,
    Shown,
    format_length,
    format_weight,
    read_count,
    read_length,
)

_NUMBER = re.compile(r"([-−]?\d{1,6}(?:[.,]\d{1,4})?)\s*([^\d\s].*)?")

# what a unit may be written as -> how much of the row's own unit one of it is
_WEIGHTS = {"kg": 1.0, "lb": KG_PER_POUND, "lbs": KG_PER_POUND}
_SHARES = {"%": 1.0, "percent": 1.0}
_CELSIUS, _FAHRENHEIT = ("°c", "c"), ("°f", "f")


def asked_for(row: BriefRow, shown: Shown) -> str:
    """What an empty field asks for: the unit of a bare number."""
    inches = shown.unit == "in"
    words = {"mm": shown.unit, "kg": "lb" if inches else "kg", "%": "% humidity"}
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
    if row.unit == "kg":
        return format_weight(value, shown)
    if row.unit == "count":
        return str(round(value))
    return f"{value:g} {row.unit}"


def _with_unit(row: BriefRow, text: str, shown: Shown) -> float:
    found = _NUMBER.fullmatch(text)
    works = {"kg": "Write it like 85 kg or 187 lb.", "%": "Write it like 45 %."}.get(
        row.unit, "Write it like 20 °C or 68 °F."
    )
    if found is None:
        raise UnreadableValue(f"“{text[:25]}” is no number.", where=row.title, remedy=works)
    number = float(found[1].replace("−", "-").replace(",", "."))
    unit = (found[2] or "").strip().casefold()
    if row.unit == "°C":
        if unit in _FAHRENHEIT:
            return round((number - 32.0) / 1.8, 6)
        known = not unit or unit in _CELSIUS
        factor = 1.0
    elif row.unit == "kg":
        factor = _WEIGHTS.get(unit, KG_PER_POUND if shown.unit == "in" else 1.0)
        known = not unit or unit in _WEIGHTS
    else:
        factor, known = 1.0, not unit or unit in _SHARES
    if not known:
        raise UnreadableValue(
            f"“{unit[:12]}” is no unit that fits here.", where=row.title, remedy=works
        )
    return round(number * factor, 6)
