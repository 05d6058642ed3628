"""The numbers under which the parts of a bench stand on the pages of the whole bench.

Each part has its own, in the order of the bench; of very many parts those that are made alike share
one, as there would be no room for so many names.
"""

from __future__ import annotations

from collections.abc import Collection, Hashable, Sequence
from dataclasses import dataclass
from functools import cached_property

from geometry.design.part import Part
from geometry.sheets.label_spots import Spot
from shared.words import Words, in_words

_MOST = 60  # parts with a number each


@dataclass(frozen=True, eq=False)
class Numbering:
    """Of the parts of one bench."""

    parts: tuple[Part, ...]

    @property
    def shared(self) -> bool:
        """Whether parts that are made alike share a number."""
        return len(self.parts) > _MOST

    @cached_property
    def _groups(self) -> tuple[tuple[int, ...], ...]:
        """The parts of each number, by index."""
        alike: dict[Hashable, list[int]] = {}
        for index, part in enumerate(self.parts):
            key = (part.shape, part.material, part.kind) if self.shared else index
            alike.setdefault(key, []).append(index)
        return tuple(tuple(group) for group in alike.values())

    @cached_property
    def texts(self) -> tuple[str, ...]:
        """The number of each part."""
        number = {k: n for n, group in enumerate(self._groups, start=1) for k in group}
        return tuple(str(number[index]) for index in range(len(self.parts)))

    def rows(self, shown: Collection[int], words: Words) -> list[tuple[str, str]]:
        """The numbers and names of the parts that are ``shown``."""
        found: list[tuple[str, str]] = []
        for group in self._groups:
            if any(index in shown for index in group):
                name = self.parts[group[0]].title
                more = f", and {len(group) - 1} alike" if len(group) > 1 else ""
                found.append((self.texts[group[0]], in_words(f"{name}{more}", words)))
        return found

    def listed(self, shown: Collection[int]) -> Collection[int]:
        """Those of the parts that can be told by their numbers where these are in the list."""
        return () if self.shared else shown

    def to_label(self, spots: Sequence[Spot]) -> tuple[Spot, ...]:
        """One spot for each number, where most shows of what it stands for."""
        best: dict[str, Spot] = {}
        for spot in spots:
            known = best.setdefault(self.texts[spot.index], spot)
            if spot.clear > known.clear:
                best[self.texts[spot.index]] = spot
        return tuple(best.values())
