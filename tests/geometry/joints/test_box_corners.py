"""Corners of boxes: spacing, angles and wasted wood by hand calculation; mm and degrees.

The corner: a side 12 thick along Y and an end piece 18 thick along X, both 100 high, their outer
arris on the Z axis.  Whatever the joint, side and end piece share the block 18 x 12 x 100 of the
corner: with no fit, what the one loses the other has.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.bench.bench import Bench
from geometry.bench.catalogue import default_spec
from geometry.cuts.cut import Blank
from geometry.design.joint import Joint
from geometry.design.part import Part, Shape
from geometry.joints.box_joint import FingerNumbers, box_joint, count_for
from geometry.joints.corner import Corner
from geometry.joints.dovetail import DovetailNumbers, dovetail
from geometry.joints.dovetail_spacing import LEAST_TAIL, Spacing
from geometry.joints.rebate_groove import TongueNumbers, rebate_groove
from geometry.primitives.frame import Frame
from geometry.solids.cutting import solid_of
from geometry.solids.measure import shared_volume
from shared.tolerances import SHARED_VOLUME
from tests.flat_faces import all_facing, flat_faces
from tests.judges.meeting import gapes
from tests.measures import minimum_gap, piece_count

HEIGHT, SIDE, END = 100.0, 12.0, 18.0
BLOCK = HEIGHT * SIDE * END


def corner(fit: float = 0.0) -> Corner:
    return Corner(
        arris=(0.0, 0.0, 0.0),
        along_side=(0.0, 1.0, 0.0),
        along_end=(1.0, 0.0, 0.0),
        height=HEIGHT,
        side_thickness=SIDE,
        end_thickness=END,
        fit=fit,
        groove=4.0,
        clear=20.0,
    )


def pieces(lap: float = 0.0, start: float = 0.0) -> tuple[Part, Part]:
    """A left side from ``lap`` to y = 300, and a front from x = ``start`` to 300."""
    side_frame = Frame.of((SIDE, 300.0, 0.0), (0, -1, 0), (0, 0, 1))
    end_frame = Frame.of((start, END, 0.0), (1, 0, 0), (0, 0, 1))
    side = Shape(Blank(300.0 - lap, HEIGHT, SIDE), ())
    end = Shape(Blank(300.0 - start, HEIGHT, END), ())
    return (
        Part("side", "Side", "side", "oak", side, side_frame),
        Part("end", "End", "end", "oak", end, end_frame),
    )


def joined(joint: Joint, side: Part, end: Part) -> tuple[Part, Part]:
    return (
        replace(side, shape=Shape(side.shape.blank, joint.cuts_first)),
        replace(end, shape=Shape(end.shape.blank, joint.cuts_second)),
    )


def lost(part: Part) -> float:
    """Wood taken off a blank, in mm³."""
    blank = part.shape.blank
    return blank.length * blank.width * blank.thickness - solid_of(part.shape).volume


def measured(joint: Joint) -> dict[str, float]:
    return {measure.name: measure.value for measure in joint.measures}


def sound(joint: Joint, side: Part, end: Part) -> None:
    """One piece each, nothing shared, every declared face met everywhere."""
    assert piece_count(side.shape) == piece_count(end.shape) == 1
    assert shared_volume(side, end) <= SHARED_VOLUME
    bench = Bench(default_spec(), (side, end), (joint,), ())
    assert gapes(bench, joint, least=1.0) == []


SPACING = Spacing(HEIGHT, END, 6.0, pin=6.0, half_pin=7.0)


def test_spacing_by_hand() -> None:
    """(100 - 2 x 7 - 3 x 6) / 4 = 17 at the end; 18 / 6 = 3 narrower at each side: 11."""
    tails = SPACING.tails(4)
    assert [(t.end_low, t.end_high) for t in tails] == [(7, 24), (30, 47), (53, 70), (76, 93)]
    assert [(t.base_low, t.base_high) for t in tails] == [(10, 21), (33, 44), (56, 67), (79, 90)]
    assert SPACING.room(4) == 11.0 - LEAST_TAIL


def test_through_dovetail_by_hand() -> None:
    """Between tails (6 + 12) / 2 x 18 = 162 mm² three times, at the edges (7 + 10) / 2 x 18 = 153
    twice: 792 x 12.  Sockets (17 + 11) / 2 x 18 = 252 mm² four times: 1008 x 12."""
    joint = dovetail("corner", *pieces(), DovetailNumbers(corner(), SPACING, 4, 0.0))
    side, end = joined(joint, *pieces())
    assert joint.kind == "through dovetail"
    assert lost(side) == pytest.approx(792.0 * 12.0, rel=1e-9)
    assert lost(end) == pytest.approx(1008.0 * 12.0, rel=1e-9)
    assert lost(side) + lost(end) == pytest.approx(BLOCK, rel=1e-9)
    found = measured(joint)
    assert (found["tail_width"], found["tail_base"]) == pytest.approx((17.0, 11.0))
    assert (found["pin_width"], found["pin_base"]) == pytest.approx((6.0, 12.0))
    sound(joint, side, end)


def test_half_blind_dovetail_by_hand() -> None:
    """A lap of 4 leaves tails 14 long: 14 / 6 = 2.333 narrower at each side.

    Sockets (17 + 12.333) / 2 x 14 x 12 four times; all of the front's outside stays.
    """
    spacing = replace(SPACING, length=14.0)
    joint = dovetail("corner", *pieces(4.0), DovetailNumbers(corner(), spacing, 4, 4.0))
    side, end = joined(joint, *pieces(4.0))
    assert joint.kind == "half-blind dovetail"
    assert lost(end) == pytest.approx(4.0 * (17.0 + 17.0 - 28.0 / 6.0) / 2.0 * 14.0 * 12.0)
    assert lost(side) + lost(end) == pytest.approx(14.0 * SIDE * HEIGHT, rel=1e-9)
    (outside,) = all_facing(flat_faces(end), (0.0, -1.0, 0.0))
    assert outside.area == pytest.approx(300.0 * HEIGHT)
    assert measured(joint)["lap"] == 4.0
    sound(joint, side, end)


@pytest.mark.parametrize(("slope", "angle"), [(6.0, 9.4623), (8.0, 7.1250)])
def test_slopes_measured_on_the_wood(slope: float, angle: float) -> None:
    """atan(1/6) = 9.4623 and atan(1/8) = 7.1250 degrees, from a pocket calculator."""
    spacing = replace(SPACING, slope=slope)
    joint = dovetail("corner", *pieces(), DovetailNumbers(corner(), spacing, 3, 0.0))
    assert measured(joint)["slope"] == pytest.approx(angle, abs=5e-5)
    for part in joined(joint, *pieces()):
        flanks = [
            face
            for face in flat_faces(part)
            if abs(face.normal[0]) < 1e-9 and 0.01 < abs(face.normal[1]) < 0.9
        ]
        assert len(flanks) == 6  # two of each tail
        for face in flanks:
            slant = math.degrees(math.asin(abs(float(face.normal[1]))))
            assert slant == pytest.approx(angle, abs=5e-4)


def test_the_fit_is_square_to_the_flanks() -> None:
    """0.3 in all: each flank stands 0.15 off, measured square; so the pieces are that far apart
    once the side is lifted off its shoulders and out of the sockets' floors."""
    joint = dovetail("corner", *pieces(), DovetailNumbers(corner(0.3), SPACING, 4, 0.0))
    side, end = joined(joint, *pieces())
    frame = side.frame
    x, y, z = frame.origin
    off = replace(side, frame=replace(frame, origin=(x - 0.5, y, z)))
    # The shoulders still touch, so the flanks alone are looked at: planes of both pieces.
    flank = math.cos(math.atan(1.0 / 6.0))
    tails = {round(f.offset, 6) for f in flat_faces(off) if abs(f.normal[2] - flank) < 1e-6}
    pins = {round(-f.offset, 6) for f in flat_faces(end) if abs(f.normal[2] + flank) < 1e-6}
    assert len(tails) == len(pins) == 4
    for tail, pin in zip(sorted(tails), sorted(pins), strict=True):
        assert pin - tail == pytest.approx(0.15, abs=1e-5)
    sound(joint, side, end)


