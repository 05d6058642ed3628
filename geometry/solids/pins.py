"""What pins a shape: the coordinates that its cuts hold on to, axis by axis.

Frame and units: the part's own frame, mm.

A *pin* is a point whose three coordinates each matter by themselves: a corner of the blank or of
something that is taken away, the ends of where a plane slants through the blank, the limits of an
arc.  A *stretch* is a range of one axis in which something slants or curves, so that it has to be
drawn out evenly if that thing is to stay flat, or round.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from geometry.cuts.cut import Blank
from geometry.cuts.removal import PART_FRAME, HalfSpace, Hollow, Hull, Prism, Removal
from geometry.primitives.frame import Frame, Vec3, dot
from geometry.primitives.path import BulgedVertex, arc_centre
from geometry.solids.kernel.cutters import hull_faces

_SQUARE = 1e-9
"""A direction that leans less than this lies along an axis: a nanometre in a metre."""

Stretch = tuple[int, float, float]
"""The axis, from where and to where."""

Round = tuple[float, float, float]
"""Of an arc the centre (x, y) in its path's plane, and the radius."""


@dataclass(frozen=True, slots=True)
class Pins:
    """The pins of a shape and what else must be the same for two shapes to be of one form.

    ``points``: two for the blank, then ``counts`` for each removal.  ``kinds`` are words in
    numbers, ``fixed`` such sizes as directions and chords.
    """

    points: list[Vec3]
    counts: list[int]
    kinds: list[int]
    fixed: list[float]


@dataclass(frozen=True, slots=True)
class Hold:
    """How one removal holds its shape: its ``stretches``, where it slants or curves."""

    stretches: tuple[Stretch, ...]

    def straight(self, axis: int) -> bool:
        """Whether each of its faces is square to an axis or runs along it, so that it is cut alike
        wherever it is crossed."""
        return all(which != axis for which, _, _ in self.stretches)


def pins_of(blank: Blank, removals: Sequence[Removal]) -> Pins:
    """All pins of a shape; shapes of one form have theirs in the same order."""
    size = (blank.length, blank.width, blank.thickness)
    pins = Pins([(0.0, 0.0, 0.0), size], [], [], [])
    for removal in removals:
        before = len(pins.points)
        if isinstance(removal, HalfSpace):
            _pin_plane(pins, removal, size)
        elif isinstance(removal, Hull):
            pins.points.extend(removal.points)
        elif isinstance(removal, Hollow):
            pins.points.extend(removal.facets.points)
            pins.kinds.extend(k for face in removal.facets.faces for k in (len(face), *face))
            pins.fixed.append(removal.z_open)
            # It can only be carried along as it is; said here, that is found out soonest.
            x, y, z = removal.facets.points[0]
            pins.fixed.extend(c for u, v, w in removal.facets.points for c in (u - x, v - y, w - z))
        else:
            _pin_prism(pins, removal, size)
        pins.counts.append(len(pins.points) - before)
    return pins


def hold_of(removal: Removal, blank: Blank) -> Hold:
    """What one removal holds on to."""
    if isinstance(removal, HalfSpace):
        size = (blank.length, blank.width, blank.thickness)
        axes, low, high = _through(removal, size)
        slanting = axes if len(axes) > 1 else []
        return Hold(tuple((axis, low[axis], high[axis]) for axis in slanting))
    if isinstance(removal, Hull):
        stretches = _hull_stretches(removal.points)
    elif isinstance(removal, Hollow):
        stretches = tuple((axis, *_limits(removal.facets.points, axis)) for axis in range(3))
    else:
        stretches = tuple(_prism_stretches(removal))
    return Hold(stretches)


# Planes


def _leaning(normal: Vec3) -> list[int]:
    """The axes that a plane is not parallel to."""
    return [axis for axis in range(3) if abs(normal[axis]) > _SQUARE]


def _through(plane: HalfSpace, size: Vec3) -> tuple[list[int], list[float], list[float]]:
    """The axes a plane leans along, and the box of where it may be met inside the blank."""
    normal = plane.outward
    axes = _leaning(normal)
    reach = dot(normal, plane.point)
    low, high = [0.0, 0.0, 0.0], list(size)
    for axis in axes:
        others = [normal[other] * size[other] for other in axes if other != axis]
        ends = sorted(
            (reach - sum(bound(part, 0.0) for part in others)) / normal[axis]
            for bound in (min, max)
        )
        low[axis], high[axis] = max(ends[0], 0.0), min(ends[1], size[axis])
    return axes, low, high


