"""Edges of rails by hand: what they take off, where they end, and what they must leave."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Value
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.primitives.frame import Vec3
from geometry.solids.measure import volume_of
from shared.errors import MakerError

SIZE = 3.0
TRIANGLE = SIZE * SIZE / 2.0
# A stopped end runs out at 45 degrees within its length: by two thirds of the cube of the depth of
# the flat less than if it were sawn square.
RUN_OUT = 2.0 / 3.0 * (SIZE / math.sqrt(2.0)) ** 3
CHAMFERED: dict[str, Value] = {"rail_edge": "chamfer", "rail_edge_size": SIZE}
REST: dict[str, Value] = {"rest_edge": "chamfer", "rest_edge_size": SIZE}


def base(name: str, **changes: Value) -> BenchSpec:
    return set_values(set_values(default_spec(), {"base": name}), changes)


def taken(spec: BenchSpec, changes: dict[str, Value], part: str) -> float:
    before, after = (build(one).part(part) for one in (spec, set_values(spec, changes)))
    return volume_of(before.shape) - volume_of(after.shape)


def mouldings(spec: BenchSpec, part: str) -> list[EdgeMoulding]:
    return [c for c in build(spec).part(part).shape.cuts if isinstance(c, EdgeMoulding)]


def test_the_rail_of_trestles_through_and_stopped() -> None:
    """Insets of 70 and stretchers of 40 leave 980 of 1200 between the shoulders; two arrises."""
    spec = base("trestles")
    through: dict[str, Value] = {**CHAMFERED, "rail_edge_stop": 0.0}
    assert taken(spec, through, "rail") == pytest.approx(2.0 * TRIANGLE * 980.0, rel=1e-6)
    stopped: dict[str, Value] = {**CHAMFERED, "rail_edge_stop": 20.0}
    two = 2.0 * (TRIANGLE * 940.0 - 2.0 * RUN_OUT)
    assert taken(spec, stopped, "rail") == pytest.approx(two, rel=1e-6)
    stopped["rail_edge_where"] = "all that lie free"
    assert taken(spec, stopped, "rail") == pytest.approx(2.0 * two, rel=1e-6)


def test_the_lower_arrises_are_those_nearest_the_floor() -> None:
    for name, rails in (
        ("trestles", {"rail", "stretcher_left", "stretcher_right"}),
        ("crossed stretchers", {"stretcher_back_left", "stretcher_front_left"}),
        ("four legs", {"apron_front", "apron_back", "apron_left", "apron_right"}),
        ("panel feet", {"rail"}),
    ):
        bench = build(set_values(base(name), CHAMFERED))
        eased = {p for p in bench.parts if any(isinstance(c, EdgeMoulding) for c in p.shape.cuts)}
        assert {part.name for part in eased} == rails
        for part in eased:
            blank = part.shape.blank
            heights = [
                part.frame.to_bench((0.0, y, z))[2]
                for y in (0.0, blank.width)
                for z in (0.0, blank.thickness)
            ]
            found = {
                round(part.frame.to_bench((0.0, *c.start[1:]))[2], 6)
                for c in part.shape.cuts
                if isinstance(c, EdgeMoulding)
            }
            assert found == {round(height, 6) for height in sorted(heights)[:2]}


def test_a_stretcher_between_leaning_legs() -> None:
    """Between tips 240 apart, less both legs, the lower edge is longer by what the legs lean over
    the height of 60; the triangle's centroid lies 1 above that edge."""
    spec, lean = base("trestles"), math.tan(math.radians(15.0))
    along = 240.0 - 2.0 * 76.2 / math.cos(math.radians(15.0)) + 2.0 * 59.0 * lean
    through: dict[str, Value] = {**CHAMFERED, "rail_edge_stop": 0.0}
    off = taken(spec, through, "stretcher_left")
    assert off == pytest.approx(2.0 * TRIANGLE * along, rel=1e-6)


def test_crossed_stretchers_stop_as_far_before_their_lap() -> None:
    """Half a thickness and half the fit from the middle of the other one lies the notch; the
    profile's nearest corner stands 20 before it, along its own stretcher."""
    spec = set_values(base("crossed stretchers"), {**CHAMFERED, "rail_edge_stop": 20.0})
    bench = build(spec)
    one, other = (bench.part(f"stretcher_{name}_left") for name in ("back", "front"))
    way, across = (np.array(part.frame.x_axis) for part in (one, other))
    sine = abs(float(np.cross(way, across)[2]))
    side = np.array((-across[1], across[0], 0.0))
    middle = np.array(other.frame.to_bench((0.0, 0.0, 20.0)))
    runs = mouldings(spec, one.name)
    assert len(runs) == 4
    for cut in runs:
        points = [
            np.array(one.frame.to_bench((x, cut.start[1], z)))
            for x in (cut.start[0], cut.end[0])
            for z in (cut.start[2], cut.start[2] + math.copysign(SIZE, 20.0 - cut.start[2]))
        ]
        nearest = min(abs(float((point - middle) @ side)) for point in points)
        assert nearest == pytest.approx(20.1 + 20.0 * sine, abs=1e-6)


@pytest.mark.parametrize("side", ["front", "right"])
def test_aprons_run_through_to_the_faces_of_raking_legs(side: str) -> None:
    """Both ends lie in planes, so that a prism's length is that on its centroid, one third of the
    size in from both faces of each lower arris."""
    spec = base("four legs", splay=9.0, rake=12.0)
    bench = build(spec)
    apron = bench.part(f"apron_{side}")
    legs = [part for part in bench.parts if part.kind == "leg" and side in part.name]
    blank, third = apron.shape.blank, SIZE / 3.0
    by_hand = sum(
        TRIANGLE * clear(apron, (0.0, blank.width - third, z), legs)
        for z in (third, blank.thickness - third)
    )
    through: dict[str, Value] = {**CHAMFERED, "rail_edge_stop": 0.0}
    assert taken(spec, through, apron.name) == pytest.approx(by_hand, rel=1e-6)


