"""Hatching of cut faces, a manner for each way that wood can be cut.

Frame and units: sheet mm.  Lines are clipped exactly to the region they fill (shapely).

End grain shows growth rings: arcs about a pith beside the piece, every third a little farther off.
Long grain shows lines along the grain, now and then broken.  Plywood shows its plies, every other
one with short slanting strokes; board of fibres or chips, which has no direction, crossed
strokes.  Spacing is in sheet mm, so it reads the same at every scale.  Pieces that touch are given
different ``turns``: another pith, another spacing, another slant.  The manners are our own;
ISO 128-50 (from memory) leaves them free where a material is to be told.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from geometry.primitives.frame import Vec2

Lines = NDArray[np.float64]


class Cut(Enum):
    """How a plane meets the stuff of a piece."""

    END_GRAIN = "end grain"
    LONG_GRAIN = "long grain"
    PLIES = "plies"
    FIBRES = "fibres"


@dataclass(frozen=True, slots=True)
class Manner:
    """How a region is filled.

    ``along`` is a unit direction on the sheet: that of the grain, of the plies, or across the
    growth rings (from the pith).  ``plies`` are the two distances, across ``along``, between which
    plies lie; unused elsewhere.  ``turn`` tells touching pieces apart: 0, 1, 2 …
    """

    cut: Cut
    along: Vec2
    turn: int = 0
    plies: tuple[float, float] = (0.0, 0.0)


_RING_SPACING = (2.1, 1.5, 2.8)
_RING_STEPS = (1.0, 1.0, 1.5)  # of the spacing, over and over
_PITH_TURN_DEG = (-18.0, 24.0, 4.0)
_PITH_AWAY = (0.55, 0.35, 0.9)  # of the region's size beyond its edge

_GRAIN_SPACING = (2.4, 1.6, 3.2)
_GRAIN_SWAY = 0.25  # of the spacing
_PEN_DOWN, _PEN_UP = (31.0, 19.0, 44.0), 2.2

_PLY = 0.9  # mm, the thinnest that reads
_PLY_STROKES = (2.6, 1.9, 3.4)
_SLANT_DEG = (52.0, 128.0, 70.0)
_FIBRE_SPACING = (2.3, 1.7, 3.0)

_CHORD_DEG = 3.0
_TINY = 1e-9


def hatched(region: BaseGeometry, manner: Manner) -> Lines:
    """The strokes of ``manner`` inside ``region``, (n, 4)."""
    if region.is_empty:
        return np.empty((0, 4))
    match manner.cut:
        case Cut.END_GRAIN:
            wanted = _rings(region.bounds, manner)
        case Cut.LONG_GRAIN:
            wanted = _grain(region.bounds, manner)
        case Cut.PLIES:
            wanted = _plies(region.bounds, manner)
        case Cut.FIBRES:
            wanted = _fibres(region.bounds, manner)
    return _clipped(wanted, region)


def _rings(bounds: tuple[float, ...], manner: Manner) -> list[Lines]:
    """Arcs about a pith that lies off the region, against ``along`` and a little aside."""
    left, bottom, right, top = bounds
    reach = math.hypot(right - left, top - bottom) / 2.0
    k = manner.turn % len(_PITH_TURN_DEG)
    cos, sin = _direction(_PITH_TURN_DEG[k])
    ux, uy = manner.along
    away = (1.0 + _PITH_AWAY[k]) * reach + 4.0
    towards = (ux * cos - uy * sin, ux * sin + uy * cos)
    pith = ((left + right) / 2.0 - away * towards[0], (bottom + top) / 2.0 - away * towards[1])
    middle = math.degrees(math.atan2(towards[1], towards[0]))
    half = math.degrees(math.asin(min(1.0, reach / away))) + _CHORD_DEG
    turns = np.radians(np.arange(middle - half, middle + half + _CHORD_DEG, _CHORD_DEG))
    ray = np.column_stack([np.cos(turns), np.sin(turns)])
    found: list[Lines] = []
    radius, step = away - reach, 0
    while radius < away + reach:
        radius += _RING_SPACING[k] * _RING_STEPS[step % len(_RING_STEPS)]
        step += 1
        found.append(np.array(pith) + radius * ray)
    return found


def _grain(bounds: tuple[float, ...], manner: Manner) -> list[Lines]:
    """Lines along the grain, at a spacing that sways a little, each broken here and there."""
    k = manner.turn % len(_GRAIN_SPACING)
    spacing, down = _GRAIN_SPACING[k], _PEN_DOWN[k]
    (s0, s1), (t0, t1) = _spans(bounds, manner.along)
    found: list[Lines] = []
    for row in range(math.floor(t0 / spacing), math.ceil(t1 / spacing) + 1):
        t = (row + _GRAIN_SWAY * math.sin(2.1 * row)) * spacing
        period = down + _PEN_UP
        start = (row * 0.382 % 1.0) * period  # rows break in no visible order
        first = math.floor((s0 - start) / period)
        for piece in range(first, math.ceil((s1 - start) / period) + 1):
            s = start + piece * period
            found.append(_placed(np.array([(s, t), (s + down, t)]), manner.along))
    return found


def _plies(bounds: tuple[float, ...], manner: Manner) -> list[Lines]:
    """Lines between plies; strokes over every other ply, if the plies are thick enough to see."""
    k = manner.turn % len(_PLY_STROKES)
    low, high = manner.plies
    (s0, s1), _ = _spans(bounds, manner.along)
    count = int((high - low) / _PLY)
    count -= 1 - count % 2  # plywood has an odd number of plies
    if count < 3:
        count = 1
    ply = (high - low) / count
    found = [
        _placed(np.array([(s0, low + i * ply), (s1, low + i * ply)]), manner.along)
        for i in range(1, count)
    ]
    lean = ply / math.tan(math.radians(_SLANT_DEG[k]))
    for i in range(0 if count == 1 else 1, count, 2):
        foot = low + i * ply
        for n in range(math.floor(s0 / _PLY_STROKES[k]) - 2, math.ceil(s1 / _PLY_STROKES[k]) + 2):
            s = n * _PLY_STROKES[k]
            found.append(_placed(np.array([(s, foot), (s + lean, foot + ply)]), manner.along))
    return found


def _fibres(bounds: tuple[float, ...], manner: Manner) -> list[Lines]:
    """Strokes in two slanting directions."""
    k = manner.turn % len(_FIBRE_SPACING)
    found: list[Lines] = []
    for slant in (45.0, 135.0):
        along = _direction(slant)
        (s0, s1), (t0, t1) = _spans(bounds, along)
        spacing = _FIBRE_SPACING[k]
        found += [
            _placed(np.array([(s0, row * spacing), (s1, row * spacing)]), along)
            for row in range(math.floor(t0 / spacing), math.ceil(t1 / spacing) + 1)
        ]
    return found


def _direction(deg: float) -> Vec2:
    return (math.cos(math.radians(deg)), math.sin(math.radians(deg)))


def _spans(bounds: tuple[float, ...], along: Vec2) -> tuple[Vec2, Vec2]:
    """What a rectangle takes along and across a direction."""
    left, bottom, right, top = bounds
    corners = [(x, y) for x in (left, right) for y in (bottom, top)]
    s = [x * along[0] + y * along[1] for x, y in corners]
    t = [y * along[0] - x * along[1] for x, y in corners]
    return (min(s), max(s)), (min(t), max(t))


def _placed(points: Lines, along: Vec2) -> Lines:
    """Points given along and across a direction, on the sheet."""
    (c, s), (a, b) = along, points.T
    return np.column_stack([a * c - b * s, a * s + b * c])


def _clipped(wanted: list[Lines], region: BaseGeometry) -> Lines:
    if not wanted:
        return np.empty((0, 4))
    shapely.prepare(region)
    strokes = shapely.linestrings(
        np.concatenate(wanted), indices=np.repeat(np.arange(len(wanted)), [len(w) for w in wanted])
    )
    inside = shapely.get_parts(shapely.intersection(strokes, region))
    lines = inside[shapely.get_type_id(inside) == shapely.GeometryType.LINESTRING]
    lines = lines[shapely.length(lines) > _TINY]
    points, which = shapely.get_coordinates(lines, return_index=True)
    same = np.flatnonzero(which[1:] == which[:-1])
    return np.hstack([points[same], points[same + 1]])
