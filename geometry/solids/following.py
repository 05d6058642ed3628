"""Solids that follow their shapes without being cut anew, where it is sure to come out the same.

Frame and units: the part's own frame, mm.

Method: let each axis be stretched by itself, evenly between pins, so that every pin of the old
shape comes to stand where it is in the new.  If the pins keep their order this is one smooth
change of all space, and it carries the old blank onto the new one.  It carries each old cutter
onto the new one too if whatever slants or curves lies where an axis is only shifted.  Then it
carries what is left of the one onto what is left of the other: the old surface, its corners
moved, is the new surface.  Only the panels that flat faces were divided into may no longer fit
beside one another; they are tried, and the normals, which have not turned, come over as they are.

Between two stations along x where nothing but straight removals are crossed, y and z may be
stretched in a way of their own: in the gap at a station one way passes into the other.

The proof asks for more than needed: where it does not hold the solid is to be cut as always.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from geometry.design.part import Shape
from geometry.solids.cutting import removals_of, solid_of
from geometry.solids.pins import Hold, Pins, hold_of, pins_of
from geometry.solids.solid import Flags, Floats, Indices, Solid, frozen

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

    A *row* is an axis of a shape, or of y and z what counts between two stations along x.  All n
    pins of all rows lie end to end: ``pick`` (n,) the place of a pin's coordinate among those of
    the shapes' pins, ``along`` (n,) where it was.  From each pin to the next, (n - 1,):
    ``joined``, both are of one row; ``apart``, and are two.  k stretches run from pin ``first``
    to pin ``last``.  The 3 v coordinates of all corners are ``share`` of the way from pin
    ``left`` to the next.  ``panels`` (4, q) are numbers of corners, ``facing`` (3, q) their
    normals.  ``sizes`` (shapes, 5) is how many pins' coordinates, n, k, v and q are whose.
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
    facing: Floats
    sizes: Indices


def follow(cut: Sequence[Shape], shapes: Sequence[Shape]) -> list[Solid | None]:
    """The solids of ``shapes``, each out of that of the shape beside it in ``cut``.

    None for those that have to be cut.
    """
    found: list[Solid | None] = [None] * len(shapes)
    pins = [_pins(shape) for shape in shapes]
    fit = [k for k, old in enumerate(cut) if _of_one_form(_pins(old), pins[k])]
    if fit:
        moved = _moved(tuple(cut[k] for k in fit), [pins[k] for k in fit])
        for k, solid in zip(fit, moved, strict=True):
            found[k] = solid
    return found


def make_ready(shape: Shape) -> None:
    """Do now what the first ``follow`` from ``shape`` would have to do."""
    _pinned(shape)


@lru_cache(maxsize=4 * _KEPT)
def _pins(shape: Shape) -> Pins:
    return pins_of(shape.blank, removals_of(shape))


def _of_one_form(one: Pins, other: Pins) -> bool:
    return (
        one.counts == other.counts
        and one.kinds == other.kinds
        and all(abs(a - b) < _SAME for a, b in zip(one.fixed, other.fixed, strict=True))
    )


# A shape made ready


@lru_cache(maxsize=_KEPT)
def _pinned(shape: Shape) -> _Pinned:
    solid = solid_of(shape)
    pins = _pins(shape)
    points = np.array(pins.points)
    owner = np.repeat(np.arange(len(pins.counts) + 1), (2, *pins.counts))
    holds = [hold_of(removal, shape.blank) for removal in removals_of(shape)]
    stations = _stations(points[:, 0], owner, holds)
    low, high = _reach(points[:, 0], owner, stations)
    zones = len(stations) + 1

    rows = [3 * np.arange(len(points))]
    stretches = [
        (0, start, end) for hold in holds for axis, start, end in hold.stretches if not axis
    ]
    for axis in (1, 2):
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
    zone_of = np.searchsorted(stations, solid.vertices[:, 0])
    for axis, row_of in enumerate((0 * zone_of, 1 + zone_of, 1 + zones + zone_of)):
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
        facing=np.ascontiguousarray(solid.panel_normals.T),
        sizes=np.array(
            [[len(flat), len(pick), len(first), len(solid.vertices), len(solid.panels)]]
        ),
    )


def _stations(x: Floats, owner: Indices, holds: Sequence[Hold]) -> Floats:
    """Where along x one zone may end and the next begin: between pins, and in no removal that
    is not straight."""
    pinned = np.unique(x)
    gaps = np.flatnonzero(np.diff(pinned) > _APART)
    between = (pinned[gaps] + pinned[gaps + 1]) / 2.0
    free = np.ones(len(between), dtype=np.bool_)
    for number, hold in enumerate(holds, start=1):
        if not hold.straight:
            mine = x[owner == number]
            free &= (between < mine.min()) | (between > mine.max())
    return between[free]


def _reach(x: Floats, owner: Indices, stations: Floats) -> tuple[Indices, Indices]:
    """The first and the last zone that the blank and each removal reach into."""
    zone = np.searchsorted(stations, x)
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
    coordinates, pins, _, corners, _ = (np.cumsum(sizes, axis=0) - sizes).T
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
        facing=np.concatenate([one.facing for one in each], axis=1),
        sizes=sizes,
    )


def _joined(each: Sequence[Indices], offsets: Indices) -> Indices:
    return np.concatenate([one + offset for one, offset in zip(each, offsets, strict=True)])


# Moving it


def _moved(cut: tuple[Shape, ...], pins: Sequence[Pins]) -> list[Solid | None]:
    """The solids of ``cut`` with their corners where ``pins`` have them; None where unproven."""
    old = _gathered(cut)
    every = [coordinate for each in pins for point in each.points for coordinate in point]
    now = np.array(every).take(old.pick)
    _, in_rows, in_stretches, corners, in_panels = old.sizes.T
    whose = np.arange(len(cut))
    spoilt = np.zeros(len(cut), dtype=np.bool_)

    steps = np.diff(now)
    lost = np.where(old.apart, steps <= _APART, old.joined & (np.abs(steps) >= _SAME))
    spoilt[np.repeat(whose, in_rows)[1:][lost]] = True
    bends = np.zeros(len(now), dtype=np.intp)
    np.cumsum(np.abs(steps - np.diff(old.along)) > _SAME, out=bends[1:])
    bent = bends.take(old.first) != bends.take(old.last)
    spoilt[np.repeat(whose, in_stretches)[bent]] = True

    start = now.take(old.left)
    vertices = (start + old.share * (now.take(old.left + 1) - start)).reshape(-1, 3)
    at = vertices.T.take(old.panels, axis=1)  # (3, 4, q)
    sides = np.roll(at, -1, axis=1) - at
    turned = _triple(sides, np.roll(sides, -1, axis=1), old.facing[:, None])
    spoilt[np.repeat(whose, in_panels)[(turned < -_NO_TURN).any(axis=0)]] = True
    six = _triple(at[:, 0], at[:, 1], at[:, 2]) + _triple(at[:, 0], at[:, 2], at[:, 3])
    volumes = np.add.reduceat(six, np.cumsum(in_panels) - in_panels) / 6.0

    frozen(vertices)
    ends = np.cumsum(corners).tolist()
    return [
        None
        if spoilt[k]
        else replace(
            solid_of(shape),
            vertices=vertices[ends[k] - corners[k] : ends[k]],
            volume=float(volumes[k]),
        )
        for k, shape in enumerate(cut)
    ]


def _triple(a: Floats, b: Floats, c: Floats) -> Floats:
    """Triple products of columns."""
    return np.asarray(
        (a[1] * b[2] - a[2] * b[1]) * c[0]
        + (a[2] * b[0] - a[0] * b[2]) * c[1]
        + (a[0] * b[1] - a[1] * b[0]) * c[2]
    )
