"""Benches at the corners of what can be built, looked for by hypothesis and named by hand.

Zero fits, depths that fall in one plane, cutters as wide as their housings: faces that coincide
are where a solid kernel goes wrong first.
"""

from __future__ import annotations

from itertools import combinations

import pytest
import trimesh
from hypothesis import given, settings

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed, solid_of
from geometry.solids.measure import shared_volume
from shared.tolerances import SHARED_VOLUME
from tests.strategies import specs

NAMED: dict[str, dict[str, Value]] = {
    "no fit anywhere": {"housing_fit": 0, "back_fit": 0, "bridle_fit": 0, "lap_fit": 0},
    "rebate as deep as the housing": {"rebate_depth": 7, "housing_depth": 7},
    "rebate deeper than the housing": {"rebate_depth": 12, "housing_depth": 4},
    "cutter as wide as the housing": {"cutter_diameter": 20.2},
    "cutter wider than the housing": {"cutter_diameter": 30},
    "housing out to the front": {"housing_cover": 0, "reveal": 0, "chamfer": 0},
    "housing out to a chamfered front": {"housing_cover": 0, "reveal": 0, "chamfer": 2},
    "partition on the knee": {"partition_1": 240},
    "partition where the run-out ends": {"partition_1": 700},
    "run-out to the very end": {"flare_end": 1200},
    "run-out almost to the end": {"flare_end": 1199.9999995},
    "run-out a hair before the end": {"flare_end": 1199.99},
    "deep at the open end": {"deep_end": "right", "flare_end": 900},
    "deep at both ends": {"deep_end": "both", "right_end": "mitred"},
    "deep at both ends alike": {"deep_end": "both", "flare_right": 60, "right_end": "mitred"},
    "deep at both ends all but alike": {"deep_end": "both", "flare_right": 60 - 1e-5},
    "run-outs that meet": {"deep_end": "both", "flare_end_right": 500},
    "run-outs that all but meet": {"deep_end": "both", "flare_end_right": 499.9999995},
    "both ends, nothing at the left": {"deep_end": "both", "flare": 0, "right_end": "mitred"},
    "both ends, hardly anything at the right": {"deep_end": "both", "flare_right": 1e-7},
    "front leaning 45": {"flare": 200, "case_height": 200, "flare_end": 700},
    "hardly a flare": {"flare": 1e-7},
    "no flare to speak of": {"flare": 5e-300},
    "hardly a chamfer": {"chamfer": 0.01},
    "no chamfer to speak of": {"chamfer": 1e-4},
    "widest chamfer": {"chamfer": 10},
    "widest chamfer on a strong lean": {"chamfer": 10, "case_height": 90},
    "upright legs": {"splay": 0},
    "hardly any splay": {"splay": 1e-4},
    "no taper": {"leg_foot_width": 76.2},
    "hardly any taper": {"leg_foot_width": 76.199},
    "taper from the joint on": {"taper_start": 0},
    "back let in": {"back_let_in": 15},
    "hardly any rest rake": {"back_rest": "slats", "rest_rake": 1e-7},
    "no rest rake to speak of": {"back_rest": "rails", "rest_rake": 1e-300},
    "upright rest": {"back_rest": "slats", "rest_rake": 0, "rest_fit": 0},
    "strongest rest rake": {"back_rest": "rails", "rest_rake": 25, "rest_height": 900},
    "hardly any post splay": {
        "back_rest": "rails",
        "post_fixing": "tenoned into the seat",
        "post_splay": 1e-7,
        "rest_fit": 0,
    },
    "posts hardly let in": {
        "back_rest": "rails",
        "back_let_in": 10,
        "post_in_right": 100,
        "post_let_in": 1e-6,
    },
    "thin boards": {"board_thickness": 10.0, "housing_depth": 7, "rebate_depth": 7, "chamfer": 5},
}


def sound(bench: Bench) -> None:
    for part in bench.parts:
        solid = solid_of(part.shape)
        mesh = trimesh.Trimesh(solid.vertices, solid.triangles, process=False)
        assert mesh.is_watertight, part.name
        assert mesh.is_winding_consistent, part.name
        assert mesh.body_count == 1, part.name
        assert placed(part).solid is solid
    for a, b in combinations(bench.parts, 2):
        assert shared_volume(a, b) <= SHARED_VOLUME, (a.name, b.name)


@pytest.mark.parametrize("name", NAMED)
def test_named_corner(name: str) -> None:
    sound(build(set_values(default_spec(), NAMED[name])))


@settings(max_examples=40)
@given(specs())
def test_any_corner(spec: BenchSpec) -> None:
    sound(build(spec))


@pytest.mark.sweep
@settings(max_examples=1000)
@given(specs(most_changes=30))
def test_any_corner_at_length(spec: BenchSpec) -> None:
    sound(build(spec))
