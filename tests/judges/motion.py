"""Brute force: pieces moved step by step, and whether any point of one comes to lie in another.

The meshes are another library's (trimesh), and so is the question whether a point lies inside one
(rays, counted; what they find is measured again by the distance to the nearest face).  Points lie
over the faces, a little inside, so that pieces that touch or slide do not count.  mm.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

import numpy as np
import trimesh

from geometry.checks.assembly import Step
from geometry.design.part import Part
from geometry.primitives.frame import Vec3
from geometry.solids.cutting import placed

POINTS = 1000  # over each piece
INSIDE = 0.3  # how far the points lie under the face
DEEP = 0.1  # a point this far inside another piece is in it
NEAR, FINE, COARSE = 60.0, 2.0, 15.0  # steps of 2 mm for the first 60, where joints are; then of 15
_AT_ONCE = 200_000  # points asked about in one call


@lru_cache(maxsize=256)
def mesh_of(part: Part) -> trimesh.Trimesh:
    solid = placed(part)
    return trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)


@lru_cache(maxsize=256)
def points_of(part: Part) -> np.ndarray:
    """Points over a piece, a little under its faces."""
    mesh = mesh_of(part)
    points, faces = trimesh.sample.sample_surface_even(mesh, POINTS, seed=1)
    inner = points - INSIDE * mesh.face_normals[faces]
    found: np.ndarray = inner[mesh.contains(inner)]  # not those that come out at a sharp arris
    return found


def run_into(movers: Sequence[Part], standing: Sequence[Part], move: Vec3) -> str:
    """What is run into when ``movers`` go along ``move`` as far as they can; empty when nothing.

    Looked at both ways: the points of the movers in what stands, and the other way round.
    """
    way = np.array(move) / np.linalg.norm(move)
    return _enter(movers, standing, way) or _enter(standing, movers, -way)


def _enter(movers: Sequence[Part], standing: Sequence[Part], way: np.ndarray) -> str:
    points = np.concatenate([points_of(part) for part in movers])
    for part in standing:
        other = mesh_of(part)
        for there in _met(points, other.bounds, way):
            inside = there[other.contains(there)]
            if len(inside) and (other.nearest.signed_distance(inside) > DEEP).any():
                return part.name
    return ""


def _met(points: np.ndarray, bounds: np.ndarray, way: np.ndarray) -> Iterator[np.ndarray]:
    """Where points come to lie in a box on their way, some at a time."""
    low, high = bounds
    with np.errstate(divide="ignore", invalid="ignore"):
        first, second = (low - points) / way, (high - points) / way
    along = np.abs(way) > 1e-9
    beside = ((points <= low) | (points >= high))[:, ~along].any(axis=1)
    start = np.minimum(first, second)[:, along].max(axis=1)
    end = np.maximum(first, second)[:, along].min(axis=1)
    mine = ~beside & (end > np.maximum(start, 0.0))
    points, start, end = points[mine], start[mine], end[mine]
    if not len(points):
        return
    fine = np.arange(1.0, NEAR, FINE)
    coarse = np.arange(NEAR, max(float(end.max()), NEAR) + COARSE, COARSE)
    some: list[np.ndarray] = []
    for far in (*fine, *coarse):
        now = points[(start < far) & (far < end)]
        if len(now):
            some.append(now + far * way)
        if sum(map(len, some)) > _AT_ONCE:
            yield np.concatenate(some)
            some = []
    if some:
        yield np.concatenate(some)


def collisions(parts: Iterable[Part], steps: Sequence[Step]) -> list[str]:
    """What runs into what, taking apart by these steps backward; a step that cannot be so too.

    Every group that comes in a step is moved away from what stands, and from all that come with it.
    """
    by_name = {part.name: part for part in parts}
    groups = [set(by_name)]
    found: list[str] = []
    for step in reversed(steps):
        whole = {name for group in step.groups for name in group}
        if whole not in groups:
            found.append(f"no such group: {sorted(whole)}")
            return found
        groups.remove(whole)
        groups += [set(group) for group in step.groups]
        moves = [(step.onto, np.zeros(3)), *((one.parts, -np.array(one.way)) for one in step.moves)]
        for k, (standing, still) in enumerate(moves):
            for coming, away in moves[k + 1 :]:
                into = run_into(
                    [by_name[name] for name in coming],
                    [by_name[name] for name in standing],
                    away - still,
                )
                if into:
                    found.append(f"{', '.join(coming)} into {into}")
    if any(len(group) > 1 for group in groups):
        found.append(f"left together: {[sorted(group) for group in groups if len(group) > 1]}")
    return found
