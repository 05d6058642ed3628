"""A parameter's value from text and back, the same on the screen and on the command line."""

from __future__ import annotations

from geometry.design.parameter import Parameter, Value
from shared.errors import UnreadableValue
from shared.units import Shown, format_angle, format_length, read_angle, read_count, read_length

_MINUS = "-−"


def read_value(row: Parameter, value_text: str, shown: Shown) -> Value:
    """What a maker typed for ``row``: mm, degrees, a whole number or one of its choices.

    UnreadableValue, with the parameter's title and what would work, for anything else.
    """
    try:
        if row.unit == "mm":
            return _read_signed_length(row, value_text, shown)
        if row.unit == "deg":
            return read_angle(value_text)
        if row.unit == "count":
            return float(read_count(value_text))
        if row.unit == "text":
            return row.read(value_text)
    except UnreadableValue as error:
        raise UnreadableValue(error.what, where=row.title, remedy=error.remedy) from None
    return _read_choice(row, value_text)


def format_value(row: Parameter, value: Value, shown: Shown, *, with_unit: bool = False) -> str:
    """A value as it is shown; reading it back gives it again, to the precision shown."""
    if isinstance(value, str):
        return value
    if row.unit == "mm":
        return format_length(value, shown, with_unit=with_unit)
    if row.unit == "deg":
        return format_angle(value)
    return str(round(value))


def _read_signed_length(row: Parameter, value_text: str, shown: Shown) -> float:
    """Only a length that may lie on either side of its edge is read with a sign."""
    text = value_text.strip()
    if row.minimum < 0.0 and text[:1] and text[0] in _MINUS:
        return -read_length(text[1:], shown)
    return read_length(text, shown)


def _read_choice(row: Parameter, value_text: str) -> str:
    text = " ".join(value_text.split()).casefold()
    for known in row.choices:
        if known.casefold() == text:
            return known
    raise UnreadableValue(
        f"{value_text.strip()[:40]!r} is not one of its choices.",
        where=row.title,
        remedy=f"Choose {' or '.join(row.choices)}.",
    )
