"""The general arrangement: front elevation, plan and end elevation in their places on one sheet.

The same function lays out the screen and the paper.  It runs at every step of a drag: linework
goes to sheet mm by whole arrays, one mark a view and role.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.bench.bench import Bench
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.dimension_marks import Target, dimension_marks, targets
from geometry.drawing.marks import Mark, Role, Sheet, Strokes
from geometry.drawing.shifting import shifted
from geometry.primitives.frame import Vec2
from geometry.sheets.centre_lines import centre_lines
from geometry.sheets.layout import Layout, Room, furniture
from geometry.sheets.phantoms import PHANTOM_OWNER, phantom_lines
from geometry.sheets.view_grid import (
    Block,
    bare_size,
    block,
    caption_label,
    grid_origins,
    grid_size,
)
from geometry.views.linework import Linework
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN
from shared.paper import SCALES, largest_scale
from shared.words import in_words

VIEW_TITLES = {
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
        for place in self.places:
            if place.view == view:
                return place
        raise KeyError(view)

    def view_at(self, point: Vec2) -> ViewPlace | None:
        """The view whose drawing or dimensions a sheet point is in."""
        for place in self.places:
            left, bottom, right, top = place.room
            if left <= point[0] <= right and bottom <= point[1] <= top:
                return place
        return None


def arrange(
    bench: Bench,
    lineworks: Sequence[Linework],
    dimensions: Sequence[Dimension],
    layout: Layout,
    held: Sequence[ViewPlace] = (),
) -> Arranged:
    """Lay out the views of a bench with their dimensions.

    ``lineworks`` own their lines by index into ``bench.parts``.  Views in ``held`` keep their place
    and scale, so that during a drag nothing moves but what the hand moves; a view that is not
    among them is laid out as if none were held.
    """
    if held:
        blocks = _blocks(bench, lineworks, dimensions, held[0].scale, layout)
    else:
        blocks = _scaled(bench, lineworks, dimensions, layout)
    origins = _origins(blocks, layout) | {place.view: place.origin for place in held}
    scale = blocks[0].scale if blocks else 1.0
    owners = tuple(f"part:{part.name}" for part in bench.parts)
    marks: list[Mark] = list(furniture(layout, scale))
    places: list[ViewPlace] = []
    found: list[Target] = []
    for one in blocks:
        x, y = origin = origins[one.view]
        marks += linework_marks(one.linework, scale, origin, owners)
        if len(one.phantom):
            moved = one.phantom * scale + np.array(origin * 2)
            marks.append(Strokes(Role.PHANTOM, moved, owner=PHANTOM_OWNER))
        texts = [each.box for each in one.placed.dimensions]
        lines = centre_lines(bench.parts, one.linework.view, scale, texts)
        marks += [shifted(each, origin) for each in lines]
        marks += dimension_marks(one.placed, origin)
        marks.append(caption_label(one, origin))
        left, bottom, right, top = one.placed.extent
        places.append(
            ViewPlace(one.view, scale, origin, (x + left, y + bottom, x + right, y + top))
        )
        found += targets(one.placed, origin)
    title = in_words("General arrangement", layout.words)
    sheet = Sheet(title, layout.paper.width, layout.paper.height, tuple(marks))
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
            owner_of = linework.owner[chosen]
            marks.append(Strokes(role, segments[chosen], owners=owners, owner_of=owner_of))
    return marks


def _scaled(
    bench: Bench, lineworks: Sequence[Linework], dimensions: Sequence[Dimension], layout: Layout
) -> list[Block]:
    """The views at the given scale, or at the largest step at which all of them fit."""
    if layout.scale is not None:
        return _blocks(bench, lineworks, dimensions, layout.scale, layout)
    left, bottom, right, top = layout.room
    wide, high = bare_size(lineworks)
    start = largest_scale(
        min(1.0, (right - left) / max(wide, 1e-9), (top - bottom) / max(high, 1e-9))
    )
    blocks: list[Block] = []
    for step in SCALES[SCALES.index(start) :]:
        blocks = _blocks(bench, lineworks, dimensions, step.factor, layout)
        width, height = grid_size(blocks, third_angle=layout.third_angle)
        if width <= right - left and height <= top - bottom:
            break
    return blocks


def _blocks(
    bench: Bench,
    lineworks: Sequence[Linework],
    dimensions: Sequence[Dimension],
    scale: float,
    layout: Layout,
) -> list[Block]:
    style = layout.style
    return [
        block(
            one,
            dimensions,
            scale,
            style,
            in_words(VIEW_TITLES[one.view.name], layout.words),
            phantom_lines(bench, one.view),
        )
        for one in lineworks
    ]


def _origins(blocks: Sequence[Block], layout: Layout) -> dict[str, Vec2]:
    """The views centred in the room."""
    left, bottom, right, top = layout.room
    width, height = grid_size(blocks, third_angle=layout.third_angle)
    corner = ((left + right - width) / 2.0, (bottom + top - height) / 2.0)
    return grid_origins(blocks, corner, third_angle=layout.third_angle)
