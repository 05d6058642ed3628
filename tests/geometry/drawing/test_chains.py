"""Segments joined to lines: a circle in any order is one line, a corner ends one."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.drawing.chains import chains


def circle(count: int, radius: float = 10.0) -> np.ndarray:
    turns = np.linspace(0.0, 2.0 * math.pi, count + 1)
    points = radius * np.column_stack((np.cos(turns), np.sin(turns)))
    return np.hstack((points[:-1], points[1:]))


@given(st.randoms(use_true_random=False), st.integers(20, 60))
def test_a_circle_in_any_order_is_one_closed_line(random, count: int) -> None:
    rows = circle(count).tolist()
    random.shuffle(rows)
    rows = [row[2:] + row[:2] if random.random() < 0.5 else row for row in rows]
    (line,) = chains(np.array(rows))
    assert len(line) == count + 1
    assert line[0] == pytest.approx(line[-1], abs=1e-9)
    steps = [math.dist(a, b) for a, b in itertools.pairwise(line)]
    assert sum(steps) == pytest.approx(2.0 * count * 10.0 * math.sin(math.pi / count))


def test_a_corner_and_a_fork_end_a_line() -> None:
    corner = np.array([(0.0, 0.0, 5.0, 0.0), (5.0, 0.0, 5.0, 5.0)])
    assert chains(corner) == [[(0.0, 0.0), (5.0, 0.0)], [(5.0, 0.0), (5.0, 5.0)]]
    fork = np.array([(0.0, 0.0, 5.0, 0.0), (5.0, 0.0, 9.0, 1.0), (5.0, 0.0, 9.0, -1.0)])
    assert len(chains(fork)) == 3


def test_an_open_curve_is_walked_from_end_to_end() -> None:
    half = circle(40)[:20][::-1]
    (line,) = chains(half)
    assert {line[0], line[-1]} == {tuple(half[-1][:2]), tuple(half[0][2:])}
    assert len(line) == 21


def test_nothing_is_nothing() -> None:
    assert chains(np.zeros((0, 4))) == []
