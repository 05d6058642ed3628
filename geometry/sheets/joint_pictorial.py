"""A joint's two parts in a pictorial view, together and drawn apart.

Frame and units: bench coordinates, mm; views as they are.

Method: of the views from the eight corners of the bench the one is taken in which, drawn apart,
most of what the joint makes of either part is seen, its edges as well as the faces that it cuts,
and in which, together, neither part hides behind the other; from above rather than from below, and
from in front, where that is nearly as good.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import shapely

from geometry.design.part import Part
from geometry.primitives.frame import Vec3, add, dot, scale
from geometry.sheets.joint_outlines import contact_edges, has_cuts, shown_edges, shown_of
from geometry.sheets.section_marks import visible_lines
from geometry.solids.cutting import placed
from geometry.solids.solid import Floats
from geometry.views.breaks import Broken, at_break, broken
from geometry.views.clearing import first_clear, outline, overlaps, standing
from geometry.views.joint_scene import (
    BreakPlane,
    JointPart,
    JointScene,
    contact_corners,
    faces_made,
    without,
)
from geometry.views.linework import Linework
from geometry.views.look import look_all
from geometry.views.parting import moved, way_apart
from geometry.views.pictorial import CORNERS
from geometry.views.seen import seen_of_faces
from geometry.views.view import View

_AIR = 0.25  # of the joint's size, between the parts drawn apart
_LEAST_AIR, _MOST_AIR = 14.0, 60.0  # mm
_LIKING = (1.0, 0.97, 0.9, 0.87, 0.7, 0.68, 0.6, 0.58)  # for each of the corners
_COVERED = 0.3  # what a view is worth in which one part hides the other
_TURNED_AWAY = 0.25  # and one that looks into none of the faces that the joint cuts
_LEFT_OFF = 0.96  # for each end in sight at which a piece is only cut short
_ENOUGH = 0.4  # of a part's lines: a box by itself shows three quarters
_LITTLE = 0.1  # of the joint's edges on a part: fewer are as good as none
_NEAR = 2e-3
_STEPS = (0.2, 0.5, 0.8)  # where along an edge it is looked at
_MOST_TIES = 4
_TOO_FAR = 2.2  # times what opens the joint
_SEEN = 0.2
_EDGE_ON = 0.05
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class JointPictorial:
    """The parts together and apart in one view.

    ``parts`` are as they stand apart; ``ties`` (n, 4) run between them, and ``marked`` (n, 4) bound
    the faces that only touch.
    """

    parts: tuple[Part, Part]
    together: Broken
    apart: Broken
    ties: Floats
    marked: Floats


def joint_pictorial(scene: JointScene, parts: Mapping[str, Part]) -> JointPictorial:
    """Both pictures of a joint; ``parts`` are the bench's by name."""
    way = way_apart(scene.joint, parts)
    least = _least_distance(scene, way)
    tried = moved_part(scene.second, scale(way, least))
    pair = (scene.first, tried)
    view, joined = _most_telling(scene, pair)
    by = scale(way, _distance(scene, way, view, least))
    pulled = (scene.first, moved_part(scene.second, by))
    (drawn_apart,) = look_all([one.part for one in pulled], (view,))
    together = broken(visible_lines(joined), scene.both)
    apart = broken(visible_lines(drawn_apart), pulled)
    return JointPictorial(
        (pulled[0].part, pulled[1].part),
        together,
        apart,
        _ties(scene, pulled, by, view),
        _marked(scene, by, view),
    )


