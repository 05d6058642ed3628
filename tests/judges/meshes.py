"""Finished pieces as meshes of an independent library (trimesh), in the bench's frame, mm."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import trimesh
from numpy.typing import NDArray

from geometry.bench.bench import Bench
from geometry.solids.cutting import placed

Floats = NDArray[np.float64]


def mesh_of(bench: Bench, name: str) -> trimesh.Trimesh:
    """One piece as it stands in the bench."""
    solid = placed(bench.part(name))
    return trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)


def wood_in_both(first: trimesh.Trimesh, second: trimesh.Trimesh, points: int = 20_000) -> bool:
    """Whether random points of the room that their boxes share lie in the wood of both."""
    low = np.maximum(first.bounds[0], second.bounds[0])
    high = np.minimum(first.bounds[1], second.bounds[1])
    if (low >= high).any():
        return False
    at = np.random.default_rng(1).uniform(low, high, (points, 3))
    return bool((first.contains(at) & second.contains(at)).any())


def free_way(
    meshes: Iterable[trimesh.Trimesh], start: Iterable[float], way: Iterable[float]
) -> float:
    """How far a point can go along a unit direction before it meets any of the meshes; inf."""
    nearest = np.inf
    for mesh in meshes:
        hits, _, _ = mesh.ray.intersects_location([list(start)], [list(way)])
        if len(hits):
            nearest = min(nearest, float(((hits - list(start)) @ np.array(list(way))).min()))
    return nearest


def wood_along(
    mesh: trimesh.Trimesh, starts: Floats, way: Iterable[float], reach: float, step: float
) -> Floats:
    """For each start, how much of the way over ``reach`` lies in wood, to about ``step``."""
    count = int(np.ceil(reach / step))
    offsets = (np.arange(count) + 0.5) * reach / count
    at = starts[:, None, :] + offsets[None, :, None] * np.array(list(way))
    inside = mesh.contains(at.reshape(-1, 3)).reshape(len(starts), count)
    return np.asarray(inside.sum(axis=1) * reach / count)
