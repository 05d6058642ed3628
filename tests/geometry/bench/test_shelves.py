"""Openings and shelves: sizes by worked arithmetic, and the finished parts measured.

The bench: 1200 long, boards 20, left end mitred, right end a partition set in 60; partitions of
20 at 400 and 800; case 300 high on a base of 150; depth 360, reveal 12, back 6.
"""

from __future__ import annotations

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import broken_rules, default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.openings import openings
from geometry.design.spec import BenchSpec
from geometry.solids.measure import bounding_box
from shared.errors import CannotBuild, ValueOutOfRange
from tests.flat_faces import all_facing, flat_faces
from tests.judges.meeting import gapes

UP, X, FORWARD = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (0.0, -1.0, 0.0)


@pytest.fixture(scope="module")
def spec() -> BenchSpec:
    places = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
    plain = set_values(default_spec(), places)
    return set_values(
        plain,
        {
            **{f"opening_{k}_fill": "shelf" for k in (1, 2, 3)},
            "opening_2_shelf_height": 75.0,
            "opening_2_shelf_set_back": 25.0,
        },
    )


@pytest.fixture(scope="module")
def bench(spec: BenchSpec) -> Bench:
    return build(spec)


def derived(bench: Bench) -> dict[str, float]:
    return {row.name: row.value for row in bench.derived}


def test_openings_between_ends_and_partitions(spec: BenchSpec) -> None:
    """20..390, 410..790, 810..(1200 - 60 - 20 = 1120); 150 + 20 up to 450 - 20."""
    found = openings(spec)
    assert [(at.x_left, at.x_right) for at in found] == [(20, 390), (410, 790), (810, 1120)]
    assert {(at.z_low, at.z_high) for at in found} == {(170.0, 430.0)}
    assert {(at.front, at.back, at.depth) for at in found} == {(348.0, 6.0, 342.0)}
    assert [at.left for at in found] == ["end_panel_left", "partition_1", "partition_2"]
    assert [at.right for at in found] == ["partition_1", "partition_2", "partition_right"]


def test_sizes_of_shelves(bench: Bench) -> None:
    """Length: opening + 2 x 6; depth: 360 - 12 - set back - 6; above: 260 - height - 18."""
    found = derived(bench)
    assert [found[f"opening_{k}_width"] for k in (1, 2, 3)] == [370.0, 380.0, 310.0]
    assert [found[f"shelf_{k}_length"] for k in (1, 2, 3)] == [382.0, 392.0, 322.0]
    assert [found[f"shelf_{k}_depth"] for k in (1, 2, 3)] == [332.0, 317.0, 332.0]
    assert [found[f"shelf_{k}_above"] for k in (1, 2, 3)] == [132.0, 167.0, 132.0]


def test_a_shelf_stands_where_it_was_put(bench: Bench) -> None:
    """Underside 170 + 75 = 245; from 410 - 6 to 790 + 6; front at 348 - 25, back at 6."""
    low, high = bounding_box(bench.part("shelf_2"))
    assert low == pytest.approx((404.0, -323.0, 245.0))
    assert high == pytest.approx((796.0, -6.0, 263.0))


def test_its_notch_clears_the_round_of_the_router(bench: Bench) -> None:
    """Stop 4 behind the front; the tongue ends 6.35 + 0.1 before that: 10.45 of notch."""
    fronts = all_facing(flat_faces(bench.part("shelf_2")), FORWARD)
    assert sorted(face.offset for face in fronts) == pytest.approx([323.0 - 10.45, 323.0])
    joint = next(j for j in bench.joints if j.name == "housing_partition_1_shelf_2")
    measures = {measure.name: measure.value for measure in joint.measures}
    assert measures["notch_length"] == pytest.approx(10.45)
    assert measures["stop_from_front"] == pytest.approx(348.0 - 319.0)
    # 245 above the floor; the partition begins 7 mm down in the bottom, at 163
    assert measures["from_lower_end"] == pytest.approx(245.0 - 163.0)


def test_housings_on_both_sides_of_a_partition(bench: Bench) -> None:
    """Each 6 deep from its own side, as high as the shelf and its fit; 8 mm stay between."""
    faces = flat_faces(bench.part("partition_2"))
    left_floor = next(f for f in all_facing(faces, (-1.0, 0, 0)) if abs(f.offset + 796.0) < 1e-6)
    right_floor = next(f for f in all_facing(faces, X) if abs(f.offset - 804.0) < 1e-6)
    assert left_floor.extent(UP) == pytest.approx((245.0 - 0.1, 263.0 + 0.1))
    assert right_floor.extent(UP) == pytest.approx((280.0 - 0.1, 298.0 + 0.1))
    assert left_floor.extent(FORWARD)[1] == pytest.approx(319.0)


def test_a_leaning_end_panel_is_marked_from_its_own_front(bench: Bench) -> None:
    """Case 300 high, flare 60: at 280..298 above the floor its front is at 360 + z' / 5, where
    z' = 130, 139, 148 above the case's underside; the housing stops at 338 - 4 = 334."""
    joint = next(j for j in bench.joints if j.name == "housing_end_panel_left_shelf_1")
    measures = {measure.name: measure.value for measure in joint.measures}
    assert measures["stop_from_front_lower"] == pytest.approx(52.0)
    assert measures["stop_from_front"] == pytest.approx(53.8)
    assert measures["stop_from_front_upper"] == pytest.approx(55.6)


def test_shelves_meet_their_housings(bench: Bench) -> None:
    housed = [joint for joint in bench.joints if "shelf" in joint.name]
    assert len(housed) == 6
    assert [wrong for joint in housed for wrong in gapes(bench, joint)] == []


def test_a_shelf_that_no_longer_fits_goes_half_way_up(spec: BenchSpec) -> None:
    """A low case: 120 - 40 = 80 inside; (80 - 18) / 2 = 31."""
    low = set_values(default_spec(), {"case_height": 120.0})
    assert set_values(low, {"opening_1_fill": "shelf"}).number("opening_1_shelf_height") == 31.0
    kept = set_values(spec, {"opening_2_fill": "open"})
    assert set_values(kept, {"opening_2_fill": "shelf"}) == spec


def test_limits_of_a_shelf(spec: BenchSpec) -> None:
    """At most 260 - 18 - 20 = 222 high; a bench that has none of its openings is refused."""
    assert limits(spec, "opening_2_shelf_height").maximum == pytest.approx(222.0)
    with pytest.raises(ValueOutOfRange, match="clear above it"):
        set_values(spec, {"opening_2_shelf_height": 223.0})
    shallow = set_values(default_spec(), {"case_height": 90.0})
    with pytest.raises(CannotBuild, match="a shelf needs"):
        set_values(shallow, {"opening_1_fill": "shelf"})
    # what does not exist binds nothing
    fewer = set_values(spec, {"partition_count": 0.0})
    assert not broken_rules(fewer)
    assert [at.index for at in openings(fewer)] == [1]
