"""The table of cuts in words, by hand."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.cuts.contour import Contour
from geometry.cuts.cut import Blank
from geometry.cuts.end_bore import EndBore
from geometry.cuts.notch import Notch
from geometry.cuts.rebate import Rebate
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.cuts.shouldered_tenon import ShoulderedTenon
from geometry.cuts.wedge_slot import WedgeSlot
from geometry.design.part import Shape
from geometry.primitives.path import Path
from geometry.sheets.cut_words import CutLine, cut_lines
from shared.units import SHOWN_MM, in_units


@dataclass(frozen=True, slots=True)
class Finger:
    """A cut that nobody has told the table about: 30 x 12 through an 18 mm board."""

    @property
    def title(self) -> str:
        return "finger gap"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        return (Prism(Path.rectangle(-2.0, 40.0, 30.0, 52.0), -2.0, blank.thickness + 2.0),)

    def contours(self, _blank: Blank) -> tuple[Contour, ...]:
        return ()


def test_alike_cuts_share_a_row(mitred):
    (row,) = cut_lines(mitred.shape)
    assert row.numbers == (1, 2)
    assert row.number_text == "1–2"
    assert in_units(row.words, SHOWN_MM) == "across, blade tilted 45°"


def test_numbers_that_do_not_run_on_are_listed():
    assert CutLine((2, 4), "end cut", "").number_text == "2, 4"
    assert CutLine((3,), "taper", "").number_text == "3"


def test_an_end_cut_says_how_far_it_is_off_square(splayed_leg):
    words = [in_units(row.words, SHOWN_MM) for row in cut_lines(splayed_leg.shape)]
    assert words[0] == "across, 15° off square, blade square"
    assert words[-1] == "14 mm wide, 13 mm from the face side; floor 15° off square"


def test_an_unknown_cut_is_measured_by_its_waste():
    (row,) = cut_lines(Shape(Blank(200.0, 100.0, 18.0), (Finger(),)))
    assert row.title == "finger gap"
    assert in_units(row.words, SHOWN_MM) == "30 mm along, 12 mm across, 18 mm deep"


def test_what_is_flush_is_said_so():
    """A tenon as thick as its rail, and one at the face edge."""
    words = cut_lines(
        Shape(
            Blank(200.0, 40.0, 13.0),
            (ShoulderedTenon(12.0, 0.0, 0.0, 0.0, 30.0, 0.0, 13.0, at_start=True),),
        )
    )[0].words
    assert "{0 mm}" not in words
    assert "flush with the face side, flush with the face edge" in words


def test_a_bore_says_what_it_goes_into():
    """Into the end along the grain; into the reverse, 50 from the left end and 20 from the edge."""
    shape = Shape(
        Blank(200.0, 40.0, 13.0),
        (
            EndBore((0.0, 20.0, 6.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), 8.0, 30.0),
            EndBore((50.0, 20.0, 13.0), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0), 3.0, 9.0),
        ),
    )
    end, reverse = (in_units(line.words, SHOWN_MM) for line in cut_lines(shape))
    assert end == "8 mm across, 30 mm deep into the end"
    assert reverse == (
        "3 mm across, 9 mm deep from the reverse, middle 50 mm from the left end, 20 mm from the "
        "face edge"
    )


BLOCK = Blank(160.0, 45.0, 28.0)
DIAGONAL = math.sqrt(0.5)


def test_a_hole_for_a_screw_is_placed_from_two_sides():
    """Out of an end sawn at 45 degrees, 22 down and half way through 28; out of the reverse, 47
    from the left end and 27 from the face edge, leaning by 5 degrees."""
    lean = math.radians(5.0)
    out_of_end, out_of_reverse = (
        ScrewHole(mouth, into, toward, 5.0, 12.0, 8.0, 30.0)
        for mouth, into, toward in (
            ((148.0, 22.0, 14.0), (-DIAGONAL, 0.0, -DIAGONAL), (0.0, 1.0, 0.0)),
            ((47.0, 27.0, 28.0), (0.0, math.sin(lean), -math.cos(lean)), (1.0, 0.0, 0.0)),
        )
    )
    shape = Shape(BLOCK, (out_of_end, out_of_reverse))
    end, reverse = (in_units(line.words, SHOWN_MM) for line in cut_lines(shape))
    assert end == (
        "5 mm across, through, square to the glued right end; middle there 22 mm from the face "
        "edge, 14 mm from the face side; 8 mm across for the head from 12 mm deep on"
    )
    assert reverse == (
        "5 mm across, through, square to the glued reverse; middle there 47 mm from the left end, "
        "27 mm from the face edge; 8 mm across for the head from 12 mm deep on"
    )


def test_a_slot_for_a_screw_is_placed_and_says_which_way_it_runs():
    """5 wide and 3 of travel make 8; of two mirror images the one goes to the reverse at the right,
    the other at the left."""

    def told(screw, into, along, land):
        slot = ScrewSlot(screw, into, along, 1.5, 1.5, 5.0, land, 9.0, 45.0 if into[1] else 28.0)
        (line,) = cut_lines(Shape(BLOCK, (slot,)))
        return in_units(line.words, SHOWN_MM)

    in_face = told((22.0, 18.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0), 28.0)
    assert in_face == (
        "5 mm by 8 mm over its round ends, through from the face side; screw 22 mm from the left "
        "end, 18 mm from the face edge; runs across the width"
    )
    for way, end in ((DIAGONAL, "right"), (-DIAGONAL, "left")):
        in_edge = told((82.0, 0.0, 14.0), (0.0, 1.0, 0.0), (way, 0.0, DIAGONAL), 20.0)
        assert in_edge == (
            "5 mm by 8 mm over its round ends, through from the face edge; screw 82 mm from the "
            "left end, 14 mm from the face side; runs 45° off the length, to the reverse at the "
            f"{end} end; 9 mm wide for the head from 20 mm deep on"
        )


def test_the_slots_of_mirrored_legs_are_told_apart():
    """Across a round tenon, 60 degrees off the width: cos 60 = 1/2 along it.  Undirected, so that
    both senses read alike; a slot along the width needs no angle."""
    c, s = 0.5, math.sqrt(0.75)
    told = []
    for along, spread in (
        ((0.0, c, s), (0.0, s, -c)),
        ((0.0, -c, -s), (0.0, s, -c)),
        ((0.0, -c, s), (0.0, s, c)),
        ((0.0, 1.0, 0.0), (0.0, 0.0, 1.0)),
    ):
        slot = WedgeSlot((30.0, 21.0, 21.0), along, 14.0, spread, 0.05)
        (line,) = cut_lines(Shape(Blank(400.0, 42.0, 42.0), (slot,)))
        told.append(in_units(line.words, SHOWN_MM))
    opening = "opening 1 in 10 from its root across the tenon"
    assert told == [
        f"{opening}, 60° off the width, to the reverse at the far edge",
        f"{opening}, 60° off the width, to the reverse at the far edge",
        f"{opening}, 60° off the width, to the reverse at the face edge",
        opening,
    ]


def test_a_notch_is_where_it_is():
    """Three in the edge of a board 1460 long: from the left end on, 480.2 along, and up to the
    right end; 1460 - 64.2 = 1395.8."""
    notches = tuple(Notch(x, x + 64.2, 0.0, 8.0) for x in (0.0, 480.2, 1395.8))
    rows = cut_lines(Shape(Blank(1460.0, 420.0, 21.0), notches))
    size = "64.2 mm along, 8 mm across, at the face edge, "
    assert [in_units(row.words, SHOWN_MM).removeprefix(size) for row in rows] == [
        "at the left end", "480.2 mm from the left end", "at the right end",
    ]  # fmt: skip


def test_a_rebate_across_the_middle_is_not_at_an_end():
    """Across the whole of a board 120 wide: at its end, and 300 along it."""
    rebates = (Rebate(0.0, 14.0, 0.0, 120.0, 6.0), Rebate(300.0, 314.0, 0.0, 120.0, 6.0))
    end, middle = cut_lines(Shape(Blank(800.0, 120.0, 20.0), rebates))
    assert end.words.endswith("across, at the left end")
    assert in_units(middle.words, SHOWN_MM).endswith("across, 300 mm from the left end")
