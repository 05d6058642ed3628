"""The names of parts, each led to a place where its part is seen.

Frame: anchors in view mm, names in sheet mm about the view's own origin.

Method: a part's leader ends at that of some points spread over it which is really seen and lies
far from the drawing's lines.  Its name then takes, of many places round about that touch no line
and no text, the one with the shortest leader, each drawing line that the leader crosses counting
as a detour.  No leader runs through a name or across another leader.  Parts with least to show
choose first.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.design.part import Part
from geometry.drawing.marks import Anchor, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import Line, TextBox
from geometry.primitives.frame import Vec2
from geometry.solids.solid import Floats
from geometry.views.seen import seen_points
from geometry.views.view import View
from shared.lettering import text_width

Room = tuple[float, float, float, float]

_CLEAR = 0.8  # mm between a name and anything else
_GAP = 0.8  # mm between a name and its leader
_DOT = 0.55
_SAMPLES = 13  # points tried along each side of a part's box
_NEARLY = 0.7  # of the clearest point's distance from lines: clear enough
_RINGS = ((3.0, 6.0, 10.0, 15.0), (21.0, 28.0, 36.0, 46.0), (58.0, 72.0, 90.0, 115.0))
"""How far from a part its name is looked for, mm; those of a group are tried together."""

_TURNS = 24
_DETOUR = 9.0  # mm that a leader may be longer to cross one line less


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a leader meets a part, (u, v) in view mm, and how far that is from any line."""

    index: int
    point: Vec2
    clear: float


@dataclass(frozen=True, slots=True)
class Named:
    """A part's label: its index, its words, the room they take, and the leader to the part."""

    index: int
    text: str
    box: TextBox
    leader: Line


def spots_of(parts: Sequence[Part], view: View, lines: Floats) -> tuple[Spot, ...]:
    """A spot on each part that is seen; ``lines`` (n, 4) are the view's, in mm."""
    drawing = shapely.multilinestrings(shapely.linestrings(lines.reshape(-1, 2, 2)))
    shapely.prepare(drawing)
    found: list[Spot] = []
    for index, points in enumerate(seen_points(parts, view, _SAMPLES)):
        if not len(points):
            continue
        clear = shapely.distance(shapely.points(points), drawing)
        good = points[clear >= _NEARLY * clear.max()]
        middle = points.mean(axis=0)
        u, v = good[np.hypot(*(good - middle).T).argmin()].tolist()
        found.append(Spot(index, (u, v), float(clear.max())))
    return tuple(found)


def named(
    texts: Sequence[str], spots: Sequence[Spot], lines: Floats, height: float, room: Room
) -> tuple[Named, ...]:
    """A label at each spot, within ``room``; one that finds no place is left out.

    ``texts`` are by index; spots and ``lines`` (n, 4) in sheet mm about the view's origin.
    """
    drawing = shapely.STRtree(shapely.linestrings(lines.reshape(-1, 2, 2)))
    found: dict[int, Named] = {}
    for spot in sorted(spots, key=lambda one: one.clear):
        label = _named(spot, texts[spot.index], height, room, (drawing, _taken(found.values())))
        if label is not None:
            found[spot.index] = label
    return tuple(found[index] for index in sorted(found))


def label_marks(labels: Sequence[Named], origin: Vec2, height: float) -> list[Mark]:
    """The labels as marks, the view's (0, 0) at ``origin``."""
    x, y = origin
    marks: list[Mark] = []
    if labels:
        leaders = np.array([one.leader for one in labels]) + np.array(origin * 2)
        marks.append(Strokes(Role.DIMENSION, leaders))
    turns = [k * math.pi / 4.0 for k in range(8)]
    for one in labels:
        u, v = one.leader[2] + x, one.leader[3] + y
        dot = tuple((u + _DOT * math.cos(t), v + _DOT * math.sin(t)) for t in turns)
        marks.append(Fill(Role.DIMENSION, dot))
        u, v = one.box.baseline_middle(height)
        marks.append(Label(Role.TEXT, one.text, (u + x, v + y), height, Anchor.MIDDLE))
    return marks


