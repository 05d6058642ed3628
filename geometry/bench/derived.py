"""A size that follows from others, with what it follows from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Derived:
    """In mm or degrees; ``follows_from`` is said in the maker's words.

    One that follows one number of the maker's as a straight line may be set ``through`` that: it
    grows by ``gain`` for each mm or degree of it.
    """

    name: str
    title: str
    group: str
    value: float
    unit: str
    follows_from: str
    through: str = ""
    gain: float = 1.0


def derived_length(
    name: str,
    title: str,
    group: str,
    value: float,
    follows_from: str,
    *,
    through: str = "",
    gain: float = 1.0,
) -> Derived:
    """A derived size in millimetres."""
    return Derived(name, title, group, value, "mm", follows_from, through, gain)


def derived_angle(name: str, title: str, group: str, value: float, follows_from: str) -> Derived:
    """A derived angle in degrees."""
    return Derived(name, title, group, value, "deg", follows_from)
