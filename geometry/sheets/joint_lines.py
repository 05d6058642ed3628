"""The lines of a joint that a maker marks on a part: on its surface, before the joint is cut.

Frame: the part's own (x along the grain, y from the face edge, z from the face side), mm.

Method: of the edges that the joint makes, those that lie on the part as it is without it; the
chords of a round are left out, as nobody marks a point on one.  A saw cut at an end is made before
what is marked on that end, so where the joint cuts more than the end, lines on the sawn end count.
A line that keeps to one distance from a reference face is marked from there, unless it lies in a
face that is there already.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from geometry.cuts.cut import Cut
from geometry.cuts.saw import SawCut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.solids.cutting import solid_of
from geometry.solids.solid import Flags, Floats, Indices, Solid
from geometry.views.joint_scene import edges_made, on_surface, without

NEAR = 0.05  # mm: finer than anybody marks
_STEPS = (0.5, 0.1, 0.9)  # where along an edge it is looked at
_BEND = np.cos(np.radians(30.0))  # the most that a round turns from chord to chord
_STRAIGHT = np.cos(np.radians(0.02))
_LONGER = 1.6  # times its neighbour: no chord of the same round
_DECIMALS = 4
_SQUARE = 1.0 - 1e-6  # cosine
_FLAT = 2  # axes of a face
_ABOUT = 80.0  # mm


@dataclass(frozen=True, slots=True, eq=False)
class MarkedLines:
    """``ends`` (n, 2, 3) of the lines to be marked; ``placed`` (n, 3) tells along which axes each
    keeps to one place that must be found.  ``limits`` (2, 3) are how far the whole part reaches,
    least and greatest, ``before`` (k, 3) its corners thereabouts without the joint, and ``made``
    (m, 2, 3) all straight edges that the joint makes.  Of a mouth that leans on its face a corner
    is to be found: it is a line of no length."""

    ends: Floats
    placed: Flags
    limits: Floats
    before: Floats
    made: Floats

    def values(self, axis: int) -> Floats:
        """The places along an axis of the part that must be found, in order."""
        found = np.sort(self.ends[self.placed[:, axis]][..., axis].mean(axis=1))
        apart = np.diff(found, prepend=-np.inf) > NEAR
        return np.asarray(found[apart])

    def first(self, axis: int) -> float:
        """The least place along an axis that a line keeps to or reaches."""
        on_lines = (self.values(axis), self.ends[..., axis].ravel())
        found = (np.concatenate(on_lines), self.made[..., axis], self.limits[:, axis])
        return next(float(places.min()) for places in found if places.size)


def marked_lines(joint: Joint, part: Part, index: int) -> MarkedLines:
    """What a joint makes a maker mark on its first (0) or second part (1)."""
    return _marked_on(part.shape, (joint.cuts_first, joint.cuts_second)[index])


@lru_cache(maxsize=256)  # of the joints of a bench; alike parts share theirs
def _marked_on(shape: Shape, cuts: tuple[Cut, ...]) -> MarkedLines:
    """What some of its cuts make a maker mark on a shape."""
    vertices = solid_of(shape).vertices
    limits = np.stack([vertices.min(axis=0), vertices.max(axis=0)])
    edges = vertices[edges_made(shape, cuts)]
    if len(edges):
        edges = edges[~_chords(edges)]
    before = solid_of(without(shape, _marked_cuts(cuts)))
    straight = edges
    sawn = all(isinstance(cut, SawCut) for cut in cuts)
    if len(edges):
        edges = edges[_on(edges, before)]
    edges, placed = _with_corners(edges, _placed(edges, before, sawn=sawn), limits)
    return MarkedLines(edges, placed, limits, _near(before.vertices, edges), straight)


def _near(corners: Floats, edges: Floats) -> Floats:
    """The corners about some edges: what is alike at the other end of a piece is no reference."""
    if not len(edges):
        return corners
    ends = edges.reshape(-1, 3)
    low, high = ends.min(axis=0) - _ABOUT, ends.max(axis=0) + _ABOUT
    return np.asarray(corners[((corners > low) & (corners < high)).all(axis=1)])


def _marked_cuts(cuts: tuple[Cut, ...]) -> tuple[Cut, ...]:
    """The cuts whose lines are marked on what the end cuts leave, if there are any but those."""
    rest = tuple(cut for cut in cuts if not isinstance(cut, SawCut))
    return rest or cuts


def _on(edges: Floats, solid: Solid, facing: Flags | None = None) -> Flags:
    """Which edges lie on a solid's surface, or on those of its panels that are chosen."""
    left = np.arange(len(edges))
    for step in _STEPS:
        at = edges[left, 0] + (edges[left, 1] - edges[left, 0]) * step
        left = left[on_surface(at, solid, facing)]  # fewer each time
    found = np.zeros(len(edges), dtype=np.bool_)
    found[left] = True
    return found


