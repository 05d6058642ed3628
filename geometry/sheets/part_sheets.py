"""A page for every different part: its own three views, dimensioned, with all that it needs.

Parts of one shape and material share a page that says how many to make.  The part lies in its own
frame (see ``part_dimensions``): the face side toward the reader, the face edge up, the edge view
and the end view in their places by first or third angle.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.dimensioning.dimension_marks import dimension_marks
from geometry.drawing.marks import Anchor, Arc, Label, Mark, Role, Strokes
from geometry.drawing.shifting import shifted
from geometry.drawing.text_box import Ground, TextBox
from geometry.primitives.frame import BENCH_FRAME, Vec2
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.balloons import balloons, free_spot, ground_of, ring_around
from geometry.sheets.centre_lines import centre_lines
from geometry.sheets.cut_table import cut_table
from geometry.sheets.details import Detail
from geometry.sheets.kin import kin_words
from geometry.sheets.layout import Layout, scale_text
from geometry.sheets.leaf import Leaf, standing
from geometry.sheets.marked_part import marked_part
from geometry.sheets.page_plan import PagePlan, detail_size, planned, roomiest_scale
from geometry.sheets.part_dimensions import part_dimensions
from geometry.sheets.part_names import group_title, page_titles
from geometry.sheets.part_symbols import face_edge_mark, face_side_mark, grain_arrow
from geometry.sheets.part_words import Called, head
from geometry.sheets.relief_points import point_labels
from geometry.sheets.trim import proud_regions
from geometry.sheets.view_grid import Block
from geometry.solids.alike import made_alike
from geometry.views.look import look_at_part
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from shared.words import in_words

_GRAIN_ARROWS = (26.0, 16.0, 10.0)  # mm, the longest that finds room
_ALONG = (0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.08, 0.92)  # of a view, where to look
_DETAIL_LETTER = 3.5
_POOR = 0.5  # of the largest scale that a sheet has room for: then it is tried upright
_OUT = 4.0  # mm that a detail's letter may stand outside its view, in the air between views


def part_groups(bench: Bench) -> tuple[tuple[Part, ...], ...]:
    """Parts that are made alike, together, in the bench's order."""
    return made_alike(
        bench.parts,
        lambda part: (part.kind, part.material, part.allowance, part.grain_across),
    )


def called(groups: Sequence[Sequence[Part]]) -> tuple[Called, ...]:
    """What the pages of groups are called among each other."""
    titles = page_titles(groups)
    kin = kin_words(groups, [title for title, _ in titles])
    return tuple(Called(*title, words) for title, words in zip(titles, kin, strict=True))


def part_leaves(
    parts: Sequence[Part], layout: Layout, told: Called | None = None
) -> tuple[Leaf, ...]:
    """The page, or pages, of parts that are made alike.

    They lie, but stand upright where that draws the part larger.
    """
    part, told = parts[0], told or Called(group_title(parts))
    lineworks = [look_at_part(part, view) for view in (PART_FACE, PART_EDGE, PART_END)]
    dimensions = part_dimensions(part.shape)

    def plans_on(way: Layout) -> tuple[PagePlan, ...]:
        left, _, right, _ = way.room
        words = head(parts, told, way, right - left)
        return planned(lineworks, dimensions, cut_table(part, way), words.height, way)

    plans = plans_on(layout)
    if layout.scale is None and plans[0].scale <= _POOR * roomiest_scale(lineworks, layout):
        upright = standing(layout)
        others = plans_on(upright)
        if others[0].scale > plans[0].scale:
            plans, layout = others, upright
    return tuple(
        _leaf(plan, parts, told, layout, number) for number, plan in enumerate(plans, start=1)
    )


def _leaf(plan: PagePlan, parts: Sequence[Part], told: Called, layout: Layout, number: int) -> Leaf:
    part = parts[0]
    left, _, right, top = layout.room
    marks: list[Mark] = [*head(parts, told, layout, right - left).marks((left, top), right - left)]
    for block in plan.blocks:
        own = [*_view_marks(block, part), *_additions(block, part, plan)]
        marks += [shifted(mark, plan.origins[block.view]) for mark in own]
    for detail, origin in zip(plan.details, plan.detail_origins, strict=True):
        marks += [shifted(mark, origin) for mark in _detail_marks(detail, part, layout)]
    marks += plan.table.marks(plan.table_corner)
    title = in_words(told.title, layout.words)
    name = title if number == 1 else f"{title} ({number})"
    return Leaf("Part drawing", name, plan.scale if plan.blocks else None, tuple(marks), layout)


