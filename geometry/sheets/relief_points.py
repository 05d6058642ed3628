"""The points of a carved front on its page: numbered in the view, and a table to mark them by.

Frame: the part's own in the table's numbers; sheet mm about the view's origin for the labels.
A front is carved to points: each is marked on the face, drilled or cut to its depth, and the wood
between is planed away until it is flat from point to point.  Places are measured from the edges
as they are when the front is fitted.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from geometry.cuts.relief import Relief
from geometry.cuts.trim import Trim
from geometry.design.part import Shape
from geometry.dimensioning.placed import Extent
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Ground, TextBox
from geometry.primitives.facets import trimmed
from geometry.primitives.frame import Vec2
from geometry.sheets.text_block import PAD, TextBlock, table
from geometry.sheets.view_grid import Block
from shared.lettering import text_width
from shared.units import Shown, format_length
from shared.words import Words, in_words

TABLE_LETTERING = 2.5  # mm, capitals
_LAST = 20.0  # mm, as wide as a table makes its last column at least
_LABEL = 2.0  # mm, capitals of a point's number
_AWAY = (2.2, 3.0, 4.0, 5.2)
_FAR = (6.6, 8.0, 10.0, 12.0, 15.0, 18.0)
_CLEAR = 0.6  # mm round a number
_PAST_TEXT = 0.1  # mm between a number's line and other numbers
_LED = 5.0  # mm: a number farther off than this has a line to its point
_TURNS = 24
_BETWEEN = 3.0  # mm between the two tables
_HEAD = ("Point", "From left", "From top", "Deep")


@dataclass(frozen=True, slots=True)
class MarkedPoint:
    """A point of a relief: its number on the page, where it lies on the part, and how deep.

    ``across`` and ``down`` are from the left end and the face edge of the fitted front; mm.
    """

    number: int
    at: Vec2
    across: float
    down: float
    deep: float


def relief_points(shape: Shape) -> tuple[MarkedPoint, ...]:
    """All points at which facets of a front meet, row by row; none for a part without a relief."""
    relief = next((cut for cut in shape.cuts if isinstance(cut, Relief)), None)
    if relief is None:
        return ()
    left, top = 0.0, 0.0
    right, bottom = shape.blank.length, shape.blank.width
    for cut in shape.cuts:
        if isinstance(cut, Trim):
            left, right, top, bottom = cut.x_low, cut.x_high, cut.y_low, cut.y_high
    points = trimmed(relief.facets, (left, top, right, bottom)).points
    rows = sorted(points, key=lambda p: (round(p[1], 3), round(p[0], 3)))
    return tuple(
        MarkedPoint(number, (x, y), x - left, y - top, deep)
        for number, (x, y, deep) in enumerate(rows, 1)
    )


def point_texts(shape: Shape, shown: Shown) -> tuple[tuple[str, ...], ...]:
    """The rows of the table of points: number, from the left, from the top, depth."""
    return tuple(
        (
            str(point.number),
            *(format_length(v, shown) for v in (point.across, point.down, point.deep)),
        )
        for point in relief_points(shape)
    )


def with_points(
    block: TextBlock, rows: Sequence[Sequence[str]], width: float, words: Words
) -> TextBlock:
    """The table of cuts with that of the relief's points below it, if there are any."""
    if not rows:
        return block
    height = TABLE_LETTERING
    head = tuple(in_words(word, words) for word in _HEAD)
    each = _wide(head, rows, height)
    groups = max(1, min(math.floor((width - _LAST) / each), len(rows)))
    long = math.ceil(len(rows) / groups)
    columns = [rows[k : k + long] for k in range(0, len(rows), long)]
    joined = [
        tuple(text for column in columns for text in (column[k] if k < len(column) else ("",) * 4))
        for k in range(long)
    ]
    heads = head * len(columns)
    below = table(heads, joined, _wide(heads, joined, height), height)
    return _stacked(block, below)


