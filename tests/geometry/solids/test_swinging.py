"""What a piece strikes as it turns: by hand, and against linear programming on convex bodies.

Two convex bodies share a point exactly when some weights of the corners of the one and some of the
other's, each adding up to 1, come to the same point (scipy's linprog, HiGHS).
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import linprog
from scipy.spatial.transform import Rotation

from geometry.cuts.cut import Blank
from geometry.design.part import Part, Shape
from geometry.primitives.frame import Frame, Vec3
from geometry.solids.cutting import placed
from geometry.solids.swinging import first_strike, turned_part

PIN: Vec3 = (0.0, 0.0, 0.0)


def board(size: Vec3, low: Vec3, name: str = "board") -> Part:
    frame = Frame(low, (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    return Part(name, name.title(), name, "white oak", Shape(Blank(*size), ()), frame)


LID = board((400.0, 300.0, 20.0), (0.0, -300.0, -20.0), "lid")


@pytest.mark.parametrize(
    ("size", "low", "expected"),
    [
        # A wall behind the pin: the upper face comes upright on it.
        ((400.0, 20.0, 500.0), (0.0, 0.0, 0.0), 90.0),
        # A rail's lower front arris 200 in front and 100 up, on the face that starts level.
        ((400.0, 50.0, 50.0), (0.0, -200.0, 100.0), math.degrees(math.atan2(100.0, 200.0))),
        # A shelf over the lid, 150 up and from 100 behind to 295 in front: the lid's front arris,
        # 300 from the pin, comes under it where it is 150 up and 259.8 in front: at 30.
        ((400.0, 395.0, 20.0), (0.0, -295.0, 150.0), 30.0),
        # Beside the lid, and farther than it reaches.
        ((50.0, 395.0, 20.0), (400.0, -295.0, 100.0), None),
        ((400.0, 20.0, 50.0), (0.0, -340.0, 0.0), None),
        # What it lies on, and what its back edge stands against, do not hold it.
        ((400.0, 300.0, 50.0), (0.0, -300.0, -70.0), None),
    ],
)
def test_by_hand(size: Vec3, low: Vec3, expected: float | None) -> None:
    met = first_strike(LID, (board(size, low),), PIN, 120.0)
    if expected is None:
        assert met is None
    else:
        assert met is not None
        assert met.turn_deg == pytest.approx(expected, abs=1e-9)


def test_a_bar_across_the_corner_is_struck_by_the_edge_between_two_corners() -> None:
    """A bar of 20 x 20 along Y from x = 390 on: the lid's outer edge of the end at x = 400 and the
    bar's own lower arrises: at height 100, from 250 in front on, the lid's front arris is under it
    at asin(100 / 300), 282.8 in front, and its face at 250 in front would be later."""
    bar = board((30.0, 400.0, 20.0), (390.0, -650.0, 100.0))
    met = first_strike(LID, (bar,), PIN, 120.0)
    assert met is not None
    assert met.turn_deg == pytest.approx(math.degrees(math.asin(100.0 / 300.0)), abs=1e-9)
    assert 390.0 - 1e-9 <= met.place[0] <= 400.0 + 1e-9


def leaning(seed: int) -> Part:
    """A box turned any way, somewhere over the lid or behind it."""
    dice = np.random.default_rng(seed)
    turn = Rotation.random(random_state=seed).as_matrix()
    x, y, z = dice.uniform((-50.0, -350.0, 60.0), (450.0, 250.0, 400.0)).tolist()
    axes = [(float(a), float(b), float(c)) for a, b, c in turn.T]
    one = board((200.0, 60.0, 30.0), PIN)
    return replace(one, frame=Frame((x, y, z), *axes))


def meet(first: Part, second: Part) -> bool:
    a, b = placed(first).vertices, placed(second).vertices
    equal: NDArray[np.float64] = np.zeros((5, len(a) + len(b)))
    equal[:3] = np.hstack([a.T, -b.T])
    equal[3, : len(a)] = 1.0
    equal[4, len(a) :] = 1.0
    found = linprog(np.zeros(equal.shape[1]), A_eq=equal, b_eq=[0.0, 0.0, 0.0, 1.0, 1.0])
    return bool(found.status == 0)


@pytest.mark.parametrize("seed", range(40))
def test_convex_boxes_against_linear_programming(seed: int) -> None:
    """Free all the way before the angle told, and in each other's wood a little beyond it."""
    other = leaning(seed)
    if meet(LID, other):
        return
    met = first_strike(LID, (other,), PIN, 120.0)
    free = 120.0 if met is None else met.turn_deg
    for turn in np.linspace(0.0, free - 0.01, 40):
        assert not meet(turned_part(LID, PIN, float(turn)), other)
    if met is not None:
        assert meet(turned_part(LID, PIN, met.turn_deg + 0.05), other)
        low, high = placed(other).low - 1e-6, placed(other).high + 1e-6
        assert (low <= met.place).all()
        assert (met.place <= high).all()
