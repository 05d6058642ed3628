"""Checks of a back rest: whether its seat holds it, and whether the bench still stands."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from geometry.bench.bench import Bench
from geometry.bench.rest_numbers import RestNumbers, rest_numbers
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level, Mend
from geometry.solids.cutting import placed
from geometry.solids.measure import volume_of
from shared.materials import weight_of
from shared.units import length_mark

LEAST_WALL = 6.0  # mm beside a rail's mortise; common practice, no source
MOST_LEVER = {True: 4.0, False: 12.0}  # by whether posts stand behind; common practice, no source

SEATED = 600.0  # N; ISO 7174-1:1988, 7.1.2, READ2
SEATED_BEFORE = 175.0  # mm in front of the line where seat and back meet; the same
PUSHED_UP = 300.0  # mm above the seat; MEMORY of EN 1022
GRAVITY = 9.81  # N / kg
_ON_THE_FLOOR = 0.5  # mm


def _lever(bench: Bench) -> Iterator[Finding]:
    r = rest_numbers(bench.spec)
    held = _held(r)
    limit = held * MOST_LEVER[r.behind]
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
    wall = min(front, back)
    if wall >= LEAST_WALL - 1e-9:
        return
    deeper = r.post_depth + LEAST_WALL - back if back < LEAST_WALL else r.post_depth
    changes: tuple[tuple[str, float | str], ...] = (("post_depth", deeper),)
    if front < LEAST_WALL:
        set_back = r.set_back + LEAST_WALL - front
        changes = (("post_depth", deeper + LEAST_WALL - front), ("rest_set_back", set_back))
    yield Finding(
        check="rest_thin_wall",
        level=Level.THINK_AGAIN,
        message=(
            f"Beside the rails' mortises only {length_mark(wall)} of the posts is left, less than "
            f"{length_mark(LEAST_WALL)}."
        ),
        parts=tuple(part.name for part in bench.parts if part.kind == "post"),
        place=(r.middle(0), r.front, r.seat.top + r.height / 2.0),
        amount=wall,
        limit=LEAST_WALL,
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
    push = pushed(r.seat.top) * (r.seat.top + PUSHED_UP)
    stands = SEATED * (feet - (r.front - SEATED_BEFORE)) + _own_weight(bench, feet)
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
    ),
    Check(
        "rest_thin_wall",
        "Thin post beside the rails' mortises",
        "Under 6 mm the wall before or behind a mortise splits when the rail is knocked in, or "
        "leaned on: common practice, no source.",
        _thin_walls,
        ("back rest",),
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
    ),
)
