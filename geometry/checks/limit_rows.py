"""The limits that findings are judged by, with where each comes from: one row a limit.

A maker may change any of them; the change is kept with the project.  ``common practice, no source``
marks a rule of the trade for which no book was found.
"""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

# name, title, unit, default, source, least, most

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
LEAST_GAP = Limit(
    "least_gap", "Least gap round a drawer's front", "mm", 1.0, f"{TRADE}: small fronts", 0.0, 5.0
)
DEEPEST_GROOVE = Limit(
    "deepest_groove",
    "Deepest groove for a drawer's bottom, of the thickness",
    "%",
    50.0,
    TRADE,
    10.0,
    90.0,
)
WIDEST_ON_WOOD = Limit(
    "widest_on_wood",
    "Widest drawer on wooden runners, of its length",
    "%",
    150.0,
    TRADE,
    50.0,
    400.0,
)

LEAST_HOLD = Limit(
    "least_hold", "Least depth of a finger groove that holds", "mm", 5.0, TRADE, 1.0, 12.0
)

SEAT_LOAD = Limit(
    "seat_load",
    "Load of a person sitting, anywhere",
    "N",
    1112.0,
    "2010 ADA Standards 903.6: 250 lbf; it binds only where another section calls for it",
    300.0,
    5000.0,
)
MOST_OF_STRENGTH = Limit(
    "most_of_strength", "Most of a timber's strength to be used", "%", 33.0, TRADE, 5.0, 100.0
)
SHELF_LOAD = Limit(
    "shelf_load",
    "Books on a metre of shelf",
    "N",
    330.0,
    "trade guideline, 20 to 25 lb a foot (brezlin.com, shelving guidelines)",
    0.0,
    3000.0,
)
VISIBLE_SAG = Limit(
    "visible_sag",
    "Sag that is seen, on a metre of shelf",
    "mm",
    2.6,
    "trade guideline, 1/32 in a foot (brezlin.com, shelving guidelines)",
    0.2,
    20.0,
)

LIMITS: tuple[Limit, ...] = (
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
    LEAST_GAP,
    DEEPEST_GROOVE,
    WIDEST_ON_WOOD,
    LEAST_HOLD,
    SEAT_LOAD,
    MOST_OF_STRENGTH,
    SHELF_LOAD,
    VISIBLE_SAG,
)

BY_NAME: dict[str, Limit] = {row.name: row for row in LIMITS}
