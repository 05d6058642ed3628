"""Finds a place for every dimension of a view, so that no text touches a text or a line.

Input in view mm, output in sheet mm about the view's origin (see ``placed``).

Method: angles, slanted dimensions and those that want to stand inside (``side`` 0) look for room
first, in and close to the drawing.  Level and upright ones then go in rows round whatever that
made of the outline: above and below first, then at the sides, clear of what hangs over a corner.
Extension lines that would still run through a text are interrupted at it.  It runs at every
step of a drag: plain numbers, with numpy only where the whole drawing is tested.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.free_dimension import FreeDimension
from geometry.dimensioning.free_places import place_free
from geometry.dimensioning.placed import (
    DimensionStyle,
    Extent,
    Placed,
    PlacedDimension,
    around,
)
from geometry.dimensioning.row_parts import Margin, RowDimension
from geometry.dimensioning.rows import Rectangle, place_rows
from geometry.drawing.marks import Role
from geometry.drawing.text_box import Ground, Line, TextBox, broken_around
from geometry.primitives.frame import Vec2
from shared.lettering import text_width
from shared.units import format_angle, format_length

_STRAIGHT = 1e-6
_EXTENDS = 20.0  # mm out of a drawing, as far as most extension lines run


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A dimension in sheet mm, with the words it shows."""

    dimension: Dimension
    role: Role
    text: str
    width: float
    start: Vec2
    end: Vec2

    @property
    def in_a_row(self) -> bool:
        dimension = self.dimension
        level = abs(dimension.along[0]) < _STRAIGHT or abs(dimension.along[1]) < _STRAIGHT
        return dimension.apex is None and dimension.side != 0 and level

    @property
    def upright(self) -> bool:
        return abs(self.dimension.along[0]) < _STRAIGHT


def place(
    dimensions: Sequence[Dimension],
    lines: NDArray[np.float64],
    scale: float,
    style: DimensionStyle,
) -> Placed:
    """Place the dimensions of one view round and in its linework.

    ``lines`` (n, 4) are the view's segments in view mm, visible and hidden; ``scale`` is sheet mm
    for one view mm.
    """
    drawing = lines * scale
    wanted = [_wanted(dimension, scale, style) for dimension in dimensions]
    rows = [one for one in wanted if one.in_a_row]
    outline = _outline(drawing, rows)
    free = sorted((w for w in wanted if not w.in_a_row), key=lambda w: w.dimension.rank)
    placed: list[PlacedDimension] = []
    base = outline
    if free:
        ground = Ground(drawing, _extensions(rows, outline))
        for one in free:
            found = place_free(_free(one, scale), ground, outline, style)
            if found is None:
                continue
            placed.append(found)
            base = around(base, found)
    extent = base
    keep_out: list[Rectangle] = []
    free_boxes = [one.box for one in placed]
    for upright in (False, True):
        for side in (1, -1):
            group = [w for w in rows if w.upright is upright and w.dimension.side == side]
            if not group:
                continue
            margin = _margin(base, upright=upright, side=side)
            stood = place_rows([_row(one, margin) for one in group], margin, style, keep_out)
            boxes = [one.box for one in stood]
            for raw in stood:
                whole = _interrupted(raw, [*boxes, *free_boxes], style.clearance)
                placed.append(whole)
                extent = around(extent, whole)
                if not upright:
                    keep_out += _overhanging(whole, base)
    return Placed(tuple(placed), extent, style.text_height)


def _wanted(dimension: Dimension, scale: float, style: DimensionStyle) -> _Wanted:
    shown = (
        format_angle(dimension.value)
        if dimension.unit == "deg"
        else format_length(dimension.value, style.shown)
    )
    if dimension.note:
        shown = f"{shown} {dimension.note}"
    derived = style.brackets and not dimension.parameter
    text = f"({shown})" if derived else shown
    (x0, y0), (x1, y1) = dimension.start, dimension.end
    return _Wanted(
        dimension,
        Role.DERIVED if derived else Role.DIMENSION,
        text,
        text_width(text, style.text_height),
        (x0 * scale, y0 * scale),
        (x1 * scale, y1 * scale),
    )


def _outline(drawing: NDArray[np.float64], rows: Sequence[_Wanted]) -> Extent:
    """The room of the drawing itself, with all points that rows measure to."""
    xs = [x for one in rows for x in (one.start[0], one.end[0])]
    ys = [y for one in rows for y in (one.start[1], one.end[1])]
    if len(drawing):
        ends = np.ascontiguousarray(drawing.T)
        low, high = ends.min(axis=1), ends.max(axis=1)
        xs += (float(min(low[0], low[2])), float(max(high[0], high[2])))
        ys += (float(min(low[1], low[3])), float(max(high[1], high[3])))
    if not xs:
        return (0.0, 0.0, 0.0, 0.0)
    return (min(xs), min(ys), max(xs), max(ys))


def _extensions(rows: Sequence[_Wanted], outline: Extent) -> NDArray[np.float64]:
    """About where the extension lines of rows will run: from their points out of the drawing."""
    lines: list[Line] = []
    for one in rows:
        margin = _margin(outline, upright=one.upright, side=one.dimension.side)
        row = _row(one, margin)
        for s, depth in ((row.low, row.low_depth), (row.high, row.high_depth)):
            lines.append(margin.line(s, depth, s, _EXTENDS))
    return np.array(lines, dtype=np.float64).reshape(-1, 4)


def _free(one: _Wanted, scale: float) -> FreeDimension:
    dimension = one.dimension
    apex = dimension.apex
    return FreeDimension(
        dimension.name,
        one.role,
        one.text,
        one.width,
        one.start,
        one.end,
        dimension.along,
        dimension.side,
        None if apex is None else (apex[0] * scale, apex[1] * scale),
        None if dimension.room is None else dimension.room * scale,
    )


def _margin(base: Extent, *, upright: bool, side: int) -> Margin:
    left, bottom, right, top = base
    if upright:
        return Margin(False, right if side > 0 else left, side, bottom, top)
    return Margin(True, top if side > 0 else bottom, side, left, right)


def _row(one: _Wanted, margin: Margin) -> RowDimension:
    along, away = (0, 1) if margin.horizontal else (1, 0)
    ends = sorted(
        (point[along], margin.outward * (point[away] - margin.base))
        for point in (one.start, one.end)
    )
    (low, low_depth), (high, high_depth) = ends
    return RowDimension(
        one.dimension.name,
        one.role,
        one.text,
        one.width,
        low,
        high,
        low_depth,
        high_depth,
        one.dimension.rank,
    )


def _interrupted(
    one: PlacedDimension, boxes: Sequence[TextBox], clearance: float
) -> PlacedDimension:
    """The dimension with its extension lines broken where they meet a text."""
    pieces: list[Line] = [one.lines[0]]
    for line in one.lines[1:]:
        pieces += broken_around(line, boxes, clearance)
    lines = tuple(pieces)
    return one if lines == one.lines else replace(one, lines=lines)


def _overhanging(one: PlacedDimension, base: Extent) -> list[Rectangle]:
    """What of a level dimension sticks out past the outline's left or right."""
    left, _, right, _ = base
    reach_x, reach_y = one.box.reach()
    x, y = one.box.x, one.box.y
    x0, y0, x1, _ = one.line
    found: list[Rectangle] = []
    if x - reach_x < left or x + reach_x > right:
        found.append((x - reach_x, y - reach_y, x + reach_x, y + reach_y))
    if min(x0, x1) < left or max(x0, x1) > right:
        found.append((min(x0, x1), y0 - 1.0, max(x0, x1), y0 + 1.0))
    return found
