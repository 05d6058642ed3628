"""Solids that follow their shapes without being cut anew, where it is sure to come out the same.

Frame and units: the part's own frame, mm.

Method: let each axis be drawn out by itself, evenly between pins, so that every pin of the old
shape comes to stand where it is in the new.  If the pins keep their order this is one smooth
change of all space, and it carries the old blank onto the new one.  It carries each old cutter
onto the new one too if whatever slants or curves lies where an axis is drawn out evenly.  Then it
carries what is left of the one onto what is left of the other: the old surface, its corners
moved, is the new surface.  Only the panels that flat faces were divided into may no longer fit
beside one another; they are tried.

Between two stations along one axis, at which nothing but straight removals are crossed, the
other two may be drawn out in a way of their own: in the gap one way passes into the other.

A relief seldom goes along with that.  Where it is the crown of the piece (``crown``) it pins
nothing, and its corners are put where its facets now have them.

The proof asks for more than needed: where it does not hold the solid is to be cut as always.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from geometry.cuts.removal import Hollow, Removal
from geometry.design.part import Shape
from geometry.primitives.facets import Facets
from geometry.primitives.frame import Vec3
from geometry.solids.crown import NONE, CrownCorners, crown_corners, crown_of
from geometry.solids.cutting import removals_of, solid_of
from geometry.solids.pins import Hold, Pins, hold_of, pins_of
from geometry.solids.solid import Flags, Floats, Indices, Solid, frozen
from geometry.solids.surface import FLAT_NORMALS

_SAME = 1e-9
"""mm, and shares of a unit direction: what rounding makes of equal numbers."""

_APART = 1e-7
"""mm between pins that count as two; nearer ones must stay together."""

_NO_TURN = 1e-9
"""mm³ by which the corner of a panel may turn the wrong way: rounding of a straight one."""

_KEPT = 512


@dataclass(frozen=True, slots=True, eq=False)
class _Pinned:
    """Some shapes that were cut, ready to be followed.

    A *row* is an axis of a shape, or what counts of it between two stations along another.  All n
    pins of all rows lie end to end: ``pick`` (n,) the place of a pin's coordinate among those of
    the shapes' pins, ``along`` (n,) where it was.  From each pin to the next, (n - 1,):
    ``joined``, both are of one row; ``apart``, and are two.  k stretches run from pin ``first``
    to pin ``last``.  The 3 v coordinates of all corners are ``share`` of the way from pin
    ``left`` to the next.  ``panels`` (4, q) are numbers of corners, ``faces`` (q,) those of their
    flat faces.  The corners ``crowned`` (c,) are set by themselves, each on one of the points of
    all crowns, ``crown`` (c,).  ``sizes`` (shapes, 7) is how many pins' coordinates, n, k, v, q,
    flat faces and points of crowns are whose.
    """

    pick: Indices
    along: Floats
    joined: Flags
    apart: Flags
    first: Indices
    last: Indices
    left: Indices
    share: Floats
    panels: Indices
    faces: Indices
    crowned: Indices
    crown: Indices
    sizes: Indices


def follow(cut: Sequence[Shape], shapes: Sequence[Shape]) -> list[Solid | None]:
    """The solids of ``shapes``, each out of that of the shape beside it in ``cut``.

    None for those that have to be cut.
    """
    found: list[Solid | None] = [None] * len(shapes)
    pins = [_pins(shape) for shape in shapes]
    fit = [
        k
        for k, old in enumerate(cut)
        if _of_one_form(_pins(old), pins[k]) and _alike_crowned(old, shapes[k])
    ]
    if fit:
        crowns = [point for k in fit if (crown := _crown(shapes[k])) for point in crown.points]
        moved = _moved(tuple(cut[k] for k in fit), [pins[k] for k in fit], crowns)
        for k, solid in zip(fit, moved, strict=True):
            found[k] = solid
    return found


def differently_made(one: Shape, other: Shape) -> bool:
    """Whether something is taken away from one of them that is not from the other."""
    before, after = _pins(one), _pins(other)
    return before.counts != after.counts or before.kinds != after.kinds


def make_ready(shape: Shape) -> None:
    """Do now what the first ``follow`` from ``shape`` would have to do."""
    _pinned(shape)


@lru_cache(maxsize=4 * _KEPT)
def _pins(shape: Shape) -> Pins:
    return pins_of(shape.blank, _pinning(shape))


def _pinning(shape: Shape) -> Sequence[Removal]:
    """What pins a shape: all that is taken away but for its crown."""
    removals = removals_of(shape)
    if _crown(shape) is None:
        return removals
    return [removal for removal in removals if not isinstance(removal, Hollow)]


@lru_cache(maxsize=4 * _KEPT)
def _crown(shape: Shape) -> Facets | None:
    return crown_of(shape.blank, removals_of(shape))


@lru_cache(maxsize=_KEPT)
def _crown_corners(shape: Shape) -> CrownCorners | None:
    """The corners that are its crown's points; None where it cannot follow with its crown."""
    crown = _crown(shape)
    return NONE if crown is None else crown_corners(solid_of(shape), crown)


