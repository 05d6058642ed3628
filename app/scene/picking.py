"""What is under the hand: dimensions and edges that set a value, nearest first.

All in sheet mm; distances to many lines at once in numpy.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np
from numpy.typing import NDArray

from geometry.dimensioning.dimension_marks import Target
from geometry.primitives.frame import Vec2

Floats = NDArray[np.float64]
Segment = tuple[float, float, float, float]


class Lines:
    """Segments in sheet mm, each with the name of what it stands for."""

    def __init__(self, segments: Sequence[Segment], names: Sequence[str]) -> None:
        assert len(segments) == len(names)
        self._segments = np.array(segments, dtype=np.float64).reshape(-1, 4)
        self._names = tuple(names)

    def nearest(self, at: Vec2, reach: float, alike: float = 0.0) -> str:
        """The name of the nearest one within ``reach`` mm; empty when there is none.

        Of those that are farther than the nearest by no more than ``alike``, the first: a hand
        cannot tell them apart, so what comes first says most.
        """
        if not self._names:
            return ""
        distances = distances_to(self._segments, at)
        best = float(distances.min())
        if best > reach:
            return ""
        return self._names[int((distances <= min(reach, best + alike)).argmax())]


def texts_of(targets: Iterable[Target]) -> Lines:
    """The middle line of each dimension's text, from its first letter to its last."""
    rows, names = [], []
    for target in targets:
        a, b, c, d = target.text_corners
        rows.append(((a[0] + d[0]) / 2, (a[1] + d[1]) / 2, (b[0] + c[0]) / 2, (b[1] + c[1]) / 2))
        names.append(target.name)
    return Lines(rows, names)


def lines_of(targets: Iterable[Target]) -> Lines:
    """The dimension lines themselves."""
    found = tuple(targets)
    return Lines([target.line for target in found], [target.name for target in found])


def distances_to(segments: Floats, at: Vec2) -> Floats:
    """Distance in mm from a point to each of n segments (n, 4)."""
    start, along = segments[:, :2], segments[:, 2:] - segments[:, :2]
    offset = np.asarray(at) - start
    length = np.einsum("ij,ij->i", along, along)
    share = np.einsum("ij,ij->i", offset, along) / np.where(length > 0.0, length, 1.0)
    gap = offset - along * np.clip(share, 0.0, 1.0)[:, None]
    distance: Floats = np.hypot(gap[:, 0], gap[:, 1])
    return distance