def _wide(head: Sequence[str], rows: Sequence[Sequence[str]], height: float) -> float:
    """How wide a table of these texts is without wrapping."""
    return sum(
        max(text_width(row[k], height, bold=row is head) for row in (head, *rows)) + 2.0 * PAD
        for k in range(len(head))
    )


def _stacked(upper: TextBlock, lower: TextBlock) -> TextBlock:
    if not upper.height:
        return lower
    down = upper.height + _BETWEEN
    return TextBlock(
        (*upper.lines, *(replace(line, y=line.y + down) for line in lower.lines)),
        (*upper.rules, *((a, b + down, c, d + down) for a, b, c, d in lower.rules)),
        max(upper.width, lower.width),
        down + lower.height,
    )


def point_labels(block: Block, ground: Ground, shape: Shape) -> list[Mark]:
    """The number of each point beside it, or led to it from where there is room, within the view if
    there is any, else beside it among the dimensions."""
    marks: list[Mark] = []
    left, bottom, right, top = (c * block.scale for c in block.linework.bounds())
    view, around = (left, bottom, right, top), block.placed.extent
    for point in _crowded_first(relief_points(shape)):
        text = str(point.number)
        half = text_width(text, _LABEL) / 2.0 + 0.2
        x, y = point.at[0] * block.scale, -point.at[1] * block.scale
        spots = [
            TextBox(
                x + (away + half - 1.0) * math.cos(turn),
                y + away * math.sin(turn),
                half,
                _LABEL / 2.0 + 0.2,
            )
            for away in (*_AWAY, *_FAR)
            for turn in (math.radians(30.0 + 360.0 * k / _TURNS) for k in range(_TURNS))
        ]
        inside = [one for one in spots if _is_within(one, view)]
        beside = [one for one in spots if _is_within(one, around) and not _is_within(one, view)]
        spot = _spot((x, y), [*inside, *beside], ground)
        if spot is None:
            continue
        marks.append(Label(Role.TEXT, text, (spot.x, spot.y - _LABEL / 2.0), _LABEL, Anchor.MIDDLE))
        if _is_led((x, y), spot):
            led = _leader((x, y), spot)
            ground.add([led], [])
            marks.append(Strokes(Role.DIMENSION, np.array([led])))
    return marks


def _crowded_first(points: Sequence[MarkedPoint]) -> list[MarkedPoint]:
    """Those nearest to another choose first."""

    def alone(one: MarkedPoint) -> float:
        return min(
            (math.dist(one.at, other.at) for other in points if other is not one), default=0.0
        )

    return sorted(points, key=lambda one: (round(alone(one), 3), one.number))


def _spot(point: Vec2, spots: Sequence[TextBox], ground: Ground) -> TextBox | None:
    """The first free spot whose line to the point runs through no other number; where there is
    none, one off the texts alone."""
    clear = dict(zip(spots, ground.clear(spots, _CLEAR), strict=True))
    for spot in sorted(spots, key=lambda one: not clear[one]):
        led = [_leader(point, spot)] if _is_led(point, spot) else []
        own = () if clear[spot] else spot.outline()
        if not ground.crosses_text([*led, *own], _PAST_TEXT):
            ground.add([], [spot])
            return spot
    return None


def _is_within(spot: TextBox, extent: Extent) -> bool:
    left, bottom, right, top = extent
    return (
        left < spot.x - spot.half_width
        and spot.x + spot.half_width < right
        and bottom < spot.y - _LABEL / 2
        and spot.y + _LABEL / 2 < top
    )


def _is_led(point: Vec2, spot: TextBox) -> bool:
    return math.dist(point, (spot.x, spot.y)) > _LED


def _leader(point: Vec2, spot: TextBox) -> tuple[float, float, float, float]:
    """From the edge of a number's box to its point."""
    dx, dy = point[0] - spot.x, point[1] - spot.y
    out = min(
        half / abs(way) if way else math.inf
        for half, way in ((spot.half_width, dx), (spot.half_height, dy))
    )
    return (spot.x + out * dx, spot.y + out * dy, *point)
