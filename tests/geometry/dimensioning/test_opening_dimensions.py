"""Openings, shelves and drawers in the front elevation: what is shown, and what a hand moves.

The bench: partitions of 20 at 400 and 800 in a case 300 high; openings 20..390, 410..790 and
810..1120, from 170 up to 430; a shelf in the middle one, three drawers in the right one.
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import drawers
from geometry.bench.limits import set_values
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.dimensioning.dimension import Dimension
from geometry.dimensioning.drag import drag
from geometry.dimensioning.handholds import handholds
from geometry.dimensioning.opening_dimensions import (
    drawer_front_handholds,
    drawer_handholds,
    shelf_handholds,
)
from geometry.dimensioning.placed import DimensionStyle
from geometry.dimensioning.placement import place
from geometry.views.view import FRONT, PLAN


@pytest.fixture(scope="module")
def bench() -> Bench:
    places = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
    spec = set_values(default_spec(), places)
    filled = {"opening_2_fill": "shelf", "opening_3_fill": "drawers", "opening_3_drawers": 3.0}
    return build(set_values(spec, filled | {"opening_3_step": 12.0}))


def found(bench: Bench) -> dict[str, Dimension]:
    return {one.name: one for one in dimensions(bench)}


def test_what_is_dimensioned(bench: Bench) -> None:
    """Widths and fronts follow, (260 - 8 - 36) / 3 = 72, 84, 96; the shelf's height is set."""
    rows = found(bench)
    assert [rows[f"opening_{k}_width"].value for k in (1, 2, 3)] == [370.0, 380.0, 310.0]
    assert not rows["opening_1_width"].parameter
    assert rows["opening_2_shelf_height"].parameter == "opening_2_shelf_height"
    # 360 deep less the reveal of 12, the set-back of 10 and the back of 6
    assert (rows["shelf_2_depth"].value, rows["shelf_2_depth"].parameter) == (332.0, "")
    assert [rows[f"drawer_3_{k}_front_height"].value for k in (1, 2, 3)] == [72.0, 84.0, 96.0]
    for one in rows.values():
        if one.unit == "mm" and one.room is not None:
            along = np.array(one.end) - np.array(one.start)
            assert abs(float(along @ one.along)) == pytest.approx(one.value)


def test_fronts_are_dimensioned_once_where_openings_are_divided_alike(bench: Bench) -> None:
    alike = set_values(
        bench.spec,
        {"opening_1_fill": "drawers", "opening_1_drawers": 3.0, "opening_1_step": 12.0},
    )
    names = [name for name in found(build(alike)) if "front_height" in name]
    assert names == [f"drawer_1_{k}_front_height" for k in (1, 2, 3)]


def test_they_stand_within_their_opening_or_not_at_all(bench: Bench) -> None:
    """At 1:2 there is room for every text, at 1:200 for none."""
    inner = [one for one in dimensions(bench) if one.room is not None]
    assert len(inner) >= 7
    no_lines = np.empty((0, 4))
    large = place(inner, no_lines, 0.5, DimensionStyle())
    assert {one.name for one in large.dimensions} == {one.name for one in inner}
    for one in large.dimensions:
        if one.name.endswith("_width"):
            k = int(one.name.split("_")[1])
            low, high = {1: (20, 390), 2: (410, 790), 3: (810, 1120)}[k]
            reach_x, reach_y = one.box.reach()
            assert low * 0.5 <= one.box.x - reach_x < one.box.x + reach_x <= high * 0.5
            assert 170 * 0.5 <= one.box.y - reach_y < one.box.y + reach_y <= 430 * 0.5
    assert place(inner, no_lines, 0.005, DimensionStyle()).dimensions == ()


def test_a_shelf_follows_the_hand(bench: Bench) -> None:
    lower, upper, front = shelf_handholds(bench)
    assert (lower.start, upper.start) == ((410.0, 280.0), (410.0, 298.0))
    assert (front.view, front.start) == (PLAN.name, (410.0, -338.0))  # 360 - 12 - 10
    moved = drag(bench.spec, lower.pull, (5.0, 12.0), None)
    assert moved.spec.number("opening_2_shelf_height") == 122.0
    assert drag(bench.spec, lower.pull, (0.0, 500.0), None).stopped_by
    thicker = drag(bench.spec, upper.pull, (5.0, 2.0), None)
    assert thicker.spec.number("shelf_thickness") == 20.0
    back = drag(bench.spec, front.pull, (0.0, 7.0), None)
    assert back.spec.number("opening_2_shelf_set_back") == 17.0


def test_fronts_are_drawn_away_from_what_is_round_them(bench: Bench) -> None:
    """Inset fronts in the opening from 810 on: the gap of 2 grows inward on all four sides, and the
    thickness of 18 toward the back, from the uprights' fronts at 360 - 12 = 348."""
    left, right, top, low, back = drawer_front_handholds(bench)
    assert left.start[0] - 810.0 == pytest.approx(2.0)
    for handhold in (left, right, top, low):
        u, v = handhold.pull.along
        dragged = drag(bench.spec, handhold.pull, (u, v), None)
        assert dragged.spec.number("drawer_gap") == 3.0
    assert back.start[1] == pytest.approx(18.0 - 348.0)
    thicker = drag(bench.spec, back.pull, (0.0, 1.5), None)
    assert thicker.spec.number("drawer_front_thickness") == 19.5


@pytest.mark.parametrize("count", [2, 3, 5])
def test_the_edge_between_two_fronts_follows_the_hand(bench: Bench, count: int) -> None:
    """Wherever it is taken hold of, the edge goes where the hand goes."""
    spec = set_values(bench.spec, {"opening_3_step": 0.0})
    spec = set_values(spec, {"opening_3_drawers": float(count), "opening_3_step": 2.0})
    held = drawer_handholds(build(spec))
    assert len(held) == 2 * (count - 1)
    for number, handhold in enumerate(held):
        i, lower = number // 2, number % 2
        after = drawers(drag(spec, handhold.pull, (0.0, 3.0), None).spec)
        edge = after[i + 1].z_high if lower else after[i].z_low
        assert edge - handhold.start[1] == pytest.approx(3.0, abs=1e-6)


def test_they_are_found_in_front_elevation_and_plan(bench: Bench) -> None:
    mine = [
        handhold for handhold in handholds(bench) if handhold.pull.parameter.startswith("opening_")
    ]
    assert {(handhold.view, handhold.pull.parameter) for handhold in mine} == {
        (FRONT.name, "opening_2_shelf_height"),
        (FRONT.name, "opening_3_step"),
        (PLAN.name, "opening_2_shelf_set_back"),
    }
