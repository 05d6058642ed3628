"""Numbers in rows along the sides of a view, each led to its cut.

Frame: sheet mm about the view's own origin; along a side ``s`` runs to the right, or upward, and
``d`` outward.

Method: along each side there are lines, from close to the drawing to just outside all that stands
there, on which numbers may stand.  On one line the numbers stand in the order of their cuts, each
where its leader is short and runs through no text: the best places for all together are found one
number after the other (dynamic programming over the places).  Where two leaders would still cross,
their numbers change places.  The line with the shortest leaders is taken; numbers that would be led
through a text on it look for another line.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from geometry.dimensioning.placed import Extent
from geometry.drawing.crossing import all_crossings, cross
from geometry.drawing.text_box import Ground, Line, TextBox
from geometry.primitives.frame import Vec2

Floats = NDArray[np.float64]
Points = Sequence[tuple[Vec2, bool]]  # on the sheet, and whether within a face
_STEP = 1.5  # mm between two places on a line; more on a long one
_MOST_PLACES = 120
_SPARE = 3.0  # mm of a line for each number, as it stands on one of the places
_NEAREST = 6.0  # mm from the drawing to the middle of a number
_LINES = 4.0  # mm between two lines
_AIR = 1.0  # mm between two numbers
_CLEAR = 0.8  # mm between a number and what is there
_HAIR, _EXACT = 0.05, 1e-9  # mm
_PAST_TEXT = 0.4  # mm between a leader and a text
_SHORTEST = 3.2  # mm of a leader, so that its arrowhead has room
_SLANT = 1.6  # of its height, how far a leader may run along its side
_FARTHEST = 50.0  # mm along it
_PLUMB = 0.12  # of its height: a leader as plumb as that could be taken for a line of the drawing
_TAKEN_FOR_A_LINE = 6.0  # mm of leader that this is worth
_THROUGH = 1000.0  # and a text or a leader that it runs through
_GROWTH = 4.0  # and each mm that the view takes more
_TIGHT_GROWTH = 40.0  # where the page has no more room that way
_MOST_SWAPS = 12
_TRIES = 4  # lines that are worked out
_MORE_TRIES, _MOST_TRIES = 10, 30  # where on none all leaders run clear; for a number alone
_POINTS = 32  # of all cuts together that are worked out on a line,
_LEAST = 2  # and of each at the least


@dataclass(frozen=True, slots=True)
class Led:
    """A number's box, and the point of its cut; ``within`` a face, not on a line."""

    spot: TextBox
    point: Vec2
    within: bool

    @property
    def leader(self) -> Line:
        """From the point to the ring round the number."""
        (x, y), spot = self.point, self.spot
        part = 1.0 - spot.half_width / math.dist(self.point, (spot.x, spot.y))
        return (x, y, x + (spot.x - x) * part, y + (spot.y - y) * part)


@dataclass(frozen=True, slots=True, eq=False)
class Around:
    """What there is round a view: how far the ``drawing`` goes, ``all`` that stands there, and what
    the view has ``room`` for without that the whole grows.

    ``tight`` says across and up whether the page is full that way.  ``ground`` is what stands
    outside the drawing, for numbers to keep clear of; a leader runs through none of the ``texts``
    and ``leaders``.
    """

    drawing: Extent
    all: Extent
    room: Extent
    tight: tuple[bool, bool]
    ground: Ground
    texts: Sequence[TextBox]
    leaders: Sequence[Line]

    def growth(self, axis: int) -> float:
        """What a mm more is worth."""
        return _TIGHT_GROWTH if self.tight[axis] else _GROWTH

    def with_number(self, led: Led) -> Around:
        self.ground.add([], [led.spot])
        return replace(
            self,
            all=with_box(self.all, led.spot),
            texts=[*self.texts, led.spot],
            leaders=[*self.leaders, led.leader],
        )


@dataclass(frozen=True, slots=True, eq=False)
class _Line:
    """A line of places: on a side that runs along axis 0 or 1, at ``at``.

    ``worth`` is what it costs that the view takes more room with a number on the line, and
    ``worths`` with one at each place of it.
    """

    axis: int
    at: float
    places: Floats
    worth: float
    worths: Floats

    def point(self, s: float) -> Vec2:
        return (s, self.at) if self.axis == 0 else (self.at, s)


@dataclass(frozen=True, slots=True)
class _Row:
    """Numbers on one line, and what their leaders are worth; ``bad`` run through something."""

    led: dict[str, Led]
    bad: tuple[str, ...]
    worth: float


