"""An outside judge of labels: rays that trimesh casts onto a page say which part is where."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations

import numpy as np
import shapely
import trimesh
from numpy.typing import NDArray

from geometry.design.part import Part
from geometry.sheets.part_labels import Named
from geometry.views.view import View
from tests.judges.rays import mesh_as_seen

Floats = NDArray[np.float64]

PITCH = 0.5  # mm of paper between rays
ROUND = 0.4  # mm of paper round a ray, all of the same part: a screw's hole shows none to speak of


class PageJudge:
    """``parts`` by index as they stand in a view, drawn at a scale."""

    def __init__(self, parts: Mapping[int, Part], view: View, scale: float) -> None:
        meshes = [mesh_as_seen(part, view) for part in parts.values()]
        self._all = trimesh.util.concatenate(meshes)
        self._owner = np.repeat(list(parts), [len(mesh.faces) for mesh in meshes])
        self._scale = scale

    def under(self, points: Floats) -> NDArray[np.intp]:
        """The part that is seen at each point (n, 2) of the sheet about the origin, -1 for none."""
        high = self._all.bounds[1, 2] + 10.0
        starts = np.column_stack((points / self._scale, np.full(len(points), high)))
        down = np.tile((0.0, 0.0, -1.0), (len(points), 1))
        face = self._all.ray.intersects_first(starts, down)
        return np.where(face < 0, -1, self._owner[face])

    def seen(self) -> set[int]:
        """The parts that show somewhere broader than a line or two, as rays find them."""
        (left, bottom), (right, top) = self._all.bounds[:, :2] * self._scale
        steps = np.meshgrid(np.arange(left, right, PITCH), np.arange(bottom, top, PITCH))
        points = np.stack(steps, axis=-1).reshape(-1, 2)
        owner = self.under(points)
        found: set[int] = set()
        for index in set(owner.tolist()) - {-1}:
            own = points[owner == index]
            turns = np.radians(np.arange(0.0, 360.0, 45.0))
            about = ROUND * np.column_stack((np.cos(turns), np.sin(turns)))
            here = self.under((own[:, None] + about).reshape(-1, 2)).reshape(-1, len(about))
            if (here == index).all(axis=1).any():
                found.add(index)
        return found

    def astray(self, labels: Sequence[Named]) -> list[str]:
        """Labels whose leaders end on another part, or on none."""
        if not labels:
            return []
        ends = np.array([one.leader[2:] for one in labels])
        return [
            one.text
            for one, owner in zip(labels, self.under(ends).tolist(), strict=True)
            if owner != one.index
        ]


def crossing(labels: Sequence[Named]) -> list[tuple[str, str]]:
    """Labels whose leaders cross."""
    lines = {one.text: shapely.LineString([one.leader[:2], one.leader[2:]]) for one in labels}
    return [(a, b) for a, b in combinations(lines, 2) if lines[a].crosses(lines[b])]


def struck(labels: Sequence[Named]) -> list[tuple[str, str]]:
    """Labels that overlap, or that the leader of another runs through."""
    found: list[tuple[str, str]] = []
    for one in labels:
        box = shapely.Polygon(one.box.corners())
        for other in labels:
            if other is one:
                continue
            line = shapely.LineString([other.leader[:2], other.leader[2:]])
            if box.intersects(line) or box.intersects(shapely.Polygon(other.box.corners())):
                found.append((one.text, other.text))
    return found
