"""A limit that findings are judged by: a value with its source, which the maker may change.

Millimetres, degrees, newtons, percent or a plain number, as ``unit`` says.  Title and source are
sentences of the engine: a size in them is written ``{1000 mm}``.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.bench.bench import Bench
from shared.errors import UnreadableValue, ValueOutOfRange
from shared.units import amount_mark

TRADE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Limit:
    """One row of the table.

    ``unit`` is ``mm``, ``deg``, ``N``, ``%``, ``min``, ``kg/m³`` or ``count``; the value lies
    between ``minimum`` and ``maximum``, both included.
    """

    name: str
    title: str
    unit: str
    default: float
    source: str
    minimum: float
    maximum: float

    def of(self, bench: Bench) -> float:
        """The value by which this bench is judged: the maker's own, or the default."""
        for name, value in bench.judged_by:
            if name == self.name:
                return value
        return self.default

    def checked(self, value: float) -> float:
        """``value`` if it can be a limit; UnreadableValue or ValueOutOfRange if it cannot."""
        if not math.isfinite(value):
            raise UnreadableValue(f"{value!r} is not a number.", where=self.title)
        if not self.minimum <= value <= self.maximum:
            low = value < self.minimum
            bound = self.minimum if low else self.maximum
            raise ValueOutOfRange(
                f"{amount_mark(value, self.unit)} is {'less' if low else 'more'} than this limit "
                "can be.",
                where=self.title,
                remedy=f"It goes from {amount_mark(self.minimum, self.unit)} to "
                f"{amount_mark(self.maximum, self.unit)}.",
                limit=bound,
            )
        return value
