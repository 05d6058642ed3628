"""Views in their places: a column and a row for each, with gaps that follow their dimensions.

Frame: sheet mm.  Views of one column share the place of their u = 0, views of one row that of
their v = 0, so that every point is found straight across or above.

Method: first and third angle after ISO 5456-2 (from memory): in third angle a view stands on the
side that it is seen from, in first angle on the far side.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.placed import DimensionStyle, Placed
from geometry.dimensioning.placement import place
from geometry.drawing.marks import Anchor, Label, Mark, Role
from geometry.drawing.text_box import NO_LINES
from geometry.primitives.frame import Vec2
from geometry.views.linework import Linework
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PART_EDGE, PART_END, PART_FACE, PLAN
from shared.lettering import text_width

Room = tuple[float, float, float, float]  # left, bottom, right, top
Floats = NDArray[np.float64]
GAP = 8.0  # mm of air between two views with their dimensions and captions
_CAPTION_AIR = 4.0  # mm between a view's lowest mark and its caption

_THIRD_ANGLE_CELLS = {
    FRONT.name: (0, 0),
    PLAN.name: (0, 1),
    END_RIGHT.name: (1, 0),
    END_LEFT.name: (-1, 0),
    PART_FACE.name: (0, 0),
    PART_EDGE.name: (0, 1),
    PART_END.name: (1, 0),
}


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """A view with its dimensions at a scale, about its own origin.

    ``phantom`` are segments (n, 4) of its (u, v) where a piece that moves stands too; ``notes`` are
    what stands on it besides.
    """

    linework: Linework
    placed: Placed
    scale: float
    caption: str
    phantom: Floats
    notes: tuple[Mark, ...] = ()

    @property
    def view(self) -> str:
        return self.linework.view.name

    @property
    def middle(self) -> float:
        """Of the drawing itself, where its caption stands."""
        left, _, right, _ = self.linework.bounds()
        return self.scale * (left + right) / 2.0

    @property
    def extent(self) -> Room:
        """What the view takes with its dimensions and its caption."""
        left, bottom, right, top = self.placed.extent
        if not self.caption:
            return (left, bottom, right, top)
        height = self.placed.text_height
        half = text_width(self.caption, height) / 2.0
        return (
            min(left, self.middle - half),
            bottom - _CAPTION_AIR - 1.5 * height,
            max(right, self.middle + half),
            top,
        )


def block(
    linework: Linework,
    dimensions: Sequence[Dimension],
    scale: float,
    style: DimensionStyle,
    caption: str = "",
    phantom: Floats = NO_LINES,
) -> Block:
    """The view with those of the dimensions that belong to it."""
    own = [one for one in dimensions if one.view == linework.view.name]
    drawn = np.concatenate([linework.segments, phantom]) if len(phantom) else linework.segments
    return Block(linework, place(own, drawn, scale, style), scale, caption, phantom)


def grid_size(blocks: Sequence[Block], *, third_angle: bool) -> Vec2:
    """Width and height of all views together."""
    columns, rows = (
        sum(high - low for low, high in spans.values()) + GAP * (len(spans) - 1)
        for spans in (_spans(blocks, third_angle, axis) for axis in (0, 1))
    )
    return (columns, rows)


def grid_origins(blocks: Sequence[Block], corner: Vec2, *, third_angle: bool) -> dict[str, Vec2]:
    """The sheet point of each view's origin, the whole standing on its lower left ``corner``."""
    zeros: list[dict[int, float]] = []
    for axis in (0, 1):
        zero: dict[int, float] = {}
        reached = corner[axis]
        for index, (low, high) in sorted(_spans(blocks, third_angle, axis).items()):
            zero[index] = reached - low
            reached += high - low + GAP
        zeros.append(zero)
    origins: dict[str, Vec2] = {}
    for one in blocks:
        column, row = _cell(one.view, third_angle)
        origins[one.view] = (zeros[0][column], zeros[1][row])
    return origins


def cells(blocks: Sequence[Block]) -> dict[str, Room]:
    """What each view may take, about its own origin, without that the whole grows."""
    columns, rows = (_spans(blocks, True, axis) for axis in (0, 1))
    found: dict[str, Room] = {}
    for one in blocks:
        column, row = _cell(one.view, True)
        (left, right), (bottom, top) = columns[column], rows[row]
        found[one.view] = (left, bottom, right, top)
    return found


def bare_size(lineworks: Sequence[Linework]) -> Vec2:
    """Width and height in mm of the views alone, side by side and one above the other."""
    wide: dict[int, float] = {}
    high: dict[int, float] = {}
    for linework in lineworks:
        left, bottom, right, top = linework.bounds()
        column, row = _cell(linework.view.name, True)
        wide[column] = max(wide.get(column, 0.0), right - left)
        high[row] = max(high.get(row, 0.0), top - bottom)
    return (sum(wide.values()), sum(high.values()))


def caption_label(one: Block, origin: Vec2) -> Label:
    """The view's name below its lowest mark, under the middle of the object."""
    height = one.placed.text_height
    return Label(
        Role.TITLE,
        one.caption,
        (origin[0] + one.middle, origin[1] + one.extent[1] + 0.5 * height),
        height,
        Anchor.MIDDLE,
        owner=f"view:{one.view}",
    )


def _cell(view: str, third_angle: bool) -> tuple[int, int]:
    """The column (to the right) and row (upward) of a view, the main one at (0, 0)."""
    column, row = _THIRD_ANGLE_CELLS[view]
    return (column, row) if third_angle else (-column, -row)


def _spans(blocks: Sequence[Block], third_angle: bool, axis: int) -> dict[int, tuple[float, float]]:
    """For each column (axis 0) or row (axis 1), what its views need before and after 0."""
    spans: dict[int, tuple[float, float]] = {}
    for one in blocks:
        index = _cell(one.view, third_angle)[axis]
        low, high = one.extent[axis], one.extent[axis + 2]
        known = spans.get(index, (low, high))
        spans[index] = (min(low, known[0]), max(high, known[1]))
    return spans
