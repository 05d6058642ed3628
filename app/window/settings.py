"""Preferences and the window's layout on disk.

An INI file gives back plain strings, so each value is read with its type and checked against
the choices; anything else falls back to the default.
"""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QLocale, QSettings

from app.look.themes import SYSTEM
from app.scene.preferences import (
    TEXT_PERCENTS,
    THEME_CHOICES,
    UNIT_CHOICES,
    Preferences,
)
from geometry.sheets.printer import TRUE, Edges, correction_of
from shared.errors import ValueOutOfRange
from shared.paper import PAPERS
from shared.units import SHOWN_IN16, SHOWN_MM, Shown
from shared.words import Words

_LETTER_COUNTRIES = (QLocale.Country.UnitedStates, QLocale.Country.Canada)  # what shops there sell


def first_preferences(locale: QLocale) -> Preferences:
    """What the maker's country suggests; a hint that the first minute can overrule."""
    american = locale.territory() == QLocale.Country.UnitedStates
    imperial = locale.measurementSystem() != QLocale.MeasurementSystem.MetricSystem
    return Preferences(
        shown=SHOWN_IN16 if imperial and american else SHOWN_MM,
        words=Words.AMERICAN if american else Words.BRITISH,
        third_angle=american or locale.territory() == QLocale.Country.UnitedKingdom,
        paper="Letter" if locale.territory() in _LETTER_COUNTRIES else "A4",
    )


def read_preferences(settings: QSettings, locale: QLocale) -> Preferences:
    """The stored preferences, each unknown or missing one as the locale suggests."""
    first = first_preferences(locale)
    units = {_unit_key(choice): choice for choice in UNIT_CHOICES}
    words = {choice.name.lower(): choice for choice in Words}
    theme = _text(settings, "theme", SYSTEM)
    percent = _number(settings, "text_percent", 100)
    paper = _text(settings, "paper", first.paper)
    return Preferences(
        shown=units.get(_text(settings, "shown", ""), first.shown),
        inch=units.get(_text(settings, "inch", ""), first.inch),
        words=words.get(_text(settings, "words", ""), first.words),
        third_angle=_flag(settings, "third_angle", default=first.third_angle),
        theme=theme if theme in THEME_CHOICES else SYSTEM,
        text_percent=percent if percent in TEXT_PERCENTS else 100,
        paper=paper if paper in PAPERS else first.paper,
        square=_square(settings),
    )


def write_preferences(settings: QSettings, preferences: Preferences) -> None:
    settings.setValue("shown", _unit_key(preferences.shown))
    settings.setValue("inch", _unit_key(preferences.inch))
    settings.setValue("words", preferences.words.name.lower())
    settings.setValue("third_angle", preferences.third_angle)
    settings.setValue("theme", preferences.theme)
    settings.setValue("text_percent", preferences.text_percent)
    settings.setValue("paper", preferences.paper)
    settings.setValue("square", " ".join(repr(size) for size in preferences.square))


def read_bytes(settings: QSettings, key: str) -> QByteArray:
    """Stored geometry of a window or splitter; empty when there is none."""
    value = settings.value(key)
    return value if isinstance(value, QByteArray) else QByteArray()


def _text(settings: QSettings, key: str, default: str) -> str:
    return str(settings.value(key, default, type=str))


def _flag(settings: QSettings, key: str, *, default: bool) -> bool:
    return bool(settings.value(key, default, type=bool))


def _number(settings: QSettings, key: str, default: int) -> int:
    text = _text(settings, key, "")
    return int(text) if text.isdecimal() else default


def _square(settings: QSettings) -> Edges:
    """What the printer's check square measures; as true where that is not written plainly."""
    try:
        long, short = (float(size) for size in _text(settings, "square", "").split())
        correction_of((long, short))
    except (ValueError, ValueOutOfRange):
        return TRUE
    return long, short


def _unit_key(shown: Shown) -> str:
    return "mm" if shown.unit == "mm" else f"in{shown.denominator}"
