"""The numbers of the fixings between base and seat, and where each of them stands.

The board above moves across its grain about the line that it is held on; a screw or button so far
from that line travels with it.  Where a fixing has no room it is left out, and a check tells.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from geometry.bench.above import above, lipped
from geometry.bench.bearers import bearers, can_be_fixed
from geometry.bench.case_numbers import case_numbers
from geometry.bench.overall import CASE, seat_is
from geometry.bench.seasons import Seasons, seasons
from geometry.bench.standing import CLEAR, Bearer
from geometry.design.spec import BenchSpec
from geometry.joints.button import ButtonNumbers, button_bearing
from geometry.joints.slotted_screw import SlottedScrew, rectangle
from geometry.primitives.frame import Vec3, add, dot, scale
from shared.fixings import SCREW_EASE, WOOD_SCREWS

WITHOUT, SCREWS, BUTTONS = "not shown", "screws in slots", "buttons"
MIDDLE, BACK = "middle", "back edge"
EASE = SCREW_EASE  # a button's tongue has as much play in its mortise as a screw in its slot
# Common practice, no source, these:
LEAST_WALL = 3.0  # mm of wood beside a slot or mortise
LEAST_OVER = 3.0  # mm of board over the point of a screw
LEAST_EDGE = 8.0  # mm between a pilot hole and the board's edge
_LEAST_BLOCK = 22.0  # mm of a block on either side of its middle; common practice, no source
_MARKED = 0.5  # mm to which a maker sets out where a slot ends; common practice, no source
_HAIR = 1e-9
_BEARING = 8.0  # mm on either side of a slot where the piece bears on the board


@dataclass(frozen=True, slots=True)
class FixingNumbers:
    """As in the catalogue; mm."""

    buttons: bool
    count: int
    inward: float
    shank: float
    head: float
    pilot: float
    land: float
    bite: float
    block: float
    button_land: float
    tongue: float
    engaged: float
    button_width: float
    button_body: float
    seasons: Seasons
    held_at: float
    still: bool  # a board of sheet does not move

    @property
    def reach(self) -> float:
        """How far inside a bearer's face a block or button comes, about."""
        return self.button_body + 6.0 if self.buttons else self.block

    def shrink(self, y: float) -> float:
        """How far the board moves back toward the held line at Y, made to driest."""
        return 0.0 if self.still else self.seasons.moved(abs(y - self.held_at))[0]

    def swell(self, y: float) -> float:
        """How far it moves away from that line, made to dampest."""
        return 0.0 if self.still else self.seasons.moved(abs(y - self.held_at))[1]

    def room_back(self, y: float) -> float:
        """What a fixing at Y leaves it to move back, beside its own play."""
        return self.shrink(y) if self.buttons else _set_out(self.shrink(y))

    def room_on(self, y: float) -> float:
        """And away from that line."""
        return self.swell(y) if self.buttons else _set_out(self.swell(y))

    def away(self, y: float) -> Vec3:
        """The direction in which the board grows there."""
        return (0.0, 1.0 if y >= self.held_at else -1.0, 0.0)


def _set_out(moved: float) -> float:
    """What a slot leaves a screw on one side for that: it is set out to half a millimetre, never
    shorter than it must be."""
    if moved <= 0.0:
        return 0.0
    return math.ceil((moved + EASE / 2.0) / _MARKED - _HAIR) * _MARKED - EASE / 2.0


@lru_cache(maxsize=512)
def fixing_numbers(spec: BenchSpec) -> FixingNumbers:
    """Read the fixings from a spec."""
    screw = WOOD_SCREWS[spec.word("fixing_screw")]
    back = spec.word("fixing_held") == BACK
    over = above(spec).thickness - LEAST_OVER
    return FixingNumbers(
        buttons=spec.word("fixing") == BUTTONS,
        count=spec.count("fixing_count"),
        inward=spec.number("fixing_in"),
        shank=screw.shank,
        head=screw.head,
        pilot=screw.root,
        land=spec.number("fixing_land"),
        bite=min(spec.number("fixing_bite"), over),
        block=spec.number("fixing_block"),
        button_land=spec.number("button_land"),
        tongue=spec.number("button_tongue"),
        engaged=spec.number("button_engaged"),
        button_width=spec.number("button_width"),
        button_body=spec.number("button_body"),
        seasons=seasons(spec),
        held_at=0.0 if back else -spec.number("depth") / 2.0,
        still=seat_is(CASE, spec) and case_numbers(spec).lips[1] > 0.0,
    )


