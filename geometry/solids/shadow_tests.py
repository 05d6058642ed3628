"""Plain tests on pairs of flat shadows that settle most of them before any is clipped.

Frame and units: the plan square to a way, mm; heights are along the way.  Each array holds one
triangle, or one pair of them, in a row; triangles turn left.

Each test errs to one side only: ``inside`` with a margin proves an overlap that is wide enough, as
a convex piece round a disc of radius r has 4 area / girth >= 2 r; ``apart`` and ``may_exceed``
leave out only what cannot count, as a piece within a strip of width d has 4 area / girth <= 2 d.
"""

from __future__ import annotations

import numpy as np

from geometry.solids.solid import Flags, Floats

_ROUNDING = 1e-6  # mm


def least_of(values: Floats) -> Floats:
    """The least of three along the second axis; much faster than to reduce so short an axis."""
    return np.minimum(np.minimum(values[:, 0], values[:, 1]), values[:, 2])


def most_of(values: Floats) -> Floats:
    """The greatest of three along the second axis."""
    return np.maximum(np.maximum(values[:, 0], values[:, 1]), values[:, 2])


def sides_of(plan: Floats) -> Floats:
    """Shape (n, 3, 3): for each side of triangles (n, 3, 2), its unit normal inward and offset."""
    along = np.roll(plan, -1, axis=1) - plan
    normal = np.stack((-along[:, :, 1], along[:, :, 0]), axis=2)
    normal /= np.maximum(np.linalg.norm(normal, axis=2), _ROUNDING)[:, :, None]
    offset = (normal * plan).sum(axis=2)
    return np.concatenate((normal, offset[:, :, None]), axis=2)


def plane_of(plan: Floats, along: Floats) -> Floats:
    """Shape (n, 3): the height over triangles is a + b u + c v."""
    first, second = plan[:, 1] - plan[:, 0], plan[:, 2] - plan[:, 0]
    twice = first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]
    rise, rise_to = along[:, 1] - along[:, 0], along[:, 2] - along[:, 0]
    b = (rise * second[:, 1] - rise_to * first[:, 1]) / twice
    c = (rise_to * first[:, 0] - rise * second[:, 0]) / twice
    a = along[:, 0] - b * plan[:, 0, 0] - c * plan[:, 0, 1]
    return np.stack((a, b, c), axis=1)


def at(plane: Floats, spot: Floats) -> Floats:
    """Shape (m,): the heights of planes (m, 3) at spots (m, 2)."""
    return np.asarray(plane[:, 0] + plane[:, 1] * spot[:, 0] + plane[:, 2] * spot[:, 1])


def may_exceed(plane: Floats, low: Floats, high: Floats, limit: float) -> Flags:
    """Shape (m,): whether planes (m, 3) rise above ``limit`` anywhere over boxes (m, 2)."""
    half = (high - low) / 2.0
    most = at(plane, (low + high) / 2.0)
    most += np.abs(plane[:, 1]) * half[:, 0] + np.abs(plane[:, 2]) * half[:, 1]
    # The steeper a plane, the coarser its numbers.
    room = _ROUNDING * (1.0 + np.abs(plane[:, 1]) + np.abs(plane[:, 2]))
    return np.asarray(most > limit - room)


def inside(sides: Floats, spot: Floats, margin: float) -> Flags:
    """Shape (m,): whether spots (m, 2) lie in triangles by at least ``margin`` from every side."""
    deep = sides[:, :, 0] * spot[:, None, 0] + sides[:, :, 1] * spot[:, None, 1] - sides[:, :, 2]
    return np.asarray(least_of(deep) > margin)


def apart(sides: Floats, plan: Floats, width: float) -> Flags:
    """Shape (m,): whether triangles (m, 3, 2) reach less than ``width`` past a side of others."""
    out = np.zeros(len(sides), dtype=bool)
    for k in range(3):
        side = sides[:, k]
        reach = side[:, None, 0] * plan[:, :, 0] + side[:, None, 1] * plan[:, :, 1]
        out |= most_of(reach) - side[:, 2] < width - _ROUNDING
    return out
