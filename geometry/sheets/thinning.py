"""Far-out detail thins itself: what of a drawing runs together on its sheet is left out.

Frame: sheet mm.

Method: a hidden curve smaller than a dash is a dot, and is left out.  Of lines that run along one
another with less between them than an eye keeps apart, a hidden one goes for a visible or a longer
one beside it; a visible one goes only where one that stays runs on either side, so that a board
keeps both of its edges and a stack of slats its outermost.  What is left out, a part's own page, a
joint's detail or a nearer look tells.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.chains import DECIMALS, HARDLY
from geometry.drawing.marks import Mark, Role, Strokes

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Places = NDArray[np.intp]

_DOT = 1.2  # mm on the sheet: less than a dash of a hidden line and its gap
_HIDDEN_APART, _VISIBLE_APART = 0.7, 0.85  # mm between two lines: one line's width of air at least
_ALONG = 0.85  # of a line, along which another runs
_STRAIGHT = 1e-6  # mm
_PAST_ANY = 2**31  # no sheet has so many thousandths of a mm
_FAR = 1e5  # mm, beyond any sheet
_TURN_STEPS = 360  # half degrees of a half turn: lines of one step run one way
_LINES = (Role.HIDDEN, Role.VISIBLE)


@dataclass(frozen=True, slots=True, eq=False)
class _Lines:
    """Which way each of some lines runs, how far ``away`` across it it lies, and from where to
    where along it."""

    turn: Floats
    away: Floats
    low: Floats
    high: Floats


def legible(marks: Sequence[Mark]) -> tuple[Mark, ...]:
    """The marks of a sheet, hidden and visible lines without those that cannot be told apart."""
    drawn = [m for m in marks if isinstance(m, Strokes) and m.role in _LINES and len(m.segments)]
    if not drawn:
        return tuple(marks)
    segments = np.concatenate([mark.segments for mark in drawn])
    visible = np.concatenate([np.full(len(m.segments), m.role is Role.VISIBLE) for m in drawn])
    stays = visible | ~_dots(segments, ~visible)
    _thin(segments, visible, stays)
    kept: dict[int, Mark] = {}
    place = 0
    for mark in drawn:
        own = stays[place : place + len(mark.segments)]
        place += len(own)
        if not own.all():
            owner_of = None if mark.owner_of is None else mark.owner_of[own]
            kept[id(mark)] = replace(mark, segments=mark.segments[own], owner_of=owner_of)
    return tuple(kept.get(id(mark), mark) for mark in marks)


def _dots(segments: Floats, asked: Flags) -> Flags:
    """Which of those asked about are short and belong to no curve that is larger than a dot."""
    steps = segments[:, 2:] - segments[:, :2]
    small: Flags = asked & (np.hypot(*steps.T) < _DOT)
    short = np.flatnonzero(small)
    if len(short):
        curve = _curves(segments[short], steps[short])
        order = np.argsort(curve, kind="stable")
        first = np.flatnonzero(np.diff(curve[order], prepend=-1))
        ends = segments[short][order]
        low = np.minimum.reduceat(np.minimum(ends[:, :2], ends[:, 2:]), first)
        high = np.maximum.reduceat(np.maximum(ends[:, :2], ends[:, 2:]), first)
        large = (high - low).max(axis=1) >= _DOT
        small[short[order[np.repeat(large, np.diff(first, append=len(order)))]]] = False
    return small


def _curves(segments: Floats, steps: Floats) -> Places:
    """A number for each segment, the same for those that go on from one another hardly turning.

    Where the ends of just two meet, they take the lower number of the two; so do, again and again,
    those that they are numbered after.
    """
    count = len(segments)
    places = np.round(segments.reshape(-1, 2) * 10.0**DECIMALS).astype(np.int64)
    spots = places[:, 0] * _PAST_ANY + places[:, 1]
    _, spot, meeting = np.unique(spots, return_inverse=True, return_counts=True)
    order = np.argsort(spot, kind="stable")
    order = order[meeting[spot[order]] == 2]
    one, other = order[0::2], order[1::2]  # ends, two of a segment
    out = steps / np.hypot(*steps.T)[:, None]
    way = np.where(np.arange(2 * count) % 2, -1.0, 1.0)[:, None] * np.repeat(out, 2, axis=0)
    goes_on = (way[one] * way[other]).sum(axis=1) < -HARDLY
    one, other = one[goes_on] // 2, other[goes_on] // 2
    number = np.arange(count)
    while True:
        lower = np.minimum(number[one], number[other])
        after = number.copy()
        np.minimum.at(after, number[one], lower)
        np.minimum.at(after, number[other], lower)
        after = after[after]
        if np.array_equal(after, number):
            return number
        number = after


def _thin(segments: Floats, visible: Flags, stays: Flags) -> None:
    """Take from ``stays`` what runs together with others."""
    own = np.flatnonzero(stays)
    lines = _lines(segments[own])
    one, other = _beside(lines)
    near = np.abs(lines.away[other] - lines.away[one]) <= _HIDDEN_APART
    seen = visible[own]
    gone = np.zeros(len(own), dtype=bool)
    gone[one[near & ~seen[one] & seen[other]]] = True
    hidden = ~seen & ~gone
    both = near & hidden[one] & hidden[other]
    gone[_hidden_gone(lines, one[both], other[both])] = True
    both = seen[one] & seen[other]
    gone[_visible_gone(lines, one[both], other[both])] = True
    stays[own[gone]] = False


def _lines(segments: Floats) -> _Lines:
    steps = segments[:, 2:] - segments[:, :2]
    turn = np.round(np.arctan2(steps[:, 1], steps[:, 0]) / np.pi * _TURN_STEPS) % _TURN_STEPS
    cos, sin = (each(turn / _TURN_STEPS * np.pi)[:, None] for each in (np.cos, np.sin))
    xs, ys = segments[:, 0::2], segments[:, 1::2]
    along = xs * cos + ys * sin
    away = (ys * cos - xs * sin).mean(axis=1)
    return _Lines(turn, away, along.min(axis=1), along.max(axis=1))


def _beside(lines: _Lines) -> tuple[Places, Places]:
    """Pairs of lines near each other of which the first runs along the second."""
    spread = lines.turn * _FAR + lines.away
    order = np.argsort(spread, kind="stable")
    ahead = np.searchsorted(spread[order], spread[order] + _VISIBLE_APART, side="right")
    count = ahead - np.arange(len(order)) - 1
    first = np.repeat(np.arange(len(order)), count)
    on = np.arange(len(first)) - np.repeat(np.cumsum(count) - count, count)
    a, b = order[first], order[first + on + 1]
    shared = np.minimum(lines.high[a], lines.high[b]) - np.maximum(lines.low[a], lines.low[b])
    length = lines.high - lines.low
    by_b, by_a = ((shared >= _ALONG * length[own]) & (length[own] > _STRAIGHT) for own in (a, b))
    return np.concatenate([a[by_b], b[by_a]]), np.concatenate([b[by_b], a[by_a]])


def _hidden_gone(lines: _Lines, one: Places, other: Places) -> list[int]:
    """The longest stay, and what is near none that stays."""
    rank = np.argsort(np.argsort(lines.low - lines.high, kind="stable"))
    before = rank[other] < rank[one]
    one, other = one[before], other[before]
    order = np.argsort(rank[one], kind="stable")
    gone: set[int] = set()
    for a, b in zip(one[order].tolist(), other[order].tolist(), strict=True):
        if b not in gone:  # decided, as it ranks before a
            gone.add(a)
    return list(gone)


def _visible_gone(lines: _Lines, one: Places, other: Places) -> list[int]:
    """The shortest go first, where others stay on both of their sides."""
    side = np.sign(lines.away[other] - lines.away[one])
    beside: dict[int, list[tuple[int, float]]] = {}
    for a, b, way in zip(one.tolist(), other.tolist(), side.tolist(), strict=True):
        beside.setdefault(a, []).append((b, way))
    length = (lines.high - lines.low).tolist()
    gone: set[int] = set()
    for a in sorted(beside, key=lambda k: (length[k], k)):
        if {1.0, -1.0} <= {way for b, way in beside[a] if b not in gone}:
            gone.add(a)
    return list(gone)
