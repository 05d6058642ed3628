"""The brief: who sits, what for, where the bench stands, and what it carries.

Lengths in mm, weights in kg, humidity in %, temperature in °C.  A number that is 0, or a name that
is empty, has not been said and binds nothing.  How a brief is kept in a file is not known here.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from shared.errors import UnknownName, UnreadableValue, ValueOutOfRange
from shared.seating import SHOE

BriefValue = float | str

NOBODY, MEN, WOMEN, ADULTS, PERSON = (
    "nobody in particular",
    "men",
    "women",
    "men and women",
    "a person",
)
WHO = (NOBODY, MEN, WOMEN, ADULTS, PERSON)

# words, least and greatest percentile
_SHARE_ROWS = (("90 of 100", 5, 95), ("98 of 100", 1, 99), ("50 of 100", 25, 75))
SHARES: dict[str, tuple[int, int]] = {words: (low, high) for words, low, high in _SHARE_ROWS}

SHORT_SIT, LONG_SIT, WEAK_KNEES = "a short sit", "a long sit", "standing up with weak knees"
USES = (SHORT_SIT, LONG_SIT, WEAK_KNEES)

NO_STANDARD, ADA_BENCH = "none", "ADA 2010, 903"
STANDARDS = (NO_STANDARD, ADA_BENCH)

NAME_LIMIT = 80


@dataclass(frozen=True, slots=True)
class Brief:
    """Plain values, as ``ROWS`` describes them; hashable, so it can key a cache.

    ValueOutOfRange or UnreadableValue, naming the row, for a value that cannot be.
    """

    who: str = NOBODY
    share: str = "90 of 100"
    person: str = ""
    lower_leg: float = 0.0
    upper_leg: float = 0.0
    shoulders: float = 0.0
    weight: float = 0.0
    shoes: float = SHOE
    use: str = SHORT_SIT
    persons: float = 0.0
    load: float = 0.0
    standard: str = NO_STANDARD
    room_length: float = 0.0
    room_depth: float = 0.0
    room_height: float = 0.0
    door_width: float = 0.0
    door_height: float = 0.0
    stair_width: float = 0.0
    landing_depth: float = 0.0
    stair_height: float = 0.0
    humidity_low: float = 0.0
    humidity_high: float = 0.0
    temperature: float = 20.0

    def __post_init__(self) -> None:
        for row in ROWS:
            row.check(getattr(self, row.name))
        if self.humidity_low and self.humidity_high and self.humidity_low > self.humidity_high:
            raise ValueOutOfRange(
                f"The driest air, {self.humidity_low:g} %, is more humid than the dampest, "
                f"{self.humidity_high:g} %.",
                where=row_of("humidity_low").title,
                remedy="Turn them round.",
            )

    @property
    def blank(self) -> bool:
        """Nothing has been said."""
        return self == NO_BRIEF


@dataclass(frozen=True, slots=True)
class BriefRow:
    """One value of the brief, with its unit and what it may be.

    ``unit`` is mm, kg, %, °C, count, choice or text.  ``optional``: 0 stands for 'not said', and
    then the range does not bind.
    """

    name: str
    title: str
    group: str
    unit: str
    description: str
    minimum: float = 0.0
    maximum: float = 0.0
    choices: tuple[str, ...] = ()
    optional: bool = True
    applies: Callable[[Brief], bool] = lambda _brief: True

    def check(self, value: Any) -> None:
        """UnreadableValue or ValueOutOfRange for a value that this row cannot have."""
        if self.unit == "choice":
            if value not in self.choices:
                raise UnreadableValue(
                    f"“{str(value)[:40]}” is not one of the choices.",
                    where=self.title,
                    remedy=f"Choose {', '.join(self.choices[:-1])} or {self.choices[-1]}.",
                )
            return
        if self.unit == "text":
            self._check_text(value)
            return
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise UnreadableValue(f"“{str(value)[:40]}” is no number.", where=self.title)
        if self.optional and value == 0.0:
            return
        if not self.minimum <= value <= self.maximum:
            raise ValueOutOfRange(
                f"{self.marked(value)} is not from {self.marked(self.minimum)} to "
                f"{self.marked(self.maximum)}.",
                where=self.title,
                remedy="Write another number, or leave it empty." if self.optional else "",
                limit=min(max(value, self.minimum), self.maximum),
            )
        if self.unit == "count" and value != round(value):
            raise UnreadableValue(f"{value:g} is no whole number.", where=self.title)

    def _check_text(self, value: Any) -> None:
        if not isinstance(value, str):
            raise UnreadableValue("This is not a text.", where=self.title)
        if len(value) > NAME_LIMIT or any(unicodedata.category(c)[0] == "C" for c in value):
            raise UnreadableValue(
                "The name is too long, or has a character that cannot be shown.",
                where=self.title,
                remedy=f"Write it with at most {NAME_LIMIT} letters.",
            )

    def marked(self, value: float) -> str:
        """A value as it stands in a sentence of the engine."""
        if self.unit == "mm":
            return f"{{{value:.10g} mm}}"
        return f"{value:g}" if self.unit == "count" else f"{value:g} {self.unit}"


def _a_person(brief: Brief) -> bool:
    return brief.who == PERSON


def _a_group(brief: Brief) -> bool:
    return brief.who in (MEN, WOMEN, ADULTS)


WHO_SITS, WHAT_FOR, WHERE, AIR = "Who sits", "What for", "Where it stands", "The air there"

ROWS: tuple[BriefRow, ...] = (
    BriefRow(
        "who",
        "Made for",
        WHO_SITS,
        "choice",
        "A group of adults from the survey at hand, or one person whose measures are typed. There "
        "is no source here for children or older people: take their measures.",
        choices=WHO,
    ),
    BriefRow(
        "share",
        "How many of them",
        WHO_SITS,
        "choice",
        "The middle of the group: 90 of 100 leaves out the five smallest and the five largest.",
        choices=tuple(SHARES),
        applies=_a_group,
    ),
    BriefRow(
        "person", "Name", WHO_SITS, "text", "Who it is, if that is to be said.", applies=_a_person
    ),
    BriefRow(
        "lower_leg",
        "Lower leg",
        WHO_SITS,
        "mm",
        "From the floor to the hollow of the knee, sitting, without shoes.",
        150,
        650,
        applies=_a_person,
    ),
    BriefRow(
        "upper_leg",
        "Upper leg",
        WHO_SITS,
        "mm",
        "From the back of the seat to the hollow of the knee, sitting upright.",
        150,
        800,
        applies=_a_person,
    ),
    BriefRow(
        "shoulders",
        "Shoulders",
        WHO_SITS,
        "mm",
        "Across the shoulders at their widest, arms hanging.",
        200,
        900,
        applies=_a_person,
    ),
    BriefRow("weight", "Weight", WHO_SITS, "kg", "Of the person.", 10, 300, applies=_a_person),
    BriefRow(
        "shoes",
        "Shoes",
        WHO_SITS,
        "mm",
        "How much the soles lift the feet; common practice, no source.",
        0,
        100,
        optional=False,
        applies=lambda brief: brief.who != NOBODY,
    ),
    BriefRow("use", "It is for", WHAT_FOR, "choice", "What is done on it most.", choices=USES),
    BriefRow("persons", "Persons", WHAT_FOR, "count", "How many sit beside each other.", 1, 12),
    BriefRow(
        "load",
        "Given load",
        WHAT_FOR,
        "kg",
        "A single load that it must bear near its edge, if it is heavier than a person.",
        1,
        1000,
    ),
    BriefRow(
        "standard",
        "Standard",
        WHAT_FOR,
        "choice",
        "Only where another section of that standard calls for such a bench; at home none does.",
        choices=STANDARDS,
    ),
    BriefRow("room_length", "Room along it", WHERE, "mm", "For its length.", 100, 20_000),
    BriefRow("room_depth", "Room in front", WHERE, "mm", "From the wall forward.", 100, 20_000),
    BriefRow("room_height", "Room above it", WHERE, "mm", "From the floor.", 100, 20_000),
    BriefRow(
        "door_width", "Door, clear width", WHERE, "mm", "The narrowest on the way.", 300, 5000
    ),
    BriefRow("door_height", "Door, clear height", WHERE, "mm", "The lowest.", 300, 5000),
    BriefRow("stair_width", "Stair, clear width", WHERE, "mm", "Between wall and rail.", 300, 5000),
    BriefRow(
        "landing_depth",
        "Landing at its corner",
        WHERE,
        "mm",
        "Clear width of the way after the corner.",
        300,
        5000,
    ),
    BriefRow(
        "stair_height", "Headroom at the corner", WHERE, "mm", "From the landing.", 300, 10_000
    ),
    BriefRow(
        "humidity_low", "Driest air", AIR, "%", "Relative humidity in the driest month.", 5, 95
    ),
    BriefRow("humidity_high", "Dampest air", AIR, "%", "And in the dampest one.", 5, 95),
    BriefRow("temperature", "Temperature", AIR, "°C", "Of the room.", -20, 50, optional=False),
)

_BY_NAME = {row.name: row for row in ROWS}


def row_of(name: str) -> BriefRow:
    """The row of a value; UnknownName if there is none."""
    if name not in _BY_NAME:
        raise UnknownName(f"The brief has nothing called {name[:40]!r}.")
    return _BY_NAME[name]


NO_BRIEF = Brief()
"""Nothing said."""
