"""The axes of what is round in a part: bores, round tenons, turned lengths, screw holes.

Frame and units: the part's own frame, mm.

Method: read from what its cuts take away.  Arcs of prisms in one frame that close a full turn about
one centre are a round thing; its axis is the prism's, as far as it lies in the blank and before the
planes that cut the prism short.  Several diameters on one axis are one thing, the widest's width.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace, Prism
from geometry.design.part import Shape
from geometry.primitives.frame import Frame, Vec2, Vec3, add, dot, scale, subtract
from geometry.primitives.path import Path
from geometry.solids.cutting import removals_by_cut

_FULL_TURN = 2.0 * math.pi - 1e-3
_DECIMALS = 4  # of mm, to which two centres are the same
_LEAST_LENGTH = 1e-3  # mm
_NEARLY = 1e-3  # mm


@dataclass(frozen=True, slots=True)
class RoundAxis:
    """From ``start`` to ``end``, and how far the round goes out from it; mm."""

    start: Vec3
    end: Vec3
    radius: float


@lru_cache(maxsize=4096)
def round_axes(shape: Shape, least: float = 0.0) -> tuple[RoundAxis, ...]:
    """Those of a shape that go out at least so far, in the order of its cuts."""
    found: list[RoundAxis] = []
    for removals in removals_by_cut(shape):
        prisms = [each for each in removals if isinstance(each, Prism)]
        # Whoever draws asks at each step of a drag, and few of the arcs are so large.
        if any(_bends_out(each.path, least) for each in prisms):
            found += _of_one_cut(prisms, shape.blank)
    return tuple(axis for axis in found if axis.radius >= least)


def _bends_out(path: Path, least: float) -> bool:
    """Whether a path has an arc of such a radius, or nearly."""
    vertices = path.vertices
    for k, (x0, y0, bulge) in enumerate(vertices):
        if bulge:
            x1, y1, _ = vertices[(k + 1) % len(vertices)]
            chord = math.hypot(x1 - x0, y1 - y0)
            if chord * (1.0 + bulge * bulge) / (4.0 * abs(bulge)) >= least - _NEARLY:
                return True
    return False


def _of_one_cut(prisms: Iterable[Prism], blank: Blank) -> list[RoundAxis]:
    turns: dict[tuple[Frame, Vec2, float], float] = {}
    bodies: dict[tuple[Frame, Vec2, float], list[Prism]] = {}
    for prism in prisms:
        for centre, radius, turn in _arcs(prism.path):
            key = (prism.frame, centre, radius)
            turns[key] = turns.get(key, 0.0) + turn
            bodies.setdefault(key, []).append(prism)
    widest: dict[tuple[Frame, Vec2], tuple[float, list[Prism]]] = {}
    for (frame, centre, radius), turn in turns.items():
        if turn >= _FULL_TURN:
            far, held = widest.get((frame, centre), (0.0, []))
            own = bodies[(frame, centre, radius)]
            widest[(frame, centre)] = (max(far, radius), [*held, *own])
    axes = (
        _axis(frame, centre, radius, held, blank)
        for (frame, centre), (radius, held) in widest.items()
    )
    return [axis for axis in axes if axis is not None]


def _arcs(path: Path) -> Iterable[tuple[Vec2, float, float]]:
    """Centre, radius and turn (radians, without its sign) of each arc."""
    count = len(path.vertices)
    for k, (x0, y0, bulge) in enumerate(path.vertices):
        if not bulge or (k == count - 1 and not path.closed):
            continue
        x1, y1, _ = path.vertices[(k + 1) % count]
        off = (1.0 / bulge - bulge) / 4.0  # of the chord, from its middle to the centre
        centre = ((x0 + x1) / 2.0 - off * (y1 - y0), (y0 + y1) / 2.0 + off * (x1 - x0))
        radius = math.hypot(x0 - centre[0], y0 - centre[1])
        rounded = (round(centre[0], _DECIMALS), round(centre[1], _DECIMALS))
        yield rounded, round(radius, _DECIMALS), abs(4.0 * math.atan(bulge))


def _axis(
    frame: Frame, centre: Vec2, radius: float, prisms: list[Prism], blank: Blank
) -> RoundAxis | None:
    """The axis as far as there is wood about it; None when there is none."""
    x, y = centre
    low, high = min(p.z_low for p in prisms), max(p.z_high for p in prisms)
    foot = frame.to_bench((x, y, 0.0))
    along = frame.z_axis
    sizes = (blank.length, blank.width, blank.thickness)
    for at, way, size in zip(foot, along, sizes, strict=True):
        if abs(way) > 1e-9:
            near, far = sorted(((0.0 - at) / way, (size - at) / way))
            low, high = max(low, near), min(high, far)
    for end in prisms[0].ends:
        low, high = _before(end, foot, along, (low, high))
    if high - low < _LEAST_LENGTH:
        return None
    return RoundAxis(add(foot, scale(along, low)), add(foot, scale(along, high)), radius)


def _before(end: HalfSpace, foot: Vec3, along: Vec3, span: tuple[float, float]) -> Vec2:
    """A span of the axis without what lies beyond a plane."""
    lean = dot(along, end.outward)
    if abs(lean) < 1e-9:
        return span
    at = dot(subtract(end.point, foot), end.outward) / lean
    return (span[0], min(span[1], at)) if lean > 0.0 else (max(span[0], at), span[1])
