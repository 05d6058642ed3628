"""What each cut takes from a board of 400 x 100 x 20, worked by hand; mm, mm³."""

from __future__ import annotations

import math

import pytest

from geometry.cuts.chamfer import Chamfer, ChamferEnd
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.hinge_mortise import HingeMortise
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.lap import AngledLap
from geometry.cuts.notch import Notch
from geometry.cuts.open_mortise import OpenMortise
from geometry.cuts.overrun import OVERRUN, past
from geometry.cuts.rebate import Rebate
from geometry.cuts.run_out import RunOut
from geometry.cuts.saw import SawCut
from geometry.cuts.stopped_bevel import StoppedBevel
from geometry.cuts.tenon import Tenon
from geometry.design.part import Shape
from geometry.solids.cutting import solid_of
from shared.tolerances import CHORD_ERROR
from tests.measures import piece_count

BOARD = Blank(400.0, 100.0, 20.0)
WHOLE = 800_000.0
DIAGONAL = math.sqrt(0.5)

WASTES: dict[str, tuple[Cut, float]] = {
    # 30 from the end, square: 30 x 100 x 20
    "crosscut": (SawCut("cut", (370.0, 0.0, 0.0), (1.0, 0.0, 0.0)), 60_000.0),
    # a mitre from the far face's arris at 400 to 380 on the face side: 20 x 20 / 2 x 100
    "mitre": (SawCut("mitre", (400.0, 0.0, 20.0), (DIAGONAL, 0.0, -DIAGONAL)), 20_000.0),
    # a bevel 5 deep in the board's width over its thickness, on 400: 5 x 20 / 2 x 400
    "bevel": (
        SawCut("bevel", (0.0, 100.0, 0.0), (0.0, 20.0 / math.hypot(20, 5), 5 / math.hypot(20, 5))),
        20_000.0,
    ),
    # a taper from nothing to 40 over 400: 400 x 40 / 2 x 20
    "taper": (
        SawCut("taper", (0.0, 100.0, 0.0), (0.1 / math.hypot(1, 0.1), 1 / math.hypot(1, 0.1), 0)),
        160_000.0,
    ),
    # 20.2 x 80 with two rounds of radius 6 at the stop, 7 deep
    "stopped housing": (
        StoppedHousing(100.0, 120.2, 80.0, 7.0, 6.0),
        7.0 * (20.2 * 80.0 - 2.0 * 36.0 * (1.0 - math.pi / 4.0)),
    ),
    # the same from the other face
    "housing in the reverse": (
        StoppedHousing(100.0, 120.2, 80.0, 7.0, 6.0, Face.REVERSE),
        7.0 * (20.2 * 80.0 - 2.0 * 36.0 * (1.0 - math.pi / 4.0)),
    ),
    # a cutter as wide as the housing leaves a half round: 12 x (80 - 6) + pi 36 / 2
    "housing of one pass": (
        StoppedHousing(100.0, 112.0, 80.0, 7.0, 6.0),
        7.0 * (12.0 * 74.0 + math.pi * 18.0),
    ),
    # 6 wide, 8 deep, all along
    "rebate": (Rebate(0.0, 400.0, 0.0, 6.0, 8.0), 6.0 * 8.0 * 400.0),
    "stopped rebate": (Rebate(50.0, 350.0, 0.0, 6.0, 8.0), 6.0 * 8.0 * 300.0),
    "notch in a corner": (Notch(0.0, 7.0, 90.0, 100.0), 7.0 * 10.0 * 20.0),
    "notch in an edge": (Notch(50.0, 60.0, 95.0, 100.0), 10.0 * 5.0 * 20.0),
    # walls 30 apart along the piece, leaning 10 over its thickness, half its width deep
    "angled lap": (AngledLap(195.0, 205.0, 15.0, 50.0, from_face_edge=True), 30.0 * 50.0 * 20.0),
    "angled lap from below": (
        AngledLap(195.0, 205.0, 15.0, 50.0, from_face_edge=False),
        30.0 * 50.0 * 20.0,
    ),
    # a floor from 60 to 40: 50 on the mean, 7 wide
    "open mortise": (OpenMortise(60.0, 40.0, 6.5, 13.5), 50.0 * 100.0 * 7.0),
    # both cheeks, 6.5 each, to a shoulder from 60 to 40
    "tenon at the start": (Tenon(60.0, 40.0, 6.5, 13.5, at_start=True), 50.0 * 100.0 * 13.0),
    "tenon at the end": (Tenon(340.0, 360.0, 6.5, 13.5, at_start=False), 50.0 * 100.0 * 13.0),
    # over 100 of the length, 5 back at the face side: 5 x 20 / 2 x 100
    "stopped bevel": (StoppedBevel(300.0, 400.0, 95.0, 100.0), 5_000.0),
    "stopped bevel the other way": (StoppedBevel(0.0, 100.0, 100.0, 95.0), 5_000.0),
    # full to 100, then down to 60 at 300, and level: 200 x 40 / 2 + 100 x 40
    "run-out": (RunOut(((100.0, 100.0), (300.0, 60.0), (400.0, 60.0))), 8_000.0 * 20.0),
    "run-out from the start": (
        RunOut(((0.0, 60.0), (100.0, 60.0), (300.0, 100.0))),
        8_000.0 * 20.0,
    ),
    # ending on the board's own end: 300 x 40 / 2
    "run-out to the end": (RunOut(((100.0, 100.0), (400.0, 60.0))), 6_000.0 * 20.0),
    "run-out from the very start": (RunOut(((0.0, 60.0), (300.0, 100.0))), 6_000.0 * 20.0),
    # 3 x 3 / 2 along the far arris of the reverse
    "chamfer": (
        Chamfer(
            ChamferEnd((-2.0, 100.0, 20.0), (-2.0, 97.0, 20.0), (-2.0, 100.0, 17.0)),
            ChamferEnd((402.0, 100.0, 20.0), (402.0, 97.0, 20.0), (402.0, 100.0, 17.0)),
            Face.REVERSE,
        ),
        4.5 * 400.0,
    ),
}


