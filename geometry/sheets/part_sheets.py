"""A page for every different part: its own three views, dimensioned, with all that it needs.

Parts of one shape and material share a page that says how many to make.  The part lies in its own
frame (see ``part_dimensions``): the face side toward the reader, the face edge up, the edge view
and the end view in their places by first or third angle.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.dimensioning.dimension_marks import dimension_marks
from geometry.drawing.marks import Anchor, Arc, Label, Mark, Role, Strokes
from geometry.drawing.shifting import shifted
from geometry.drawing.text_box import MIDDLE, TextBox, broken_around
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.cut_table import cut_table
from geometry.sheets.details import Detail
from geometry.sheets.kin import kin_words
from geometry.sheets.layout import Layout, scale_text
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.page_packing import PagePlan, detail_size
from geometry.sheets.page_plan import DrawnPart, planned, roomiest_scale
from geometry.sheets.part_dimensions import part_dimensions
from geometry.sheets.part_names import group_title, page_titles
from geometry.sheets.part_words import Called, head
from geometry.sheets.trim import proud_regions
from geometry.sheets.view_grid import Block
from geometry.sheets.view_notes import axes_of_rounds, with_notes
from geometry.solids.alike import made_alike
from geometry.views.look import look_at_part
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from shared.lettering import text_width
from shared.words import in_words

_AIR = 0.4  # mm between a text and a line that is interrupted at it
NO_TEMPLATES: Mapping[str, tuple[str, ...]] = {}
_POOR = 0.5  # of the largest scale that a sheet has room for: then it is tried upright


def part_groups(bench: Bench) -> tuple[tuple[Part, ...], ...]:
    """Parts that are made alike, together, in the bench's order."""
    return made_alike(
        bench.parts,
        lambda part: (part.kind, part.material, part.allowance, part.grain_across),
    )


def called(
    groups: Sequence[Sequence[Part]], templates: Mapping[str, tuple[str, ...]] = NO_TEMPLATES
) -> tuple[Called, ...]:
    """What the pages of groups are called among each other; ``templates`` are those that serve for
    a part, by its name."""
    titles = page_titles(groups)
    kin = kin_words(groups, [title for title, _ in titles])
    return tuple(
        Called(*title, words, templates.get(group[0].name, ()))
        for group, title, words in zip(groups, titles, kin, strict=True)
    )


def part_leaves(
    parts: Sequence[Part], layout: Layout, told: Called | None = None
) -> tuple[Leaf, ...]:
    """The page, or pages, of parts that are made alike."""
    told = told or Called(group_title(parts))
    plans, layout = part_plans(parts, layout, told)
    return tuple(
        part_leaf(plan, parts, told, layout, number) for number, plan in enumerate(plans, start=1)
    )


def part_plans(
    parts: Sequence[Part], layout: Layout, told: Called
) -> tuple[tuple[PagePlan, ...], Layout]:
    """What goes on which page, and how its sheet lies.

    Parts lie, but stand upright where that draws them larger.
    """
    drawn = drawn_part(parts[0])

    def plans_on(way: Layout) -> tuple[PagePlan, ...]:
        left, _, right, _ = way.room
        words = head(parts, told, way, right - left)
        return planned(drawn, cut_table(parts[0], way), words.height, way)

    plans = plans_on(layout)
    if layout.scale is None and plans[0].scale <= _POOR * roomiest_scale(drawn.lineworks, layout):
        others = plans_on(turned_upright(layout))
        if others[0].scale > plans[0].scale:
            return others, turned_upright(layout)
    return plans, layout


def drawn_part(part: Part) -> DrawnPart:
    """The three views of a part by itself, with all that is to stand on them."""
    lineworks = [look_at_part(part, view) for view in (PART_FACE, PART_EDGE, PART_END)]
    return DrawnPart(lineworks, part_dimensions(part.shape), partial(with_notes, part))


def part_leaf(
    plan: PagePlan, parts: Sequence[Part], told: Called, layout: Layout, number: int
) -> Leaf:
    """A page as planned; ``number`` counts the pages of the parts from 1."""
    part = parts[0]
    left, _, right, top = layout.room
    marks: list[Mark] = [*head(parts, told, layout, right - left).marks((left, top), right - left)]
    for block in plan.blocks:
        own = [*_view_marks(block, part), *block.notes]
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
        marks += _proud_marks(part, block)
    marks += axes_of_rounds(block, part)
    marks += dimension_marks(block.placed, (0.0, 0.0))
    return marks


def _proud_marks(part: Part, block: Block) -> list[Mark]:
    """What is left proud, its outline interrupted where it would run through a text or a number."""
    texts = [one.box for one in block.placed.dimensions]
    for note in block.notes:
        if isinstance(note, Label):  # about its middle, as all notes are
            middle = (note.at[0], note.at[1] + MIDDLE * note.height)
            wide = text_width(note.text, note.height, note.bold)
            texts.append(TextBox.about(middle, wide, note.height))
    marks: list[Mark] = []
    for region in proud_regions(part):
        for ring in shapely.get_parts(region):
            points = np.array(ring.exterior.coords) * block.scale
            sides = np.hstack([points[:-1], points[1:]]).tolist()
            kept = [piece for side in sides for piece in broken_around(tuple(side), texts, _AIR)]
            segments = np.array(kept).reshape(-1, 4)
            marks.append(Strokes(Role.TRIM, segments, owner=f"part:{part.name}"))
    return marks


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
