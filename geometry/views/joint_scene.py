"""The two parts of a joint, cut short round it as a detail shows them.

Frame and units: bench coordinates, mm.

Method: what a joint makes of a part are the edges of the finished solid that are not there without
the joint's own cuts.  Their ends and the corners of the faces that should meet tell how far the
joint reaches; each part is cut short a little beyond, along and across its grain.  A joint that
runs on and on (a rebate, a groove, a long housing) is shown from one end only, that at which more
is made.  A part is not cut short before an edge or end that one of the joint's measures counts
from, if that is not far.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from geometry.cuts.cut import Cut
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Vec3, dot, scale
from geometry.solids.cutting import placed, solid_of
from geometry.solids.solid import Flags, Floats, Indices, Solid

_CONTEXT = 0.25  # of the joint's size, how far a part goes on beyond it
_LEAST_CONTEXT, _MOST_CONTEXT = 18.0, 70.0  # mm
_END_CONTEXT = 30.0  # mm, at the end of a run
_LONGEST = 160.0  # mm: a longer run is shown from one end
_SHOWN_OF_RUN = 80.0
_WHOLE = 300.0  # mm: up to this a joint is shown whole if it is not the same all along
_SLENDER = 2.5  # a joint less long for its width is no run
_WORTH = 0.6  # of the context: a part is cut short where more than this is left beyond
_ASKEW = 0.7  # cosine: an axis nearer to the run than this is cut with it
_FAR = 130.0  # mm: no farther off is an edge shown for being measured from
_SAME = 0.006  # mm: a distance and a measure nearer than this are one
_NEAR = 1e-4  # mm
_STEPS = (0.5, 0.0, 0.2, 0.8, 1.0)  # where along an edge it is looked at
_PLANE = 1e-3  # of a normal, and mm: one plane


@dataclass(frozen=True, slots=True)
class BreakPlane:
    """Where a part is cut short: a point of the plane, and the unit normal out of what is left."""

    point: Vec3
    outward: Vec3


@dataclass(frozen=True, slots=True, eq=False)
class JointPart:
    """One of the two parts.

    ``part`` is cut short and its bench frame kept; ``whole`` is as it is made.  ``breaks`` are the
    planes at which it goes on.  ``corners`` (n, 3) are those that the joint makes, of the edges
    ``edges`` (m, 2, 3) that it makes.
    """

    part: Part
    whole: Part
    breaks: tuple[BreakPlane, ...]
    corners: Floats
    edges: Floats


@dataclass(frozen=True, slots=True, eq=False)
class JointScene:
    """A joint with both its parts cut short round it."""

    joint: Joint
    first: JointPart
    second: JointPart

    @property
    def both(self) -> tuple[JointPart, JointPart]:
        return (self.first, self.second)

    @property
    def parts(self) -> tuple[Part, Part]:
        return (self.first.part, self.second.part)

    def reach(self) -> Floats:
        """All corners that the joint makes, and those of its contacts; (n, 3)."""
        return np.concatenate(
            [self.first.corners, self.second.corners, contact_corners(self.joint)]
        )


def joint_scene(joint: Joint, parts: Mapping[str, Part]) -> JointScene:
    """The parts of a joint as its detail shows them.

    Raises KeyError for a part that is not there, and CannotBuild as any solid.
    """
    whole = tuple(parts[name] for name in joint.parts)
    made = [
        made_by(part, cuts)
        for part, cuts in zip(whole, (joint.cuts_first, joint.cuts_second), strict=True)
    ]
    reach = np.concatenate([*(corners for corners, _ in made), contact_corners(joint)])
    run = _run(reach, np.concatenate([corners for corners, _ in made]))
    first, second = (
        _shortened(part, one, (reach, aimed_at(joint, which), _counted(joint, which)), run)
        for which, (part, one) in enumerate(zip(whole, made, strict=True))
    )
    return JointScene(joint, first, second)


def contact_corners(joint: Joint) -> Floats:
    """The corners of all faces that should meet, (n, 3)."""
    corners = [corner for contact in joint.contacts for corner in contact.corners]
    return np.array(corners, dtype=np.float64).reshape(-1, 3)


def aimed_at(joint: Joint, which: int) -> Floats:
    """The points to which something on one of the parts is measured, (n, 3)."""
    found = {m.at for m in joint.measures if m.at is not None and which in m.found_on}
    return np.array(sorted(found), dtype=np.float64).reshape(-1, 3)


def beyond_breaks(points: Floats, one: JointPart) -> Flags:
    """Which of some points (n, 3) lie where a part is cut short."""
    gone = np.zeros(len(points), dtype=np.bool_)
    for plane in one.breaks:
        gone |= (points - np.array(plane.point)) @ np.array(plane.outward) > _NEAR
    return gone


def made_by(part: Part, cuts: Sequence[Cut]) -> tuple[Floats, Floats]:
    """The corners (n, 3) and edges (m, 2, 3) of a part that are there only through some cuts."""
    edges = edges_made(part.shape, tuple(cuts))
    at = placed(part).vertices
    # Only the ends of such edges: the kernel may leave other points on a face than without them.
    return at[np.unique(edges)], at[edges]


@lru_cache(maxsize=256)  # of the joints of a bench; alike parts share theirs
def edges_made(shape: Shape, cuts: tuple[Cut, ...]) -> Indices:
    """The edges (m, 2) of a shape's solid that are there only through some of its cuts."""
    if not cuts:
        return np.empty((0, 2), dtype=np.intp)
    made, before = solid_of(shape), solid_of(without(shape, cuts))
    edges = made.edges[~made.smooth]
    return np.asarray(edges[~_along_any(made.vertices[edges], before.vertices[before.edges])])


