"""Where the points of a faceted relief lie, and how deep: scattered from a seed, moved by hand.

Units: shares from 0 to 1 of the picture's width, of its height (from below) and of the carving's
depth, so that a pattern keeps its looks when the bench grows.  A mirrored pattern has its points
on the left half and on the middle line; the right half follows.

Method: the four corners first; of the others every third lies on a border.  Each is the farthest
from all before it of a few tries (Mitchell, Spectrally optimal sampling for distribution ray
tracing, 1991), so a pattern with more points has all points of one with fewer, and a point keeps
its number.
"""

from __future__ import annotations

import random
import re
from dataclasses import dataclass, replace
from enum import Enum
from functools import lru_cache

from shared.errors import UnreadableValue

MOST_POINTS, LEAST_POINTS = 60, 5

_CORNERS = 4
_TRIES = 12
WIDE = 3.0
"""A picture is taken to be so many times as wide as high when points are spread and joined."""

_MARGIN = 0.06  # share: points within keep so far from the borders
_NEAREST = 0.01  # share: nor does a hand bring them nearer
_EVERY = 3  # of the points after the corners, which lie on a border
_FINEST = 5  # decimals of a share
_SAID = re.compile(r"%|(?<=\d):|,(?=\s|$)|\b(?:point|across|up|deep)\b")
"""What may stand round the numbers of a point."""


class Hold(Enum):
    """What a point is held to."""

    CORNER = "a corner"
    LEVEL = "its level border"
    UPRIGHT = "its upright border"
    FREE = "nothing"


@dataclass(frozen=True, slots=True)
class ReliefPoint:
    """A point of the pattern: shares of the width, the height and the depth, and what holds it."""

    number: int
    across: float
    up: float
    deep: float
    hold: Hold


@dataclass(frozen=True, slots=True)
class Moved:
    """A point that a hand has moved, and where to."""

    number: int
    across: float
    up: float
    deep: float


@dataclass(frozen=True, slots=True)
class Pattern:
    """``count`` points; of the left half and the middle line when ``mirrored``."""

    seed: int
    count: int
    mirrored: bool
    moved: tuple[Moved, ...] = ()


@lru_cache(maxsize=64)
def points_of(pattern: Pattern) -> tuple[ReliefPoint, ...]:
    """The points by number, from 1; those moved by hand where they were put, as far as held."""
    moved = {one.number: one for one in pattern.moved}
    right = 0.5 if pattern.mirrored else 1.0
    return tuple(
        _put(point, moved[point.number], right) if point.number in moved else point
        for point in _scattered(pattern.seed, pattern.count, mirrored=pattern.mirrored)
    )


def with_point(pattern: Pattern, point: Moved) -> Pattern:
    """The pattern with one point put elsewhere."""
    others = [one for one in pattern.moved if one.number != point.number]
    fine = Moved(
        point.number,
        *(
            round(min(max(share, 0.0), 1.0), _FINEST)
            for share in (point.across, point.up, point.deep)
        ),
    )
    return replace(pattern, moved=tuple(sorted([*others, fine], key=lambda one: one.number)))


def moved_text(moved: tuple[Moved, ...]) -> str:
    """As it is kept and typed: ``7 31.25 60 40; 12 ...``, a number and three percentages each.

    >>> moved_text((Moved(7, 0.3125, 0.6, 0.4),))
    '7 31.25 60 40'
    """
    return "; ".join(
        " ".join((str(one.number), *(_percent(s) for s in (one.across, one.up, one.deep))))
        for one in moved
    )


def told_points(moved: tuple[Moved, ...]) -> str:
    """The same in words, which can be read back.

    >>> told_points((Moved(7, 0.3125, 0.6, 0.4),))
    '7: 31.25 % across, 60 % up, 40 % deep'
    """
    return "; ".join(
        f"{one.number}: {_percent(one.across)} % across, {_percent(one.up)} % up, "
        f"{_percent(one.deep)} % deep"
        for one in moved
    )


