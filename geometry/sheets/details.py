"""Enlarged details of a part: what is too small to read at the scale of its views.

Frame: view mm in, sheet mm about the detail's own middle out.

Method: dimensions that would come out too small are gathered by view and neighbourhood; a circle
round each gathering is cut out of the linework and drawn at the largest standard scale that its
room allows: in a wide circle up to full size, beyond that in a usual one.  A circle that nothing
would be gained by is drawn closer round its dimensions.  Details that would say the same (two alike
housings) are drawn once.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.placed import DimensionStyle, Placed
from geometry.dimensioning.placement import place
from geometry.primitives.frame import Vec2
from geometry.views.linework import Linework
from shared.paper import SCALES

_SMALL = 2.0  # mm on the sheet: a shorter length cannot be drawn clearly
_SMALL_INNER = 4.0  # the same for one that stands inside the drawing
_SMALL_SIDE = 5.0  # the same for a side of an angle
DIAMETERS = (36.0, 26.0)  # mm on the sheet, of a detail; the smaller where room is short
WIDE = (80.0, 56.0)  # of one up to full size, where there is room
_WIDEST = 50.0  # of one that would enlarge nothing if it were smaller
_CONTEXT = 1.25  # how far round the dimensioned points a detail reaches
_CLOSER = (1.0, 0.6, 0.4, 0.3)  # of that radius; the smaller for one that would enlarge nothing
_THICKNESS = 0.8  # of the part: the least radius that shows where on the piece a detail is
_CHORDS = 48


@dataclass(frozen=True, slots=True, eq=False)
class Detail:
    """A circle of one view, enlarged.

    ``centre`` (u, v) and ``radius`` in view mm; ``linework`` is cut to the circle, about the view's
    origin; ``placed`` holds its dimensions in sheet mm about the view's origin at this scale.
    """

    letter: str
    linework: Linework
    centre: Vec2
    radius: float
    scale: float
    placed: Placed


def too_small(dimension: Dimension, scale: float) -> bool:
    """Whether a dimension cannot be read at a scale; overall sizes always stay."""
    if dimension.apex is not None:
        return math.dist(dimension.apex, dimension.end) * scale < _SMALL_SIDE
    return dimension.value * scale < (_SMALL_INNER if dimension.side == 0 else _SMALL)


def details(
    lineworks: Sequence[Linework],
    small: Sequence[Dimension],
    scale: float,
    thickness: float,
    size: tuple[float, DimensionStyle],
) -> tuple[Detail, ...]:
    """The details that show the small dimensions of a part so thick, lettered in order.

    ``size`` is the largest diameter on the sheet in mm and the style of the dimensions.
    """
    diameter, style = size
    least = _THICKNESS * thickness
    found: list[Detail] = []
    seen: set[tuple[object, ...]] = set()
    for linework in lineworks:
        bounds = linework.bounds()
        own = [_near(one, bounds) for one in small if one.view == linework.view.name]
        for group in _gathered(own, least, lambda radius: _enlarged(radius, scale, diameter)):
            key = (linework.view.name, *sorted((one.unit, round(one.value, 2)) for one in group))
            if key in seen:
                continue
            seen.add(key)
            letter = "ABCDEFGHJKLMNPQRSTUVWXYZ"[len(found) % 24]
            circles = [_circle(group, share * least) for share in _CLOSER]
            larger = (one for one in circles if _enlarged(one[1], scale, _widest(diameter)))
            circle = next(larger, circles[0])
            found.append(_detail(letter, linework, group, circle, (scale, diameter, style)))
    return tuple(found)


def _near(one: Dimension, bounds: tuple[float, float, float, float]) -> Dimension:
    """The same size between points that face each other, where its wall is.

    In a whole view a size may start at the outline, clear of the drawing, and end deep inside: a
    circle round both would be as large as the view.
    """
    if one.apex is not None or one.along not in ((1.0, 0.0), (0.0, 1.0)):
        return one
    axis = 1 if one.along == (1.0, 0.0) else 0
    low, high = bounds[axis], bounds[axis + 2]
    inner = max((one.start, one.end), key=lambda p: min(p[axis] - low, high - p[axis]))[axis]
    start, end = (_with(point, axis, inner) for point in (one.start, one.end))
    return replace(one, start=start, end=end)


def _with(point: Vec2, axis: int, value: float) -> Vec2:
    return (value, point[1]) if axis == 0 else (point[0], value)


def _points(one: Dimension) -> list[Vec2]:
    return [one.start, one.end] if one.apex is None else [one.apex, one.end]


def _gathered(
    own: Sequence[Dimension], least: float, enlarged: Callable[[float], float | None]
) -> list[list[Dimension]]:
    """Groups whose points lie near each other, unless each could be enlarged but not both in one
    circle."""
    groups: list[list[Dimension]] = []
    for one in own:
        middle, alone = _circle([one], least)
        for group in groups:
            centre, radius = _circle(group, least)
            if math.dist(middle, centre) >= 3.0 * radius:
                continue
            apart = enlarged(alone) and enlarged(radius)
            if not apart or enlarged(_circle([*group, one], least)[1]):
                group.append(one)
                break
        else:
            groups.append([one])
    return groups


def _circle(group: Sequence[Dimension], least: float) -> tuple[Vec2, float]:
    points = [point for one in group for point in _points(one)]
    us, vs = [u for u, _ in points], [v for _, v in points]
    centre = ((min(us) + max(us)) / 2.0, (min(vs) + max(vs)) / 2.0)
    reach = max(math.dist(centre, point) for point in points)
    return centre, max(_CONTEXT * reach, reach + 4.0, least)


def _detail(
    letter: str,
    linework: Linework,
    group: Sequence[Dimension],
    circle: tuple[Vec2, float],
    drawn: tuple[float, float, DimensionStyle],
) -> Detail:
    centre, radius = circle
    scale, diameter, style = drawn
    enlarged = _enlarged(radius, scale, diameter) or _enlarged(radius, scale, _widest(diameter))
    enlarged = enlarged or scale
    cut = _cut_out(linework, centre, radius)
    edge = _circle_lines(centre, radius)
    placed = place(group, np.concatenate([cut.segments, edge]), enlarged, style)
    return Detail(letter, cut, centre, radius, enlarged, placed)


def _widest(diameter: float) -> float:
    """Better a wide circle than one that enlarges nothing, but not where room is short."""
    return max(diameter, _WIDEST) if diameter >= DIAMETERS[0] else diameter


def _enlarged(radius: float, scale: float, diameter: float) -> float | None:
    """The largest standard scale at which a circle keeps to a diameter on the sheet, None where
    that is none larger than the view's."""
    steps = (step.factor for step in SCALES if step.factor > scale)  # the largest first
    usual = min(diameter, DIAMETERS[0])
    return next((f for f in steps if 2.0 * radius * f <= (diameter if f <= 1.0 else usual)), None)