@dataclass(frozen=True, slots=True)
class Place:
    """A fixing on a bearer, at a point of its upper inside arris."""

    name: str
    bearer: Bearer
    at: Vec3


@dataclass(frozen=True, slots=True)
class Fixed:
    """Where fixings stand, and what has none it should have: bearer, how many, and why."""

    places: tuple[Place, ...]
    lacking: tuple[tuple[Bearer, int, str], ...]


@lru_cache(maxsize=512)
def fixed(spec: BenchSpec) -> Fixed:
    """All fixings of a bench."""
    if spec.word("fixing") == WITHOUT or not can_be_fixed(spec):
        return Fixed((), ())
    f = fixing_numbers(spec)
    places: list[Place] = []
    lacking: list[tuple[Bearer, int, str]] = []
    for bearer in bearers(spec, f.reach):
        stations = _stations(f, bearer)
        why = _why_not(f, bearer)
        fitting = []
        for k, x in enumerate(stations if not why else (), 1):
            place = Place(f"{bearer.name}_{k}", bearer, add(bearer.start, scale(bearer.along, x)))
            wrong = _wrong(spec, f, place)
            if wrong:
                why = wrong
            else:
                fitting.append(place)
        if len(fitting) < f.count:
            reason = why or "the stretch between its joints is too short"
            lacking.append((bearer, f.count - len(fitting), reason))
        places += fitting
    return Fixed(tuple(places), tuple(lacking))


def _travel(f: FixingNumbers, bearer: Bearer) -> float:
    """The most that the board moves anywhere over a bearer."""
    ends = (bearer.start[1], bearer.end[1])
    return max(f.room_back(y) + f.room_on(y) for y in ends)


def half_along(f: FixingNumbers, bearer: Bearer) -> float:
    """Half of what a fixing takes along its bearer."""
    along = abs(bearer.along[1]) * _travel(f, bearer)
    if f.buttons:
        return (f.button_width + along + EASE) / 2.0 + CLEAR
    wide = f.head if bearer.solid else f.shank + EASE
    half = along + EASE + wide / 2.0 + _BEARING
    return (half if bearer.solid else max(half, _LEAST_BLOCK)) + CLEAR


def _stations(f: FixingNumbers, bearer: Bearer) -> list[float]:
    """How far along a bearer its fixings stand; fewer than asked for where it is too short."""
    half, run = half_along(f, bearer), bearer.length
    first = max(f.inward, half)
    if run < 2.0 * half:
        return []
    count = f.count
    while count > 1 and (run - 2.0 * first) < (count - 1) * 2.0 * half:
        count -= 1
    if count == 1:
        return [run / 2.0]
    return [first + k * (run - 2.0 * first) / (count - 1) for k in range(count)]


def _why_not(f: FixingNumbers, bearer: Bearer) -> str:
    """Why no fixing at all goes on a bearer; empty if one may."""
    across = abs(bearer.inward[1]) * _travel(f, bearer)
    if bearer.room < f.reach + across + CLEAR:
        return "another piece stands too near its inside"
    if f.buttons:
        deep, low = f.engaged + across + EASE, f.button_land + f.tongue + EASE
        hindered = (
            (bearer.thickness - deep < LEAST_WALL, "it is too thin for the mortise"),
            (bearer.height - low < LEAST_WALL, "it is too low for the mortise"),
        )
    elif bearer.solid:
        beside = bearer.thickness / 2.0 - across - EASE - f.head / 2.0
        hindered = (
            (beside - bearer.eased < LEAST_WALL, "it is too thin for the slot"),
            (bearer.height < f.land + 4.0, "it is too low for so much wood under the head"),
        )
    else:
        beside = f.block / 2.0 - across - EASE - (f.shank + EASE) / 2.0
        hindered = (
            (beside < LEAST_WALL, "the block is too narrow for the slot"),
            (bearer.height - bearer.eased < f.land, "it is lower than the block"),
        )
    return next((why for so, why in hindered if so), "")


