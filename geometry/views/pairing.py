"""Which lines have to be tried against which covers and panels.

Frame and units: (u, v, w) of a view, mm; places as geometry.views.scene has them.

Method: from coarse to fine, so that the work stays near proportional to the bench: solids that
are buried behind one cover drop out altogether; then boxes of solids, boxes of lines against
boxes of solids, lines that the largest panel of a solid may hide wholly, and last boxes of lines
against boxes of panels.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices
from geometry.views.covers import Covers, spread
from geometry.views.scene import Panels, Scene
from shared.tolerances import COPLANAR


@dataclass(frozen=True, slots=True, eq=False)
class OpenLines:
    """n lines that may be seen: ``line`` (n,) their numbers, ``place`` (n,), and boxes (3, n)."""

    line: Indices
    place: Indices
    low: Floats
    high: Floats


def places_before(scene: Scene) -> tuple[Indices, Indices]:
    """Pairs of places of one view where the second may hide some of the first, in order."""
    every = np.arange(scene.solids * scene.views).reshape(scene.views, scene.solids)
    shape = (scene.views, scene.solids, scene.solids)
    near = np.broadcast_to(every[:, :, None], shape).ravel()
    far = np.broadcast_to(every[:, None, :], shape).ravel()
    return _boxes_meet(scene.low, scene.high, near, scene.low, scene.high, far)


def buried(scene: Scene, covers: Covers, place: Indices, over: Indices) -> Flags:
    """The places whose whole outline lies behind one cover, out of pairs of places."""
    rims = scene.rims
    held = np.bincount(rims.place, minlength=len(covers.count))
    first = np.cumsum(held) - held
    low, high = scene.low, scene.high
    chosen = (
        (covers.count.take(over) > 0)
        & (held.take(place) > 0)
        & (high[2].take(place) <= low[2].take(over) + COPLANAR)
    )
    for axis in (0, 1):
        chosen &= low[axis].take(place) >= low[axis].take(over) - COPLANAR
        chosen &= high[axis].take(place) <= high[axis].take(over) + COPLANAR
    place, over = place[chosen], over[chosen]
    pair, rank = spread(held.take(place))
    point = first.take(place).take(pair) + rank
    row, rank = spread(covers.count.take(over).take(pair))
    side = covers.first.take(over).take(pair).take(row) + rank
    p, q, r = covers.sides.take(side, axis=1)
    u, v = rims.a.take(point, axis=1).take(row, axis=1)
    outside = np.bincount(pair.take(row)[p * u + q * v + r < -COPLANAR], minlength=len(place))
    gone = np.zeros(len(covers.count), dtype=np.bool_)
    gone[place[outside == 0]] = True
    return gone


def open_lines(scene: Scene, gone: Flags) -> OpenLines:
    """The lines that may be seen, those of places that are ``gone`` left out."""
    lines = scene.lines
    line = np.flatnonzero(lines.open & ~gone.take(lines.place))
    a, b = lines.a.take(line, axis=1), lines.b.take(line, axis=1)
    return OpenLines(line, lines.place.take(line), np.minimum(a, b), np.maximum(a, b))


def lines_behind_places(
    scene: Scene, lines: OpenLines, place: Indices, over: Indices
) -> tuple[Indices, Indices]:
    """Pairs of a row of ``lines`` and a place that may hide it, out of pairs of places."""
    counts = np.bincount(place, minlength=scene.solids * scene.views)
    first = np.cumsum(counts) - counts
    row, rank = spread(counts.take(lines.place))
    other = over.take(first.take(lines.place).take(row) + rank)
    return _boxes_meet(lines.low, lines.high, row, scene.low, scene.high, other)


def within_largest_panels(
    panels: Panels, places: int, lines: OpenLines, row: Indices, over: Indices
) -> tuple[Indices, Indices]:
    """Pairs of a row of ``lines`` and the largest panel of a place, when it may hide it all."""
    order = np.argsort((panels.high[0] - panels.low[0]) * (panels.high[1] - panels.low[1]))
    largest = np.full(places, -1, dtype=np.intp)
    largest[panels.place.take(order)] = order  # of equal places the last, so largest, stays
    panel = largest.take(over)
    keep = np.flatnonzero(panel >= 0)
    row, panel = row.take(keep), panel.take(keep)
    keep = np.flatnonzero(panels.high[2].take(panel) > (lines.low[2] + COPLANAR).take(row))
    for axis in (0, 1):
        row, panel = row.take(keep), panel.take(keep)
        keep = np.flatnonzero(
            (panels.low[axis].take(panel) <= (lines.low[axis] + COPLANAR).take(row))
            & (panels.high[axis].take(panel) >= (lines.high[axis] - COPLANAR).take(row))
        )
    return row.take(keep), panel.take(keep)


def lines_behind_panels(
    panels: Panels, lines: OpenLines, row: Indices, over: Indices
) -> tuple[Indices, Indices]:
    """Pairs of a row of ``lines`` and a panel of the place that it was paired with.

    Of a place's panels, in order of where they begin in u, only those from the first that
    reaches as far as the line begins to the last that begins before the line ends are tried.
    """
    low, high = lines.low, lines.high
    reach = float(np.abs((low[0], high[0])).max(initial=0.0))
    reach = max(reach, float(np.abs((panels.low[0], panels.high[0])).max(initial=0.0)))
    step = 2.0 * reach + 1.0  # so far are places set apart, to be searched in one go
    begins = panels.place * step + panels.low[0]
    reached = np.maximum.accumulate(panels.place * step + panels.high[0])
    base = over * step
    first = np.searchsorted(reached, base + (low[0] - COPLANAR).take(row))
    last = np.searchsorted(begins, base + (high[0] + COPLANAR).take(row), side="right")
    pair, rank = spread(np.maximum(last - first, 0))
    panel = first.take(pair) + rank
    return _boxes_meet(low, high, row.take(pair), panels.low, panels.high, panel)


def _boxes_meet(
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