def faces_made(part: Part, before: Shape) -> tuple[Floats, Floats, Floats]:
    """The flat pieces of a part's surface that are not yet there in a shape that it was cut from:
    their middles and their outward unit normals (n, 3), and their areas (n,) in mm²."""
    made = solid_of(part.shape)
    corners = made.vertices[made.panels]
    crossing = np.cross(corners[:, 2] - corners[:, 0], corners[:, 3] - corners[:, 1])
    middles = corners[:, :3].mean(axis=1)
    new = ~_on_any_panel(middles, made.panel_normals, solid_of(before))
    there = placed(part)
    at = there.vertices[made.panels[new]][:, :3].mean(axis=1)
    return at, there.panel_normals[new], np.linalg.norm(crossing[new], axis=1) / 2.0


def _on_any_panel(points: Floats, normals: Floats, solid: Solid) -> Flags:
    """Which of some points (n, 3) lie on a panel of a solid that looks their way (n, 3)."""
    corners = solid.vertices[solid.panels]
    off = points[:, None] - corners[None, :, 0]
    same = np.abs(normals[:, None] - solid.panel_normals).max(axis=2) < _PLANE
    same &= np.abs(np.einsum("nqi,qi->nq", off, solid.panel_normals)) < _PLANE
    one, panel = np.nonzero(same)
    return _inside(points, one, (corners, solid.panel_normals, panel))


def without(shape: Shape, cuts: Sequence[Cut]) -> Shape:
    """What a shape is before some of its cuts are made."""
    return Shape(shape.blank, tuple(cut for cut in shape.cuts if cut not in cuts))


def on_surface(points: Floats, solid: Solid, chosen: Flags | None = None) -> Flags:
    """Which of some points (n, 3), in a solid's own frame, lie on its surface, or on those of its
    panels (q,) that are chosen."""
    taken = slice(None) if chosen is None else chosen
    corners, normals = solid.vertices[solid.panels[taken]], solid.panel_normals[taken]
    off = points[:, None] - corners[None, :, 0]
    one, panel = np.nonzero(np.abs(np.einsum("nqi,qi->nq", off, normals)) < _PLANE)
    return _inside(points, one, (corners, normals, panel))


def _inside(points: Floats, one: Indices, panels: tuple[Floats, Floats, Indices]) -> Flags:
    """Which of some points lie between the sides of any of the panels whose plane they are in;
    ``one`` are indices of points and the last of ``panels`` those of the panels, pair by pair."""
    corners, normals, panel = panels
    sides = np.roll(corners, -1, axis=1) - corners
    within = np.cross(sides[panel], points[one][:, None] - corners[panel])
    inside = np.einsum("kci,ki->kc", within, normals[panel]) > -_PLANE
    return np.bincount(one, inside.all(axis=1), minlength=len(points)) > 0.0


def _along_any(edges: Floats, olds: Floats) -> Flags:
    """Which of some edges (m, 2, 3) lie on others (k, 2, 3), on one or on several in a row: where
    a straight edge has points on its way is the kernel's choice."""
    found = _among(edges, olds)  # most of them
    rest = np.flatnonzero(~found)
    for step in _STEPS:
        at = edges[rest, 0] + (edges[rest, 1] - edges[rest, 0]) * step
        rest = rest[_on_any(at, olds)]  # fewer each time
    found[rest] = True
    return found


def _among(edges: Floats, olds: Floats) -> Flags:
    """Which of some edges (m, 2, 3) are others (k, 2, 3), from end to end either way."""
    known = {ends for one in olds.tolist() for ends in (_key(one), _key(one[::-1]))}
    return np.array([_key(one) in known for one in edges.tolist()], dtype=np.bool_)


def _key(ends: Sequence[Sequence[float]]) -> tuple[float, ...]:
    return (*ends[0], *ends[1])


def _on_any(points: Floats, olds: Floats) -> Flags:
    """Which of some points (m, 3) lie on any of some edges (k, 2, 3)."""
    start, run = olds[:, 0], olds[:, 1] - olds[:, 0]
    size = np.linalg.norm(run, axis=1)
    way = run / size[:, None]
    off = points[:, None] - start
    along = np.einsum("mki,ki->mk", off, way)
    near = (along > -_NEAR) & (along < size + _NEAR)
    one, old = np.nonzero(near)
    aside = np.linalg.norm(off[near] - along[near][:, None] * way[old], axis=1)
    return np.bincount(one, aside < _NEAR, minlength=len(points)) > 0.0


