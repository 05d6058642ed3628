"""What the cuts of drawers take from a board of 400 x 100 x 20, worked by hand; mm, mm³."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face, Operation
from geometry.cuts.cut import Blank, Cut
from geometry.cuts.end_bore import EndBore
from geometry.cuts.end_gaps import EndGaps, Gap
from geometry.cuts.finger_groove import FingerGroove
from geometry.cuts.finger_notch import FingerNotch
from geometry.cuts.groove import Groove
from geometry.cuts.rebate import Rebate
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.cuts.sockets import Socket, Sockets
from geometry.cuts.trim import Trim
from geometry.design.part import Shape
from geometry.solids.cutting import solid_of
from shared.tolerances import CHORD_ERROR
from tests.measures import piece_count

BOARD = Blank(400.0, 100.0, 20.0)
WHOLE = 800_000.0

WASTES: dict[str, tuple[Cut, float]] = {
    "stopped groove": (Groove(10.0, 390.0, 12.0, 18.0, 5.0), 380.0 * 6.0 * 5.0),
    "groove in the reverse": (Groove(10.0, 390.0, 12.0, 18.0, 5.0, Face.REVERSE), 11_400.0),
    "groove across": (Groove(30.0, 36.0, 0.0, 100.0, 5.0), 6.0 * 100.0 * 5.0),
    # 3 off each end and edge: 394 x 94 stays
    "trim": (Trim(3.0, 397.0, 3.0, 97.0), WHOLE - 394.0 * 94.0 * 20.0),
    "trim of one end": (Trim(0.0, 397.0, 0.0, 100.0), 3.0 * 100.0 * 20.0),
    # a gap 10 at the end and 14 at the base line, 18 long, and half a one at an edge
    "gaps at the end": (
        EndGaps("tails", 400.0, 382.0, (Gap(40.0, 50.0, 38.0, 52.0),)),
        12.0 * 18.0 * 20.0,
    ),
    "gap at an edge": (
        EndGaps("tails", 0.0, 18.0, (Gap(0.0, 8.0, 0.0, 10.0),)),
        9.0 * 18.0 * 20.0,
    ),
    "gap at the far edge": (
        EndGaps("tails", 0.0, 18.0, (Gap(92.0, 100.0, 90.0, 100.0),)),
        9.0 * 18.0 * 20.0,
    ),
    # 10 wide on the face side and 14 at 15 deep, over 12 of the end
    "blind socket": (
        Sockets(0.0, 12.0, 15.0, (Socket(40.0, 50.0, 38.0, 52.0),)),
        12.0 * 15.0 * 12.0,
    ),
    "through socket": (
        Sockets(400.0, 388.0, 20.0, (Socket(40.0, 50.0, 38.0, 52.0),)),
        12.0 * 20.0 * 12.0,
    ),
}


@pytest.mark.parametrize("name", WASTES)
def test_waste_by_hand(name: str) -> None:
    cut, expected = WASTES[name]
    shape = Shape(BOARD, (cut,))
    assert WHOLE - solid_of(shape).volume == pytest.approx(expected, rel=1e-9)
    assert piece_count(shape) == 1
    assert cut.title


@pytest.mark.parametrize("face", list(Face))
def test_holes_are_round(face: Face) -> None:
    """6 across and 10 deep: 90 pi, less what chords leave, at most their error all round."""
    blind, through = (
        WHOLE - solid_of(Shape(BOARD, (Bore(19.0, 24.0, 6.0, depth, face),))).volume
        for depth in (10.0, 20.0)
    )
    assert blind == pytest.approx(90.0 * math.pi, abs=6.0 * math.pi * 10.0 * CHORD_ERROR)
    assert through == pytest.approx(2.0 * blind, rel=1e-9)


@pytest.mark.parametrize(("width", "radius"), [(60.0, 15.0), (20.0, 10.0)])
def test_a_notch_for_the_fingers(width: float, radius: float) -> None:
    """15 deep, its lower corners rounded to the depth or to half of a narrow one: each leaves what
    is between a square and a quarter round, r² (1 - pi / 4)."""
    notch = FingerNotch(100.0, 100.0 + width, 15.0)
    assert notch.radius == radius
    area = width * 15.0 - 2.0 * radius**2 * (1.0 - math.pi / 4.0)
    waste = WHOLE - solid_of(Shape(BOARD, (notch,))).volume
    assert waste == pytest.approx(area * 20.0, abs=math.pi * radius * 20.0 * CHORD_ERROR)


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_counterbored_slot(way: float) -> None:
    """A shank's slot of 5 over 3 + 1 of travel, 12 deep, and the head's of 9 through the other 8:
    4 x 5 and 4 x 9 between half rounds of 5 and 9.  Drawn where the screw can be: 3 + 2.5 before it
    and 1 + 2.5 after; the head's from the other face, 3 + 4.5 before and 1 + 4.5 after."""
    start = (100.0, 50.0, 0.0 if way > 0.0 else 20.0)
    slot = ScrewSlot(start, (0.0, 0.0, way), (1.0, 0.0, 0.0), 3.0, 1.0, 5.0, 12.0, 9.0, 20.0)
    narrow, wide = 20.0 + math.pi / 4.0 * 25.0, 36.0 + math.pi / 4.0 * 81.0
    waste = WHOLE - solid_of(Shape(BOARD, (slot,))).volume
    chords = math.pi * (5.0 * 12.0 + 9.0 * 8.0) * CHORD_ERROR
    assert waste == pytest.approx(narrow * 12.0 + wide * 8.0, abs=chords)
    line, head = slot.contours(BOARD)
    faces = (Face.FACE_SIDE, Face.REVERSE)
    assert (line.face, head.face) == (faces if way > 0.0 else faces[::-1])
    assert (line.operation, head.operation) == (Operation.INSIDE, Operation.POCKET)
    assert head.depth == 8.0
    for contour, reach in ((line, (94.5, 103.5)), (head, (92.5, 105.5))):
        xs = [x for x, _ in contour.path.flattened(0.01)]
        assert (min(xs), max(xs)) == pytest.approx(reach)
    plain = ScrewSlot(start, (0.0, 0.0, way), (1.0, 0.0, 0.0), 3.0, 1.0, 5.0, 20.0, 9.0, 20.0)
    assert [one.operation for one in plain.contours(BOARD)] == [Operation.INSIDE]