def _most_telling(scene: JointScene, pair: Sequence[JointPart]) -> tuple[View, Linework]:
    """The view from a corner that is worth most, and what is seen there of the parts together;
    ``pair`` are the parts a little apart."""
    apart = look_all([one.part for one in pair], CORNERS)
    seen = [
        liking * _seen_of_joint(pair, visible_lines(lines))
        for liking, lines in zip(_LIKING, apart, strict=True)
    ]
    facing = [_LEFT_OFF ** _breaks_facing(scene, view) for view in CORNERS]
    into = [
        _TURNED_AWAY + (1.0 - _TURNED_AWAY) * math.sqrt(share)
        for share in _looked_into(scene, pair)
    ]
    # The parts together are looked at only where that may be worth most, if nothing hides there.
    most = [seen[k] * facing[k] * into[k] * (1.0 + _ROUNDING) for k in range(len(CORNERS))]
    tries: list[tuple[float, int, Linework]] = []
    for k in sorted(range(len(CORNERS)), key=lambda k: -most[k]):
        if any(most[k] < worth for worth, _, _ in tries):
            break
        (joined,) = look_all(scene.parts, (CORNERS[k],))
        tries.append((seen[k] * _in_sight(joined) * facing[k] * into[k], -k, joined))
    _, k, joined = max(tries, key=lambda one: one[:2])
    return CORNERS[-k], joined


def _in_sight(joined: Linework) -> float:
    """From _COVERED, where one part hides the other wholly, to 1, where enough of both is seen."""
    lines = joined.segments
    size = np.hypot(lines[:, 2] - lines[:, 0], lines[:, 3] - lines[:, 1])
    shares = [
        float(size[mine & joined.visible].sum() / max(size[mine].sum(), _NEAR))
        for mine in (joined.owner == owner for owner in (0, 1))
    ]
    return _COVERED + (1.0 - _COVERED) * min(1.0, min(shares) / _ENOUGH)


def _looked_into(scene: JointScene, pair: Sequence[JointPart]) -> list[float]:
    """For each of the corner views, how much is seen of the faces that the joint cuts.

    A part that only touches has none: where its fellow is cut, that is what must be seen.
    """
    cuts = (scene.joint.cuts_first, scene.joint.cuts_second)
    faces = [
        _within_breaks(faces_made(one.part, without(one.whole.shape, own)), one)
        for one, own in zip(pair, cuts, strict=True)
        if own
    ]
    if not faces:
        return [1.0] * len(CORNERS)
    middles, normals, areas = (np.concatenate(both) for both in zip(*faces, strict=True))
    shares = seen_of_faces([one.part for one in pair], CORNERS, (middles, normals, areas))
    return [float(share) for share in shares]


def _within_breaks(
    faces: tuple[Floats, Floats, Floats], one: JointPart
) -> tuple[Floats, Floats, Floats]:
    """Those faces that are not where a part is cut short."""
    middles, normals, areas = faces
    kept = ~at_break(middles, one)
    return middles[kept], normals[kept], areas[kept]


def _breaks_facing(scene: JointScene, view: View) -> int:
    """How many of the ends at which pieces only leave off are turned to the viewer."""
    planes = [plane for one in scene.both for plane in one.breaks]
    return sum(dot(plane.outward, view.toward) > _EDGE_ON for plane in planes)


def moved_part(one: JointPart, by: Vec3) -> JointPart:
    """One of the two parts, standing elsewhere."""
    return JointPart(
        moved(one.part, by),
        moved(one.whole, by),
        tuple(BreakPlane(add(plane.point, by), plane.outward) for plane in one.breaks),
        one.corners + np.array(by),
        one.edges + np.array(by),
    )


def _least_distance(scene: JointScene, way: Vec3) -> float:
    """How far the second part must go until the joint is open, and a little more."""
    contacts = contact_corners(scene.joint)
    stay, go = (np.concatenate([one.corners, contacts]) @ np.array(way) for one in scene.both)
    size = float(np.ptp(scene.reach(), axis=0).max())
    air = min(max(_AIR * size, _LEAST_AIR), _MOST_AIR)
    return max(0.0, float(stay.max() - go.min())) + air


