"""Checks of a back rest: whether its seat holds it, and whether the bench still stands."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import RestNumbers, rest_numbers
from geometry.checks.check import Check
from geometry.checks.limits_of_joints import LEAST_WALL, MOST_LEVER_BEHIND, MOST_LEVER_IN_SEAT
from geometry.checks.limits_of_loads import PUSHED_UP, SITTER, SITTER_BEFORE_BACK
from geometry.design.finding import Finding, Level, Mend
from geometry.solids.cutting import placed
from geometry.solids.measure import volume_of
from shared.materials import weight_of
from shared.units import length_mark

GRAVITY = 9.81  # N / kg
_ON_THE_FLOOR = 0.5  # mm


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
            f"The posts are held over only {length_mark(held)} {where} and rise "
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
    """The horizontal force in N that a chair of this height (mm) must bear; MEMORY of EN 1022.

    >>> round(pushed(450.0), 1)
    157.1
    """
    return 0.2857 * (1000.0 - min(seat_height, 720.0))


def _tips(bench: Bench) -> Iterator[Finding]:
    """Turned about the line of the rearmost feet: seated and own weight against the push."""
    r = rest_numbers(bench.spec)
    corners = np.concatenate([placed(part).vertices for part in bench.parts])
    feet = float(corners[corners[:, 2] < _ON_THE_FLOOR, 1].max())
    push = pushed(r.seat.top) * (r.seat.top + PUSHED_UP.of(bench))
    arm = feet - (r.front - SITTER_BEFORE_BACK.of(bench))
    stands = SITTER.of(bench) * arm + _own_weight(bench, feet)
    if stands >= push:
        return
    yield Finding(
        check="tips_back",
        level=Level.THINK_AGAIN,
        message=(
            f"Someone who leans back hard tips the bench: about its rear feet it is held down by "
            f"{stands / 1000.0:.0f} N m, and {push / 1000.0:.0f} N m are wanted. Stand the feet "
            "farther back, or the rest farther forward."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "post"),
        place=(r.length / 2.0, feet, 0.0),
        amount=stands / 1000.0,
        limit=push / 1000.0,
        unit="N m",
    )


def _own_weight(bench: Bench, feet: float) -> float:
    """The moment of the parts' weights about a line on the floor, in N mm; each at the middle of
    its corners, near enough."""
    total = 0.0
    for part in bench.parts:
        middle = placed(part).vertices[:, 1]
        weight = weight_of(volume_of(part.shape), part.material) * GRAVITY
        total += weight * (feet - float(middle.min() + middle.max()) / 2.0)
    return total


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
        "Measures the wood of a post before and behind the rails' mortises. Under 6 mm it splits "
        "when the rail is knocked in, or leaned on: common practice, no source.",
        _thin_walls,
        ("back rest",),
        limits=(LEAST_WALL,),
    ),
    Check(
        "tips_back",
        "Bench tipping backward",
        "Somebody sits 175 mm in front of the back rest with 600 N (ISO 7174-1:1988, 7.1.2, in a "
        "page that quotes it) and pushes back 300 mm above the seat with 0.2857 (1000 − seat "
        "height in mm) N (EN 1022, from memory). The bench's own weight helps. Where the push "
        "turns the bench about its rear feet, it tips; a bench that is fixed to the wall or the "
        "floor does not.",
        _tips,
        ("back rest",),
        limits=(SITTER, SITTER_BEFORE_BACK, PUSHED_UP),
    ),
)
