"""Paths of lines and arcs against the geometry of the circle, and shapely as a judge of areas."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from geometry.primitives.path import (
    HALF_TURN_BULGE,
    QUARTER_TURN_BULGE,
    Path,
    arc_centre,
    signed_area,
)


def test_bulge_is_the_tangent_of_a_quarter_of_the_included_angle() -> None:
    """DXF reference, LWPOLYLINE, group 42: 1 is a half circle."""
    assert pytest.approx(math.tan(math.radians(90.0) / 4.0)) == QUARTER_TURN_BULGE
    assert pytest.approx(math.tan(math.radians(180.0) / 4.0)) == HALF_TURN_BULGE


def test_quarter_circle_from_east_to_north() -> None:
    centre, radius = arc_centre((5.0, 0.0), (0.0, 5.0), QUARTER_TURN_BULGE)
    assert (centre, radius) == (pytest.approx((0.0, 0.0)), pytest.approx(5.0))
    # The same ends clockwise: the centre is on the other side of the chord.
    centre, radius = arc_centre((5.0, 0.0), (0.0, 5.0), -QUARTER_TURN_BULGE)
    assert (centre, radius) == (pytest.approx((5.0, 5.0)), pytest.approx(5.0))


@given(
    st.floats(-0.99, 0.99).filter(lambda bulge: abs(bulge) > 0.02),
    st.floats(0.5, 400.0),
    st.floats(0.0, 2.0 * math.pi),
)
def test_flattened_arcs_stray_no_further_than_allowed(
    bulge: float, chord: float, turn: float
) -> None:
    end = (chord * math.cos(turn), chord * math.sin(turn))
    centre, radius = arc_centre((0.0, 0.0), end, bulge)
    assert math.dist(centre, (0.0, 0.0)) == pytest.approx(radius)
    assert math.dist(centre, end) == pytest.approx(radius)
    points = np.array(Path(((0.0, 0.0, bulge), (*end, 0.0)), closed=False).flattened(0.01))
    assert np.hypot(*(points - centre).T) == pytest.approx(radius)
    middles = (points[1:] + points[:-1]) / 2.0
    assert (radius - np.hypot(*(middles - centre).T)).max() <= 0.01 + 1e-9


def test_area_of_a_housing_with_a_round_end() -> None:
    """20 x 100 with both far corners rounded at 6: 2000 - 2 x 36 x (1 - pi / 4) = 1984.55."""
    path = Path(
        (
            (0.0, 0.0, 0.0),
            (20.0, 0.0, 0.0),
            (20.0, 94.0, QUARTER_TURN_BULGE),
            (14.0, 100.0, 0.0),
            (6.0, 100.0, QUARTER_TURN_BULGE),
            (0.0, 94.0, 0.0),
        )
    )
    flat = path.flattened(1e-5)
    assert signed_area(flat) == pytest.approx(1984.55, abs=0.01)
    assert shapely.Polygon(flat).area == pytest.approx(signed_area(flat))


def test_polygons_run_counter_clockwise_whichever_way_they_are_given() -> None:
    corners = ((0.0, 0.0), (0.0, 3.0), (4.0, 3.0), (4.0, 0.0))
    assert signed_area(corners) == -12.0
    for given_corners in (corners, corners[::-1]):
        ring = Path.polygon(given_corners).flattened(0.01)
        assert signed_area(ring) == 12.0
    turned = Path.rectangle(4.0, 3.0, 0.0, 0.0).flattened(0.01)
    assert signed_area(turned) == 12.0
    assert set(turned) == set(corners)
