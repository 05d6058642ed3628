"""Isometric views by hand (ISO 5456-3, from memory)."""

from __future__ import annotations

import math

import pytest

from geometry.primitives.frame import BENCH_FRAME, cross, norm
from geometry.views.pictorial import CORNERS, FROM_LEFT, FROM_RIGHT

FORESHORTENING = math.cos(math.asin(math.tan(math.radians(30))))
"""Of an axis that leans asin(tan 30°) = 35.264° from the drawing plane."""


@pytest.mark.parametrize("view", CORNERS, ids=lambda view: view.name)
def test_every_axis_is_foreshortened_alike(view):
    for axis in (BENCH_FRAME.x_axis, BENCH_FRAME.y_axis, BENCH_FRAME.z_axis):
        assert math.hypot(*view.project(axis)) == pytest.approx(FORESHORTENING)
    assert cross(view.right, view.up) == pytest.approx(view.toward)
    assert norm(view.toward) == pytest.approx(1.0)


def test_axes_lie_at_30_degrees_and_upright():
    u, v = FROM_RIGHT.project((0.0, 0.0, 1.0))
    assert (u, v) == pytest.approx((0.0, FORESHORTENING))
    u, v = FROM_RIGHT.project((1.0, 0.0, 0.0))  # to the right and nearer, so downward
    assert math.degrees(math.atan2(v, u)) == pytest.approx(-30.0)
    u, v = FROM_RIGHT.project((0.0, 1.0, 0.0))  # to the back, so upward
    assert math.degrees(math.atan2(v, u)) == pytest.approx(30.0)
    u, v = FROM_LEFT.project((1.0, 0.0, 0.0))
    assert math.degrees(math.atan2(v, u)) == pytest.approx(30.0)


def test_the_viewer_stands_in_front_above_and_to_the_right():
    assert FROM_RIGHT.toward == pytest.approx((3**-0.5, -(3**-0.5), 3**-0.5))