def in_rows(
    wanted: Mapping[str, Points], halves: Mapping[str, float], around: Around
) -> tuple[dict[str, Led], dict[str, Led]]:
    """A place for every number; first those that are led clear of all, then those that are not.

    ``wanted`` are the points of each cut, the best first; ``halves`` half the width of each number.
    """
    found: dict[str, Led] = {}
    last: dict[str, Led] = {}
    left = dict(wanted)
    together = True
    while left:
        some = left if together else {text: left[text] for text in list(left)[:1]}
        row = _best_row(some, max(halves[text] for text in some), around)
        kept = [text for text in row.led if text not in row.bad]
        for text in kept:
            found[text] = row.led[text]
            around = around.with_number(row.led[text])
            del left[text]
        if not kept and not together:  # not even alone
            last |= row.led
            left = {text: points for text, points in left.items() if text not in row.led}
        together = together and bool(kept)
    return found, last


def with_box(extent: Extent, box: TextBox) -> Extent:
    """An extent grown to hold a box."""
    left, bottom, right, top = extent
    wide, high = box.reach()
    return (
        min(left, box.x - wide),
        min(bottom, box.y - high),
        max(right, box.x + wide),
        max(top, box.y + high),
    )


def _best_row(wanted: Mapping[str, Points], half: float, around: Around) -> _Row:
    lines = [line for side in range(4) for line in _lines(side, half, len(wanted), around)]

    def at_least(line: _Line) -> float:
        away = (abs(line.at - points[0][0][1 - line.axis]) for points in wanted.values())
        return sum(away) + line.worth

    rows: list[_Row] = []
    for line in sorted(lines, key=at_least):
        if len(rows) >= _TRIES and not all(row.bad for row in rows):
            break
        if len(rows) >= (_MORE_TRIES if len(wanted) > 1 else _MOST_TRIES):
            break
        rows.append(_row(line, wanted, half, around))
    return min(rows, key=lambda row: row.worth)


def _lines(side: int, half: float, count: int, around: Around) -> list[_Line]:
    """The lines along one side that have room for so many numbers, the nearest first."""
    axis, way = divmod(side, 2)
    end = (3 if axis == 0 else 2) if way else (1 if axis == 0 else 0)
    out = 1 if way else -1
    low, high = around.drawing[axis], around.drawing[axis + 2]
    long = max(high - low + 2.0 * half, count * (2.0 * half + _AIR + _SPARE))
    step = max(_STEP, long / max(_MOST_PLACES, 4 * count))
    steps = int(long / step) + 1
    from_middle = np.arange(steps, dtype=np.float64) - (steps - 1) / 2.0
    places: Floats = (low + high) / 2.0 + step * from_middle
    beyond = np.maximum(0.0, around.room[axis] - (places - half))
    beyond += np.maximum(0.0, places + half - around.room[axis + 2])
    outermost = out * (around.all[end] - around.drawing[end]) + _CLEAR + half + _HAIR
    free_to = out * (around.room[end] - around.drawing[end])
    found: list[_Line] = []
    for far in [*np.arange(_NEAREST, outermost - _LINES / 2.0, _LINES).tolist(), outermost]:
        worth = around.growth(1 - axis) * max(0.0, far + half - free_to)
        at = around.drawing[end] + out * far
        line = _Line(axis, at, places, worth, around.growth(axis) * beyond)
        free = around.ground.clear(
            [TextBox(*line.point(s), half, half) for s in places.tolist()], _CLEAR
        )
        if _hold(places[free].tolist(), 2.0 * half + _AIR) >= count:
            found.append(replace(line, places=places[free], worths=line.worths[free]))
    return found


def _hold(places: Sequence[float], pitch: float) -> int:
    """How many numbers have room on some places, a pitch apart."""
    count, reached = 0, -math.inf
    for place in places:
        if place >= reached - _EXACT:
            count, reached = count + 1, place + pitch
    return count


