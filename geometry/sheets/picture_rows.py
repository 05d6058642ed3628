"""Pictures in rows down a page, in their order, each row as high as its highest.

Frame: sheet mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Room
from geometry.sheets.pictures import Drawn

AIR = 6.0  # mm between pictures
_HAIR = 1e-6
_MOST_GAP = 22.0  # mm to which a gap is widened


@dataclass(frozen=True, slots=True)
class Free:
    """Room for pictures; below ``step`` it begins only at ``inner``, right of a table."""

    room: Room
    step: float
    inner: float

    def span(self, low: float) -> tuple[float, float]:
        """From where to where a row may run that reaches down to ``low``."""
        left, _, right, _ = self.room
        return (self.inner if low < self.step else left, right)


def in_rows(drawn: Sequence[Drawn], free: Free) -> list[Vec2] | None:
    """Where the origin of each picture stands, in rows from the top; None if they do not fit."""
    _, bottom, _, top = free.room
    rows = _rows(drawn, free)
    if rows is None:
        return None
    heights = [max(drawn[index].height for index in row) for row in rows]
    spare = top - bottom - sum(heights) - AIR * (len(rows) - 1)
    if spare < -_HAIR:
        return None
    between = AIR + min(max(spare, 0.0) / (len(rows) + 1), _MOST_GAP)
    y = top - (top - bottom - sum(heights) - between * (len(rows) - 1)) / 2.0
    origins: dict[int, Vec2] = {}
    for row, height in zip(rows, heights, strict=True):
        left, right = free.span(y - height)
        loose = right - left - sum(drawn[index].width for index in row)
        if loose < AIR * (len(row) - 1) - _HAIR:
            return None  # moved down to the middle, it meets the table
        gap = min(loose / (len(row) + 1), _MOST_GAP) if len(row) > 1 else 0.0
        gap = max(gap, AIR)
        x = left + (loose - gap * (len(row) - 1)) / 2.0
        for index in row:
            one = drawn[index]
            middle = y - height / 2.0
            origins[index] = (x - one.extent[0], middle - (one.extent[1] + one.extent[3]) / 2.0)
            x += one.width + gap
        y -= height + between
    return [origins[index] for index in range(len(drawn))]


def may_fit(sizes: Sequence[Vec2], free: Free) -> bool:
    """Whether pictures at least so wide and high could stand in any rows at all.

    The best of all ways to part them into rows, from the top down as close as may be: for each so
    many of them, how high the last row's foot can be.
    """
    _, bottom, _, top = free.room
    feet = [top]
    for last in range(len(sizes)):
        best = -math.inf
        wide, high = -AIR, 0.0
        for first in range(last, -1, -1):  # the row from this one to the last
            wide, high = wide + AIR + sizes[first][0], max(high, sizes[first][1])
            foot = feet[first] - (AIR if first else 0.0) - high + _HAIR
            left, right = free.span(foot)
            if wide <= right - left + _HAIR:
                best = max(best, foot)
        feet.append(best)
    return feet[-1] >= bottom - _HAIR


def _rows(drawn: Sequence[Drawn], free: Free) -> list[list[int]] | None:
    """Which pictures stand in a row, filled one after the other and then evened."""
    _, _, _, y = free.room
    rows: list[list[int]] = []
    left_over = list(range(len(drawn)))
    while left_over:
        row: list[int] = []
        for index in left_over:
            tried = [*row, index]
            height = max(drawn[k].height for k in tried)
            left, right = free.span(y - height)
            if sum(drawn[k].width for k in tried) + AIR * (len(tried) - 1) > right - left + _HAIR:
                break
            row = tried
        if not row:
            return None
        rows.append(row)
        left_over = left_over[len(row) :]
        y -= max(drawn[k].height for k in row) + AIR
    return _evened(rows, [one.width for one in drawn], free.room[2] - free.inner)


def _evened(rows: list[list[int]], widths: Sequence[float], room: float) -> list[list[int]]:
    """Rows with pictures passed on from a full one to the next while that evens them."""
    rows = [list(row) for row in rows]
    for _ in range(len(widths)):
        for upper, lower in pairwise(rows):
            last = widths[upper[-1]]
            full = sum(widths[i] for i in upper) + AIR * len(upper)
            other = sum(widths[i] for i in lower) + AIR * len(lower)
            if len(upper) > 1 and other + last < full and other + last <= room:
                lower.insert(0, upper.pop())
    return rows