def _run(reach: Floats, corners: Floats) -> tuple[Vec3, float, float] | None:
    """For a joint that goes on and on: its direction, and from where to where it is shown.

    ``corners`` are those that it makes.
    """
    middle = reach.mean(axis=0)
    _, _, axes = np.linalg.svd(reach - middle, full_matrices=False)
    way = axes[0]
    if np.ptp(reach @ axes[0]) < _SLENDER * np.ptp(reach @ axes[1]):
        return None
    if way[int(np.abs(way).argmax())] < 0.0:
        way = -way
    along = reach @ way
    low, high = float(along.min()), float(along.max())
    if high - low <= _LONGEST:
        return None
    x, y, z = way.tolist()
    made = corners @ way
    in_the_middle = (made > low + _SHOWN_OF_RUN) & (made < high - _SHOWN_OF_RUN)
    if high - low < _WHOLE and in_the_middle.any():
        return None  # it does not go on and on: something is made in its middle
    at_low = int((made < low + _SHOWN_OF_RUN).sum())
    at_high = int((made > high - _SHOWN_OF_RUN).sum())
    # Of two ends alike, that toward the left, the front and the floor.
    nearer = x + 0.5 * y + 0.1 * z > 0.0
    from_low = at_low > at_high or (at_low == at_high and nearer)
    shown = (low, low + _SHOWN_OF_RUN) if from_low else (high - _SHOWN_OF_RUN, high)
    return ((x, y, z), *shown)


def _counted(joint: Joint, which: int) -> list[float]:
    """The lengths on one of the parts, not long, that count from some face, edge or end of it."""
    return [
        one.value
        for one in joint.measures
        if one.unit == "mm"
        and which in one.found_on
        and one.value < _FAR
        and "from" in f"{one.name} {one.meaning}"
    ]


def _shortened(
    part: Part,
    made: tuple[Floats, Floats],
    about: tuple[Floats, Floats, Sequence[float]],
    run: tuple[Vec3, float, float] | None,
) -> JointPart:
    reach, aimed, counted = about
    own = np.concatenate([made[0] if len(made[0]) else reach, aimed])
    breaks: list[BreakPlane] = []
    shown = reach
    if run is not None:
        way, low, high = run
        along = reach @ np.array(way)
        shown = reach[(along > low - _NEAR) & (along < high + _NEAR)]
        along = own @ np.array(way)
        own = own[(along > low - _NEAR) & (along < high + _NEAR)]
        ends = float((reach @ np.array(way)).min()), float((reach @ np.array(way)).max())
        low -= _END_CONTEXT if low <= ends[0] + _NEAR else 0.0
        high += _END_CONTEXT if high >= ends[1] - _NEAR else 0.0
        keep = _to_the_edge(part, way, (low, high), own @ np.array(way), counted)
        breaks += _cuts_of(part, way, keep, _END_CONTEXT)
    size = float(np.ptp(shown, axis=0).max())
    context = min(max(_CONTEXT * size, _LEAST_CONTEXT), _MOST_CONTEXT)
    frame = part.frame
    for axis in (frame.x_axis, frame.y_axis):
        along = shown @ np.array(axis)
        keep = (float(along.min()) - context, float(along.max()) + context)
        keep = _to_the_edge(part, axis, keep, own @ np.array(axis), counted)
        if run is None or abs(dot(axis, run[0])) < _ASKEW:
            breaks += _cuts_of(part, axis, keep, _WORTH * context)
    saws = tuple(
        SawCut("break", frame.to_local(one.point), frame.turn_to_local(one.outward))
        for one in breaks
    )
    short = replace(part, shape=Shape(part.shape.blank, (*part.shape.cuts, *saws)))
    return JointPart(short, part, tuple(breaks), *made)


def _to_the_edge(
    part: Part, axis: Vec3, keep: tuple[float, float], own: Floats, counted: Sequence[float]
) -> tuple[float, float]:
    """What is kept along an axis, as far as the ends from which a point of the joint is so far."""
    along = placed(part).vertices @ np.array(axis)
    low, high = float(along.min()), float(along.max())
    sizes = np.array(counted)
    if len(sizes) and (np.abs(own[:, None] - low - sizes) < _SAME).any():
        keep = (min(keep[0], low), keep[1])
    if len(sizes) and (np.abs(high - own[:, None] - sizes) < _SAME).any():
        keep = (keep[0], max(keep[1], high))
    return keep


def _cuts_of(part: Part, axis: Vec3, keep: tuple[float, float], worth: float) -> list[BreakPlane]:
    """Planes square to an axis beyond which a part goes on for more than it is worth to show."""
    along = placed(part).vertices @ np.array(axis)
    low, high = keep
    found: list[BreakPlane] = []
    if float(along.min()) < low - worth:
        found.append(BreakPlane(scale(axis, low), scale(axis, -1.0)))
    if float(along.max()) > high + worth:
        found.append(BreakPlane(scale(axis, high), axis))
    return found