def _placed(edges: Floats, before: Solid, *, sawn: bool) -> Flags:
    """Along which axes each of some edges keeps to a place that is not that of a face already
    there."""
    found = np.zeros((len(edges), 3), dtype=np.bool_)
    if not len(edges):
        return found
    for axis in range(3):
        level = np.abs(edges[:, 1, axis] - edges[:, 0, axis]) < NEAR
        facing = np.abs(before.panel_normals[:, axis]) > _SQUARE
        places = edges[..., axis].mean(axis=1)
        ends = before.vertices[:, axis].min(), before.vertices[:, axis].max()
        level &= np.all([np.abs(places - end) > NEAR for end in ends], axis=0)
        found[:, axis] = level & ~_on(edges, before, facing)
    # Where a saw cut goes across earlier ones a maker marks it on the outside.
    outside = _outside(edges, before)
    for axis in range(3):
        mine = found[:, axis] & outside
        if mine.any() or (sawn and found[outside].any()):
            found[:, axis] = mine
    return found


def _outside(edges: Floats, before: Solid) -> Flags:
    """Which edges lie as far out, along some axis, as the piece reaches."""
    low, high = before.vertices.min(axis=0), before.vertices.max(axis=0)
    far = [(np.abs(edges - limit) < NEAR).all(axis=1).any(axis=1) for limit in (low, high)]
    return np.asarray(far[0] | far[1])


def _with_corners(edges: Floats, placed: Flags, limits: Floats) -> tuple[Floats, Flags]:
    """Where no line at all keeps to a place along an axis, as of a mouth that leans on its face,
    its corner nearest the face edge besides."""
    corners = edges.reshape(-1, 3)
    if not len(corners):
        return edges, placed
    inside = (corners.min(axis=0) > limits[0] + NEAR) & (corners.max(axis=0) < limits[1] - NEAR)
    lost = inside & ~placed.any(axis=0)
    if inside.sum() < _FLAT or not lost.any():
        return edges, placed
    corner = corners[np.lexsort((corners[:, 0], corners[:, 2], corners[:, 1]))[0]]
    return np.concatenate([edges, [[corner, corner]]]), np.concatenate([placed, [lost]])


def _numbered(edges: Floats) -> Indices:
    """The two ends of each edge as numbers of corners, (n, 2)."""
    corners = np.round(edges, _DECIMALS).reshape(-1, 3) + 0.0
    _, number = np.unique(corners, axis=0, return_inverse=True)
    return np.asarray(number.reshape(-1, 2))


def _chords(edges: Floats) -> Flags:
    """Which edges go round: where they end, another about as long goes on at a slight turn."""
    run = edges[:, 1] - edges[:, 0]
    size = np.linalg.norm(run, axis=1)
    way = run / np.maximum(size, 1e-9)[:, None]
    ends = _numbered(edges)
    longest = np.zeros(len(edges))  # of the edges that go on from each
    for side in (0, 1):
        for other in (0, 1):
            one, two = np.nonzero(ends[:, side][:, None] == ends[:, other][None])
            turn = np.einsum("ki,ki->k", way[one], way[two])
            on = turn if side != other else -turn
            round_it = (one != two) & (on > _BEND) & (on < _STRAIGHT)
            np.maximum.at(longest, one[round_it], size[two[round_it]])
    return np.asarray((longest > 0.0) & (size < _LONGER * longest))
