"""The general arrangement: front elevation, plan and end elevation in their places on one sheet.

The same function lays out the screen and the paper.  Views stand by first or third angle (ISO
5456-2, from memory): in third angle the plan above the front elevation and each end on its own
side, in first angle the plan below and each end on the far side.  The gaps follow the room that
the dimensions need.

It runs at every step of a drag: linework goes to sheet mm by whole arrays, one mark a view and
role.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.bench.bench import Bench
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.dimension_marks import Target, dimension_marks, targets
from geometry.dimensioning.placed import Placed
from geometry.dimensioning.placement import place
from geometry.drawing.marks import Anchor, Label, Mark, Role, Sheet, Strokes
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout, Room, furniture
from geometry.views.linework import Linework
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from shared.lettering import text_width
from shared.paper import SCALES, largest_scale
from shared.words import in_words

_GAP = 10.0  # mm of air between two views with their dimensions and captions
_CAPTION_AIR = 4.0  # mm between a view's lowest mark and its caption

_TITLES = {
    FRONT.name: "Front elevation",
    PLAN.name: "Plan",
    END_RIGHT.name: "End elevation, right",
    END_LEFT.name: "End elevation, left",
}


@dataclass(frozen=True, slots=True)
class ViewPlace:
    """Where a view stands.

    ``origin`` is the sheet point of its (0, 0), ``scale`` sheet mm for one mm, ``room`` the sheet
    rectangle (left, bottom, right, top) of the drawing with its dimensions.
    """

    view: str
    scale: float
    origin: Vec2
    room: Room

    def on_sheet(self, point: Vec2) -> Vec2:
        """A point (u, v) of the view in sheet mm."""
        return (
            self.origin[0] + self.scale * point[0],
            self.origin[1] + self.scale * point[1],
        )

    def in_view(self, point: Vec2) -> Vec2:
        """A sheet point as (u, v) of the view."""
        return (
            (point[0] - self.origin[0]) / self.scale,
            (point[1] - self.origin[1]) / self.scale,
        )


@dataclass(frozen=True, slots=True, eq=False)
class Arranged:
    """The sheet, where each view stands on it, and where each dimension can be pointed at."""

    sheet: Sheet
    places: tuple[ViewPlace, ...]
    targets: tuple[Target, ...]

    def place_of(self, view: str) -> ViewPlace:
        """Where a view stands; KeyError for one that is not on the sheet."""
        for place_ in self.places:
            if place_.view == view:
                return place_
        raise KeyError(view)

    def view_at(self, point: Vec2) -> ViewPlace | None:
        """The view whose drawing or dimensions a sheet point is in."""
        for place_ in self.places:
            left, bottom, right, top = place_.room
            if left <= point[0] <= right and bottom <= point[1] <= top:
                return place_
        return None


@dataclass(frozen=True, slots=True, eq=False)
class _Block:
    """A view with its dimensions, about its own origin."""

    linework: Linework
    placed: Placed
    scale: float
    caption: str

    @property
    def middle(self) -> float:
        """Of the drawing itself, where its caption stands."""
        left, _, right, _ = self.linework.bounds()
        return self.scale * (left + right) / 2.0

    @property
    def extent(self) -> Room:
        """What the view takes with its dimensions and its caption."""
        left, bottom, right, top = self.placed.extent
        height = self.placed.text_height
        half = text_width(self.caption, height) / 2.0
        return (
            min(left, self.middle - half),
            bottom - _CAPTION_AIR - 1.5 * height,
            max(right, self.middle + half),
            top,
        )


def arrange(
    bench: Bench,
    lineworks: Sequence[Linework],
    dimensions: Sequence[Dimension],
    layout: Layout,
    held: Sequence[ViewPlace] = (),
) -> Arranged:
    """Lay out the views of a bench with their dimensions.

    ``lineworks`` own their lines by index into ``bench.parts``.  Views in ``held`` keep their place
    and scale, so that during a drag nothing moves but what the hand moves; the others are laid
    out as if alone.
    """
    if held:
        scale = held[0].scale
        blocks = _blocks(lineworks, dimensions, scale, layout)
        kept = {place_.view: place_.origin for place_ in held}
        origins = {**_origins(blocks, layout), **kept}
    else:
        scale, blocks = _scaled(lineworks, dimensions, layout)
        origins = _origins(blocks, layout)
    owners = tuple(f"part:{part.name}" for part in bench.parts)
    marks: list[Mark] = list(furniture(layout, scale))
    places: list[ViewPlace] = []
    found: list[Target] = []
    for block in blocks:
        name = block.linework.view.name
        origin = origins[name]
        marks += linework_marks(block.linework, scale, origin, owners)
        marks += dimension_marks(block.placed, origin)
        marks.append(_caption(block, origin))
        low_x, low_y, high_x, high_y = block.placed.extent
        room = (origin[0] + low_x, origin[1] + low_y, origin[0] + high_x, origin[1] + high_y)
        places.append(ViewPlace(name, scale, origin, room))
        found += targets(block.placed, origin)
    paper = layout.paper
    title = in_words("General arrangement", layout.words)
    sheet = Sheet(title, paper.width, paper.height, tuple(marks))
    return Arranged(sheet, tuple(places), tuple(found))


def linework_marks(
    linework: Linework, scale: float, origin: Vec2, owners: tuple[str, ...]
) -> list[Mark]:
    """A view's hidden lines and then its visible ones, one mark each, on the sheet."""
    segments = linework.segments * scale
    segments += np.array(origin * 2)
    marks: list[Mark] = []
    for role, chosen in ((Role.HIDDEN, ~linework.visible), (Role.VISIBLE, linework.visible)):
        if chosen.any():
            marks.append(
                Strokes(role, segments[chosen], owners=owners, owner_of=linework.owner[chosen])
            )
    return marks


