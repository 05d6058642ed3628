"""Which joint lies under a pixel of the bench in a pictorial view, drawn apart or cut through.

Frame: sheet mm of the look; view mm inside.  What is cut away has no seams, and a face that the
plane goes through ends at the plane.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from app.scene.apart_seams import ApartSeams
from app.scene.joint_seams import Floats, Near, Seam, Seams
from geometry.bench.bench import Bench
from geometry.design.joint import Joint
from geometry.primitives.frame import Vec2, Vec3, add, dot, scale
from geometry.sheets.figure_page import WholeSheet
from geometry.sheets.section_sheet import SectionSheet
from geometry.views.view import View

SEAM_REACH = 6.0  # pixels
SEAM_AROUND = 9.0  # pixels round the pointer in which both parts of a joint are in sight
_GONE = 1e-3  # mm: a face no farther behind the plane is gone


@dataclass(frozen=True, slots=True, eq=False)
class LookSeams:
    """The seams of a bench in the view of a look, and where that view stands on the sheet."""

    seams: Seams | ApartSeams
    view: View
    scale: float
    origin: Vec2

    def at(self, sheet_point: Vec2, density: float) -> Seam | None:
        """The seam at a point of a sheet with so many pixels to the mm."""
        if self.scale <= 0.0:
            return None
        x, y = self.origin
        point = ((sheet_point[0] - x) / self.scale, (sheet_point[1] - y) / self.scale)
        pixel = 1.0 / (density * self.scale)
        near = Near(SEAM_REACH * pixel, SEAM_AROUND * pixel, np.inf, np.inf)
        if isinstance(self.seams, ApartSeams):
            return self.seams.at(point, near)
        return self.seams.at(self.view, point, near)

    def on_sheet(self, points: Floats) -> Floats:
        """Points (n, 2) of the view in sheet mm."""
        return np.asarray(points * self.scale + np.array(self.origin))


def pictorial_seams(bench: Bench, shown: WholeSheet) -> LookSeams:
    view = shown.figure.linework.view
    seams = Seams(bench.joints, bench.parts, tell_hidden=True)
    return LookSeams(seams, view, shown.scale, shown.origin)


def apart_seams(bench: Bench, shown: WholeSheet) -> LookSeams:
    view = shown.figure.linework.view
    seams = ApartSeams(bench.joints, bench.parts, shown.figure.parts, view)
    return LookSeams(seams, view, shown.scale, shown.origin)


def section_seams(bench: Bench, shown: SectionSheet) -> LookSeams:
    cut = shown.cut
    parts = tuple(part for _, part in cut.left)
    joints = left_of(bench.joints, {part.name for part in parts}, cut.view, cut.at)
    seams = Seams(joints, parts, tell_hidden=True)
    return LookSeams(seams, cut.view, shown.scale, shown.origin)


def left_of(joints: Sequence[Joint], names: set[str], view: View, at: float) -> tuple[Joint, ...]:
    """The joints between parts of these names, as a plane ``at`` mm toward the viewer leaves
    them."""
    found = []
    for joint in joints:
        if names.issuperset(joint.parts):
            faces = [(each, _behind(each.corners, view.toward, at)) for each in joint.contacts]
            left = tuple(replace(each, corners=corners) for each, corners in faces if corners)
            if left:
                found.append(replace(joint, contacts=left))
    return tuple(found)


def _behind(corners: tuple[Vec3, ...], toward: Vec3, at: float) -> tuple[Vec3, ...]:
    """What a plane leaves of a flat face, convex or not; nothing of one that only touches it."""
    heights = [dot(corner, toward) - at for corner in corners]
    if not heights or min(heights) > -_GONE:
        return ()
    if max(heights) <= 0.0:
        return corners
    found: list[Vec3] = []
    closed = list(zip((*corners, corners[0]), (*heights, heights[0]), strict=True))
    for (start, low), (end, high) in pairwise(closed):
        if low <= 0.0:
            found.append(start)
        if (low <= 0.0) != (high <= 0.0):
            share = low / (low - high)
            found.append(add(scale(start, 1.0 - share), scale(end, share)))
    return tuple(found)
