"""Which stretches of each edge are seen, and which lie behind material.

Frame and units: (u, v, w) of a view, mm.

What hidden means: a point is hidden when, on the way from it toward the viewer, there is
material of any part.  Every panel toward the viewer counts with its rim, so an edge exactly
behind the rim of a nearer face is hidden there; the nearer face's own edge is drawn in the same
place, and shows once.  A panel hides only what is more than COPLANAR behind its plane, so an
edge that lies in a face, or where two parts touch, stays visible unless something else stands
in front of it.

Method: for each pair of an edge and a panel whose boxes overlap, the hidden stretch is one
interval of the edge: where it is inside all sides of the panel and behind its plane.  All pairs
are clipped at once, then sorted by edge and start; a running maximum of the ends gives the
union and the gaps between are what is seen.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices
from geometry.views.covers import Covers, covers_of, spread
from geometry.views.pairing import (
    OpenLines,
    buried,
    lines_behind_panels,
    lines_behind_places,
    open_lines,
    places_before,
    within_largest_panels,
)
from geometry.views.scene import Lines, Panels, Scene
from shared.tolerances import COPLANAR, MERGE


@dataclass(frozen=True, slots=True, eq=False)
class Stretches:
    """n pieces of lines: ``line`` (n,) its index, ``start`` and ``end`` (n,) from 0 to 1."""

    line: Indices
    start: Floats
    end: Floats
    visible: Flags


@dataclass(frozen=True, slots=True, eq=False)
class _Hidden:
    """Stretches of lines that one thing hides; they may overlap."""

    line: Indices
    start: Floats
    end: Floats

    def all_of(self, lines: Indices) -> Flags:
        """Which of ``lines`` are hidden from end to end by one thing."""
        whole = self.line[(self.start <= 0.0) & (self.end >= 1.0)]
        flags = np.zeros(int(lines.max(initial=-1)) + 1, dtype=np.bool_)
        flags[whole] = True
        return flags.take(lines)


def stretches_of(scene: Scene) -> Stretches:
    """Every line of the scene, cut into seen and hidden stretches that cover it end to end."""
    lines = scene.lines
    places = scene.solids * scene.views
    covers = covers_of(scene.rims, places)
    place, over = places_before(scene)
    gone = buried(scene, covers, place, over)
    live = ~(gone.take(place) | gone.take(over))
    trying = open_lines(scene, gone)
    row, over = lines_behind_places(scene, trying, place[live], over[live])

    own = trying.place.take(row) == over
    behind = _wholly_behind(scene, covers, trying, row, over) & ~own
    by_covers = _behind_covers(lines, covers, trying.line.take(row[behind]), over[behind])
    # A solid that lies over its outline once hides none of its own lines that face the viewer.
    left = np.flatnonzero(
        ~(behind | own & covers.single.take(over) | by_covers.all_of(trying.line).take(row))
    )
    row, over = row.take(left), over.take(left)

    at, panel = within_largest_panels(scene.panels, places, trying, row, over)
    by_largest = _behind_panels(lines, scene.panels, trying.line.take(at), panel)
    left = np.flatnonzero(~by_largest.all_of(trying.line).take(row))
    at, panel = lines_behind_panels(scene.panels, trying, row.take(left), over.take(left))
    by_panels = _behind_panels(lines, scene.panels, trying.line.take(at), panel)

    found = (by_covers, by_largest, by_panels)
    return _cut(
        MERGE / np.hypot(*(lines.b - lines.a)[:2]),
        trying.line,
        np.concatenate([hidden.line for hidden in found]),
        np.concatenate([hidden.start for hidden in found]),
        np.concatenate([hidden.end for hidden in found]),
    )


def _wholly_behind(
    scene: Scene, covers: Covers, lines: OpenLines, row: Indices, over: Indices
) -> Flags:
    """Of pairs, those where the place is a cover and no part of the line is higher than it."""
    highest, lowest = lines.high[2].take(row), scene.low[2].take(over)
    return np.asarray((covers.count.take(over) > 0) & (highest <= lowest + COPLANAR))


def _behind_covers(lines: Lines, covers: Covers, line: Indices, over: Indices) -> _Hidden:
    """What covers hide of lines that lie wholly behind them."""
    pair, rank = spread(covers.count.take(over))
    p, q, r = covers.sides.take(covers.first.take(over).take(pair) + rank, axis=1)
    (ua, va), (ub, vb) = (ends[:2].take(line.take(pair), axis=1) for ends in (lines.a, lines.b))
    start, end = _narrowed(
        np.zeros(len(pair)),
        np.ones(len(pair)),
        _snapped(p * ua + q * va + r),
        _snapped(p * ub + q * vb + r),
    )
    first = np.flatnonzero(rank == 0)
    if not len(first):
        return _Hidden(line, start, end)
    start, end = np.maximum.reduceat(start, first), np.minimum.reduceat(end, first)
    some = end > start
    return _Hidden(line[some], start[some], end[some])


def _behind_panels(lines: Lines, panels: Panels, line: Indices, panel: Indices) -> _Hidden:
    """What panels hide of lines, pair by pair."""
    a, b = lines.a.take(line, axis=1), lines.b.take(line, axis=1)
    p, q, r, s = panels.plane.take(panel, axis=1)
    behind_a = -_snapped(p * a[0] + q * a[1] + r * a[2] + s)
    behind_b = -_snapped(p * b[0] + q * b[1] + r * b[2] + s)
    keep = np.flatnonzero((behind_a > 0.0) | (behind_b > 0.0))
    line, panel = line.take(keep), panel.take(keep)
    (ua, va), (ub, vb) = a[:2].take(keep, axis=1), b[:2].take(keep, axis=1)
    start, end = _narrowed(
        np.zeros(len(keep)), np.ones(len(keep)), behind_a.take(keep), behind_b.take(keep)
    )
    for side in panels.sides:
        p, q, r = side.take(panel, axis=1)
        start, end = _narrowed(
            start, end, _snapped(p * ua + q * va + r), _snapped(p * ub + q * vb + r)
        )
    some = np.flatnonzero(end > start)
    return _Hidden(line.take(some), start.take(some), end.take(some))


def _snapped(distance: Floats) -> Floats:
    """Distances in mm, with those that are only rounding set to nothing."""
    return np.where(np.abs(distance) < COPLANAR, 0.0, distance)


def _narrowed(start: Floats, end: Floats, at_a: Floats, at_b: Floats) -> tuple[Floats, Floats]:
    """The stretches cut to where a value that runs evenly from a to b is not negative."""
    fall = at_a - at_b
    crossing = np.divide(at_a, fall, out=np.zeros_like(fall), where=fall != 0.0)
    start = np.where(at_a < 0.0, np.where(at_b < 0.0, 1.0, np.maximum(start, crossing)), start)
    end = np.where(at_b < 0.0, np.where(at_a < 0.0, 0.0, np.minimum(end, crossing)), end)
    return start, end


def _cut(least: Floats, trying: Indices, line: Indices, start: Floats, end: Floats) -> Stretches:
    """Lines cut by the union of their hidden intervals; what is shorter than ``least`` goes.

    Those that are not among ``trying`` are hidden from end to end.
    """
    count = len(least)
    every = np.arange(count)
    # An empty interval at the end of a line makes the gap before it an ordinary one.
    at = np.concatenate((line, trying))
    opening = np.concatenate((start, np.ones(len(trying))))
    closing = np.concatenate((end, np.ones(len(trying))))
    order = np.argsort(2.0 * at + opening)
    at, opening, closing = at[order], opening[order], closing[order]
    # Line i is moved to [2 i, 2 i + 1], so that one running maximum serves all lines.
    reach = np.maximum.accumulate(closing + 2.0 * at)
    reach = np.concatenate(((0.0,), reach[:-1])) - 2.0 * at
    reach = np.maximum(reach, 0.0)
    seen = opening - reach > least[at]
    line, start, end = at[seen], reach[seen], opening[seen]

    before = np.concatenate(((0.0,), end[:-1]))
    before[np.flatnonzero(np.diff(line, prepend=-1))] = 0.0
    last = np.zeros(count)
    last[line] = end
    line_all = np.concatenate((line, line, every))
    start_all = np.concatenate((start, before, last))
    end_all = np.concatenate((end, start, np.ones(count)))
    visible = np.arange(len(line_all)) < len(line)
    keep = visible | (end_all - start_all > least[line_all])
    return Stretches(line_all[keep], start_all[keep], end_all[keep], visible[keep])
