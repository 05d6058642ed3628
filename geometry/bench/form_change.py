"""Another form of seat on the same bench: nobody should sit higher or lower for it.

The base grows or shrinks by what the new form rises less or more than the old one.  Where that
base cannot be built, it comes as near as it goes, in quarters of the way.  Chosen back, the old
form finds its old numbers.
"""

from __future__ import annotations

from collections.abc import Mapping

from geometry.bench import dovetailed_ends, seat_board
from geometry.bench.catalogue import broken_rules, parameter
from geometry.bench.overall import form_of, seat_height
from geometry.bench.settling import settled
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec

_BACK = (0.0, 0.25, 0.5, 0.75, 1.0)  # shares of the way back to the base height as it was
_DECIMALS = 6  # of a mm, as limits are written


def reformed(before: BenchSpec, wanted: BenchSpec, given: Mapping[str, Value]) -> BenchSpec:
    """``wanted``, whose seat has another form than ``before``; ``given`` stay as given."""
    fewer = {**seat_board.fitted(wanted), **dovetailed_ends.fitted(wanted)}
    wanted = wanted.changed({name: n for name, n in fewer.items() if name not in given})
    for height in () if "base_height" in given else _heights(before, wanted):
        there = settled(before, wanted.changed({"base_height": height}), given)
        if not broken_rules(there):
            return there
    return settled(before, wanted, given)


def _heights(before: BenchSpec, wanted: BenchSpec) -> list[float]:
    """Base heights to try, that which keeps the seat's height first."""
    row, now = parameter("base_height"), wanted.number("base_height")
    level = round(seat_height(before) - form_of(wanted).rise(wanted), _DECIMALS)
    goal = min(max(level, row.minimum), row.maximum)
    return [now if share == 1.0 else goal + share * (now - goal) for share in _BACK]
