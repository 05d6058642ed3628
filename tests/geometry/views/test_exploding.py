"""Taken apart, no part covers another; shapely is the judge."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import numpy as np
import pytest
import shapely

from exporters.project_file import load
from geometry.bench.build import build
from geometry.primitives.frame import norm
from geometry.solids.cutting import placed
from geometry.views.exploding import exploded
from geometry.views.parting import moved
from geometry.views.pictorial import FROM_LEFT, FROM_RIGHT
from geometry.views.view import FRONT
from tests.random_assemblies import box
from tests.random_benches import random_spec

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
AIR = 40.0


def covered(parts, view):
    """Each part's region in a view: the union of its triangles."""
    flat = np.array((view.right, view.up)).T
    found = []
    for part in parts:
        solid = placed(part)
        triangles = (solid.vertices @ flat)[solid.solid.triangles]
        turned = shapely.polygons(triangles)
        found.append(shapely.union_all(turned[shapely.area(turned) > 1e-9], grid_size=1e-6))
    return found


def assert_apart(parts, view):
    for one, other in combinations(covered(parts, view), 2):
        assert shapely.distance(one, other) > 0.99 * AIR


def taken_apart(bench, view):
    found = exploded(bench.parts, bench.joints, view, AIR)
    return [moved(p, by) for p, by in zip(bench.parts, found.offsets, strict=True)], found


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_no_part_of_a_sample_covers_another(sample):
    """Every other sample from the left."""
    view = (FROM_RIGHT, FROM_LEFT)[SAMPLES.index(sample) % 2]
    parts, _ = taken_apart(build(load(sample).spec), view)
    assert_apart(parts, view)


@pytest.mark.parametrize("seed", range(4))
def test_no_part_of_an_odd_bench_covers_another(seed):
    bench = build(random_spec(seed))
    for view in (FROM_RIGHT, FRONT):
        parts, _ = taken_apart(bench, view)
        assert_apart(parts, view)


def test_one_part_stays_where_it_is():
    bench = build(load(SAMPLES[0]).spec)
    found = exploded(bench.parts, bench.joints, FROM_RIGHT, AIR)
    assert [norm(by) for by in found.offsets].count(0.0) == 1


def test_loose_boxes_move_only_as_far_as_they_must():
    """Two boxes one behind the other in the front view: the second moves level or upright by its
    own size and the air, whichever is shorter."""
    near = box("near", (0.0, -200.0, 0.0), (300.0, -100.0, 100.0))
    far = box("far", (0.0, 0.0, 0.0), (300.0, 100.0, 80.0))
    found = exploded((near, far), (), FRONT, AIR)
    assert found.offsets[0] == (0.0, 0.0, 0.0)  # the larger one
    assert sorted(abs(c) for c in found.offsets[1]) == pytest.approx([0.0, 0.0, 80.0 + AIR])
    assert found.ties == ()
