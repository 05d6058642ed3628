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

ROWS: tuple[Limit, ...] = (
    SITTER_PUSHES,
    HAND_ON_DRAWER,
)
