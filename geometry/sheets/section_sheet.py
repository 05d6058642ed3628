"""One section of the bench beside a small view in which its plane shows and can be moved.

Frame: sheet mm; the place of a plane is a bench coordinate in mm: x across the length, y across the
depth, z level.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise

import numpy as np

from geometry.bench.bench import Bench
from geometry.drawing.marks import Anchor, Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2, Vec3
from geometry.sheets.arrangement import ViewPlace, linework_marks
from geometry.sheets.layout import Layout, Room
from geometry.sheets.part_labels import Named, label_marks, named, spots_of
from geometry.sheets.picked_place import ring
from geometry.sheets.section_marks import section_marks, visible_lines
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.views.bench_views import end_view
from geometry.views.linework import Linework
from geometry.views.look import look_all
from geometry.views.sections import Section, section
from geometry.views.view import FRONT, PLAN, View
from shared.units import in_units, length_mark
from shared.words import in_words

_KEY_SHARE = 0.3  # of the sheet's width, or of its height, for the small view
_BESIDE, _ABOVE = 22.0, 8.0  # mm round the section, for names
_CAPTION = 8.0
_IN_PLANE = 0.5  # mm
_BEYOND, _HEAVY = 4.0, 2.5  # mm of the plane's line beyond the view, and of its wide ends


class Way(Enum):
    """How the plane stands; the value is its axis."""

    ACROSS = 0  # square to the length
    ALONG = 1  # square to the depth
    LEVEL = 2


@dataclass(frozen=True, slots=True, eq=False)
class SectionSheet:
    """The marks; where the small view stands; and how far the plane can go.

    In the small view the plane is a line square to its u (``key_axis`` 0) or v (1), at
    ``key_sign`` times the plane's place.
    """

    marks: tuple[Mark, ...]
    key: ViewPlace
    key_axis: int
    key_sign: float
    limits: tuple[float, float]

    def place_at(self, sheet_point: Vec2) -> float:
        """Where the plane would stand that goes through a point of the sheet, within its limits."""
        at = self.key.in_view(sheet_point)[self.key_axis] * self.key_sign
        low, high = self.limits
        return min(max(at, low), high)

    def in_key(self, sheet_point: Vec2) -> bool:
        """Whether a point of the sheet belongs to the small view."""
        left, bottom, right, top = self.key.room
        return left <= sheet_point[0] <= right and bottom <= sheet_point[1] <= top


def reach_of(bench: Bench, way: Way) -> tuple[float, float]:
    """From where to where a plane meets the bench."""
    solids = [placed(part) for part in bench.parts]
    low = min(float(solid.low[way.value]) for solid in solids)
    high = max(float(solid.high[way.value]) for solid in solids)
    return low, high


def section_sheet(
    bench: Bench, way: Way, place: float, layout: Layout, picked: Vec3 | None = None
) -> SectionSheet:
    """The bench cut at ``place``, which is brought within the bench's reach; a ring goes round the
    point that is picked out, in the small view, and in the section if it lies in the plane."""
    limits = reach_of(bench, way)
    place = min(max(place, limits[0]), limits[1])
    view = _view_of(bench, way)
    at = place * view.toward[way.value]
    cut = section(bench.parts, view, at)
    for_key, for_section = _rooms(bench, view, layout)
    key_marks, key, axis, sign = _key(bench, way, place, (for_key, layout))
    shown, drawn = _section(bench, cut, (for_section, layout), _told(way, place, limits))
    marks = [*key_marks, *shown]
    if picked is not None:
        marks.append(ring(picked, _key_view_of(bench, way), key.scale, key.origin))
        if abs(picked[way.value] - place) < _IN_PLANE:
            marks.append(ring(picked, view, *drawn))
    return SectionSheet(tuple(marks), key, axis, sign, limits)


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
        return _fitted(bounds, _captioned(rooms[1]), (_BESIDE, _ABOVE))[0]

    return max((beside, over), key=size)


def _captioned(room: Room) -> Room:
    """Without the strip for a caption at its foot."""
    left, bottom, right, top = room
    return (left, bottom + _CAPTION, right, top)


def _view_of(bench: Bench, way: Way) -> View:
    return {Way.ACROSS: end_view(bench), Way.ALONG: FRONT, Way.LEVEL: PLAN}[way]


def _key_view_of(bench: Bench, way: Way) -> View:
    return end_view(bench) if way is Way.ALONG else FRONT


def _told(way: Way, place: float, limits: tuple[float, float]) -> str:
    if way is Way.ACROSS:
        return f"Cut across, {length_mark(place - limits[0])} from the left end"
    if way is Way.ALONG:
        return f"Cut along, {length_mark(limits[1] - place)} in front of the back"
    return f"Cut level, {length_mark(place)} above the floor"


def _key(
    bench: Bench, way: Way, place: float, where: tuple[Room, Layout]
) -> tuple[list[Mark], ViewPlace, int, float]:
    """The small view with the line of the plane."""
    room, layout = where
    view = _key_view_of(bench, way)
    (linework,) = look_all(bench.parts, (view,))
    lines = visible_lines(linework)
    scale, origin = _fitted(lines.bounds(), _captioned(room), (2.0 * _BEYOND, 1.5 * _BEYOND))
    owners = tuple(f"part:{part.name}" for part in bench.parts)
    marks = linework_marks(lines, scale, origin, owners)
    axis = 1 if way is Way.LEVEL else 0
    toward: Vec3 = view.up if axis == 1 else view.right
    sign = float(toward[way.value])
    marks += _plane_marks(lines, scale, origin, (axis, sign * place))
    words = in_words("Pull the line", layout.words)
    u0, v0, u1, _ = (c * scale for c in lines.bounds())
    at = (origin[0] + (u0 + u1) / 2.0, origin[1] + v0 - 2.0 * _BEYOND - layout.lettering)
    marks.append(Label(Role.TITLE, words, at, layout.lettering, Anchor.MIDDLE))
    return marks, ViewPlace(view.name, scale, origin, room), axis, sign


def _plane_marks(
    lines: Linework, scale: float, origin: Vec2, plane: tuple[int, float]
) -> list[Mark]:
    axis, at = plane
    bounds = lines.bounds()
    low = bounds[1 - axis] * scale - _BEYOND
    high = bounds[3 - axis] * scale + _BEYOND
    stations = (low, low + _HEAVY, high - _HEAVY, high)
    points = [(at * scale, s) if axis == 0 else (s, at * scale) for s in stations]
    runs = np.array([(*a, *b) for a, b in pairwise(points)])
    runs += np.array(origin * 2)
    return [Strokes(Role.CENTRE, runs[1:2]), Strokes(Role.VISIBLE, runs[(0, 2), :])]


def _section(
    bench: Bench, cut: Section, where: tuple[Room, Layout], told: str
) -> tuple[list[Mark], tuple[float, Vec2]]:
    """Its marks, and the scale and the origin at which it is drawn."""
    (left, bottom, right, _), layout = where
    lines = visible_lines(cut.linework)
    height = layout.lettering
    room = _captioned(where[0])
    scale, origin = _fitted(lines.bounds(), room, (_BESIDE, _ABOVE))
    names = [in_words(part.title, layout.words) for part in bench.parts]
    labels = _labels(cut, lines.segments, names, (scale, origin, room, height))
    marks = section_marks(cut, bench.parts, scale, origin, [one.box for one in labels])
    marks += label_marks(labels, origin, height)
    caption = in_words(in_units(told, layout.shown), layout.words)
    at = ((left + right) / 2.0, bottom + _CAPTION / 2.0 - height / 2.0)
    return [*marks, Label(Role.TITLE, caption, at, height, Anchor.MIDDLE)], (scale, origin)


def _labels(
    cut: Section,
    lines: Floats,
    names: Sequence[str],
    where: tuple[float, Vec2, Room, float],
) -> tuple[Named, ...]:
    scale, (x, y), (left, bottom, right, top), height = where
    if not len(lines):
        return ()
    spots = spots_of([part for _, part in cut.left], cut.view, lines)
    owners = [owner for owner, _ in cut.left]
    on_sheet = [
        replace(s, index=owners[s.index], point=(s.point[0] * scale, s.point[1] * scale))
        for s in spots
    ]
    room = (left - x, bottom - y, right - x, top - y)
    return named(names, on_sheet, lines * scale, height, room)


def _fitted(bounds: Room, room: Room, air: Vec2) -> tuple[float, Vec2]:
    """The scale at which a view fills a room but for the air round it, and its origin there."""
    left, bottom, right, top = room
    u0, v0, u1, v1 = bounds
    scale = min(
        (right - left - 2.0 * air[0]) / max(u1 - u0, 1.0),
        (top - bottom - 2.0 * air[1]) / max(v1 - v0, 1.0),
    )
    scale = max(scale, 1e-3)
    return scale, (
        (left + right - scale * (u0 + u1)) / 2.0,
        (bottom + top - scale * (v0 + v1)) / 2.0,
    )
