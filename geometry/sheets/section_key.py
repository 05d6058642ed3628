"""The small view beside a section: in it the plane is a line to be pulled, and turned by its ends.

Frame: sheet mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.dimensioning.dimension_marks import ARROW_LENGTH, arrowhead
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale
from geometry.sheets.arrangement import ViewPlace, linework_marks
from geometry.sheets.layout import Layout, Room
from geometry.sheets.section_marks import visible_lines
from geometry.sheets.section_plane import (
    Plane,
    half_turn,
    key_view_of,
    reach_of,
    through,
    turn_of_line,
    view_of,
)
from geometry.solids.solid import Floats
from geometry.views.look import look_all
from geometry.views.view import View
from shared.words import in_words

CAPTION = 8.0
BEYOND = 4.0  # mm of the plane's line beyond the view
_HEAVY = 2.5  # mm of its wide ends
_KNOB, _NEAR = 1.1, 3.5  # mm: the round by which an end is turned, and how near to it is on it
_SHAFT = 2.0  # mm of an arrow before its head
_LEAST = 16.0  # mm of the line at the least, so that its ends can be told apart
_EDGE = 10.0  # mm: shorter lines of the bench are nothing to be square to
CATCH_DEG = 1.5


@dataclass(frozen=True, slots=True, eq=False)
class SectionKey:
    """``plane`` as it is drawn, from one of ``ends`` to the other; ``edges`` are the lines of the
    small view, (n, 4) mm of the bench."""

    plane: Plane
    view: View
    place: ViewPlace
    ends: tuple[Vec2, Vec2]
    limits: tuple[float, float]
    edges: Floats

    def holds(self, sheet_point: Vec2) -> bool:
        """Whether a point of the sheet belongs to the small view."""
        left, bottom, right, top = self.place.room
        return left <= sheet_point[0] <= right and bottom <= sheet_point[1] <= top

    def end_at(self, sheet_point: Vec2) -> int | None:
        """Which end of the line lies there, if one does."""
        away = [math.dist(end, sheet_point) for end in self.ends]
        nearest = min((0, 1), key=away.__getitem__)
        return nearest if away[nearest] <= _NEAR else None

    @property
    def pivot(self) -> Vec3:
        """The middle of the line, about which it turns, in the bench; as deep as the origin."""
        (x0, y0), (x1, y1) = self.ends
        return self._in_bench(((x0 + x1) / 2.0, (y0 + y1) / 2.0))

    def pulled_to(self, sheet_point: Vec2) -> Plane:
        """The plane through a point of the sheet, as far as the bench goes."""
        plane = through(self.plane.way, self.plane.turn, self._in_bench(sheet_point))
        low, high = self.limits
        return Plane(plane.way, min(max(plane.at, low), high), plane.turn)

    def turned_to(self, sheet_point: Vec2, pivot: Vec3, *, free: bool) -> Plane:
        """The plane through the pivot and a point of the sheet.

        It catches on lines of the bench, along and square to them, and else on whole degrees; a
        free one on tenths.
        """
        u, v = self.view.project(pivot)
        to_u, to_v = self.place.in_view(sheet_point)
        if math.hypot(to_u - u, to_v - v) * self.place.scale < 1.0:
            return through(self.plane.way, self.plane.turn, pivot)
        turn = turn_of_line(self.plane.way, self.view, (to_u - u, to_v - v))
        turn = round(turn, 1) if free else self._caught(turn)
        return through(self.plane.way, half_turn(turn), pivot)

    def _caught(self, turn: float) -> float:
        runs = self.edges[:, 2:] - self.edges[:, :2]
        runs = runs[np.hypot(*runs.T) >= _EDGE]
        turns = {
            round(turn_of_line(self.plane.way, self.view, way), 4)
            for u, v in runs.tolist()
            for way in ((u, v), (-v, u))
        }
        nearest = min(turns, key=lambda one: _apart(one, turn), default=math.inf)
        return nearest if _apart(nearest, turn) <= CATCH_DEG else float(round(turn))

    def _in_bench(self, sheet_point: Vec2) -> Vec3:
        u, v = self.place.in_view(sheet_point)
        return add(scale(self.view.right, u), scale(self.view.up, v))


def section_key(
    bench: Bench, plane: Plane, room: Room, layout: Layout
) -> tuple[list[Mark], SectionKey]:
    """The small view with the line of the plane."""
    view = key_view_of(bench, plane.way)
    (linework,) = look_all(bench.parts, (view,))
    lines = visible_lines(linework)
    factor, origin = fitted(lines.bounds(), captioned(room), (2.0 * BEYOND, 1.5 * BEYOND))
    place = ViewPlace(view.name, factor, origin, room)
    owners = tuple(f"part:{part.name}" for part in bench.parts)
    u0, v0, u1, v1 = lines.bounds()
    box = (*place.on_sheet((u0, v0)), *place.on_sheet((u1, v1)))
    ends = _ends(plane, view, place, box)
    limits = reach_of(bench, plane.way, plane.turn)
    sight = view_of(bench, plane.way, plane.turn).toward
    words = in_words("Pull the line, or turn it by an end", layout.words)
    at = ((box[0] + box[2]) / 2.0, box[1] - 2.0 * BEYOND - layout.lettering)
    marks = [
        *linework_marks(lines, factor, origin, owners),
        *_line_marks(ends, (-dot(sight, view.right), -dot(sight, view.up))),
        Label(Role.TITLE, words, at, layout.lettering, Anchor.MIDDLE),
    ]
    return marks, SectionKey(plane, view, place, ends, limits, lines.segments)


def captioned(room: Room) -> Room:
    """Without the strip for a caption at its foot."""
    left, bottom, right, top = room
    return (left, bottom + CAPTION, right, top)


def fitted(bounds: Room, room: Room, air: Vec2) -> tuple[float, Vec2]:
    """The scale at which a view fills a room but for the air round it, and its origin there."""
    left, bottom, right, top = room
    u0, v0, u1, v1 = bounds
    factor = min(
        (right - left - 2.0 * air[0]) / max(u1 - u0, 1.0),
        (top - bottom - 2.0 * air[1]) / max(v1 - v0, 1.0),
    )
    factor = max(factor, 1e-3)
    return factor, (
        (left + right - factor * (u0 + u1)) / 2.0,
        (bottom + top - factor * (v0 + v1)) / 2.0,
    )


def _apart(one: float, other: float) -> float:
    """Degrees between two lines, which have no head."""
    return abs((one - other + 90.0) % 180.0 - 90.0)


def _ends(plane: Plane, view: View, place: ViewPlace, box: Room) -> tuple[Vec2, Vec2]:
    """Of the plane's line: what of it crosses the view, and a little beyond."""
    normal = (dot(plane.normal, view.right), dot(plane.normal, view.up))
    run = (-normal[1], normal[0])
    u0, v0, u1, v1 = box
    middle = ((u0 + u1) / 2.0, (v0 + v1) / 2.0)
    foot = place.on_sheet((normal[0] * plane.at, normal[1] * plane.at))
    along = (middle[0] - foot[0]) * run[0] + (middle[1] - foot[1]) * run[1]
    centre = (foot[0] + along * run[0], foot[1] + along * run[1])
    far = math.hypot(u1 - u0, v1 - v0)
    whole = shapely.LineString([_on(centre, run, -far), _on(centre, run, far)])
    chord = whole.intersection(shapely.box(*box).buffer(BEYOND, join_style="mitre"))
    if chord.length < _LEAST:
        if not chord.is_empty:
            centre = (chord.centroid.x, chord.centroid.y)
        return _on(centre, run, -_LEAST / 2.0), _on(centre, run, _LEAST / 2.0)
    (x0, y0), *_, (x1, y1) = chord.coords
    return (x0, y0), (x1, y1)


def _on(start: Vec2, run: Vec2, far: float) -> Vec2:
    return (start[0] + far * run[0], start[1] + far * run[1])


def _line_marks(ends: tuple[Vec2, Vec2], sight: Vec2) -> list[Mark]:
    """The line, wide at its ends, with a round to turn it by at each, and the way one looks."""
    (x0, y0), (x1, y1) = ends
    long = math.dist(*ends)
    run = ((x1 - x0) / long, (y1 - y0) / long)
    stations = [_on(ends[0], run, far) for far in (0.0, _HEAVY, long - _HEAVY, long)]
    runs = np.array([(*a, *b) for a, b in pairwise(stations)])
    tips = [_on(end, sight, _SHAFT + ARROW_LENGTH) for end in ends]
    shafts = np.array([(*end, *tip) for end, tip in zip(ends, tips, strict=True)])
    return [
        Strokes(Role.CENTRE, runs[1:2]),
        Strokes(Role.VISIBLE, runs[(0, 2), :]),
        Strokes(Role.DIMENSION, shafts),
        *(Fill(Role.DIMENSION, arrowhead(tip, sight)) for tip in tips),
        *(Arc(Role.VISIBLE, end, _KNOB, 0.0, 360.0) for end in ends),
    ]