def _scaled(
    lineworks: Sequence[Linework], dimensions: Sequence[Dimension], layout: Layout
) -> tuple[float, list[_Block]]:
    """The given scale, or the largest step at which everything fits, and the views at it."""
    if layout.scale is not None:
        return layout.scale, _blocks(lineworks, dimensions, layout.scale, layout)
    left, bottom, right, top = layout.room
    bare = _bare_size(lineworks)
    start = largest_scale(
        min(1.0, (right - left) / max(bare[0], 1e-9), (top - bottom) / max(bare[1], 1e-9))
    )
    blocks: list[_Block] = []
    scale = start.factor
    for step in SCALES[SCALES.index(start) :]:
        scale = step.factor
        blocks = _blocks(lineworks, dimensions, scale, layout)
        width, height = _size(blocks, layout)
        if width <= right - left and height <= top - bottom:
            break
    return scale, blocks


def _blocks(
    lineworks: Sequence[Linework], dimensions: Sequence[Dimension], scale: float, layout: Layout
) -> list[_Block]:
    style = layout.style
    return [
        _Block(
            linework,
            place(
                [d for d in dimensions if d.view == linework.view.name],
                linework.segments,
                scale,
                style,
            ),
            scale,
            in_words(_TITLES[linework.view.name], layout.words),
        )
        for linework in lineworks
    ]


def _bare_size(lineworks: Sequence[Linework]) -> Vec2:
    """Width and height in mm of the views alone, side by side and one above the other."""
    wide, high = {"": 0.0}, {"": 0.0}
    for linework in lineworks:
        left, bottom, right, top = linework.bounds()
        column, row = _cell(linework.view.name, third_angle=True)
        wide[str(column)] = max(wide.get(str(column), 0.0), right - left)
        high[str(row)] = max(high.get(str(row), 0.0), top - bottom)
    return (sum(wide.values()), sum(high.values()))


def _cell(view: str, *, third_angle: bool) -> tuple[int, int]:
    """The column (to the right) and row (upward) of a view, the front elevation at (0, 0)."""
    way = 1 if third_angle else -1
    return {
        FRONT.name: (0, 0),
        PLAN.name: (0, way),
        END_RIGHT.name: (way, 0),
        END_LEFT.name: (-way, 0),
    }[view]


def _spans(blocks: Sequence[_Block], layout: Layout, axis: int) -> dict[int, tuple[float, float]]:
    """For each column (axis 0) or row (axis 1), what its views need before and after 0."""
    spans: dict[int, tuple[float, float]] = {}
    for block in blocks:
        index = _cell(block.linework.view.name, third_angle=layout.third_angle)[axis]
        low, high = block.extent[axis], block.extent[axis + 2]
        known = spans.get(index, (low, high))
        spans[index] = (min(low, known[0]), max(high, known[1]))
    return spans


def _size(blocks: Sequence[_Block], layout: Layout) -> Vec2:
    """Width and height in sheet mm of all views together."""
    columns, rows = (
        sum(high - low for low, high in spans.values()) + _GAP * (len(spans) - 1)
        for spans in (_spans(blocks, layout, 0), _spans(blocks, layout, 1))
    )
    return (columns, rows)


def _origins(blocks: Sequence[_Block], layout: Layout) -> dict[str, Vec2]:
    """The sheet point of each view's origin, the whole centred in the room."""
    left, bottom, right, top = layout.room
    width, height = _size(blocks, layout)
    starts = ((left + right - width) / 2.0, (bottom + top - height) / 2.0)
    zeros: list[dict[int, float]] = []
    for axis, start in enumerate(starts):
        zero: dict[int, float] = {}
        reached = start
        for index, (low, high) in sorted(_spans(blocks, layout, axis).items()):
            zero[index] = reached - low
            reached += high - low + _GAP
        zeros.append(zero)
    origins: dict[str, Vec2] = {}
    for block in blocks:
        name = block.linework.view.name
        column, row = _cell(name, third_angle=layout.third_angle)
        origins[name] = (zeros[0][column], zeros[1][row])
    return origins


def _caption(block: _Block, origin: Vec2) -> Label:
    """The view's name below its lowest mark, under the middle of the object."""
    height = block.placed.text_height
    return Label(
        Role.TITLE,
        block.caption,
        (origin[0] + block.middle, origin[1] + block.extent[1] + 0.5 * height),
        height,
        Anchor.MIDDLE,
        owner=f"view:{block.linework.view.name}",
    )