def _alike_crowned(one: Shape, other: Shape) -> bool:
    """Whether the crowns of both have the same facets, or neither has one."""
    before, after = _crown(one), _crown(other)
    if before is None or after is None:
        return before is after
    return before.faces == after.faces and _crown_corners(one) is not None


def _of_one_form(one: Pins, other: Pins) -> bool:
    return (
        one.counts == other.counts
        and one.kinds == other.kinds
        and len(one.fixed) == len(other.fixed)
        and (
            one.fixed == other.fixed
            or all(abs(a - b) < _SAME for a, b in zip(one.fixed, other.fixed, strict=True))
        )
    )


# A shape made ready


@lru_cache(maxsize=_KEPT)
def _pinned(shape: Shape) -> _Pinned:
    solid = solid_of(shape)
    crown, crowned = _crown(shape), _crown_corners(shape) or NONE
    pins = _pins(shape)
    points = np.array(pins.points)
    owner = np.repeat(np.arange(len(pins.counts) + 1), (2, *pins.counts))
    holds = [hold_of(removal, shape.blank) for removal in _pinning(shape)]
    main, stations = _stations(points, owner, holds)
    low, high = _reach(points[:, main], owner, stations)
    zones = len(stations) + 1
    others = [axis for axis in range(3) if axis != main]

    rows = [3 * np.arange(len(points)) + main]
    stretches = [
        (0, start, end) for hold in holds for axis, start, end in hold.stretches if axis == main
    ]
    for axis in others:
        for zone in range(zones):
            inside = (low <= zone) & (zone <= high)
            for hold, there in zip(holds, inside[1:], strict=True):
                if there:
                    stretches += [
                        (len(rows), start, end)
                        for which, start, end in hold.stretches
                        if which == axis
                    ]
            rows.append(3 * np.flatnonzero(inside.take(owner)) + axis)
    flat = points.ravel()
    ordered = [row[np.argsort(flat[row], kind="stable")] for row in rows]
    pick = np.concatenate(ordered)
    along = flat[pick]
    starts = np.cumsum([0] + [len(row) for row in ordered])

    first = [starts[row] + _last_up_to(flat[ordered[row]], at) for row, at, _ in stretches]
    last = [starts[row] + _first_from(flat[ordered[row]], at) for row, _, at in stretches]
    of_corner = np.empty((len(solid.vertices), 3), dtype=np.intp)
    zone_of = np.searchsorted(stations, solid.vertices[:, main])
    rows_of = (0 * zone_of, 1 + zone_of, 1 + zones + zone_of)
    for axis, row_of in zip((main, *others), rows_of, strict=True):
        for row in np.unique(row_of):
            mine = row_of == row
            at = np.searchsorted(flat[ordered[row]], solid.vertices[mine, axis], "right") - 1
            of_corner[mine, axis] = starts[row] + np.clip(at, 0, len(ordered[row]) - 2)
    left = of_corner.ravel()
    room = along[left + 1] - along[left]
    beyond = solid.vertices.ravel() - along[left]
    joined = np.ones(len(pick) - 1, dtype=np.bool_)
    joined[starts[1:-1] - 1] = False
    return _Pinned(
        pick=pick,
        along=along,
        joined=joined,
        apart=joined & (np.diff(along) > _APART),
        first=np.array(first, dtype=np.intp),
        last=np.array(last, dtype=np.intp),
        left=left,
        share=np.divide(beyond, room, out=np.zeros_like(room), where=room > _APART),
        panels=np.ascontiguousarray(solid.panels.T),
        faces=solid.panel_faces,
        crowned=crowned.corners,
        crown=crowned.points,
        sizes=np.array(
            [(len(flat), len(pick), len(first), *_counts(solid), len(crown.points) if crown else 0)]
        ),
    )


