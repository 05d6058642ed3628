"""Limits of what is set up at the saw, marked on a board, and read off a drawing."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

# name, title, unit, default, source, least, most

ALIKE_WITHIN = Limit(
    "alike_within", "Pieces taken for one another differ by less than", "mm", 3.0, TRADE, 0.3, 20.0
)
ALIKE_ANGLE = Limit(
    "alike_angle", "Cuts taken for one another differ by less than", "deg", 1.0, TRADE, 0.1, 5.0
)
SAWN_ALIKE = Limit(
    "sawn_alike", "Pieces that differ by less are sawn alike", "mm", 0.25, TRADE, 0.1, 1.0
)

READ_APART = Limit(
    "read_apart",
    "Most that written sizes may miss a written sum",
    "mm",
    0.3,
    f"{TRADE}: a pencil line",
    0.05,
    5.0,
)

MOST_MISSED = Limit(
    "most_missed",
    "Most that a housing may miss its place",
    "mm",
    0.5,
    f"{TRADE}: what a wide board gives",
    0.05,
    5.0,
)
WIDEST_MITRE = Limit(
    "widest_mitre",
    "Widest gap of a mitre",
    "mm",
    0.2,
    f"{TRADE}: a thick shaving",
    0.02,
    3.0,
)

ROWS: tuple[Limit, ...] = (
    ALIKE_WITHIN,
    ALIKE_ANGLE,
    SAWN_ALIKE,
    READ_APART,
    MOST_MISSED,
    WIDEST_MITRE,
)
