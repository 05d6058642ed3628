"""The room that a line of text takes on a sheet, and what touches it.

A text box is a rectangle about its middle, turned with the text; all in sheet mm.  It holds
brackets below the baseline and superscript figures above the capitals.

Method: the separating axis test of a segment against a rectangle, in the rectangle's own axes.
One plain function for a few lines, one numpy class for a whole drawing; of that only the lines
near the boxes are tried.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.primitives.frame import Vec2
from shared.lettering import ASCENT_RATIO, DESCENT_RATIO

Line = tuple[float, float, float, float]

DESCENT = DESCENT_RATIO  # of the capital height: the foot of a bracket
RISE = ASCENT_RATIO  # of the capital height: the head of a bracket or a superscript
HALF_BOX = (RISE + DESCENT) / 2.0
_ON_IT = 0.4  # mm from a line, within which another lies on it
_TOUCH = 1.0  # mm: less of two lines on one another is a touch of their ends
_SPECK = 0.6  # mm: a shorter piece of a line beside a text looks like dirt
_LARGE = 4.0  # mm: half the height of a box that could hold a text
_SPARE = 256  # lines that are made room for at once
_HAIR = 1e-6  # mm: so much farther are lines looked for, as sums are rounded
NO_LINES = np.zeros((0, 4))
MIDDLE = (RISE - DESCENT) / 2.0  # of the capital height: middle of the box above the baseline


@dataclass(frozen=True, slots=True)
class TextBox:
    """Middle, half sizes along and across the text, and the cosine and sine of its turn."""

    x: float
    y: float
    half_width: float
    half_height: float
    cos: float = 1.0
    sin: float = 0.0

    @staticmethod
    def about(middle: Vec2, width: float, cap_height: float, turn_deg: float = 0.0) -> TextBox:
        """The box of a text ``width`` wide whose box is centred on ``middle``."""
        turn = math.radians(turn_deg)
        cos, sin = (0.0, 1.0) if turn_deg == 90.0 else (math.cos(turn), math.sin(turn))
        return TextBox(*middle, width / 2.0, HALF_BOX * cap_height, cos, sin)

    def corners(self) -> tuple[Vec2, Vec2, Vec2, Vec2]:
        """Counter-clockwise from the lower left as the text is read."""
        ux, uy = self.cos * self.half_width, self.sin * self.half_width
        vx, vy = -self.sin * self.half_height, self.cos * self.half_height
        x, y = self.x, self.y
        return (
            (x - ux - vx, y - uy - vy),
            (x + ux - vx, y + uy - vy),
            (x + ux + vx, y + uy + vy),
            (x - ux + vx, y - uy + vy),
        )

    def outline(self) -> tuple[Line, ...]:
        """Four sides and a diagonal: whatever meets the box meets one of them."""
        a, b, c, d = self.corners()
        return ((*a, *b), (*b, *c), (*c, *d), (*d, *a), (*a, *c))

    def baseline_middle(self, cap_height: float) -> Vec2:
        """Where a label with anchor MIDDLE is put to fill this box."""
        drop = MIDDLE * cap_height
        return (self.x + self.sin * drop, self.y - self.cos * drop)

    def reach(self) -> Vec2:
        """Half the width and half the height of the upright rectangle around the box."""
        return (
            abs(self.cos) * self.half_width + abs(self.sin) * self.half_height,
            abs(self.sin) * self.half_width + abs(self.cos) * self.half_height,
        )

    def holds(self, point: Vec2, margin: float = 0.0) -> bool:
        """Whether a point lies in the box widened by ``margin``."""
        dx, dy = point[0] - self.x, point[1] - self.y
        return (
            abs(dx * self.cos + dy * self.sin) <= self.half_width + margin
            and abs(dy * self.cos - dx * self.sin) <= self.half_height + margin
        )

    def stretch_of(self, line: Line, margin: float = 0.0) -> tuple[float, float] | None:
        """The part of a line, from t0 to t1 of its length, inside the box widened by ``margin``."""
        dx0, dy0 = line[0] - self.x, line[1] - self.y
        ex, ey = line[2] - line[0], line[3] - line[1]
        t0, t1 = 0.0, 1.0
        for start, step, half in (
            (dx0 * self.cos + dy0 * self.sin, ex * self.cos + ey * self.sin, self.half_width),
            (dy0 * self.cos - dx0 * self.sin, ey * self.cos - ex * self.sin, self.half_height),
        ):
            low, high = -half - margin - start, half + margin - start
            if abs(step) < 1e-12:
                if low > 0.0 or high < 0.0:
                    return None
                continue
            if step < 0.0:
                low, high = high, low
            t0, t1 = max(t0, low / step), min(t1, high / step)
            if t0 >= t1:
                return None
        return (t0, t1)


def broken_around(line: Line, boxes: Sequence[TextBox], margin: float) -> list[Line]:
    """What is left of a line when it is interrupted where it would run through text."""
    pieces = [line]
    left, right = (line[0], line[2]) if line[0] < line[2] else (line[2], line[0])
    low, high = (line[1], line[3]) if line[1] < line[3] else (line[3], line[1])
    for box in boxes:
        reach = box.half_width + box.half_height + margin
        if left > box.x + reach or right < box.x - reach:
            continue
        if low > box.y + reach or high < box.y - reach:
            continue
        kept: list[Line] = []
        for piece in pieces:
            hidden = box.stretch_of(piece, margin)
            kept.extend([piece] if hidden is None else _outside(piece, hidden))
        pieces = kept
    return pieces


def _outside(line: Line, hidden: tuple[float, float]) -> list[Line]:
    x0, y0, x1, y1 = line
    ex, ey = x1 - x0, y1 - y0
    length = math.hypot(ex, ey)
    t0, t1 = hidden
    pieces: list[Line] = []
    if t0 * length > _SPECK:
        pieces.append((x0, y0, x0 + t0 * ex, y0 + t0 * ey))
    if (1.0 - t1) * length > _SPECK:
        pieces.append((x0 + t1 * ex, y0 + t1 * ey, x1, y1))
    return pieces


class Ground:
    """What text must keep clear of: lines as arrays, and the boxes of the texts already there."""

    def __init__(self, lines: NDArray[np.float64], ahead: NDArray[np.float64] = NO_LINES) -> None:
        """``lines`` (n, 4) in sheet mm; ``ahead`` are those that are yet to come."""
        self._ahead, self._count = len(ahead), len(ahead) + len(lines)
        self._measured = np.empty((8, self._count + _SPARE))
        self._measured[:, : self._ahead] = _measured(ahead)
        self._measured[:, self._ahead : self._count] = _measured(lines)
        self._fresh: list[Line] = []
        self._large: list[TextBox] = []
        self.boxes: list[TextBox] = []

    def add(self, lines: Sequence[Line], boxes: Sequence[TextBox]) -> None:
        """Put marks on the sheet; later texts keep clear of them."""
        self._fresh.extend(lines)
        self.boxes.extend(boxes)
        for box in boxes:
            self._fresh.extend(box.outline())
            if box.half_height > _LARGE:
                self._large.append(box)

    def clear(self, boxes: Sequence[TextBox], margin: float) -> NDArray[np.bool_]:
        """For each box, whether no line and no text comes within ``margin`` of it."""
        return self.clear_now_and_later(boxes, margin)[0]

    def clear_now_and_later(
        self, boxes: Sequence[TextBox], margin: float
    ) -> tuple[NDArray[np.bool_], NDArray[np.bool_]]:
        """The same, and whether none of the lines will that are yet to come."""
        free = later = np.ones(len(boxes), dtype=bool)
        if not boxes:
            return free, later
        near = self._near(boxes, margin)
        if len(near):
            hit = self._hits(near, boxes, margin)
            ahead = np.searchsorted(near, self._ahead)
            free = np.asarray(~hit[:, ahead:].any(axis=1))
            later = np.asarray(~hit[:, :ahead].any(axis=1))
        for large in self._large:  # a text may lie wholly inside, and meet none of its lines
            free = free & np.array([not large.holds((b.x, b.y), margin) for b in boxes])
        return free, later

    def _hits(
        self, near: NDArray[np.intp], boxes: Sequence[TextBox], margin: float
    ) -> NDArray[np.bool_]:
        """Which boxes which of some lines meet, (boxes, lines)."""
        x, y, half_w, half_h, cos, sin = np.array(
            [(b.x, b.y, b.half_width, b.half_height, b.cos, b.sin) for b in boxes]
        ).T[:, :, None]
        half_w, half_h = half_w + margin, half_h + margin
        mx, my, hx, hy = self._measured[:4].take(near, axis=1)
        mx, my = mx - x, my - y
        along, across = mx * cos + my * sin, my * cos - mx * sin
        step_along, step_across = hx * cos + hy * sin, hy * cos - hx * sin
        reach_along, reach_across = np.abs(step_along), np.abs(step_across)
        found: NDArray[np.bool_] = (
            (np.abs(along) <= half_w + reach_along)
            & (np.abs(across) <= half_h + reach_across)
            & (
                np.abs(along * step_across - across * step_along)
                <= half_w * reach_across + half_h * reach_along
            )
        )
        return found

    def _near(self, boxes: Sequence[TextBox], margin: float) -> NDArray[np.intp]:
        """The lines in an upright rectangle around some boxes, those yet to come first."""
        self._settle()
        reach = max([box.half_width + box.half_height for box in boxes]) + margin + _HAIR
        xs, ys = [box.x for box in boxes], [box.y for box in boxes]
        left, right = min(xs) - reach, max(xs) + reach
        bottom, top = min(ys) - reach, max(ys) + reach
        low_x, low_y, high_x, high_y = self._measured[4:, : self._count]
        return np.flatnonzero(
            (high_x >= left) & (low_x <= right) & (high_y >= bottom) & (low_y <= top)
        )

    def runs_along(self, line: Line) -> bool:
        """Whether a line lies on one already there for more than a touch, so that the two would be
        taken for one."""
        self._settle()
        x0, y0, x1, y1 = line
        length = math.hypot(x1 - x0, y1 - y0)
        there = self._measured[:4, self._ahead : self._count]
        mx, my, _, _ = there
        if length < _TOUCH or not len(mx):
            return False
        cos, sin = (x1 - x0) / length, (y1 - y0) / length
        across = my * cos - mx * sin
        across -= (y0 + y1) / 2.0 * cos - (x0 + x1) / 2.0 * sin
        near = np.flatnonzero(np.abs(across) < _ON_IT)  # of a thousand lines a few
        mx, my, hx, hy = there.take(near, axis=1)
        mx, my = mx - (x0 + x1) / 2.0, my - (y0 + y1) / 2.0
        off = np.abs(across[near]) + np.abs(hy * cos - hx * sin)
        reach = length / 2.0 + np.abs(hx * cos + hy * sin) - np.abs(mx * cos + my * sin)
        return bool(((off < _ON_IT) & (reach > _TOUCH) & (np.hypot(hx, hy) > _TOUCH / 2.0)).any())

    def crosses_text(self, lines: Sequence[Line], margin: float) -> bool:
        """Whether one of the lines would run through a text already there."""
        return any(box.stretch_of(line, margin) is not None for box in self.boxes for line in lines)

    def _settle(self) -> None:
        if not self._fresh:
            return
        start, self._count = self._count, self._count + len(self._fresh)
        if self._count > self._measured.shape[1]:
            spare = np.empty((8, self._count + _SPARE))
            self._measured = np.concatenate([self._measured[:, :start], spare], axis=1)
        self._measured[:, start : self._count] = _measured(np.array(self._fresh, dtype=np.float64))
        self._fresh = []


def _measured(lines: NDArray[np.float64]) -> NDArray[np.float64]:
    """Of lines (n, 4) the middles, half of the way from end to end, and the rectangles around
    them: (8, n), x before y."""
    start, end = lines[:, :2].T, lines[:, 2:].T
    return np.concatenate(
        [(start + end) / 2.0, (end - start) / 2.0, np.minimum(start, end), np.maximum(start, end)]
    )
