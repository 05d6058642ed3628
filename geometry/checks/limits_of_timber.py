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
    f"{TRADE}: what {{170 mm}} of oak move in a heated room",
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

MOST_OFF_GRAIN = Limit(
    "most_off_grain",
    "Most that the grain may lean from the way it should run",
    "deg",
    45.0,
    f"{TRADE}: nearer across than along",
    10.0,
    85.0,
)
MOST_ACROSS = Limit(
    "most_across",
    "Most that a piece may be across its grain, of its length along it",
    "%",
    200.0,
    TRADE,
    50.0,
    1000.0,
)
LONGEST_BOARD = Limit(
    "longest_board", "Longest board that there is", "mm", 3000.0, TRADE, 300.0, 8000.0
)
WIDEST_STOCK = Limit("widest_stock", "Widest board that there is", "mm", 600.0, TRADE, 50.0, 1500.0)
THICKEST_BOARD = Limit(
    "thickest_board",
    "Thickest board that there is, planed",
    "mm",
    95.25,
    "hardwood of 16/4, planed on two sides to 3 3/4 in; from memory",
    10.0,
    400.0,
)
NARROWEST_STRIP = Limit(
    "narrowest_strip", "Narrowest strip that can be sawn safely", "mm", 5.0, TRADE, 1.0, 60.0
)
SHEET_LENGTH = Limit(
    "sheet_length",
    "Length of the sheets that there are",
    "mm",
    2500.0,
    "table of sheet sizes: {2500 mm} × {1250 mm}",
    300.0,
    6000.0,
)
SHEET_WIDTH = Limit(
    "sheet_width",
    "Width of the sheets that there are",
    "mm",
    1250.0,
    "table of sheet sizes: {2500 mm} × {1250 mm}",
    200.0,
    3000.0,
)

ROWS: tuple[Limit, ...] = (
    DRIEST,
    DAMPEST,
    MOST_HELD,
    LEAST_LAP,
    MOST_OFF_GRAIN,
    MOST_ACROSS,
    LONGEST_BOARD,
    WIDEST_STOCK,
    THICKEST_BOARD,
    NARROWEST_STRIP,
    SHEET_LENGTH,
    SHEET_WIDTH,
)
