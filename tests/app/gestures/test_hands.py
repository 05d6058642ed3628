"""The gestures, without a window."""

from __future__ import annotations

import pytest

from app.gestures.hands import Hand, hold_value, slide_sheet, touch_joint, touch_part
from app.gestures.moments import (
    Act,
    Handle,
    Moment,
    OpenJoint,
    Pan,
    PickAt,
    Restore,
    Settle,
    Shift,
    TypeInto,
)
from geometry.dimensioning.pull import Pull

BOUND = Handle("front", Pull("length", (1.0, 0.0)), "length")
DERIVED = Handle("front", None, "seat_height")
PRESS = Moment(Act.PRESS, (100.0, 50.0))


def move(x: float, y: float, *, free: bool = False) -> Moment:
    return Moment(Act.MOVE, (x, y), free)


def release(x: float, y: float) -> Moment:
    return Moment(Act.RELEASE, (x, y))


def test_a_still_press_is_a_click() -> None:
    hand = Hand(hold_value(BOUND, PRESS))
    assert hand.feed(move(102.0, 51.0)) is None
    assert hand.feed(release(102.0, 51.0)) == TypeInto(BOUND)
    assert not hand.busy


def test_a_drag_shifts_from_the_press_and_settles() -> None:
    hand = Hand(hold_value(BOUND, PRESS))
    assert hand.feed(move(110.0, 50.0)) == Shift(BOUND, (10.0, 0.0), free=False)
    assert hand.feed(move(90.0, 40.0, free=True)) == Shift(BOUND, (-10.0, -10.0), free=True)
    assert hand.feed(move(101.0, 50.0)) == Shift(BOUND, (1.0, 0.0), free=False)
    assert hand.feed(release(101.0, 50.0)) == Settle()
    assert not hand.busy


def test_escape_restores_a_drag() -> None:
    hand = Hand(hold_value(BOUND, PRESS))
    hand.feed(move(150.0, 50.0))
    assert hand.feed(Moment(Act.ESCAPE, (0.0, 0.0))) == Restore()
    assert not hand.busy


def test_escape_before_a_drag_does_nothing() -> None:
    hand = Hand(hold_value(BOUND, PRESS))
    assert hand.feed(Moment(Act.ESCAPE, (0.0, 0.0))) is None
    assert not hand.busy


@pytest.mark.parametrize("far", [0.0, 80.0])
def test_a_derived_dimension_is_never_shifted(far: float) -> None:
    hand = Hand(hold_value(DERIVED, PRESS))
    assert hand.feed(move(100.0 + far, 50.0)) is None
    assert hand.feed(release(100.0 + far, 50.0)) == TypeInto(DERIVED)


def test_a_click_on_the_drawing_picks_and_a_pull_does_not() -> None:
    hand = Hand(touch_part(PRESS))
    assert hand.feed(release(101.0, 50.0)) == PickAt((101.0, 50.0))
    hand = Hand(touch_part(PRESS))
    assert hand.feed(move(150.0, 50.0)) is None
    assert hand.feed(release(150.0, 50.0)) is None


def test_the_sheet_follows_move_by_move() -> None:
    hand = Hand(slide_sheet(PRESS))
    assert hand.feed(move(105.0, 50.0)) == Pan((5.0, 0.0))
    assert hand.feed(move(105.0, 60.0)) == Pan((0.0, 10.0))
    assert hand.feed(release(100.0, 60.0)) == Pan((-5.0, 0.0))
    assert not hand.busy


def test_a_click_on_a_seam_opens_the_joint_and_escape_does_not() -> None:
    for handle in (BOUND, None):
        hand = Hand(touch_joint("lap", handle, PRESS))
        assert hand.feed(move(102.0, 51.0)) is None
        assert hand.feed(release(102.0, 51.0)) == OpenJoint("lap")
        assert not hand.busy
    hand = Hand(touch_joint("lap", BOUND, PRESS))
    assert hand.feed(Moment(Act.ESCAPE, (0.0, 0.0))) is None
    assert not hand.busy


def test_a_pull_at_a_seam_pulls_the_edge_under_it_and_opens_nothing() -> None:
    hand = Hand(touch_joint("lap", BOUND, PRESS))
    assert hand.feed(move(110.0, 50.0)) == Shift(BOUND, (10.0, 0.0), free=False)
    assert hand.feed(release(110.0, 50.0)) == Settle()
    hand = Hand(touch_joint("lap", None, PRESS))
    assert hand.feed(move(110.0, 50.0)) is None
    assert hand.feed(release(110.0, 50.0)) is None
    assert not hand.busy
