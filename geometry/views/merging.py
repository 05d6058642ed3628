"""Lines that lie on one another are drawn once.

Frame and units: (u, v, w) of a view, mm.

Method: every stretch lies on a carrier, the endless straight line through it.  Carriers that
differ by less than MERGE are one.  Along a carrier all ends are breakpoints; between two
breakpoints the winner is a seen stretch before a hidden one, then the nearer to the viewer.
Neighbours won by one solid in one way are joined again.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices
from geometry.views.covers import spread
from geometry.views.hidden_lines import Stretches
from geometry.views.scene import Lines
from shared.tolerances import MERGE

_SAME_DIRECTION = 1e-7
"""Radians; over 1 m it is MERGE."""

_TURN_OF_CUT = 0.731
"""Directions are counted from here to half a turn on.  Lines that lie almost exactly in this
direction could be told apart wrongly; no maker's angle is 41.883 degrees and a bit."""


@dataclass(frozen=True, slots=True, eq=False)
class Pieces:
    """n finished segments: ``segments`` (n, 4) u0 v0 u1 v1, ``visible`` and ``place`` (n,)."""

    segments: Floats
    visible: Flags
    place: Indices


def merged(lines: Lines, stretches: Stretches, solids: int) -> Pieces:
    """The stretches without doubles, sorted by view, then by carrier and along it.

    ``solids`` is how many places one view has.
    """
    line = stretches.line
    carrier, along = _carriers(lines, lines.place // solids)
    begin, finish = (
        (1.0 - at) * along[0, line] + at * along[1, line] for at in (stretches.start, stretches.end)
    )
    turned = begin > finish
    low_at = np.where(turned, stretches.end, stretches.start)
    high_at = np.where(turned, stretches.start, stretches.end)
    low, high = np.minimum(begin, finish), np.maximum(begin, finish)
    mark, of_end = _breakpoints(np.tile(carrier[line], 2), np.concatenate((low, high)))
    count = len(line)
    first, last = mark[:count], mark[count:]
    row, rank = spread(last - first)
    cell = first[row] + rank

    standing = _standing(lines, stretches)
    nobody = standing.max(initial=0) + 1
    winner = np.full(len(of_end), nobody, dtype=np.intp)
    np.minimum.at(winner, cell, standing.take(row))
    won = winner < nobody
    stretch = winner % max(count, 1)
    stretch[~won] = 0
    place = np.where(won, lines.place[line[stretch]], -1)
    visible = stretches.visible[stretch]

    opens = won.copy()
    opens[1:] &= (place[1:] != place[:-1]) | (visible[1:] != visible[:-1])
    closes = won.copy()
    closes[:-1] &= (place[1:] != place[:-1]) | (visible[1:] != visible[:-1])
    start, stop = np.flatnonzero(opens), np.flatnonzero(closes) + 1
    end = of_end.take(np.concatenate((start, stop)))
    at = np.where(
        end < count, low_at.take(end, mode="wrap"), high_at.take(end - count, mode="wrap")
    )
    of_line = line.take(end % count)
    points = _points(lines.a[:2].take(of_line, axis=1), lines.b[:2].take(of_line, axis=1), at)
    return Pieces(
        segments=np.concatenate((points[:, : len(start)], points[:, len(start) :])).T.copy(),
        visible=visible[start],
        place=place[start],
    )


def _points(a: Floats, b: Floats, at: Floats) -> Floats:
    """Points (2, n) along lines, the ends themselves exact."""
    return np.where(at == 1.0, b, a + (b - a) * at)


def _carriers(lines: Lines, view: Indices) -> tuple[Indices, Floats]:
    """The carrier of each line, numbered by view, and where its two ends are along it, (2, n)."""
    (ua, va), (ub, vb) = lines.a[:2], lines.b[:2]
    angle = np.mod(np.arctan2(vb - va, ub - ua) - _TURN_OF_CUT, np.pi) + _TURN_OF_CUT
    cosine, sine = np.cos(angle), np.sin(angle)
    middle_u, middle_v = _middle(ua, ub), _middle(va, vb)
    offset = cosine * ((va + vb) / 2.0 - middle_v) - sine * ((ua + ub) / 2.0 - middle_u)
    by_direction = _clusters(view, angle, _SAME_DIRECTION)
    carrier = _clusters(by_direction, offset, MERGE)
    return carrier, np.stack((ua * cosine + va * sine, ub * cosine + vb * sine))


def _middle(first: Floats, second: Floats) -> float:
    """Half way over all values: offsets from there are least spoilt by a rounded direction."""
    low = min(first.min(), second.min())
    return float(low + max(first.max(), second.max())) / 2.0


def _clusters(group: Indices, value: Floats, reach: float) -> Indices:
    """Numbers, in order of group and value, for values that follow within ``reach``."""
    order, new = _runs(group, value, reach)
    number = np.empty(len(order), dtype=np.intp)
    number[order] = np.cumsum(new) - 1
    return number


def _breakpoints(carrier: Indices, along: Floats) -> tuple[Indices, Indices]:
    """The breakpoint of each end, numbered by carrier and along it, and one end of each."""
    order, new = _runs(carrier, along, MERGE)
    mark = np.empty(len(order), dtype=np.intp)
    mark[order] = np.cumsum(new) - 1
    return mark, order[new]


def _runs(group: Indices, value: Floats, reach: float) -> tuple[Indices, Flags]:
    """The order by group and value, and where in it a new run begins."""
    # One number sorts faster than two; it need only keep apart what differs by a hair of reach.
    span = 2.0 * float(np.abs(value).max(initial=0.0)) + 1.0
    order = np.argsort(group * span + value)
    group, value = group[order], value[order]
    new = np.ones(len(order), dtype=np.bool_)
    new[1:] = (np.diff(group) != 0) | (np.diff(value) > reach)
    return order, new


def _standing(lines: Lines, stretches: Stretches) -> Indices:
    """A number for each stretch, least for the one that wins: seen, then nearer, then as they come.

    Its remainder by the count of all is the stretch's own.
    """
    line = stretches.line
    halfway = (stretches.start + stretches.end) / 2.0
    near, far = lines.a[2].take(line), lines.b[2].take(line)
    steps = np.round((near + (far - near) * halfway) / MERGE).astype(np.intp)
    last = steps.max(initial=0) - steps.min(initial=0) + 1
    found: Indices = np.where(stretches.visible, -steps, last - steps) * len(line)
    found += np.arange(len(line))
    return found
