"""Sound samples that no board or sheet is large enough for: caught, measured, and cured."""

from __future__ import annotations

import pytest

from geometry.bench.glue_ups import glue_ups
from geometry.design.finding import Level
from tests.samples import NAMES, found, mended, spoiled

CHECKS = ("long_board", "wide_board", "thick_board", "narrow_strip", "large_sheet")


def test_longer_than_the_boards() -> None:
    """Top and bottom as long as the bench: 3200 of a board of 3000."""
    bench = spoiled("ferry_waiting_room", {"length": 3200.0})
    (one,) = found(bench, "long_board")
    assert one.level is Level.THINK_AGAIN
    assert one.parts == ("top", "bottom")
    assert (one.amount, one.limit) == pytest.approx((3200.0, 3000.0))
    assert one.mend is not None
    assert one.mend.values == (("length", 3000.0),)
    assert not found(mended(bench, one), "long_board")
    # Where the yard has no more than 1.8 m, the sample itself is too long.
    yard = spoiled("ferry_waiting_room", {}, limits=(("longest_board", 1800.0),))
    assert found(yard, "long_board")[0].amount == pytest.approx(1960.0)


def test_wider_than_the_boards() -> None:
    """A top 420 deep where the widest board is 240: two of 210."""
    bench = spoiled("bakehouse", {}, limits=(("widest_stock", 240.0),))
    (one,) = found(bench, "wide_board")
    assert one.level is Level.GOOD_TO_KNOW
    assert set(one.parts) == {
        *("top", "bottom", "end_panel_left", "end_panel_right", "partition_1", "partition_2")
    }
    assert (one.amount, one.limit) == pytest.approx((420.0, 240.0))
    cured = mended(bench, one)
    assert not found(cured, "wide_board")
    boards = {glued.panel: len(glued.boards) for glued in glue_ups(cured)}
    assert boards["top"] == 2


def test_a_seats_boards_are_those_of_its_glue_up() -> None:
    """The bowling green's seat, 470 deep, of as many boards as it says, or as the widest asks."""
    bench = spoiled("bowling_green", {"seat_boards": 3.0})
    (seat,) = (one for one in glue_ups(bench) if one.panel == "seat")
    assert [board.shape.blank.width for board in seat.boards] == pytest.approx([470.0 / 3.0] * 3)
    assert "glued up of 3 boards" in bench.part("seat").notes[0]
    narrow = spoiled("bowling_green", {"seat_boards": 3.0, "glue_up_width": 100.0})
    (seat,) = (one for one in glue_ups(narrow) if one.panel == "seat")
    assert [board.shape.blank.width for board in seat.boards] == pytest.approx([94.0] * 5)
    assert "glued up of 5 boards" in narrow.part("seat").notes[0]


def test_thicker_than_the_boards() -> None:
    """A slab 110 thick, of boards that are 95.25 at most."""
    bench = spoiled("bowling_green", {"seat_thickness": 110.0})
    (one,) = found(bench, "thick_board")
    assert one.parts == ("seat",)
    assert (one.amount, one.limit) == pytest.approx((110.0, 95.25))
    assert not found(spoiled("bowling_green", {"seat_thickness": 95.0}), "thick_board")


def test_a_strip_too_narrow_to_saw() -> None:
    bench = spoiled("weigh_house", {"shelf_lip": 3.0})
    (one,) = found(bench, "narrow_strip")
    assert all(name.startswith("lipping") for name in one.parts)
    assert (one.amount, one.limit) == pytest.approx((3.0, 5.0))
    assert one.mend is not None
    assert one.mend.values == (("shelf_lip", 5.0),)
    assert not found(mended(bench, one), "narrow_strip")
    # A band of 0.5 mm is bought, not sawn.
    assert not found(spoiled("weigh_house", {"shelf_lip": 0.5}), "narrow_strip")


def test_larger_than_the_sheets() -> None:
    """The bakehouse's back, 1429 x 309, and a shop whose sheets are 1220 x 610; a sheet as long as
    the back takes it, whichever way it lies."""
    small = spoiled("bakehouse", {}, limits=(("sheet_length", 1220.0), ("sheet_width", 610.0)))
    (one,) = found(small, "large_sheet")
    assert one.parts == ("back",)
    assert (one.amount, one.limit) == pytest.approx((1429.0, 1220.0))
    turned = (("sheet_length", 310.0), ("sheet_width", 1430.0))
    assert not found(spoiled("bakehouse", {}, limits=turned), "large_sheet")
    timber = spoiled("bakehouse", {"back_of": "timber"}, limits=small.judged_by)
    assert not found(timber, "large_sheet")


@pytest.mark.parametrize("name", NAMES)
def test_sound_samples_come_out_of_what_there_is(name: str) -> None:
    bench = spoiled(name, {})
    raised = [one for check in CHECKS for one in found(bench, check)]
    assert all(one.level is Level.GOOD_TO_KNOW for one in raised)