def _pin_plane(pins: Pins, plane: HalfSpace, size: Vec3) -> None:
    axes, low, high = _through(plane, size)
    pins.kinds.extend(axes)
    pins.points.extend([(low[0], low[1], low[2]), (high[0], high[1], high[2])])
    normal, point = plane.outward, plane.point
    pins.fixed.extend(normal)
    # Its distance from a pin: so it goes where its pins go.
    pins.fixed.append(sum(normal[axis] * (point[axis] - low[axis]) for axis in axes))


# Hulls


@lru_cache(maxsize=512)
def _hull_stretches(points: tuple[Vec3, ...]) -> tuple[Stretch, ...]:
    return tuple(
        (axis, float(low[axis]), float(high[axis]))
        for normal, low, high in zip(*hull_faces(points), strict=True)
        if len(axes := _leaning((normal[0], normal[1], normal[2]))) > 1
        for axis in axes
    )


# Prisms


def _pin_prism(pins: Pins, prism: Prism, size: Vec3) -> None:
    frame, vertices = prism.frame, prism.path.vertices
    pins.kinds.append(len(vertices))
    rounds = _rounds(pins.fixed, vertices) if any(bulge for _, _, bulge in vertices) else ()
    z = (prism.z_low, prism.z_high)
    # Where its frame is square opposite corners of a box have all its coordinates.
    corners = [(x, y, z[k & 1]) for k, (x, y, _) in enumerate(vertices)]
    for x, y, radius in rounds:
        corners += [(x - radius, y - radius, z[0]), (x + radius, y + radius, z[1])]
    if frame is PART_FRAME:
        pins.points.extend(corners)
    else:
        pins.fixed.extend((*frame.x_axis, *frame.y_axis))
        if not _is_square(frame):
            corners = [(x, y, h) for x, y, _ in vertices for h in z]
            corners += [corner for one in rounds for corner in _box_about(one, z)]
        pins.points.extend([frame.to_bench(corner) for corner in corners])
    for plane in prism.ends:
        _pin_plane(pins, plane, size)


def _is_square(frame: Frame) -> bool:
    """Whether its axes lie along those of the part."""
    return all(1.0 in axis or -1.0 in axis for axis in (frame.x_axis, frame.y_axis))


def _rounds(fixed: list[float], vertices: Sequence[BulgedVertex]) -> list[Round]:
    """The rounds that the arcs of a closed path are of, with what must not change of each arc put
    into ``fixed``."""
    found: list[Round] = []
    for start, end in _arcs(vertices):
        fixed.extend((start[2], end[0] - start[0], end[1] - start[1]))
        (x, y), radius = arc_centre(start[:2], end[:2], start[2])
        if found:  # arcs that follow on one another in one round are held by one box
            u, v, r = found[-1]
            if abs(u - x) < _SQUARE and abs(v - y) < _SQUARE and abs(r - radius) < _SQUARE:
                continue
        found.append((x, y, radius))
    return found


def _prism_stretches(prism: Prism) -> Iterator[Stretch]:
    frame, vertices = prism.frame, prism.path.vertices
    square = all(len(_leaning(axis)) == 1 for axis in (frame.x_axis, frame.y_axis))
    if not square or prism.ends:
        corners = [
            frame.to_bench((x, y, z)) for x, y, _ in vertices for z in (prism.z_low, prism.z_high)
        ]
        for one in _rounds([], vertices):
            corners += [frame.to_bench(p) for p in _box_about(one, (prism.z_low, prism.z_high))]
        yield from ((axis, *_limits(corners, axis)) for axis in range(3))
        return
    slanting = [
        [frame.to_bench((*start[:2], 0.0)), frame.to_bench((*end[:2], 0.0))]
        for start, end in zip(vertices, vertices[1:] + vertices[:1], strict=True)
        if abs(end[0] - start[0]) > _SQUARE and abs(end[1] - start[1]) > _SQUARE
    ]
    for one in _rounds([], vertices):
        box = _box_about(one, (prism.z_low, prism.z_high))
        slanting.append([frame.to_bench(corner) for corner in box])
    for points in slanting:
        for direction in (frame.x_axis, frame.y_axis):
            (axis,) = _leaning(direction)
            yield (axis, *_limits(points, axis))


def _arcs(vertices: Sequence[BulgedVertex]) -> Iterator[tuple[BulgedVertex, BulgedVertex]]:
    """The vertices where each arc of a closed path starts and ends."""
    for k, start in enumerate(vertices):
        if start[2]:
            yield start, vertices[(k + 1) % len(vertices)]


def _box_about(one: Round, heights: tuple[float, float]) -> list[Vec3]:
    """The corners of a box about the whole of a round, in its prism's frame."""
    x, y, radius = one
    return [
        (x + across, y + up, z)
        for across in (-radius, radius)
        for up in (-radius, radius)
        for z in heights
    ]


def _limits(points: Sequence[Vec3], axis: int) -> tuple[float, float]:
    along = [point[axis] for point in points]
    return min(along), max(along)
