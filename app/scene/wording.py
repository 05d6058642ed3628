"""The last step of every sentence: the maker's unit and the maker's trade words."""

from __future__ import annotations

from app.scene.preferences import Preferences
from geometry.design.parameter import Parameter
from shared.errors import MakerError
from shared.units import format_angle, format_length, in_units
from shared.words import in_words


def said(text: str, preferences: Preferences) -> str:
    """A sentence of the program as the maker reads it."""
    return in_words(in_units(text, preferences.shown), preferences.words)


def said_error(error: MakerError, preferences: Preferences, *, here: str = "") -> str:
    """An error in one or two sentences; its place is left out where it is ``here`` already."""
    head = f"{error.where}: {error.what}" if error.where and error.where != here else error.what
    return said(f"{head} {error.remedy}".strip(), preferences)


def value_text(row: Parameter, value: float | str, preferences: Preferences) -> str:
    """A value of a parameter in a maker's words."""
    told = row.tell(value) if isinstance(value, str) else value
    return size_text(told, row.unit, preferences)


def size_text(value: float | str, unit: str, preferences: Preferences) -> str:
    """A value of a parameter the way a maker writes it; ``unit`` is mm, deg, count or choice."""
    if isinstance(value, str):
        return in_words(value, preferences.words)
    if unit == "deg":
        return format_angle(value)
    if unit == "count":
        return str(round(value))
    return format_length(value, preferences.shown)
