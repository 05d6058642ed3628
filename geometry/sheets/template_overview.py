"""The first pages of the templates: how to print and join them, and a map of the sheets.

Frame: sheet mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.drawing.marks import Anchor, Label, Mark, Role, Sheet, Strokes
from geometry.primitives.frame import Vec2
from geometry.sheets.layout import Layout, box_lines
from geometry.sheets.lettering_fit import fitted_lines
from geometry.sheets.printer import Edges
from geometry.sheets.template import Template
from geometry.sheets.template_words import amounts, served
from geometry.sheets.text_block import PITCH, TextBlock, paragraph
from geometry.sheets.tiles import MARGIN, OVERLAP, Tiling
from shared.units import in_units, length_mark
from shared.words import in_words

_CELL = (84.0, 71.0)
_CELL_PAD = 5.0
_CAPTION = 24.0
_TITLE = 5.0
_CAPTION_AIR = 1.0
_MOST_LINES = 4  # of one of its sentences
_TEXT = 2.5
_NUMBER = 3.5


@dataclass(frozen=True, slots=True, eq=False)
class Numbered:
    """A template, the way its paper lies, and the number of its first sheet."""

    template: Template
    tiling: Tiling
    first: int


def pages_needed(count: int, layout: Layout) -> int:
    """How many overview pages so many templates take."""
    return math.ceil(count / _per_page(layout))


def overview(
    numbered: Sequence[Numbered], layout: Layout, total: int, correction: Edges
) -> tuple[Sheet, ...]:
    """The pages, each with the instructions and as many maps as it holds."""
    paper, words = layout.paper, layout.words
    each = _per_page(layout)
    sheets: list[Sheet] = []
    title = in_words("Full-size templates", words)
    for page, start in enumerate(range(0, len(numbered), each), start=1):
        block = instructions(layout, correction)
        marks = _head(f"{title}, {page} / {total}", block, layout)
        for index, one in enumerate(numbered[start : start + each]):
            row, column = divmod(index, _columns(layout))
            corner = (
                MARGIN + column * _CELL[0],
                _maps_top(layout) - (row + 1) * _CELL[1],
            )
            marks += _map(one, corner, layout)
        sheets.append(Sheet(title, paper.width, paper.height, tuple(marks)))
    return tuple(sheets)


def nothing_to_trace(layout: Layout) -> Sheet:
    """The page of a bench whose parts are square all over."""
    title = in_words("Full-size templates", layout.words)
    words = in_words("No part of this bench has an angle that wants tracing.", layout.words)
    block = paragraph((words,), layout.paper.width, _TEXT)
    marks = tuple(_head(title, block, layout))
    return Sheet(title, layout.paper.width, layout.paper.height, marks)


def _head(title: str, block: TextBlock, layout: Layout) -> list[Mark]:
    left, top = MARGIN + _CELL_PAD, layout.paper.height - MARGIN - _CELL_PAD - _TITLE
    label = Label(Role.TITLE, title, (left, top), _TITLE, bold=True)
    return [label, *block.marks((left, top - 4.0))]


def instructions(layout: Layout, correction: Edges) -> TextBlock:
    """How to print, prove and join the sheets."""
    long, short = correction
    sentences = (
        "Print at 100 %: no scaling and no fit to page.",
        "Measure before you cut: on every sheet the squares must be 100.0 mm and 4 in, both ways. "
        "If they are not, do not use the sheet.",
        f"Sheets overlap by {length_mark(OVERLAP)}. Lay crosses with the same letter and number "
        "over each other, then measure along the stations over the join.",
        "Read upright, a template lies on the face side, the left end at the left, the face edge "
        "at the top. Some serve for mirror images, turned over: trace round them, prick the dashed "
        "lines through.",
        "Cut to full lines. Scribe dashed lines; grey ones are on the reverse. Trim to chain lines "
        "after the glue-up.",
        f"Correction for this printer: {long:.4f} along the long edge of the paper, {short:.4f} "
        "along the short one. With it in force the squares measure 100.0 mm and 4 in.",
    )
    told = [in_words(in_units(sentence, layout.shown), layout.words) for sentence in sentences]
    return paragraph(told, layout.paper.width - 2.0 * (MARGIN + _CELL_PAD), _TEXT)


def _columns(layout: Layout) -> int:
    return int((layout.paper.width - 2.0 * MARGIN) // _CELL[0])


def _maps_top(layout: Layout) -> float:
    head = _CELL_PAD + _TITLE + 4.0 + instructions(layout, (1.0, 1.0)).height + 4.0
    return layout.paper.height - MARGIN - head


def _per_page(layout: Layout) -> int:
    rows = int((_maps_top(layout) - MARGIN) // _CELL[1])
    return max(1, rows * _columns(layout))


def _map(one: Numbered, corner: Vec2, layout: Layout) -> list[Mark]:
    """The template small, with the sheets that it takes drawn over it."""
    template, tiles = one.template, one.tiling.tiles
    boxes = [tile.box for tile in tiles]
    left, low = min(b[0] for b in boxes), min(b[1] for b in boxes)
    right, high = max(b[2] for b in boxes), max(b[3] for b in boxes)
    room_x, room_y = _CELL[0] - 2.0 * _CELL_PAD, _CELL[1] - _CELL_PAD - _CAPTION
    scale = min(room_x / (right - left), room_y / (high - low))
    origin = (
        corner[0] + _CELL_PAD + (room_x - scale * (right - left)) / 2.0 - scale * left,
        corner[1] + _CAPTION + (room_y - scale * (high - low)) / 2.0 - scale * low,
    )
    shift = np.array(origin * 2)
    marks: list[Mark] = []
    for role, lines in (
        (Role.GRID, template.tracing.broken),
        (Role.SCRIBE, template.tracing.joint),
        (Role.TRIM, template.tracing.trim),
        (Role.CUT, template.tracing.cut),
    ):
        if len(lines):
            marks.append(Strokes(role, lines * scale + shift))
    for number, tile in enumerate(tiles, start=one.first):
        marks.append(Strokes(Role.GRID, box_lines(*tile.box) * scale + shift))
        at = (
            # Clear of the strips that the next sheets have too.
            origin[0] + scale * (tile.box[2] - (OVERLAP if tile.box[2] < right else 0.0)) - 1.2,
            origin[1] + scale * (tile.box[1] + (OVERLAP if tile.box[1] > low else 0.0)) + 1.2,
        )
        marks.append(Label(Role.TEXT, str(number), at, _NUMBER, Anchor.END, bold=True))
    room = _CELL[0] - 2.0 * _CELL_PAD
    last = one.first + len(tiles) - 1
    sheets = f"sheet {one.first}" if last == one.first else f"sheets {one.first} to {last}"
    told = (
        f"{template.name} {template.title}: {amounts(template.uses)}",
        f"{template.part.material}, {sheets}",
        "; ".join(served(template.uses)),
    )
    y = corner[1] + _CAPTION - _CAPTION_AIR
    for k, words in enumerate(told):
        rows, height = fitted_lines(
            in_words(in_units(words, layout.shown), layout.words), room, _TEXT, k == 0, _MOST_LINES
        )
        for line in rows:
            y -= PITCH * height
            marks.append(Label(Role.TEXT, line, (corner[0] + _CELL_PAD, y), height, bold=k == 0))
    return marks
