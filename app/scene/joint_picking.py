"""Which joint lies under a point of a view, and which a finding is about.

Frame and units: (u, v) of the view, mm.

Method: the faces in which a joint's parts meet are laid in the view; the joint is taken whose face
the point is in or nearest to, of several the one with the smallest face.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from app.scene.picking import distances_to
from geometry.design.finding import Finding
from geometry.design.joint import Joint
from geometry.primitives.frame import Vec2, Vec3
from geometry.views.view import View

BY_A_JOINT = 25.0
"""A finding no farther from a joint's faces, mm, is about the joint."""


def joint_under(joints: Sequence[Joint], view: View, at: Vec2, reach: float) -> str:
    """The name of the joint within ``reach`` mm of a point; empty when there is none."""
    best: tuple[float, float, str] | None = None
    for joint in joints:
        for contact in joint.contacts:
            points = np.array([view.project(corner) for corner in contact.corners])
            sides = np.hstack([points, np.roll(points, -1, axis=0)])
            away = 0.0 if is_inside(points, at) else float(distances_to(sides, at).min())
            found = (away, abs(area_of(points)), joint.name)
            if away <= reach and (best is None or found < best):
                best = found
    return best[2] if best else ""


def joint_of(joints: Sequence[Joint], finding: Finding) -> str:
    """The name of the joint that a finding is about; empty when it is about none.

    Its place is at the joint or near it.  Of those of its parts one between two of them goes
    first, then one whose faces come nearest to the place.
    """
    parts, place = set(finding.parts), finding.place
    about = [joint for joint in joints if parts.intersection(joint.parts)]
    away = {joint.name: _away(joint, place) if place is not None else 0.0 for joint in about}
    about = [joint for joint in about if away[joint.name] <= BY_A_JOINT]
    if not about:
        return ""
    return min(about, key=lambda j: (-len(parts.intersection(j.parts)), away[j.name])).name


def _away(joint: Joint, place: Vec3) -> float:
    """From a place to the nearest face in which a joint's parts meet, mm; each taken for the box
    that it fills."""
    rooms = [np.array(contact.corners) for contact in joint.contacts if contact.corners]
    return min(
        (
            float(np.linalg.norm(np.maximum(0.0, np.maximum(c.min(0) - place, place - c.max(0)))))
            for c in rooms
        ),
        default=np.inf,
    )


def is_inside(points: np.ndarray, at: Vec2) -> bool:
    """Whether a point lies in a polygon: a ray to the right crosses its sides an odd number of
    times."""
    x, y = at
    (x0, y0), (x1, y1) = points.T, np.roll(points, -1, axis=0).T
    spans = (y0 > y) != (y1 > y)
    if not spans.any():
        return False
    crossing = x0[spans] + (y - y0[spans]) / (y1[spans] - y0[spans]) * (x1[spans] - x0[spans])
    return bool((crossing > x).sum() % 2)


def area_of(points: np.ndarray) -> float:
    """Of a polygon (n, 2), less than nothing where it runs clockwise."""
    x, y = points.T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum()) / 2.0
