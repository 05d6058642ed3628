"""One section of the bench beside a small view in which its plane shows and can be moved.

Frame: sheet mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from geometry.bench.bench import Bench
from geometry.drawing.marks import Anchor, Label, Mark, Role
from geometry.primitives.frame import Vec2, Vec3, dot
from geometry.sheets.layout import Layout, Room
from geometry.sheets.part_labels import Named, label_marks, named, spots_of
from geometry.sheets.picked_place import ring
from geometry.sheets.section_key import CAPTION, SectionKey, captioned, fitted, section_key
from geometry.sheets.section_marks import section_marks, visible_lines
from geometry.sheets.section_plane import Plane, reach_of, told, view_of
from geometry.solids.solid import Floats
from geometry.views.look import look_all
from geometry.views.sections import Section, section
from geometry.views.view import View
from shared.units import in_units
from shared.words import in_words

_KEY_SHARE = 0.3  # of the sheet's width, or of its height, for the small view
_BESIDE, _ABOVE = 22.0, 8.0  # mm round the section, for names
_IN_PLANE = 0.5  # mm


@dataclass(frozen=True, slots=True, eq=False)
class SectionSheet:
    """The marks, and the small view in which the plane can be taken hold of."""

    marks: tuple[Mark, ...]
    key: SectionKey


def section_sheet(
    bench: Bench,
    plane: Plane,
    layout: Layout,
    picked: Vec3 | None = None,
    *,
    with_names: bool = True,
) -> SectionSheet:
    """The bench cut by a plane, which is brought within the bench's reach; a ring goes round the
    point that is picked out, in the small view, and in the section if it lies in the plane.

    Finding places for the names takes longer than all else: a hand that moves goes without.
    """
    low, high = reach_of(bench, plane.way, plane.turn)
    plane = replace(plane, at=min(max(plane.at, low), high))
    view = view_of(bench, plane.way, plane.turn)
    cut = section(bench.parts, view, plane.at * dot(view.toward, plane.normal))
    for_key, for_section = _rooms(bench, view_of(bench, plane.way, 0.0), layout)
    key_marks, key = section_key(bench, plane, for_key, layout)
    names = [in_words(part.title, layout.words) for part in bench.parts] if with_names else []
    shown, drawn = _section(bench, cut, names, (for_section, layout), told(bench, plane))
    marks = [*key_marks, *shown]
    if picked is not None:
        marks.append(ring(picked, key.view, key.place.scale, key.place.origin))
        if abs(dot(picked, plane.normal) - plane.at) < _IN_PLANE:
            marks.append(ring(picked, view, *drawn))
    return SectionSheet(tuple(marks), key)


def _rooms(bench: Bench, view: View, layout: Layout) -> tuple[Room, Room]:
    """Room for the small view and for the section: beside it or below, as the section gets larger.

    It goes by the whole bench, so that nothing changes places while the plane is pulled.
    """
    left, bottom, right, top = layout.room
    middle = left + _KEY_SHARE * (right - left)
    below = top - _KEY_SHARE * (top - bottom)
    beside = (left, bottom, middle, top), (middle, bottom, right, top)
    over = (left, below, right, top), (left, bottom, right, below)
    (linework,) = look_all(bench.parts, (view,))
    bounds = linework.bounds()

    def size(rooms: tuple[Room, Room]) -> float:
        return fitted(bounds, captioned(rooms[1]), (_BESIDE, _ABOVE))[0]

    return max((beside, over), key=size)


def _section(
    bench: Bench, cut: Section, names: Sequence[str], where: tuple[Room, Layout], told: str
) -> tuple[list[Mark], tuple[float, Vec2]]:
    """Its marks, and the scale and the origin at which it is drawn."""
    (left, bottom, right, _), layout = where
    lines = visible_lines(cut.linework)
    height = layout.lettering
    room = captioned(where[0])
    scale, origin = fitted(lines.bounds(), room, (_BESIDE, _ABOVE))
    labels = _labels(cut, lines.segments, names, (scale, origin, room, height))
    marks = section_marks(cut, bench.parts, scale, origin, [one.box for one in labels])
    marks += label_marks(labels, origin, height)
    caption = in_words(in_units(told, layout.shown), layout.words)
    at = ((left + right) / 2.0, bottom + CAPTION / 2.0 - height / 2.0)
    return [*marks, Label(Role.TITLE, caption, at, height, Anchor.MIDDLE)], (scale, origin)


def _labels(
    cut: Section,
    lines: Floats,
    names: Sequence[str],
    where: tuple[float, Vec2, Room, float],
) -> tuple[Named, ...]:
    scale, (x, y), (left, bottom, right, top), height = where
    if not len(lines) or not names:
        return ()
    spots = spots_of([part for _, part in cut.left], cut.view, lines)
    owners = [owner for owner, _ in cut.left]
    on_sheet = [
        replace(s, index=owners[s.index], point=(s.point[0] * scale, s.point[1] * scale))
        for s in spots
    ]
    room = (left - x, bottom - y, right - x, top - y)
    return named(names, on_sheet, lines * scale, height, room)
