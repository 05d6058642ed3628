"""An outside judge of hidden lines: rays cast by trimesh, which shares no code with the engine.

A ray runs down each side of a sample point on a segment, a hair's breadth from it.  A visible
stretch belongs to an edge that lies at the height where one of the rays first meets material;
over a hidden stretch both rays meet material before they come down to the edge.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import trimesh
from numpy.typing import NDArray
from trimesh.ray.ray_triangle import RayMeshIntersector

from geometry.design.part import Part
from geometry.solids.cutting import solid_of
from geometry.views.linework import Linework
from geometry.views.view import View
from shared.tolerances import MERGE

Floats = NDArray[np.float64]

BESIDE = 1e-4
"""mm from the line to the nearer pair of rays; a second pair runs twice as far off, and what
both say about a slope gives the height at the line itself."""

HEIGHT_ERROR = 1e-3
"""mm by which heights may differ and still be the same."""


def mesh_as_seen(part: Part, view: View) -> trimesh.Trimesh:
    """The part's triangles in the view's (u, v, w)."""
    solid = solid_of(part.shape)
    axes = np.array((view.right, view.up, view.toward), dtype=float)
    bench = np.array([part.frame.to_bench(tuple(vertex)) for vertex in solid.vertices.tolist()])
    return trimesh.Trimesh(bench @ axes.T, solid.triangles, process=False)


@dataclass
class Verdict:
    """How many stretches were judged, and each one that was judged wrong."""

    judged: int
    unclear: int
    wrong: list[str]


class RayJudge:
    def __init__(self, parts: Sequence[Part], view: View, seed: int = 0) -> None:
        self.meshes = [mesh_as_seen(part, view) for part in parts]
        self.all = trimesh.util.concatenate(self.meshes)
        self.caster = RayMeshIntersector(self.all)
        self.edges = [_edges_of(mesh) for mesh in self.meshes]
        self.dice = np.random.default_rng(seed)

    def heights(self, points: Floats) -> Floats:
        """Where rays down onto (n, 2) points first meet material, -inf where they miss."""
        origins = np.column_stack((points, np.full(len(points), self.all.bounds[1, 2] + 10.0)))
        downward = np.tile((0.0, 0.0, -1.0), (len(points), 1))
        with np.errstate(divide="ignore", invalid="ignore"):  # a sliver without area is not hit
            hits, ray, _ = self.caster.intersects_location(origins, downward, multiple_hits=True)
        top = np.full(len(points), -np.inf)
        if len(hits):
            np.maximum.at(top, ray, hits[:, 2])
        return top

    def judge(self, linework: Linework) -> Verdict:
        """Sample each segment longer than 0.05 mm once, at a random point of its middle."""
        segments = linework.segments
        a, b = segments[:, :2], segments[:, 2:]
        along = b - a
        length = np.hypot(along[:, 0], along[:, 1])
        at = a + along * self.dice.uniform(0.3, 0.7, (len(a), 1))
        side = np.column_stack((-along[:, 1], along[:, 0])) / length[:, None] * BESIDE
        left, right = self._height_beside(at, side), self._height_beside(at, -side)
        verdict = Verdict(0, 0, [])
        for i in np.flatnonzero(length > 0.05):
            own = self._own_heights(int(linework.owner[i]), at[i])
            place = (
                f"{at[i]} of {segments[i]} owner {linework.owner[i]}: {own} {left[i]} {right[i]}"
            )
            if not len(own):
                verdict.wrong.append(f"no edge of its owner at {place}")
                continue
            verdict.judged += 1
            if linework.visible[i]:
                nearest = min(np.abs(own - left[i]).min(), np.abs(own - right[i]).min())
                if nearest > HEIGHT_ERROR:
                    verdict.wrong.append(f"shown, but covered or floating at {place}")
                continue
            gap = min(left[i], right[i]) - own.max()
            if gap < -HEIGHT_ERROR:
                verdict.wrong.append(f"hidden, but open at {place}")
            elif gap < HEIGHT_ERROR:
                verdict.unclear += 1
        return verdict

    def missing(self, linework: Linework, least_turns_deg: Sequence[float]) -> list[str]:
        """Points of edges, with at least this turn for each part, that no segment covers."""
        lost = []
        a, b = linework.segments[:, :2], linework.segments[:, 2:]
        for mesh, edges, turn in zip(self.meshes, self.edges, least_turns_deg, strict=True):
            chosen = edges[mesh.face_adjacency_angles > np.radians(turn)]
            at = self.dice.uniform(0.0, 1.0, (len(chosen), 1))
            points = (chosen[:, 0] * (1.0 - at) + chosen[:, 1] * at)[:, :2]
            lost.extend(
                f"nothing drawn at {point}"
                for point in points
                if _distances(point, a, b).min(initial=np.inf) > 1e-3
            )
        return lost

    def _height_beside(self, at: Floats, side: Floats) -> Floats:
        """The height just off the line on one side."""
        near, far = self.heights(at + side), self.heights(at + 2.0 * side)
        with np.errstate(invalid="ignore"):
            return np.where(np.isfinite(near) & np.isfinite(far), 2.0 * near - far, near)

    def _own_heights(self, owner: int, point: Floats) -> Floats:
        edges = self.edges[owner]
        a, b = edges[:, 0, :2], edges[:, 1, :2]
        near = np.flatnonzero(_distances(point, a, b) < 2.0 * MERGE)
        ab = b[near] - a[near]
        square = np.maximum(np.einsum("ij,ij->i", ab, ab), 1e-30)
        at = np.einsum("ij,ij->i", point - a[near], ab) / square
        heights = edges[near, 0, 2] * (1.0 - at) + edges[near, 1, 2] * at
        standing = square < 1e-12  # an edge seen end-on says nothing about height
        return heights[~standing]


def _edges_of(mesh: trimesh.Trimesh) -> Floats:
    """Edges between faces that turn at all, (n, 2, 3), in step with face_adjacency_angles."""
    return np.asarray(mesh.vertices[mesh.face_adjacency_edges])


def _distances(point: Floats, a: Floats, b: Floats) -> Floats:
    along = b - a
    square = np.maximum(np.einsum("ij,ij->i", along, along), 1e-30)
    at = np.clip(np.einsum("ij,ij->i", point - a, along) / square, 0.0, 1.0)
    return np.asarray(np.linalg.norm(a + along * at[:, None] - point, axis=1))
