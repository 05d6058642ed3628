"""What strength is judged by beside the loads: who sits how near to whom, floors, back rests."""

from __future__ import annotations

from geometry.checks.limit import Limit

HEAVY_SITTER = Limit(
    "heavy_sitter",
    "Weight of each person who sits, where the brief names none",
    "N",
    1079.0,
    "EN 16139, scope: persons of up to {110 kg}",
    300.0,
    3000.0,
)
SITTERS_APART = Limit(
    "sitters_apart",
    "From the middle of one person to the next",
    "mm",
    500.0,
    "ANSUR II: half of all men are {509 mm} or less across the shoulders",
    300.0,
    1500.0,
)
FLOOR_GRIP = Limit(
    "floor_grip",
    "Grip of the floor on a foot, of the force on it",
    "%",
    20.0,
    "from memory: wood on wood 25 to 50 %, on a waxed floor 20 %",
    0.0,
    100.0,
)
BACK_PUSH = Limit(
    "back_push",
    "Push of each person who leans back hard",
    "N",
    450.0,
    "EN 12520, static load on a back, from memory; ISO 7173 tries fatigue with {330 N}",
    100.0,
    3000.0,
)

ROWS: tuple[Limit, ...] = (
    HEAVY_SITTER,
    SITTERS_APART,
    FLOOR_GRIP,
    BACK_PUSH,
)
