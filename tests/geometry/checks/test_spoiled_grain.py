"""Sound samples whose grain is turned the wrong way: caught, and cured by turning it back."""

from __future__ import annotations

import pytest

from geometry.bench.glue_ups import glue_ups
from geometry.design.finding import Level
from tests.samples import NAMES, found, mended, spoiled

CHECKS = ("grain_corner", "grain_bears", "long_across")


def test_ends_whose_grain_does_not_turn_the_corner() -> None:
    """The mitres' arrises run from front to back: so does the grain of the ends, 90 degrees from
    round the corner, while that of the top runs square into it."""
    bench = spoiled("bakehouse", {"end_grain": "front to back"})
    (one,) = found(bench, "grain_corner")
    assert one.level is Level.THINK_AGAIN
    assert one.parts == ("end_panel_left", "end_panel_right")
    assert (one.amount, one.limit, one.unit) == (pytest.approx(90.0), 45.0, "deg")
    assert one.place == pytest.approx((10.5, -210.0, 110.0 + 170.0))
    assert not found(mended(bench, one), "grain_corner")


def test_a_dovetailed_panel_bench_whose_ends_lie_level() -> None:
    bench = spoiled("bakery_yard", {"panel_end_grain": "front to back"})
    (one,) = found(bench, "grain_corner")
    assert one.parts == ("end_left", "end_right")
    assert not found(mended(bench, one), "grain_corner")


@pytest.mark.parametrize(
    ("name", "choice", "parts"),
    [
        ("bakehouse", "partition_grain", ("partition_1", "partition_2")),
        ("boat_club", "shelf_grain", ("shelf_2",)),
    ],
)
def test_shelves_and_partitions_with_their_grain_across(
    name: str, choice: str, parts: tuple[str, ...]
) -> None:
    bench = spoiled(name, {choice: "front to back"})
    (one,) = found(bench, "grain_bears")
    assert one.level is Level.THINK_AGAIN
    assert one.parts == parts
    assert (one.amount, one.limit) == (pytest.approx(90.0), 45.0)
    assert not found(mended(bench, one), "grain_bears")


def test_a_seat_longer_across_its_grain() -> None:
    """Rehearsal room, 640 long and 470 + 105 = 575 deep above: its top is 89.8 % across; at the
    maker's 80 it is told, and at the 200 of the table only a bench 300 long and more than 600 deep
    would be."""
    bench = spoiled("rehearsal_room", {}, limits=(("most_across", 80.0),))
    (one,) = found(bench, "long_across")
    assert one.parts == ("top",)
    assert one.amount == pytest.approx(100.0 * 575.0 / 640.0)
    assert not found(spoiled("rehearsal_room", {}), "long_across")


def test_boards_of_a_panel_run_with_its_grain() -> None:
    """An end 340 high and 420 deep: upright boards share its depth, level ones its height."""
    for grain, wide, long in (("upright", 420.0, 340.0), ("front to back", 340.0, 420.0)):
        bench = spoiled("bakehouse", {"end_grain": grain, "glue_up_width": 200.0})
        glued = {one.panel: one for one in glue_ups(bench)}["end_panel_left"]
        count = 3 if grain == "upright" else 2
        assert [board.shape.blank.width for board in glued.boards] == pytest.approx(
            [wide / count] * count
        )
        assert all(board.shape.blank.length == pytest.approx(long) for board in glued.boards)
        assert all(
            board.grain == pytest.approx(bench.part("end_panel_left").grain)
            for board in glued.boards
        )


@pytest.mark.parametrize("name", NAMES)
def test_sound_samples_have_their_grain_right(name: str) -> None:
    bench = spoiled(name, {})
    assert not [one for check in CHECKS for one in found(bench, check)]
