"""What can be measured of a joint in a view: corners and edges, and which of them the joint makes.

Frame and units: (u, v) of the view, mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from geometry.design.joint import Joint
from geometry.primitives.frame import Frame, Vec3, dot, scale
from geometry.sheets.outlines import Outlines
from geometry.solids.cutting import placed, placed_shape
from geometry.solids.section import cut_region
from geometry.solids.solid import Flags, Floats, Indices
from geometry.views.breaks import Broken, at_break
from geometry.views.joint_scene import (
    JointPart,
    JointScene,
    aimed_at,
    beyond_breaks,
    without,
)
from geometry.views.sections import plane_of
from geometry.views.view import View

_DECIMALS = 3
_NEAR = 2e-3  # mm
_FACING = 0.2  # cosine
_NO_FLAGS: Flags = np.empty(0, dtype=np.bool_)


def has_cuts(joint: Joint) -> bool:
    """Whether anything is cut; faces that only lie on each other are marked where they touch."""
    return bool(joint.cuts_first or joint.cuts_second)


def contact_edges(joint: Joint) -> Floats:
    """The sides of the faces that should meet, (n, 2, 3)."""
    sides = [
        (corner, contact.corners[k - 1])
        for contact in joint.contacts
        for k, corner in enumerate(contact.corners)
    ]
    return np.array(sides, dtype=np.float64).reshape(-1, 2, 3)


def marked_edges(joint: Joint, which: int) -> Floats:
    """Where the other part's outline is to be marked on one that is not cut to it, (n, 2, 3): that
    of faces that only lie on it, or of one to which something there is measured."""
    if not has_cuts(joint):
        return contact_edges(joint)
    aimed = {m.at for m in joint.measures if m.at is not None and which in m.found_on}
    faces = [one for one in joint.contacts if aimed.intersection(one.corners)]
    if not faces:
        return np.empty((0, 2, 3))
    # What a screw or a slot keeps apart is one outline to the maker.
    points = np.array([corner for one in faces for corner in one.corners])
    _, _, axes = np.linalg.svd(points - points.mean(axis=0), full_matrices=False)
    flat = shapely.MultiPoint(points @ axes[:2].T).convex_hull
    ring = np.array(flat.exterior.coords) @ axes[:2] + (points.mean(axis=0) @ axes[2]) * axes[2]
    return np.stack([ring[:-1], ring[1:]], axis=1)


def shown_of(points: Floats, parts: Sequence[JointPart]) -> Flags:
    """Which points (n, 3) lie where no part is cut short."""
    kept = np.ones(len(points), dtype=np.bool_)
    for part in parts:
        for one in part.breaks:
            kept &= (points - one.point) @ np.array(one.outward) < _NEAR
    return kept if kept.any() else ~kept


def shown_edges(edges: Floats, parts: Sequence[JointPart]) -> Floats:
    """What of some edges (n, 2, 3) lies where no part is cut short."""
    for part in parts:
        for plane in part.breaks:
            off = (edges - np.array(plane.point)) @ np.array(plane.outward)
            edges, off = edges[(off < _NEAR).any(axis=1)], off[(off < _NEAR).any(axis=1)]
            for end in (0, 1):
                beyond = off[:, end] > _NEAR
                t = (off[:, end] / np.where(beyond, off[:, end] - off[:, 1 - end], 1.0))[:, None]
                cut = edges[:, end] + (edges[:, 1 - end] - edges[:, end]) * t
                edges = edges.copy()
                edges[beyond, end] = cut[beyond]
    return edges


@dataclass(frozen=True, slots=True, eq=False)
class ToMark:
    """What is to be marked on a part that is not there as such: ``edges`` (n, 2, 3) of faces that
    look along ``normals``, and ``points`` (m, 3), such as middles of holes."""

    edges: Floats
    normals: tuple[Vec3, ...]
    points: Floats


def to_mark(joint: Joint, which: int) -> ToMark:
    """That of one of a joint's parts."""
    sign = 1.0 if which == 0 else -1.0
    normals = tuple(scale(one.normal, sign) for one in joint.contacts)
    return ToMark(marked_edges(joint, which), normals, aimed_at(joint, which))


