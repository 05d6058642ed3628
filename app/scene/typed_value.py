"""From a text that somebody typed to a value of a parameter.

The same reading serves a row of the story stick, a dimension on the sheet and the command
line: any unit works anywhere, whichever is shown.
"""

from __future__ import annotations

from geometry.design.parameter import Parameter, Value
from shared.errors import UnreadableValue
from shared.units import Shown, read_angle, read_count, read_length
from shared.words import Words, in_words

_MINUS = ("-", "−")


def read_value(row: Parameter, value_text: str, shown: Shown) -> Value:
    """The value in mm, degrees or pieces, or the chosen word; UnreadableValue says what works."""
    if row.unit == "choice":
        return _read_choice(row, value_text)
    if row.unit == "text":
        return row.read(value_text)
    if row.unit == "count":
        return float(read_count(value_text))
    if row.unit == "deg":
        return read_angle(value_text)
    text = value_text.strip()
    if row.minimum < 0.0 and text.startswith(_MINUS):
        # A size has no sign, but some places (a leg's inset) may lie on either side.
        return 0.0 - read_length(text[1:], shown)
    return read_length(text, shown)


def read_size(unit: str, size_text: str, shown: Shown) -> float:
    """A size in mm or degrees; UnreadableValue says what works."""
    return read_angle(size_text) if unit == "deg" else read_length(size_text, shown)


def _read_choice(row: Parameter, value_text: str) -> str:
    """A word of the list, in British or American, whole or as an unmistakable beginning."""
    typed = " ".join(value_text.split()).casefold()
    matches = [
        choice
        for choice in row.choices
        if typed in (choice.casefold(), in_words(choice, Words.AMERICAN).casefold())
    ] or [choice for choice in row.choices if typed and choice.casefold().startswith(typed)]
    if len(matches) == 1:
        return matches[0]
    raise UnreadableValue(
        f"“{value_text.strip()}” is not one of the choices.",
        where=row.title,
        remedy=f"Choose {_listed(row.choices)}.",
    )


def _listed(choices: tuple[str, ...]) -> str:
    return choices[0] if len(choices) == 1 else f"{', '.join(choices[:-1])} or {choices[-1]}"
