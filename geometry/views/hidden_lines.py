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
from geometry.views.scene import Scene
from shared.tolerances import COPLANAR, MERGE


@dataclass(frozen=True, slots=True, eq=False)
class Stretches:
    """n pieces of lines: ``line`` (n,) its index, ``start`` and ``end`` (n,) from 0 to 1."""

    line: Indices
    start: Floats
    end: Floats
    visible: Flags


def stretches_of(scene: Scene) -> Stretches:
    """Every line of the scene, cut into seen and hidden stretches that cover it end to end."""
    lines = scene.lines
    line, start, end = _hidden_intervals(scene)
    length = np.hypot(*(lines.b - lines.a)[:2])
    closed = np.flatnonzero(~lines.open)
    line = np.concatenate((line, closed))
    start = np.concatenate((start, np.zeros(len(closed))))
    end = np.concatenate((end, np.ones(len(closed))))
    return _cut(len(length), MERGE / length, line, start, end)


def spread(counts: Indices) -> tuple[Indices, Indices]:
    """For rows that each stand for ``counts`` items: the row of each item and its rank in it."""
    row = np.repeat(np.arange(len(counts)), counts)
    first = np.cumsum(counts) - counts
    return row, np.arange(len(row)) - first[row]


def _hidden_intervals(scene: Scene) -> tuple[Indices, Floats, Floats]:
    """Lines and the stretches of them that single panels hide; they may overlap."""
    lines, panels = scene.lines, scene.panels
    line, panel = _candidates(scene)
    near_a, near_b = lines.a[:, line], lines.b[:, line]
    plane = panels.plane[:, panel]
    behind_a = -_snapped((plane[:3] * near_a).sum(axis=0) + plane[3])
    behind_b = -_snapped((plane[:3] * near_b).sum(axis=0) + plane[3])
    keep = (behind_a > 0.0) | (behind_b > 0.0)
    line, panel = line[keep], panel[keep]
    start, end = _narrowed(np.zeros(len(line)), np.ones(len(line)), behind_a[keep], behind_b[keep])
    a, b = near_a[:2, keep], near_b[:2, keep]
    for p, q, r in panels.sides[:, :, panel]:
        start, end = _narrowed(
            start, end, _snapped(p * a[0] + q * a[1] + r), _snapped(p * b[0] + q * b[1] + r)
        )
    some = end > start
    return line[some], start[some], end[some]


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


def _candidates(scene: Scene) -> tuple[Indices, Indices]:
    """Pairs of an open line and a panel that might hide some of it."""
    lines, panels = scene.lines, scene.panels
    line = np.flatnonzero(lines.open)
    low = np.minimum(lines.a[:, line], lines.b[:, line])
    high = np.maximum(lines.a[:, line], lines.b[:, line])
    place_count = scene.solids * scene.views
    place, over = _places_before(scene)
    counts = np.bincount(place, minlength=place_count)
    first = np.cumsum(counts) - counts
    at = lines.place[line]
    row, rank = spread(counts[at])
    row, other = _may_hide(low, high, row, scene.low, scene.high, over[first[at][row] + rank])
    held = np.bincount(panels.place, minlength=place_count)
    start = np.cumsum(held) - held
    pair, rank = spread(held[other])
    row, panel = _may_hide(low, high, row[pair], panels.low, panels.high, start[other][pair] + rank)
    return line[row], panel


def _places_before(scene: Scene) -> tuple[Indices, Indices]:
    """Pairs of places of one view where the second may hide some of the first, in order."""
    every = np.arange(scene.solids * scene.views).reshape(scene.views, scene.solids)
    shape = (scene.views, scene.solids, scene.solids)
    near = np.broadcast_to(every[:, :, None], shape).ravel()
    far = np.broadcast_to(every[:, None, :], shape).ravel()
    return _may_hide(scene.low, scene.high, near, scene.low, scene.high, far)


def _may_hide(
    low: Floats, high: Floats, row: Indices, over_low: Floats, over_high: Floats, over: Indices
) -> tuple[Indices, Indices]:
    """The pairs (row, over) whose boxes overlap as seen, the second reaching in front."""
    keep = np.flatnonzero(over_high[2].take(over) > (low[2] + COPLANAR).take(row))
    for axis in (0, 1):
        row, over = row.take(keep), over.take(keep)
        keep = np.flatnonzero(
            (over_low[axis].take(over) <= (high[axis] + COPLANAR).take(row))
            & (over_high[axis].take(over) >= (low[axis] - COPLANAR).take(row))
        )
    return row.take(keep), over.take(keep)


def _cut(count: int, least: Floats, line: Indices, start: Floats, end: Floats) -> Stretches:
    """Lines cut by the union of their hidden intervals; what is shorter than ``least`` goes."""
    every = np.arange(count)
    # An empty interval at the end of every line makes the gap before it an ordinary one.
    at = np.concatenate((line, every))
    opening = np.concatenate((start, np.ones(count)))
    closing = np.concatenate((end, np.ones(count)))
    order = np.lexsort((opening, at))
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
