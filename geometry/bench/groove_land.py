"""Finger grooves behind a carved face: the wood before them, and how deep a finger really gets.

Frame and units: the front's part frame, mm; x along the edge, h the distance from it.

Land: the wood between the face and the cove at (x, h) is T - d(x, h) - sqrt(r² - h²), where d is
the depth of the carving.  Over a flat facet it is convex and straight in x, so it is least on the
facet's border, at an end of a side or where its slope along that side is nought.

Hold: a cove that keeps its land can be no deeper than the thickness left at the edge less the
land, so a finger gets min(r, T - d(x, 0) - land), piecewise straight along the edge.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from geometry.bench.carving_numbers import facets_on_front, finished_edges, groove_of
from geometry.bench.drawer_numbers import Drawer, fronts_of
from geometry.bench.front_arrises import eased_by
from geometry.design.spec import BenchSpec
from geometry.primitives.facets import Facets, trimmed
from geometry.primitives.frame import Vec2

_ON_EDGE = 1e-6  # mm
_LITTLE = 1e-3  # mm of land that nobody misses


@dataclass(frozen=True, slots=True)
class Land:
    """The least wood before a groove: how much, and where on the front's face."""

    wood: float
    at: Vec2


def edge_y(spec: BenchSpec, drawer: Drawer) -> float:
    """The y of the edge that the groove lies behind; AssertionError without a groove."""
    groove = groove_of(spec)
    assert groove is not None
    _, y_low, _, y_high = finished_edges(spec, drawer)
    return y_low if groove.at_top else y_high


def edge_depths(spec: BenchSpec, drawer: Drawer) -> tuple[Vec2, ...]:
    """How much the carving or an eased edge takes along the edge: (x, depth) wherever it changes
    its slope."""
    x_low, _, x_high, _ = finished_edges(spec, drawer)
    facets = facets_on_front(spec, drawer)
    if facets is None:
        eased = eased_by(spec, drawer)
        return ((x_low, eased), (x_high, eased))
    y = edge_y(spec, drawer)
    on = {round(x, 6): (x, deep) for x, at, deep in facets.points if abs(at - y) < _ON_EDGE}
    return tuple(on[x] for x in sorted(on))


def finger_profile(spec: BenchSpec, drawer: Drawer) -> tuple[Vec2, ...]:
    """How deep a finger gets along the edge: (x, depth) wherever it changes its slope."""
    groove = groove_of(spec)
    assert groove is not None
    most = fronts_of(spec).thickness - spec.number("finger_land")
    depths = [(x, most - deep) for x, deep in edge_depths(spec, drawer)]
    found: list[Vec2] = []
    for (x, room), (next_x, next_room) in zip(depths, [*depths[1:], depths[-1]], strict=True):
        found.append((x, min(max(room, 0.0), groove.radius)))
        crossings = [
            (x + (next_x - x) * (level - room) / (next_room - room), level)
            for level in (0.0, groove.radius)
            if (room - level) * (next_room - level) < 0.0
        ]
        found += sorted(crossings)
    return tuple(found)


def stretches_without_land(spec: BenchSpec, drawer: Drawer) -> tuple[Vec2, ...]:
    """From where to where, along the edge, the land there is less than it is to be."""
    groove = groove_of(spec)
    assert groove is not None
    most = fronts_of(spec).thickness - groove.radius - spec.number("finger_land")
    depths = edge_depths(spec, drawer)
    found: list[Vec2] = []
    for (x, deep), (next_x, next_deep) in pairwise(depths):
        start, end = x, next_x
        if max(deep, next_deep) <= most + _LITTLE:
            continue
        if deep < most:
            start = x + (next_x - x) * (most - deep) / (next_deep - deep)
        if next_deep < most:
            end = x + (next_x - x) * (most - deep) / (next_deep - deep)
        if found and abs(found[-1][1] - start) < _ON_EDGE:
            start = found.pop()[0]
        found.append((start, end))
    return tuple(found)


def least_land(spec: BenchSpec, drawer: Drawer) -> Land:
    """The least wood before the groove of a front."""
    groove, thickness = groove_of(spec), fronts_of(spec).thickness
    assert groove is not None
    facets, y = facets_on_front(spec, drawer), edge_y(spec, drawer)
    x_low, _, x_high, _ = finished_edges(spec, drawer)
    if facets is None:
        # An eased edge rises from the arris no slower than the cove behind it falls away.
        return Land(thickness - groove.radius - eased_by(spec, drawer), (x_low, y))
    away = groove.radius if groove.at_top else -groove.radius
    strip = trimmed(facets, (x_low, min(y, y + away), x_high, max(y, y + away)))
    return _least(strip, y, groove.radius, thickness)


def _least(strip: Facets, edge: float, radius: float, thickness: float) -> Land:
    found: list[Land] = []
    for face in strip.faces:
        corners = strip.corners(face)
        for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
            rise, run = b[2] - a[2], abs(b[1] - edge) - abs(a[1] - edge)
            shares = [0.0]
            if abs(run) > _ON_EDGE:
                slope = rise / run
                h = radius * slope / math.hypot(1.0, slope)
                share = (h - abs(a[1] - edge)) / run
                shares += [share] if 0.0 < share < 1.0 else []
            for share in shares:
                x, y, deep = (p + share * (q - p) for p, q in zip(a, b, strict=True))
                cove = math.sqrt(max(0.0, radius**2 - (y - edge) ** 2))
                found.append(Land(thickness - deep - cove, (x, y)))
    return min(found, key=lambda land: (land.wood, land.at))