def test_a_hole_for_a_screw_is_drawn_where_a_machine_can_bore_it() -> None:
    """Square to the reverse: through, and 20 - 12 = 8 deep from the face side for the head.  One
    that leans by 10 degrees is marked by a cross, one into an edge not at all."""
    square = ScrewHole((50.0, 30.0, 20.0), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0), 5.0, 12.0, 9.0, 30.0)
    hole, head = square.contours(BOARD)
    assert (hole.operation, hole.face) == (Operation.INSIDE, Face.REVERSE)
    assert (head.operation, head.face, head.depth) == (Operation.POCKET, Face.FACE_SIDE, 8.0)
    for contour, radius in ((hole, 2.5), (head, 4.5)):
        xs, ys = zip(*contour.path.flattened(0.01), strict=True)
        assert (min(xs), max(xs)) == pytest.approx((50.0 - radius, 50.0 + radius))
        assert (min(ys), max(ys)) == pytest.approx((30.0 - radius, 30.0 + radius))
    assert not square.leans
    sine, cosine = math.sin(math.radians(10.0)), math.cos(math.radians(10.0))
    aslant = replace(square, into=(0.0, sine, -cosine))
    assert aslant.leans
    marks = aslant.contours(BOARD)
    assert {(one.operation, one.face) for one in marks} == {(Operation.SCRIBE, Face.REVERSE)}
    assert {vertex[:2] for one in marks for vertex in one.path.vertices} == {
        (46.0, 30.0), (54.0, 30.0), (50.0, 26.0), (50.0, 34.0),
    }  # fmt: skip
    in_an_edge = replace(square, mouth=(50.0, 0.0, 10.0), into=(0.0, 1.0, 0.0))
    assert in_an_edge.contours(BOARD) == ()


def test_a_pilot_hole_in_a_face_is_drawn_and_one_in_an_edge_is_not() -> None:
    """3 across, 14 deep into the reverse; one from the floor of a recess 4 deep in the face side
    ends 4 + 14 = 18 below it; one 20 deep goes right through."""
    pilot = EndBore((60.0, 25.0, 20.0), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0), 3.0, 14.0)
    (circle,) = pilot.contours(BOARD)
    assert (circle.operation, circle.face, circle.depth) == (Operation.POCKET, Face.REVERSE, 14.0)
    xs = [x for x, _ in circle.path.flattened(0.001)]
    assert (min(xs), max(xs)) == pytest.approx((58.5, 61.5))
    (lower,) = replace(pilot, middle=(60.0, 25.0, 4.0), into=(0.0, 0.0, 1.0)).contours(BOARD)
    assert (lower.face, lower.depth) == (Face.FACE_SIDE, 18.0)
    (through,) = replace(pilot, depth=20.0).contours(BOARD)
    assert (through.operation, through.depth) == (Operation.INSIDE, None)
    assert replace(pilot, middle=(60.0, 0.0, 10.0), into=(0.0, 1.0, 0.0)).contours(BOARD) == ()


def test_what_they_draw() -> None:
    """A stopped groove keeps its ends, one across runs out; sockets are lines to saw to."""
    (stopped,) = Groove(10.0, 390.0, 12.0, 18.0, 5.0).contours(BOARD)
    (across,) = Groove(30.0, 36.0, 0.0, 100.0, 5.0).contours(BOARD)
    assert (stopped.operation, stopped.runs_out, stopped.depth) == (Operation.POCKET, False, 5.0)
    assert across.runs_out
    for one_way in ((0.0, 50.0, 10.0, 20.0), (350.0, 400.0, 10.0, 20.0), (30.0, 36.0, 0.0, 50.0)):
        assert Groove(*one_way, 5.0).contours(BOARD)[0].runs_out
    assert Rebate(30.0, 370.0, 90.0, 100.0, 5.0).contours(BOARD)[0].runs_out
    (line,) = Sockets(0.0, 12.0, 15.0, (Socket(40.0, 50.0, 38.0, 52.0),)).contours(BOARD)
    assert line.operation is Operation.SCRIBE
    assert [vertex[:2] for vertex in line.path.vertices] == [(0, 40), (12, 40), (12, 50), (0, 50)]
    blind, through = (Bore(19.0, 24.0, 6.0, depth).contours(BOARD)[0] for depth in (10.0, 20.0))
    assert (blind.operation, blind.depth) == (Operation.POCKET, 10.0)
    assert (through.operation, through.depth) == (Operation.INSIDE, None)
    for groove, y in ((FingerGroove(0.0, 8.0, True), 8.0), (FingerGroove(100.0, 8.0, False), 92.0)):
        (ends,) = groove.contours(BOARD)
        assert ends.face is Face.REVERSE
        assert [vertex[:2] for vertex in ends.path.vertices] == [(0.0, y), (400.0, y)]
    for by_hand in (Trim(3.0, 397.0, 3.0, 97.0), EndGaps("tails", 0.0, 18.0, ())):
        assert by_hand.contours(BOARD) == ()
