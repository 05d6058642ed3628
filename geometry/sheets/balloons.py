"""Ringed numbers of cuts, each led to its cut: close by where there is room, else in a row outside.

Frame: sheet mm about the view's own origin, as its block.

Method: a number looks for a free spot round a point of its cut, in the views that show the cut, the
face first.  Those that find none stand in rows along a side of the view (``balloon_rows``).  A
leader ends in a dot within a face and in an arrowhead on a line (ISO 128-2, from memory).
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

import numpy as np

from geometry.design.part import Shape
from geometry.dimensioning.dimension_marks import arrowhead
from geometry.dimensioning.placed import Extent
from geometry.drawing.crossing import cross
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import MIDDLE, Ground, Line, TextBox, broken_around
from geometry.primitives.frame import Vec2
from geometry.sheets.balloon_rows import Around, Led, Points, in_rows, with_box
from geometry.sheets.cut_targets import PART_VIEWS, Target, cut_targets
from geometry.sheets.free_spots import CLEAR, margin_of
from geometry.sheets.view_grid import Block
from shared.lettering import text_width

_HEIGHT = 2.5  # capitals in a balloon
_RADIUS = 2.7
# How far from its cut a number may stand, and in how many directions: close by, or where no row
# has room for it.
_CLOSE = ((8.0, 11.0, 15.0, 20.0, 26.0), 16)
_FAR = ((7.0, 10.0, 13.0, 17.0, 22.0, 28.0, 35.0, 43.0, 52.0, 62.0), 72)
_OUTSIDE = 3.0  # mm that a number close by may stand out of the room of its view
_MANY = 16  # numbers in a view: more all stand in rows, or some would fence others in
_FEW = 3  # points of a cut that are looked round
_DOT = 0.5
_DOT_ROOM = 0.8  # mm on paper round a dot within its face


@dataclass(slots=True)
class NumberedView:
    """A view while its numbers are placed: the room it has, what stands there, and its marks.

    ``tight`` says across and up whether the page has none beyond that.

    ``rings`` are those of details, which a leader may run through.  ``margin`` is what stands there
    but for the drawing itself, ``texts`` what no leader runs through, ``extent`` the room it all
    takes then.
    """

    block: Block
    room: Extent
    tight: tuple[bool, bool]
    ground: Ground
    rings: Sequence[TextBox]
    marks: list[Mark]
    texts: list[TextBox] = field(init=False)
    margin: Ground = field(init=False)
    extent: Extent = field(init=False)
    leaders: list[Line] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.margin = margin_of(self.block)
        known = len(self.block.placed.dimensions)
        self.margin.add([], self.ground.boxes[known:])
        self.texts = [box for box in self.ground.boxes if box not in self.rings]
        self.extent = self.block.placed.extent

    def put(self, text: str, led: Led) -> None:
        """A number with its leader."""
        self.leaders.append(led.leader)
        pieces = broken_around(led.leader, self.texts, 0.0)
        self.texts.append(led.spot)
        self.ground.add([led.leader], [led.spot])
        self.margin.add([led.leader], [led.spot])
        self.marks += _balloon(text, led, pieces)


def number_cuts(
    views: Sequence[NumberedView], shape: Shape, first: Sequence[int] = ()
) -> tuple[int, ...]:
    """A balloon for every cut of a part in one of its views; those ``first`` choose first.

    Gives the numbers whose leaders run through something, as there was no room left for them.
    """
    targets = cut_targets(shape)
    by_name = {view.block.view: view for view in views}
    ordered = [by_name[one.name] for one in PART_VIEWS if one.name in by_name]
    shown: dict[str, list[tuple[NumberedView, Points]]] = {}
    waiting: dict[str, dict[str, Points]] = {}
    others = (number for number in range(1, len(shape.cuts) + 1) if number not in first)
    counts = Counter(
        next((view.block.view for view in ordered if number in targets[view.block.view]), "")
        for number in range(1, len(shape.cuts) + 1)
    )
    for number in (*first, *others):
        places = [(view, _points(view, targets, number)) for view in ordered]
        places = [(view, points) for view, points in places if points]
        roomy = [one for one in places if counts[one[0].block.view] <= _MANY]
        near = (_put_close(view, str(number), points[:_FEW], _CLOSE) for view, points in roomy)
        if not any(near) and places:
            view, points = places[0]
            waiting.setdefault(view.block.view, {})[str(number)] = points
            shown[str(number)] = places
    left_over: list[int] = []
    for name, wanted in waiting.items():
        view = by_name[name]
        led, badly = in_rows(wanted, {text: _half(text) for text in wanted}, _around(view))
        for text, one in led.items():
            view.put(text, one)
            view.extent = with_box(view.extent, one.spot)
        for text in badly:
            if not any(_put_close(other, text, points, _FAR) for other, points in shown[text]):
                # Its place may be taken since, or its leader free by now.
                found = in_rows({text: wanted[text]}, {text: _half(text)}, _around(view))
                one = found[0].get(text) or found[1][text]
                view.put(text, one)
                view.extent = with_box(view.extent, one.spot)
                left_over.append(int(text))
    return tuple(left_over)


def _around(view: NumberedView) -> Around:
    scale = view.block.scale
    left, bottom, right, top = view.block.linework.bounds()
    drawing = (left * scale, bottom * scale, right * scale, top * scale)
    reached = view.extent
    for box in view.margin.boxes:
        reached = with_box(reached, box)
    return Around(drawing, reached, view.room, view.tight, view.margin, view.texts, view.leaders)


def _points(
    view: NumberedView, targets: Mapping[str, Mapping[int, Sequence[Target]]], number: int
) -> Points:
    """The points of a cut in a view, and for each whether it lies within a face with room."""
    scale = view.block.scale
    return [
        ((one.at[0] * scale, one.at[1] * scale), one.room * scale > _DOT_ROOM)
        for one in targets[view.block.view].get(number, ())
    ]


def _put_close(
    view: NumberedView, text: str, points: Points, places: tuple[Sequence[float], int]
) -> bool:
    """Put a number on a free spot near its cut, if there is one: so far away, in so many
    directions."""
    distances, turns = places
    left, bottom, right, top = view.room
    half = _half(text)
    for point, within in points:
        for away in distances:
            spots = [
                TextBox(x, y, half, half)
                for x, y in _ring(point, away, turns)
                if left - _OUTSIDE <= x - half and x + half <= right + _OUTSIDE
                if bottom - _OUTSIDE <= y - half and y + half <= top + _OUTSIDE
            ]
            for spot, free in zip(spots, view.ground.clear(spots, CLEAR), strict=True):
                led = Led(spot, point, within)
                if not free or any(cross(led.leader, other) for other in view.leaders):
                    continue
                if not any(box.stretch_of(led.leader, CLEAR) for box in view.texts):
                    view.put(text, led)
                    return True
    return False


def _half(text: str) -> float:
    return max(_RADIUS, text_width(text, _HEIGHT) / 2.0 + 0.8)


def _ring(point: Vec2, away: float, count: int) -> list[Vec2]:
    """Spots round a point."""
    return [(point[0] + away * cos, point[1] + away * sin) for cos, sin in _ways(count)]


@cache
def _ways(count: int) -> tuple[Vec2, ...]:
    """So many directions, the slanting ones first: a level or upright leader could be taken for a
    line of the drawing."""
    turns = [45.0, 135.0, 225.0, 315.0]
    others = [t for k in range(count) if (t := 360.0 * k / count) not in turns]
    turns += sorted(others, key=lambda t: t % 90.0 == 0.0)
    return tuple((math.cos(math.radians(turn)), math.sin(math.radians(turn))) for turn in turns)


def _balloon(text: str, led: Led, pieces: Sequence[Line]) -> list[Mark]:
    spot, (x, y) = led.spot, led.point
    if led.within:
        turns = [k * math.pi / 4.0 for k in range(8)]
        end = tuple((x + _DOT * math.cos(t), y + _DOT * math.sin(t)) for t in turns)
    else:
        far = math.dist((spot.x, spot.y), led.point)
        end = arrowhead(led.point, ((x - spot.x) / far, (y - spot.y) / far))
    baseline = (spot.x, spot.y - MIDDLE * _HEIGHT - 0.1 * _HEIGHT)
    return [
        Strokes(Role.DIMENSION, np.array(pieces)),
        Fill(Role.DIMENSION, end),
        Arc(Role.DIMENSION, (spot.x, spot.y), spot.half_width, 0.0, 360.0),
        Label(Role.DIMENSION, text, baseline, _HEIGHT, Anchor.MIDDLE),
    ]
