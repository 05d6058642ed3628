"""How dovetails are spaced over the height of a corner.

Seen on the side: equal tails, widest at its end, with equal pins between them and a half pin at
each edge.  A slope of 1 in n narrows a tail by its length / n at each of its sides, an angle of
atan(1 / n) from square: 9.46 degrees for 1 in 6, 7.13 for 1 in 8 (common practice, no source, the
first for soft timber and the second for hard).
"""

from __future__ import annotations

from dataclasses import dataclass

SLOPES = {"1:6": 6.0, "1:8": 8.0}
"""Those that are offered, by their names on the screen."""
LEAST_TAIL = 5.0  # mm at the base line: common practice, no source


@dataclass(frozen=True, slots=True)
class Tail:
    """Where a tail's sides meet the end of the piece, and the base line: mm up the piece."""

    end_low: float
    end_high: float
    base_low: float
    base_high: float


@dataclass(frozen=True, slots=True)
class Spacing:
    """``pin`` and ``half_pin`` are the pins' widths at their narrow ends, ``length`` the tails'."""

    height: float
    length: float
    slope: float
    pin: float
    half_pin: float

    @property
    def narrowing(self) -> float:
        """By how much a tail is narrower at its base line, at each side."""
        return self.length / self.slope

    def tail_width(self, count: int) -> float:
        """Width of each of ``count`` tails at the end.

        >>> Spacing(100.0, 18.0, 6.0, 6.0, 7.0).tail_width(4)  # (100 - 2 x 7 - 3 x 6) / 4
        17.0
        """
        return (self.height - 2.0 * self.half_pin - (count - 1) * self.pin) / count

    def room(self, count: int) -> float:
        """By how much the tails' bases exceed the least they may have; negative if they do not."""
        return self.tail_width(count) - 2.0 * self.narrowing - LEAST_TAIL

    def count_for(self, width: float) -> int:
        """How many tails come nearest to a wanted width; at least one.

        >>> Spacing(100.0, 18.0, 6.0, 6.0, 7.0).count_for(17.5)
        4
        """
        fewer = int((self.height - 2.0 * self.half_pin + self.pin) / (width + self.pin))
        count = min((max(1, fewer), fewer + 1), key=lambda n: (abs(self.tail_width(n) - width), n))
        while count > 1 and self.room(count) < 0.0:
            count -= 1
        return count

    def tails(self, count: int) -> tuple[Tail, ...]:
        """All tails from the lower edge up."""
        width, step = self.tail_width(count), self.tail_width(count) + self.pin
        found = []
        for k in range(count):
            low = round(self.half_pin + k * step, 9)
            high = round(low + width, 9)
            found.append(Tail(low, high, low + self.narrowing, high - self.narrowing))
        return tuple(found)
