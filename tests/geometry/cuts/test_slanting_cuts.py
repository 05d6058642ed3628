"""Cuts that run askew: what they take away and what they draw, worked by hand."""

from __future__ import annotations

import math

import pytest

from geometry.cuts.contour import Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.mortise import Mortise
from geometry.cuts.removal import HalfSpace, Prism
from geometry.cuts.round_tenon import RoundTenon
from geometry.cuts.saw import SawCut
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.part import Shape
from geometry.primitives.path import Path
from geometry.solids.cutting import solid_of
from geometry.solids.kernel.carving import carve
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR
from tests.measures import piece_count

BOARD = Blank(400.0, 100.0, 30.0)
STICK = Blank(300.0, 40.0, 40.0)


def rectangle(x: float, y: float, z: float, long: float, wide: float):
    return ((x, y, z), (x + long, y, z), (x + long, y + wide, z), (x, y + wide, z))


def test_blind_mortise_square_to_its_face() -> None:
    """50 x 12, 20 deep: 12 000 mm³, and a pocket 20 deep for the machine."""
    cut = Mortise(rectangle(100, 40, 0, 50, 12), rectangle(100, 40, 20, 50, 12), through=False)
    shape = Shape(BOARD, (cut,))
    assert 400 * 100 * 30 - volume_of(shape) == pytest.approx(12_000.0)
    (contour,) = cut.contours(BOARD)
    assert (contour.operation, contour.face, contour.depth) == (
        Operation.POCKET,
        Face.FACE_SIDE,
        20.0,
    )
    assert (cut.depth, cut.slant_deg) == pytest.approx((20.0, 0.0))
    below = Mortise(rectangle(100, 40, 30, 50, 12), rectangle(100, 40, 10, 50, 12), through=False)
    (contour,) = below.contours(BOARD)
    assert (contour.face, contour.depth) == (Face.REVERSE, 20.0)


def test_through_mortise_that_flares() -> None:
    """50 long on the face, 62 on the reverse, 12 wide: 56 x 12 x 30 = 20 160 mm³."""
    cut = Mortise(rectangle(100, 40, 0, 50, 12), rectangle(94, 40, 30, 62, 12), through=True)
    assert 400 * 100 * 30 - volume_of(Shape(BOARD, (cut,))) == pytest.approx(20_160.0)
    assert {(c.operation, c.face) for c in cut.contours(BOARD)} == {
        (Operation.SCRIBE, Face.FACE_SIDE),
        (Operation.SCRIBE, Face.REVERSE),
    }


def test_slanting_mortise_in_an_edge_is_not_drawn_on_a_face() -> None:
    """Sheared, not stretched: 40 along, 10 through, 25 square to the edge: 10 000 mm³."""
    mouth = ((100.0, 0.0, 10.0), (140.0, 0.0, 10.0), (140.0, 0.0, 20.0), (100.0, 0.0, 20.0))
    floor = tuple((x + 10.0, 25.0, z) for x, _, z in mouth)
    cut = Mortise(mouth, (floor[0], floor[1], floor[2], floor[3]), through=False)
    assert 400 * 100 * 30 - volume_of(Shape(BOARD, (cut,))) == pytest.approx(10_000.0)
    assert cut.contours(BOARD) == ()
    assert cut.depth == pytest.approx(25.0)
    assert cut.slant_deg == pytest.approx(math.degrees(math.atan(10.0 / 25.0)))


@pytest.mark.parametrize("at_start", [True, False])
def test_tenon_with_a_compound_shoulder(at_start: bool) -> None:
    """A tenon 60 x 10 with its shoulder at 40 from the end on the mean: the rest of the section,
    100 x 30 - 600 = 2400, times 40 is off, whichever way the shoulder slants."""
    slope_y, slope_z = 0.2, -0.1
    mean = 40.0 if at_start else 360.0
    cut = ShoulderedTenon(
        mean - 50.0 * slope_y - 15.0 * slope_z, slope_y, slope_z, 20, 80, 10, 20, at_start
    )
    shape = Shape(BOARD, (cut,))
    assert 400 * 100 * 30 - volume_of(shape) == pytest.approx(2400.0 * 40.0)
    assert piece_count(shape) == 1
    assert cut.swing_deg == pytest.approx(math.degrees(math.atan(0.2)))
    # The plane x - 0.2 y + 0.1 z: its normal's share of z over its length.
    assert cut.tilt_deg == pytest.approx(math.degrees(math.asin(0.1 / math.sqrt(1.05))))
    first, second = cut.contours(BOARD)
    assert (first.face, second.face) == (Face.FACE_SIDE, Face.REVERSE)


def test_tenon_as_wide_as_its_piece_has_no_shoulder_at_the_edges() -> None:
    cut = ShoulderedTenon(50.0, 0.0, 0.0, 0.0, 100.0, 10.0, 20.0, at_start=True)
    assert len(cut.removals(BOARD)) == 2
    assert 400 * 100 * 30 - volume_of(Shape(BOARD, (cut,))) == pytest.approx(20 * 100 * 50.0)


