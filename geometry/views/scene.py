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
from shared.tolerances import COPLANAR, MERGE

EDGE_ON = 1e-7
"""A face whose normal leans less than this toward the viewer is seen as a line: a metre of it
is as narrow as MERGE."""


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """n edges as seen, sorted by place: ends ``a`` and ``b`` (3, n) in u, v, w; ``place`` (n,).

    ``open`` (n,): a face beside the edge is toward the viewer; without one it is surely hidden.
    """

    a: Floats
    b: Floats
    place: Indices
    open: Flags


@dataclass(frozen=True, slots=True, eq=False)
class Panels:
    """n convex flat pieces toward the viewer, sorted by place and then by where they begin in u.

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
class Rims:
    """n edges where a solid turns away from the viewer, sorted by place.

    Each runs from ``a`` to ``b`` (2, n) in u, v with the solid on its left; ``place`` (n,).
    """

    a: Floats
    b: Floats
    place: Indices


@dataclass(frozen=True, slots=True, eq=False)
class Scene:
    """Everything that is looked at; ``low`` and ``high`` (3, places) box each solid."""

    solids: int
    views: int
    lines: Lines
    rims: Rims
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
    lines, rims = _lines_and_rims(solids, axes, seen, starts, stride)
    return Scene(
        solids=len(solids),
        views=len(views),
        lines=lines,
        rims=rims,
        panels=_panels(solids, axes, seen, starts, stride),
        low=np.minimum.reduceat(seen, place_starts, axis=1),
        high=np.maximum.reduceat(seen, place_starts, axis=1),
    )


def _lines_and_rims(
    solids: Sequence[PlacedSolid], axes: Floats, seen: Floats, starts: Indices, stride: int
) -> tuple[Lines, Rims]:
    counts = np.array([len(placed.solid.edges) for placed in solids])
    edges = np.concatenate([placed.solid.edges for placed in solids])
    edges += np.repeat(starts, counts)[:, None]
    edges = edges.T
    normals = np.concatenate([placed.edge_normals for placed in solids])
    smooth = np.concatenate([placed.solid.smooth for placed in solids])
    owner = np.repeat(np.arange(len(solids)), counts)
    # (2, views * edges): how far the two faces beside each edge lean toward the viewer.
    toward = (axes[:, 2] @ normals.reshape(-1, 3).T).reshape(-1, 2).T
    facing, away = np.ascontiguousarray(toward > EDGE_ON), np.ascontiguousarray(toward < -EDGE_ON)
    # A smooth edge shows where the surface turns away: its two faces differ in facing.
    turns = (facing[0] != facing[1]) | (away[0] != away[1])

    view, edge = np.nonzero(turns.reshape(len(axes), -1) | ~smooth)
    ends = edges.take(edge, axis=1) + view * stride
    a, b = seen.take(ends[0], axis=1), seen.take(ends[1], axis=1)
    drawn = np.flatnonzero((np.abs(b[0] - a[0]) > MERGE) | (np.abs(b[1] - a[1]) > MERGE))
    a, b = a.take(drawn, axis=1), b.take(drawn, axis=1)
    view, edge = view.take(drawn), edge.take(drawn)
    place = view * len(solids) + owner.take(edge)
    at = view * len(owner) + edge
    facing, away = facing.take(at, axis=1), away.take(at, axis=1)
    rim, swap = _rims(place, facing, away)
    rim_a, rim_b = a[:2].take(rim, axis=1), b[:2].take(rim, axis=1)
    return (
        Lines(a=a, b=b, place=place, open=facing[0] | facing[1]),
        Rims(
            a=np.where(swap, rim_b, rim_a),
            b=np.where(swap, rim_a, rim_b),
            place=place.take(rim),
        ),
    )


def _rims(place: Indices, facing: Flags, away: Flags) -> tuple[Indices, Flags]:
    """Which edges are rims, and which of them run with the solid on their right.

    ``facing`` and ``away`` (2, n) tell of the two faces beside each edge.  Faces seen edge-on
    have no extent, so they may be counted with those toward the viewer or with those away: the
    first leaves no rims round a pocket in front, the second none round one behind.  Each solid
    is given what leaves it fewer.
    """
    with_front = away[0] != away[1]
    with_rear = facing[0] != facing[1]
    places = int(place.max(initial=-1)) + 1
    fewer_rear = np.bincount(place[with_rear], minlength=places) < np.bincount(
        place[with_front], minlength=places
    )
    rear = fewer_rear.take(place)
    rim = np.flatnonzero(np.where(rear, with_rear, with_front))
    return rim, np.where(rear, ~facing[0], away[0]).take(rim)


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
    place = view * len(solids) + owner.take(panel)
    points = seen[:, corners.take(panel, axis=0).T + view * stride]  # (3, 4, n)
    wide = np.flatnonzero(_wide_enough(points))
    view, panel, place = view.take(wide), panel.take(wide), place.take(wide)
    points = points.take(wide, axis=2)
    low = points.min(axis=1)
    order = np.argsort(place * (2.0 * np.abs(low[0]).max() + 1.0) + low[0])
    view, panel, place = view.take(order), panel.take(order), place.take(order)
    points, low = points.take(order, axis=2), low.take(order, axis=1)
    sides = np.empty((4, 3, len(panel)))
    for corner in range(4):
        sides[corner] = inward(points[:2, corner], points[:2, (corner + 1) % 4])
    plane = np.empty((4, len(panel)))
    plane[:3] = turned[view, :, panel].T
    plane[3] = -(plane[0] * points[0, 0] + plane[1] * points[1, 0] + plane[2] * points[2, 0])
    return Panels(
        place=place,
        sides=sides,
        plane=plane,
        low=low,
        high=points.max(axis=1),
    )


def _wide_enough(points: Floats) -> Flags:
    """Which panels (3, 4, n) are wider as seen than what counts as nothing.

    A kernel leaves crumbs beside slanting cuts, smaller than any side's direction can be told;
    such a panel has no inside, and would seem to hide everything in line with it.
    """
    (u0, u1, u2, u3), (v0, v1, v2, v3) = points[0], points[1]
    doubled = np.abs((u2 - u0) * (v3 - v1) - (v2 - v0) * (u3 - u1))
    reach = np.ptp(points[0], axis=0) + np.ptp(points[1], axis=0)
    return np.asarray(doubled > COPLANAR * reach)


def inward(a: Floats, b: Floats) -> Floats:
    """The lines (p, q, r) from ``a`` to ``b`` (2, n): p u + q v + r is the distance to the left.

    Where the two ends are one, as on a triangle's fourth side, it is 1 everywhere, and so where
    they are too near for the line between them to have a direction.
    """
    (ua, va), (ub, vb) = a, b
    along_u, along_v = ub - ua, vb - va
    length = np.sqrt(along_u * along_u + along_v * along_v)
    nothing = length < COPLANAR / 100.0
    length[nothing] = 1.0
    p, q = -along_v / length, along_u / length
    return np.stack((p, q, nothing - (p * ua + q * va)))