@pytest.mark.parametrize("name", WASTES)
def test_waste_by_hand(name: str) -> None:
    cut, expected = WASTES[name]
    shape = Shape(BOARD, (cut,))
    # Chords of arcs: at most 2/3 of the chord error for each mm of arc, a half round of 19 mm.
    most = 2.0 / 3.0 * CHORD_ERROR * 19.0 * 7.0 if isinstance(cut, StoppedHousing) else 1e-6
    assert WHOLE - solid_of(shape).volume == pytest.approx(expected, abs=most)
    assert piece_count(shape) == 1


def test_cutters_run_past_edges_that_rounding_has_left_a_hair_short() -> None:
    assert past(0.0, 0.0, 100.0) == past(1e-13, 0.0, 100.0) == -OVERRUN
    assert past(100.0, 0.0, 100.0) == past(100.0 - 1e-13, 0.0, 100.0) == 100.0 + OVERRUN
    assert past(0.01, 0.0, 100.0) == 0.01
    hair = Notch(393.0, 400.0 - 6e-14, 90.0, 100.0)
    clean = Notch(393.0, 400.0, 90.0, 100.0)
    faces = [solid_of(Shape(BOARD, (notch,))).panels.shape for notch in (hair, clean)]
    assert faces[0] == faces[1]
    # A leaf's mortise from below and one from above, each left a hair inside its face.
    for z in ((6e-7, 2.0), (18.0, 20.0 - 6e-7)):
        leaf = HingeMortise((40.0, 103.0), (0.0, 17.0), z)
        waste = WHOLE - solid_of(Shape(BOARD, (leaf,))).volume
        assert waste == pytest.approx(63.0 * 17.0 * 2.0, rel=1e-9)


def test_saw_cut_settings() -> None:
    """45 deg of tilt for a mitre, none of swing; a crosscut turned 10 deg swings 10 deg."""
    mitre = SawCut("mitre", (0.0, 0.0, 0.0), (DIAGONAL, 0.0, DIAGONAL))
    assert (mitre.tilt_deg, mitre.swing_deg) == (pytest.approx(45.0), 0.0)
    ten = math.radians(10.0)
    turned = SawCut("crosscut", (0.0, 0.0, 0.0), (math.cos(ten), math.sin(ten), 0.0))
    assert (turned.tilt_deg, turned.swing_deg) == (0.0, pytest.approx(10.0))
    assert turned.contours(BOARD) == ()


def test_saw_line_lies_on_the_face_that_the_blade_bites_deeper() -> None:
    """The mitre above goes from 400 on the reverse to 380 on the face side."""
    cut = SawCut("mitre", (400.0, 0.0, 20.0), (DIAGONAL, 0.0, -DIAGONAL))
    (line,) = cut.contours(BOARD)
    assert line.face is Face.FACE_SIDE
    assert [vertex[0] for vertex in line.path.vertices] == pytest.approx([380.0, 380.0])
    assert line.tilt_deg == pytest.approx(45.0)


def test_stopped_bevel_tilt() -> None:
    """5 over 20: atan(1 / 4) = 14.036 deg."""
    assert StoppedBevel(0.0, 10.0, 95.0, 100.0).tilt_deg(BOARD) == pytest.approx(14.036, abs=5e-4)