def _cut_out(linework: Linework, centre: Vec2, radius: float) -> Linework:
    """The lines inside a circle."""
    start = linework.segments[:, :2] - np.array(centre)
    run = linework.segments[:, 2:] - linework.segments[:, :2]
    a = np.maximum((run * run).sum(axis=1), 1e-12)
    b = (start * run).sum(axis=1)
    c = (start * start).sum(axis=1) - radius * radius
    inside = b * b - a * c
    root = np.sqrt(np.maximum(inside, 0.0))
    t0 = np.clip((-b - root) / a, 0.0, 1.0)
    t1 = np.clip((-b + root) / a, 0.0, 1.0)
    keep = (inside > 0.0) & (t1 - t0 > 1e-9)
    foot = linework.segments[:, :2]
    lines = np.hstack([foot + t0[:, None] * run, foot + t1[:, None] * run])[keep]
    return Linework(linework.view, lines, linework.visible[keep], linework.owner[keep])


def _circle_lines(centre: Vec2, radius: float) -> NDArray[np.float64]:
    turns = np.linspace(0.0, 2.0 * math.pi, _CHORDS + 1)
    points = np.array(centre) + radius * np.column_stack([np.cos(turns), np.sin(turns)])
    return np.hstack([points[:-1], points[1:]])
