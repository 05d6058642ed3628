"""Where lines are drawn on a sheet, as a raster: what is free of them, and how many a line crosses.

Frame: sheet mm.

Method: a cell is inked where a point of a line falls in it, points being half a cell apart, and
the inked cells are summed up from the lower left, so that four of the sums tell how many lie in a
rectangle.  A line that only grazes a corner of a rectangle by less than a cell may go unnoticed;
whoever asks keeps more air than that.
"""

from __future__ import annotations

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices

CELL = 0.4  # mm
_STEP = CELL / 2.0

Room = tuple[float, float, float, float]


class Ink:
    """The lines (n, 4) that lie in a room."""

    def __init__(self, lines: Floats, room: Room) -> None:
        self._low = np.array(room[:2])
        size = np.maximum(np.ceil((np.array(room[2:]) - self._low) / CELL), 1.0).astype(np.intp)
        self._inked = np.zeros(size, dtype=np.bool_)
        cells = self._cells(_points_along(lines))
        x, y = cells[((cells >= 0) & (cells < size)).all(axis=1)].T
        self._inked[x, y] = True
        self._sums = np.zeros(size + 1, dtype=np.intp)
        self._sums[1:, 1:] = self._inked.cumsum(axis=0).cumsum(axis=1)

    def _cells(self, points: Floats) -> Indices:
        return np.asarray(np.floor((points - self._low) / CELL).astype(np.intp))

    def clear(self, middles: Floats, half: Floats) -> Flags:
        """Which of n rectangles of one size no line comes into; (n,)."""
        most = np.array(self._inked.shape)
        (x0, y0) = np.clip(self._cells(middles - half), 0, most).T
        (x1, y1) = np.clip(self._cells(middles + half) + 1, 0, most).T
        sums = self._sums
        return np.asarray(sums[x1, y1] - sums[x0, y1] - sums[x1, y0] + sums[x0, y0] == 0)

    def crossed(self, lines: Floats) -> Indices:
        """How many times each of n lines comes upon lines that are drawn; (n,)."""
        if not len(lines):
            return np.zeros(0, dtype=np.intp)
        runs = lines[:, 2:] - lines[:, :2]
        count = int(np.hypot(*runs.T).max() / CELL) + 2
        shares = np.linspace(0.0, 1.0, count)
        x, y = (self._cells_along(lines[:, k, None], shares * runs[:, k, None], k) for k in (0, 1))
        inked = self._inked[x, y]
        return np.asarray((inked[:, 1:] & ~inked[:, :-1]).sum(axis=1))

    def _cells_along(self, starts: Floats, runs: Floats, axis: int) -> Indices:
        """The cells along one axis of points so far on, those outside counted to the rim."""
        cells = np.floor((starts + runs - self._low[axis]) / CELL)
        most = self._inked.shape[axis] - 1
        return np.asarray(np.minimum(np.maximum(cells, 0.0), most).astype(np.intp))


def _points_along(lines: Floats) -> Floats:
    """Points on lines, no farther apart than half a cell; (m, 2)."""
    runs = lines[:, 2:] - lines[:, :2]
    counts = np.ceil(np.hypot(*runs.T) / _STEP).astype(np.intp) + 1
    line = np.repeat(np.arange(len(lines)), counts)
    step = np.arange(len(line)) - np.repeat(np.cumsum(counts) - counts, counts)
    share = step / np.maximum(counts - 1, 1)[line]
    return np.asarray(lines[line, :2] + runs[line] * share[:, None])
