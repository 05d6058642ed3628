"""Sizes of common practice, no source: splay 15 deg, legs from 3 in to 1 in, a 1/2 in cutter,
1/4 in rebates and backs, tenons a third of the thickness.  The inch is 25.4 mm."""

from __future__ import annotations

import pytest

from geometry.bench.catalogue import default_spec
from tests.flat_faces import all_facing, facing, flat_faces
from tests.reference.benches import bench_with

INCH = 25.4


def test_defaults_are_those_of_common_practice() -> None:
    spec = default_spec()
    assert spec.number("splay") == 15.0
    assert spec.number("leg_top_width") == pytest.approx(3.0 * INCH)
    assert spec.number("leg_foot_width") == pytest.approx(INCH)
    assert spec.number("cutter_diameter") == pytest.approx(INCH / 2.0)
    assert spec.word("tenon_rule") == "third"


def test_quarter_inch_back_in_quarter_inch_rebates() -> None:
    """1200 long with a 20 panel and a 20 partition 60 in: 1100 inside, and 2 x 6.35, less the fit
    of 1: 1111.7; 260 + 12.7 - 1 = 271.7.  The rebate is 6.35 wide and as deep."""
    bench = bench_with({"rebate_depth": INCH / 4, "back_thickness": INCH / 4})
    faces = flat_faces(bench.part("back"))
    long = facing(faces, (1.0, 0.0, 0.0)).offset + facing(faces, (-1.0, 0.0, 0.0)).offset
    high = facing(faces, (0.0, 0.0, 1.0)).offset + facing(faces, (0.0, 0.0, -1.0)).offset
    assert (long, high) == pytest.approx((1111.7, 271.7))
    walls = [f.offset for f in all_facing(flat_faces(bench.part("bottom")), (0.0, 1.0, 0.0))]
    assert any(offset == pytest.approx(-6.35) for offset in walls)
    floors = [f.offset for f in all_facing(flat_faces(bench.part("bottom")), (0.0, 0.0, 1.0))]
    assert any(offset == pytest.approx(170.0 - 6.35) for offset in floors)


def test_half_inch_cutter_rounds_the_stop_over_a_quarter_inch() -> None:
    """The straight wall of a housing ends 6.35 before its stop."""
    bottom = flat_faces(bench_with({}).part("bottom"))
    wall = all_facing(bottom, (1.0, 0.0, 0.0))
    housing = next(face for face in wall if abs(face.offset - 589.9) < 1e-6)
    assert housing.extent((0.0, -1.0, 0.0))[1] == pytest.approx(344.0 - 6.35)


def test_legs_run_from_three_inches_to_one() -> None:
    """Level, at 15 deg: 3 in / cos 15 = 3.1058 in at the top, 1 in / cos 15 = 1.0353 in below."""
    faces = flat_faces(bench_with({}).part("leg_back_left"))
    along = (-0.975313, 0.220826, 0.0)  # from (1130, -300) to (70, -60)
    for direction, inches in (((0.0, 0.0, 1.0), 3.1058), ((0.0, 0.0, -1.0), 1.0353)):
        low, high = facing(faces, direction).extent(along)
        assert (high - low) / INCH == pytest.approx(inches, abs=1e-4)
