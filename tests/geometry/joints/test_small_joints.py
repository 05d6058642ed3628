"""Bottoms in grooves, buttons, screws and wedges: what each cut takes, worked by hand; mm."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.cuts.cut import Blank, Cut
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.joints.button import ButtonNumbers, button_in, button_under
from geometry.joints.grooved_bottom import BottomNumbers, grooved_bottom
from geometry.joints.rebated_bottom import RebateNumbers, rebated_bottom
from geometry.joints.round_tenon import RoundTenonNumbers
from geometry.joints.screwed_block import ScrewedBlock, screwed_block
from geometry.joints.slotted_screw import SlottedScrew, slotted_screw
from geometry.primitives.frame import Frame, Vec3
from geometry.solids.cutting import placed, solid_of


def piece(name: str, size: Vec3, frame: Frame) -> Part:
    return Part(name, name, name, "white oak", Shape(Blank(*size), ()), frame)


def taken(part: Part, cuts: tuple[Cut, ...]) -> float:
    blank = part.shape.blank
    cut = replace(part, shape=Shape(blank, cuts))
    return blank.length * blank.width * blank.thickness - solid_of(cut.shape).volume


def measured(joint: Joint) -> dict[str, float]:
    return {measure.name: measure.value for measure in joint.measures}


# A front of 400 x 90 x 14: x along X, y up, its face side in Y = 14 looks in, to the back.
FRONT = piece("front", (400.0, 90.0, 14.0), Frame.of((0.0, 14.0, 0.0), (1, 0, 0), (0, 0, 1)))
# The inside corners are 12 mm from its ends, behind sides of 12 mm.
START: Vec3 = (12.0, 14.0, 0.0)
END: Vec3 = (388.0, 14.0, 0.0)
OUT: Vec3 = (0.0, -1.0, 0.0)
BOTTOM = piece("bottom", (386.0, 300.0, 6.0), Frame.of((7.0, 9.0, 10.0), (1, 0, 0), (0, 1, 0)))


def test_the_groove_of_a_bottom_by_hand() -> None:
    """376 between the corners and 6 past each: 388 long, 6.2 wide for a bottom of 6, 6 deep."""
    at = BottomNumbers(
        START, END, OUT, up=10.0, thickness=6.0, depth=6.0, fit=1.0, ease=0.2, notch=0
    )
    joint = grooved_bottom("groove", FRONT, BOTTOM, at)
    assert taken(FRONT, joint.cuts_first) == pytest.approx(388.0 * 6.2 * 6.0)
    found = measured(joint)
    assert (found["groove_up"], found["groove_width"], found["groove_length"]) == (10.0, 6.2, 388.0)
    # the bottom lies on the groove's lower side, and its edge stands half of the fit off the floor
    under, beside = joint.contacts
    assert {z for _, _, z in under.corners} == {10.0}
    assert {y for _, y, _ in beside.corners} == {8.0}
    assert beside.gap == 0.5


def test_the_rebate_of_a_bottom_by_hand() -> None:
    """376 and 6 past each corner, as high as the bottom is thick, 6 deep."""
    at = RebateNumbers(START, END, OUT, thickness=6.0, depth=6.0, fit=1.0)
    joint = rebated_bottom("rebate", FRONT, BOTTOM, at)
    assert taken(FRONT, joint.cuts_first) == pytest.approx(388.0 * 6.0 * 6.0)
    (cut,) = joint.cuts_first
    assert (cut.x_low, cut.x_high) == (6.0, 394.0)


@pytest.mark.parametrize("slope", [0.0, 0.1])
def test_the_mortise_of_a_button_by_hand(slope: float) -> None:
    """Room for a tongue of 9 with 0.6 of play, 30 wide and 5 of travel along, in 10 and 3 more:
    35 x 9.6 x 13, on a slanting inside as well, as it is sunk level."""
    # an apron of 300 x 60 x 30, its inside in Y = 0 toward the maker
    apron = piece("apron", (300.0, 60.0, 30.0), Frame.of((0, 0, 100), (1, 0, 0), (0, 0, -1)))
    if slope:
        wide = (1.0 + slope**2) ** 0.5
        apron = replace(apron, frame=Frame.of((0, 0, 100), (1, 0, 0), (0, slope / wide, -1 / wide)))
    at = ButtonNumbers(
        arris=(150.0, 0.0, 100.0),
        along=(1.0, 0.0, 0.0),
        inward=(0.0, -1.0, 0.0),
        slope=slope,
        land=10.0,
        tongue=9.0,
        engaged=10.0,
        stand=3.0,
        width=30.0,
        body=25.0,
        room_along=5.0,
        room_in=3.0,
        ease=0.6,
        shank=4.2,
        pilot=3.3,
        bite=15.0,
    )
    button = piece("button", (38.0, 30.0, 19.0), Frame.of((135, -28, 100), (0, 1, 0), (1, 0, 0)))
    joint = button_in("mortise", button, apron, at)
    assert taken(apron, joint.cuts_second) == pytest.approx(35.0 * 9.6 * 13.0)
    found = measured(joint)
    assert (found["mortise_down"], found["mortise_depth"], found["mortise_length"]) == (10, 13, 35)
    # the tongue's upper face bears on the mortise's roof over the 10 mm that it stands in
    (roof,) = joint.contacts
    assert {z for _, _, z in roof.corners} == {90.0}
    seat = piece("seat", (300.0, 200.0, 20.0), Frame.of((0, 30, 120), (1, 0, 0), (0, -1, 0)))
    screwed = button_under("screw", button, seat, at)
    # the screw stands in the middle of the body: 3 + 25 / 2 inside the apron
    (bore,) = screwed.cuts_second
    assert (bore.x, bore.y) == pytest.approx((150.0, 45.5))
    assert measured(screwed)["screw_length"] == 34.0


def test_a_slot_is_as_long_as_the_board_moves_either_way() -> None:
    """2 mm to shrink and 1 to swell, 0.6 of play, a shank of 4.2: 3.6 of travel and 4.8 over it.
    The screw stands 2.3 + 2.4 from the end that the board shrinks toward."""
    rail = piece("rail", (300.0, 60.0, 20.0), Frame.of((0, 0, 100), (1, 0, 0), (0, 0, -1)))
    seat = piece("seat", (300.0, 200.0, 20.0), Frame.of((0, 100, 120), (1, 0, 0), (0, -1, 0)))
    at = SlottedScrew(
        screw=(150.0, 10.0, 100.0),
        away=(0.0, 1.0, 0.0),
        shrink=2.0,
        swell=1.0,
        travel=3.0,
        shank=4.2,
        pilot=3.3,
        head=8.4,
        ease=0.6,
        land=20.0,
        depth=60.0,
        bite=12.0,
        bearing=(),
    )
    joint = slotted_screw("screw", rail, seat, at)
    found = measured(joint)
    assert (found["slot_length"], found["slot_width"]) == pytest.approx((8.4, 4.8))
    assert (found["travel"], found["screw_from_end"]) == pytest.approx((3.0, 4.7))
    assert found["screw_length"] == 32.0
    cut = replace(rail, shape=Shape(rail.shape.blank, joint.cuts_first))
    corners = placed(cut).vertices
    mouth = corners[(corners[:, 2] > 99.9) & (abs(corners[:, 0] - 150.0) < 4.3)]
    assert mouth[:, 1].min() == pytest.approx(10.0 - 2.3 - 2.4, abs=0.01)
    assert mouth[:, 1].max() == pytest.approx(10.0 + 1.3 + 2.4, abs=0.01)


def test_a_wedge_is_as_wide_as_its_tenon_is_a_wedges_thickness_off_the_middle() -> None:
    """A tenon of 25 and a wedge of 5: the chord 5 mm off the middle, 2 x sqrt(12.5² - 5²)."""
    at = RoundTenonNumbers(
        middle=(0.0, 0.0, 0.0),
        down=(0.0, 0.0, -1.0),
        steepest=(1.0, 0.0, 0.0),
        depth=20.0,
        diameter=25.0,
        fit=0.2,
        wedge=5.0,
        slot=15.0,
        grain=(1.0, 0.0, 0.0),
    )
    assert at.wedge_width == pytest.approx(2.0 * 131.25**0.5)


def test_a_screws_hole_comes_out_of_a_slanting_back_whole() -> None:
    """A block of 28 at 45 degrees on the piece: 39.6 mm of it on the screw's own line, 12 of them
    under the head; the back cuts hole and counterbore aslant through their middle, so as much is
    gone as of straight ones.  Circles here have corners within a tenth of a millimetre."""
    half = 0.5**0.5
    block = piece("block", (120.0, 40.0, 28.0), Frame.of((0, 0, 40), (half, half, 0), (0, 0, -1)))
    holder = piece("holder", (300.0, 60.0, 20.0), Frame.of((-50, -20, 50), (1, 0, 0), (0, 0, -1)))
    # its near face runs through the arris in (0, 0); the screw leaves the end in Y = 0
    mouth = block.frame.to_bench((14.0, 20.0, 14.0))
    into = (0.0, 1.0, 0.0)
    face = tuple((x, mouth[1], z) for x, z in ((0, 0), (40, 0), (40, 40), (0, 40)))
    at = ScrewedBlock(
        faces=(face,),
        into=into,
        toward=(1.0, 0.0, 0.0),
        screws=(mouth,),
        downs=(20.0,),
        from_edge=20.0,
        hole=4.8,
        pilot=3.3,
        head=8.4,
        land=12.0,
        through=14.0 / half,
        bite=14.0,
    )
    joint = screwed_block("block", block, holder, at)
    sawn, *holes = joint.cuts_first
    whole, bored = (taken(block, (sawn, *cuts)) for cuts in ((), tuple(holes)))
    by_hand = math.pi / 4.0 * (4.8**2 * 12.0 + 8.4**2 * (14.0 / half - 12.0))
    assert bored - whole == pytest.approx(by_hand, rel=0.04)