def _distance(scene: JointScene, way: Vec3, view: View, least: float) -> float:
    """Until the two no longer cover each other in the view, unless that takes them too far."""
    flat = np.array((view.right, view.up))
    step = flat @ np.array(way)
    if math.hypot(*step.tolist()) < _SEEN:
        return least
    first, second = (outline(one.part, flat) for one in scene.both)
    clear = first_clear(overlaps(second, standing([first]), step, _LEAST_AIR / 2.0), least)
    return min(clear, _TOO_FAR * least)


def _seen_of_joint(pulled: Sequence[JointPart], seen: Linework) -> float:
    """The share in the view of the joint's own edges that are seen; 1 where it makes none.

    It is the geometric mean of both parts, as neither may be left out.
    """
    view = seen.view
    flat = np.array((view.right, view.up)).T
    shares: list[float] = []
    for index, one in enumerate(pulled):
        lines = seen.segments[seen.owner == index]
        shown = shown_edges(one.edges, (one,)) if len(one.edges) else one.edges
        if not len(shown):
            continue
        edges = shown @ flat
        drawn = shapely.multilinestrings(shapely.linestrings(lines.reshape(-1, 2, 2)))
        size = np.linalg.norm(shown[:, 1] - shown[:, 0], axis=1)
        on = np.zeros(len(edges))
        for step in _STEPS:
            at = edges[:, 0] + (edges[:, 1] - edges[:, 0]) * step
            on += shapely.distance(shapely.points(at), drawn) < _NEAR
        shares.append(float(size @ on / (len(_STEPS) * max(size.sum(), _NEAR))))
    return math.prod(max(one, _LITTLE) for one in shares) ** (1.0 / max(len(shares), 1))


def _ties(scene: JointScene, pulled: Sequence[JointPart], by: Vec3, view: View) -> Floats:
    """Lines along which the parts go together, from corners of the face that bears most."""
    flat = np.array((view.right, view.up)).T
    starts = _corners_of_largest(scene)[:_MOST_TIES] @ flat
    if not len(starts):
        return np.empty((0, 4))
    step = np.array(by) @ flat
    hulls = [shapely.MultiPoint(placed(one.part).vertices @ flat).convex_hull for one in pulled]
    lines = shapely.linestrings(np.stack([starts, starts + step], axis=1))
    outside = shapely.get_parts(shapely.difference(lines, shapely.union_all(hulls)))
    ends = [line.coords for line in outside if line.geom_type == "LineString" and line.length]
    return np.array([(*one[0], *one[-1]) for one in ends]).reshape(-1, 4)


def _corners_of_largest(scene: JointScene) -> Floats:
    """The corners, where they are shown, of the largest face that should meet another."""
    contacts = [np.array(contact.corners) for contact in scene.joint.contacts]
    # Of a joint that is shown from one end, a face at the other end may not be there at all.
    contacts = [corners for corners in contacts if _any_shown(corners, scene)]
    if not contacts:
        return np.empty((0, 3))
    largest = max(contacts, key=lambda corners: float(np.ptp(corners, axis=0).sum()))
    return largest[shown_of(largest, scene.both)]


def _any_shown(corners: Floats, scene: JointScene) -> bool:
    """Whether a corner lies where neither part is cut short."""
    return any(
        all(
            (corner - np.array(one.point)) @ np.array(one.outward) < _NEAR
            for part in scene.both
            for one in part.breaks
        )
        for corner in corners
    )


def _marked(scene: JointScene, by: Vec3, view: View) -> Floats:
    """The outlines of faces that only touch, on the parts drawn apart, where they are seen."""
    if has_cuts(scene.joint):
        return np.empty((0, 4))
    flat = np.array((view.right, view.up)).T
    edges = shown_edges(contact_edges(scene.joint), scene.both)
    normal = scene.joint.contacts[0].normal if scene.joint.contacts else (0.0, 0.0, 0.0)
    facing = dot(normal, view.toward)
    if abs(facing) < _EDGE_ON:
        return np.empty((0, 4))
    aside = np.array(by) if facing < 0.0 else np.zeros(3)
    return np.asarray(((edges + aside) @ flat).reshape(-1, 4))
