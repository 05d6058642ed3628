"""A page of pictures, large ones first made to fit, with a head and a table.

Frame: sheet mm; a picture is drawn about its own origin and then stood on the page.

Method: every picture is given the same room on paper and takes the largest scale at which its
object fits that; then the pictures are set in rows, in their order, each row as high as its
highest.  If they do not all fit, the room is made a little smaller and they are drawn again.  Then
single pictures are made larger while there is room, the smallest first.  What is left over is
shared out between rows and between the pictures of a row.
"""

from __future__ import annotations

import math
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
_SMALL = 42.0  # mm
_BESIDE = 0.8  # of the room, for what is not to scale
_FOOT = 3.0  # mm between the border and a table beside the title block
_COLUMN = 80.0
_LEAST = 60.0  # mm: a narrower table is no use
_HAIR = 1e-6
_TOO_SMALL = 24.0  # mm of paper: a picture less wide and high is hard to read
_GROWTH = 1.15  # of a picture that needs no standard scale, at a time
_UNMEASURED = 0.25  # of what a size counts, for a picture that nobody measures
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

    @property
    def largest(self) -> float:
        """True size, or double for what is small."""
        return 1.0 if max(self.size) > _SMALL else 2.0

    def scale_in(self, room: Vec2) -> float:
        """The largest scale at which the object takes no more than ``room`` on paper."""
        wide, high = (max(size, 1e-6) for size in self.size)
        most = min(room[0] / wide, room[1] / high, self.largest)
        if not self.to_scale:
            return _BESIDE * most
        fitting = [step.factor for step in SCALES if step.factor <= most + 1e-9]
        return fitting[0] if fitting else SCALES[-1].factor


@dataclass(frozen=True, slots=True, eq=False)
class Composed:
    """The marks of a page, and how large its pictures are, to be compared with another try."""

    marks: tuple[Mark, ...]
    filled: float


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
    easel = _Easel(pictures)
    for room in _ROOMS:
        scales = [picture.scale_in(room) for picture in pictures]
        fitting = [place for place in places if _in_rows(easel.drawn(scales), place[2])]
        if fitting:
            grown = [(_enlarged(easel, scales, place[2]), place) for place in fitting]
            scales, (table, corner, free) = max(grown, key=lambda one: easel.filled(one[0]))
            drawn = easel.drawn(scales)
            stood = _in_rows(drawn, free)
            assert stood is not None
            marks = [*head_marks((left, top)), *table.marks(corner)]
            for one, (x, y) in zip(drawn, stood, strict=True):
                marks += [shifted(mark, (x, y)) for mark in one.marks]
            return Composed(tuple(marks), easel.filled(scales))
    return None


class _Easel:
    """Pictures drawn at scales, each kept for when it is asked for again."""

    def __init__(self, pictures: Sequence[Picture]) -> None:
        self.pictures = pictures
        self._kept: dict[tuple[int, float], Drawn] = {}

    def drawn(self, scales: Sequence[float]) -> list[Drawn]:
        for index, scale in enumerate(scales):
            if (index, scale) not in self._kept:
                self._kept[index, scale] = self.pictures[index].draw(scale)
        return [self._kept[index, scale] for index, scale in enumerate(scales)]

    def larger(self, index: int, scale: float) -> float | None:
        """The next larger scale of a picture, None when it is large enough."""
        picture = self.pictures[index]
        wide, high = picture.size
        if picture.to_scale:
            scale = min((s.factor for s in SCALES if s.factor > scale + 1e-9), default=scale)
        else:
            scale *= _GROWTH
        if scale > picture.largest or wide * scale > _ROOMS[0][0] or high * scale > _ROOMS[0][1]:
            return None
        return scale

    def smaller(self, index: int, scale: float) -> float:
        """The next smaller scale of a picture."""
        if not self.pictures[index].to_scale:
            return scale / _GROWTH**2
        return max((s.factor for s in SCALES if s.factor < scale - 1e-9), default=scale)

    def drawn_size(self, index: int, scale: float) -> float:
        """The larger side of a picture's object on paper, mm."""
        return scale * max(self.pictures[index].size)

    def filled(self, scales: Sequence[float]) -> float:
        """How large the pictures came out: the sum of the logarithms of their sizes, so that one
        that is too small to read is not made up for by another; those that carry dimensions
        count most."""
        found = 0.0
        for picture, scale in zip(self.pictures, scales, strict=True):
            wide, high = picture.size
            size = math.log(scale * math.sqrt(max(wide * high, _HAIR)))
            found += size if picture.to_scale else _UNMEASURED * size
        return found


def _enlarged(easel: _Easel, scales: Sequence[float], free: _Free) -> list[float]:
    """The scales with each picture made larger, the smallest first, while all still fit.

    For one too small to read others, larger than it will be, may be made smaller.
    """
    best = list(scales)
    growing = set(range(len(best)))
    while growing:
        index = min(growing, key=lambda k: easel.drawn_size(k, best[k]))
        tried = _with_larger(easel, best, index, free)
        if tried is None:
            growing.remove(index)
        else:
            best = tried
    return best


def _with_larger(
    easel: _Easel, scales: Sequence[float], index: int, free: _Free
) -> list[float] | None:
    """The scales with one picture made larger, None where there is no room for it."""
    scale = easel.larger(index, scales[index])
    if scale is None:
        return None
    tried = [scale if k == index else one for k, one in enumerate(scales)]
    if _in_rows(easel.drawn(tried), free) is not None:
        return tried
    if easel.drawn_size(index, scales[index]) > _TOO_SMALL:
        return None
    size = easel.drawn_size(index, scale)
    for k in sorted(range(len(tried)), key=lambda k: -easel.drawn_size(k, tried[k])):
        less = easel.smaller(k, tried[k])
        if k != index and easel.drawn_size(k, less) > min(size, _TOO_SMALL):
            tried[k] = less
            if _in_rows(easel.drawn(tried), free) is not None:
                return tried
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
