"""Places for one label of a part: where its words may stand, and what they would meet there.

Frame: sheet mm about the view's own origin.

Method: of the places round about each of the part's spots those are kept whose words lie in the
room and touch no line and no other text of the drawing, and whose leaders run through no text.
A place costs what its leader is long, and more for each line of the drawing that the leader
crosses.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum

import numpy as np

from geometry.drawing.crossing import all_crossings
from geometry.drawing.text_box import TextBox
from geometry.sheets.ink import Ink
from geometry.sheets.label_spots import Spot
from geometry.solids.solid import Flags, Floats
from shared.lettering import text_width

Room = tuple[float, float, float, float]

CLEAR = 0.8  # mm between a name and anything else
_APART = 2.5  # mm between two names beside each other, which would read as one
_GAP = 0.8  # mm between a name and its leader
_RINGS = ((3.0, 6.0, 10.0, 15.0), (21.0, 28.0, 36.0, 46.0), (58.0, 72.0, 90.0, 115.0))
"""How far from a part its name is looked for, mm; those of a group are tried together."""

_TURNS = 24
_DETOUR = 9.0  # mm that a leader may be longer to cross one line less
_SECOND = 2.0  # mm that it may be longer to meet the part at its best spot
_KEPT = 320  # places of one label
_FEW = 3  # of a part's spots, for what is farther off
_TIGHT = 6.0  # what it costs to run close beside another leader
_EPSILON = 1e-9


class Reach(Enum):
    """How far a label may be from its part."""

    BESIDE = "round its best spot"
    NEAR = "round all of its spots"
    FAR = "across the drawing"
    ANYWHERE = "all over the room"


@dataclass(frozen=True, slots=True, eq=False)
class Places:
    """n places for words of ``half`` their width and height: their middles (n, 2), the leaders
    from there to the part (n, 4), and what each costs (n,), the cheapest first."""

    half: Floats
    middles: Floats
    leaders: Floats
    cost: Floats

    def part(self, start: int, stop: int) -> Places:
        """Those of them from one to another."""
        some = slice(start, stop)
        return Places(self.half, self.middles[some], self.leaders[some], self.cost[some])

    def put(self, k: int, cost: float) -> Put:
        """A label in one of them."""
        return Put(self.half, self.middles[k], self.leaders[k], cost)


@dataclass(frozen=True, slots=True, eq=False)
class Put:
    """A label in its place: half its size, its middle, its leader, and what it costs there."""

    half: Floats
    middle: Floats
    leader: Floats
    cost: float


class Site:
    """What is drawn already: lines (n, 4) and texts, and the room there is."""

    def __init__(self, lines: Floats, there: Sequence[TextBox], room: Room, height: float) -> None:
        self._ink = Ink(lines, room)
        self._texts = np.array([(b.x, b.y) for b in there]).reshape(-1, 2)
        self._halves = np.array([b.reach() for b in there]).reshape(-1, 2)
        self._low, self._high = np.array(room[:2]), np.array(room[2:])
        self._height = height

    def places(self, spot: Spot, text: str, reach: Reach) -> Places:
        """Places for a text as far from a part as that."""
        half = self._half(text)
        match reach:
            case Reach.BESIDE:
                return self._free(half, *_round(spot.points[:1], _RINGS[0], half))
            case Reach.NEAR:
                close = _round(spot.points, _RINGS[0], half)
                wide = _round(spot.points[:_FEW], _RINGS[1], half)
                both = [np.concatenate(pair) for pair in zip(close, wide, strict=True)]
                return self._free(half, *both)
            case Reach.FAR:
                return self._free(half, *_round(spot.points[:_FEW], _RINGS[2], half))
            case Reach.ANYWHERE:
                return self._free(half, *self._all_over(spot.points[:_FEW], half))

    def _all_over(self, points: Floats, half: Floats) -> tuple[Floats, Floats, Floats]:
        """Middles of boxes all over the room for each of some points, and what that costs more."""
        low, high = self._low + half, self._high - half
        steps = [
            np.arange(a, b + _EPSILON, step)
            for a, b, step in zip(low, high, 2.0 * half + CLEAR, strict=True)
        ]
        middles = np.stack(np.meshgrid(*steps), axis=-1).reshape(-1, 2)
        ends = np.repeat(points, len(middles), axis=0)
        return np.tile(middles, (len(points), 1)), ends, np.zeros(len(ends))

    def _half(self, text: str) -> Floats:
        width = text_width(text, self._height)
        return np.array((width / 2.0, TextBox.about((0.0, 0.0), width, self._height).half_height))

    def _free(self, half: Floats, middles: Floats, ends: Floats, more: Floats) -> Places:
        """Those of some places that touch nothing drawn; ``more`` is added to what they cost."""
        low, high = self._low + half, self._high - half
        inside = ((middles >= low) & (middles <= high)).all(axis=1)
        middles, ends, more = middles[inside], ends[inside], more[inside]
        leaders = np.hstack([_starts(middles, half, ends), ends])
        if len(self._texts):
            clear = ~(
                boxes_meet(middles, half + CLEAR, self._texts, self._halves)
                | lines_meet_boxes(leaders, self._texts, self._halves + CLEAR)
            ).any(axis=1)
            middles, leaders, more = middles[clear], leaders[clear], more[clear]
        clear = self._ink.clear(middles, half + CLEAR)
        middles, leaders, more = middles[clear], leaders[clear], more[clear]
        length = np.hypot(*(leaders[:, 2:] - leaders[:, :2]).T)
        cost = length + _DETOUR * self._ink.crossed(leaders) + more
        order = np.argsort(cost, kind="stable")[:_KEPT]
        return Places(half, middles[order], leaders[order], cost[order])


@dataclass(frozen=True, slots=True, eq=False)
class Meeting:
    """What n places would meet of k labels: ``barred`` (n, k) where both cannot stand, ``crossed``
    (n, k) where their leaders cross, and ``tight`` (n,) what running close beside them costs."""

    barred: Flags
    crossed: Flags
    tight: Floats


def meeting(places: Places, labels: Sequence[Put]) -> Meeting:
    """How some places get on with the labels that stand already."""
    middles = np.array([one.middle for one in labels]).reshape(-1, 2)
    halves = np.array([one.half for one in labels]).reshape(-1, 2)
    leaders = np.array([one.leader for one in labels]).reshape(-1, 4)
    wide = places.half + np.array((_APART, CLEAR))
    barred = (
        boxes_meet(places.middles, wide, middles, halves)
        | lines_meet_boxes(places.leaders, middles, halves + CLEAR)
        | lines_meet_boxes(leaders, places.middles, places.half + CLEAR).T
    )
    tight = _TIGHT * (_between(places.leaders, leaders) < CLEAR).sum(axis=1)
    return Meeting(barred, all_crossings(places.leaders, leaders, touching=True), tight)


def boxes_meet(middles: Floats, half: Floats, others: Floats, halves: Floats) -> Flags:
    """Which of n boxes of one size overlap which of k others; (n, k)."""
    away = np.abs(middles[:, None] - others) - (half + halves)
    return np.asarray((away < 0.0).all(axis=2))


def lines_meet_boxes(lines: Floats, middles: Floats, halves: Floats) -> Flags:
    """Which of n lines touch which of k upright boxes; (n, k).  The separating axis test."""
    centre = (lines[:, :2] + lines[:, 2:])[:, None] / 2.0 - middles
    reach = (lines[:, 2:] - lines[:, :2])[:, None] / 2.0
    size = np.abs(reach)
    aside = np.abs(centre[..., 0] * reach[..., 1] - centre[..., 1] * reach[..., 0])
    halves = np.broadcast_to(halves, centre.shape)
    return np.asarray(
        (np.abs(centre) <= halves + size).all(axis=2)
        & (aside <= halves[..., 0] * size[..., 1] + halves[..., 1] * size[..., 0])
    )


def _between(lines: Floats, others: Floats) -> Floats:
    """How near n lines that do not cross come to k others; (n, k)."""

    def away(line: Floats, point: Floats) -> Floats:
        run = line[..., 2:] - line[..., :2]
        off = point - line[..., :2]
        size = np.maximum((run**2).sum(axis=-1), _EPSILON)
        share = np.clip((run * off).sum(axis=-1) / size, 0.0, 1.0)
        return np.asarray(np.hypot(*np.moveaxis(off - run * share[..., None], -1, 0)))

    a, b = lines[:, None], others[None]
    ends = (away(a, b[..., :2]), away(a, b[..., 2:]), away(b, a[..., :2]), away(b, a[..., 2:]))
    return np.asarray(np.minimum.reduce(ends))


def _round(points: Floats, rings: Sequence[float], half: Floats) -> tuple[Floats, Floats, Floats]:
    """Middles of boxes round some points, their sides so far from them; the points of each, and
    what it costs not to be round the first."""
    turns = 2.0 * math.pi * np.arange(_TURNS) / _TURNS
    ways = np.column_stack([np.cos(turns), np.sin(turns)])
    steps = ((np.array(rings)[:, None, None] + half) * ways).reshape(-1, 2)
    middles = (points[:, None] + steps).reshape(-1, 2)
    more = np.where(np.arange(len(points)) > 0, _SECOND, 0.0)
    each = len(steps)
    return middles, np.repeat(points, each, axis=0), np.repeat(more, each)


def _starts(middles: Floats, half: Floats, ends: Floats) -> Floats:
    """Where leaders begin, just beside their boxes; (n, 2)."""
    near = np.clip(ends, middles - half, middles + half)
    run = ends - near
    length = np.maximum(np.hypot(*run.T), _EPSILON)[:, None]
    return np.asarray(near + run * np.minimum(1.0, _GAP / length))
