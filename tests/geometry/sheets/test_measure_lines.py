"""Where measures are found on an outline that can be worked by hand."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.design.joint import Measure
from geometry.sheets.measure_lines import places
from geometry.sheets.outlines import Outlines
from geometry.views.view import FRONT

# A board 100 long and 30 high, a notch 12 wide and 8 deep in its upper edge from 40 on, and a
# slanting end: 5 over 30.
_POINTS = [(0, 0), (95, 0), (100, 30), (52, 30), (52, 22), (40, 22), (40, 30), (0, 30)]
_OWN = [False, False, False, True, True, True, True, False]
_SIDES = [(*a, *b) for a, b in zip(_POINTS, _POINTS[1:] + _POINTS[:1], strict=True)]
_OWN_SIDES = [False, False, False, True, True, True, False, False]


def outlines(seen: bool = True) -> Outlines:
    corners = np.array(_POINTS, dtype=float)
    flags = np.full(len(corners), seen)
    limits = np.stack([corners.min(axis=0), corners.max(axis=0)])
    return Outlines(
        FRONT,
        corners,
        np.array(_OWN),
        flags,
        np.array(_SIDES, dtype=float),
        np.array(_OWN_SIDES),
        np.full(len(_SIDES), seen),
        limits,
        100.0,
    )


def found(name: str, value: float, unit: str = "mm", meaning: str = ""):
    return places((Measure(name, value, unit, meaning),), outlines())


def test_a_width_and_a_depth():
    width = found("notch_width", 12.0)[0].dimension
    assert {width.start[0], width.end[0]} == {40.0, 52.0}
    assert width.along == (1.0, 0.0)
    depth = found("notch_depth", 8.0)[0].dimension
    assert {depth.start[1], depth.end[1]} == {22.0, 30.0}
    assert depth.along == (0.0, 1.0)
    assert depth.side == 1  # beside the upper half


def test_a_place_is_measured_from_the_end_that_was_there_before():
    place = found("notch_place", 40.0, meaning="from the left end")[0].dimension
    assert place.start[0] == 0.0
    assert place.end[0] == 40.0


def test_what_is_left_under_the_notch_is_measured_straight_across():
    """22 from the lower edge, at the corner itself and not away at an end of the edge."""
    left = found("left", 22.0, meaning="from the lower edge")[0].dimension
    assert left.start == (left.end[0], 0.0)
    assert left.end[1] == 22.0


def test_a_size_that_is_nowhere_is_not_drawn():
    assert found("nowhere", 17.3) == ()
    assert found("nothing", 0.0) == ()


def test_sizes_that_the_joint_does_not_make_are_left_alone():
    assert found("length", 100.0) == ()


def test_an_angle_with_the_square_of_an_edge():
    points = [(0.0, 0.0), (60.0, 0.0), (60.0 + 30.0 * math.tan(math.radians(12.0)), 30.0)]
    sides = np.array([(*points[0], *points[1]), (*points[1], *points[2])])
    one = Outlines(
        FRONT,
        np.array(points),
        np.array([False, True, True]),
        np.ones(3, bool),
        sides,
        np.array([False, True]),
        np.ones(2, bool),
        np.empty((0, 2)),
        60.0,
    )
    (angle, *_) = places((Measure("shoulder", 12.0, "deg", "from square"),), one)
    dimension = angle.dimension
    assert dimension.apex == pytest.approx(points[1])
    assert dimension.start[0] == pytest.approx(points[1][0])  # square to the level edge
    assert dimension.end == pytest.approx(points[2])


def test_what_is_hidden_comes_after_what_is_seen():
    (plain, *_) = places((Measure("notch_width", 12.0, "mm", ""),), outlines())
    (hidden, *_) = places((Measure("notch_width", 12.0, "mm", ""),), outlines(seen=False))
    assert hidden.cost > plain.cost
