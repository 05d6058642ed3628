"""Checks of the way to where a bench will stand: through the door, round the stair's corner."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.advice.passages import Passage, round_corner, through_door
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.brief_places import (
    by_brief,
    front_of_seat,
    lessened,
    points_of,
    said,
    seat_parts,
    size_of,
)
from geometry.checks.check import Check
from geometry.checks.limits_of_people import HEADROOM, ROOM_SPARE
from geometry.design.brief import Brief
from geometry.design.finding import Finding, Level, Mend

_HALVINGS = 30
_LEAST = 0.2  # of its length to which a bench is thought shortened at the most


def _door(bench: Bench, brief: Brief) -> Iterator[Finding]:
    if not brief.door_width or not brief.door_height:
        return
    width, height = brief.door_width, brief.door_height
    best = through_door(points_of(bench), width, height)
    if best.short <= 0.0:
        return
    apart = through_door(points_of(bench, seat_only=True), width, height)
    yield _stuck(
        "door",
        f"The bench does not go through a door of {said(width)} by {said(height)}: "
        f"pushed straight, {best.way}, it is {said(best.short)} too large however "
        "it is turned",
        best,
        apart,
        width,
        bench,
        _lower_or_shallower(bench, brief, best.short),
    )


def _stair(bench: Bench, brief: Brief) -> Iterator[Finding]:
    if not brief.stair_width or not brief.landing_depth:
        return
    headroom = brief.stair_height or HEADROOM.of(bench)
    ways = (brief.stair_width, brief.landing_depth, headroom)
    size = size_of(points_of(bench))
    best = round_corner(size, *ways)
    if best.short <= 0.0:
        return
    apart = round_corner(size_of(points_of(bench, seat_only=True)), *ways)
    yield _stuck(
        "stair",
        f"The bench does not go round the stair's corner, {said(brief.stair_width)} into "
        f"{said(brief.landing_depth)}: {best.way} it is "
        f"{said(best.short)} too large",
        best,
        apart,
        brief.stair_width,
        bench,
        _shorter(bench, size, ways),
    )


def _stuck(
    check: str,
    what: str,
    best: Passage,
    apart: Passage,
    limit: float,
    bench: Bench,
    mend: Mend | None,
) -> Finding:
    without = (
        "Without its base it goes: leave that dry until it is there."
        if apart.short <= 0.0
        else "Without its base it does not go either."
    )
    return Finding(
        check=f"past_{check}",
        level=Level.THINK_AGAIN,
        message=f"{what}. Taken whole, by its outline. {without}",
        parts=seat_parts(bench),
        place=front_of_seat(bench),
        amount=limit + best.short,
        limit=limit,
        mend=mend,
        estimate=True,
    )


def _lower_or_shallower(bench: Bench, brief: Brief, short: float) -> Mend | None:
    """The lower base or the shallower seat with which it goes through the door."""
    less = short + ROOM_SPARE.of(bench)
    for name in ("base_height", "depth"):
        mend = lessened(bench, name, bench.spec.number(name) - less)
        if mend is None:
            continue
        points = points_of(build(set_values(bench.spec, dict(mend.values))))
        if through_door(points, brief.door_width, brief.door_height).short <= 0.0:
            return mend
    return None


def _shorter(
    bench: Bench, size: tuple[float, float, float], ways: tuple[float, float, float]
) -> Mend | None:
    """The longest bench that goes round the corner, all else alike, to the whole millimetre."""
    long, deep, high = size
    low, far = _LEAST * long, long
    if round_corner((low, deep, high), *ways).short > 0.0:
        return None
    for _ in range(_HALVINGS):
        middle = (low + far) / 2.0
        if round_corner((middle, deep, high), *ways).short > 0.0:
            far = middle
        else:
            low = middle
    wanted = bench.spec.number("length") - (long - low) - ROOM_SPARE.of(bench)
    return lessened(bench, "length", float(math.floor(wanted)))


CHECKS: tuple[Check, ...] = (
    Check(
        "past_door",
        "Through the door",
        "Tries the bench's outline, end first, back first and top first, turned every way in the "
        "door's opening. An estimate: a bench with open legs may go through on a crooked way.",
        by_brief(_door),
        limits=(ROOM_SPARE,),
    ),
    Check(
        "past_stair",
        "Round the stair's corner",
        "Takes the bench as a box, as it stands, on its back, on its end, and tilted up as far as "
        "the headroom lets it, and turns it round a right-angled corner of the clear widths that "
        "the brief gives. An estimate: open legs may help, and rails may hinder. Where the brief "
        "has no headroom, that of the limits holds.",
        by_brief(_stair),
        limits=(HEADROOM, ROOM_SPARE),
    ),
)
