"""Whether lines run through each other.

Frame: that of the lines, mm.

Method: two segments cross where the ends of each lie on different sides of the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import overload

import numpy as np
from numpy.typing import NDArray

from geometry.drawing.text_box import Line

Coordinates = Sequence[float] | Sequence[NDArray[np.float64]]  # x0, y0, x1, y1


@overload
def cross(one: Line, other: Line, *, touching: bool = False) -> bool: ...


@overload
def cross(
    one: Sequence[NDArray[np.float64]],
    other: Sequence[NDArray[np.float64]],
    *,
    touching: bool = False,
) -> NDArray[np.bool_]: ...


def cross(
    one: Coordinates, other: Coordinates, *, touching: bool = False
) -> bool | NDArray[np.bool_]:
    """Whether two segments run through each other, or some segments through others, given as arrays
    of their coordinates that go together; ``touching`` counts those that only meet or are in line.
    """
    (a, b, c, d), (p, q, r, s) = one, other
    mine = ((c - a) * (q - b) - (d - b) * (p - a)) * ((c - a) * (s - b) - (d - b) * (r - a))
    theirs = ((r - p) * (b - q) - (s - q) * (a - p)) * ((r - p) * (d - q) - (s - q) * (c - p))
    return (mine <= 0.0) & (theirs <= 0.0) if touching else (mine < 0.0) & (theirs < 0.0)


def all_crossings(
    lines: NDArray[np.float64], others: NDArray[np.float64], *, touching: bool = False
) -> NDArray[np.bool_]:
    """Which of n lines (n, 4) run through which of k others (k, 4); (n, k)."""
    return cross(list(lines.T[:, :, None]), list(others.T[:, None]), touching=touching)
