"""The whole bench in a pictorial view and taken apart, each part with its name.

Frame: sheet mm; figures in mm of their view until they are put on a page.

A pictorial is drawn as large as its page allows and states no scale, as nobody measures one.  The
bench is seen from either front corner, whichever shows more of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, add, subtract
from geometry.sheets.figure_page import Figure, WholeSheet, whole_sheet
from geometry.sheets.label_spots import spots_of
from geometry.sheets.layout import Layout
from geometry.sheets.leaf import Leaf, turned_upright
from geometry.sheets.section_marks import visible_lines
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats, PlacedSolid
from geometry.views.exploding import Exploded, exploded
from geometry.views.look import look_all
from geometry.views.parting import moved
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from geometry.views.view import View
from shared.words import in_words

_VIEWS = (FROM_RIGHT, FROM_LEFT)
_AIR = 45.0  # mm of the bench between parts drawn apart
_ON = 1.0  # mm
_NOTHING: Floats = np.empty((0, 4))


def pictorial_page(bench: Bench, layout: Layout) -> WholeSheet:
    """The bench in a pictorial view, its parts named, the sheet lying or upright."""
    return whole_sheet(_pictorials(bench, None), (layout, turned_upright(layout)))


def exploded_page(bench: Bench, layout: Layout) -> WholeSheet:
    """The bench taken apart, its parts named, the sheet lying or upright."""
    return whole_sheet(_explosions(bench, None, ()), (layout, turned_upright(layout)))


def pictorial_leaf(bench: Bench, layout: Layout) -> Leaf:
    """The page with the pictorial view."""
    return _leaf("Pictorial view", pictorial_page(bench, layout))


def exploded_leaf(bench: Bench, layout: Layout) -> Leaf:
    """The page with the bench taken apart."""
    return _leaf("Exploded view", exploded_page(bench, layout))


def _leaf(title: str, page: WholeSheet) -> Leaf:
    title = in_words(title, page.layout.words)
    return Leaf("Pictorial drawing", title, None, page.marks, page.layout)


def pictorial_sheet(bench: Bench, layout: Layout, picked: Vec3 | None = None) -> WholeSheet:
    """The pictorial view on a sheet that cannot be turned, such as a window; a ring round what is
    picked out."""
    return whole_sheet(_pictorials(bench, picked), (layout,))


def exploded_sheet(
    bench: Bench, layout: Layout, picked: Vec3 | None = None, gathered: Sequence[str] = ()
) -> WholeSheet:
    """The bench taken apart on a sheet that cannot be turned; a ring round what is picked out, on
    each of the ``gathered`` parts that it lies on."""
    return whole_sheet(_explosions(bench, picked, gathered), (layout,))


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
    return Figure(parts, seen, ties, spots_of(parts, view, seen.segments))


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
