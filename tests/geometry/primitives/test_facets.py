"""Facets: triangles that cover their rectangle, and trimming that keeps neighbours together.

Judge for areas and volumes: shapely and hand calculation.
"""

from __future__ import annotations

import random

import pytest
import shapely

from geometry.primitives.facets import Facets, delaunay, trimmed
from tests.measures import volume_under

# A tent 40 long and 20 wide, its ridge of 6 in the middle of its width.
TENT = Facets(
    ((0, 0, 0), (40, 0, 0), (40, 10, 6), (0, 10, 6), (40, 20, 0), (0, 20, 0)),
    ((0, 1, 2, 3), (3, 2, 4, 5)),
)


def test_a_tent_by_hand() -> None:
    assert volume_under(TENT) == pytest.approx(20 * 6 / 2 * 40)
    assert TENT.arrises == ((2, 3),)


def test_a_trimmed_tent_by_hand() -> None:
    """Of 10..30 and 5..20: 5 mm from depth 3 to 6 and 10 mm from 6 to 0, over 20 mm."""
    left = trimmed(TENT, (10.0, 5.0, 30.0, 20.0))
    assert volume_under(left) == pytest.approx((5 * 4.5 + 10 * 3) * 20)
    assert sorted(left.points) == [
        (10.0, 5.0, 3.0), (10.0, 10.0, 6.0), (10.0, 20.0, 0.0),
        (30.0, 5.0, 3.0), (30.0, 10.0, 6.0), (30.0, 20.0, 0.0),
    ]  # fmt: skip


def test_what_only_touches_leaves_nothing() -> None:
    assert trimmed(TENT, (40.0, 0.0, 60.0, 20.0)) == Facets((), ())


@pytest.mark.parametrize("seed", range(12))
def test_trimming_covers_the_rectangle_once_and_shares_corners(seed: int) -> None:
    dice = random.Random(seed)
    corners = [(0.0, 0.0), (90.0, 0.0), (90.0, 60.0), (0.0, 60.0)]
    plan = tuple(corners + [(dice.uniform(1, 89), dice.uniform(1, 59)) for _ in range(25)])
    facets = Facets(tuple((x, y, dice.uniform(0, 9)) for x, y in plan), delaunay(plan))
    whole = sum(shapely.Polygon([facets.points[k] for k in f]).area for f in facets.faces)
    assert whole == pytest.approx(90 * 60)
    # Two halves hold what the whole holds, and along the cut they have the same points.
    at = dice.uniform(20, 70)
    left, right = trimmed(facets, (0, 0, at, 60)), trimmed(facets, (at, 0, 90, 60))
    assert volume_under(left) + volume_under(right) == pytest.approx(volume_under(facets))
    cut = [{point for point in half.points if point[0] == at} for half in (left, right)]
    assert cut[0] == cut[1]
    for half, area in ((left, at * 60), (right, (90 - at) * 60)):
        areas = [shapely.Polygon(half.corners(face)) for face in half.faces]
        assert sum(piece.area for piece in areas) == pytest.approx(area)
        assert shapely.union_all(areas).area == pytest.approx(area)
        # Every side inside the rectangle belongs to two facets.
        sides = [tuple(sorted(s)) for f in half.faces for s in zip(f, (*f[1:], f[0]), strict=True)]
        assert all(sides.count(side) == 2 for side in half.arrises)
