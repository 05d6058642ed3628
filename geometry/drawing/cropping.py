"""Lines cut off at a rectangle.  Method: the slabs of the rectangle, all lines at once."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

_TINY = 1e-9


def cropped(
    lines: NDArray[np.float64], box: tuple[float, float, float, float]
) -> NDArray[np.float64]:
    """The parts of ``lines`` (n, 4) inside ``box`` (left, bottom, right, top)."""
    if not len(lines):
        return lines
    start, run = lines[:, :2], lines[:, 2:] - lines[:, :2]
    low, high = np.array(box[:2]) - start, np.array(box[2:]) - start
    still = np.abs(run) < _TINY
    step = np.where(still, 1.0, run)
    first, last = low / step, high / step
    enter = np.where(
        still, np.where((low <= 0.0) & (high >= 0.0), 0.0, 2.0), np.minimum(first, last)
    )
    leave = np.where(
        still, np.where((low <= 0.0) & (high >= 0.0), 1.0, -1.0), np.maximum(first, last)
    )
    t0 = np.clip(enter.max(axis=1), 0.0, None)
    t1 = np.clip(leave.min(axis=1), None, 1.0)
    keep = t1 - t0 > _TINY
    cut = np.hstack([start + t0[:, None] * run, start + t1[:, None] * run])
    kept: NDArray[np.float64] = cut[keep]
    return kept
