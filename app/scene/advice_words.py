"""Advice in the maker's units and words, a line each."""

from __future__ import annotations

from dataclasses import dataclass

from app.scene.preferences import Preferences
from app.scene.wording import said
from geometry.advice.advised import Advice
from shared.units import format_length


@dataclass(frozen=True, slots=True)
class AdviceWords:
    """``take`` is what the button says, empty where there is nothing to take."""

    name: str
    title: str
    size: str
    met: bool
    reason: str
    source: str
    take: str
    hindrance: str

    @property
    def standing(self) -> str:
        """The mark and the word for it."""
        return "○ as advised" if self.met else "△ off"


def advice_words(one: Advice, preferences: Preferences) -> AdviceWords:
    """A piece of advice as it is read; what is met already is not offered."""
    offered = bool(one.changes) and not (one.met and one.now is not None)
    wanted = _size(one.wanted, one.unit, preferences)
    hindrance = said(f"Cannot be taken: {one.hindrance}", preferences) if one.hindrance else ""
    return AdviceWords(
        one.name,
        said(one.title, preferences),
        _now_and_advised(one, preferences),
        one.met,
        said(one.reason, preferences),
        f"Source: {one.source}.",
        f"Take {wanted}" if offered else "",
        hindrance if not one.met else "",
    )


def _now_and_advised(one: Advice, preferences: Preferences) -> str:
    now, low, high = (_size(value, one.unit, preferences) for value in (one.now, one.low, one.high))
    if not low and not high:
        return now
    parts = [f"now {now}"] if now else []
    if low and high:
        parts.append(f"advised {low}" if low == high else f"advised {low} to {high}")
    elif low or high:
        parts.append(f"advised at least {low}" if low else f"advised at most {high}")
    return ", ".join(parts)


def _size(value: float | None, unit: str, preferences: Preferences) -> str:
    if value is None:
        return ""
    if unit == "mm":
        return format_length(value, preferences.shown, with_unit=True)
    return f"{value:.1f} {unit}"