def read_moved(value_text: str) -> tuple[Moved, ...]:
    """The points in such a text, with words or without; UnreadableValue says what is wrong."""
    found: dict[int, Moved] = {}
    for entry in value_text.replace("\n", ";").split(";"):
        words = _SAID.sub(" ", entry).split()
        if not words:
            continue
        number, *shares = _numbers(words, entry)
        if number in found:
            raise _unreadable(f"Point {number:g} is there twice.")
        if number != round(number) or not 1 <= number <= MOST_POINTS:
            raise _unreadable(f"There is no point {number:g}.")
        if not all(0.0 <= share <= 100.0 for share in shares):
            raise _unreadable(f"Point {number:g} lies outside the picture.")
        found[round(number)] = Moved(
            round(number), *(round(share / 100.0, _FINEST) for share in shares)
        )
    return tuple(found[number] for number in sorted(found))


def _numbers(words: list[str], entry: str) -> list[float]:
    try:
        numbers = [float(word) for word in words]
    except ValueError:
        numbers = []
    if len(numbers) != 4:
        raise _unreadable(f"{entry.strip()[:40]!r} is not a point.")
    return numbers


def _unreadable(what: str) -> UnreadableValue:
    return UnreadableValue(
        what,
        remedy="Write each as its number and how far across, up and deep in per cent, such as "
        "7: 31.5 across, 60 up, 40 deep, or 7 31.5 60 40 for short, with semicolons between.",
    )


def _percent(share: float) -> str:
    return f"{round(100.0 * share, _FINEST - 2):.10g}"


def _put(point: ReliefPoint, to: Moved, right: float) -> ReliefPoint:
    """A point moved, but for what holds it."""
    across = min(max(to.across, _NEAREST), right - _NEAREST)
    up = min(max(to.up, _NEAREST), 1.0 - _NEAREST)
    if point.hold in (Hold.CORNER, Hold.UPRIGHT):
        across = point.across
    if point.hold in (Hold.CORNER, Hold.LEVEL):
        up = point.up
    return replace(point, across=across, up=up, deep=to.deep)


@lru_cache(maxsize=64)
def _scattered(seed: int, count: int, *, mirrored: bool) -> tuple[ReliefPoint, ...]:
    dice = random.Random(seed)
    right = 0.5 if mirrored else 1.0
    corners = ((0.0, 0.0), (right, 0.0), (right, 1.0), (0.0, 1.0))
    found = [
        ReliefPoint(number, across, up, _share(dice), Hold.CORNER)
        for number, (across, up) in enumerate(corners, 1)
    ]
    for k in range(count - _CORNERS):
        number = k + _CORNERS + 1
        tries = [
            _on_a_border(dice, number, right) if k % _EVERY == 0 else _within(dice, number, right)
            for _ in range(_TRIES)
        ]
        best = max(tries, key=lambda one: _clearance(one, found))
        found.append(replace(best, deep=_share(dice)))
    return tuple(found)


def _share(dice: random.Random) -> float:
    return round(dice.random(), 2)


def _on_a_border(dice: random.Random, number: int, right: float) -> ReliefPoint:
    """Anywhere on the four sides, a longer one oftener."""
    which, along = dice.random(), dice.random()
    wide = WIDE * right
    if which < wide / (wide + 1.0):
        up = 0.0 if which < wide / (wide + 1.0) / 2.0 else 1.0
        return ReliefPoint(number, _inside(along, right), up, 0.0, Hold.LEVEL)
    across = 0.0 if which < (wide + 0.5) / (wide + 1.0) else right
    return ReliefPoint(number, across, _inside(along, 1.0), 0.0, Hold.UPRIGHT)


def _within(dice: random.Random, number: int, right: float) -> ReliefPoint:
    across, up = dice.random(), dice.random()
    return ReliefPoint(number, _inside(across, right), _inside(up, 1.0), 0.0, Hold.FREE)


def _inside(share: float, end: float) -> float:
    return round((_MARGIN + share * (1.0 - 2.0 * _MARGIN)) * end, 4)


def _clearance(one: ReliefPoint, others: list[ReliefPoint]) -> float:
    return min(
        (WIDE * (one.across - other.across)) ** 2 + (one.up - other.up) ** 2 for other in others
    )
