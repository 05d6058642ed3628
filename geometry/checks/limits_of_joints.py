"""Limits of joints: tenons, walls, housings, rebates, laps and wedges."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

LEAST_WALL = Limit(
    "least_wall", "Thinnest tenon or wall beside a mortise", "mm", 6.0, TRADE, 1.0, 30.0
)
LEAST_COVER = Limit(
    "least_cover",
    "Least cover over a housing's round",
    "mm",
    1.0,
    f"{TRADE}: what easing an arris takes off",
    0.0,
    20.0,
)
LEAST_FRONT = Limit(
    "least_front",
    "Least wood in front of a stopped housing",
    "mm",
    3.0,
    TRADE,
    0.0,
    40.0,
)
DEEPEST_HOUSING = Limit(
    "deepest_housing",
    "Deepest housing, of the board's thickness",
    "%",
    50.0,
    f"{TRADE}: a quarter to a third is usual, a half the most",
    10.0,
    90.0,
)
DEEPEST_REBATE = Limit(
    "deepest_rebate",
    "Deepest rebate, of the board's thickness",
    "%",
    200.0 / 3.0,
    f"{TRADE}: half to two thirds is usual",
    10.0,
    90.0,
)
LEAST_BETWEEN = Limit(
    "least_between",
    "Least wood between two housings back to back, of the thickness",
    "%",
    100.0 / 3.0,
    TRADE,
    5.0,
    90.0,
)
SHORTEST_IN_HOUSINGS = Limit(
    "shortest_in_housings",
    "Most that a shelf or partition may be short in its housings",
    "mm",
    2.0,
    TRADE,
    0.0,
    10.0,
)
FLATTEST_LAP = Limit(
    "flattest_lap", "Flattest crossing of two stretchers", "deg", 12.0, TRADE, 2.0, 60.0
)
STEEPEST_WEDGE = Limit(
    "steepest_wedge", "Steepest wedge, thickness over length", "%", 20.0, TRADE, 5.0, 50.0
)
TALLEST_MORTISE = Limit(
    "tallest_mortise",
    "Tallest mortise, of the stretcher's height",
    "%",
    50.0,
    f"{TRADE}: a third is usual, a half the most",
    10.0,
    90.0,
)
SHORTEST_STUB = Limit(
    "shortest_stub",
    "Shortest stub tenon, of the thickness it goes into",
    "%",
    50.0,
    f"{TRADE}: two thirds is usual",
    10.0,
    90.0,
)
SHORTEST_ROUND = Limit(
    "shortest_round",
    "Shortest round tenon, of its own thickness",
    "%",
    100.0,
    TRADE,
    25.0,
    300.0,
)
FLATTEST_IN_SOFT = Limit(
    "flattest_in_soft",
    "Flattest dovetails that soft timber stands, one in",
    "count",
    6.0,
    f"{TRADE}: 1 in 6 for soft timber, 1 in 8 for hard",
    4.0,
    12.0,
)
MOST_LEVER_IN_SEAT = Limit(
    "most_lever_in_seat",
    "Highest back rest for its tenons' length in the seat",
    "%",
    1200.0,
    TRADE,
    100.0,
    3000.0,
)
MOST_LEVER_BEHIND = Limit(
    "most_lever_behind",
    "Highest back rest for its posts' length behind the seat",
    "%",
    400.0,
    TRADE,
    100.0,
    3000.0,
)

ROWS: tuple[Limit, ...] = (
    LEAST_WALL,
    LEAST_COVER,
    LEAST_FRONT,
    DEEPEST_HOUSING,
    DEEPEST_REBATE,
    LEAST_BETWEEN,
    SHORTEST_IN_HOUSINGS,
    FLATTEST_LAP,
    STEEPEST_WEDGE,
    TALLEST_MORTISE,
    SHORTEST_STUB,
    SHORTEST_ROUND,
    FLATTEST_IN_SOFT,
    MOST_LEVER_IN_SEAT,
    MOST_LEVER_BEHIND,
)