def test_box_joint_by_hand() -> None:
    """Five fingers: nine spaces of 100 / 9; the side loses four of them, the front five."""
    joint = box_joint("corner", *pieces(), FingerNumbers(corner(), 5))
    side, end = joined(joint, *pieces())
    assert lost(side) == pytest.approx(BLOCK * 4.0 / 9.0, rel=1e-9)
    assert lost(end) == pytest.approx(BLOCK * 5.0 / 9.0, rel=1e-9)
    sound(joint, side, end)
    eased = box_joint("corner", *pieces(), FingerNumbers(corner(0.2), 5))
    found = measured(eased)
    assert found["finger_width"] == pytest.approx(100.0 / 9.0 - 0.1)
    assert found["notch_width"] - found["finger_width"] == pytest.approx(0.2)
    sound(eased, *joined(eased, *pieces()))


def test_rebate_and_groove_by_hand() -> None:
    """Tongue 6 x 5, flush inside: the groove is 6 wide and 5 deep, 12 from the side's end."""
    joint = rebate_groove("corner", *pieces(start=7.0), TongueNumbers(corner(), 6.0, 5.0))
    side, end = joined(joint, *pieces(start=7.0))
    assert lost(side) == pytest.approx(6.0 * 5.0 * HEIGHT, rel=1e-9)
    assert lost(end) == pytest.approx(12.0 * 5.0 * HEIGHT, rel=1e-9)
    assert measured(joint)["groove_from_end"] == pytest.approx(12.0)
    sound(joint, side, end)
    eased = rebate_groove("corner", *pieces(start=7.0), TongueNumbers(corner(0.2), 6.0, 5.0))
    assert measured(eased)["groove_width"] == pytest.approx(6.2)
    loose = joined(eased, *pieces(start=7.0))
    assert minimum_gap(*loose, 1.0) == pytest.approx(0.0, abs=1e-6)  # shoulder and tongue's end
    sound(eased, *loose)


