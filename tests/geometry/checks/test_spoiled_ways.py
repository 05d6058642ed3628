"""Sound samples in a brief that they do not suit: heels, back rests, doors and stairs, by hand."""

from __future__ import annotations

import pytest

from geometry.design.brief import NOBODY, PERSON, SHORT_SIT, WEAK_KNEES, Brief
from geometry.design.finding import Level
from geometry.solids.cutting import placed
from tests.samples import found, mended, spoiled

WEAK = Brief(who=PERSON, lower_leg=430, upper_leg=480, use=WEAK_KNEES)
SHORT = Brief(who=PERSON, lower_leg=430, upper_leg=480, use=SHORT_SIT)


def test_a_plinth_flush_in_front_leaves_no_room_for_heels() -> None:
    """Set in by 20, of the 75 that heels want; nobody in particular wants none."""
    bench = spoiled("bakehouse", {"inset_front": 20.0}, brief=WEAK)
    (one,) = found(bench, "heel_room")
    assert one.level is Level.THINK_AGAIN
    assert one.parts == ("plinth_front",)
    assert (one.amount, one.limit) == pytest.approx((20.0, 75.0))
    assert one.place == pytest.approx((730.0, -400.0, 0.0))
    assert not found(mended(bench, one), "heel_room")
    assert found(spoiled("bakehouse", {}, brief=SHORT), "heel_room")[0].level is Level.GOOD_TO_KNOW
    assert not found(spoiled("bakehouse", {}, brief=Brief(who=NOBODY, persons=2)), "heel_room")


def test_a_seat_is_as_deep_as_it_is_before_its_back_rest() -> None:
    """The bowling green's posts stand with their fronts 86 in from the back edge of a seat 470
    deep: 384 to sit on, and an upper leg of 480 takes 480 - 50 = 430.  520 deep it has 434."""
    assert not found(spoiled("bowling_green", {}, brief=SHORT), "seat_depth")
    # Its corner blocks would be in the way of a bench as shallow as advised.
    bench = spoiled("bowling_green", {"depth": 520.0, "corner_blocks": "without"}, brief=SHORT)
    (one,) = found(bench, "seat_depth")
    front = max(float(placed(part).low[1]) for part in bench.parts if part.kind == "post")
    assert one.amount == pytest.approx(520.0 - 86.0)
    assert front == pytest.approx(-86.0)
    assert one.limit == pytest.approx(430.0)
    assert not found(mended(bench, one), "seat_depth")


def test_a_bench_too_long_for_the_stair_is_shortened_as_far_as_it_must() -> None:
    air = Brief(stair_width=700, landing_depth=700, stair_height=1500)
    bench = spoiled("cloakroom", {}, brief=air)
    (one,) = found(bench, "past_stair")
    assert one.estimate
    assert one.mend is not None
    cured = mended(bench, one)
    assert not found(cured, "past_stair")
    longer = {"length": cured.spec.number("length") + 5.0}
    assert found(spoiled("cloakroom", longer, brief=air), "past_stair")


def test_a_stair_whose_headroom_is_not_said_has_that_of_the_limits() -> None:
    """The reading room's bench, 2380 long, cannot stand on its end under 2032."""
    unsaid = Brief(stair_width=700, landing_depth=700)
    assert found(spoiled("reading_room", {}, brief=unsaid), "past_stair")
    high = (("headroom", 2600.0),)
    assert not found(spoiled("reading_room", {}, brief=unsaid, limits=high), "past_stair")


def test_a_bench_too_high_for_the_door_is_lowered() -> None:
    """The cloakroom's, 440 high and 390 deep, through 430 x 400: 10 too high, and 1 to spare."""
    bench = spoiled("cloakroom", {}, brief=Brief(door_width=430, door_height=400))
    (one,) = found(bench, "past_door")
    assert one.amount == pytest.approx(440.0, abs=0.01)
    assert one.mend is not None
    assert dict(one.mend.values)["base_height"] == pytest.approx(79.0, abs=0.01)
    assert not found(mended(bench, one), "past_door")
