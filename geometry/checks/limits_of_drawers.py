"""Limits of drawers and their fronts."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

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

ROWS: tuple[Limit, ...] = (
    LEAST_GAP,
    DEEPEST_GROOVE,
    WIDEST_ON_WOOD,
    LEAST_HOLD,
)
