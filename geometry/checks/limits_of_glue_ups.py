"""Limits of glue-ups: how long glue stays open, and what clamps can press."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

# name, title, unit, default, source, least, most

OPEN_TIME = Limit(
    "open_time",
    "How long glue stays open, from the first spreading to the clamps",
    "min",
    10.0,
    f"{TRADE}: white glue at {{20 °C}}; the bottle says",
    1.0,
    240.0,
)
MINUTES_A_JOINT = Limit(
    "minutes_a_joint",
    "To spread glue on a joint and put it together",
    "min",
    0.5,
    f"{TRADE}: one pair of hands, with a brush",
    0.1,
    20.0,
)
MINUTES_A_DOVETAIL = Limit(
    "minutes_a_dovetail",
    "The same for a dovetailed or box-jointed corner",
    "min",
    2.0,
    f"{TRADE}: each tail and pin has its faces",
    0.1,
    30.0,
)
MOST_SLANT = Limit(
    "most_slant",
    "Most slant between a clamp and the face it presses before one slips on the other",
    "deg",
    5.0,
    f"{TRADE}: what a swivelling pad takes up, and wet glue holds",
    0.5,
    20.0,
)
STEEPEST_CAUL = Limit(
    "steepest_caul",
    "Steepest wedge-shaped caul",
    "deg",
    45.0,
    f"{TRADE}: a block for a square mitre",
    5.0,
    60.0,
)
LONGEST_CLAMP = Limit(
    "longest_clamp",
    "Longest clamp there is, between its jaws",
    "mm",
    2500.0,
    f"{TRADE}: a long sash cramp with a lengthening bar",
    100.0,
    6000.0,
)

ROWS: tuple[Limit, ...] = (
    OPEN_TIME,
    MINUTES_A_JOINT,
    MINUTES_A_DOVETAIL,
    MOST_SLANT,
    STEEPEST_CAUL,
    LONGEST_CLAMP,
)
