"""Wood between a cavity and what else is cut, worked by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.cuts.bore import Bore
from geometry.cuts.cut import Blank
from geometry.cuts.groove import Groove
from geometry.cuts.saw import SawCut
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.part import Shape
from geometry.primitives.frame import unit
from geometry.solids.nearness import is_in_wood, nearby, walls

BLANK = Blank(200.0, 100.0, 40.0)
BORE = Bore(100.0, 50.0, 10.0, 25.0)


def test_faces_that_a_blind_bore_is_not_open_at() -> None:
    """15 mm under it; 45 beside it."""
    found = walls(Shape(BLANK, (BORE,)), BORE, 46.0)
    assert [(one.title, round(one.distance, 6)) for one in found] == [
        ("reverse", 15.0),
        ("face edge", 45.0),
        ("far edge", 45.0),
    ]
    assert found[0].place == pytest.approx((100.0, 50.0, 32.5), abs=1e-6)


def test_a_groove_beside_a_bore_and_one_across_it() -> None:
    beside = Groove(0.0, 200.0, 57.0, 63.0, 8.0)
    (near,) = nearby(Shape(BLANK, (BORE, beside)), BORE, 3.0)
    assert near.distance == pytest.approx(2.0, abs=0.011)  # the circle's chords
    assert near.place[:2] == pytest.approx((100.0, 56.0), abs=0.3)
    across = Groove(0.0, 200.0, 52.0, 58.0, 8.0)
    (met,) = nearby(Shape(BLANK, (BORE, across)), BORE, 3.0)
    assert met.distance == 0.0


def test_a_bevel_is_measured_square_to_it() -> None:
    """Through (115, 0, 40) at 45 degrees: the bore's floor at x = 105, z = 25 lies 25 / √2 off."""
    outward = (1.0 / math.sqrt(2.0), 0.0, 1.0 / math.sqrt(2.0))
    bevel = SawCut("bevel", (115.0, 0.0, 40.0), outward)
    found = nearby(Shape(BLANK, (BORE, bevel)), BORE, 20.0)
    (near,) = [one for one in found if one.cut == bevel]
    assert near.distance == pytest.approx(25.0 / math.sqrt(2.0), abs=0.011)


def test_what_goes_off_with_the_waste_is_not_measured() -> None:
    off = SawCut("crosscut", (90.0, 0.0, 0.0), (1.0, 0.0, 0.0))
    assert nearby(Shape(BLANK, (BORE, off)), BORE, 20.0) == ()


def test_a_mortise_beyond_the_piece_is_not_measured() -> None:
    """Of a board that is longer than the panel it is sawn to: 20 wide round x = 215 of 200 lies
    beyond it, round 205 its end is sawn through it."""
    shape = Shape(BLANK, ())
    beyond = SlotMortise((215.0, 0.0, 20.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), 20.0, 8.0, 25.0)
    assert nearby(shape, beyond, 3.0) == ()
    assert not is_in_wood(shape, beyond)
    through = replace(beyond, middle=(205.0, 0.0, 20.0))
    (near,) = nearby(shape, through, 3.0)
    assert (near.title, near.distance) == ("right end", 0.0)
    assert is_in_wood(shape, through)


def test_two_cuts_may_take_a_mortise_away_between_them() -> None:
    """Two planes that meet in an edge at x = 160, z = 20, a tenth off level: each takes somewhat
    more than half of the mortise at x 170 to 190, both take all of it."""
    mortise = SlotMortise((180.0, 0.0, 20.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), 20.0, 8.0, 25.0)
    upper, lower = (
        SawCut("bevel", (160.0, 0.0, 20.0), unit((0.1, 0.0, way))) for way in (1.0, -1.0)
    )
    for one in (upper, lower):
        assert nearby(Shape(BLANK, (one,)), mortise, 3.0)[0].distance == 0.0
        assert is_in_wood(Shape(BLANK, (one,)), mortise)
    assert not is_in_wood(Shape(BLANK, (upper, lower)), mortise)
