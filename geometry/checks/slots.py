"""A check of the slots between base and seat against the air that the bench will stand in."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from geometry.advice.taking import for_moisture
from geometry.bench.above import above
from geometry.bench.bench import Bench
from geometry.bench.fixing_numbers import EASE, Place, fixed, fixing_numbers, screw_at
from geometry.checks.check import Check
from geometry.checks.limits_of_timber import DAMPEST as LIMIT_DAMPEST
from geometry.checks.limits_of_timber import DRIEST as LIMIT_DRIEST
from geometry.checks.moving import Air, air_of
from geometry.design.finding import Finding, Level, Mend
from shared.movement import DAMPEST, DRIEST
from shared.units import length_mark

_HAIR = 1e-9


def _short_slots(bench: Bench) -> Iterator[Finding]:
    """Slots and mortises against the movement of the air that the bench will stand in."""
    f, air = fixing_numbers(bench.spec), air_of(bench)
    if f.still:
        return
    made = f.seasons.made
    in_that_air = replace(f.seasons, low=min(air.driest, made), high=max(air.dampest, made))
    worst: tuple[float, float, float, Place] | None = None
    for place in fixed(bench.spec).places:
        y = screw_at(f, place)[1]
        shrinks, swells = in_that_air.moved(abs(y - f.held_at))
        for needed, there in (
            (shrinks, f.room_back(y) + EASE / 2.0),
            (swells, f.room_on(y) + EASE / 2.0),
        ):
            if needed > there + _HAIR and (worst is None or needed - there > worst[0]):
                worst = (needed - there, needed, there, place)
    if worst is None:
        return
    _, needed, there, place = worst
    board = bench.part(above(bench.spec).part)
    yield Finding(
        check="slot_short",
        level=Level.THINK_AGAIN,
        message=(
            f"{board.title} moves {length_mark(round(needed, 1))} one way at its farthest fixing, "
            f"{air.words}, and has {length_mark(round(there, 1))} of room there."
        ),
        parts=(place.bearer.part, board.name),
        place=screw_at(f, place),
        amount=needed,
        limit=there,
        mend=_for_air(bench, air),
        estimate=True,
    )


def _for_air(bench: Bench, air: Air) -> Mend | None:
    """Slots cut for this air, as far as the equation is good."""
    low, high = max(DRIEST, math.floor(air.driest)), min(DAMPEST, math.ceil(air.dampest))
    made = min(max(bench.spec.number("moisture_made"), low), high)
    changes, _ = for_moisture(bench.spec, low, made, high)
    return Mend(f"Cut slots for {low} to {high} % moisture.", changes) if changes else None


CHECKS: tuple[Check, ...] = (
    Check(
        "slot_short",
        "Slots too short for the air",
        "Slots for screws and mortises for buttons are cut for the moistures that you set. The air "
        "of the brief may be drier or damper: then the seat pulls at its screws. Movement by the "
        "Wood Handbook, equation 13-2; the limit is the room that there is.",
        _short_slots,
        ("fixings",),
        (LIMIT_DRIEST, LIMIT_DAMPEST),
    ),
)
