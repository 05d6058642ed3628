"""The small view beside a section: in it the plane is a line to be pulled, and turned by its ends.

Frame: sheet mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely

from geometry.bench.bench import Bench
from geometry.design.cutting_plane import Plane, half_turn, through
from geometry.design.part import Part
from geometry.drawing.marks import Anchor, Label, Mark, Role
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale
from geometry.sheets.arrangement import VIEW_TITLES, ViewPlace, linework_marks
from geometry.sheets.filling import centred, largest_in
from geometry.sheets.layout import Layout, Room, scale_text
from geometry.sheets.plane_line import LARGER, Letter, line_marks, on_line
from geometry.sheets.section_marks import visible_lines
from geometry.sheets.section_plane import key_view_of, reach_of, turn_of_line, view_of
from geometry.solids.solid import Floats
from geometry.views.linework import Linework
from geometry.views.look import look_all
from geometry.views.view import View
from shared.paper import largest_scale
from shared.words import in_words

CAPTION = 8.0
BEYOND = 4.0  # mm of the plane's line beyond the view
_BELOW, _BELOW_MORE = 7.3, 2.8  # mm, and mm for one of the lettering: clear of letters at any turn
_NEAR = 3.5  # mm: how near to an end of it is on it
_LEAST = 16.0  # mm of the line at the least, so that its ends can be told apart
_EDGE = 10.0  # mm: shorter lines of the bench are nothing to be square to
CATCH_DEG = 1.5
_ALIKE = 1.0  # mm: of lines that are farther off by less, the one that is turned most alike


@dataclass(frozen=True, slots=True)
class Marked:
    """The letter by which a section goes, and whether a hand moves its plane, as on a screen."""

    letter: str = "A"
    by_hand: bool = True


@dataclass(frozen=True, slots=True, eq=False)
class SectionKey:
    """``plane`` as it is drawn, from one of ``ends`` to the other, about its ``middle``; ``sight``
    is the way in which the section is looked at, square to the line.  ``edges`` are the lines of
    the view, (n, 4) mm of the bench, and ``box`` is their room on the sheet."""

    plane: Plane
    view: View
    place: ViewPlace
    ends: tuple[Vec2, Vec2]
    middle: Vec2
    sight: Vec2
    limits: tuple[float, float]
    edges: Floats
    box: Room

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
        return self._in_bench(self.middle)

    def pulled_to(self, sheet_point: Vec2) -> Plane:
        """The plane through a point of the sheet, as far as the bench goes."""
        plane = through(self.plane.way, self.plane.turn, self._in_bench(sheet_point))
        low, high = self.limits
        return Plane(plane.way, min(max(plane.at, low), high), plane.turn)

    def turned_to(self, sheet_point: Vec2, pivot: Vec3, *, free: bool) -> Plane:
        """The plane through the pivot and a point of the sheet.

        It catches on lines of the bench, along and square to them, on the one nearest to the point
        before others, and else on whole degrees; a free one on tenths.
        """
        u, v = self.view.project(pivot)
        to_u, to_v = self.place.in_view(sheet_point)
        if math.hypot(to_u - u, to_v - v) * self.place.scale < 1.0:
            return through(self.plane.way, self.plane.turn, pivot)
        turn = turn_of_line(self.plane.way, self.view, (to_u - u, to_v - v))
        turn = round(turn, 1) if free else self._caught(turn, (to_u, to_v))
        return through(self.plane.way, half_turn(turn), pivot)

    def _caught(self, turn: float, at: Vec2) -> float:
        """The turn of the line nearest to a point of the view among those that are nearly so."""
        runs = self.edges[:, 2:] - self.edges[:, :2]
        long = np.hypot(*runs.T) >= _EDGE
        lines = shapely.linestrings(self.edges[long].reshape(-1, 2, 2))
        away = shapely.distance(lines, shapely.Point(at)) * self.place.scale
        found: list[tuple[float, float, float]] = []
        for (u, v), far in zip(runs[long].tolist(), away.tolist(), strict=True):
            for way in ((u, v), (-v, u)):
                caught = round(turn_of_line(self.plane.way, self.view, way), 4)
                if _apart(caught, turn) <= CATCH_DEG:
                    found.append((round(far / _ALIKE), _apart(caught, turn), caught))
        return min(found)[2] if found else float(round(turn))

    def _in_bench(self, sheet_point: Vec2) -> Vec3:
        u, v = self.place.in_view(sheet_point)
        return add(scale(self.view.right, u), scale(self.view.up, v))


def key_lines(bench: Bench, plane: Plane) -> Linework:
    """What is seen in the small view of a plane; the same wherever the plane is pulled."""
    return _seen(bench.parts, key_view_of(bench, plane.way))


@lru_cache(maxsize=4)
def _seen(parts: tuple[Part, ...], view: View) -> Linework:
    (linework,) = look_all(parts, (view,))
    return visible_lines(linework)


def section_key(
    bench: Bench, plane: Plane, lines: Linework, where: tuple[Room, Layout], marked: Marked
) -> tuple[list[Mark], SectionKey]:
    """The small view, of which these are the lines, with the line of the plane."""
    view, (room, layout) = lines.view, where
    air = (2.0 * BEYOND, 2.0 * BEYOND)
    factor, origin = fitted(lines.bounds(), captioned(room), air, by_steps=not marked.by_hand)
    key = key_on(bench, plane, lines, ViewPlace(view.name, factor, origin, room))
    owners = tuple(f"part:{part.name}" for part in bench.parts)
    letter = Letter(marked.letter, LARGER * layout.lettering)
    words = in_words(_caption(view, factor, marked), layout.words)
    left, bottom, right, _ = key.box
    at = ((left + right) / 2.0, bottom - _BELOW - _BELOW_MORE * layout.lettering)
    marks = [
        *linework_marks(lines, factor, origin, owners),
        *line_marks(key.ends, key.sight, letter, key.box, by_hand=marked.by_hand),
        Label(Role.TITLE, words, at, layout.lettering, Anchor.MIDDLE),
    ]
    return marks, key


def key_on(bench: Bench, plane: Plane, lines: Linework, place: ViewPlace) -> SectionKey:
    """The plane as a line in its key view, whose visible ``lines`` stand on a sheet."""
    view = lines.view
    u0, v0, u1, v1 = lines.bounds()
    box = (*place.on_sheet((u0, v0)), *place.on_sheet((u1, v1)))
    ends = _ends(plane, view, place, box)
    (x0, y0), (x1, y1) = ends
    toward = view_of(bench, plane.way, plane.turn).toward
    return SectionKey(
        plane,
        view,
        place,
        ends,
        ((x0 + x1) / 2.0, (y0 + y1) / 2.0),
        (-dot(toward, view.right), -dot(toward, view.up)),
        reach_of(bench, plane.way, plane.turn),
        lines.segments,
        box,
    )


def _caption(view: View, factor: float, marked: Marked) -> str:
    if marked.by_hand:
        return "Pull the line, or turn it by an end"
    return f"{VIEW_TITLES[view.name]}, {scale_text(factor)}"


def captioned(room: Room) -> Room:
    """Without the strip for a caption at its foot."""
    left, bottom, right, top = room
    return (left, bottom + CAPTION, right, top)


def fitted(bounds: Room, room: Room, air: Vec2, *, by_steps: bool = False) -> tuple[float, Vec2]:
    """The scale at which a view fills a room but for the air round it, and its origin there.

    ``by_steps`` takes the largest standard scale that fits.
    """
    factor = largest_in(bounds, room, air)
    factor = largest_scale(factor).factor if by_steps else max(factor, 1e-3)
    return factor, centred(bounds, factor, room)


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
    whole = shapely.LineString([on_line(centre, run, -far), on_line(centre, run, far)])
    chord = whole.intersection(shapely.box(*box).buffer(BEYOND, join_style="mitre"))
    if chord.length < _LEAST:
        if not chord.is_empty:
            centre = (chord.centroid.x, chord.centroid.y)
        return on_line(centre, run, -_LEAST / 2.0), on_line(centre, run, _LEAST / 2.0)
    (x0, y0), *_, (x1, y1) = chord.coords
    return (x0, y0), (x1, y1)