def _taken(labels: Iterable[Named]) -> shapely.STRtree:
    """The labels already there: their words and their leaders."""
    things: list[BaseGeometry] = []
    for one in labels:
        x, y, w, h = one.box.x, one.box.y, one.box.half_width, one.box.half_height
        things.append(shapely.box(x - w, y - h, x + w, y + h))
        things.append(shapely.LineString([one.leader[:2], one.leader[2:]]))
    return shapely.STRtree(things)


def _named(
    spot: Spot,
    text: str,
    height: float,
    room: Room,
    against: tuple[shapely.STRtree, shapely.STRtree],
) -> Named | None:
    """The label in the best of the free places, nearer rings first; ``against`` are the drawing
    and the labels already there."""
    drawing, taken = against
    half_w = text_width(text, height) / 2.0
    half_h = TextBox.about((0.0, 0.0), 2.0 * half_w, height).half_height
    best: tuple[float, Named] | None = None
    for rings in _RINGS:
        if best is not None and best[0] <= rings[0]:
            break  # no leader from here on is shorter
        boxes = [box for away in rings for box in _ring(spot.point, away, (half_w, half_h), room)]
        if not boxes:
            continue
        leaders = [_leader(box, spot.point) for box in boxes]
        words = shapely.buffer(
            [shapely.Polygon(box.corners()) for box in boxes], _CLEAR, cap_style="square"
        )
        lines = shapely.linestrings(np.array(leaders).reshape(-1, 2, 2))
        blocked = (
            _hits(drawing, words)
            + _hits(taken, words)
            + _hits(taken, shapely.buffer(lines, _CLEAR))
        )
        cost = shapely.length(lines) + _DETOUR * _hits(drawing, lines)
        cost[blocked > 0] = np.inf
        k = int(cost.argmin())
        if np.isfinite(cost[k]) and (best is None or cost[k] < best[0]):
            best = (float(cost[k]), Named(spot.index, text, boxes[k], leaders[k]))
    return None if best is None else best[1]


def _hits(tree: shapely.STRtree, things: NDArray[np.object_]) -> NDArray[np.intp]:
    """With how many of a tree's things each of some others meets, (n,)."""
    return np.bincount(tree.query(things, predicate="intersects")[0], minlength=len(things))


def _near(tree: shapely.STRtree, lines: NDArray[np.object_]) -> NDArray[np.intp]:
    """With how many of a tree's things each of some lines nearly meets, (n,)."""
    pairs = tree.query(lines, predicate="dwithin", distance=_CLEAR)
    return np.bincount(pairs[0], minlength=len(lines))


def _ring(point: Vec2, away: float, half: Vec2, room: Room) -> list[TextBox]:
    """Boxes round a point, their sides about ``away`` from it, those that lie in the room."""
    left, bottom, right, top = room
    boxes: list[TextBox] = []
    for turn in range(_TURNS):
        angle = 2.0 * math.pi * turn / _TURNS
        x = point[0] + (away + half[0]) * math.cos(angle)
        y = point[1] + (away + half[1]) * math.sin(angle)
        if left + half[0] <= x <= right - half[0] and bottom + half[1] <= y <= top - half[1]:
            boxes.append(TextBox(x, y, *half))
    return boxes


def _leader(box: TextBox, point: Vec2) -> Line:
    """From just beside the box to the point."""
    x = min(max(point[0], box.x - box.half_width), box.x + box.half_width)
    y = min(max(point[1], box.y - box.half_height), box.y + box.half_height)
    part = min(1.0, _GAP / max(math.dist((x, y), point), 1e-9))
    return (x + (point[0] - x) * part, y + (point[1] - y) * part, *point)
