"""Limits of the wood that cuts leave: beside mortises and bores, in tenons, along the grain."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

LEAST_BESIDE = Limit(
    "least_beside",
    "Least wood between a mortise or bore and any other cut",
    "mm",
    3.0,
    f"{TRADE}: less tears out under the cutter",
    0.5,
    20.0,
)

LEAST_OVER_SCREW = Limit(
    "least_over_screw",
    "Least wood between a screw's hole and any other cut",
    "mm",
    1.0,
    f"{TRADE}: less is pushed up by the screw's point",
    0.0,
    20.0,
)

LEAST_TONGUE = Limit(
    "least_tongue",
    "Least of a button's tongue in its mortise when the seat has moved",
    "mm",
    5.0,
    TRADE,
    0.0,
    15.0,
)
LEAST_THREAD = Limit("least_thread", "Least of a screw in the seat", "mm", 8.0, TRADE, 3.0, 40.0)
LEAST_SKIN = Limit(
    "least_skin", "Least wood beside a foot's threaded insert", "mm", 3.0, TRADE, 1.0, 20.0
)

SHORTEST_RUN = Limit(
    "shortest_run",
    "Shortest run of the grain that holds, for the piece's lesser size",
    "count",
    5.0,
    "Wood Handbook, slope of grain: at 1 in 5 about half the strength is left (value from memory)",
    1.0,
    20.0,
)
MOST_SHORT = Limit(
    "most_short", "Most of a section that may have short grain", "%", 50.0, TRADE, 5.0, 95.0
)
LEAST_END_GRAIN = Limit(
    "least_end_grain",
    "Least wood along the grain between a cut and the end of its piece",
    "mm",
    6.0,
    f"{TRADE}: less breaks out along the grain",
    1.0,
    40.0,
)

LOOSEST_IN_HOUSING = Limit(
    "loosest_in_housing",
    "Most that a piece may be loose across its housing, or its notch high",
    "mm",
    0.5,
    TRADE,
    0.0,
    3.0,
)

LEAST_PIN = Limit("least_pin", "Thinnest pin, tail or finger", "mm", 3.0, TRADE, 0.5, 15.0)
LEAST_TONGUE_IN_GROOVE = Limit(
    "least_tongue_in_groove", "Thinnest tongue in a groove", "mm", 3.0, TRADE, 1.0, 15.0
)
LEAST_LEFT = Limit(
    "least_left",
    "Least wood behind a housing, groove, rebate or hinge",
    "mm",
    2.0,
    f"{TRADE}: less breaks through under the cutter",
    0.5,
    12.0,
)

ROWS: tuple[Limit, ...] = (
    LEAST_BESIDE,
    LEAST_OVER_SCREW,
    LEAST_TONGUE,
    LEAST_THREAD,
    LEAST_SKIN,
    SHORTEST_RUN,
    MOST_SHORT,
    LEAST_END_GRAIN,
    LOOSEST_IN_HOUSING,
    LEAST_PIN,
    LEAST_TONGUE_IN_GROOVE,
    LEAST_LEFT,
)
