"""The whole design as one frozen value: a number or word for every parameter.

A spec keeps the values that do not apply to the bench at hand, so that switching a form or a
joint and back loses nothing.  It holds values, no rules: the catalogue knows the rows, the
constraints know what can be built.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from geometry.design.parameter import Value


@dataclass(frozen=True, slots=True)
class BenchSpec:
    """Names and values in catalogue order; hashable, so it can key a cache."""

    entries: tuple[tuple[str, Value], ...]

    @property
    def values(self) -> Mapping[str, Value]:
        return MappingProxyType(dict(self.entries))

    def value(self, name: str) -> Value:
        """The value of a parameter; KeyError for an unknown name."""
        for known, value in self.entries:
            if known == name:
                return value
        raise KeyError(name)

    def number(self, name: str) -> float:
        """The value of a length, angle or count, in mm, degrees or pieces."""
        value = self.value(name)
        assert not isinstance(value, str), f"{name} is a choice"
        return value

    def count(self, name: str) -> int:
        return round(self.number(name))

    def word(self, name: str) -> str:
        """The value of a choice."""
        value = self.value(name)
        assert isinstance(value, str), f"{name} is a number"
        return value

    def changed(self, changes: Mapping[str, Value]) -> BenchSpec:
        """This spec with some values replaced, unchecked; KeyError for an unknown name."""
        unknown = set(changes) - {name for name, _ in self.entries}
        if unknown:
            raise KeyError(min(unknown))
        return BenchSpec(tuple((name, changes.get(name, value)) for name, value in self.entries))
