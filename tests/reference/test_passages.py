"""Doors and corners against formulas from outside.

Sources: Carver, Am. Math. Monthly 64 (1957), on one rectangle in another (from memory): a p x q
rectangle longer than the a x b one (p > a >= b >= q) fits in it if and only if
b >= (2 p q a + (p² - q²) sqrt(p² + q² - a²)) / (p² + q²); the ladder round a corner,
(a^(2/3) + b^(2/3))^(3/2), of any book of calculus; a square pushed round a corner by hand.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.advice.passages import round_corner, through_door


def box(x: float, y: float, z: float) -> np.ndarray:
    return np.array([(i * x, j * y, k * z) for i in (0, 1) for j in (0, 1) for k in (0, 1)])


def fits(p: float, q: float, a: float, b: float) -> float:
    """How much room there is across, by Carver's rule, for p x q in a x b; less than 0: none."""
    p, q, a, b = max(p, q), min(p, q), max(a, b), min(a, b)
    if p <= a:
        return b - q
    needed = (2 * p * q * a + (p * p - q * q) * math.sqrt(p * p + q * q - a * a)) / (p * p + q * q)
    return min(b - needed, b - q)


SIZES = st.floats(200, 2000)


@given(SIZES, SIZES, SIZES, SIZES, SIZES)
def test_a_box_through_a_door(x: float, y: float, z: float, a: float, b: float) -> None:
    found = through_door(box(x, y, z), a, b)
    room = max(fits(y, z, a, b), fits(x, z, a, b), fits(x, y, a, b))
    if abs(room) > 1.0:
        assert (found.short <= 0.0) == (room > 0.0)


def test_a_tilted_rectangle_by_hand() -> None:
    """1000 x 100 in a square of 800: at 45 degrees it is 1100 / sqrt 2 = 777.8 both ways."""
    found = through_door(box(3000, 1000, 100), 800.0, 800.0)
    assert found.short == pytest.approx(1100 / math.sqrt(2) - 800, abs=1e-3)
    assert found.way == "end first"


@given(st.floats(500, 3000), st.floats(500, 3000))
def test_a_ladder_round_a_corner(a: float, b: float) -> None:
    longest = (a ** (2 / 3) + b ** (2 / 3)) ** 1.5
    low = min(a, b) / 10
    assert round_corner((longest - 1.0, 0.0, low), a, b, low).short <= 1e-6
    if longest - 1.0 > max(a, b):
        assert round_corner((longest + 1.0, 1e-9, low), a, b, low).short > 0.0


def test_a_wide_box_by_hand() -> None:
    """Two ways of 1000: at 45 degrees a box 600 wide may be 2 (1000 sqrt 2 - 600) = 1628.4 long."""
    longest = 2 * (1000 * math.sqrt(2) - 600)
    assert round_corner((longest - 0.5, 600, 100), 1000, 1000, 110).short < 0.0
    assert round_corner((longest + 0.5, 600, 100), 1000, 1000, 110).short > 0.0


def test_a_box_that_need_not_turn() -> None:
    """990 x 990 slides into a corner of 1000 x 1000 and out of it sideways."""
    assert round_corner((990, 990, 500), 1000, 1000, 600).short == pytest.approx(-10.0)


def test_stood_on_end_where_there_is_headroom() -> None:
    low = round_corner((1800, 400, 450), 700, 700, 2100)
    assert low.short < 0.0
    assert low.way == "on its end"
    assert round_corner((1800, 400, 450), 700, 700, 1700).short > 0.0


def test_tilted_up_as_far_as_the_headroom_lets_it() -> None:
    """2000 x 300 x 400 round 800 into 800 under 1500, the 400 upright: 2000 sin t + 400 cos t =
    1500 at t = asin(1500 / 2039.61) - 11.310 = 36.042 degrees, 2000 cos t + 400 sin t = 1852.5 in
    plan; at 45 degrees 800 (sin + cos) - 1852.5 / 2 - 300 = -94.9."""
    best = round_corner((2000.0, 300.0, 400.0), 800.0, 800.0, 1500.0)
    assert best.way == "tilted up at one end"
    assert best.short == pytest.approx(94.9, abs=0.3)
