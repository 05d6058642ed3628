"""Screws and cutters: against formulas and by hand."""

from __future__ import annotations

from itertools import pairwise

import pytest

from shared.cutters import STRAIGHT_CUTTERS, widest_cutter_for
from shared.fixings import WOOD_SCREWS


@pytest.mark.parametrize("name", WOOD_SCREWS)
def test_a_screw_gauge_is_a_shank_diameter(name: str) -> None:
    # ASME B18.6.1 from memory: 0.060 + 0.013 n inches; the chart's figures agree
    screw = WOOD_SCREWS[name]
    assert name == f"no. {screw.gauge}"
    assert screw.shank == pytest.approx((0.060 + 0.013 * screw.gauge) * 25.4)
    assert screw.root < screw.shank


def test_a_number_eight_by_hand() -> None:
    # albanycountyfasteners.com, wood screw specifications: 0.164 in (4.17 mm), root 0.131 in
    assert WOOD_SCREWS["no. 8"].shank == pytest.approx(4.17, abs=0.005)
    assert WOOD_SCREWS["no. 8"].root == pytest.approx(3.33, abs=0.005)
    # ASME B18.6.1, flat heads, from memory: 0.292 to 0.332 in across
    assert 0.292 * 25.4 < WOOD_SCREWS["no. 8"].head < 0.332 * 25.4


def test_cutters_are_in_order_of_width() -> None:
    assert all(a.diameter < b.diameter for a, b in pairwise(STRAIGHT_CUTTERS))
    assert all(cutter.reach > cutter.diameter for cutter in STRAIGHT_CUTTERS)


@pytest.mark.parametrize(
    ("width", "called"),
    [(12.7, "1/2 in"), (12.6, "12 mm"), (19.0, "18 mm"), (19.05, "3/4 in"), (100.0, "20 mm")],
)
def test_the_widest_cutter_for_a_housing_by_hand(width: float, called: str) -> None:
    cutter = widest_cutter_for(width)
    assert cutter is not None
    assert cutter.called == called
    assert cutter.diameter <= width


def test_no_cutter_goes_into_a_hair() -> None:
    assert widest_cutter_for(2.0) is None
