"""Finds the largest scale at which a part's views, details and tables share a page.

Frame: sheet mm.

Method: at each standard scale, largest first, the views go to the upper left, the table of cuts
into the lowest room that holds it (beside the title block if it can), and the details into what
is left, from the upper right.  Then all but the table moves to the middle of the room it has.
When one page would cost more than half of the scale, or leave the views small in their room, or cut
them up into more details, what has no room goes on to another page.  Where a page then has room for
wider circles, its details are drawn larger.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import product
from typing import Protocol

from geometry.dimensioning.dimension import Dimension
from geometry.primitives.frame import Vec2
from geometry.sheets.details import DIAMETERS, WIDE, Detail, details, too_small
from geometry.sheets.free_space import FreeSpace, Rectangle
from geometry.sheets.layout import Layout
from geometry.sheets.text_block import NO_TEXT, TextBlock
from geometry.sheets.view_grid import Block, bare_size, block, grid_origins, grid_size
from geometry.views.linework import Linework
from shared.paper import SCALES, TITLE_BLOCK_WIDTH, largest_scale

_AIR = 7.0  # mm between views, details and tables
_COLUMN, _WIDE_COLUMN = 84.0, 112.0  # mm, a table at the right
_LARGEST_SCALE = 1.0
_WORTH = 0.45  # a second page is better than less than this part of the scale
_MORE_DETAILS = 1  # and than so many details more
_POOR = 0.3  # and than less than this part of the scale that the bare views have room for
_TIGHT = 12.0  # mm: less left than a row of numbers takes, and then some
_NARROWEST = 30.0  # mm, a table
_FOOT = 3.0  # mm between the border and a table beside the title block
DETAIL_CAPTION = 7.0  # mm below a detail for its caption
_DETAIL_WIDTH = 34.0  # mm, for the caption


# As they are lettered; or the highest, the widest, the largest first, where that leaves more room.
_ORDERS: tuple[Callable[[Detail], float], ...] = (
    lambda _: 0.0,
    lambda detail: -detail_size(detail)[1],
    lambda detail: -detail_size(detail)[0],
    lambda detail: -detail_size(detail)[0] * detail_size(detail)[1],
)


@dataclass(frozen=True, slots=True, eq=False)
class PagePlan:
    """What goes on one page and where, in sheet mm.

    ``origins`` are the sheet points of the views' (0, 0), none on a later page; ``detail_origins``
    those of the details' view at the detail's scale; ``table_corner`` is the table's upper left
    corner.  ``rings`` are all details of the part, wherever they are drawn.
    """

    scale: float
    blocks: tuple[Block, ...]
    origins: dict[str, Vec2]
    details: tuple[Detail, ...]
    detail_origins: tuple[Vec2, ...]
    table: TextBlock
    table_corner: Vec2
    rings: tuple[Detail, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
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
class _Content:
    """What is still to be put on pages: views, a table in several widths, details."""

    scale: float
    blocks: tuple[Block, ...]
    tables: tuple[TextBlock, ...]
    details: tuple[Detail, ...]

    @property
    def amount(self) -> int:
        return len(self.blocks) + bool(self.tables) + len(self.details)


@dataclass(frozen=True, slots=True, eq=False)
class _Tried:
    """A page and what it leaves over."""

    plan: PagePlan
    rest: _Content


def planned(
    drawn: Drawn,
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
        bare = _Tried(*_fullest(content, head_height, layout))
        if not bare.plan.blocks or not worth(bare):
            return None
        found = _Tried(*_fullest(_noted(content, drawn, head_height, layout), head_height, layout))
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
        plan, rest = _over(content, head_height, layout)
    pages = [plan]
    while rest.amount:
        plan, left_over = _fullest(rest, head_height, layout)
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
    rest: _Content,
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
            plan, left_over = _fullest(piece, head_height, layout)
            if left_over.amount:
                too_many = count
            else:
                fit, page = count, plan
        if page is None:
            fit, page = 1, _over_its_room(make_table, rest, first, head_height, layout)
        pages.append(page)
        first += fit
    return pages


def _over_its_room(
    make_table: TableMaker, rest: _Content, row: int, head_height: float, layout: Layout
) -> PagePlan:
    """A page for a single row that no page has room for: what is too long is better than lost."""
    left, _, right, top = layout.room
    table = make_table(right - left, slice(row, row + 1))
    stand = (left, top - head_height - table.height, right, top - head_height)
    bare = replace(rest, blocks=(), details=(), tables=())
    return _centred(bare, stand, [], (table, stand), layout)


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


def detail_size(detail: Detail) -> Vec2:
    """Width and height of a detail with its dimensions and its caption."""
    left, bottom, right, top = detail.placed.extent
    return (max(right - left, _DETAIL_WIDTH), top - bottom + DETAIL_CAPTION)


def _scales(lineworks: Sequence[Linework], layout: Layout) -> Iterator[float]:
    if layout.scale is not None:
        yield layout.scale
        return
    largest = roomiest_scale(lineworks, layout)
    yield from (step.factor for step in SCALES if step.factor <= largest)


def _noted(content: _Content, drawn: Drawn, head_height: float, layout: Layout) -> _Content:
    left, bottom, right, top = layout.room
    wide, high = grid_size(content.blocks, third_angle=layout.third_angle)
    tight = (right - left - wide < _TIGHT, top - head_height - bottom - high < _TIGHT)
    return replace(content, blocks=drawn.noted(content.blocks, content.details, tight))


def _content(
    drawn: Drawn, sizes: tuple[float, float], tables: tuple[TextBlock, ...], layout: Layout
) -> _Content:
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
    return _Content(scale, blocks, tables, found)


def _fullest(content: _Content, head_height: float, layout: Layout) -> tuple[PagePlan, _Content]:
    """The page that holds most, and what it leaves over."""
    views = bool(content.blocks)
    tries = []
    for table, order in product(content.tables or (None,), _ORDERS):
        tries.append(_packed(content, (table, order), head_height, layout))
        if views and not tries[-1][1].amount:
            break
    return min(tries, key=lambda found: (found[1].amount, not views and found[0].table.height))


def _packed(
    content: _Content,
    chosen: tuple[TextBlock | None, Callable[[Detail], float]],
    head_height: float,
    layout: Layout,
) -> tuple[PagePlan, _Content]:
    """As much as there is room for, and the rest; with one of the tables, and the details put down
    in an order."""
    table, order = chosen
    space = _free(head_height, layout)
    upper_left = space.corner_for((0.0, 0.0), lambda r: (-r[3], r[0]))
    assert upper_left is not None
    stand = (upper_left[0], upper_left[3], upper_left[0], upper_left[3])
    if content.blocks:
        wide, high = grid_size(content.blocks, third_angle=layout.third_angle)
        upper_left = space.corner_for((wide, high), lambda r: (-r[3], r[0]))
        if upper_left is None:
            none = _Content(content.scale, (), (), ())
            return _centred(none, stand, [], (None, None), layout), content
        left, top = upper_left[0], upper_left[3]
        stand = (left, top - high, left + wide, top)
        space = space.without(stand, _AIR)
    table_at = None if table is None else _table_place(table, space, layout)
    if table_at is not None:
        space = space.without(table_at, _AIR)
    corners: list[Vec2] = []
    kept: list[Detail] = []
    for detail in sorted(content.details, key=order):
        wide, high = detail_size(detail)
        found = space.corner_for((wide, high), lambda r: (-r[3], r[0]))
        if found is not None:
            kept.append(detail)
            corners.append((found[0], found[3]))
            space = space.without((found[0], found[3] - high, found[0] + wide, found[3]), _AIR)
    here = replace(content, details=tuple(kept))
    rest = _Content(
        content.scale,
        (),
        content.tables if table_at is None else (),
        tuple(d for d in content.details if d not in kept),
    )
    plan = _centred(here, stand, corners, (table, table_at), layout)
    return replace(plan, rings=content.details), rest


def _table_place(table: TextBlock, space: FreeSpace, layout: Layout) -> Rectangle | None:
    """The lowest room for the table; a column stands at the right and at the top of its room."""
    lowest = space.corner_for((table.width, table.height), lambda r: (r[1], r[0]))
    if lowest is None:
        return None
    x, y = lowest[0], lowest[1]
    if x + table.width > layout.room[2] - TITLE_BLOCK_WIDTH:
        x, y = lowest[2] - table.width, lowest[3] - table.height
    return (x, y, x + table.width, y + table.height)


def _free(head_height: float, layout: Layout) -> FreeSpace:
    """Above the title block, and left of it down to the border."""
    left, bottom, right, top = layout.room
    beside = (left, layout.border[1] + _FOOT, right - TITLE_BLOCK_WIDTH, top - head_height)
    above = (left, bottom, right, top - head_height)
    return FreeSpace((above, beside) if layout.title else (above,))


def _centred(
    content: _Content,
    stand: Rectangle,
    corners: Sequence[Vec2],
    tabled: tuple[TextBlock | None, Rectangle | None],
    layout: Layout,
) -> PagePlan:
    """The views and details moved to the middle of what the table leaves them."""
    table, table_at = tabled
    sizes = [detail_size(d) for d in content.details]
    right = max([stand[2], *(x + w for (x, _), (w, _) in zip(corners, sizes, strict=True))])
    low = min([stand[1], *(y - h for (_, y), (_, h) in zip(corners, sizes, strict=True))])
    most_right, least_low = layout.room[2], layout.room[1]
    if table_at is not None:
        if table_at[0] >= right:
            most_right = table_at[0] - _AIR
        elif table_at[3] <= low:
            least_low = max(least_low, table_at[3] + _AIR)
        else:
            most_right, least_low = right, low
    if low < layout.room[1] - 1e-6:  # something stands beside the title block
        most_right, least_low = right, low
    dx, dy = max(0.0, most_right - right) / 2.0, max(0.0, low - least_low) / 2.0
    corner = (stand[0] + dx, stand[1] - dy)
    origins = grid_origins(content.blocks, corner, third_angle=layout.third_angle)
    placed: list[Vec2] = []
    for detail, (x, y), (width, _) in zip(content.details, corners, sizes, strict=True):
        left, _, far, top = detail.placed.extent
        pad = (width - (far - left)) / 2.0
        placed.append((x + dx + pad - left, y - dy - top))
    if table is None or table_at is None:
        table, table_at = NO_TEXT, (0.0, 0.0, 0.0, 0.0)
    return PagePlan(
        content.scale,
        content.blocks,
        origins,
        content.details,
        tuple(placed),
        table,
        (table_at[0], table_at[3]),
        content.details,
    )


def _over(content: _Content, head_height: float, layout: Layout) -> tuple[PagePlan, _Content]:
    """The views at their corner, whatever the room; the rest on other pages."""
    left, _, _, top = layout.room
    wide, high = grid_size(content.blocks, third_angle=layout.third_angle)
    stand = (left, top - head_height - high, left + wide, top - head_height)
    bare = replace(content, tables=(), details=())
    plan = _centred(bare, stand, [], (None, None), layout)
    return replace(plan, rings=content.details), replace(content, blocks=())
