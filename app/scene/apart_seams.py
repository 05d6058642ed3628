"""Where a pointer is at a joint of a bench that is drawn apart: on a face of it, on either part.

Frame and units: (u, v) of the view and w toward the viewer, mm.

Method: the faces in which a joint's parts meet lie on the first part as it is, and on the second
beyond the gap; each is moved with its part.  A pointer is on the face whose wood it sees, of
several on the smallest; or else on the outline within reach that is nearest, where nothing hides
that.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from app.scene.hidden_seams import ON_IT, seen_and_hidden
from app.scene.joint_picking import area_of, is_inside
from app.scene.joint_seams import Near, Seam, outlines
from app.scene.picking import distances_to
from geometry.design.joint import Joint
from geometry.design.part import Part
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale, subtract
from geometry.views.foremost import Foremost
from geometry.views.view import View

Floats = NDArray[np.float64]

_EDGE_ON = 0.05  # of a normal: less of a face is seen as a line
_TRIED = 12  # outlines within reach, of which the nearest that is seen counts


class ApartSeams:
    """``parts`` as they stand in the bench, ``apart`` the same where they are drawn."""

    def __init__(
        self, joints: Sequence[Joint], parts: Sequence[Part], apart: Sequence[Part], view: View
    ) -> None:
        self._joints, self._view = joints, view
        self._apart = apart
        self._told: dict[int, Seam] = {}
        place_of = {part.name: place for place, part in enumerate(parts)}
        offsets = [
            subtract(there.frame.origin, here.frame.origin)
            for here, there in zip(parts, apart, strict=True)
        ]
        corners: list[list[Vec3]] = []
        normals: list[Vec3] = []
        owners: list[tuple[int, int]] = []  # places of the joint and of the part
        for k, joint in enumerate(joints):
            first, second = (place_of[name] for name in joint.parts)
            for contact in joint.contacts:
                beyond = add(offsets[second], scale(contact.normal, contact.gap))
                for part, by, sign in ((first, offsets[first], 1.0), (second, beyond, -1.0)):
                    corners.append([add(corner, by) for corner in contact.corners])
                    normals.append(scale(contact.normal, sign))
                    owners.append((k, part))
        self._joint_of = np.array([joint for joint, _ in owners], dtype=np.intp)
        self._part_of = np.array([part for _, part in owners], dtype=np.intp)
        self._faces = [
            np.array([(*view.project(corner), dot(corner, view.toward)) for corner in face])
            for face in corners
        ]
        turned = [(*view.project(normal), dot(normal, view.toward)) for normal in normals]
        self._normals = np.array(turned).reshape(-1, 3)
        self._low = np.array([face[:, :2].min(axis=0) for face in self._faces]).reshape(-1, 2)
        self._high = np.array([face[:, :2].max(axis=0) for face in self._faces]).reshape(-1, 2)
        sides, self._side_of = outlines(corners, view)
        self._flat, self._sides = sides[:, :, :2].reshape(-1, 4), sides

    @cached_property
    def _foremost(self) -> Foremost:
        """Asked for when a pointer first comes, not with every size of a window."""
        return Foremost(self._apart, self._view)

    def at(self, point: Vec2, near: Near) -> Seam | None:
        """The joint that a pointer is on."""
        if not self._faces:
            return None
        joint = self._face_at(point)
        if joint is None:
            joint = self._outline_at(point, near.reach)
        return None if joint is None else self._seam(joint)

    def _face_at(self, point: Vec2) -> int | None:
        """The joint of which a face is seen at a point."""
        places, heights = self._foremost.at(np.array([point]))
        here = (self._low <= point).all(axis=1) & (self._high >= point).all(axis=1)
        here &= (self._normals[:, 2] > _EDGE_ON) & (self._part_of == places[0])
        found = [
            (abs(area_of(self._faces[face][:, :2])), int(self._joint_of[face]))
            for face in np.flatnonzero(here).tolist()
            if abs(self._height(face, point) - heights[0]) < ON_IT
            and is_inside(self._faces[face][:, :2], point)
        ]
        return min(found)[1] if found else None

    def _outline_at(self, point: Vec2, reach: float) -> int | None:
        """The joint with the nearest outline that is seen where it is nearest."""
        away = distances_to(self._flat, point)
        nearest = np.argsort(away, kind="stable")[:_TRIED]
        nearest = nearest[away[nearest] <= reach]
        if not len(nearest):
            return None
        start, end = self._sides[nearest, 0], self._sides[nearest, 1]
        run = end - start
        along = ((np.array(point) - start[:, :2]) * run[:, :2]).sum(axis=1)
        share = np.clip(along / (run[:, :2] ** 2).sum(axis=1), 0.0, 1.0)
        foot = start + run * share[:, None]
        _, heights = self._foremost.at(foot[:, :2])
        seen = nearest[heights <= foot[:, 2] + ON_IT]
        return int(self._joint_of[self._side_of[seen[0]]]) if len(seen) else None

    def _height(self, face: int, point: Vec2) -> float:
        """Of a face's plane at a point."""
        (u, v, w), (p, q, r) = self._faces[face][0].tolist(), self._normals[face].tolist()
        return float(w - (p * (point[0] - u) + q * (point[1] - v)) / r)

    def _seam(self, joint: int) -> Seam:
        if joint not in self._told:
            mine = self._joint_of == joint
            sides = np.flatnonzero(mine[self._side_of])
            by_part = np.argsort(self._part_of[self._side_of[sides]], kind="stable")
            lines = seen_and_hidden(self._sides[sides[by_part]], self._foremost)
            faces = tuple(
                self._faces[face][:, :2]
                for face in np.flatnonzero(mine & (self._normals[:, 2] > _EDGE_ON)).tolist()
                if self._is_open(face)
            )
            self._told[joint] = Seam(self._joints[joint].name, self._view.name, *lines, faces)
        return self._told[joint]

    def _is_open(self, face: int) -> bool:
        """Whether the wood of a face is seen in its middle."""
        middle = self._faces[face].mean(axis=0)
        _, heights = self._foremost.at(middle[None, :2])
        return bool(heights[0] <= middle[2] + ON_IT)
