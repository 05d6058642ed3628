"""What corner blocks and their screws ask of a maker, and of the aprons that they stand between."""

from __future__ import annotations

from collections.abc import Callable

from geometry.bench.constraint import Constraint, rule
from geometry.bench.corner_block_numbers import (
    DIAGONAL,
    SQUARE,
    WITHOUT,
    CornerBlocks,
    corner_blocks,
    head_room,
)
from geometry.design.parameter import Parameter, choice, count, length
from geometry.design.spec import BenchSpec
from shared.fixings import SCREW_EASE, WOOD_SCREWS

# Common practice, no source, these:
_LEAST_THROUGH = 2.0  # mm of apron that stays in front of a screw's point
_LEAST_WALL = 2.0  # mm of block or apron beside a hole
_LEAST_BETWEEN = 20.0  # mm between two blocks on an apron

CHOICE: tuple[Parameter, ...] = (
    choice(
        "corner_blocks",
        "Corner blocks",
        "Base",
        WITHOUT,
        (WITHOUT, DIAGONAL, SQUARE),
        "Blocks behind the legs, glued and screwed to the aprons: across the corner, or square in "
        "it.",
    ),
)


def _screwed(spec: BenchSpec) -> bool:
    return spec.count("corner_block_screws") > 0


PARAMETERS: tuple[Parameter, ...] = (
    length(
        "corner_block_height",
        "Corner block height",
        "Base",
        45,
        15,
        200,
        "From the aprons' upper edges down.",
    ),
    length(
        "corner_block_thickness",
        "Corner block thickness",
        "Base",
        28,
        12,
        80,
        "Of a block across the corner; how far a square one reaches beyond the leg.",
        step=0.5,
    ),
    length(
        "corner_block_gap",
        "Corner block off the leg",
        "Base",
        3,
        0.5,
        30,
        "Between the block and the inner arris of the leg.",
        step=0.5,
    ),
    count(
        "corner_block_screws",
        "Screws into each apron",
        "Base",
        1,
        0,
        3,
        "From each corner block, one above the other; none, and it is only glued.",
    ),
    choice(
        "corner_block_screw",
        "Corner block screw",
        "Base",
        "no. 8",
        tuple(WOOD_SCREWS),
        "Gauge of the wood screws.",
        applies=_screwed,
    ),
    length(
        "corner_block_land",
        "Block under the screw's head",
        "Base",
        12,
        4,
        60,
        "Wood between a screw's head and the apron.",
        step=0.5,
        applies=_screwed,
    ),
    length(
        "corner_block_bite",
        "Screw in the apron",
        "Base",
        14,
        5,
        50,
        "How deep the corner blocks' screws go into the aprons.",
        step=0.5,
        applies=_screwed,
    ),
)


def _when_screwed(slack: Callable[[CornerBlocks], float]) -> Callable[[BenchSpec], float]:
    return lambda spec: slack(corner_blocks(spec)) if _screwed(spec) else 1.0


def _apart(spec: BenchSpec) -> float:
    b = corner_blocks(spec)
    (along, across), n = b.reach, b.legs
    return min(n.right - n.left - 2.0 * along, n.back - n.front - 2.0 * across) - _LEAST_BETWEEN


def _heads(b: CornerBlocks) -> float:
    return min(head_room(b, end=end) for end in (True, False)) - b.land


def _walls(b: CornerBlocks) -> float:
    """Between the screws and the upper and lower faces, between one another, and beside them."""
    room = [b.height / b.screws - b.head]
    for end in (True, False):
        sine, levels = b.sine(end=end), b.levels(end=end)
        # Heads lie lower than the glued face is met, the screws' points higher.
        room.append(b.height - levels[-1] - b.wood_along(end=end) * sine - b.head / 2.0)
        room.append(levels[0] - max((b.shank + SCREW_EASE) / 2.0, b.bite * sine + b.pilot / 2.0))
        room.append(levels[0] + b.land * sine - b.head / 2.0)
    if not b.diagonal:
        # Where they pass each other, unlike leans bring them nearer.
        unlike = abs(b.sine(end=True) - b.sine(end=False))
        room[0] = b.passing - b.head - unlike * b.wood_along(end=True) / 2.0
        room.append((b.thickness - b.head) / 2.0)
    return min(room) - _LEAST_WALL


_APRON = "apron_height apron_thickness apron_reveal rake splay leg_size base_height"
_BLOCK = "corner_blocks corner_block_height corner_block_thickness corner_block_gap"
_SCREW = "corner_block_screws corner_block_screw"

CONSTRAINTS: tuple[Constraint, ...] = (
    rule(
        "corner_block_on_apron",
        "apron_height corner_block_height",
        lambda s: s.number("apron_height") - s.number("corner_block_height"),
        "the corner blocks would reach below the aprons",
    ),
    rule(
        "corner_blocks_between",
        f"length depth inset_left inset_right inset_back inset_front {_APRON} {_BLOCK}",
        _apart,
        "two corner blocks on an apron would be less than {20 mm} apart",
    ),
    rule(
        "corner_block_through",
        "apron_thickness corner_block_bite corner_block_screws",
        lambda s: (
            s.number("apron_thickness") - s.number("corner_block_bite") - _LEAST_THROUGH
            if _screwed(s)
            else 1.0
        ),
        "the corner blocks' screws would come through the aprons",
    ),
    rule(
        "corner_block_heads",
        f"{_APRON} {_BLOCK} {_SCREW} corner_block_land",
        _when_screwed(_heads),
        "the screws' heads would stand out of the corner blocks",
    ),
    rule(
        "corner_block_walls",
        f"{_APRON} {_BLOCK} {_SCREW} corner_block_bite",
        _when_screwed(_walls),
        "a corner block's screw would leave less than {2 mm} of wood beside it",
    ),
)
