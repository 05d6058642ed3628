"""What is foremost at points of a view, against rays that another library casts."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh

from exporters.project_file import load
from geometry.bench.build import build
from geometry.solids.cutting import placed
from geometry.views.foremost import NOTHING, Foremost
from geometry.views.pictorial import FROM_LEFT
from geometry.views.view import FRONT, PLAN

SAMPLES = Path(__file__).parents[3] / "sample_projects"
_FAR = 5000.0


@pytest.mark.parametrize("view", [FROM_LEFT, FRONT, PLAN], ids=lambda view: view.name)
@pytest.mark.parametrize("name", ["porch", "weigh_house"])
def test_part_and_height_are_those_that_a_ray_meets_first(name, view):
    parts = build(load(SAMPLES / f"{name}_bench.settle").spec).parts
    solids = [placed(part) for part in parts]
    meshes = [trimesh.Trimesh(s.vertices, s.solid.triangles, process=False) for s in solids]
    owner = np.repeat(np.arange(len(meshes)), [len(mesh.faces) for mesh in meshes])
    whole = trimesh.util.concatenate(meshes)
    flat = whole.vertices @ np.array((view.right, view.up)).T
    points = np.random.default_rng(7).uniform(flat.min(axis=0), flat.max(axis=0), (120, 2))
    axes = np.array((view.right, view.up, view.toward))
    starts = np.column_stack([points, np.full(len(points), _FAR)]) @ axes
    ways = np.tile(-axes[2], (len(points), 1))
    places, rays, faces = whole.ray.intersects_location(starts, ways, multiple_hits=False)
    expected = {
        int(ray): (place, face) for place, ray, face in zip(places, rays, faces, strict=True)
    }
    found, heights = Foremost(parts, view).at(points)
    agreed = 0
    for k in range(len(points)):
        if k not in expected:
            assert found[k] == NOTHING
            assert heights[k] == -np.inf
            continue
        place, face = expected[k]
        assert heights[k] == pytest.approx(float(place @ axes[2]), abs=0.01)
        agreed += found[k] == owner[face]
    assert agreed >= len(expected) - 2, "but for a ray that meets two parts in one plane"


def test_one_at_a_time_is_as_all_together():
    parts = build(load(SAMPLES / "porch_bench.settle").spec).parts
    foremost = Foremost(parts, FROM_LEFT)
    points = np.random.default_rng(3).uniform(-400.0, 800.0, (60, 2))
    together, heights = foremost.at(points)
    for k, point in enumerate(points):
        one, height = foremost.at(point[None, :])
        assert one[0] == together[k]
        assert height[0] == heights[k]
