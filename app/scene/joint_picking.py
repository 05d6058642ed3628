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
from geometry.primitives.frame import Vec2
from geometry.views.view import View


def joint_under(joints: Sequence[Joint], view: View, at: Vec2, reach: float) -> str:
    """The name of the joint within ``reach`` mm of a point; empty when there is none."""
    best: tuple[float, float, str] | None = None
    for joint in joints:
        for contact in joint.contacts:
            points = np.array([view.project(corner) for corner in contact.corners])
            sides = np.hstack([points, np.roll(points, -1, axis=0)])
            away = 0.0 if _inside(points, at) else float(distances_to(sides, at).min())
            found = (away, abs(_area(points)), joint.name)
            if away <= reach and (best is None or found < best):
                best = found
    return best[2] if best else ""


def joint_of(joints: Sequence[Joint], finding: Finding) -> str:
    """The name of the joint that a finding is about; empty when it is about none.

    Of the joints of its parts one between two of them goes first, then one whose faces come nearest
    to its place.
    """
    parts = set(finding.parts)

    def worth(joint: Joint) -> tuple[int, float]:
        corners = [corner for contact in joint.contacts for corner in contact.corners]
        away = 0.0
        if finding.place is not None and corners:
            away = float(np.linalg.norm(np.subtract(corners, finding.place), axis=1).min())
        return -len(parts.intersection(joint.parts)), away

    about = [joint for joint in joints if parts.intersection(joint.parts)]
    return min(about, key=worth).name if about else ""


def _inside(points: np.ndarray, at: Vec2) -> bool:
    """Whether a point lies in a polygon: a ray to the right crosses its sides an odd number of
    times."""
    x, y = at
    (x0, y0), (x1, y1) = points.T, np.roll(points, -1, axis=0).T
    spans = (y0 > y) != (y1 > y)
    if not spans.any():
        return False
    crossing = x0[spans] + (y - y0[spans]) / (y1[spans] - y0[spans]) * (x1[spans] - x0[spans])
    return bool((crossing > x).sum() % 2)


def _area(points: np.ndarray) -> float:
    x, y = points.T
    return float((x * np.roll(y, -1) - np.roll(x, -1) * y).sum()) / 2.0
