"""Checks of a bench against its brief: who sits on it, and where it goes."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from geometry.advice.advised import CLOSE, Advice
from geometry.advice.all_advice import advice
from geometry.advice.taking import Changes, for_value
from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.checks.brief_places import (
    Run,
    by_brief,
    front_of_seat,
    lessened,
    points_of,
    said,
    seat_parts,
)
from geometry.checks.check import Check
from geometry.checks.limits_of_people import FAR_OFF, HEEL_HEIGHT, LEAST_HEELS, ROOM_SPARE
from geometry.design.brief import LONG_SIT, NOBODY, WEAK_KNEES, Brief
from geometry.design.finding import Finding, Level, Mend
from geometry.design.part import Part
from geometry.solids.cutting import placed
from shared.seating import LEAST_ROUNDING, PRACTICE

_FEET = 300.0  # mm: what is narrower leaves room for feet on either side; common practice


def _asked(check: str, name: str, *, lacks_only: bool = False) -> Run:
    """A check that finds where the bench is off what the advice of this name asks.

    With ``lacks_only`` it may well be more.
    """

    def run(bench: Bench, brief: Brief) -> Iterator[Finding]:
        for one in advice(bench, brief):
            if one.name != name or one.met or one.now is None:
                continue
            too_little = one.low is not None and one.now < one.low
            limit = one.low if too_little else one.high
            if limit is None or (lacks_only and not too_little):
                continue
            grave = one.off > FAR_OFF.of(bench)
            yield Finding(
                check=check,
                level=Level.THINK_AGAIN if grave else Level.GOOD_TO_KNOW,
                message=(
                    f"{one.title} is {said(one.now)}, {said(one.off)} "
                    f"{'less' if too_little else 'more'} than the brief asks. {one.reason}"
                ),
                parts=seat_parts(bench),
                place=front_of_seat(bench),
                amount=one.now,
                limit=limit,
                mend=_taking(one),
            )

    return run


def _taking(one: Advice) -> Mend | None:
    if not one.changes or one.wanted is None:
        return None
    return Mend(f"{one.title} {said(one.wanted)}.", one.changes)


def _hard_edge(bench: Bench, brief: Brief) -> Iterator[Finding]:
    """On a long sit a sharp front edge is felt under the thigh."""
    if brief.use != LONG_SIT or brief.who == NOBODY or not has(bench.spec, "edges"):
        return
    rounding = bench.spec.number("chamfer")
    if rounding >= LEAST_ROUNDING:
        return
    yield Finding(
        check="hard_edge",
        level=Level.GOOD_TO_KNOW,
        message=(
            f"The seat's front edge is broken by {said(rounding)} only: on a long sit it "
            f"presses under the thigh. {said(LEAST_ROUNDING)} or more is kinder "
            f"({PRACTICE})."
        ),
        parts=seat_parts(bench),
        place=front_of_seat(bench),
        amount=rounding,
        limit=LEAST_ROUNDING,
        mend=Mend(f"Chamfer {said(LEAST_ROUNDING)}.", (("chamfer", LEAST_ROUNDING),)),
    )


def _heels(bench: Bench, brief: Brief) -> Iterator[Finding]:
    """What stands under the seat's front where heels are drawn back to stand up."""
    if brief.who == NOBODY:
        return
    high, least = HEEL_HEIGHT.of(bench), LEAST_HEELS.of(bench)
    front = -bench.spec.number("depth")
    near: list[tuple[float, Part]] = []
    for part in bench.parts:
        corners = placed(part).vertices
        close = corners[corners[:, 1] < front + least]
        if not close.size or float(close[:, 2].min()) >= high or np.ptp(close[:, 0]) < _FEET:
            continue
        near.append((float(close[:, 1].min()) - front, part))
    if not near:
        return
    room, part = min(near, key=lambda one: one[0])
    if room >= least - CLOSE:
        return
    changes: Changes = ()
    if has(bench.spec, "plinth"):
        inset = bench.spec.number("inset_front") + least - room
        changes, _ = for_value(bench.spec, "inset_front", inset)
    yield Finding(
        check="heel_room",
        level=Level.THINK_AGAIN if brief.use == WEAK_KNEES else Level.GOOD_TO_KNOW,
        message=(
            f"Heels find {said(max(0.0, room))} between the seat's front and "
            f"{part.title.lower()}: to stand up one draws one's feet back by {said(least)}."
        ),
        parts=(part.name,),
        place=(bench.spec.number("length") / 2.0, front + room, 0.0),
        amount=room,
        limit=least,
        mend=Mend(f"Set the plinth's front in by {said(least)}.", changes) if changes else None,
    )