def _wrong(spec: BenchSpec, f: FixingNumbers, place: Place) -> str:
    """Whether the screw and all that bears on the seat lie under it."""
    corners = [corner for face in _bearing(f, place) for corner in face]
    room = min(within_seat(spec, corner) for corner in corners)
    if within_seat(spec, screw_at(f, place)) < LEAST_EDGE or room < 0.0:
        return "it does not lie under the seat there"
    return ""


def within_seat(spec: BenchSpec, point: Vec3) -> float:
    """How far inside the seat's outline, at its underside and between lippings, a point lies."""
    x, y, _ = point
    length, depth = spec.number("length"), spec.number("depth")
    lip = lipped(spec)
    return min(x - lip.left, length - x - lip.right, -y - lip.back, y + depth - lip.front)


def _bearing(f: FixingNumbers, place: Place) -> tuple[tuple[Vec3, ...], ...]:
    return button_bearing(button(f, place)) if f.buttons else screw(f, place).bearing


def screw_at(f: FixingNumbers, place: Place) -> Vec3:
    """Where the screw of a fixing enters the board."""
    bearer = place.bearer
    if f.buttons:
        return button(f, place).screw
    inward = -bearer.thickness / 2.0 if bearer.solid else f.block / 2.0
    return add(place.at, scale(bearer.inward, inward))


def screw(f: FixingNumbers, place: Place) -> SlottedScrew:
    """The slotted screw at a place, through the bearer or through its block."""
    bearer = place.bearer
    at = screw_at(f, place)
    shrink, swell = f.room_back(at[1]), f.room_on(at[1])
    wide = f.head if bearer.solid else f.shank + EASE
    off = abs(bearer.along[1]) * max(shrink, swell) + EASE / 2.0 + wide / 2.0
    half = (bearer.thickness if bearer.solid else f.block) / 2.0
    bearing = tuple(
        rectangle(
            add(at, scale(bearer.along, side * (off + _BEARING / 2.0))),
            bearer.along,
            bearer.inward,
            (_BEARING / 2.0, half),
        )
        for side in (-1.0, 1.0)
    )
    return SlottedScrew(
        screw=at,
        away=f.away(at[1]),
        shrink=shrink,
        swell=swell,
        travel=f.shrink(at[1]) + f.swell(at[1]),
        shank=f.shank,
        pilot=f.pilot,
        head=f.head,
        ease=EASE,
        land=f.land,
        depth=bearer.height if bearer.solid else f.land,
        bite=f.bite,
        bearing=bearing,
    )


def button(f: FixingNumbers, place: Place) -> ButtonNumbers:
    """The button at a place."""
    bearer = place.bearer
    y = place.at[1] + bearer.inward[1] * f.button_body / 2.0
    travel = f.shrink(y) + f.swell(y)
    across = abs(bearer.inward[1]) * travel
    return ButtonNumbers(
        arris=place.at,
        along=bearer.along,
        inward=bearer.inward,
        slope=bearer.slope,
        land=f.button_land,
        tongue=f.tongue,
        engaged=f.engaged,
        stand=across + EASE,
        width=f.button_width,
        body=f.button_body,
        room_along=2.0 * abs(bearer.along[1]) * max(f.shrink(y), f.swell(y)) + EASE,
        room_in=across + EASE,
        ease=EASE,
        shank=f.shank,
        pilot=f.pilot,
        bite=f.bite,
    )


def block_half(f: FixingNumbers, place: Place) -> float:
    """Half the length of a block along its bearer."""
    return half_along(f, place.bearer) - CLEAR


def least_tongue(f: FixingNumbers, place: Place) -> float:
    """What stays of a tongue in its mortise when the board has moved as far as it can."""
    at = button(f, place)
    moved = max(f.shrink(at.screw[1]), f.swell(at.screw[1]))
    return f.engaged - abs(dot(at.inward, (0.0, 1.0, 0.0))) * moved


def far_travel(f: FixingNumbers, places: tuple[Place, ...]) -> float:
    """The longest travel of any fixing; 0 without one."""
    ys = [screw_at(f, place)[1] for place in places]
    return max((f.shrink(y) + f.swell(y) for y in ys), default=0.0)
