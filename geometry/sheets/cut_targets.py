"""Where on the views of a part the number of each of its cuts may point.

Frame: (u, v) of the view, mm.

Method: a cut owns those panels of the finished solid that have its waste just outside them.  Where
two cuts go equally deep a panel may be owned by both: each has those of its points beside which its
own waste is.  A panel seen at all offers points within it, one seen edge on points along it; a
panel nearer to the viewer hides what lies behind it.  A cut that later ones take away altogether
keeps the middle of its waste on the face.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import shapely

from geometry.cuts.removal import Removal
from geometry.cuts.screw_hole import ScrewHole
from geometry.design.part import Shape
from geometry.primitives.frame import BENCH_FRAME, Vec2
from geometry.sheets.waste import wastes
from geometry.solids.cutting import placed_shape, removals_by_cut, solid_of
from geometry.solids.solid import Flags, Floats, Indices
from geometry.solids.taken import taken
from geometry.views.scene import scene_of
from geometry.views.view import PART_EDGE, PART_END, PART_FACE, View

PART_VIEWS = (PART_FACE, PART_EDGE, PART_END)
_BESIDE = 0.05  # mm from a face, where its waste is looked for: more than an arc's chords stray
_EDGE_ON = 0.02  # cosine: a face that leans less toward the viewer is drawn as a line
_INWARD = 0.01  # of the way to a panel's middle, where the waste beside a point is looked for
_ON_A_SIDE = 1e-3  # mm: a point on the side of a panel lies in it
_COVERS = 0.01  # mm that a panel lies in front of what it hides
_MOSTLY = 0.5
_MOST_PANELS = 32  # of a cut, as of a round hole
_MOST = 8  # targets of a cut in a view
_APART = 0.2  # of the cut's size, between two of them
_KEPT = 256  # shapes of one bench and the one before


@dataclass(frozen=True, slots=True)
class Target:
    """A point on a cut; ``room`` is how far it is from the sides of the face that it lies in, 0 for
    one seen as a line; ``seen`` is False where wood hides it.  mm."""

    at: Vec2
    room: float
    seen: bool


@dataclass(frozen=True, slots=True, eq=False)
class _Points:
    """What the panels of a cut offer: points (n, 2), their room and whether they are seen (n,)."""

    at: Floats
    room: Floats
    seen: Flags


@lru_cache(maxsize=_KEPT)
def cut_targets(shape: Shape) -> dict[str, dict[int, tuple[Target, ...]]]:
    """By the view's name, then by the number of the cut: targets, the best first.

    A cut that is seen in some view has none in those that hide it; one hidden in all has them in
    one alone.
    """
    owned = _owned_panels(shape)
    found: dict[str, dict[int, tuple[Target, ...]]] = {}
    for view in PART_VIEWS:
        offered = _offered(shape, view, owned)
        found[view.name] = {number: _chosen(some) for number, some in offered.items()}
    for number in range(1, len(shape.cuts) + 1):
        seen = any(one.seen for own in found.values() for one in own.get(number, ()))
        shown = False
        for own in found.values():
            kept = tuple(one for one in own.pop(number, ()) if one.seen or not (seen or shown))
            if kept:
                own[number] = kept
                shown = True
        if not shown:
            found[PART_FACE.name] |= _by_its_waste(shape, number)
    return found


def _owned_panels(shape: Shape) -> dict[int, Indices]:
    """The panels of the solid that each cut has made, the largest first."""
    solid = solid_of(shape)
    corners = solid.vertices[solid.panels]
    beside = corners[:, :3].mean(axis=1) + _BESIDE * solid.panel_normals
    blank = shape.blank
    cut_in = ((beside > 0.0) & (beside < (blank.length, blank.width, blank.thickness))).all(axis=1)
    inner, rim = np.flatnonzero(cut_in), np.flatnonzero(~cut_in)
    crossing = np.cross(corners[:, 2] - corners[:, 0], corners[:, 3] - corners[:, 1])
    area = np.linalg.norm(crossing, axis=1)
    found: dict[int, Indices] = {}
    for number, removals in enumerate(removals_by_cut(shape), start=1):
        own = inner[_gone(removals, beside[inner])]
        if not len(own):  # an end that is sawn off just where the blank ends
            own = rim[_gone(removals, beside[rim])]
        if isinstance(shape.cuts[number - 1], ScrewHole):
            own = own[_mostly_beside(removals, corners[own], solid.panel_normals[own])]
        own = own[np.argsort(-np.round(area[own], 6), kind="stable")]
        if len(own) > _MOST_PANELS:
            own = own[:: -(-len(own) // _MOST_PANELS)]
        found[number] = own
    return found


def _mostly_beside(removals: Sequence[Removal], corners: Floats, normals: Floats) -> Flags:
    """Which panels, corners (n, 4, 3), have the waste outside most of them: a screw's head that
    begins right on a face lies beside a little of a panel alone."""
    middle = corners[:, :3].mean(axis=1)[:, None]
    points = (middle + corners) / 2.0 + _BESIDE * normals[:, None]
    beside = _gone(removals, points.reshape(-1, 3)).reshape(-1, 4)
    found: Flags = beside.mean(axis=1) > _MOSTLY
    return found


def _gone(removals: Sequence[Removal], points: Floats) -> Flags:
    """Which points (n, 3) any of the removals takes away."""
    found: Flags = np.zeros(len(points), dtype=np.bool_)
    for removal in removals:
        found |= taken(removal, points)
    return found


def _offered(shape: Shape, view: View, owned: dict[int, Indices]) -> dict[int, _Points]:
    """All points that the panels of each cut offer in a view."""
    solid = solid_of(shape)
    axes = np.array((view.right, view.up, view.toward), dtype=np.float64)
    panels = np.concatenate([*owned.values(), np.empty(0, dtype=np.intp)])
    corners = (solid.vertices[solid.panels] @ axes.T)[panels]
    normals = (solid.panel_normals @ axes.T)[panels]
    lines = np.abs(normals[:, 2]) <= _EDGE_ON
    # As many points for each panel as one seen edge on has; those of others are fewer.
    at = _along_sides(corners)
    real = np.ones(at.shape[:2], dtype=np.bool_)
    rooms = np.zeros(at.shape[:2])
    inner, room = _within(corners[~lines])
    count = inner.shape[1]
    at[~lines, :count], rooms[~lines, :count], real[~lines, count:] = inner, room, False
    off = at + _BESIDE * _outward(normals, lines)[:, None]
    inward = at + _INWARD * (corners[:, None, :3].mean(axis=2) - at)
    beside = (inward + _BESIDE * normals[:, None])[real] @ axes
    open_ = np.broadcast_to((normals[:, 2] > -_EDGE_ON)[:, None], real.shape)[real]
    seen = open_ & ~_covered(shape, view, off[real])
    of_panel = np.repeat(list(owned), [len(own) for own in owned.values()])
    number = np.broadcast_to(of_panel[:, None], real.shape)[real]
    at, rooms = at[real][:, :2], rooms[real]
    removals = removals_by_cut(shape)
    found: dict[int, _Points] = {}
    for one in dict.fromkeys(of_panel.tolist()):
        own = np.flatnonzero(number == one)
        mine = own[_gone(removals[one - 1], beside[own])]
        own = mine if len(mine) else own
        found[one] = _Points(at[own], rooms[own], seen[own])
    return found


def _outward(normals: Floats, lines: Flags) -> Floats:
    """Which way points are moved off their faces to see what hides them, (n, 3): toward the viewer,
    but out of one seen edge on."""
    found = np.zeros_like(normals)
    found[:, 2] = np.sign(normals[:, 2])
    found[lines] = normals[lines]
    return found


def _along_sides(corners: Floats) -> Floats:
    """Points on the sides of n panels with corners (n, 4, 3), (n, 12, 3)."""
    run = np.roll(corners, -1, axis=1) - corners
    return np.concatenate([corners + share * run for share in (0.5, 0.3, 0.7)], axis=1)


def _within(corners: Floats) -> tuple[Floats, Floats]:
    """Points (n, 5, 3) within n panels with corners (n, 4, 3) in u, v, w; their room (n, 5)."""
    three = (corners[:, 2] == corners[:, 3]).all(axis=1)
    middle = corners.mean(axis=1)
    middle[three] = corners[three, :3].mean(axis=1)
    middle = middle[:, None]
    points = np.concatenate([middle, middle + 0.5 * (corners - middle)], axis=1)
    start, run = corners[..., :2], (np.roll(corners, -1, axis=1) - corners)[..., :2]
    length = np.hypot(run[..., 0], run[..., 1])
    off = points[:, :, None, :2] - start[:, None]
    run, length = run[:, None], length[:, None]
    away = np.abs(off[..., 0] * run[..., 1] - off[..., 1] * run[..., 0])
    real = np.broadcast_to(length > _COVERS, away.shape)
    away = np.where(real, away / np.where(real, length, 1.0), np.inf).min(axis=2)
    return points, np.where(np.isinf(away), 0.0, away)  # a speck has none


def _covered(shape: Shape, view: View, points: Floats) -> Flags:
    """Which points (n, 3) in u, v, w have wood between them and the viewer."""
    panels = scene_of((placed_shape(shape, BENCH_FRAME),), (view,)).panels
    u, v, w = (points[:, axis, None] for axis in range(3))
    inside: Flags = np.ones((len(points), panels.plane.shape[1]), dtype=np.bool_)
    for p, q, r in panels.sides:
        inside &= p * u + q * v + r > -_ON_A_SIDE
    p, q, r, s = panels.plane
    found: Flags = (inside & (-(p * u + q * v + s) / r > w + _COVERS)).any(axis=1)
    return found


def _chosen(some: _Points) -> tuple[Target, ...]:
    """The roomiest of those that are seen, apart from each other."""
    apart = _APART * float(np.ptp(some.at, axis=0).max())
    kept: list[Target] = []
    each = zip(some.at.tolist(), some.room.tolist(), some.seen.tolist(), strict=True)
    for (u, v), room, seen in sorted(each, key=lambda one: (not one[2], -round(one[1], 3))):
        if all(math.dist((u, v), other.at) > apart for other in kept):
            kept.append(Target((u, v), room, seen))
            if len(kept) == _MOST:
                break
    return tuple(kept)


def _by_its_waste(shape: Shape, number: int) -> dict[int, tuple[Target, ...]]:
    for waste in wastes(shape):
        region = waste.low or waste.high
        if waste.number == number:
            middle = shapely.Polygon(region).representative_point()
            return {number: (Target((middle.x, -middle.y), 0.0, seen=False),)}
    return {}