def clear(part: Part, start: Vec3, legs: list[Part]) -> float:
    """How much of a line along the part lies between the facing sides of two square legs."""
    origin, way = np.array(part.frame.to_bench(start)), np.array(part.frame.x_axis)
    spans = []
    for leg in legs:
        blank, cuts = leg.shape.blank, []
        corner = np.array(leg.frame.origin)
        for axis, size in ((leg.frame.y_axis, blank.width), (leg.frame.z_axis, blank.thickness)):
            square = float(way @ np.array(axis))
            if abs(square) > 0.5:
                cuts += [
                    (float((corner - origin) @ np.array(axis)) + x) / square for x in (0, size)
                ]
        spans.append(sorted(cuts))
    first, last = sorted(spans)
    return last[0] - first[1]


def test_upper_arrises_stay_sharp_where_something_lies_on_them() -> None:
    everywhere: dict[str, Value] = {**CHAMFERED, "rail_edge_where": "all that lie free"}
    panel = set_values(default_spec(), {"seat": "panel bench", "base_height": 400.0})
    for down, count in ((0.0, 2), (25.0, 4)):
        spec = set_values(panel, {"seat_rail_down": down, **everywhere})
        assert len(mouldings(spec, "rail")) == count
    assert (
        len(
            mouldings(
                set_values(
                    base("panel feet", panel_rail_down=0.0, panel_shoulder=15.0), everywhere
                ),
                "rail",
            )
        )
        == 2
    )
    assert len(mouldings(set_values(base("four legs"), everywhere), "apron_front")) == 2


def test_what_must_stop_and_what_may_run_through() -> None:
    crossed = set_values(base("crossed stretchers"), CHAMFERED)
    assert limits(crossed, "rail_edge_stop").minimum == 3.0
    with pytest.raises(MakerError, match="lap"):
        set_values(crossed, {"rail_edge_stop": 0.0})
    passed = set_values(base("panel feet", panel_count=3.0), CHAMFERED)
    assert limits(passed, "rail_edge_stop").minimum == 3.0
    assert len(mouldings(passed, "rail")) == 4
    panel = set_values(default_spec(), {"seat": "panel bench", "base_height": 400.0, **CHAMFERED})
    for joint, least in (("housed", 3.0), ("stub tenon", 0.0)):
        spec = set_values(panel, {"seat_rail_joint": joint})
        assert limits(spec, "rail_edge_stop").minimum == least


def test_a_shoulder_closes_round_its_mortise() -> None:
    """The rail of 32 has tenons of 20, and a fit of 0.2: 5.9 of cheek, 1.5 of edge; 2 must stay."""
    spec = base("trestles", depth=500.0, rail_shoulder=1.5)
    spec = set_values(spec, {**CHAMFERED, "rail_edge_stop": 0.0})
    assert limits(spec, "rail_edge_size").maximum == pytest.approx(3.9)
    assert "shoulder" in limits(spec, "rail_edge_size").why_maximum
    stopped = set_values(spec, {"rail_edge_stop": 3.0})
    assert limits(stopped, "rail_edge_size").maximum == pytest.approx(32.0 / 3.0)


def test_stretchers_keep_the_rails_shoulders_on_wood() -> None:
    """Of 60 high with a rail of 50 in their middle, 5 lie below it."""
    spec = set_values(base("trestles", rail_height=50.0), CHAMFERED)
    assert limits(spec, "rail_edge_size").maximum == pytest.approx(5.0)
    assert "under the rail" in limits(spec, "rail_edge_size").why_maximum


def test_aprons_keep_the_corner_blocks_on_wood() -> None:
    """Upright legs: 60 of apron less 56 of block."""
    spec = base("four legs", splay=0.0, rake=0.0, corner_blocks="at 45°")
    spec = set_values(set_values(spec, {"corner_block_height": 56.0}), CHAMFERED)
    assert limits(spec, "rail_edge_size").maximum == pytest.approx(4.0)


def test_rails_of_a_rest_toward_the_sitter_and_all_round() -> None:
    """Of 1500 two posts of 45 stand 90 in: 1230 between them."""
    spec = set_values(default_spec(), {"length": 1500.0, "back_rest": "rails"})
    through: dict[str, Value] = {**REST, "rest_edge_stop": 0.0}
    two = 2.0 * TRIANGLE * 1230.0
    assert taken(spec, through, "top_rail") == pytest.approx(two, rel=1e-6)
    through["rest_edge_where"] = "all"
    assert taken(spec, through, "rest_rail_2") == pytest.approx(2.0 * two, rel=1e-6)


def test_slats_run_through_only_where_their_own_shoulders_close() -> None:
    """Rails of 22 carry slats of 12 in mortises 0.2 wider: 4.9 before them, less 1; slats have
    shoulders of 3, of which 2 must stay."""
    spec = set_values(default_spec(), {"length": 1500.0, "back_rest": "slats"})
    spec = set_values(spec, {"rest_edge": "cove"})
    assert spec.number("slat_shoulder") == 3.0
    assert limits(spec, "rest_edge_size").maximum == pytest.approx(3.9)
    through = set_values(set_values(spec, {"rest_edge_size": 1.0}), {"rest_edge_stop": 0.0})
    assert limits(through, "rest_edge_size").maximum == pytest.approx(1.0)
    (first, second) = mouldings(through, "slat_1")
    assert {first.start[2], second.start[2]} == {0.0}
    assert first.length == pytest.approx(build(through).part("slat_1").shape.blank.length - 24.0)
