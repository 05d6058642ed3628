"""Measures of placed parts, worked by hand."""

from __future__ import annotations

import math

import pytest

from geometry.cuts.removal import Prism
from geometry.primitives.frame import Frame, unit
from geometry.primitives.path import Path
from geometry.solids.measure import bounding_box, shared_volume, volume_of
from shared.tolerances import SHARED_VOLUME
from tests.measures import minimum_gap, piece_count
from tests.random_assemblies import bars, blocks, box, part


def test_boxes_that_overlap_share_the_overlap():
    first = box("a", (0, 0, 0), (100, 50, 20))
    second = box("b", (90, 40, 15), (200, 200, 200))
    assert shared_volume(first, second) == pytest.approx(10 * 10 * 5)


@pytest.mark.parametrize("low", [(100, 0, 0), (100, 50, 0), (100, 50, 20), (130, 0, 0)])
def test_boxes_that_touch_or_stand_apart_share_nothing(low):
    first = box("a", (0, 0, 0), (100, 50, 20))
    second = box("b", low, (low[0] + 10, low[1] + 10, low[2] + 10))
    assert shared_volume(first, second) == pytest.approx(0.0, abs=SHARED_VOLUME)


def test_bars_crossed_at_an_angle_share_a_rhombus():
    # Two 40 wide bars at 30°: the rhombus is 40 x 40 / sin 30°, over 20 of thickness.
    turn = math.radians(30)
    first = part("a", (400, 40, 20), frame=Frame.of((-200, -20, 0), (1, 0, 0), (0, 1, 0)))
    along, across = (math.cos(turn), math.sin(turn), 0), (-math.sin(turn), math.cos(turn), 0)
    start = tuple(-200 * a - 20 * c for a, c in zip(along, across, strict=True))
    second = part("b", (400, 40, 20), frame=Frame.of(start, along, across))
    assert shared_volume(first, second) == pytest.approx(40 * 40 / math.sin(turn) * 20)


@pytest.mark.parametrize("build", [blocks, bars])
def test_random_assemblies_share_no_volume(build):
    parts = build(3)
    if build is bars:
        parts = parts[:-1]  # the prop leans through the pile
    shares = [shared_volume(a, b) for i, a in enumerate(parts) for b in parts[i + 1 :]]
    assert max(shares) < SHARED_VOLUME


def test_gaps():
    first = box("a", (0, 0, 0), (100, 50, 20))
    assert minimum_gap(first, box("b", (103, 0, 0), (110, 50, 20)), 10.0) == pytest.approx(3.0)
    corner = box("c", (103, 54, 0), (110, 60, 20))
    assert minimum_gap(first, corner, 10.0) == pytest.approx(5.0)  # 3-4-5
    assert minimum_gap(first, box("d", (100, 0, 0), (110, 50, 20)), 10.0) == pytest.approx(0.0)
    assert minimum_gap(first, box("e", (200, 0, 0), (210, 50, 20)), 10.0) == 10.0


def test_a_cut_right_through_leaves_two_pieces():
    whole = part("a", (600, 200, 20))
    sawn = part("b", (600, 200, 20), (Prism(Path.rectangle(290, -1, 300, 201), -1, 21),))
    assert piece_count(whole.shape) == 1
    assert piece_count(sawn.shape) == 2
    assert volume_of(sawn.shape) == pytest.approx(590 * 200 * 20)


def test_the_box_around_a_turned_part():
    along = unit((1, 1, 0))
    turned = part("a", (100, 20, 10), frame=Frame.of((0, 0, 5), along, unit((-1, 1, 0))))
    low, high = bounding_box(turned)
    root = math.sqrt(0.5)
    assert low == pytest.approx((-20 * root, 0, 5))
    assert high == pytest.approx((100 * root, 120 * root, 15))
