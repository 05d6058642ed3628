"""The names of parts, each led to a place where its part is seen.

Frame: anchors in view mm, names in sheet mm about the view's own origin.

Method: a part's leader ends at that of some points spread over it which is really seen and lies
far from the drawing's lines.  Its name then takes, of many places round about that touch no line
and no text, the one with the shortest leader, each drawing line that the leader crosses counting
as a detour.  No leader runs through a name or across another leader.  Parts with least to show
choose first; then the one that came off worst, with a leader across half the drawing, is let choose
before all others, as long as that helps.
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
_APART = 2.5  # mm between two names beside each other, which would read as one
_GAP = 0.8  # mm between a name and its leader
_DOT = 0.55
_SAMPLES = 13  # points tried along each side of a part's box
_NEARLY = 0.7  # of the clearest point's distance from lines: clear enough
_RINGS = ((3.0, 6.0, 10.0, 15.0), (21.0, 28.0, 36.0, 46.0), (58.0, 72.0, 90.0, 115.0))
"""How far from a part its name is looked for, mm; those of a group are tried together."""

_TURNS = 24
_NEAR_ENOUGH = 20.0  # mm of a leader
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

    @property
    def length(self) -> float:
        """Of its leader, mm."""
        u0, v0, u1, v1 = self.leader
        return math.hypot(u1 - u0, v1 - v0)


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
    texts: Sequence[str],
    spots: Sequence[Spot],
    lines: Floats,
    height: float,
    room: Room,
    there: Sequence[TextBox] = (),
    turns: int = 1,
) -> tuple[Named, ...]:
    """A label at each spot, within ``room``; one that finds no place is left out.

    ``texts`` are by index; spots, ``lines`` (n, 4) and the texts already ``there`` in sheet mm
    about the view's origin.  All are placed up to ``turns`` times, each time another one first.
    """
    drawing = shapely.STRtree(shapely.linestrings(lines.reshape(-1, 2, 2)))
    order = sorted(spots, key=lambda one: one.clear)
    best: tuple[Named, ...] = ()
    for turn in range(turns):
        found = _in_order(order, texts, (height, room), (drawing, there))
        if not turn or _worth(found) > _worth(best):
            best = found
        worst = _worst(order, found)
        if worst is None or worst is order[0]:
            break
        order = [worst, *(one for one in order if one is not worst)]
    return best


def _in_order(
    order: Sequence[Spot],
    texts: Sequence[str],
    sizes: tuple[float, Room],
    against: tuple[shapely.STRtree, Sequence[TextBox]],
) -> tuple[Named, ...]:
    """Each spot's label in the best of the places that those before it have left."""
    height, room = sizes
    drawing, there = against
    found: dict[int, Named] = {}
    for spot in order:
        taken = _taken(found.values(), there)
        label = _named(spot, texts[spot.index], height, room, (drawing, taken))
        if label is not None:
            found[spot.index] = label
    return tuple(found[index] for index in sorted(found))


def _worth(labels: Sequence[Named]) -> tuple[int, float]:
    """More labels are better; of as many, those whose longest leaders are short."""
    return len(labels), -sum(one.length**2 for one in labels)


def _worst(order: Sequence[Spot], labels: Sequence[Named]) -> Spot | None:
    """The spot that should have chosen earlier: one without a label, or with one far off."""
    length = {one.index: one.length for one in labels}
    worst = max(order, key=lambda one: length.get(one.index, math.inf), default=None)
    if worst is None or length.get(worst.index, math.inf) <= _NEAR_ENOUGH:
        return None
    return worst


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


def _taken(labels: Iterable[Named], there: Sequence[TextBox]) -> shapely.STRtree:
    """The labels already placed, their words and their leaders, and other texts."""
    things: list[BaseGeometry] = [shapely.Polygon(box.corners()) for box in there]
    for one in labels:
        things.append(shapely.Polygon(one.box.corners()))
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
    half, point = np.array((half_w, half_h)), np.array(spot.point)
    best: tuple[float, Named] | None = None
    for rings in _RINGS:
        if best is not None and best[0] <= rings[0]:
            break  # no leader from here on is shorter
        middles = _round_about(point, rings, half, room)
        if not len(middles):
            continue
        starts = _leader_starts(middles, half, point)
        reach = half + _CLEAR
        words = shapely.box(*(middles - reach).T, *(middles + reach).T)
        wide = half + np.array((_APART, _CLEAR))
        names = shapely.box(*(middles - wide).T, *(middles + wide).T)
        lines = shapely.linestrings(np.stack([starts, np.broadcast_to(point, starts.shape)], 1))
        blocked = _hits(drawing, words) + _hits(taken, names) + _near(taken, lines)
        cost = shapely.length(lines) + _DETOUR * _hits(drawing, lines)
        cost[blocked > 0] = np.inf
        k = int(cost.argmin())
        if np.isfinite(cost[k]) and (best is None or cost[k] < best[0]):
            (x, y), (u, v) = middles[k].tolist(), starts[k].tolist()
            leader = (u, v, *spot.point)
            best = (float(cost[k]), Named(spot.index, text, TextBox(x, y, half_w, half_h), leader))
    return None if best is None else best[1]


def _hits(tree: shapely.STRtree, things: NDArray[np.object_]) -> NDArray[np.intp]:
    """With how many of a tree's things each of some others meets, (n,)."""
    return np.bincount(tree.query(things, predicate="intersects")[0], minlength=len(things))


def _near(tree: shapely.STRtree, lines: NDArray[np.object_]) -> NDArray[np.intp]:
    """With how many of a tree's things each of some lines nearly meets, (n,)."""
    pairs = tree.query(lines, predicate="dwithin", distance=_CLEAR)
    return np.bincount(pairs[0], minlength=len(lines))


def _round_about(point: Floats, rings: Sequence[float], half: Floats, room: Room) -> Floats:
    """Middles of boxes round a point, their sides so far from it, those that lie in the room;
    (n, 2)."""
    turns = 2.0 * math.pi * np.arange(_TURNS) / _TURNS
    ways = np.column_stack([np.cos(turns), np.sin(turns)])
    reach = np.array(rings)[:, None, None] + half
    middles = (point + reach * ways).reshape(-1, 2)
    low, high = np.array(room[:2]) + half, np.array(room[2:]) - half
    return np.asarray(middles[((middles >= low) & (middles <= high)).all(axis=1)])


def _leader_starts(middles: Floats, half: Floats, point: Floats) -> Floats:
    """Where leaders to a point begin, just beside their boxes; (n, 2)."""
    near = np.clip(point, middles - half, middles + half)
    run = point - near
    length = np.maximum(np.hypot(*run.T), 1e-9)[:, None]
    return np.asarray(near + run * np.minimum(1.0, _GAP / length))
