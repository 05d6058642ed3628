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

    ``values`` is the same by name.  It and the hash are made once, and a changed spec takes over
    all of them that it can: every step of a drag asks for some hundreds.
    """

    entries: tuple[tuple[str, Value], ...]
    values: MappingProxyType[str, Value] = field(init=False, repr=False, compare=False)
    _places: Mapping[str, int] = field(init=False, repr=False, compare=False)
    _hash: int = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        places = {name: place for place, (name, _) in enumerate(self.entries)}
        self._keep(dict(self.entries), places, sum(map(hash, self.entries)))

    def _keep(self, values: dict[str, Value], places: Mapping[str, int], whole: int) -> None:
        """``whole`` is the sum of the entries' hashes, so that one of them can be exchanged."""
        object.__setattr__(self, "values", MappingProxyType(values))
        object.__setattr__(self, "_places", places)
        object.__setattr__(self, "_hash", whole)

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
        unknown = changes.keys() - self._places.keys()
        if unknown:
            raise KeyError(min(unknown))
        entries, whole = list(self.entries), self._hash
        for name, value in changes.items():
            place = self._places[name]
            whole -= hash(entries[place])
            entries[place] = (name, value)
            whole += hash(entries[place])
        spec = object.__new__(BenchSpec)
        object.__setattr__(spec, "entries", tuple(entries))
        spec._keep(self.values | dict(changes), self._places, whole)
        return spec
