"""A size that follows from others, with what it follows from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Derived:
    """In mm or degrees; ``follows_from`` is said in the maker's words."""

    name: str
    title: str
    group: str
    value: float
    unit: str
    follows_from: str


def derived_length(name: str, title: str, group: str, value: float, follows_from: str) -> Derived:
    """A derived size in millimetres."""
    return Derived(name, title, group, value, "mm", follows_from)


def derived_angle(name: str, title: str, group: str, value: float, follows_from: str) -> Derived:
    """A derived angle in degrees."""
    return Derived(name, title, group, value, "deg", follows_from)
