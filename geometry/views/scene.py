"""All solids of a look, gathered into a few large arrays and turned into every view at once.

Frame and units: mm; (u, v, w) as geometry.views.view has them.  Several views are stacked one
after the other, so that the work on a bench is the same few array operations whether it has
one part or two hundred, one view or three.  A *place* is one solid in one view: number
``view * solids + solid``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from geometry.solids.solid import Flags, Floats, Indices, PlacedSolid
from geometry.views.view import View
from shared.tolerances import MERGE

EDGE_ON = 1e-9
"""A face whose normal leans less than this toward the viewer is seen as a line: even ten metres
of it would be narrower than rounding."""


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """n edges as seen: ends ``a`` and ``b`` (3, n) in u, v, w; ``place`` (n,).

    ``open`` (n,): a face beside the edge is toward the viewer; without one it is surely hidden.
    """

    a: Floats
    b: Floats
    place: Indices
    open: Flags


@dataclass(frozen=True, slots=True, eq=False)
class Panels:
    """n convex flat pieces toward the viewer, sorted by place.

    ``sides`` (4, 3, n): for each of up to four sides the line (p, q, r) with
    p u + q v + r the distance in mm inward from it.  ``plane`` (4, n): (p, q, r, s) with
    p u + q v + r w + s the distance in front of the panel.  ``low``, ``high`` (3, n): its box.
    """

    place: Indices
    sides: Floats
    plane: Floats
    low: Floats
    high: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Scene:
    """Everything that is looked at; ``low`` and ``high`` (3, places) box each solid."""

    solids: int
    views: int
    lines: Lines
    panels: Panels
    low: Floats
    high: Floats


def scene_of(solids: Sequence[PlacedSolid], views: Sequence[View]) -> Scene:
    """At least one solid in at least one view."""
    axes = np.array([(view.right, view.up, view.toward) for view in views], dtype=np.float64)
    vertices = np.concatenate([solid.vertices for solid in solids])
    counts = [len(solid.vertices) for solid in solids]
    starts = np.concatenate(((0,), np.cumsum(counts)[:-1]))
    # (3, views * vertices): all vertices of the first view, then of the second ...
    seen = np.ascontiguousarray((axes @ vertices.T).transpose(1, 0, 2)).reshape(3, -1)
    stride = len(vertices)
    place_starts = (np.arange(len(views))[:, None] * stride + starts).ravel()
    return Scene(
        solids=len(solids),
        views=len(views),
        lines=_lines(solids, axes, seen, starts, stride),
        panels=_panels(solids, axes, seen, starts, stride),
        low=np.minimum.reduceat(seen, place_starts, axis=1),
        high=np.maximum.reduceat(seen, place_starts, axis=1),
    )


def _lines(
    solids: Sequence[PlacedSolid], axes: Floats, seen: Floats, starts: Indices, stride: int
) -> Lines:
    counts = np.array([len(placed.solid.edges) for placed in solids])
    edges = np.concatenate([placed.solid.edges for placed in solids])
    edges += np.repeat(starts, counts)[:, None]
    normals = np.concatenate([placed.edge_normals for placed in solids])
    smooth = np.concatenate([placed.solid.smooth for placed in solids])
    owner = np.repeat(np.arange(len(solids)), counts)
    toward = normals @ axes[:, 2].T  # (edges, 2, views)
    facing = toward > EDGE_ON
    first, second = facing[:, 0].T, facing[:, 1].T
    away = toward < -EDGE_ON
    # A smooth edge shows where the surface turns away: its two faces differ in facing.
    outline = (first != second) | (away[:, 0] != away[:, 1]).T
    view, edge = np.nonzero(outline | ~smooth)
    ends = edges[edge] + (view * stride)[:, None]
    a, b = seen[:, ends[:, 0]], seen[:, ends[:, 1]]
    long_enough = (np.abs(b[0] - a[0]) > MERGE) | (np.abs(b[1] - a[1]) > MERGE)
    view, edge = view[long_enough], edge[long_enough]
    return Lines(
        a=a[:, long_enough],
        b=b[:, long_enough],
        place=view * len(solids) + owner[edge],
        open=(first | second)[view, edge],
    )


def _panels(
    solids: Sequence[PlacedSolid], axes: Floats, seen: Floats, starts: Indices, stride: int
) -> Panels:
    counts = np.array([len(placed.solid.panels) for placed in solids])
    corners = np.concatenate([placed.solid.panels for placed in solids])
    corners += np.repeat(starts, counts)[:, None]
    normals = np.concatenate([placed.panel_normals for placed in solids])
    owner = np.repeat(np.arange(len(solids)), counts)
    turned = axes @ normals.T  # (views, 3, panels)
    view, panel = np.nonzero(turned[:, 2] > EDGE_ON)
    at = (corners[panel] + (view * stride)[:, None]).T
    points = seen[:, at]  # (3, 4, n)
    ahead = points[:2, (1, 2, 3, 0)]
    along = ahead - points[:2]
    length = np.hypot(along[0], along[1])
    # A triangle's fourth side has no length; it is given a distance that never excludes.
    real = length > 0.0
    inverse = np.divide(1.0, length, out=np.zeros_like(length), where=real)
    sides = np.empty((4, 3, len(panel)))
    sides[:, 0] = -along[1] * inverse
    sides[:, 1] = along[0] * inverse
    sides[:, 2] = -(sides[:, 0] * points[0] + sides[:, 1] * points[1]) + ~real
    plane = np.empty((4, len(panel)))
    plane[:3] = turned[view, :, panel].T
    plane[3] = -(plane[:3] * points[:, 0]).sum(axis=0)
    return Panels(
        place=view * len(solids) + owner[panel],
        sides=sides,
        plane=plane,
        low=points.min(axis=1),
        high=points.max(axis=1),
    )
