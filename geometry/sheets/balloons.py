"""Things that look for a free spot in a view already dimensioned: numbers of cuts, and symbols.

Frame: sheet mm about the view's own origin, as its block.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from geometry.dimensioning.angle_places import chords
from geometry.drawing.marks import Anchor, Arc, Fill, Label, Mark, Role, Strokes
from geometry.drawing.text_box import MIDDLE, Ground, Line, TextBox
from geometry.primitives.frame import Vec2
from geometry.sheets.view_grid import Block
from shared.lettering import text_width

_HEIGHT = 2.5  # capitals in a balloon
_RADIUS = 2.7
_AWAY = (8.0, 11.0, 15.0, 20.0, 26.0)
_TURNS = 16
_CLEAR = 0.8
_DOT = 0.5
_CHORDS = 72  # of a ring
_RING_AIR = 0.4  # mm between a ring and a text that interrupts it


def ground_of(block: Block) -> Ground:
    """All lines and texts of a view, to keep clear of."""
    ground = Ground(block.linework.segments * block.scale)
    for one in block.placed.dimensions:
        ground.add([*one.lines, *chords(one.sweeps)], [one.box])
    return ground


def balloons(block: Block, ground: Ground, wanted: Sequence[tuple[str, Vec2]]) -> list[Mark]:
    """Ringed numbers, each led to its point (u, v); one that finds no room is left out."""
    marks: list[Mark] = []
    leaders: list[Line] = []
    left, bottom, right, top = block.placed.extent
    for text, (u, v) in wanted:
        point = (u * block.scale, v * block.scale)
        half = max(_RADIUS, text_width(text, _HEIGHT) / 2.0 + 0.8)
        spots = [
            TextBox(x, y, half, half)
            for away in _AWAY
            for x, y in _ring(point, away)
            if left - 3.0 <= x - half and x + half <= right + 3.0
            if bottom - 3.0 <= y - half and y + half <= top + 3.0
        ]
        for spot, free in zip(spots, ground.clear(spots, _CLEAR), strict=True):
            leader = _leader(point, spot, half)
            if not free or any(cross(leader, other) for other in leaders):
                continue
            if not ground.crosses_text([leader], _CLEAR):
                ground.add([leader], [spot])
                leaders.append(leader)
                marks += _balloon(text, point, spot, half)
                break
    return marks


def ring_around(middle: Vec2, radius: float, texts: Sequence[TextBox]) -> list[Mark]:
    """A circle, interrupted where it would run through a text."""
    turns = np.linspace(0.0, 2.0 * math.pi, _CHORDS + 1)
    rim = [(middle[0] + radius * math.cos(t), middle[1] + radius * math.sin(t)) for t in turns]
    kept = [
        (turn, turn + 360.0 / _CHORDS)
        for k, turn in enumerate(np.degrees(turns[:-1]).tolist())
        if not any(text.stretch_of((*rim[k], *rim[k + 1]), _RING_AIR) for text in texts)
    ]
    if len(kept) == _CHORDS:
        return [Arc(Role.DIMENSION, middle, radius, 0.0, 360.0)]
    arcs: list[tuple[float, float]] = []
    for start, end in kept:
        goes_on = bool(arcs) and abs(arcs[-1][1] - start) < 1e-6
        arcs.append((arcs.pop()[0] if goes_on else start, end))
    return [Arc(Role.DIMENSION, middle, radius, start, end) for start, end in arcs]


def cross(one: Line, other: Line) -> bool:
    """Whether two segments run through each other."""

    def side(line: Line, x: float, y: float) -> float:
        return (line[2] - line[0]) * (y - line[1]) - (line[3] - line[1]) * (x - line[0])

    return (
        side(one, *other[:2]) * side(one, *other[2:]) < 0.0
        and side(other, *one[:2]) * side(other, *one[2:]) < 0.0
    )


def free_spot(
    ground: Ground, spots: Sequence[TextBox], *, over_lines: bool = False
) -> TextBox | None:
    """The first of some boxes that touches nothing; ``over_lines`` then tries off text alone."""
    for spot, free in zip(spots, ground.clear(spots, _CLEAR), strict=True):
        if free:
            ground.add([], [spot])
            return spot
    for spot in spots if over_lines else ():
        if not ground.crosses_text(spot.outline(), 0.2):
            ground.add([], [spot])
            return spot
    return None


def _ring(point: Vec2, away: float) -> list[Vec2]:
    """Spots round a point, the slanting directions first."""
    turns = [45.0, 135.0, 225.0, 315.0]
    turns += [t for k in range(_TURNS) if (t := 360.0 * k / _TURNS) not in turns]
    return [
        (
            point[0] + away * math.cos(math.radians(turn)),
            point[1] + away * math.sin(math.radians(turn)),
        )
        for turn in turns
    ]


def _leader(point: Vec2, spot: TextBox, half: float) -> Line:
    length = math.dist(point, (spot.x, spot.y))
    part = 1.0 - half / length
    return (
        *point,
        point[0] + (spot.x - point[0]) * part,
        point[1] + (spot.y - point[1]) * part,
    )


def _balloon(text: str, point: Vec2, spot: TextBox, half: float) -> list[Mark]:
    dot = tuple(
        (
            point[0] + _DOT * math.cos(k * math.pi / 4.0),
            point[1] + _DOT * math.sin(k * math.pi / 4.0),
        )
        for k in range(8)
    )
    baseline = (spot.x, spot.y - MIDDLE * _HEIGHT - 0.1 * _HEIGHT)
    return [
        Strokes(Role.DIMENSION, np.array([_leader(point, spot, half)])),
        Fill(Role.DIMENSION, dot),
        Arc(Role.DIMENSION, (spot.x, spot.y), half, 0.0, 360.0),
        Label(Role.DIMENSION, text, baseline, _HEIGHT, Anchor.MIDDLE),
    ]
