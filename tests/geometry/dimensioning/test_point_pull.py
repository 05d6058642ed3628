"""A hand on a point of a carving: it goes where it is put, and stops where something is held.

One front 1096 x 256 x 18; points 1 to 4 at the corners, 5 on a border, 6 within.
"""

from __future__ import annotations

import pytest

from geometry.bench.carving_numbers import carving_of
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import drawers
from geometry.bench.groove_land import least_land
from geometry.bench.left_of_front import thinnest
from geometry.bench.limits import set_values
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.dimensioning.point_pull import APART, pull_point, spot_of

FLAT = "1 0 0 0; 2 100 0 0; 3 100 100 0; 4 0 100 0; 5 50 0 0; 6 50 50 50"


def bench(**changes: Value) -> BenchSpec:
    spec = set_values(default_spec(), {"partition_count": 0.0, "opening_1_fill": "drawers"})
    given: dict[str, Value] = {
        "carving": "faceted", "carving_points": 6.0, "carving_depth": 10.0, "carving_moved": FLAT,
    }  # fmt: skip
    return set_values(spec, given | changes)


def place(spec: BenchSpec, number: int) -> tuple[float, float, float]:
    carving = carving_of(spec)
    assert carving is not None
    spot = spot_of(carving, number)
    assert spot is not None
    return spot.at


def test_a_point_goes_where_it_is_put() -> None:
    moved = pull_point(bench(), 6, (300.0, 100.0, 4.0))
    assert moved.stopped_by == ""
    assert place(moved.spec, 6) == pytest.approx((300.0, 100.0, 4.0), abs=0.01)
    assert moved.value == pytest.approx(4.0, abs=1e-3)


def test_there_and_back_is_no_change_but_for_the_text() -> None:
    start = bench()
    back = pull_point(pull_point(start, 6, (300.0, 100.0, 4.0)).spec, 6, (548.0, 128.0, 5.0))
    assert back.spec == start


def test_it_stops_exactly_where_the_front_would_be_too_thin() -> None:
    """18 less 10 is 8; 8.5 wanted leaves 9.5 for the carving."""
    stopped = pull_point(bench(carving_least=8.5), 6, (548.0, 128.0, 10.0))
    assert stopped.value == pytest.approx(9.5, abs=2e-4)
    assert "keeps {8.5 mm} of its front" in stopped.stopped_by


def test_it_stops_exactly_where_the_land_would_be_too_small() -> None:
    """Along the top edge only the corner point 3 is deep: 18 - 6.35 - 4 = 7.65 at most there,
    less a little because the cove comes nearer where the carving falls away behind the edge."""
    spec = bench(finger_groove="top edge")
    stopped = pull_point(spec, 3, (1096.0, 256.0, 10.0))
    assert "keeps {4 mm} of land in front of its groove" in stopped.stopped_by
    assert stopped.value == pytest.approx(7.65, abs=0.01)
    land = least_land(stopped.spec, drawers(stopped.spec)[0]).wood
    assert land == pytest.approx(4.0, abs=2e-4)
    assert land >= 4.0 - 1e-4


def test_what_was_broken_before_may_stay_but_not_get_worse() -> None:
    spec = bench(carving_least=16.0)
    (drawer,) = drawers(spec)
    assert thinnest(spec, drawer).wood == pytest.approx(13.0)
    deeper = pull_point(spec, 6, (548.0, 128.0, 7.0))
    assert deeper.value == pytest.approx(5.0, abs=1e-3)
    assert deeper.stopped_by
    aside = pull_point(spec, 6, (500.0, 128.0, 5.0))
    assert aside.stopped_by == ""
    higher = pull_point(spec, 6, (548.0, 128.0, 3.0))
    assert higher.stopped_by == ""


def test_two_points_keep_apart() -> None:
    start = bench(carving_points=7.0)
    other = place(start, 7)
    stopped = pull_point(start, 6, other)
    at = place(stopped.spec, 6)
    away = ((at[0] - other[0]) ** 2 + (at[1] - other[1]) ** 2) ** 0.5
    assert away == pytest.approx(APART, abs=0.02)
    assert "apart" in stopped.stopped_by


def test_face_depth_and_picture_end_it_too() -> None:
    assert pull_point(bench(), 6, (548.0, 128.0, -1.0)).stopped_by.endswith("in front of the face")
    assert pull_point(bench(), 6, (548.0, 128.0, 12.0)).stopped_by.startswith("the carving goes")
    assert pull_point(bench(), 6, (548.0, 300.0, 5.0)).stopped_by == "the picture ends there"
    mirrored = bench(carving_mirror="mirrored")
    assert pull_point(mirrored, 6, (700.0, 128.0, 5.0)).stopped_by == "its image begins there"


@pytest.mark.parametrize("number", [1, 2, 3, 4])
def test_a_corner_only_gets_deeper(number: int) -> None:
    start = bench()
    moved = pull_point(start, number, (500.0, 100.0, 2.0)).spec
    assert place(moved, number)[:2] == place(start, number)[:2]
    assert place(moved, number)[2] == pytest.approx(2.0)
