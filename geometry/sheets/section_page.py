"""The page with both sections of the bench, one above the other, every part named that they show.

Frame: sheet mm.

Where there are too many parts for their names, these have numbers, and the names stand in a list.
What a section does not show is told in a sentence under it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.drawing.shifting import shifted
from geometry.primitives.frame import Vec2
from geometry.sheets.cross_sections import LETTERS, Cut, cross_sections
from geometry.sheets.filling import centred
from geometry.sheets.label_spots import Spot
from geometry.sheets.layout import Layout
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.numbering import Numbering
from geometry.sheets.part_labels import Named, label_marks, named
from geometry.sheets.plane_line import LARGER, Letter, line_marks
from geometry.sheets.section_marks import section_marks, visible_lines
from geometry.sheets.section_plan import Band, ListAt, Plan, plan
from shared.words import in_words

_MANY = 18  # names in one section: more would hide it
_BEYOND = 5.0  # mm that the other section's line runs past the drawing
_FAR = 45.0  # mm: a longer leader is worse than a number


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """A section in its place: where the (0, 0) of its view stands, and its labels about that."""

    cut: Cut
    scale: float
    origin: Vec2
    labels: tuple[Named, ...]


@dataclass(frozen=True, slots=True, eq=False)
class SectionPage:
    """Both sections, and all marks of the page."""

    layout: Layout
    shown: tuple[Shown, ...]
    marks: tuple[Mark, ...]


def cross_section_leaf(bench: Bench, layout: Layout, letters: tuple[str, str] = LETTERS) -> Leaf:
    """The page, its sheet lying or upright, whichever shows the sections larger."""
    page = section_page(bench, layout, letters)
    title = in_words("Sections", layout.words)
    return Leaf("Section drawing", title, None, page.marks, page.layout)


def section_page(bench: Bench, layout: Layout, letters: tuple[str, str] = LETTERS) -> SectionPage:
    """Both sections with names; with numbers where there are too many for them."""
    cuts = cross_sections(bench, letters)
    ways = (layout, turned_upright(layout))
    plain = max((plan(cuts, bench.parts, way) for way in ways), key=Plan.worth)
    if max(len(band.spots) for band in plain.bands) <= _MANY:
        page = _drawn(plain, bench.parts)
        labels = [label for one in page.shown for label in one.labels]
        whole = len(labels) == sum(len(band.spots) for band in plain.bands)
        if whole and max(label.length for label in labels) <= _FAR:
            return page
    seen = [[spot.index for spot in band.spots] for band in plain.bands]
    listed = (plan(cuts, bench.parts, way, at, seen) for way in ways for at in ListAt)
    return _drawn(max(listed, key=Plan.worth), bench.parts)


def _drawn(plan: Plan, parts: Sequence[Part]) -> SectionPage:
    """The page as planned."""
    numbering, numbered = Numbering(tuple(parts)), bool(plan.names.lines)
    names = [in_words(part.title, plan.layout.words) for part in parts]
    texts = numbering.texts if numbered else names
    marks = list(plan.names.marks(plan.corner))
    shown: list[Shown] = []
    for band in plan.bands:
        spots = numbering.to_label(band.spots) if numbered else band.spots
        one, more = _in_band(band, parts, (texts, spots), plan.layout)
        shown.append(one)
        marks += more
    return SectionPage(plan.layout, tuple(shown), tuple(marks))


def _in_band(
    band: Band,
    parts: Sequence[Part],
    told: tuple[Sequence[str], Sequence[Spot]],
    layout: Layout,
) -> tuple[Shown, list[Mark]]:
    """A section in its band of the page, with its names, its caption and the other's trace."""
    cut, scale, height = band.cut, band.scale, layout.lettering
    left, bottom, right, top = band.room
    u0, v0, u1, v1 = (c * scale for c in cut.bounds)
    x, y = origin = centred(cut.bounds, scale, band.room)
    u, letter = cut.trace * scale, Letter(cut.other, LARGER * height)
    ends = ((u, v0 - _BEYOND), (u, v1 + _BEYOND))
    trace = line_marks(ends, (cut.sight, 0.0), letter, (u0, v0, u1, v1), by_hand=False)
    lines = visible_lines(cut.section.linework).segments * scale
    texts, spots = told
    labels = named(
        texts,
        [one.scaled(scale) for one in spots],
        np.concatenate([lines, *(one.segments for one in trace if isinstance(one, Strokes))]),
        height,
        (left - x, bottom - y, right - x, top - y),
        [letter.room_of(one) for one in trace if isinstance(one, Label)],
    )
    middle = x + (u0 + u1) / 2.0
    caption = Label(Role.TITLE, band.caption, (middle, band.caption_at), height, Anchor.MIDDLE)
    marks: list[Mark] = [
        *section_marks(cut.section, parts, scale, origin, [one.box for one in labels]),
        *(shifted(mark, origin) for mark in trace),
        caption,
        *label_marks(labels, origin, height),
        *band.sentence.marks((max(left, middle - band.sentence.width / 2.0), band.sentence_at)),
    ]
    return Shown(cut, scale, origin, labels), marks
