"""Checks of a back rest: whether its seat holds it, and whether the bench still stands."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.advice.standing import footing_of
from geometry.bench.bench import Bench
from geometry.bench.catalogue import parameter
from geometry.bench.rest_numbers import RestNumbers, rest_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL, MOST_LEVER_BEHIND, MOST_LEVER_IN_SEAT
from geometry.checks.limits_of_loads import PUSHED_UP, SITTER, SITTER_BEFORE_BACK
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from shared.units import length_mark, quantity_mark

_SPARE = 1.0  # mm: feet are set a little farther back than they must


def _lever(bench: Bench) -> Iterator[Finding]:
    r = rest_numbers(bench.spec)
    held = _held(r)
    most = MOST_LEVER_BEHIND if r.behind else MOST_LEVER_IN_SEAT
    limit = held * most.of(bench) / 100.0
    if r.height <= limit + 1e-9:
        return
    where = "behind the seat" if r.behind else "in the seat"
    values: tuple[tuple[str, float | str], ...] = (("rest_height", limit),)
    fits = limit >= r.height * 0.75
    yield Finding(
        check="rest_lever",
        level=Level.THINK_AGAIN,
        message=(
            f"The posts are held {where} over only {length_mark(held)} and rise "
            f"{length_mark(r.height)} above it: whoever leans back levers them out."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "post"),
        place=(r.middle(0), r.front, r.seat.top),
        amount=r.height,
        limit=limit,
        mend=Mend(f"Make the rest {length_mark(limit)} high.", values) if fits else None,
    )


def _held(r: RestNumbers) -> float:
    """Between the outermost places at which a post is held; of a tenon its depth."""
    return r.seat.top - r.seat.foot if r.behind else r.tenon_depth


def _thin_walls(bench: Bench) -> Iterator[Finding]:
    r = rest_numbers(bench.spec)
    spare = (r.rail_thickness - r.tenon - r.fit) / 2.0
    front, back = r.set_back + spare, r.post_depth - r.set_back - r.rail_thickness + spare
    wall, least = min(front, back), LEAST_WALL.of(bench)
    if wall >= least - 1e-9:
        return
    deeper = r.post_depth + least - back if back < least else r.post_depth
    changes: tuple[tuple[str, float | str], ...] = (("post_depth", deeper),)
    if front < least:
        set_back = r.set_back + least - front
        changes = (("post_depth", deeper + least - front), ("rest_set_back", set_back))
    yield Finding(
        check="rest_thin_wall",
        level=Level.THINK_AGAIN,
        message=(
            f"Beside the rails' mortises only {length_mark(wall)} of the posts is left, less than "
            f"{length_mark(least)}."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "post"),
        place=(r.middle(0), r.front, r.seat.top + r.height / 2.0),
        amount=wall,
        limit=least,
        mend=Mend("Make the posts deeper, and set the rails in the middle of them.", changes),
    )


def pushed(seat_height: float) -> float:
    """The horizontal force in N that a chair of this height (mm) must bear; EN 1022, from memory.

    >>> round(pushed(450.0), 1)
    157.1
    """
    return 0.2857 * (1000.0 - min(seat_height, 720.0))


def _tips(bench: Bench) -> Iterator[Finding]:
    """Turned about the line of the rearmost feet: seated and own weight against the push."""
    r, footing = rest_numbers(bench.spec), footing_of(bench)
    if footing is None:
        return
    feet = max(y for _, y in footing.outline)
    push = pushed(r.seat.top) * (r.seat.top + PUSHED_UP.of(bench))
    arm = feet - (r.front - SITTER_BEFORE_BACK.of(bench))
    sitter = SITTER.of(bench)
    stands = sitter * arm + footing.weight * (feet - footing.centre[1])
    if stands >= push:
        return
    farther = (push - stands) / (sitter + footing.weight) + _SPARE
    yield Finding(
        check="tips_back",
        level=Level.THINK_AGAIN,
        message=(
            f"Someone who leans back hard tips the bench: about its rear feet it is held down by "
            f"{quantity_mark(stands / 1000.0, 'N m')}, and "
            f"{quantity_mark(push / 1000.0, 'N m')} are wanted. Stand the feet "
            "farther back, or the rest farther forward. An estimate."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "post"),
        place=(r.length / 2.0, feet, 0.0),
        amount=stands / 1000.0,
        limit=push / 1000.0,
        unit="N m",
        mend=_farther_back(bench.spec, farther),
        estimate=True,
    )


def _farther_back(spec: BenchSpec, farther: float) -> Mend | None:
    """The rear feet so much farther back, but not beyond what they carry."""
    changes = tuple(
        (name, float(math.floor(spec.number(name) - farther)))
        for name in ("inset_back", "inset_back_left", "inset_back_right")
        if parameter(name).applies(spec)
    )
    if not changes or min(value for _, value in changes) < 0.0:
        return None
    rows = [f"{parameter(name).title} {length_mark(value)}" for name, value in changes]
    return Mend(f"{', '.join(rows)}.", changes)


CHECKS: tuple[Check, ...] = (
    Check(
        "rest_lever",
        "Back rest held over too short a length",
        "A post is a lever. Tenons in the seat should be at least a twelfth as long as the rest is "
        "high, and posts screwed behind the seat should reach down over a quarter of it: common "
        "practice, no source.",
        _lever,
        ("back rest",),
        limits=(MOST_LEVER_IN_SEAT, MOST_LEVER_BEHIND),
    ),
    Check(
        "rest_thin_wall",
        "Thin post beside the rails' mortises",
        "Measures the wood of a post in front of and behind the rails' mortises. Under {6 mm} it "
        "splits when the rail is knocked in, or leaned on: common practice, no source.",
        _thin_walls,
        ("back rest",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "tips_back",
        "Bench tipping backward",
        "Somebody sits in front of the back rest, {175 mm} from it, with {600 N} (ISO 7174-1:1988, "
        "7.1.2, in a page that quotes it) and pushes back {300 mm} above the seat with 0.2857 "
        "(1000 − seat height in mm) N (EN 1022, from memory). The bench's own weight helps. Where "
        "the push turns the bench about its rear feet, it tips; a bench that is fixed to the wall "
        "or the floor does not.",
        _tips,
        ("back rest",),
        limits=(SITTER, SITTER_BEFORE_BACK, PUSHED_UP),
        quick=False,
    ),
)
