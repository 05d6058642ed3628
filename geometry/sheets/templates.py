"""Full-size templates: an overview, then every template on as many sheets as it takes.

A sheet of paper proves itself: on each stand a 100 mm and a 4 in square to be measured before
anything is cut.  A printer that is a little off is corrected, along each edge of the paper by a
factor of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import count, product

from geometry.bench.bench import Bench
from geometry.drawing.marks import Anchor, Label, Mark, Role, Sheet
from geometry.sheets.layout import Layout
from geometry.sheets.lettering_fit import fitted
from geometry.sheets.printer import Edges, check_correction
from geometry.sheets.template import Template, templates_of
from geometry.sheets.template_overview import (
    Numbered,
    nothing_to_trace,
    overview,
    pages_needed,
)
from geometry.sheets.template_sheet import seams, square_cost, tile_marks
from geometry.sheets.template_words import amounts, other_words, printed_words
from geometry.sheets.tiles import MARGIN, STRIP, Tiling
from shared.lettering import text_width
from shared.units import in_units
from shared.words import in_words

_TEXT = 2.5
_FOOT_PITCH = 4.0  # mm
_APART = 4.0  # mm between two texts of one line
_LEGEND = "Full lines cut, dashed lines scribe, chain lines trim after the glue-up."
_OTHERWISE = "It serves for other pieces too, laid otherwise: see the first pages."
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # no I and O, which read as figures


def templates(bench: Bench, layout: Layout, correction: Edges = (1.0, 1.0)) -> tuple[Sheet, ...]:
    """The overview and all sheets; the overview alone says so when nothing is worth tracing.

    ``correction`` stretches along the long and the short edge of the paper: nominal over measured
    size of a printed check square.  Raises ValueOutOfRange beyond 3 %.
    """
    check_correction(correction)
    found = [
        replace(template, title=in_words(template.title, layout.words))
        for template in templates_of(bench, layout.paper, correction, layout.style)
    ]
    if not found:
        return (nothing_to_trace(layout),)
    chosen = [(template, _better_way(template)) for template in found]
    pages = pages_needed(len(chosen), layout)
    numbered: list[Numbered] = []
    first = pages + 1
    for template, way in chosen:
        numbered.append(Numbered(template, way, first))
        first += len(way.tiles)
    total = first - 1
    sheets = list(overview(numbered, layout, total, correction))
    assert len(sheets) == pages
    letters = _letters()
    for one in numbered:
        joins = seams(one.template, one.tiling, letters)
        for offset, tile in enumerate(one.tiling.tiles):
            number = one.first + offset
            marks = tile_marks(one.template, one.tiling, tile, joins[tile], layout.shown)
            foot = _foot(one, number, total, layout)
            title = in_words(f"{one.template.title} ({one.template.name}), {number}", layout.words)
            sheets.append(Sheet(title, one.tiling.width, one.tiling.height, (*marks, *foot)))
    return tuple(sheets)


def _better_way(template: Template) -> Tiling:
    """Fewer sheets; with as many, the way that leaves the check squares most room."""
    fewest = [way for way in template.ways if len(way.tiles) == len(template.ways[0].tiles)]
    costs: list[float] = []
    for way in fewest:
        costs.append(square_cost(template, way))
        if costs[-1] <= 0.0:
            break
    return fewest[costs.index(min(costs))]


def _letters() -> Iterator[str]:
    """A, B … Z without I and O, then AA, AB …"""
    yield from _LETTERS
    for size in count(2):
        yield from ("".join(letters) for letters in product(_LETTERS, repeat=size))


def _foot(one: Numbered, number: int, total: int, layout: Layout) -> list[Mark]:
    """The words along the foot of a sheet; they keep their place whatever the correction."""
    room = one.tiling.width - 2.0 * MARGIN
    x, y = one.tiling.correction
    project = layout.title.title if layout.title else ""
    uses = one.template.uses
    # Where it serves otherwise too, what the lines mean is told in the overview alone.
    others = " ".join(other_words(uses)) or _LEGEND
    if fitted(_said(others, layout), room, _TEXT)[0] != _said(others, layout):
        others = _OTHERWISE
    lines = (
        f"{one.template.name} {one.template.title}: {amounts(uses)}",
        printed_words(uses),
        others,
        "Full size: print at 100 %, no fit. Measure before you cut: the squares must be 100.0 mm "
        f"and 4 in both ways. Correction x {x:.4f}, y {y:.4f}.",
    )
    sheet = ", ".join(part for part in (project, f"{number} / {total}") if part)
    sheet, high = fitted(sheet, 0.3 * room, _TEXT)
    beside = room - text_width(sheet, high) - _APART
    marks: list[Mark] = []
    for k, line in enumerate(lines):
        text, height = fitted(_said(line, layout), room if k else beside, _TEXT, bold=k == 0)
        at = (MARGIN, MARGIN + STRIP - (k + 1) * _FOOT_PITCH)
        marks.append(Label(Role.TEXT, text, at, height, bold=k == 0))
    at = (one.tiling.width - MARGIN, MARGIN + STRIP - _FOOT_PITCH)
    marks.append(Label(Role.TEXT, sheet, at, high, Anchor.END))
    return marks


def _said(line: str, layout: Layout) -> str:
    return in_words(in_units(line, layout.shown), layout.words)
