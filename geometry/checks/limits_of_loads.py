"""Loads, and how far timber may be strained and bent by them."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

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
    "Books on {1000 mm} of shelf",
    "N",
    330.0,
    "trade guideline, 20 to 25 lb a foot (brezlin.com, shelving guidelines)",
    0.0,
    3000.0,
)
VISIBLE_SAG = Limit(
    "visible_sag",
    "Sag that is seen, on {1000 mm} of shelf",
    "mm",
    2.6,
    "trade guideline, 1/32 in a foot (brezlin.com, shelving guidelines)",
    0.2,
    20.0,
)
SEAT_BENDS = Limit(
    "seat_bends",
    "A seat bends no more than its span divided by",
    "count",
    360.0,
    f"{TRADE}, from memory",
    60.0,
    2000.0,
)
AFTER_A_YEAR = Limit(
    "after_a_year",
    "Sag of a shelf after a year, of its first sag",
    "%",
    200.0,
    "from memory; a trade guideline (branchingoutwood.com, sagging shelves) says 150",
    100.0,
    400.0,
)
SITTER = Limit(
    "sitter",
    "Weight of the sitter who tips a bench",
    "N",
    600.0,
    "ISO 7174-1:1988, 7.1.1 and 7.1.2, in a page that quotes it",
    100.0,
    2000.0,
)
SITTER_FROM_EDGE = Limit(
    "sitter_from_edge",
    "From the seat's edge to the middle of who sits on it",
    "mm",
    50.0,
    "ISO 7174-1:1988, 7.1.1, in a page that quotes it",
    0.0,
    200.0,
)
SITTER_BEFORE_BACK = Limit(
    "sitter_before_back",
    "From a back rest to the middle of who leans on it",
    "mm",
    175.0,
    "ISO 7174-1:1988, 7.1.2, in a page that quotes it",
    50.0,
    400.0,
)
PUSHED_UP = Limit(
    "pushed_up",
    "Height over the seat at which a back rest is pushed",
    "mm",
    300.0,
    "EN 1022, from memory",
    100.0,
    600.0,
)

ROWS: tuple[Limit, ...] = (
    SEAT_LOAD,
    MOST_OF_STRENGTH,
    SHELF_LOAD,
    VISIBLE_SAG,
    SEAT_BENDS,
    AFTER_A_YEAR,
    SITTER,
    SITTER_FROM_EDGE,
    SITTER_BEFORE_BACK,
    PUSHED_UP,
)
