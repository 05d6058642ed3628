"""Where a pointer is plainly at a joint: on a seam of it, with both of its parts in sight around.

Frame and units: (u, v) of the view, mm.

Method: the outlines of the faces in which a joint's parts meet are laid in the view.  Of the joints
with an outline within reach the nearest is taken, a small one before a long one, of which both
parts are the foremost somewhere in a small ring round the pointer; so a joint that lies behind
something is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.scene.picking import distances_to
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import Vec2
from geometry.views.look import parts_under
from geometry.views.view import View

Floats = NDArray[np.float64]

_RING = np.deg2rad(np.arange(0.0, 360.0, 30.0))
_POINT = 1e-3  # mm: a side of a face that is seen as a point


@dataclass(frozen=True, eq=False)
class Seam:
    """A joint's outlines (n, 4) in a view."""

    joint: str
    view: str
    lines: Floats


@dataclass(frozen=True, slots=True)
class Near:
    """How a pointer must lie to be on a seam, all in mm of the view.

    No farther from it than ``reach``; both parts in sight within ``around``; and where an edge can
    be taken hold of, no farther than ``edge``, unless all of the seam is ``small``.
    """

    reach: float
    around: float
    edge: float
    small: float


class Seams:
    """Those of a bench, laid in each view when it is first asked for."""

    def __init__(self, joints: Sequence[Joint], parts: Sequence[Part]) -> None:
        self._joints, self._parts = joints, parts
        self._laid: dict[str, tuple[Floats, NDArray[np.intp]]] = {}

    def at(self, view: View, point: Vec2, near: Near) -> Seam | None:
        """The seam that a pointer is on."""
        lines, owners = self._in(view)
        if not len(lines):
            return None
        away = distances_to(lines, point)
        found: list[tuple[bool, float, int]] = []
        for place in np.unique(owners[away <= near.reach]).tolist():
            mine = owners == place
            far, long = float(away[mine].min()), _extent(lines[mine]) > near.small
            if far <= near.edge or not long:
                found.append((long, far, place))
        if not found:
            return None
        seen = self._seen(view, point, near.around)
        for _, _, place in sorted(found):
            joint = self._joints[place]
            if seen.issuperset(joint.parts):
                return Seam(joint.name, view.name, lines[owners == place])
        return None

    def _seen(self, view: View, point: Vec2, around: float) -> set[str]:
        """The parts that are foremost at a point and in two rings round it."""
        u, v = point
        rings = np.concatenate([[0.0], np.repeat((0.5 * around, around), len(_RING))])
        turns = np.concatenate([[0.0], _RING, _RING])
        points = np.column_stack([u + rings * np.cos(turns), v + rings * np.sin(turns)])
        found = parts_under(self._parts, view, points)
        return {self._parts[place].name for place in found if place is not None}

    def _in(self, view: View) -> tuple[Floats, NDArray[np.intp]]:
        """All outlines in a view, (n, 4), and the place of each one's joint, (n,)."""
        if view.name not in self._laid:
            rows, owners = [np.empty((0, 4))], []
            for place, joint in enumerate(self._joints):
                for contact in joint.contacts:
                    points = np.array([view.project(corner) for corner in contact.corners])
                    sides = np.hstack([points, np.roll(points, -1, axis=0)])
                    long = np.hypot(*(sides[:, 2:] - sides[:, :2]).T) > _POINT
                    rows.append(sides[long])
                    owners += [place] * int(long.sum())
            self._laid[view.name] = np.concatenate(rows), np.array(owners, dtype=np.intp)
        return self._laid[view.name]


def _extent(lines: Floats) -> float:
    """How wide or high lines (n, 4) are together, whichever is more."""
    points = lines.reshape(-1, 2)
    return float((points.max(axis=0) - points.min(axis=0)).max())
