"""Who sits on a bench, as loads.  N, mm.

One load anywhere (a standard's reference load, or the brief's own if it is heavier), and persons
side by side anywhere, as many as the brief names.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.advice.sitters import sitters
from geometry.design.brief import Brief
from shared.seating import GRAVITY
from shared.units import quantity_mark

SAT_ON = 300.0  # mm along the seat that somebody bears on; common practice, no source
NEAREST = 100.0  # mm from an edge to the middle of a load: half a test's pad, EN 1728, from memory
USUAL = 2  # persons, where the brief names no number and the seat is long enough


@dataclass(frozen=True, slots=True)
class Case:
    """Loads that keep their distances wherever they are: ``offsets`` from their middle.

    ``width`` is what each is spread over; ``words`` follow 'Under'.
    """

    words: str
    force: float
    offsets: tuple[float, ...]
    width: float

    @property
    def half(self) -> float:
        """From the middle of all to the outer end of what they bear on."""
        return self.offsets[-1] + self.width / 2.0

    @property
    def whole(self) -> float:
        return self.force * len(self.offsets)


@dataclass(frozen=True, slots=True)
class Loads:
    """``single`` N at one place; ``sitter`` N a person, ``room`` mm from one to the next."""

    single: float
    sitter: float
    persons: int
    room: float

    def cases(self, length: float) -> tuple[Case, ...]:
        """All for which a seat so long has room: a pair, three, and as many as there are."""
        kg = self.sitter / GRAVITY
        found = [Case(f"{quantity_mark(self.single, 'N')} at one place", self.single, (0.0,), 0.0)]
        fit = min(self.persons, int((length - SAT_ON) / self.room + 1.0 + 1e-9))
        for count in sorted({2, 3, fit}):
            if not 1 < count <= fit:
                continue  # one person alone bears no harder than a single load
            first = -(count - 1) / 2.0 * self.room
            offsets = tuple(first + k * self.room for k in range(count))
            who = f"{count} persons of {quantity_mark(kg, 'kg')} side by side"
            found.append(Case(who, self.sitter, offsets, SAT_ON))
        return tuple(found)


def persons_of(brief: Brief) -> int:
    """How many sit at once."""
    return int(brief.persons) or USUAL


def loads_of(brief: Brief, *, single: float, sitter: float, room: float) -> Loads:
    """The loads that a brief asks for; the three numbers are what is taken where it does not."""
    people = sitters(brief)
    known = people.weight.large * GRAVITY if people is not None else 0.0
    return Loads(
        single=max(single, brief.load * GRAVITY, known),
        sitter=known or sitter,
        persons=persons_of(brief),
        room=room,
    )