def _room(bench: Bench, brief: Brief) -> Iterator[Finding]:
    """The bench as it stands against the limits of its place in each direction."""
    points, spare = points_of(bench), ROOM_SPARE.of(bench)
    low, high = points.min(axis=0), points.max(axis=0)
    sizes = [float(size) for size in high - low]
    for axis, (limit, what, value) in enumerate(
        (
            (brief.room_length, "long", "length"),
            (brief.room_depth, "deep", "depth"),
            (brief.room_height, "high", "base_height"),
        )
    ):
        over = sizes[axis] + spare - limit
        if not limit or over <= CLOSE:
            continue
        wanted = bench.spec.number(value) - over
        yield Finding(
            check=f"too_{what}_for_room",
            level=Level.THINK_AGAIN,
            message=(
                f"With all that stands out, the bench is {said(sizes[axis])} "
                f"{what}, and its place leaves {said(limit)}: "
                f"{said(over)} too much, if {said(spare)} is to be left over."
            ),
            parts=seat_parts(bench),
            place=front_of_seat(bench),
            amount=sizes[axis],
            limit=limit,
            mend=lessened(bench, value, wanted),
        )


CHECKS: tuple[Check, ...] = (
    Check(
        "seat_height",
        "Seat height against those who sit",
        "Compares the seat's height with the lower leg of those whom the brief names, the shoe and "
        "what the bench is for. The limits are the brief's advice, each with its source.",
        by_brief(_asked("seat_height", "seat_height")),
        limits=(FAR_OFF,),
    ),
    Check(
        "seat_depth",
        "Seat depth against those who sit",
        "A seat deeper than the upper leg allows cuts into the hollow of the knee, one too shallow "
        "carries little of the thigh. In front of a back rest it is measured from that. The limits "
        "are the brief's advice.",
        by_brief(_asked("seat_depth", "seat_depth")),
        limits=(FAR_OFF,),
    ),
    Check(
        "room_for_all",
        "Room for all who sit",
        "Compares the bench's length with what those who sit on it ask for. That is as many "
        "persons as the brief says, with the shoulders of the broadest and room for elbows, or the "
        "length that a standard asks for where the brief is held to one.",
        by_brief(_asked("room_for_all", "seat_length", lacks_only=True)),
        limits=(FAR_OFF,),
    ),
    Check(
        "hard_edge",
        "Front edge under the thigh",
        "On a long sit the thigh rests on the seat's front edge. An edge broken by less than "
        "{3 mm} is felt: common practice, no source.",
        by_brief(_hard_edge),
    ),
    Check(
        "heel_room",
        "Room for the heels",
        "Whoever stands up draws the feet back under the seat. Looks for what is as wide as two "
        "feet and reaches lower than a heel under the seat's front edge. {75 mm} are enough: "
        "common practice, no source. No matter where nobody in particular sits.",
        by_brief(_heels),
        limits=(LEAST_HEELS, HEEL_HEIGHT),
    ),
    Check(
        "too_large_for_room",
        "Larger than its place",
        "The bench with all that stands out from it against the room that the brief gives it "
        "along, in front and above. A little is to be left over, as no wall is straight; the limit "
        "is the brief's own.",
        by_brief(_room),
        limits=(ROOM_SPARE,),
    ),
)
