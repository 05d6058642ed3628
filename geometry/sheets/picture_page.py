"""A page of pictures, large ones first made to fit, with a head and a table.

Frame: sheet mm; a picture is drawn about its own origin and then stood on the page.

Method: every picture is given the same room on paper and takes the largest scale at which its
object fits that; then the pictures are set in rows, in their order, each row as high as its
highest.  If they do not all fit, the room is made a little smaller and they are drawn again.  What
is left over is shared out between rows and between the pictures of a row.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.drawing.marks import Mark
from geometry.drawing.shifting import shifted
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout, Room
from geometry.sheets.text_block import TextBlock
from shared.paper import SCALES, TITLE_BLOCK_WIDTH

_AIR = 6.0  # mm between pictures
_ROOMS = (  # mm, width and height that an object may take
    *((95.0, 75.0), (82.0, 64.0), (72.0, 56.0), (64.0, 50.0), (57.0, 44.0), (50.0, 39.0)),
    *((44.0, 34.0), (38.0, 30.0), (33.0, 26.0), (28.0, 22.0), (23.0, 18.0), (18.0, 14.0)),
)
_LARGEST = 2.0  # a joint is seldom drawn larger than twice
_FOOT = 3.0  # mm between the border and a table beside the title block
_COLUMN = 80.0
_LEAST = 60.0  # mm: a narrower table is no use
_HAIR = 1e-6
_MOST_GAP = 22.0  # mm to which a gap is widened


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
    """A picture at a scale: its marks about its own origin and what they take."""

    marks: tuple[Mark, ...]
    extent: Room

    @property
    def width(self) -> float:
        return self.extent[2] - self.extent[0]

    @property
    def height(self) -> float:
        return self.extent[3] - self.extent[1]


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """The object's size in mm and how it is drawn at a scale.

    ``to_scale`` pictures take a standard scale; others, that nobody measures, any.
    """

    size: Vec2
    draw: Callable[[float], Drawn]
    to_scale: bool = True

    def scale_in(self, room: Vec2) -> float:
        """The largest scale at which the object takes no more than ``room`` on paper."""
        most = min(room[0] / max(self.size[0], 1e-6), room[1] / max(self.size[1], 1e-6), _LARGEST)
        if not self.to_scale:
            return most
        fitting = [step.factor for step in SCALES if step.factor <= most + 1e-9]
        return fitting[0] if fitting else SCALES[-1].factor


@dataclass(frozen=True, slots=True, eq=False)
class Composed:
    """The marks of a page, and the room that each picture's object had."""

    marks: tuple[Mark, ...]
    room: Vec2


def composed(
    pictures: Sequence[Picture],
    make_table: Callable[[float], TextBlock],
    head: tuple[float, Callable[[Vec2], Sequence[Mark]]],
    layout: Layout,
) -> Composed | None:
    """The page, or None when its pictures and table do not fit even at the smallest.

    ``make_table`` gives the table for a width; ``head`` is its height and its marks by the upper
    left corner.
    """
    head_height, head_marks = head
    left, _, _, top = layout.room
    places = _table_places(make_table, top - head_height, layout)
    kept: dict[tuple[int, float], Drawn] = {}
    for room in _ROOMS:
        drawn: list[Drawn] = []
        for index, picture in enumerate(pictures):
            scale = picture.scale_in(room)
            if (index, scale) not in kept:
                kept[index, scale] = picture.draw(scale)
            drawn.append(kept[index, scale])
        for table, corner, free in places:
            stood = _in_rows(drawn, free)
            if stood is not None:
                marks = [*head_marks((left, top)), *table.marks(corner)]
                for one, (x, y) in zip(drawn, stood, strict=True):
                    marks += [shifted(mark, (x, y)) for mark in one.marks]
                return Composed(tuple(marks), room)
    return None


