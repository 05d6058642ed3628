"""Frames and vectors, against numpy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.primitives.frame import BENCH_FRAME, Frame, Vec3, cross, dot, norm, unit

number = st.floats(-1000.0, 1000.0)
point = st.tuples(number, number, number)


def turned(yaw: float, tilt: float, origin: Vec3) -> Frame:
    x = (math.cos(yaw), math.sin(yaw), 0.0)
    y = (-math.sin(yaw) * math.cos(tilt), math.cos(yaw) * math.cos(tilt), math.sin(tilt))
    return Frame.of(origin, x, y)


frames = st.builds(turned, st.floats(0.0, 6.3), st.floats(-1.5, 1.5), point)


@given(frames, point)
def test_there_and_back(frame: Frame, local: Vec3) -> None:
    assert frame.to_local(frame.to_bench(local)) == pytest.approx(local, abs=1e-9)
    assert frame.turn_to_local(frame.turn_to_bench(local)) == pytest.approx(local, abs=1e-9)


@given(frames, point)
def test_matrix_says_the_same(frame: Frame, local: Vec3) -> None:
    assert frame.matrix() @ (*local, 1.0) == pytest.approx(frame.to_bench(local), abs=1e-9)


@given(frames)
def test_frames_are_right_handed(frame: Frame) -> None:
    axes = np.array((frame.x_axis, frame.y_axis, frame.z_axis))
    assert np.linalg.det(axes) == pytest.approx(1.0)
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-12)


@given(point, point)
def test_products_as_numpy_has_them(a: Vec3, b: Vec3) -> None:
    assert dot(a, b) == pytest.approx(float(np.dot(a, b)), abs=1e-6)
    assert cross(a, b) == pytest.approx(np.cross(a, b), abs=1e-6)
    assert norm(a) == pytest.approx(float(np.linalg.norm(a)))


def test_bench_frame_changes_nothing_and_the_zero_vector_has_no_direction() -> None:
    assert BENCH_FRAME.to_bench((1.0, 2.0, 3.0)) == (1.0, 2.0, 3.0)
    with pytest.raises(ZeroDivisionError):
        unit((0.0, 0.0, 0.0))
