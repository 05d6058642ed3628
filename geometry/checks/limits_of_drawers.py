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
DRAWER_FILL = Limit(
    "drawer_fill",
    "Load of a drawer, by the room inside it",
    "kg/m³",
    330.0,
    f"{TRADE}: a third of a kilogram a litre; linen is about half of that, papers twice as much",
    0.0,
    8000.0,
)
MOST_OF_RUNNER = Limit(
    "most_of_runner",
    "Most of a runner's load to be used",
    "%",
    100.0,
    f"{TRADE}: check your runner's sheet",
    10.0,
    100.0,
)

ROWS: tuple[Limit, ...] = (
    LEAST_GAP,
    DEEPEST_GROOVE,
    WIDEST_ON_WOOD,
    LEAST_HOLD,
    DRAWER_FILL,
    MOST_OF_RUNNER,
)
