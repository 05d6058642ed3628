"""Checks of a bench against its brief: who sits on it, where it goes, and how it gets there."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

import numpy as np

from geometry.advice.advised import CLOSE, Advice
from geometry.advice.all_advice import advice
from geometry.advice.passages import Passage, round_corner, through_door
from geometry.advice.standing import ON_FLOOR
from geometry.advice.taking import for_value
from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.bench.overall import seat_height
from geometry.checks.check import Check
from geometry.design.brief import LONG_SIT, NOBODY, Brief
from geometry.design.finding import Finding, Level, Mend
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from shared.seating import LEAST_ROUNDING, PRACTICE
from shared.units import length_mark

FAR_OFF = 25.0  # mm: an inch off is felt; common practice, no source
SPARE = 1.0  # mm left over after a mend for the room


def _advised(bench: Bench, brief: Brief, name: str) -> Iterator[Finding]:
    """What the advice of this name asks, as a finding where the bench is off it."""
    for one in advice(bench, brief):
        if one.name != name or one.met or one.now is None:
            continue
        too = "less" if one.low is not None and one.now < one.low else "more"
        limit = one.low if too == "less" else one.high
        assert limit is not None
        yield Finding(
            check=name,
            level=Level.THINK_AGAIN if one.off > FAR_OFF else Level.GOOD_TO_KNOW,
            message=(
                f"{one.title} is {_mm(one.now)}, {_mm(one.off)} {too} than the "
                f"brief asks. {one.reason}"
            ),
            parts=_seat_parts(bench),
            place=_front_of_seat(bench),
            amount=one.now,
            limit=limit,
            mend=_taking(one),
        )


def _taking(one: Advice) -> Mend | None:
    if not one.changes or one.wanted is None:
        return None
    return Mend(f"{one.title} {_mm(one.wanted)}.", one.changes)


def _height(bench: Bench, brief: Brief) -> Iterator[Finding]:
    return _advised(bench, brief, "seat_height")


def _depth(bench: Bench, brief: Brief) -> Iterator[Finding]:
    return _advised(bench, brief, "seat_depth")


def _room_for_all(bench: Bench, brief: Brief) -> Iterator[Finding]:
    for one in advice(bench, brief):
        if one.name != "seat_length" or one.low is None or one.now is None or one.now >= one.low:
            continue
        yield Finding(
            check="room_for_all",
            level=Level.THINK_AGAIN,
            message=(
                f"The bench is {_mm(one.now)} long, {_mm(one.low - one.now)} short "
                f"of what the brief asks. {one.reason}"
            ),
            parts=_seat_parts(bench),
            place=_front_of_seat(bench),
            amount=one.now,
            limit=one.low,
            mend=_taking(one),
        )


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
            f"The seat's front edge is broken by {_mm(rounding)} only: on a long sit it "
            f"presses under the thigh. {_mm(LEAST_ROUNDING)} or more is kinder "
            f"({PRACTICE})."
        ),
        parts=_seat_parts(bench),
        place=_front_of_seat(bench),
        amount=rounding,
        limit=LEAST_ROUNDING,
        mend=Mend(f"Chamfer {_mm(LEAST_ROUNDING)}.", (("chamfer", LEAST_ROUNDING),)),
    )


def _room(bench: Bench, brief: Brief) -> Iterator[Finding]:
    """The bench as it stands against the limits of its place in each direction."""
    points = _points(bench)
    low, high = points.min(axis=0), points.max(axis=0)
    sizes = [float(size) for size in high - low]
    for axis, (limit, what, value) in enumerate(
        (
            (brief.room_length, "long", "length"),
            (brief.room_depth, "deep", "depth"),
            (brief.room_height, "high", "base_height"),
        )
    ):
        over = sizes[axis] - limit
        if not limit or over <= CLOSE:
            continue
        wanted = bench.spec.number(value) - over - SPARE
        yield Finding(
            check=f"too_{what}_for_room",
            level=Level.THINK_AGAIN,
            message=(
                f"With all that stands out, the bench is {_mm(sizes[axis])} "
                f"{what}, and its place leaves {_mm(limit)}: "
                f"{_mm(over)} too much."
            ),
            parts=_seat_parts(bench),
            place=_front_of_seat(bench),
            amount=sizes[axis],
            limit=limit,
            mend=_lessened(bench, value, wanted),
        )


def _lessened(bench: Bench, name: str, wanted: float) -> Mend | None:
    changes, _ = for_value(bench.spec, name, wanted)
    words = {"length": "Length", "depth": "Depth", "base_height": "Base height"}
    return Mend(f"{words[name]} {_mm(wanted)}.", changes) if changes else None


def _door(bench: Bench, brief: Brief) -> Iterator[Finding]:
    if not brief.door_width or not brief.door_height:
        return
    width, height = brief.door_width, brief.door_height
    best = through_door(_points(bench), width, height)
    if best.short <= 0.0:
        return
    apart = through_door(_points(bench, seat_only=True), width, height)
    yield _stuck(
        "door",
        f"The bench does not go through a door of {_mm(width)} by {_mm(height)}: "
        f"pushed straight, {best.way}, it is {_mm(best.short)} too large however "
        "it is turned",
        best,
        apart,
        width,
        bench,
    )


def _stair(bench: Bench, brief: Brief) -> Iterator[Finding]:
    if not brief.stair_width or not brief.landing_depth:
        return
    ways = (brief.stair_width, brief.landing_depth, brief.stair_height)
    best = round_corner(_size(_points(bench)), *ways)
    if best.short <= 0.0:
        return
    apart = round_corner(_size(_points(bench, seat_only=True)), *ways)
    yield _stuck(
        "stair",
        f"The bench does not go round the stair's corner, {_mm(brief.stair_width)} into "
        f"{_mm(brief.landing_depth)}: {best.way} it is "
        f"{_mm(best.short)} too large",
        best,
        apart,
        brief.stair_width,
        bench,
    )


def _stuck(
    check: str, what: str, best: Passage, apart: Passage, limit: float, bench: Bench
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
        parts=_seat_parts(bench),
        place=_front_of_seat(bench),
        amount=limit + best.short,
        limit=limit,
        estimate=True,
    )


def _mm(value: float) -> str:
    """A computed length in a sentence, to the tenth that anybody can measure."""
    return length_mark(round(value, 1))


def _points(bench: Bench, *, seat_only: bool = False) -> Floats:
    """Every corner of the bench, or of what stands above its base."""
    solids = [placed(part) for part in bench.parts]
    if seat_only:
        floor = bench.spec.number("base_height")
        solids = [solid for solid in solids if float(solid.low[2]) >= floor - 0.5] or solids
    return np.vstack([solid.vertices for solid in solids])


def _size(points: Floats) -> tuple[float, float, float]:
    x, y, z = (float(size) for size in points.max(axis=0) - points.min(axis=0))
    return x, y, z


def _seat_parts(bench: Bench) -> tuple[str, ...]:
    """The names of what is sat on."""
    level = seat_height(bench.spec)
    return tuple(
        part.name for part in bench.parts if abs(float(placed(part).high[2]) - level) < ON_FLOOR
    )


def _front_of_seat(bench: Bench) -> Vec3:
    spec = bench.spec
    return (spec.number("length") / 2.0, -spec.number("depth"), seat_height(spec))


def _by(run: Callable[[Bench, Brief], Iterable[Finding]]) -> Callable[[Bench], Iterable[Finding]]:
    """A check that finds nothing while the brief is blank."""
    return lambda bench: () if bench.brief.blank else run(bench, bench.brief)


CHECKS: tuple[Check, ...] = (
    Check(
        "seat_height",
        "Seat height against those who sit",
        "Compares the seat's height with the lower leg of those whom the brief names, the shoe and "
        "what the bench is for. The limits are the brief's advice, each with its source.",
        _by(_height),
    ),
    Check(
        "seat_depth",
        "Seat depth against those who sit",
        "A seat deeper than the upper leg allows cuts into the hollow of the knee, one too shallow "
        "carries little of the thigh. The limits are the brief's advice.",
        _by(_depth),
    ),
    Check(
        "room_for_all",
        "Room for all who sit",
        "Compares the bench's length with what those who sit on it ask for. That is as many "
        "persons as the brief says, with the shoulders of the broadest and room for elbows, or the "
        "length that a standard asks for where the brief is held to one.",
        _by(_room_for_all),
    ),
    Check(
        "hard_edge",
        "Front edge under the thigh",
        "On a long sit the thigh rests on the seat's front edge. An edge broken by less than 3 mm "
        "is felt: common practice, no source.",
        _by(_hard_edge),
    ),
    Check(
        "too_large_for_room",
        "Larger than its place",
        "The bench with all that stands out from it against the room that the brief gives it "
        "along, in front and above. The limit is the brief's own.",
        _by(_room),
    ),
    Check(
        "past_door",
        "Through the door",
        "Tries the bench's outline, end first, back first and top first, turned every way in the "
        "door's opening. An estimate: a bench with open legs may go through on a crooked way.",
        _by(_door),
    ),
    Check(
        "past_stair",
        "Round the stair's corner",
        "Takes the bench as a box, as it stands, on its back and on its end, and turns it round a "
        "right-angled corner of the clear widths that the brief gives. An estimate on the level: "
        "tilting it may help, and rails may hinder.",
        _by(_stair),
    ),
)
