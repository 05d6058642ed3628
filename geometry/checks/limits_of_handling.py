"""Limits of seats, lids, edges and outlines: what hands, feet and eyes find."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

WIDEST_BOARD = Limit(
    "widest_board", "Widest board in a glued-up seat", "mm", 200.0, TRADE, 50.0, 600.0
)
LEAST_GRIP = Limit(
    "least_grip", "Least room for fingertips under a lid", "mm", 12.0, TRADE, 4.0, 40.0
)
LEAST_STEP = Limit(
    "least_step",
    "Least step between two bevels that is told",
    "mm",
    0.05,
    f"{TRADE}: less is gone with the first stroke of a plane",
    0.0,
    5.0,
)
MOST_PROUD = Limit(
    "most_proud", "Most that a bevelled edge may stand proud", "mm", 0.0, TRADE, 0.0, 10.0
)
MOST_LEG_OUT = Limit(
    "most_leg_out",
    "Most that a base may stand out from under the bench",
    "mm",
    0.0,
    f"{TRADE}: the outline itself",
    0.0,
    100.0,
)
MOST_FOOT_OUT = Limit(
    "most_foot_out",
    "Most that a foot may stand beyond the bench's outline",
    "mm",
    0.0,
    f"{TRADE}: the outline itself",
    0.0,
    200.0,
)

ROWS: tuple[Limit, ...] = (
    WIDEST_BOARD,
    LEAST_GRIP,
    LEAST_STEP,
    MOST_PROUD,
    MOST_LEG_OUT,
    MOST_FOOT_OUT,
)
