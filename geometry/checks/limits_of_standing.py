"""Limits of how a bench stands: what tips it, and what racks it."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

SITTER_PUSHES = Limit(
    "sitter_pushes",
    "Level push outward of the sitter who tips a bench",
    "N",
    0.0,
    "left out: ISO 7174-1:1988 has such a force in its annex, of which no copy was seen",
    0.0,
    300.0,
)
HAND_ON_DRAWER = Limit(
    "hand_on_drawer",
    "Hand that leans on the front of an open drawer",
    "N",
    50.0,
    TRADE,
    0.0,
    500.0,
)
RACKING_PUSH = Limit(
    "racking_push",
    "Level push at the seat that racks a bench",
    "N",
    330.0,
    "ISO 7173:1989, 7.6, at the front edge of a seat without a back, in a page that quotes it",
    50.0,
    2000.0,
)
MOST_OF_RACKED = Limit(
    "most_of_racked",
    "Most of a joint's strength to be used under a level push",
    "%",
    50.0,
    f"{TRADE}: more than of loads that stay",
    5.0,
    100.0,
)

ROWS: tuple[Limit, ...] = (
    SITTER_PUSHES,
    HAND_ON_DRAWER,
    RACKING_PUSH,
    MOST_OF_RACKED,
)