def _row(line: _Line, wanted: Mapping[str, Points], half: float, around: Around) -> _Row:
    """The numbers on a line that has room for them."""
    costs, choices = {}, {}
    some = max(_LEAST, _POINTS // len(wanted))
    for text, points in wanted.items():
        costs[text], choices[text] = _costs(line, points[:some], half, around)
    order = sorted(wanted, key=lambda text: wanted[text][0][0][line.axis])
    led: dict[str, Led] = {}
    worth: dict[str, float] = {}
    for _ in range(_MOST_SWAPS):
        places = _placed(line, [costs[text] for text in order], 2.0 * half + _AIR)
        for text, k in zip(order, places, strict=True):
            point, within = wanted[text][choices[text][k]]
            led[text] = Led(TextBox(*line.point(float(line.places[k])), half, half), point, within)
            worth[text] = float(costs[text][k])
        crossed = [k for k, pair in enumerate(pairwise(order)) if _cross(led, *pair)]
        if not crossed:
            break
        for k in (k for k in crossed if k - 1 not in crossed):
            order[k : k + 2] = order[k + 1], order[k]
    for k, text in enumerate(order):
        worth[text] += _THROUGH * any(_cross(led, text, other) for other in order[:k])
    bad = tuple(text for text in order if worth[text] >= _THROUGH)
    return _Row(led, bad, sum(worth.values()) + line.worth)


def _cross(led: Mapping[str, Led], one: str, other: str) -> bool:
    return cross(led[one].leader, led[other].leader)


def _costs(line: _Line, points: Points, half: float, around: Around) -> tuple[Floats, list[int]]:
    """What a number costs at each place of a line, and to which of its points it is led there."""
    s = line.places[None]
    at = np.array([point for point, _ in points])
    along = s - at[:, line.axis, None]
    away = np.broadcast_to(np.abs(line.at - at[:, 1 - line.axis])[:, None], along.shape)
    cost = np.hypot(along, away) + line.worths
    cost = cost + 2.0 * np.arange(len(points))[:, None]
    cost += np.where(np.abs(along) < _PLUMB * away, _TAKEN_FOR_A_LINE, 0.0)
    cost += np.where(np.abs(along) > _SLANT * away, _THROUGH, 0.0)
    cost += np.where(np.hypot(along, away) < half + _SHORTEST, _THROUGH, 0.0)
    cost += np.where(np.abs(along) > _FARTHEST, _THROUGH, 0.0)
    ends = np.stack([np.broadcast_to(s, along.shape), np.full(along.shape, line.at)], axis=2)
    if line.axis == 1:
        ends = ends[..., ::-1]
    starts = np.broadcast_to(at[:, None], ends.shape)
    part = np.maximum(0.0, 1.0 - half / np.maximum(np.hypot(along, away), half))[..., None]
    stops = starts + (ends - starts) * part
    open_ = cost < _THROUGH
    through = _through_boxes(starts[open_], stops[open_], around.texts)
    leaders = np.array(around.leaders).reshape(-1, 4)
    crossed = all_crossings(np.hstack([starts[open_], stops[open_]]), leaders).sum(axis=1)
    cost[open_] += _THROUGH * (through + crossed)
    best = cost.argmin(axis=0)
    return cost.min(axis=0), best.tolist()


def _through_boxes(starts: Floats, stops: Floats, boxes: Sequence[TextBox]) -> Floats:
    """How many texts each of some lines (..., 2) runs through."""
    if not boxes:
        return np.zeros(starts.shape[:-1])
    middle = np.array([(box.x, box.y) for box in boxes])
    reach = np.array([box.reach() for box in boxes]) + _PAST_TEXT
    run = (stops - starts)[..., None, :]
    run = np.where(np.abs(run) < 1e-9, 1e-9, run)
    first = (middle - reach - starts[..., None, :]) / run
    last = (middle + reach - starts[..., None, :]) / run
    enters = np.minimum(first, last).max(axis=-1)
    leaves = np.maximum(first, last).min(axis=-1)
    hit = (enters < leaves) & (leaves > 0.0) & (enters < 1.0)
    count: Floats = hit.sum(axis=-1).astype(np.float64)
    return count


def _placed(line: _Line, costs: Sequence[Floats], pitch: float) -> list[int]:
    """The places of numbers in this order, a pitch apart, that cost least."""
    s = line.places
    before = np.searchsorted(s, s - pitch + _EXACT, side="right") - 1  # the last place far enough
    total = costs[0]
    came: list[NDArray[np.intp]] = []
    for cost in costs[1:]:
        best = np.minimum.accumulate(total)
        at = np.zeros(len(s), dtype=np.intp)
        lowest = 0
        for k in range(len(s)):
            lowest = k if total[k] < total[lowest] else lowest
            at[k] = lowest
        fits = before >= 0
        total = np.where(fits, cost + best[np.maximum(before, 0)], math.inf)
        came.append(at[np.maximum(before, 0)])
    places = [int(total.argmin())]
    for at in reversed(came):
        places.append(int(at[places[-1]]))
    return places[::-1]
