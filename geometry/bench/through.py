"""A size that follows from others, set all the same: through the number that it follows straight.

What the maker asks of the size is asked of that number, and what stops the one stops the other.
Millimetres and degrees.
"""

from __future__ import annotations

from collections.abc import Iterable

from geometry.bench.catalogue import parameter
from geometry.bench.derived import Derived
from geometry.bench.limits import Limits, limits
from geometry.design.spec import BenchSpec
from shared.errors import ValueOutOfRange

_HAIR = 1e-6


def settable(sizes: Iterable[Derived], name: str) -> Derived | None:
    """The size of this name, if there is one that can be set."""
    return next((size for size in sizes if size.name == name and size.through), None)


def size_limits(spec: BenchSpec, size: Derived) -> Limits:
    """The least and greatest that a size can be; ``spec`` must be one that can be built."""
    row, allowed, now = parameter(size.through), limits(spec, size.through), size.value
    before = spec.number(size.through)
    ends = [
        (
            now + size.gain * (end - before),
            f"“{row.title}” goes no {word} than {{{end:.6g} {row.unit}}}" if end == last else why,
        )
        for end, last, why, word in (
            (allowed.minimum, row.minimum, allowed.why_minimum, "lower"),
            (allowed.maximum, row.maximum, allowed.why_maximum, "higher"),
        )
    ]
    (low, why_low), (high, why_high) = ends if size.gain > 0.0 else reversed(ends)
    return Limits(low, high, why_low, why_high)


def values_for(spec: BenchSpec, size: Derived, wanted: float) -> dict[str, float]:
    """What to set so that a size becomes what is wanted; ValueOutOfRange, with the nearest limit
    of the size, where it cannot be."""
    allowed = size_limits(spec, size)
    for past, bound, words, why in (
        (wanted - allowed.maximum, allowed.maximum, "most", allowed.why_maximum),
        (allowed.minimum - wanted, allowed.minimum, "least", allowed.why_minimum),
    ):
        if past > _HAIR:
            raise ValueOutOfRange(
                f"{{{wanted:.6g} {size.unit}}} can't be built: {why}.",
                where=size.title,
                remedy=f"The {words} it can be is {{{bound:.6g} {size.unit}}}.",
                limit=bound,
            )
    value = spec.number(size.through) + (wanted - size.value) / size.gain
    given = limits(spec, size.through)
    return {size.through: min(max(round(value, 6), given.minimum), given.maximum)}