def _view_marks(block: Block, part: Part) -> list[Mark]:
    """Lines and dimensions, and what is left proud, about the view's origin."""
    owners = (f"part:{part.name}",)
    marks = linework_marks(block.linework, block.scale, (0.0, 0.0), owners)
    if block.view == PART_FACE.name:
        marks += _proud_marks(part, block.scale)
    marks += _centre_lines(block, part)
    marks += dimension_marks(block.placed, (0.0, 0.0))
    return marks


def _centre_lines(block: Block, part: Part) -> list[Strokes]:
    """Of what is round in the part, in a view of it alone."""
    texts = [one.box for one in block.placed.dimensions]
    alone = replace(part, frame=BENCH_FRAME)
    return centre_lines((alone,), block.linework.view, block.scale, texts)


def _proud_marks(part: Part, scale: float) -> list[Mark]:
    marks: list[Mark] = []
    for region in proud_regions(part):
        for ring in shapely.get_parts(region):
            points = np.array(ring.exterior.coords) * scale
            segments = np.hstack([points[:-1], points[1:]])
            marks.append(Strokes(Role.TRIM, segments, owner=f"part:{part.name}"))
    return marks


def _additions(block: Block, part: Part, plan: PagePlan) -> list[Mark]:
    """Rings of details, numbers of cuts, face marks and the grain, where there is room."""
    ground = ground_of(block)
    for lines in _centre_lines(block, part):
        ground.add(lines.segments.tolist(), [])
    marks: list[Mark] = []
    for detail in plan.rings:
        if detail.linework.view.name == block.view:
            marks += _detail_ring(detail, block, ground)
    view = tuple(c * block.scale for c in block.linework.bounds())
    if block.view == PART_FACE.name:
        marks += point_labels(block, ground, part.shape)
        if part.solid_timber:
            marks += _grain(ground, view, turn=part.grain_across)
        if part.shape.cuts:
            marks += _face_mark(ground, view)
        marks += balloons(block, ground, _cut_points(part))
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


def _cut_points(part: Part) -> list[tuple[str, Vec2]]:
    """A point of the face view for each cut's number: the middle of its longest wall."""
    marked = marked_part(part.shape)
    found: dict[int, Vec2] = {}
    for waste in marked.cuts:
        walls = marked.walls(waste.low, None) or marked.walls(waste.high, None)
        if walls and waste.number not in found:
            longest = max(
                walls, key=lambda w: abs(w.end[0] - w.start[0]) + abs(w.end[1] - w.start[1])
            )
            (x0, y0), (x1, y1) = longest.start, longest.end
            t = 0.5 if len(found) % 2 else 0.4  # neighbours should not meet in one point
            found[waste.number] = (x0 + t * (x1 - x0), -(y0 + t * (y1 - y0)))
    return [(str(number), point) for number, point in found.items()]


def _detail_ring(detail: Detail, block: Block, ground: Ground) -> list[Mark]:
    """The circle on the main view that says where a detail is, with its letter."""
    x, y = detail.centre[0] * block.scale, detail.centre[1] * block.scale
    radius = max(detail.radius * block.scale, 2.5)
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
    ground.add([], [TextBox(x, y, radius, radius)])
    at = (spot.x, spot.y - _DETAIL_LETTER / 2.0)
    return [
        *ring_around((x, y), radius, texts),
        Label(Role.TITLE, detail.letter, at, _DETAIL_LETTER, Anchor.MIDDLE, bold=True),
    ]


def _detail_marks(detail: Detail, part: Part, layout: Layout) -> list[Mark]:
    """An enlarged circle of a view with its dimensions and its caption."""
    scale = detail.scale
    marks = linework_marks(detail.linework, scale, (0.0, 0.0), (f"part:{part.name}",))
    centre = (detail.centre[0] * scale, detail.centre[1] * scale)
    marks.append(Arc(Role.DIMENSION, centre, detail.radius * scale, 0.0, 360.0))
    marks += dimension_marks(detail.placed, (0.0, 0.0))
    left, _, right, top = detail.placed.extent
    _, height = detail_size(detail)
    caption = f"{in_words('Detail', layout.words)} {detail.letter}, {scale_text(scale)}"
    at = ((left + right) / 2.0, top - height + 1.5)
    marks.append(Label(Role.TITLE, caption, at, layout.lettering, Anchor.MIDDLE))
    return marks
