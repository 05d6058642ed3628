"""Stopped edges on the fronts of a case by hand: what they take off, and where they begin."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.bench.stopped_runs import between
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.part import Part
from geometry.design.spec import BenchSpec
from geometry.solids.measure import volume_of

PLAIN = set_values(
    default_spec(),
    {"length": 1200.0, "case_height": 300.0, "flare": 0.0, "right_end": "mitred", "chamfer": 4.0},
)
SHARP = set_values(PLAIN, {"chamfer": 0.0})


def mouldings(part: Part) -> list[EdgeMoulding]:
    return [cut for cut in part.shape.cuts if isinstance(cut, EdgeMoulding)]


def taken(spec: BenchSpec, part: str) -> float:
    before, after = (build(one).part(part) for one in (SHARP, spec))
    return volume_of(before.shape) - volume_of(after.shape)


@pytest.mark.parametrize(("part", "long"), [("top", 1200.0), ("end_panel_left", 300.0)])
def test_each_board_has_a_run_of_its_own(part: str, long: float) -> None:
    """A triangle of 4 by 4 that begins 100 from each corner, and runs out at 45 degrees there by
    two thirds of the cube of its depth, 4 / sqrt 2."""
    spec = set_values(PLAIN, {"edge_stop": 100.0})
    by_hand = 8.0 * (long - 200.0) - 4.0 * (4.0 / math.sqrt(2.0)) ** 3 / 3.0
    assert taken(spec, part) == pytest.approx(by_hand, rel=1e-6)


def test_boards_may_be_chosen() -> None:
    spec = set_values(PLAIN, {"edge_stop": 50.0, "edge_where": "top alone"})
    assert {part.name for part in build(spec).parts if mouldings(part)} == {"top"}
    spec = set_values(spec, {"edge_where": "top and bottom"})
    assert {part.name for part in build(spec).parts if mouldings(part)} == {"top", "bottom"}


def test_a_run_that_is_too_short_is_left_sharp() -> None:
    """Of 300 of an end 14 are left between 143 from both corners, less than four times 4."""
    spec = set_values(PLAIN, {"edge_stop": 143.0})
    assert mouldings(build(spec).part("top"))
    assert not mouldings(build(spec).part("end_panel_left"))


def test_where_it_begins_on_a_front_with_knees() -> None:
    """Stations along the board: in the second stretch at a third of its fall; at the knee where
    only 5 of the second are left for an edge of 4."""
    arris = ((0.0, 400.0), (100.0, 400.0), (400.0, 340.0), (1200.0, 340.0))
    assert between(arris, 200.0, 4.0) == ((200.0, 380.0), (400.0, 340.0), (1000.0, 340.0))
    assert between(arris, 395.0, 4.0) == ((400.0, 340.0), (805.0, 340.0))
    assert between(arris, 599.0, 4.0) == ()


def test_on_a_flared_front_it_takes_its_triangle_all_along() -> None:
    """Where the flare's stretches meet the triangles are cut off on the plane halfway, which gives
    to one what it takes from the other but for what the knee's turn makes of 4 mm."""
    flared = set_values(
        PLAIN, {"flare": 60.0, "flare_straight": 200.0, "flare_end": 700.0, "edge_stop": 90.0}
    )
    top = build(flared).part("top")
    cuts = mouldings(top)
    assert [(cut.stopped_start, cut.stopped_end) for cut in cuts] == [
        (True, False),
        (False, False),
        (False, True),
    ]
    sharp = volume_of(build(set_values(flared, {"chamfer": 0.0})).part("top").shape)
    by_hand = sum(cut.length * 8.0 * math.sin(cut.corner) for cut in cuts)
    by_hand -= 4.0 * (4.0 / math.sqrt(2.0)) ** 3 / 3.0
    assert sharp - volume_of(top.shape) == pytest.approx(by_hand, rel=1e-2)
