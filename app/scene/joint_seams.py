"""Where a pointer is plainly at a joint: on a seam of it, with both of its parts in sight around.

Frame and units: (u, v) of the view, mm.

Method: the outlines of the faces in which a joint's parts meet are laid in the view.  Of the joints
with an outline within reach the nearest is taken, a small one before a long one, of which both
parts are the foremost somewhere in a small ring round the pointer; so a joint that lies behind
something is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from app.scene.hidden_seams import seen_and_hidden
from app.scene.picking import distances_to
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import Vec2, Vec3
from geometry.views.foremost import NOTHING, Foremost
from geometry.views.view import View

Floats = NDArray[np.float64]

_RING = np.deg2rad(np.arange(0.0, 360.0, 30.0))
_POINT = 1e-3  # mm: a side of a face that is seen as a point


@dataclass(frozen=True, eq=False)
class Seam:
    """A joint's outlines (n, 4) in a view.

    Where that is told apart, ``hidden`` (m, 4) are what of them lies behind wood, and ``faces``
    (k, 2) those of its faces of which the wood is seen.
    """

    joint: str
    view: str
    lines: Floats
    hidden: Floats = field(default_factory=lambda: np.empty((0, 4)))
    faces: tuple[Floats, ...] = ()


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
    """Those of a bench, laid in each view when it is first asked for; ``tell_hidden`` where lines
    of a seam that lie behind wood would be taken for others."""

    def __init__(
        self, joints: Sequence[Joint], parts: Sequence[Part], *, tell_hidden: bool = False
    ) -> None:
        self._joints, self._parts = joints, parts
        self._tell_hidden = tell_hidden
        self._laid: dict[str, tuple[Floats, NDArray[np.intp]]] = {}
        self._told: dict[tuple[str, int], Seam] = {}
        self._foremost: dict[str, Foremost] = {}

    def at(self, view: View, point: Vec2, near: Near) -> Seam | None:
        """The seam that a pointer is on."""
        sides, owners = self._in(view)
        if not len(sides):
            return None
        lines = sides[:, :, :2].reshape(-1, 4)
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
            if seen.issuperset(self._joints[place].parts):
                return self._seam(view, place)
        return None

    def _seam(self, view: View, place: int) -> Seam:
        if (view.name, place) not in self._told:
            sides, owners = self._in(view)
            mine, name = sides[owners == place], self._joints[place].name
            if self._tell_hidden:
                seam = Seam(name, view.name, *seen_and_hidden(mine, self.foremost_in(view)))
            else:
                seam = Seam(name, view.name, mine[:, :, :2].reshape(-1, 4))
            self._told[view.name, place] = seam
        return self._told[view.name, place]

    def _seen(self, view: View, point: Vec2, around: float) -> set[str]:
        """The parts that are foremost at a point and in two rings round it."""
        u, v = point
        rings = np.concatenate([[0.0], np.repeat((0.5 * around, around), len(_RING))])
        turns = np.concatenate([[0.0], _RING, _RING])
        points = np.column_stack([u + rings * np.cos(turns), v + rings * np.sin(turns)])
        places, _ = self.foremost_in(view).at(points)
        return {self._parts[place].name for place in places.tolist() if place != NOTHING}

    def foremost_in(self, view: View) -> Foremost:
        """What is seen in a view, gathered when a pointer first comes over it."""
        if view.name not in self._foremost:
            self._foremost[view.name] = Foremost(self._parts, view)
        return self._foremost[view.name]

    def _in(self, view: View) -> tuple[Floats, NDArray[np.intp]]:
        """All outlines in a view, (n, 2, 3), and the place of each one's joint, (n,)."""
        if view.name not in self._laid:
            faces = [
                (place, contact.corners)
                for place, joint in enumerate(self._joints)
                for contact in joint.contacts
            ]
            sides, owners = outlines([corners for _, corners in faces], view)
            joints = np.array([place for place, _ in faces], dtype=np.intp)
            self._laid[view.name] = sides, joints[owners]
        return self._laid[view.name]


def outlines(faces: Sequence[Sequence[Vec3]], view: View) -> tuple[Floats, NDArray[np.intp]]:
    """The sides of flat faces in a view, from (u, v, w) to (u, v, w), (n, 2, 3), but those that are
    seen as points; and the place of each one's face, (n,)."""
    counts = np.array([len(face) for face in faces], dtype=np.intp)
    if not counts.sum():
        return np.empty((0, 2, 3)), np.empty(0, dtype=np.intp)
    axes = np.array((view.right, view.up, view.toward), dtype=np.float64)
    corners = np.array([corner for face in faces for corner in face]) @ axes.T
    following = np.arange(1, len(corners) + 1)
    ends = np.cumsum(counts)
    following[ends[counts > 0] - 1] = (ends - counts)[counts > 0]
    sides = np.stack([corners, corners[following]], axis=1)
    long = np.hypot(*(sides[:, 1, :2] - sides[:, 0, :2]).T) > _POINT
    return sides[long], np.repeat(np.arange(len(faces)), counts)[long]


def _extent(lines: Floats) -> float:
    """How wide or high lines (n, 4) are together, whichever is more."""
    points = lines.reshape(-1, 2)
    return float((points.max(axis=0) - points.min(axis=0)).max())
