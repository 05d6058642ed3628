"""Loose tenons by hand: volumes of slip and mortise, and where one lies in a mitred corner."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.glue_ups import glue_ups
from geometry.bench.limits import limits, set_values
from geometry.solids.measure import bounding_box, volume_of
from shared.tolerances import CHORD_ERROR

SPEC = set_values(default_spec(), {"mitre_hold": "loose tenons", "flare": 0.0, "chamfer": 0.0})


def test_volume_of_a_slip() -> None:
    """17 long: a rectangle of 26 x 4 and a circle of 4 mm, its arcs flattened inward."""
    slip = build(SPEC).part("loose_tenon_top_left_1")
    whole = 17.0 * (26.0 * 4.0 + math.pi * 4.0)
    chords = 17.0 * 2.0 * math.pi * 2.0 * CHORD_ERROR
    assert whole - chords < volume_of(slip.shape) < whole


def test_volume_that_mortises_take() -> None:
    """Three of 26 x 4.2 and a circle of 4.2 mm, 9 deep, off the same end panel without them."""
    with_tenons = volume_of(build(SPEC).part("end_panel_left").shape)
    without = volume_of(
        build(set_values(SPEC, {"mitre_hold": "glue alone"})).part("end_panel_left").shape
    )
    whole = 6.0 * 9.0 * (26.0 * 4.2 + math.pi * 2.1**2)
    chords = 6.0 * 9.0 * 2.0 * math.pi * 2.1 * CHORD_ERROR
    assert whole - chords < without - with_tenons < whole


def test_place_of_a_slip_in_its_corner() -> None:
    """12 mm along the 45° mitre from the inside corner (20, 430): its middle at 20 - 12/√2.
    Half its length of 17 and half its thickness of 4 both count by 1/√2 each way."""
    low, high = bounding_box(build(SPEC).part("loose_tenon_top_left_1"))
    middle_x, middle_z = 20.0 - 12.0 / math.sqrt(2.0), 430.0 + 12.0 / math.sqrt(2.0)
    reach = (8.5 + 2.0) / math.sqrt(2.0)
    assert low[0] == pytest.approx(middle_x - reach, abs=1e-6)
    assert high[0] == pytest.approx(middle_x + reach, abs=1e-6)
    assert low[2] == pytest.approx(middle_z - reach, abs=1e-6)
    assert high[2] == pytest.approx(middle_z + reach, abs=1e-6)
    assert (low[1], high[1]) == (pytest.approx(-85.0), pytest.approx(-55.0))


def test_limits_of_a_mitres_mortise() -> None:
    """20 - (12 + 2.1 + d) / √2 >= 1 gives d <= 19√2 - 14.1 = 12.77, but 12 - 2.1 = 9.9 first."""
    assert limits(SPEC, "mitre_tenon_board").maximum == pytest.approx(9.9)
    far = set_values(SPEC, {"mitre_tenon_in": 15.0})
    assert limits(far, "mitre_tenon_board").maximum == pytest.approx(
        19.0 * math.sqrt(2.0) - 17.1, abs=1e-6
    )


def test_a_glue_up_by_hand() -> None:
    """A bottom 1200 x 360 from boards up to 130: three of 120.  Tenons 80 from the ends and at most
    200 apart: 1040 / 200 gives 6 steps of 173.33, seven tenons in each of two lines."""
    spec = set_values(
        SPEC, {"glue_up_width": 130.0, "glue_up_hold": "loose tenons", "housing_depth": 4.0}
    )
    bottom = next(one for one in glue_ups(build(spec)) if one.panel == "bottom")
    assert [board.shape.blank.width for board in bottom.boards] == pytest.approx([120.0] * 3)
    assert len(bottom.tenons) == 14
    middles = sorted(
        {round(sum(end[0] for end in bounding_box(slip)) / 2.0, 3) for slip in bottom.tenons}
    )
    assert middles == pytest.approx([80.0 + k * 1040.0 / 6.0 for k in range(7)], abs=1e-3)
