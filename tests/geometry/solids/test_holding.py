"""Who holds whom, found the short way, against the same found by clipping every pair of faces.

``blocking`` is the judge here: it is itself held against motion of another library's meshes in
tests/geometry/checks/test_assembly.py.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.design.part import Part
from geometry.primitives.frame import Vec3, unit
from geometry.solids.cutting import placed
from geometry.solids.shadow_tests import apart, at, inside, may_exceed, plane_of, sides_of
from geometry.solids.solid import PlacedSolid
from geometry.solids.sweeping import blocking, holding_in_steps
from tests.random_assemblies import bars, blocks

AXES: tuple[Vec3, ...] = ((1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1))


def _holding(solids: Sequence[PlacedSolid], way: Vec3) -> np.ndarray:
    work = holding_in_steps(solids, way)
    while True:
        try:
            next(work)
        except StopIteration as done:
            found: np.ndarray = done.value
            return found


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("made", [blocks, bars])
def test_the_short_way_says_what_the_long_way_says(
    made: Callable[[int], list[Part]], seed: int
) -> None:
    dice = random.Random(seed)
    solids = [placed(part) for part in made(seed)]
    askew = [unit((dice.gauss(0, 1), dice.gauss(0, 1), dice.gauss(0, 1))) for _ in range(4)]
    some = 0
    for way in (*AXES, *askew):
        held = blocking(solids, way) > 0.0
        some += int(held.sum())
        assert (_holding(solids, way) == held).all(), way
    assert some


def test_the_same_on_a_bench_whose_faces_all_meet() -> None:
    solids = [placed(part) for part in build(default_spec()).parts]
    for way in (*AXES, unit((0.3, -0.2, 0.9))):
        assert (_holding(solids, way) == (blocking(solids, way) > 0.0)).all(), way


# One triangle with its right angle in the origin and legs of 40 and 30 mm; its height rises 1 in 10
# along the first leg: 7 at the origin, 11 at the end.
PLAN = np.array([[[0.0, 0.0], [40.0, 0.0], [0.0, 30.0]]])
ALONG = np.array([[7.0, 11.0, 7.0]])


def test_the_plain_tests_by_hand() -> None:
    sides, plane = sides_of(PLAN), plane_of(PLAN, ALONG)
    assert at(plane, np.array([[20.0, 5.0]])) == pytest.approx(9.0)
    # A 3-4-5 triangle of legs 30 and 40: the inscribed circle is (30 + 40 - 50) / 2 = 10 mm in
    # radius, about (10, 10).
    assert inside(sides, np.array([[10.0, 10.0]]), 9.99).all()
    assert not inside(sides, np.array([[10.0, 10.0]]), 10.01).any()
    # Over the box from 10 to 30 along the first leg, the greatest height is 7 + 3 = 10.
    low, high = np.array([[10.0, 0.0]]), np.array([[30.0, 5.0]])
    assert may_exceed(plane, low, high, 9.99).all()
    assert not may_exceed(plane, low, high, 10.01).any()
    # Reaching 2 mm past the side along the first leg, and no further.
    other = np.array([[[5.0, -20.0], [25.0, -20.0], [15.0, 2.0]]])
    assert apart(sides, other, 2.01).all()
    assert not apart(sides, other, 1.99).any()
