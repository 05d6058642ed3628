"""Where in a view an angle of a joint can be drawn.

Frame and units: (u, v) of the view, degrees.

Method: between an edge that the joint makes and one that it meets, or the square to that.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from geometry.design.joint import Measure
from geometry.dimensioning.dimension import Dimension
from geometry.sheets.outlines import HIDDEN, MEET, SHORT, Drawn, Outlines, as_point, tiny
from geometry.solids.solid import Floats

_LEAST_DEG = 0.3
_SAME_DEG = 0.02
_READABLE_SIDE = 4.0  # mm on paper: a shorter side of an angle is hard to see


def angles(index: int, measure: Measure, outlines: Outlines) -> Iterator[Drawn]:
    """All places in which an angle can be drawn; ``index`` is the measure's."""
    if measure.value < _LEAST_DEG or not outlines.turns(measure):
        return
    edges = outlines.edges
    both = np.concatenate([edges, edges[:, (2, 3, 0, 1)]])  # from either end
    count = len(edges)
    for i in np.flatnonzero(np.tile(outlines.own_edges, 2)).tolist():
        apex, run = both[i, :2], both[i, 2:] - both[i, :2]
        if math.hypot(*run.tolist()) < SHORT:
            continue
        for j in np.flatnonzero(np.hypot(*(both[:, :2] - apex).T) < MEET).tolist():
            other = both[j, 2:] - both[j, :2]
            if j % count == i % count or math.hypot(*other.tolist()) < SHORT:
                continue
            side = _side_of_angle(run, other, measure.value)
            if side is None:
                continue
            hidden = sum(not outlines.seen_edges[k % count] for k in (i, j))
            shorter = min(math.hypot(*run.tolist()), math.hypot(*other.tolist()))
            short = tiny(shorter, outlines, _READABLE_SIDE) + 10.0 / shorter
            dimension = Dimension(
                measure.name,
                measure.meaning,
                outlines.view.name,
                measure.value,
                "deg",
                as_point(apex + side),
                as_point(apex + run),
                (1.0, 0.0),
                1,
                1,
                apex=as_point(apex),
            )
            yield Drawn(index, dimension, HIDDEN * hidden + short)


def _side_of_angle(run: Floats, other: Floats, value_deg: float) -> Floats | None:
    """The direction from which ``run`` turns by so many degrees: along ``other``, against it, or
    square to it; None when it does so from none of them."""
    square = np.array((-other[1], other[0]))
    for side in (other, square, -square, -other):
        size = math.hypot(*run.tolist()) * math.hypot(*side.tolist())
        turn = math.degrees(math.acos(max(-1.0, min(1.0, float(run @ side) / size))))
        if abs(turn - value_deg) < _SAME_DEG:
            return side
    return None