@pytest.mark.parametrize("lean", [0.0, 0.15, 0.4])
def test_round_tenon_with_a_slanting_shoulder(lean: float) -> None:
    """Radius 12 in a stick of 40 x 40, the shoulder 50 from the start on the axis: whatever its
    slant 50 x (1600 - pi 144) is off, less what the chords leave on."""
    run = math.hypot(1.0, lean)
    outward = (-1.0 / run, lean / run, 0.0)
    cut = RoundTenon(20.0, 20.0, 12.0, (50.0, 20.0, 20.0), outward, (1.0, 0.0))
    shape = Shape(STICK, (cut,))
    off = 300 * 1600 - volume_of(shape)
    true = 50.0 * (1600.0 - math.pi * 144.0)
    assert 0.0 <= off - true <= 2.0 * math.pi * 12.0 * CHORD_ERROR * 50.0
    assert piece_count(shape) == 1
    assert cut.contours(STICK) == ()


def test_round_tenon_shows_no_line_where_its_halves_meet() -> None:
    cut = RoundTenon(20.0, 20.0, 12.0, (50.0, 20.0, 20.0), (-1.0, 0.0, 0.0), (1.0, 0.0))
    solid = solid_of(Shape(STICK, (cut,)))
    ends = solid.vertices[solid.edges]
    along = abs(ends[:, 0, 0] - ends[:, 1, 0]) > 40.0
    radial = ((ends[:, 0, 1:] - 20.0) ** 2).sum(axis=1) ** 0.5
    assert (along & (radial < 13.0)).any()
    assert solid.smooth[along & (radial < 13.0)].all()


@pytest.mark.parametrize("lean_deg", [0.0, 10.0, 25.0])
@pytest.mark.parametrize("face", list(Face))
def test_leaning_bore(lean_deg: float, face: Face) -> None:
    """Radius 10 through 30 mm: pi 100 x 30 / cos of wood, less what the chords leave."""
    lean = math.radians(lean_deg)
    axis = (math.sin(lean), 0.0, math.cos(lean))
    start = (200.0, 50.0, 0.0 if face is Face.FACE_SIDE else 30.0)
    cut = LeaningBore(start, axis, 10.0, face, (0.0, 1.0, 0.0))
    off = 400 * 100 * 30 - volume_of(Shape(BOARD, (cut,)))
    true = math.pi * 100.0 * 30.0 / math.cos(lean)
    assert 0.0 <= true - off <= 2.0 * math.pi * 10.0 * CHORD_ERROR * 30.0 / math.cos(lean)
    assert cut.tilt_deg == pytest.approx(lean_deg, abs=1e-9)
    contours = cut.contours(BOARD)
    assert all(contour.face is face for contour in contours)
    if lean_deg == 0.0:
        assert [c.operation for c in contours] == [Operation.INSIDE]
    else:
        # The sightline runs along the lean, the cross line square to it, both through the middle.
        assert [c.operation for c in contours] == [Operation.SCRIBE] * 2
        for contour in contours:
            (x0, y0, _), (x1, y1, _) = contour.path.vertices
            assert ((x0 + x1) / 2.0, (y0 + y1) / 2.0) == pytest.approx((200.0, 50.0))
        assert contours[0].path.vertices[0][1] == pytest.approx(50.0)
        assert cut.sightline_deg == pytest.approx(90.0)


def test_wedge_slot() -> None:
    """30 deep to its root, 1 in 10 to either side: 6 wide at the end, 6 x 30 / 2 x 40 = 3600."""
    cut = WedgeSlot((30.0, 20.0, 20.0), (0.0, 1.0, 0.0), 20.0, (0.0, 0.0, 1.0), 0.1)
    assert 300 * 1600 - volume_of(Shape(STICK, (cut,))) == pytest.approx(3600.0)


def test_wedge_slot_in_the_far_end() -> None:
    """The same at x = 300, opening the other way: wood only from 270 on is taken."""
    cut = WedgeSlot(
        (270.0, 20.0, 20.0), (0.0, 0.0, 1.0), 20.0, (0.0, 1.0, 0.0), 0.1, at_start=False
    )
    shape = Shape(STICK, (cut,))
    assert 300 * 1600 - volume_of(shape) == pytest.approx(3600.0)
    corners = solid_of(shape).vertices
    inside = corners[(corners[:, 0] > 1.0) & (corners[:, 0] < 299.0)]
    assert inside[:, 0] == pytest.approx(270.0)
    assert inside[:, 1] == pytest.approx(20.0)


def test_a_prism_ends_at_its_planes() -> None:
    """A pocket 20 x 20 right through, but not beyond the plane z = 12: 4800 mm³."""
    end = HalfSpace((0.0, 0.0, 12.0), (0.0, 0.0, 1.0))
    square = Path.rectangle(10.0, 10.0, 30.0, 30.0)
    body = carve(BOARD, [Prism(square, -1.0, 40.0, ends=(end,))])
    assert 400 * 100 * 30 - body.manifold.volume() == pytest.approx(4800.0)


def test_a_taper_through_the_thickness_draws_no_saw_line() -> None:
    """No saw tilts to 85 degrees: the stick is stood on edge."""
    lean = math.radians(85.0)
    cut = SawCut("taper", (0.0, 0.0, 40.0), (math.cos(lean), 0.0, math.sin(lean)))
    assert cut.tilt_deg == pytest.approx(85.0)
    assert cut.contours(STICK) == ()