def _counts(solid: Solid) -> tuple[int, int, int]:
    """How many corners, panels and faces it has."""
    faces = max(solid.panel_faces.max(initial=-1), solid.edge_faces.max(initial=-1)) + 1
    return len(solid.vertices), len(solid.panels), int(faces)


def _stations(points: Floats, owner: Indices, holds: Sequence[Hold]) -> tuple[int, Floats]:
    """An axis, and where along it one zone may end and the next begin: between pins, and in no
    removal that is not straight."""
    for axis in (0, 2):
        at = points[:, axis]
        pinned = np.unique(at)
        gaps = np.flatnonzero(np.diff(pinned) > _APART)
        between = (pinned[gaps] + pinned[gaps + 1]) / 2.0
        free = np.ones(len(between), dtype=np.bool_)
        for number, hold in enumerate(holds, start=1):
            if not hold.straight(axis):
                mine = at[owner == number]
                free &= (between < mine.min()) | (between > mine.max())
        # Beyond the blank nothing is left to be told apart.
        free &= (between > 0.0) & (between < at[1])
        if free.any():
            return axis, between[free]
    return 0, np.empty(0)


def _reach(along: Floats, owner: Indices, stations: Floats) -> tuple[Indices, Indices]:
    """The first and the last zone that the blank and each removal reach into."""
    zone = np.searchsorted(stations, along)
    starts = np.flatnonzero(np.diff(owner, prepend=-1))
    return np.minimum.reduceat(zone, starts), np.maximum.reduceat(zone, starts)


def _last_up_to(along: Floats, at: float) -> int:
    return max(int(np.searchsorted(along, at + _APART, "right")) - 1, 0)


def _first_from(along: Floats, at: float) -> int:
    return min(int(np.searchsorted(along, at - _APART, "left")), len(along) - 1)


@lru_cache(maxsize=32)
def _gathered(shapes: tuple[Shape, ...]) -> _Pinned:
    """Several shapes at once: the few array operations cost the same for one and for thirty."""
    each = [_pinned(shape) for shape in shapes]
    sizes = np.concatenate([one.sizes for one in each])
    coordinates, pins, _, corners, _, faces, of_crowns = (np.cumsum(sizes, axis=0) - sizes).T
    gap = np.zeros(1, dtype=np.bool_)
    return _Pinned(
        pick=_joined([one.pick for one in each], coordinates),
        along=np.concatenate([one.along for one in each]),
        joined=np.concatenate([flags for one in each for flags in (one.joined, gap)])[:-1],
        apart=np.concatenate([flags for one in each for flags in (one.apart, gap)])[:-1],
        first=_joined([one.first for one in each], pins),
        last=_joined([one.last for one in each], pins),
        left=_joined([one.left for one in each], pins),
        share=np.concatenate([one.share for one in each]),
        panels=_joined([one.panels.T for one in each], corners).T.copy(),
        faces=_joined([one.faces for one in each], faces),
        crowned=_joined([one.crowned for one in each], corners),
        crown=_joined([one.crown for one in each], of_crowns),
        sizes=sizes,
    )


def _joined(each: Sequence[Indices], offsets: Indices) -> Indices:
    return np.concatenate([one + offset for one, offset in zip(each, offsets, strict=True)])


# Moving it


