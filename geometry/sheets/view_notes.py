"""What stands on the views of a part besides its lines and dimensions, where there is room for it.

Frame: sheet mm about each view's own origin, as its block.

Rings of details with their letters, the points of a carved front, the grain and the marks of the
reference faces; last the number of every cut, which always finds a place, if need be outside.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from geometry.design.part import Part
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Ground, TextBox
from geometry.primitives.frame import BENCH_FRAME
from geometry.sheets.balloon_rows import with_box
from geometry.sheets.balloons import NumberedView, number_cuts
from geometry.sheets.centre_lines import centre_lines
from geometry.sheets.details import Detail
from geometry.sheets.free_spots import free_spot, ground_of, ring_around
from geometry.sheets.part_symbols import face_edge_mark, face_side_mark, grain_arrow
from geometry.sheets.relief_points import point_labels
from geometry.sheets.view_grid import Block, cells
from geometry.views.view import PART_EDGE, PART_FACE

_GRAIN_ARROWS = (26.0, 16.0, 10.0)  # mm, the longest that finds room
_ALONG = (0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.08, 0.92)  # of a view, where to look
_TRIES = 4  # to find room for all numbers,
_FEW = 3  # if no more than these found none: others would only be in their stead
_DETAIL_LETTER = 3.5
_LEAST_RING = 2.5  # mm
_RING_OUT = 2.0  # mm that a ring may reach out of the room of its view
_OUT = 4.0  # mm that a detail's letter may stand outside its view, in the air between views


def with_notes(
    part: Part, blocks: Sequence[Block], details: Sequence[Detail], tight: tuple[bool, bool]
) -> tuple[Block, ...]:
    """The views with their notes, and what these take more room.

    ``tight`` says across and up whether the page has no more room that way.
    """
    rings = [
        [_ring_box(one, block) for one in details if one.linework.view.name == block.view]
        for block in blocks
    ]
    blocks = [_with_rings(*both) for both in zip(blocks, rings, strict=True)]
    rooms = cells(blocks)

    def bare() -> list[NumberedView]:
        views: list[NumberedView] = []
        for block, own in zip(blocks, rings, strict=True):
            ground = ground_of(block)
            marks = _notes(block, ground, part, details)
            views.append(NumberedView(block, rooms[block.view], tight, ground, own, marks))
        return views

    best = bare()
    first = fewest = number_cuts(best, part.shape)
    # Who found no room chooses first the next time.
    for _ in range(_TRIES if 0 < len(fewest) <= _FEW else 0):
        views = bare()
        left_over = number_cuts(views, part.shape, first)
        if len(left_over) < len(fewest):
            best, fewest = views, left_over
        if not left_over:
            break
        first = (*left_over, *(number for number in first if number not in left_over))
    return tuple(
        replace(
            view.block,
            placed=replace(view.block.placed, extent=view.extent),
            notes=tuple(view.marks),
        )
        for view in best
    )


def _with_rings(block: Block, rings: Sequence[TextBox]) -> Block:
    """The view with the room of its rings, but for a little that may reach into the air."""
    extent = block.placed.extent
    for ring in rings:
        inner = max(0.0, ring.half_width - _RING_OUT)
        extent = with_box(extent, replace(ring, half_width=inner, half_height=inner))
    return replace(block, placed=replace(block.placed, extent=extent))


def axes_of_rounds(block: Block, part: Part) -> list[Strokes]:
    """Centre lines of what is round in the part, in a view of it alone."""
    texts = [one.box for one in block.placed.dimensions]
    alone = replace(part, frame=BENCH_FRAME)
    return centre_lines((alone,), block.linework.view, block.scale, texts)


def _notes(block: Block, ground: Ground, part: Part, details: Sequence[Detail]) -> list[Mark]:
    """All but the numbers of cuts; the ``ground`` keeps clear of it from then on."""
    for lines in axes_of_rounds(block, part):
        ground.add(lines.segments.tolist(), [])
    marks: list[Mark] = []
    for detail in details:
        if detail.linework.view.name == block.view:
            marks += _detail_ring(detail, block, ground)
    view = tuple(c * block.scale for c in block.linework.bounds())
    if block.view == PART_FACE.name:
        marks += point_labels(block, ground, part.shape)
        if part.solid_timber:
            marks += _grain(ground, view, turn=part.grain_across)
        if part.shape.cuts:
            marks += _face_mark(ground, view)
    if block.view == PART_EDGE.name and part.shape.cuts:
        marks += _edge_mark(ground, view)
    return marks


def _face_mark(ground: Ground, view: tuple[float, ...]) -> list[Mark]:
    left, bottom, right, top = view
    if top - bottom < 9.0:
        return []
    spots = [TextBox(left + (right - left) * f, top - 4.3, 1.8, 3.2) for f in _ALONG]
    spot = free_spot(ground, spots)
    return [] if spot is None else list(face_side_mark((spot.x - 1.4, top), down=True))


def _edge_mark(ground: Ground, view: tuple[float, ...]) -> list[Mark]:
    left, bottom, right, _ = view
    spots = [TextBox(left + (right - left) * f, bottom - 2.5, 1.8, 1.6) for f in _ALONG]
    spot = free_spot(ground, spots)
    return [] if spot is None else list(face_edge_mark((spot.x, bottom), down=True))


def _grain(ground: Ground, view: tuple[float, ...], *, turn: bool) -> list[Mark]:
    left, bottom, right, top = view
    for length in _GRAIN_ARROWS:
        half = (0.8, length / 2.0) if turn else (length / 2.0, 0.8)
        spots = [
            TextBox(left + (right - left) * fx, bottom + (top - bottom) * fy, *half)
            for fy in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2)
            for fx in _ALONG
        ]
        spot = free_spot(ground, spots)
        if spot is not None:
            return list(grain_arrow((spot.x, spot.y), length, turn=turn))
    return []


def _detail_ring(detail: Detail, block: Block, ground: Ground) -> list[Mark]:
    """The circle on the main view that says where a detail is, with its letter."""
    box = _ring_box(detail, block)
    x, y, radius = box.x, box.y, box.half_width
    spots = [
        TextBox(
            x + away * math.cos(math.radians(turn_deg)),
            y + away * math.sin(math.radians(turn_deg)),
            1.5,
            2.0,
        )
        for turns in ((45, 135, 315, 225), (0, 180, 90, 270), range(22, 360, 45))
        for away in (radius + 3.4, radius + 5.0, radius + 7.5, radius + 10.0)
        for turn_deg in turns
    ]
    left, bottom, right, top = block.placed.extent
    spots = [
        s
        for s in spots
        if left - _OUT <= s.x <= right + _OUT and bottom - _OUT <= s.y <= top + _OUT
    ]
    texts = list(ground.boxes)
    spot = free_spot(ground, spots, over_lines=True) or TextBox(x, y, 1.5, 2.0)
    ground.add([], [box])
    at = (spot.x, spot.y - _DETAIL_LETTER / 2.0)
    return [
        *ring_around((x, y), radius, texts),
        Label(Role.TITLE, detail.letter, at, _DETAIL_LETTER, Anchor.MIDDLE, bold=True),
    ]


def _ring_box(detail: Detail, block: Block) -> TextBox:
    radius = max(detail.radius * block.scale, _LEAST_RING)
    u, v = detail.centre
    return TextBox(u * block.scale, v * block.scale, radius, radius)
