"""The whole bench in a pictorial view and taken apart, each part with its name.

Frame: sheet mm; figures about their view's own origin until they are placed.

A pictorial is drawn as large as its page allows and states no scale, as nobody measures one.  Of
the views from the two front corners, and of a sheet lying or upright, the one is taken that shows
the most parts, and those largest.  Where there is no room for so many names near their parts, these
have numbers and the names stand in a list.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.drawing.marks import Mark, Role, Strokes
from geometry.primitives.frame import Vec2, Vec3, add, subtract
from geometry.sheets.arrangement import linework_marks
from geometry.sheets.layout import Layout, Room
from geometry.sheets.leaf import Leaf, standing
from geometry.sheets.part_labels import Named, Spot, label_marks, named, spots_of
from geometry.sheets.picked_place import ring
from geometry.sheets.section_marks import visible_lines
from geometry.sheets.text_block import TextBlock, TextLine
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, PlacedSolid
from geometry.views.exploding import Exploded, exploded
from geometry.views.linework import Linework
from geometry.views.look import look_all
from geometry.views.parting import moved
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from geometry.views.view import View
from shared.lettering import text_width
from shared.words import in_words

_VIEWS = (FROM_RIGHT, FROM_LEFT)
_AIR = 45.0  # mm of the bench between parts drawn apart
_BESIDE = 26.0  # mm of the sheet beside a figure, for names
_ABOVE = 7.0
_SMALLER = (1.0, 0.92, 0.84, 0.76)
_MANY = 24  # parts: more names than this would hide the drawing
_FAR, _TOO_FAR = 45.0, 65.0  # mm: a longer leader loses the eye, and is worse than a number
_PITCH = 1.6  # of the letters, from line to line of the list
_SMALLEST = 1.8  # mm, letters of a long list; the least of ISO 3098
_COLUMN_AIR = 5.0
_ON = 1.0  # mm
_NOTHING: Floats = np.empty((0, 4))


@dataclass(frozen=True, slots=True, eq=False)
class Figure:
    """Parts as they stand, the lines seen of them, and others that tie them together; ``picked``
    are points that are ringed."""

    parts: tuple[Part, ...]
    linework: Linework
    ties: Floats
    spots: tuple[Spot, ...]
    picked: tuple[Vec3, ...] = ()

    @property
    def lines(self) -> Floats:
        return np.concatenate([self.linework.segments, self.ties])


@dataclass(frozen=True, slots=True, eq=False)
class WholeSheet:
    """The marks, and the figure with the scale and the origin at which it is drawn; ``layout`` is
    the way its sheet lies."""

    marks: tuple[Mark, ...]
    figure: Figure
    scale: float
    origin: Vec2
    layout: Layout


@dataclass(frozen=True, slots=True, eq=False)
class _Placed:
    """A figure at a scale with its labels about its own origin, and the list of names if any."""

    figure: Figure
    scale: float
    labels: tuple[Named, ...]
    key: TextBlock | None


def pictorial_leaf(bench: Bench, layout: Layout) -> Leaf:
    """A page with the bench in a pictorial view, its parts named."""
    found = _best(_pictorials(bench, None), (layout, standing(layout)))
    return _leaf("Pictorial view", found)


def exploded_leaf(bench: Bench, layout: Layout) -> Leaf:
    """A page with the bench taken apart, its parts named."""
    found = _best(_explosions(bench, None, ()), (layout, standing(layout)))
    return _leaf("Exploded view", found)


def pictorial_sheet(bench: Bench, layout: Layout, picked: Vec3 | None = None) -> WholeSheet:
    """The pictorial view on a sheet that cannot be turned, such as a window; a ring round what is
    picked out."""
    return _best(_pictorials(bench, picked), (layout,))


def exploded_sheet(
    bench: Bench, layout: Layout, picked: Vec3 | None = None, gathered: Sequence[str] = ()
) -> WholeSheet:
    """The bench taken apart on a sheet that cannot be turned; a ring round what is picked out, on
    each of the ``gathered`` parts that it lies on."""
    return _best(_explosions(bench, picked, gathered), (layout,))


def _leaf(title: str, found: WholeSheet) -> Leaf:
    way = found.layout
    return Leaf("Pictorial drawing", in_words(title, way.words), None, found.marks, way)


def _pictorials(bench: Bench, picked: Vec3 | None) -> list[Figure]:
    points = () if picked is None else (picked,)
    return [replace(pictorial(bench.parts, view), picked=points) for view in _VIEWS]


def _explosions(bench: Bench, picked: Vec3 | None, gathered: Sequence[str]) -> list[Figure]:
    figures = [taken_apart(bench, view) for view in _VIEWS]
    if picked is None:
        return figures
    return [replace(one, picked=_gone_along(bench, one, picked, gathered)) for one in figures]


def _gone_along(
    bench: Bench, figure: Figure, picked: Vec3, gathered: Sequence[str]
) -> tuple[Vec3, ...]:
    """Where a point of the bench is on each of these parts once they are drawn apart; of a point in
    the open, on the part that is nearest to it."""
    away = {
        k: _outside(placed(part), picked)
        for k, part in enumerate(bench.parts)
        if part.name in gathered
    }
    near = min(away.values(), default=0.0) + _ON
    return tuple(
        add(picked, subtract(figure.parts[k].frame.origin, bench.parts[k].frame.origin))
        for k, far in away.items()
        if far <= near
    )


def _outside(solid: PlacedSolid, point: Vec3) -> float:
    """How far a point is outside the box round a solid, mm."""
    beyond = np.maximum(solid.low - np.array(point), np.array(point) - solid.high)
    return float(np.linalg.norm(np.maximum(beyond, 0.0)))


def pictorial(parts: Sequence[Part], view: View) -> Figure:
    """The parts together, hidden lines left out."""
    (linework,) = look_all(parts, (view,))
    seen = visible_lines(linework)
    return Figure(tuple(parts), seen, _NOTHING, spots_of(parts, view, seen.segments))


def taken_apart(bench: Bench, view: View) -> Figure:
    """The parts of a bench drawn apart, with lines along which they go together."""
    found = exploded(bench.parts, bench.joints, view, _AIR)
    parts = tuple(moved(p, by) for p, by in zip(bench.parts, found.offsets, strict=True))
    (linework,) = look_all(parts, (view,))
    seen = visible_lines(linework)
    ties = _ties(found, parts, view)
    spots = spots_of(parts, view, np.concatenate([seen.segments, ties]))
    return Figure(parts, seen, ties, spots)


def _best(figures: Sequence[Figure], layouts: Sequence[Layout]) -> WholeSheet:
    """The marks of the figure that shows most, and the way its sheet lies."""
    ways = [(figure, way) for way in layouts for figure in figures]

    def worth(one: tuple[Figure, Layout]) -> tuple[int, float]:
        return len(one[0].spots), _fill(one[0], one[1], _key_width(one[0], one[1]))

    figure, way = max(ways, key=worth)
    shown = _placed(figure, way)
    scale, lines = shown.scale, figure.linework
    room = _beside(way.room, shown.key.width if shown.key else 0.0)
    origin = _origin(figure, scale, room)
    marks: list[Mark] = []
    if len(figure.ties):
        marks.append(Strokes(Role.CENTRE, figure.ties * scale + np.array(origin * 2)))
    owners = tuple(f"part:{part.name}" for part in figure.parts)
    marks += linework_marks(lines, scale, origin, owners)
    marks += label_marks(shown.labels, origin, way.lettering)
    if shown.key is not None:
        _, _, right, top = way.room
        marks += shown.key.marks((right - shown.key.width, top))
    marks += [ring(point, lines.view, scale, origin) for point in figure.picked]
    return WholeSheet(tuple(marks), figure, scale, origin, way)


def _placed(figure: Figure, layout: Layout) -> _Placed:
    """The figure with names; with numbers where there are too many for them."""
    names = [in_words(part.title, layout.words) for part in figure.parts]
    tries: list[_Placed] = []
    if len(figure.spots) <= _MANY:
        for smaller in _SMALLER:
            tries.append(_labelled(figure, names, smaller, layout, None))
            if _all_near(tries[-1]):
                return tries[-1]
    whole = [one for one in tries if len(one.labels) == len(figure.spots)]
    nearest = min(whole, key=_longest, default=None)
    if nearest is not None and _longest(nearest) <= _TOO_FAR:
        return nearest
    numbers = [str(index) for index in range(1, len(names) + 1)]
    key = _key(figure, layout)
    for smaller in _SMALLER[:2]:
        tries.append(_labelled(figure, numbers, smaller, layout, key))
        if _all_near(tries[-1]):
            return tries[-1]
    return max(tries, key=lambda one: (len(one.labels), -_longest(one)))


def _all_near(shown: _Placed) -> bool:
    """Whether each part has its label, and none so far off that its leader runs over others."""
    return len(shown.labels) == len(shown.figure.spots) and _longest(shown) <= _FAR


def _longest(shown: _Placed) -> float:
    return max((label.length for label in shown.labels), default=0.0)


def _labelled(
    figure: Figure, texts: Sequence[str], smaller: float, layout: Layout, key: TextBlock | None
) -> _Placed:
    width = key.width if key else 0.0
    scale = smaller * _fill(figure, layout, width)
    left, bottom, right, top = _beside(layout.room, width)
    x, y = _origin(figure, scale, (left, bottom, right, top))
    spots = [
        replace(one, point=(one.point[0] * scale, one.point[1] * scale)) for one in figure.spots
    ]
    room = (left - x, bottom - y, right - x, top - y)
    labels = named(texts, spots, figure.lines * scale, layout.lettering, room)
    return _Placed(figure, scale, labels, key)


def _fill(figure: Figure, layout: Layout, key_width: float) -> float:
    """The scale at which a figure fills its room, but for the names round it."""
    left, bottom, right, top = _beside(layout.room, key_width)
    u0, v0, u1, v1 = figure.linework.bounds()
    beside = _BESIDE if not key_width else _ABOVE
    wide = (right - left - 2.0 * beside) / max(u1 - u0, 1.0)
    return min(wide, (top - bottom - 2.0 * _ABOVE) / max(v1 - v0, 1.0))


def _beside(room: Room, key_width: float) -> Room:
    """What the list of names leaves of a room."""
    left, bottom, right, top = room
    return (left, bottom, right - (key_width + _ABOVE if key_width else 0.0), top)


def _origin(figure: Figure, scale: float, room: Room) -> tuple[float, float]:
    left, bottom, right, top = room
    u0, v0, u1, v1 = (c * scale for c in figure.linework.bounds())
    return ((left + right - u0 - u1) / 2.0, (bottom + top - v0 - v1) / 2.0)


def _key_width(figure: Figure, layout: Layout) -> float:
    """What the list of names takes, if there is one."""
    return _key(figure, layout).width if len(figure.spots) > _MANY else 0.0


def _key(figure: Figure, layout: Layout) -> TextBlock:
    """The numbers and names of what is seen, in as many columns as the height of the page asks."""
    _, bottom, _, top = layout.room
    room = top - bottom
    height = min(layout.lettering, max(_SMALLEST, room / (_PITCH * len(figure.spots))))
    step = _PITCH * height
    rows = [
        (str(one.index + 1), in_words(figure.parts[one.index].title, layout.words))
        for one in figure.spots
    ]
    columns = math.ceil(len(rows) / max(1, int(room / step + 1e-6)))
    each = math.ceil(len(rows) / columns)
    number = max(text_width(digits, height, bold=True) for digits, _ in rows) + 2.0
    lines: list[TextLine] = []
    x = 0.0
    for column in range(columns):
        here = rows[column * each : (column + 1) * each]
        for k, (digits, name) in enumerate(here):
            y = k * step + height
            lines.append(TextLine(digits, x, y, height, bold=True))
            lines.append(TextLine(name, x + number, y, height))
        x += number + max(text_width(name, height) for _, name in here) + _COLUMN_AIR
    return TextBlock(tuple(lines), (), x - _COLUMN_AIR, each * step)


def _ties(found: Exploded, parts: Sequence[Part], view: View) -> Floats:
    """The lines along which parts go together, where no part stands in front of them; (n, 4)."""
    flat = np.array((view.right, view.up)).T
    hulls = [shapely.MultiPoint(placed(part).vertices @ flat).convex_hull for part in parts]
    lines = [
        shapely.LineString([view.project(add(place, found.offsets[one])) for one in pair])
        for *pair, place in found.ties
    ]
    if not lines:
        return _NOTHING
    open_air = shapely.get_parts(shapely.difference(lines, shapely.union_all(hulls)))
    ends = [line.coords for line in open_air if line.geom_type == "LineString" and line.length]
    return np.array([(*one[0], *one[-1]) for one in ends]).reshape(-1, 4)
