"""The whole design as one frozen value: a number or word for every parameter.

A spec keeps the values that do not apply to the bench at hand, so that switching a form or a
joint and back loses nothing.  It holds values, no rules: the catalogue knows the rows, the
constraints know what can be built.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from geometry.design.parameter import Value


@dataclass(frozen=True, slots=True)
class BenchSpec:
    """Names and values in catalogue order; hashable, so it can key a cache.

    ``values`` is the same by name.  It and the hash are made once, as every step of a drag asks
    for them some hundred times.
    """

    entries: tuple[tuple[str, Value], ...]
    values: Mapping[str, Value] = field(init=False, repr=False, compare=False)
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "values", MappingProxyType(dict(self.entries)))
        object.__setattr__(self, "_hash", hash(self.entries))

    def __hash__(self) -> int:
        return self._hash

    def value(self, name: str) -> Value:
        """The value of a parameter; KeyError for an unknown name."""
        return self.values[name]

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
        unknown = set(changes).difference(self.values)
        if unknown:
            raise KeyError(min(unknown))
        return BenchSpec(tuple((dict(self.entries) | dict(changes)).items()))
