"""A page of a part: views, details and a table put down in its room.

Frame: sheet mm.

Method: the views go to the upper left, the table of cuts into the lowest room that holds it (beside
the title block if it can), and the details into what is left, from the upper right.  Then all but
the table moves to the middle of the room it has.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import product

from geometry.primitives.frame import Vec2
from geometry.sheets.details import Detail
from geometry.sheets.free_space import FreeSpace, Rectangle
from geometry.sheets.layout import Layout
from geometry.sheets.text_block import NO_TEXT, TextBlock
from geometry.sheets.view_grid import Block, grid_origins, grid_size
from shared.paper import TITLE_BLOCK_WIDTH

_AIR = 7.0  # mm between views, details and tables
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
class Content:
    """What is still to be put on pages: views, a table in several widths, details."""

    scale: float
    blocks: tuple[Block, ...]
    tables: tuple[TextBlock, ...]
    details: tuple[Detail, ...]

    @property
    def amount(self) -> int:
        return len(self.blocks) + bool(self.tables) + len(self.details)


def detail_size(detail: Detail) -> Vec2:
    """Width and height of a detail with its dimensions and its caption."""
    left, bottom, right, top = detail.placed.extent
    return (max(right - left, _DETAIL_WIDTH), top - bottom + DETAIL_CAPTION)


def fullest(content: Content, head_height: float, layout: Layout) -> tuple[PagePlan, Content]:
    """The page that holds most, and what it leaves over."""
    views = bool(content.blocks)
    tries = []
    for table, order in product(content.tables or (None,), _ORDERS):
        tries.append(_packed(content, (table, order), head_height, layout))
        if views and not tries[-1][1].amount:
            break
    return min(tries, key=lambda found: (found[1].amount, not views and found[0].table.height))


def _packed(
    content: Content,
    chosen: tuple[TextBlock | None, Callable[[Detail], float]],
    head_height: float,
    layout: Layout,
) -> tuple[PagePlan, Content]:
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
            none = Content(content.scale, (), (), ())
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
    rest = Content(
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
    content: Content,
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


def over_the_room(content: Content, head_height: float, layout: Layout) -> tuple[PagePlan, Content]:
    """The views at their corner, whatever the room; the rest on other pages."""
    left, _, _, top = layout.room
    wide, high = grid_size(content.blocks, third_angle=layout.third_angle)
    stand = (left, top - head_height - high, left + wide, top - head_height)
    bare = replace(content, tables=(), details=())
    plan = _centred(bare, stand, [], (None, None), layout)
    return replace(plan, rings=content.details), replace(content, blocks=())


def over_its_room(table: TextBlock, rest: Content, head_height: float, layout: Layout) -> PagePlan:
    """A page for a single row that no page has room for: what is too long is better than lost."""
    left, _, right, top = layout.room
    stand = (left, top - head_height - table.height, right, top - head_height)
    bare = replace(rest, blocks=(), details=(), tables=())
    return _centred(bare, stand, [], (table, stand), layout)
