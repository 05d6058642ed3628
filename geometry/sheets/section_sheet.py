"""One section of the bench beside a small view in which its plane shows and can be moved.

Frame: sheet mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product

import numpy as np

from geometry.bench.bench import Bench
from geometry.design.cutting_plane import Plane
from geometry.drawing.marks import Anchor, Label, Mark, Role
from geometry.drawing.text_box import TextBox
from geometry.primitives.frame import Vec2, Vec3, dot
from geometry.sheets.label_spots import Spot, spots_of
from geometry.sheets.layout import Layout, Room, scale_text
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.lettering_fit import wrapped
from geometry.sheets.name_list import name_list, not_seen
from geometry.sheets.numbering import Numbering
from geometry.sheets.part_labels import Named, label_marks, named
from geometry.sheets.picked_place import ring
from geometry.sheets.plane_line import LARGER
from geometry.sheets.section_key import (
    CAPTION,
    Marked,
    SectionKey,
    captioned,
    fitted,
    key_lines,
    section_key,
)
from geometry.sheets.section_marks import section_marks, visible_lines
from geometry.sheets.section_plane import reach_of, told, view_of
from geometry.sheets.text_block import NO_TEXT, PITCH, TextBlock, paragraph
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.views.linework import Linework
from geometry.views.sections import Section, section
from shared.lettering import text_width
from shared.units import in_units
from shared.words import in_words

_KEY_SHARE = 0.3  # of the sheet's width, or of its height, for the small view
_KEY_SHARES = (_KEY_SHARE, 0.4, 0.5)  # of a page, where scales go by steps
_BESIDE, _ABOVE = 22.0, 8.0  # mm round the section, for names
_IN_PLANE = 0.5  # mm
_MANY = 30  # parts of a bench: more names than this would hide its sections
_AIR = 5.0  # mm between the list of names, or a sentence, and what is beside it
_UNDER_KEY, _BESIDE_KEY = 20.0, 16.0  # mm off the small view, clear of its letters and caption
_FOOT = 12.0  # mm under the small view, kept for a sentence that fits nowhere else
_NARROW = 45.0  # mm: too narrow for a sentence
_SMALLEST = 1.8  # mm, letters of a long sentence; the least of ISO 3098
_OVER = 2.0  # mm between a section and its letters
ON_SCREEN = Marked()


@dataclass(frozen=True, slots=True, eq=False)
class SectionSheet:
    """The marks, the small view in which the plane can be taken hold of, and the section with the
    scale and the origin at which it is drawn; ``tells_unseen`` where it has room for a sentence on
    what the section does not show."""

    marks: tuple[Mark, ...]
    key: SectionKey
    cut: Section
    scale: float
    origin: Vec2
    labels: tuple[Named, ...]
    tells_unseen: bool


@dataclass(frozen=True, slots=True, eq=False)
class _Naming:
    """What the parts are called in the section, and the list of names at the right, if any."""

    texts: Sequence[str]
    numbering: Numbering | None
    key: TextBlock

    @property
    def aside(self) -> float:
        """mm that the list takes."""
        return self.key.width + _AIR if self.key.lines else 0.0


def section_sheet(
    bench: Bench,
    plane: Plane,
    layout: Layout,
    picked: Vec3 | None = None,
    *,
    with_names: bool = True,
    marked: Marked = ON_SCREEN,
    key_share: float = _KEY_SHARE,
) -> SectionSheet:
    """The bench cut by a plane, which is brought within the bench's reach; a ring goes round the
    point that is picked out, in the small view, and in the section if it lies in the plane.

    ``key_share`` of the sheet is for the small view.  Finding places for the names takes longer
    than all else: a hand that moves goes without.
    """
    how = _How(layout, marked, key_share, with_names=with_names)
    return _sheet(_cut_through(bench, plane), how, picked)


@dataclass(frozen=True, slots=True, eq=False)
class _CutThrough:
    """A bench and its plane, what this leaves of it, the lines of the small view, and the bounds of
    the whole bench seen square at the unturned plane."""

    bench: Bench
    plane: Plane
    cut: Section
    key_lines: Linework
    whole: Room


def _cut_through(bench: Bench, plane: Plane) -> _CutThrough:
    low, high = reach_of(bench, plane.way, plane.turn)
    plane = replace(plane, at=min(max(plane.at, low), high))
    view = view_of(bench, plane.way, plane.turn)
    cut = section(bench.parts, view, plane.at * dot(view.toward, plane.normal))
    square = view_of(bench, plane.way, 0.0)
    points = np.concatenate([placed(part).vertices for part in bench.parts])
    flat = points @ np.array((square.right, square.up)).T
    (left, bottom), (right, top) = flat.min(axis=0).tolist(), flat.max(axis=0).tolist()
    return _CutThrough(bench, plane, cut, key_lines(bench, plane), (left, bottom, right, top))


@dataclass(frozen=True, slots=True)
class _How:
    """How a section is put on a sheet."""

    layout: Layout
    marked: Marked
    key_share: float
    with_names: bool


def _sheet(one: _CutThrough, how: _How, picked: Vec3 | None = None) -> SectionSheet:
    bench, plane, layout = one.bench, one.plane, how.layout
    naming = _naming(bench, layout)
    room = _less(layout.room, naming.aside)
    for_key, for_section, foot = _rooms(one.whole, room, how.key_share)
    key_marks, key = section_key(bench, plane, one.key_lines, (for_key, layout), how.marked)
    titled = (how.marked, told(bench, plane))
    shown, labels, drawn = _section(
        bench, one.cut, naming if how.with_names else None, (for_section, layout), titled
    )
    marks = [*key_marks, *shown]
    unseen: tuple[Mark, ...] = ()
    if how.with_names:
        _, _, right, top = layout.room
        marks += naming.key.marks((right - naming.key.width, top))
        unseen = _told_aside(bench, one.cut, naming, drawn[0], (key, for_key, foot, layout))
    marks += unseen
    if picked is not None:
        marks.append(ring(picked, key.view, key.place.scale, key.place.origin))
        if abs(dot(picked, plane.normal) - plane.at) < _IN_PLANE:
            marks.append(ring(picked, one.cut.view, *drawn))
    return SectionSheet(tuple(marks), key, one.cut, *drawn, labels, bool(unseen))


def section_leaf(bench: Bench, plane: Plane, layout: Layout, letter: str) -> Leaf | None:
    """A page with the bench cut by a plane, its sheet lying or upright, whichever shows it larger
    and then names more of its parts; None where the plane goes through nothing of the bench."""
    low, high = reach_of(bench, plane.way, plane.turn)
    if not low < plane.at < high:
        return None
    one = _cut_through(bench, plane)
    if not one.cut.faces:
        return None
    marked = Marked(letter, by_hand=False)
    hows = [
        _How(way, marked, share, with_names=False)
        for way, share in product((layout, turned_upright(layout)), _KEY_SHARES)
    ]
    bare = [_sheet(one, how) for how in hows]
    scales = [(sheet.scale, sheet.key.place.scale) for sheet in bare]
    largest = [how for how, own in zip(hows, scales, strict=True) if own == max(scales)]
    pages = [(_sheet(one, replace(how, with_names=True)), how.layout) for how in largest]
    found, way = max(pages, key=lambda page: (len(page[0].labels), page[0].tells_unseen))
    title = in_words(f"Section {letter}–{letter}", way.words)
    return Leaf("Section drawing", title, None, found.marks, way)


def _naming(bench: Bench, layout: Layout) -> _Naming:
    """Names; numbers where the bench has so many parts that names would hide its sections.

    It goes by the whole bench, as its rooms do.
    """
    if len(bench.parts) <= _MANY:
        texts = [in_words(part.title, layout.words) for part in bench.parts]
        return _Naming(texts, None, NO_TEXT)
    numbering = Numbering(bench.parts)
    rows = numbering.rows(range(len(bench.parts)), layout.words)
    _, bottom, _, top = layout.room
    return _Naming(numbering.texts, numbering, name_list(rows, layout, top - bottom))


def _less(room: Room, aside: float) -> Room:
    """A room without a strip at its right."""
    left, bottom, right, top = room
    return (left, bottom, right - aside, top)


def _told_aside(
    bench: Bench,
    cut: Section,
    naming: _Naming,
    scale: float,
    where: tuple[SectionKey, Room, Room, Layout],
) -> tuple[Mark, ...]:
    """What the section does not show, told under the small view or beside it."""
    key, (left, bottom, right, top), foot, layout = where
    shown = {one.index for one in _spots(cut, scale)}
    listed = naming.numbering.listed(range(len(bench.parts))) if naming.numbering else ()
    sentence = not_seen(bench.parts, shown, layout.words, listed)
    points = key.edges.reshape(-1, 2) * key.place.scale + np.array(key.place.origin)
    (low_x, low_y), (high_x, _) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
    under = (left, bottom + CAPTION, right, low_y - _UNDER_KEY)
    beside = ((high_x + _BESIDE_KEY, bottom, right, top), (left, bottom, low_x - _BESIDE_KEY, top))
    for height in (layout.lettering, _SMALLEST):
        for x0, y0, x1, y1 in (under, *beside, foot) if sentence else ():
            text = paragraph([sentence], x1 - x0 - _AIR, height) if x1 - x0 > _NARROW else NO_TEXT
            if text.lines and text.height <= y1 - y0:
                return text.marks((x0, y1))
    return ()


def _rooms(whole: Room, room: Room, share: float) -> tuple[Room, Room, Room]:
    """Room for the small view and for the section: beside it or below, as the section gets larger;
    and at the foot under a small view that stands beside.

    It goes by the whole bench, so that nothing changes places while the plane is pulled.
    """
    left, bottom, right, top = room
    middle = left + share * (right - left)
    below = top - share * (top - bottom)
    raised = bottom + _FOOT
    foot = (left, bottom, middle, raised)
    beside = (left, raised, middle, top), (middle, bottom, right, top), foot
    over = (left, below, right, top), (left, bottom, right, below), (left, below, right, below)

    def size(rooms: tuple[Room, Room, Room]) -> float:
        return fitted(whole, captioned(rooms[1]), (_BESIDE, _ABOVE))[0]

    return max((beside, over), key=size)


def _section(
    bench: Bench,
    cut: Section,
    naming: _Naming | None,
    where: tuple[Room, Layout],
    titled: tuple[Marked, str],
) -> tuple[list[Mark], tuple[Named, ...], tuple[float, Vec2]]:
    """Its marks, its labels, and the scale and the origin at which it is drawn."""
    (left, bottom, right, _), layout = where
    marked, told = titled
    lines = visible_lines(cut.linework)
    height = layout.lettering
    room = captioned(where[0])
    air = (_BESIDE, _ABOVE)
    scale, origin = fitted(lines.bounds(), room, air, by_steps=not marked.by_hand)
    large = LARGER * height
    title, over = _title(marked.letter, lines.bounds(), scale, large)
    labels = _labels(cut, lines.segments, naming, (scale, origin, room, height), over)
    marks = section_marks(cut, bench.parts, scale, origin, [one.box for one in labels])
    marks += label_marks(labels, origin, height)
    x, y = over.baseline_middle(large)
    at = (x + origin[0], y + origin[1])
    marks.append(Label(Role.TITLE, title, at, large, Anchor.MIDDLE, bold=True))
    if not marked.by_hand:
        told = f"{told}, {scale_text(scale)}"
    caption = in_words(in_units(told, layout.shown), layout.words)
    # Wider than the section's room it runs over to the left, where only the small view is.
    pitch = PITCH * height
    rows = wrapped(caption, right - layout.room[0], height)
    y = bottom + (CAPTION - height + pitch * (len(rows) - 1)) / 2.0
    for k, row in enumerate(rows):
        middle = min((left + right) / 2.0, right - text_width(row, height) / 2.0)
        marks.append(Label(Role.TITLE, row, (middle, y - pitch * k), height, Anchor.MIDDLE))
    return marks, labels, (scale, origin)


def _title(letter: str, bounds: Room, scale: float, height: float) -> tuple[str, TextBox]:
    """The letters of a section, and the room that they take over it, about its own origin."""
    u0, _, u1, v1 = (c * scale for c in bounds)
    text = f"{letter}–{letter}"
    middle = ((u0 + u1) / 2.0, v1 + _OVER + height / 2.0)
    return text, TextBox.about(middle, text_width(text, height, bold=True), height)


def _labels(
    cut: Section,
    lines: Floats,
    naming: _Naming | None,
    where: tuple[float, Vec2, Room, float],
    title: TextBox,
) -> tuple[Named, ...]:
    scale, (x, y), (left, bottom, right, top), height = where
    if not len(lines) or naming is None:
        return ()
    spots = _spots(cut, scale)
    if naming.numbering is not None:
        spots = naming.numbering.to_label(spots)
    room = (left - x, bottom - y, right - x, top - y)
    return named(naming.texts, spots, lines * scale, height, room, [title])


@lru_cache(maxsize=2)
def _spots(cut: Section, scale: float) -> tuple[Spot, ...]:
    """Where each part is seen, on the sheet about the section's origin."""
    owners = [owner for owner, _ in cut.left]
    lines = visible_lines(cut.linework).segments
    found = spots_of([part for _, part in cut.left], cut.view, lines, owners)
    return tuple(one.scaled(scale) for one in found if one.shows(scale))
