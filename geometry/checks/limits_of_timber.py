"""Limits of timber: how it moves, which way its grain runs, what boards and sheets there are."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

DRIEST = Limit(
    "driest_timber",
    "Driest timber, where the brief does not say the air",
    "%",
    6.0,
    "Wood Handbook, FPL-GTR-190, table 13-1: interior, 6 to 10 %; from memory",
    2.0,
    20.0,
)
DAMPEST = Limit(
    "dampest_timber",
    "Dampest timber, where the brief does not say the air",
    "%",
    10.0,
    "Wood Handbook, FPL-GTR-190, table 13-1: interior, 6 to 10 %; from memory",
    4.0,
    25.0,
)
MOST_HELD = Limit(
    "most_held",
    "Most that pieces held fast may move on each other",
    "mm",
    2.5,
    f"{TRADE}: what 170 mm of oak move in a heated room",
    0.1,
    20.0,
)
LEAST_LAP = Limit(
    "least_lap",
    "Least of a solid panel in its groove or rebate when it is driest",
    "mm",
    1.5,
    TRADE,
    0.0,
    15.0,
)

ROWS: tuple[Limit, ...] = (
    DRIEST,
    DAMPEST,
    MOST_HELD,
    LEAST_LAP,
)