def part_outlines(one: JointPart, mark: ToMark, lines: Broken) -> Outlines:
    """A part alone."""
    view = lines.linework.view
    flat = np.array((view.right, view.up)).T
    solid = placed(one.part)
    edges = solid.solid.edges[~solid.solid.smooth]
    ends = solid.vertices[edges]
    whole = ~_in_one_break(ends, one)
    ends = ends[whole]
    aimed = mark.points[~beyond_breaks(mark.points, one)]
    made = np.concatenate([one.edges, mark.edges])
    shown = shown_of(made.mean(axis=1), (one,))
    made, only_marked = made[shown], (np.arange(len(made)) >= len(one.edges))[shown]
    segments = np.concatenate([made, ends]) @ flat
    segments, first = _once(segments.reshape(-1, 4))
    own_edges = first < len(made)
    corners = np.concatenate([made.reshape(-1, 3), aimed, solid.vertices])
    real = ~at_break(corners, one)
    points, first_point = _once((corners @ flat)[real])
    which = np.flatnonzero(real)[first_point]
    own = which < 2 * len(made) + len(aimed)
    limits = _limits(one, flat)
    drawn = shapely.multilinestrings(
        shapely.linestrings(lines.linework.segments[lines.linework.visible].reshape(-1, 2, 2))
    )
    seen = shapely.distance(shapely.points(points), drawn) < _NEAR
    # What is marked on a face is seen from where that face is, and only from there.
    facing = any(dot(normal, view.toward) > _FACING for normal in mark.normals)
    seen[np.isin(which, np.flatnonzero(np.repeat(only_marked, 2)))] = facing
    if len(aimed) and len(made):
        # A middle is seen where the nearest of what is round it is.
        rims = made.mean(axis=1)
        nearest = np.linalg.norm(aimed[:, None] - rims, axis=2).argmin(axis=1)
        rim_seen = shapely.distance(shapely.points(rims[nearest] @ flat), drawn) < _NEAR
        rim_seen[only_marked[nearest]] = facing
        k = which - 2 * len(made)
        middle = (k >= 0) & (k < len(aimed))
        seen[middle] |= rim_seen[k[middle]]
    middles = (segments[:, :2] + segments[:, 2:]) / 2.0
    seen_edges = shapely.distance(shapely.points(middles), drawn) < _NEAR
    marked = np.flatnonzero(own_edges)[only_marked[first[own_edges]]]
    seen_edges[marked] = facing
    size = max(float(np.ptp(segments.reshape(-1, 2), axis=0).max()), 1.0)
    return Outlines(view, points, own, seen, segments, own_edges, seen_edges, limits, size)


def section_outlines(scene: JointScene, view: View, at: float) -> tuple[Outlines, int]:
    """What a plane cuts of both parts, and how many of them it meets."""
    plane = plane_of(view, at)
    joint = scene.joint
    sides: list[Floats] = []
    own: list[Flags] = []
    points: list[Floats] = []
    own_points: list[Flags] = []
    limits: list[Floats] = []
    flat = np.array((view.right, view.up)).T
    for one, cuts in zip(scene.both, (joint.cuts_first, joint.cuts_second), strict=True):
        region = cut_region(placed(one.part), plane)
        if region.is_empty:
            continue
        bare = without(one.part.shape, cuts)
        before = cut_region(placed_shape(bare, one.part.frame), plane)
        lines = _sides(region)
        middles = (lines[:, :2] + lines[:, 2:]) / 2.0
        whole = ~at_break(_in_bench(middles, plane), one)
        fresh = shapely.distance(shapely.points(middles), before.boundary) > _NEAR
        if not has_cuts(joint):
            fresh = _touching(middles, scene, plane)
        corners = lines[:, :2]
        real = ~at_break(_in_bench(corners, plane), one)
        ends = _rounded(lines[fresh & whole].reshape(-1, 2))
        sides.append(lines[whole])
        own.append(fresh[whole])
        points.append(corners[real])
        limits.append(_limits(one, flat))
        own_points.append(np.array([p in ends for p in map(tuple, _keys(corners[real]))], np.bool_))
    if not sides:
        return _nothing(view), 0
    edges, corners = np.concatenate(sides), np.concatenate(points)
    size = max(float(np.ptp(edges.reshape(-1, 2), axis=0).max()), 1.0)
    return (
        Outlines(
            view,
            corners,
            np.concatenate(own_points),
            np.ones(len(corners), dtype=np.bool_),
            edges,
            np.concatenate(own),
            np.ones(len(edges), dtype=np.bool_),
            np.concatenate(limits),
            size,
        ),
        len(sides),
    )