@dataclass(frozen=True, slots=True)
class _Free:
    """Room for pictures; below ``step`` it begins only at ``inner``, right of a table."""

    room: Room
    step: float
    inner: float

    def span(self, low: float) -> tuple[float, float]:
        """From where to where a row may run that reaches down to ``low``."""
        left, _, right, _ = self.room
        return (self.inner if low < self.step else left, right)


def _table_places(
    make_table: Callable[[float], TextBlock], top: float, layout: Layout
) -> list[tuple[TextBlock, Vec2, _Free]]:
    """Where the table may stand, with the room that it leaves: at the lower left, beside the title
    block and up from there, or at the foot, as wide as the page."""
    left, bottom, right, _ = layout.room
    found: list[tuple[TextBlock, Vec2, _Free]] = []
    beside = right - left - TITLE_BLOCK_WIDTH
    foot = layout.border[1] + _FOOT if layout.title is not None and beside > _LEAST else bottom
    width = beside if foot < bottom else _COLUMN
    table = make_table(width)
    if table.height <= top - foot:
        step = foot + table.height + _AIR
        free = _Free((left, bottom, right, top), step, left + table.width + _AIR)
        found.append((table, (left, foot + table.height), free))
    wide = make_table(right - left)
    if wide.height < 0.6 * (top - bottom):
        free = _Free((left, bottom + wide.height + _AIR, right, top), bottom, left)
        found.append((wide, (left, bottom + wide.height), free))
    return found


def _in_rows(drawn: Sequence[Drawn], free: _Free) -> list[Vec2] | None:
    """Where the origin of each picture stands, in rows from the top; None if they do not fit."""
    _, bottom, _, top = free.room
    rows = _rows(drawn, free)
    if rows is None:
        return None
    heights = [max(drawn[index].height for index in row) for row in rows]
    spare = top - bottom - sum(heights) - _AIR * (len(rows) - 1)
    if spare < -_HAIR:
        return None
    between = _AIR + min(max(spare, 0.0) / (len(rows) + 1), _MOST_GAP)
    y = top - (top - bottom - sum(heights) - between * (len(rows) - 1)) / 2.0
    origins: dict[int, Vec2] = {}
    for row, height in zip(rows, heights, strict=True):
        left, right = free.span(y - height)
        loose = right - left - sum(drawn[index].width for index in row)
        if loose < _AIR * (len(row) - 1) - _HAIR:
            return None  # moved down to the middle, it meets the table
        gap = min(loose / (len(row) + 1), _MOST_GAP) if len(row) > 1 else 0.0
        gap = max(gap, _AIR)
        x = left + (loose - gap * (len(row) - 1)) / 2.0
        for index in row:
            one = drawn[index]
            middle = y - height / 2.0
            origins[index] = (x - one.extent[0], middle - (one.extent[1] + one.extent[3]) / 2.0)
            x += one.width + gap
        y -= height + between
    return [origins[index] for index in range(len(drawn))]


def _rows(drawn: Sequence[Drawn], free: _Free) -> list[list[int]] | None:
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
            if sum(drawn[k].width for k in tried) + _AIR * (len(tried) - 1) > right - left + _HAIR:
                break
            row = tried
        if not row:
            return None
        rows.append(row)
        left_over = left_over[len(row) :]
        y -= max(drawn[k].height for k in row) + _AIR
    return _evened(rows, [one.width for one in drawn], free.room[2] - free.inner)


def _evened(rows: list[list[int]], widths: Sequence[float], room: float) -> list[list[int]]:
    """Rows with pictures passed on from a full one to the next while that evens them."""
    rows = [list(row) for row in rows]
    for _ in range(len(widths)):
        for upper, lower in pairwise(rows):
            last = widths[upper[-1]]
            full = sum(widths[i] for i in upper) + _AIR * len(upper)
            other = sum(widths[i] for i in lower) + _AIR * len(lower)
            if len(upper) > 1 and other + last < full and other + last <= room:
                lower.insert(0, upper.pop())
    return rows