def _moved(
    cut: tuple[Shape, ...], pins: Sequence[Pins], crowns: Sequence[Vec3]
) -> list[Solid | None]:
    """The solids of ``cut`` with their corners where ``pins``, and the points of all ``crowns``,
    have them; None where unproven."""
    old = _gathered(cut)
    every = [coordinate for each in pins for point in each.points for coordinate in point]
    now = np.array(every).take(old.pick)
    _, in_rows, in_stretches, corners, in_panels, in_faces, _ = old.sizes.T
    whose = np.arange(len(cut))
    spoilt = np.zeros(len(cut), dtype=np.bool_)

    steps = np.diff(now)
    lost = np.where(old.apart, steps <= _APART, old.joined & (np.abs(steps) >= _SAME))
    spoilt[np.repeat(whose, in_rows)[1:][lost]] = True
    bends = _bends(old, steps)
    # A bend at the pin where a stretch ends, or begins, is none within it.
    bent = bends.take(np.maximum(old.last - 1, 0)) > bends.take(old.first)
    spoilt[np.repeat(whose, in_stretches)[bent]] = True

    start = now.take(old.left)
    vertices = (start + old.share * (now.take(old.left + 1) - start)).reshape(-1, 3)
    if crowns:
        vertices[old.crowned] = np.array(crowns)[old.crown]
    at = vertices.T.take(old.panels, axis=1)  # (3, 4, q)
    normals = _normals(at, old.faces, int(in_faces.sum()))
    sides = np.roll(at, -1, axis=1) - at
    facing = normals.take(old.faces, axis=1)
    turned = _triple(sides, np.roll(sides, -1, axis=1), facing[:, None])
    spoilt[np.repeat(whose, in_panels)[(turned < -_NO_TURN).any(axis=0)]] = True
    six = _triple(at[:, 0], at[:, 1], at[:, 2]) + _triple(at[:, 0], at[:, 2], at[:, 3])
    volumes = np.add.reduceat(six, np.cumsum(in_panels) - in_panels) / 6.0

    frozen(vertices)
    ends, last_faces = np.cumsum(corners).tolist(), np.cumsum(in_faces).tolist()
    found: list[Solid | None] = []
    for k, shape in enumerate(cut):
        if spoilt[k]:
            found.append(None)
            continue
        solid = solid_of(shape)
        of_faces = normals[:, last_faces[k] - in_faces[k] : last_faces[k]].T
        edge_normals = of_faces[solid.edge_faces]
        if _crown(shape) and not _all_bent(edge_normals):
            found.append(None)
            continue
        found.append(
            replace(
                solid,
                vertices=vertices[ends[k] - corners[k] : ends[k]],
                edge_normals=frozen(edge_normals),
                panel_normals=frozen(of_faces[solid.panel_faces]),
                volume=float(volumes[k]),
            )
        )
    return found


def _bends(old: _Pinned, steps: Floats) -> Indices:
    """How many pins up to each one are drawn out otherwise behind it than before it, (n,)."""
    was = np.diff(old.along)
    gaps = np.flatnonzero(old.apart)
    before, after = gaps[:-1], gaps[1:]
    drawn = steps.take(gaps) / was.take(gaps)
    differ = np.abs(np.diff(drawn)) * np.minimum(was.take(before), was.take(after)) > _SAME
    bends = np.zeros(len(old.along), dtype=np.intp)
    # Pins in one place bend together: it counts at the last of them.
    np.add.at(bends, after[differ], 1)
    return np.cumsum(bends)


def _all_bent(edge_normals: Floats) -> bool:
    """Whether the two faces of each edge differ in direction, so that it is there to be drawn."""
    apart = edge_normals[:, 0] - edge_normals[:, 1]
    return bool(((apart * apart).sum(axis=1) > FLAT_NORMALS**2).all())


def _normals(at: Floats, faces: Indices, count: int) -> Floats:
    """Unit normals of flat faces, (3, faces), from the corners (3, 4, q) of their panels."""
    (a0, a1, a2), (b0, b1, b2) = at[:, 2] - at[:, 0], at[:, 3] - at[:, 1]
    doubled = (a1 * b2 - a2 * b1, a2 * b0 - a0 * b2, a0 * b1 - a1 * b0)
    total = np.stack([np.bincount(faces, row, count) for row in doubled])
    length = np.sqrt((total * total).sum(axis=0))
    return np.asarray(total / np.maximum(length, np.finfo(np.float64).tiny))


def _triple(a: Floats, b: Floats, c: Floats) -> Floats:
    """Triple products of columns."""
    return np.asarray(
        (a[1] * b[2] - a[2] * b[1]) * c[0]
        + (a[2] * b[0] - a[0] * b[2]) * c[1]
        + (a[0] * b[1] - a[1] * b[0]) * c[2]
    )
