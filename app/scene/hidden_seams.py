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

_LENGTHS = 16  # that an outline is looked at in


def seen_and_hidden(sides: Floats, foremost: Foremost) -> tuple[Floats, Floats]:
    """The sides (n, 2, 3) of faces as lines that are seen, (a, 4), and that are not, (b, 4)."""
    seen: list[Floats] = []
    hidden: list[Floats] = []
    shares = (np.arange(_LENGTHS) + 0.5) / _LENGTHS
    for start, end in sides:
        points = start + shares[:, None] * (end - start)
        _, heights = foremost.at(points[:, :2])
        open_there = heights <= points[:, 2] + ON_IT
        turns = np.flatnonzero(open_there[1:] != open_there[:-1]) + 1
        stops = np.array([0, *turns, _LENGTHS])
        ends = start[:2] + (stops / _LENGTHS)[:, None] * (end - start)[:2]
        for k, first in enumerate(stops[:-1]):
            line = np.concatenate([ends[k], ends[k + 1]])
            (seen if open_there[first] else hidden).append(line)
    return np.array(seen).reshape(-1, 4), np.array(hidden).reshape(-1, 4)
