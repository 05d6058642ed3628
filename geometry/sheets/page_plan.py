"""Finds the largest scale at which a part's views, details and tables share a page.

Frame: sheet mm.

Method: at each standard scale, largest first, all is put down on a page (``page_packing``).  When
one page would cost more than half of the scale, or leave the views small in their room, or cut them
up into more details, what has no room goes on to another page.  Where a page then has room for
wider circles, its details are drawn larger.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Protocol

from geometry.dimensioning.dimension import Dimension
from geometry.sheets.details import DIAMETERS, WIDE, Detail, details, too_small
from geometry.sheets.layout import Layout
from geometry.sheets.page_packing import (
    Content,
    PagePlan,
    fullest,
    over_its_room,
    over_the_room,
)
from geometry.sheets.text_block import TextBlock
from geometry.sheets.view_grid import Block, bare_size, block, grid_size
from geometry.views.linework import Linework
from shared.paper import SCALES, TITLE_BLOCK_WIDTH, largest_scale

_COLUMN, _WIDE_COLUMN = 84.0, 112.0  # mm, a table at the right
_LARGEST_SCALE = 1.0
_WORTH = 0.45  # a second page is better than less than this part of the scale
_MORE_DETAILS = 1  # and than so many details more
_POOR = 0.3  # and than less than this part of the scale that the bare views have room for
_TIGHT = 12.0  # mm: less left than a row of numbers takes, and then some
_NARROWEST = 30.0  # mm, a table


@dataclass(frozen=True, slots=True, eq=False)
class DrawnPart:
    """The views of a part and their dimensions; ``noted`` puts on the views, at some scale, all
    else that stands there, among the rings of details, told across and up whether the page is
    full."""

    lineworks: Sequence[Linework]
    dimensions: Sequence[Dimension]
    noted: Callable[[Sequence[Block], Sequence[Detail], tuple[bool, bool]], tuple[Block, ...]]


ALL_ROWS = slice(None)


class TableMaker(Protocol):
    """Makes a table, or some of its rows, for a width; an empty block where it has none.  It is
    as long as it has rows."""

    def __len__(self) -> int: ...

    def __call__(self, width: float, some: slice = ALL_ROWS) -> TextBlock: ...


@dataclass(frozen=True, slots=True, eq=False)
class _Tried:
    """A page and what it leaves over."""

    plan: PagePlan
    rest: Content


def planned(
    drawn: DrawnPart,
    make_table: TableMaker,
    head_height: float,
    layout: Layout,
) -> tuple[PagePlan, ...]:
    """The pages of a part, the views on the first.

    ``head_height`` is what each page's head takes; a table too long for one page goes on several.
    Views too large even for the smallest scale stand at that scale, over their room.
    """
    left, _, right, _ = layout.room
    widths = (right - left - TITLE_BLOCK_WIDTH, _COLUMN, _WIDE_COLUMN, right - left)
    tables = tuple(make_table(width) for width in widths if width > _NARROWEST)
    tables = tuple(table for table in tables if table.height)
    first: _Tried | None = None
    poor = _POOR * roomiest_scale(drawn.lineworks, layout)

    def tried(scale: float, diameter: float, worth: Callable[[_Tried], bool]) -> _Tried | None:
        """None unless it is worth while, first the bare views and then with all that they need."""
        content = _content(drawn, (scale, diameter), tables, layout)
        bare = _Tried(*fullest(content, head_height, layout))
        if not bare.plan.blocks or not worth(bare):
            return None
        found = _Tried(*fullest(_noted(content, drawn, head_height, layout), head_height, layout))
        return found if found.plan.blocks and worth(found) else None

    for scale in _scales(drawn.lineworks, layout):
        if first is not None and (scale < _WORTH * first.plan.scale or scale < poor):
            break
        for diameter in DIAMETERS:
            found = tried(scale, diameter, partial(_is_better, first))
            if found is not None and _is_whole(found, first):
                return (_widened(found, tried).plan,)
            first = found or first
    if first is not None:
        first = _widened(first, tried)
        plan, rest = first.plan, first.rest
    else:
        content = _content(drawn, (scale, diameter), tables, layout)
        content = _noted(content, drawn, head_height, layout)
        plan, rest = over_the_room(content, head_height, layout)
    pages = [plan]
    while rest.amount:
        plan, left_over = fullest(rest, head_height, layout)
        if left_over.amount < rest.amount:
            pages.append(replace(plan, rings=pages[0].rings))
            rest = left_over
        elif rest.tables:
            pages += _in_pieces(make_table, rest, widths, head_height, layout)
            rest = replace(rest, tables=())
        else:  # a detail too large for a page of its own
            break
    return tuple(pages)


def _in_pieces(
    make_table: TableMaker,
    rest: Content,
    widths: Sequence[float],
    head_height: float,
    layout: Layout,
) -> list[PagePlan]:
    """Pages with as many rows of a table each as they have room for; one at the least, over its
    room if need be."""
    pages: list[PagePlan] = []
    first = 0
    while first < len(make_table):
        page = None
        fit, too_many = 0, len(make_table) - first + 1
        while too_many - fit > 1:
            count = (fit + too_many) // 2
            some = slice(first, first + count)
            tables = tuple(make_table(width, some) for width in widths if width > _NARROWEST)
            piece = replace(rest, blocks=(), details=(), tables=tables)
            plan, left_over = fullest(piece, head_height, layout)
            if left_over.amount:
                too_many = count
            else:
                fit, page = count, plan
        if page is None:
            row = make_table(widths[-1], slice(first, first + 1))
            fit, page = 1, over_its_room(row, rest, head_height, layout)
        pages.append(page)
        first += fit
    return pages


def _widened(
    found: _Tried, tried: Callable[[float, float, Callable[[_Tried], bool]], _Tried | None]
) -> _Tried:
    """The same with wider circles, if their details come out larger and no more is left over."""
    if not found.plan.rings or all(one.scale >= 1.0 for one in found.plan.rings):
        return found

    def is_worth(wider: _Tried) -> bool:
        no_more = wider.rest.amount <= found.rest.amount
        no_more &= len(wider.plan.rings) <= len(found.plan.rings)
        return no_more and _sizes(wider.plan) > _sizes(found.plan)

    wider = (tried(found.plan.scale, diameter, is_worth) for diameter in WIDE)
    return next((one for one in wider if one is not None), found)


def _sizes(plan: PagePlan) -> float:
    """What the scales of all details are worth, of which more are no gain."""
    return sum(one.scale for one in plan.rings) / len(plan.rings)


def _is_better(first: _Tried | None, found: _Tried) -> bool:
    return first is None or _is_whole(found, first) or _holds_more(found, first)


def _is_whole(found: _Tried, first: _Tried | None) -> bool:
    """Whether a plan leaves nothing over, unless it buys its one page with details that a larger
    scale does not need."""
    most = math.inf if first is None else len(first.plan.rings) + _MORE_DETAILS
    return not found.rest.amount and len(found.plan.rings) <= most


def _holds_more(found: _Tried, first: _Tried) -> bool:
    """Whether smaller circles at the same scale leave less over for another page."""
    return found.plan.scale == first.plan.scale and found.rest.amount < first.rest.amount


def roomiest_scale(lineworks: Sequence[Linework], layout: Layout) -> float:
    """The largest standard scale at which bare views have room."""
    wide, high = bare_size(lineworks)
    left, bottom, right, top = layout.room
    most = min(_LARGEST_SCALE, (right - left) / max(wide, 1.0), (top - bottom) / max(high, 1.0))
    return largest_scale(most).factor


def _scales(lineworks: Sequence[Linework], layout: Layout) -> Iterator[float]:
    if layout.scale is not None:
        yield layout.scale
        return
    largest = roomiest_scale(lineworks, layout)
    yield from (step.factor for step in SCALES if step.factor <= largest)


def _noted(content: Content, drawn: DrawnPart, head_height: float, layout: Layout) -> Content:
    left, bottom, right, top = layout.room
    wide, high = grid_size(content.blocks, third_angle=layout.third_angle)
    tight = (right - left - wide < _TIGHT, top - head_height - bottom - high < _TIGHT)
    return replace(content, blocks=drawn.noted(content.blocks, content.details, tight))


def _content(
    drawn: DrawnPart, sizes: tuple[float, float], tables: tuple[TextBlock, ...], layout: Layout
) -> Content:
    scale, diameter = sizes
    lineworks, dimensions = drawn.lineworks, drawn.dimensions
    overall = max((d.rank for d in dimensions), default=0)
    small = [d for d in dimensions if d.rank < overall and too_small(d, scale)]
    names = {d.name for d in small}
    clear = [d for d in dimensions if d.name not in names]
    style = replace(layout.style, brackets=False)
    blocks = tuple(block(linework, clear, scale, style) for linework in lineworks)
    thickness = min(min(u1 - u0, v1 - v0) for u0, v0, u1, v1 in (one.bounds() for one in lineworks))
    found = details(lineworks, small, scale, thickness, (diameter, style))
    return Content(scale, blocks, tables, found)
