"""What of a joint's outlines is in sight, and what lies behind wood.

Frame and units: (u, v) of the view and w toward the viewer, mm.

Method: each outline is looked at in the middle of short lengths of it, the foremost surface being
there in front of it or not; neighbouring lengths that are alike are one line.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from geometry.views.foremost import Foremost

Floats = NDArray[np.float64]

ON_IT = 0.6
"""mm: a surface no higher than that over a line or a face of a joint does not hide it."""

_LONG = 60.0  # mm
_LENGTHS = {False: 4, True: 16}  # that a short outline and a long one are looked at in
_TOGETHER = {False: 16, True: 1}  # so many of them at once


def seen_and_hidden(sides: Floats, foremost: Foremost) -> tuple[Floats, Floats]:
    """The sides (n, 2, 3) of faces as lines that are seen, (a, 4), and that are not, (b, 4).

    Sides that lie near each other in the list are best near each other in the view.
    """
    found: dict[bool, list[Floats]] = {True: [], False: []}
    far = np.hypot(*(sides[:, 1, :2] - sides[:, 0, :2]).T) > _LONG
    for is_long in (False, True):
        group, count = sides[far == is_long], _TOGETHER[is_long]
        for first in range(0, len(group), count):
            _tell_apart(group[first : first + count], _LENGTHS[is_long], foremost, found)
    seen, hidden = (np.concatenate([np.empty((0, 4)), *found[one]]) for one in (True, False))
    return seen, hidden


def _tell_apart(
    sides: Floats, lengths: int, foremost: Foremost, found: dict[bool, list[Floats]]
) -> None:
    """Add some sides to what is ``found`` to be seen, and not."""
    shares = (np.arange(lengths) + 0.5) / lengths
    start, run = sides[:, None, 0], sides[:, None, 1] - sides[:, None, 0]
    points = start + shares[:, None] * run
    _, heights = foremost.at(points[:, :, :2].reshape(-1, 2))
    open_there = heights.reshape(-1, lengths) <= points[:, :, 2] + ON_IT
    lines = sides[:, :, :2].reshape(-1, 4)
    all_open, none_open = open_there.all(axis=1), ~open_there.any(axis=1)
    found[True].append(lines[all_open])
    found[False].append(lines[none_open])
    for k in np.flatnonzero(~all_open & ~none_open).tolist():
        turns = np.flatnonzero(open_there[k, 1:] != open_there[k, :-1]) + 1
        stops = np.array([0, *turns, lengths])
        ends = lines[k, :2] + (stops / lengths)[:, None] * run[k, 0, :2]
        for i, first in enumerate(stops[:-1].tolist()):
            found[bool(open_there[k, first])].append(ends[i : i + 2].reshape(1, 4))