def _nothing(view: View) -> Outlines:
    points, lines, flags = np.empty((0, 2)), np.empty((0, 4)), _NO_FLAGS
    return Outlines(view, points, flags, flags, lines, flags, flags, points, 1.0)


def _in_one_break(edges: Floats, one: JointPart) -> Flags:
    """Which edges (n, 2, 3) lie in the plane of a break."""
    found = np.zeros(len(edges), dtype=np.bool_)
    for plane in one.breaks:
        off = np.abs((edges - np.array(plane.point)) @ np.array(plane.outward))
        found |= (off < _NEAR).all(axis=1)
    return found


def _limits(one: JointPart, flat: Floats) -> Floats:
    """How far the whole part reaches along each axis of the view, least and greatest; (2, 2)."""
    reach = placed(one.whole).vertices @ flat
    return np.stack([reach.min(axis=0), reach.max(axis=0)])


def _sides(region: BaseGeometry) -> Floats:
    """The sides of all rings of a region, (n, 4)."""
    found = []
    for piece in shapely.get_parts(region):
        for ring in (piece.exterior, *piece.interiors):
            points = np.array(ring.coords)
            found.append(np.hstack([points[:-1], points[1:]]))
    return np.concatenate(found)


def _in_bench(points: Floats, plane: Frame) -> Floats:
    """Points of a plane (n, 2) in bench coordinates, (n, 3)."""
    axes = np.array((plane.x_axis, plane.y_axis))
    return np.asarray(points @ axes + np.array(plane.origin))


def _touching(middles: Floats, scene: JointScene, plane: Frame) -> Flags:
    """Which points of a section lie in a face that should meet another."""
    at = _in_bench(middles, plane)
    found = np.zeros(len(at), dtype=np.bool_)
    for contact in scene.joint.contacts:
        corners = np.array(contact.corners)
        low, high = corners.min(axis=0) - _NEAR, corners.max(axis=0) + _NEAR
        level = np.abs((at - corners[0]) @ np.array(contact.normal)) < contact.gap + _NEAR
        found |= level & ((at >= low) & (at <= high)).all(axis=1)
    return found


def _once(rows: Floats) -> tuple[Floats, Indices]:
    """Each of some rows once, and where it first stands."""
    if not len(rows):
        return rows, np.empty(0, dtype=np.intp)
    keys = np.round(rows, _DECIMALS) + 0.0
    if rows.shape[1] == 4:  # a segment is the same from either end
        turned = (keys[:, 0] > keys[:, 2]) | (
            (keys[:, 0] == keys[:, 2]) & (keys[:, 1] > keys[:, 3])
        )
        keys[turned] = keys[turned][:, (2, 3, 0, 1)]
    _, first = np.unique(keys, axis=0, return_index=True)
    first = np.sort(first)
    return rows[first], first


def _keys(points: Floats) -> list[list[float]]:
    rounded: list[list[float]] = (np.round(points, _DECIMALS) + 0.0).tolist()
    return rounded


def _rounded(points: Floats) -> set[tuple[float, ...]]:
    return {tuple(point) for point in _keys(points)}
