"""Arcs lost to chords come back as the very same arcs."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from exporters.arcs import Circle, circles_of, whole_circle, with_arcs
from geometry.primitives.path import HALF_TURN_BULGE, QUARTER_TURN_BULGE, Path, signed_area


def slot(length: float, radius: float) -> Path:
    """A slot with two half-round ends."""
    return Path(
        (
            (0.0, -radius, 0.0),
            (length, -radius, HALF_TURN_BULGE),
            (length, radius, 0.0),
            (0.0, radius, HALF_TURN_BULGE),
        )
    )


@given(
    length=st.floats(1, 500),
    radius=st.floats(1, 60),
    chord_error=st.sampled_from([0.01, 1e-4]),
    start=st.integers(0, 1000),
)
def test_flattened_and_back_from_any_starting_point(
    length: float, radius: float, chord_error: float, start: int
) -> None:
    path = slot(length, radius)
    points = list(path.flattened(chord_error))
    start %= len(points)
    again = with_arcs(points[start:] + points[:start], circles_of(path), chord_error)
    assert len(again.vertices) == 4
    assert np.array(sorted(again.vertices)) == pytest.approx(
        np.array(sorted(path.vertices)), abs=1e-9
    )


def test_a_clockwise_ring_comes_back_counter_clockwise() -> None:
    path = slot(100.0, 10.0)
    again = with_arcs(path.flattened(0.01)[::-1], circles_of(path), 0.01)
    assert signed_area(again.flattened(0.01)) > 0.0
    assert all(bulge >= 0.0 for _, _, bulge in again.vertices)


def test_a_whole_circle() -> None:
    path = Path(((-7.0, 0.0, 1.0), (7.0, 0.0, 1.0)))
    again = with_arcs(path.flattened(0.01), circles_of(path), 0.01)
    assert whole_circle(again) == Circle((0.0, 0.0), 7.0)


def test_straight_rings_stay_as_they_are() -> None:
    square = Path.rectangle(0.0, 0.0, 10.0, 10.0)
    assert with_arcs([v[:2] for v in square.vertices], (), 0.01) == square


def test_a_line_that_only_touches_a_circle_is_no_arc() -> None:
    square = [(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)]
    path = with_arcs(square, (Circle((10.0, 10.0), 10.0),), 0.01)
    assert all(bulge == 0.0 for _, _, bulge in path.vertices)


def test_a_hollow_corner_has_a_negative_bulge() -> None:
    """A quarter circle cut out of the corner of a square, by hand: bulge -tan(pi / 8)."""
    path = Path(
        ((0.0, 0.0, 0.0), (20.0, 0.0, 0.0), (20.0, 12.0, -QUARTER_TURN_BULGE), (12.0, 20.0, 0.0),
         (0.0, 20.0, 0.0))
    )  # fmt: skip
    (circle,) = circles_of(path)
    assert circle.centre == pytest.approx((20.0, 20.0))
    assert circle.radius == pytest.approx(8.0)
    again = with_arcs(path.flattened(0.01), (circle,), 0.01)
    assert [v[2] for v in again.vertices if v[2]] == pytest.approx([-math.tan(math.pi / 8)])


@pytest.mark.parametrize(
    "path",
    [
        Path.rectangle(0.0, 0.0, 1.0, 1.0),
        slot(10.0, 2.0),
        Path(((0.0, 0.0, 0.0), (1.0, 0.0, 1.0))),
        Path(((0.0, 0.0, 1.0), (1.0, 0.0, 1.0)), closed=False),
        Path(((-5.0, 0.0, 0.5), (5.0, 0.0, 0.5))),
    ],
)
def test_what_is_not_a_whole_circle(path: Path) -> None:
    assert whole_circle(path) is None
