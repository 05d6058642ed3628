"""Limits of those who sit, of the room round the bench and of the way there."""

from __future__ import annotations

from geometry.checks.limit import TRADE, Limit

FAR_OFF = Limit(
    "far_off",
    "Off what the brief asks, from which one should think again",
    "mm",
    25.0,
    f"{TRADE}: an inch off is felt",
    1.0,
    200.0,
)
ROOM_SPARE = Limit(
    "room_spare", "Least left over in its place, and after a mend", "mm", 1.0, TRADE, 0.0, 500.0
)
LEAST_HEELS = Limit(
    "least_heels", "Least room for the heels under the seat's front", "mm", 75.0, TRADE, 0.0, 300.0
)
HEEL_HEIGHT = Limit(
    "heel_height", "How high a heel reaches that is drawn back", "mm", 80.0, TRADE, 20.0, 300.0
)
HEADROOM = Limit(
    "headroom",
    "Headroom of a stair, where the brief does not say it",
    "mm",
    2032.0,
    "International Residential Code R311.7.2: 6 ft 8 in; from memory",
    1500.0,
    5000.0,
)

ROWS: tuple[Limit, ...] = (FAR_OFF, ROOM_SPARE, LEAST_HEELS, HEEL_HEIGHT, HEADROOM)
