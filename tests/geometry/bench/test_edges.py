"""Chamfers along a front with knees, measured on the top's solid."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
import trimesh

from geometry.bench import edges
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from geometry.design.part import Part
from geometry.solids.cutting import placed, solid_of
from tests.flat_faces import between_deg, flat_faces
from tests.measures import piece_count


def top_of(seed: int) -> Part:
    """The top of a bench with a random flare and chamfer."""
    dice = random.Random(seed)
    straight = dice.uniform(60.0, 300.0)
    spec = set_values(
        default_spec(),
        {
            "length": dice.uniform(1300.0, 2400.0),
            "case_height": dice.uniform(120.0, 500.0),
            "flare": dice.uniform(1.0, 110.0),
            "flare_straight": straight,
            "flare_end": straight + dice.uniform(100.0, 900.0),
            "chamfer": dice.uniform(0.5, 9.0),
            "deep_end": dice.choice(("left", "right")),
            "partition_count": 0.0,
        },
    )
    return build(spec).part("top")


SEEDS = 120


def test_no_skin_is_left_where_chamfers_meet() -> None:
    assert [seed for seed in range(SEEDS) if piece_count(top_of(seed).shape) != 1] == []


def test_cutters_that_only_touch_do_leave_skins(monkeypatch: pytest.MonkeyPatch) -> None:
    """What the test above is there for: without the lap some tops fall into two."""
    monkeypatch.setattr(edges, "LAP", 0.0)
    build.cache_clear()
    shapes = [top_of(seed).shape for seed in range(SEEDS)]
    build.cache_clear()
    assert any(piece_count(shape) != 1 for shape in shapes)


def test_flats_lie_at_45_degrees_to_the_top() -> None:
    """Equal legs on the face and down a square edge: 45 deg, on the run-out and behind it.  On the
    deep stretch the edge leans back by F / H: leg 1 along the face, and 1 down, F / H back."""
    spec = set_values(default_spec(), {"chamfer": 5.0, "flare": 90.0})
    faces = flat_faces(build(spec).part("top"))
    up = (0.0, 0.0, 1.0)
    tilts = sorted(
        between_deg(face.normal, up)
        for face in faces
        if face.area > 100.0 and 10.0 < between_deg(face.normal, up) < 80.0
    )
    leaning = math.degrees(math.atan2(1.0, 1.0 - 90.0 / 300.0))
    assert tilts == pytest.approx([45.0, 45.0, leaning], abs=1e-5)


def test_a_leaning_flat_leaves_the_square_edge_beyond_its_knee_whole() -> None:
    """Below the chamfer the run-out is square: a hair inside its line the wood is there.

    By hand, on the default flare (60 over 460 mm of run-out, straight to 240 mm from the deep left
    end): 4 mm beyond the knee the run-out is 60 - 60 x 4 / 460 = 59.478 mm in front of the depth.
    The top's own x runs from the right end.
    """
    spec = set_values(default_spec(), {"case_height": 90, "chamfer": 10})
    solid = solid_of(build(spec).part("top").shape)
    mesh = trimesh.Trimesh(solid.vertices, solid.triangles, process=False)
    x, edge = 1200.0 - 244.0, 360.0 + 60.0 - 60.0 * 4.0 / 460.0
    inside, outside = (x, edge - 0.05, 6.0), (x, edge + 0.05, 6.0)
    assert mesh.contains([inside, outside]).tolist() == [True, False]


@pytest.mark.parametrize("form", ["round-over", "cove"])
def test_the_step_of_mouldings_at_a_leaning_mitre_is_told(form: str) -> None:
    """On the outside corner's line the top's edge begins 8 behind the front, the end's 8 / cos of
    its lean: measured on the two solids."""
    changes: dict[str, Value] = {
        "edge_form": form,
        "edge_size": 8.0,
        "flare": 90.0,
        "case_height": 240.0,
    }
    bench = build(set_values(default_spec(), changes))
    top = bench.spec.number("base_height") + 240.0
    begins = []
    for name in ("top", "end_panel_left"):
        vertices = placed(bench.part(name)).vertices
        on_line = np.abs(vertices[:, (0, 2)] - (0.0, top)).max(axis=1) < 1e-3
        begins.append(vertices[on_line][:, 1].min())
    step = next(one for one in bench.derived if one.name == "edge_step")
    assert begins[1] - begins[0] == pytest.approx(step.value, abs=1e-3)
    assert step.value == pytest.approx(8.0 * (math.hypot(90.0, 240.0) / 240.0 - 1.0), abs=1e-9)


def test_no_step_is_told_where_the_front_is_upright() -> None:
    bench = build(set_values(default_spec(), {"edge_form": "cove", "flare": 0.0}))
    assert not [one for one in bench.derived if one.name == "edge_step"]
