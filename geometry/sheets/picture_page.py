"""A page of pictures, large ones first made to fit, with a head and a table.

Frame: sheet mm; a picture is drawn about its own origin and then stood on the page.

Method: every picture is given the same room on paper and takes the largest scale at which its
object fits that; then the pictures are set in rows, in their order, each row as high as its
highest.  If they do not all fit, the room is made a little smaller and they are drawn again.  Then
single pictures are made larger while there is room, the smallest first.  What is left over is
shared out between rows and between the pictures of a row.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from geometry.drawing.marks import Mark
from geometry.drawing.shifting import shifted
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout
from geometry.sheets.picture_rows import AIR, Free, in_rows, may_fit
from geometry.sheets.pictures import LARGEST_ROOM, Drawn, Easel
from geometry.sheets.text_block import TextBlock
from shared.paper import TITLE_BLOCK_WIDTH

_ROOMS = (  # mm, width and height that an object may take
    *(LARGEST_ROOM, (82.0, 64.0), (72.0, 56.0), (64.0, 50.0), (57.0, 44.0), (50.0, 39.0)),
    *((44.0, 34.0), (38.0, 30.0), (33.0, 26.0), (28.0, 22.0), (23.0, 18.0), (18.0, 14.0)),
)
_FOOT = 3.0  # mm between the border and a table beside the title block
_COLUMN = 80.0
_LEAST = 60.0  # mm: a narrower table is no use
_TOO_SMALL = 24.0  # mm of paper: a picture less wide and high is hard to read


@dataclass(frozen=True, slots=True, eq=False)
class Composed:
    """Pictures on a page, each with the point where its origin stands, and how large they are, to
    be compared with another try."""

    beside: tuple[Mark, ...]  # the head and the table
    stood: tuple[tuple[Drawn, Vec2], ...]
    filled: float

    def marks(self) -> tuple[Mark, ...]:
        """All marks of the page."""
        own = (shifted(mark, at) for one, at in self.stood for mark in one.marks())
        return (*self.beside, *own)


def composed(
    easel: Easel,
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
    for room in _ROOMS:
        scales = [picture.scale_in(room) for picture in easel.pictures]
        fitting = [place for place in places if _stood(easel, scales, place[2])]
        if fitting:
            grown = [(_enlarged(easel, scales, place[2]), place) for place in fitting]
            scales, (table, corner, free) = max(grown, key=lambda one: easel.filled(one[0]))
            stood = _stood(easel, scales, free)
            assert stood is not None
            beside = (*head_marks((left, top)), *table.marks(corner))
            drawn = easel.drawn(scales)
            return Composed(beside, tuple(zip(drawn, stood, strict=True)), easel.filled(scales))
    return None


def _stood(easel: Easel, scales: Sequence[float], free: Free) -> list[Vec2] | None:
    """Where the origin of each picture stands; None if they do not fit, which is often told before
    those that are slow to draw are drawn."""
    least = easel.least_sizes(scales)
    if least is not None and not may_fit(least, free):
        return None
    return in_rows(easel.drawn(scales), free)


def _enlarged(easel: Easel, scales: Sequence[float], free: Free) -> list[float]:
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
    easel: Easel, scales: Sequence[float], index: int, free: Free
) -> list[float] | None:
    """The scales with one picture made larger, None where there is no room for it."""
    scale = easel.larger(index, scales[index])
    if scale is None:
        return None
    tried = [scale if k == index else one for k, one in enumerate(scales)]
    if _stood(easel, tried, free) is not None:
        return tried
    if easel.drawn_size(index, scales[index]) > _TOO_SMALL:
        return None
    size = easel.drawn_size(index, scale)
    for k in sorted(range(len(tried)), key=lambda k: -easel.drawn_size(k, tried[k])):
        less = easel.smaller(k, tried[k])
        if k != index and easel.drawn_size(k, less) > min(size, _TOO_SMALL):
            tried[k] = less
            if _stood(easel, tried, free) is not None:
                return tried
    return None


def _table_places(
    make_table: Callable[[float], TextBlock], top: float, layout: Layout
) -> list[tuple[TextBlock, Vec2, Free]]:
    """Where the table may stand, with the room that it leaves: at the lower left, beside the title
    block and up from there, or at the foot, as wide as the page."""
    left, bottom, right, _ = layout.room
    found: list[tuple[TextBlock, Vec2, Free]] = []
    beside = right - left - TITLE_BLOCK_WIDTH
    foot = layout.border[1] + _FOOT if layout.title is not None and beside > _LEAST else bottom
    width = beside if foot < bottom else _COLUMN
    table = make_table(width)
    if table.height <= top - foot:
        step = foot + table.height + AIR
        free = Free((left, bottom, right, top), step, left + table.width + AIR)
        found.append((table, (left, foot + table.height), free))
    wide = make_table(right - left)
    if wide.height < 0.6 * (top - bottom):
        free = Free((left, bottom + wide.height + AIR, right, top), bottom, left)
        found.append((wide, (left, bottom + wide.height), free))
    return found
