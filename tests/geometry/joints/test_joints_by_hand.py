"""Joints of two bare pieces, worked by hand; mm and degrees.

Pieces stand in the bench frame.  Whatever the numbers, after a joint the two share no volume.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.cuts.cut import Blank
from geometry.design.joint import Joint, Measure
from geometry.design.part import Part, Shape
from geometry.joints.angled_lap import LapNumbers, angled_lap
from geometry.joints.bridle import BridleNumbers, bridle
from geometry.joints.mitre import mitre
from geometry.joints.stopped_housing import HousingNumbers, stopped_housing
from geometry.primitives.frame import Frame, Vec3
from geometry.solids.cutting import solid_of
from geometry.solids.measure import shared_volume
from shared.tolerances import CHORD_ERROR, SHARED_VOLUME
from tests.measures import minimum_gap


def piece(name: str, size: Vec3, frame: Frame) -> Part:
    return Part(name, name, name, "oak", Shape(Blank(*size), ()), frame)


def joined(joint: Joint, first: Part, second: Part) -> tuple[Part, Part]:
    return (
        replace(first, shape=Shape(first.shape.blank, joint.cuts_first)),
        replace(second, shape=Shape(second.shape.blank, joint.cuts_second)),
    )


def measured(joint: Joint) -> dict[str, float]:
    return {measure.name: measure.value for measure in joint.measures}


def taken(part: Part) -> float:
    blank = part.shape.blank
    return blank.length * blank.width * blank.thickness - solid_of(part.shape).volume


def crossing_pieces(angle_deg: float) -> tuple[Part, Part]:
    """Two pieces of 600 x 60 x 40 on edge; middles cross in (0, 0), top edges at z = 100."""
    made = []
    for name, turn in (("lower", 0.0), ("upper", math.radians(angle_deg))):
        along = (math.cos(turn), math.sin(turn), 0.0)
        across = np.cross(along, (0.0, 0.0, -1.0))
        origin = np.array((0.0, 0.0, 100.0)) - 300.0 * np.array(along) - 20.0 * across
        frame = Frame.of((origin[0], origin[1], origin[2]), along, (0.0, 0.0, -1.0))
        made.append(piece(name, (600.0, 60.0, 40.0), frame))
    return made[0], made[1]


@pytest.mark.parametrize(("angle_deg", "span"), [(90.0, 40.2), (30.0, 80.4), (150.0, 80.4)])
def test_lap_by_hand(angle_deg: float, span: float) -> None:
    """Along the piece the notch is (40 + 0.2) / sin(angle): at 30 deg twice its width.  Both give
    up span x 40 x 30."""
    lower, upper = crossing_pieces(angle_deg)
    joint = angled_lap("lap", lower, upper, LapNumbers((0.0, 0.0, 100.0), 60.0, 40.0, 0.2))
    found = measured(joint)
    assert found["notch_span"] == pytest.approx(span)
    assert found["lap_angle"] == pytest.approx(min(angle_deg, 180.0 - angle_deg))
    assert found["lap_depth"] == 30.0
    assert (found["lap_place_first"], found["lap_place_second"]) == pytest.approx((300.0, 300.0))
    for part in joined(joint, lower, upper):
        assert taken(part) == pytest.approx(span * 40.0 * 30.0)


@given(st.floats(15.0, 165.0), st.floats(0.0, 1.0))
def test_lapped_pieces_lie_in_one_another(angle_deg: float, fit: float) -> None:
    lower, upper = crossing_pieces(angle_deg)
    joint = angled_lap("lap", lower, upper, LapNumbers((0.0, 0.0, 100.0), 60.0, 40.0, fit))
    first, second = joined(joint, lower, upper)
    assert shared_volume(lower, upper) > 1e4
    assert shared_volume(first, second) <= SHARED_VOLUME
    assert minimum_gap(first, second, 5.0) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize(("thick", "tilt"), [(20.0, 45.0), (30.0, 33.690)])
def test_mitre_of_boards_by_hand(thick: float, tilt: float) -> None:
    """A lying board of 20 meets a standing one of 20 at 45 and 45; one of 30 at atan(30 / 20) =
    56.310 from square in the lying board, and atan(20 / 30) = 33.690 in the standing one."""
    lying = piece("lying", (300.0, 100.0, 20.0), Frame.of((0, 0, 80), (1, 0, 0), (0, 1, 0)))
    upright = Frame.of((thick, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
    standing = piece("standing", (100.0, 100.0, thick), upright)
    corners = ((0.0, 0.0, 100.0), (0.0, 100.0, 100.0), (thick, 100.0, 80.0), (thick, 0.0, 80.0))
    joint = mitre("mitre", lying, standing, corners)
    found = measured(joint)
    assert found["tilt_second"] == pytest.approx(tilt, abs=5e-4)
    assert found["tilt_first"] == pytest.approx(90.0 - tilt, abs=5e-4)
    assert found["mitre_width"] == pytest.approx(math.hypot(20.0, thick))
    first, second = joined(joint, lying, standing)
    assert taken(first) == pytest.approx(thick * 20.0 / 2.0 * 100.0)
    assert taken(second) == pytest.approx(thick * 20.0 / 2.0 * 100.0)
    assert shared_volume(first, second) <= SHARED_VOLUME


def test_the_width_of_a_mitre_is_square_to_its_arrises() -> None:
    """Two boards of 24 that flare 20 from top to bottom in front: 24 times the root of 2 all the
    same, though the front of the mitre, which slants, is longer."""
    lying = piece("lying", (300.0, 120.0, 24.0), Frame.of((0, 0, 76), (1, 0, 0), (0, 1, 0)))
    upright = Frame.of((24.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
    standing = piece("standing", (100.0, 120.0, 24.0), upright)
    corners = ((0.0, 0.0, 100.0), (0.0, 120.0, 100.0), (24.0, 100.0, 76.0), (24.0, 0.0, 76.0))
    other = (corners[1], corners[0], corners[3], corners[2])
    for way in (corners, other):
        joint = mitre("mitre", lying, standing, way)
        assert measured(joint)["mitre_width"] == pytest.approx(24.0 * math.sqrt(2.0))


def test_upright_bridle_by_hand() -> None:
    """No splay: tenon 80 long, 60 high and 40 / 3 thick; the cheeks take 80 x 60 x 2 x 40 / 3, and
    the slot 80 x 60 x (40 / 3 + 0.2)."""
    stretcher = piece(
        "stretcher", (500.0, 60.0, 40.0), Frame.of((0, -20, 60), (1, 0, 0), (0, 0, -1))
    )
    leg = piece("leg", (200.0, 80.0, 40.0), Frame.of((500, -20, 60), (0, 0, -1), (-1, 0, 0)))
    numbers = BridleNumbers(
        tip=(500.0, 0.0, 60.0),
        outward=(1.0, 0.0, 0.0),
        splay_deg=0.0,
        height=60.0,
        leg_width=80.0,
        thickness=40.0,
        tenon=40.0 / 3.0,
        fit=0.2,
    )
    joint = bridle("bridle", stretcher, leg, numbers)
    found = measured(joint)
    assert found["tenon_length"] == pytest.approx(80.0)
    assert found["mortise_depth"] == pytest.approx(60.0)
    assert found["mortise_width"] == pytest.approx(40.0 / 3.0 + 0.2)
    assert found["cheek"] == pytest.approx((40.0 - 40.0 / 3.0 - 0.2) / 2.0)
    first, second = joined(joint, stretcher, leg)
    assert taken(first) == pytest.approx(80.0 * 60.0 * 80.0 / 3.0)
    assert taken(second) == pytest.approx(80.0 * 60.0 * (40.0 / 3.0 + 0.2))
    assert shared_volume(first, second) <= SHARED_VOLUME


def housed(cover: float, fit: float) -> tuple[Joint, Part, Part]:
    """An upright of 20, 300 deep, in a board below whose inside face is at 20; cutter 12 wide."""
    board = piece("board", (500.0, 350.0, 20.0), Frame.of((0, 0, 20), (1, 0, 0), (0, -1, 0)))
    upright = piece("upright", (207.0, 300.0, 20.0), Frame.of((200, 0, 13), (0, 0, 1), (0, -1, 0)))
    numbers = HousingNumbers(
        low=200.0,
        high=220.0,
        across=(1.0, 0.0, 0.0),
        back=0.0,
        front=300.0,
        inside=20.0,
        into=(0.0, 0.0, -1.0),
        depth=7.0,
        cover=cover,
        cutter_radius=6.0,
        fit=fit,
        board_front=(350.0, 350.0, 350.0),
        inside_front=350.0,
        sides=("left", "right"),
        place=Measure("from_left_end", 200.0, "mm", "left face from the left end"),
    )
    return stopped_housing("housing", board, upright, numbers), board, upright


def test_stopped_housing_by_hand() -> None:
    """It stops 4 behind the upright's front: 296 from the back, 54 from the board's front.  The
    round begins at 290; the tongue ends 0.1 before it, so the notch is 10.1 x 7."""
    joint, board, upright = housed(4.0, 0.2)
    found = measured(joint)
    assert found["stop_from_back"] == pytest.approx(296.0)
    assert found["stop_from_front"] == pytest.approx(54.0)
    assert found["housing_width"] == pytest.approx(20.2)
    assert found["notch_length"] == pytest.approx(10.1)
    first, second = joined(joint, board, upright)
    assert taken(second) == pytest.approx(10.1 * 7.0 * 20.0)
    flat = 7.0 * (20.2 * 296.0 - 2.0 * 36.0 * (1.0 - math.pi / 4.0))
    assert taken(first) == pytest.approx(flat, abs=2.0 / 3.0 * CHORD_ERROR * 19.0 * 7.0)
    assert shared_volume(first, second) <= SHARED_VOLUME


@given(st.floats(0.0, 40.0), st.floats(0.0, 2.0))
def test_housed_pieces_lie_in_one_another(cover: float, fit: float) -> None:
    joint, board, upright = housed(cover, fit)
    first, second = joined(joint, board, upright)
    assert shared_volume(first, second) <= SHARED_VOLUME
    assert minimum_gap(first, second, 5.0) == pytest.approx(0.0, abs=1e-6)
