"""Isometric views by hand (ISO 5456-3, from memory)."""

from __future__ import annotations

import math

import pytest

from geometry.primitives.frame import BENCH_FRAME, Frame, cross, dot, norm
from geometry.views.pictorial import (
    CORNERS,
    FORESHORTENING,
    FROM_LEFT,
    FROM_RIGHT,
    TRUE_LENGTH,
    in_frame,
)


def test_foreshortening_is_the_cosine_of_35_264_degrees():
    assert pytest.approx(math.cos(math.radians(35.264)), abs=1e-5) == FORESHORTENING
    assert pytest.approx(1.0) == FORESHORTENING * TRUE_LENGTH


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


def test_a_view_turns_with_its_frame():
    frame = Frame((5.0, 6.0, 7.0), (0, 1, 0), (0, 0, 1), (1, 0, 0))
    turned = in_frame(FROM_RIGHT, frame)
    assert dot(turned.toward, frame.z_axis) == pytest.approx(3**-0.5)
    assert turned.project(frame.z_axis) == pytest.approx((0.0, FORESHORTENING))