@given(
    height=st.floats(30.0, 300.0),
    slope=st.sampled_from((6.0, 8.0)),
    pin=st.floats(2.0, 20.0),
    half_pin=st.floats(2.0, 12.0),
    length=st.floats(4.0, 20.0),
    width=st.floats(3.0, 150.0),
)
def test_spacing_fills_the_height(
    height: float, slope: float, pin: float, half_pin: float, length: float, width: float
) -> None:
    """Half pins, tails and pins add up; no tail is under the least where one tail is not."""
    spacing = Spacing(height, length, slope, pin, half_pin)
    count = spacing.count_for(width)
    tails = spacing.tails(count)
    assert tails[0].end_low == pytest.approx(half_pin)
    assert tails[-1].end_high == pytest.approx(height - half_pin)
    assert sum(t.end_high - t.end_low for t in tails) + (count - 1) * pin == pytest.approx(
        height - 2.0 * half_pin
    )
    if spacing.room(1) >= 0.0:
        assert min(t.base_high - t.base_low for t in tails) >= LEAST_TAIL - 1e-6
        off = abs(spacing.tail_width(count) - width)
        for other in range(1, 30):
            nearer = abs(spacing.tail_width(other) - width) < off - 1e-9
            assert not nearer or spacing.room(other) < 0.0


@given(height=st.floats(10.0, 300.0), width=st.floats(3.0, 150.0))
def test_fingers_are_never_too_thin_to_saw(height: float, width: float) -> None:
    spaces = 2 * count_for(height, width) - 1
    assert spaces >= 3
    assert spaces == 3 or height / spaces >= 3.0
    off = abs(height / spaces - width)
    for other in range(3, 201, 2):
        assert abs(height / other - width) >= off - 1e-9 or height / other < 3.0
