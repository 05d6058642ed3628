"""For which pieces a page is, how they stand in the bench, and what is a mirror image of what."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pdfplumber
import pytest

from exporters.pdf import pdf_bytes
from exporters.project_file import load
from geometry.bench.build import build
from geometry.cuts.bore import Bore
from geometry.cuts.cut import Blank
from geometry.cuts.end_bore import EndBore
from geometry.drawing.marks import Sheet
from geometry.primitives.frame import Frame
from geometry.sheets.kin import kin_words
from geometry.sheets.layout import Layout
from geometry.sheets.part_names import page_titles
from geometry.sheets.part_sheets import called, part_groups, part_leaves
from geometry.sheets.standing_words import standings, way
from geometry.sheets.template_uses import template_names
from geometry.sheets.title_block import title_block_of
from shared.paper import PAPERS
from tests.geometry.sheets.conftest import piece

SAMPLES = Path(__file__).parents[3] / "sample_projects"
DIAGONAL = math.sqrt(0.5)


def bored(x: float, y: float):
    return piece("side", Blank(300.0, 60.0, 20.0), Bore(x, y, 10.0, 8.0))


def test_pages_that_would_share_a_title_name_their_pieces(plain):
    legs = [replace(plain, title=f"Leg, {where}") for where in ("back left", "front right")]
    others = [replace(plain, title=f"Leg, {where}") for where in ("back right", "front left")]
    slats = [replace(plain, title=f"Slat {k}, bay {bay}") for bay in (1, 2) for k in (1, 2, 3)]
    odd = [replace(plain, title=f"Slat {k}, of bay {11 * k}") for k in range(4, 10)]
    lower = [replace(plain, title=f"Slat {k}, bay 3") for k in (1, 2)]
    seat = [replace(plain, title="Seat")]
    assert page_titles([legs, others, seat, slats, lower, odd]) == (
        ("Leg, back left and front right", True),
        ("Leg, back right and front left", True),
        ("Seat", False),
        ("Slat, 1 to 3, bay 1 and bay 2", True),
        ("Slat, 1 and 2, bay 3", True),
        ("Slat, 4, of bay 44 and 5 more", False),
    )
    assert page_titles([legs]) == (("Leg", False),)


def test_a_direction_is_told_by_the_sides_it_goes_to():
    assert way((1.0, 0.0, 0.0)) == "to the right"
    assert way((0.0, -1.0, 0.0)) == "to the front"
    assert way((0.0, math.sin(0.2), math.cos(0.2))) == "up"  # leans by 11 degrees
    assert way((-DIAGONAL, DIAGONAL, 0.0)) == "to the back left"
    assert way((DIAGONAL, 0.0, -DIAGONAL)) == "down and to the right"


def test_a_leg_stands_with_its_left_end_up(plain):
    """Its x runs down; the face side, from which z goes into the wood toward the back, is in
    front; y = z × x = back × down = right, so the face edge is at the left."""
    down = Frame((0.0, 0.0, 400.0), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0))
    turned = Frame((0.0, 0.0, 400.0), (0.0, 0.0, -1.0), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0))
    one, other = replace(plain, frame=down), replace(plain, frame=turned)
    front = "face side to the front, left end up, face edge to the left"
    assert standings([one], ["front"]) == f"In the bench: {front}."
    assert standings([one, one], ["a", "b"]) == f"In the bench: {front}."
    assert standings([one, other, one], ["front left", "back right", "middle"]) == (
        "In the bench: left end up; front left, middle: face side to the front, face edge to the "
        "left; back right: face side to the back, face edge to the right."
    )


@pytest.mark.parametrize(
    ("other", "told"),
    [
        # a hole 40 along and 20 down in the face of 300 x 60 x 20
        ((260.0, 20.0), "Mirror image of Side B: the left and the right end change places."),
        ((40.0, 40.0), "Mirror image of Side B: the face edge and the far edge change places."),
        ((260.0, 40.0), "The same piece as Side B, turned round on its reverse."),
        ((50.0, 20.0), ""),
    ],
)
def test_mirror_images_are_told_from_the_same_piece_turned(other, told):
    groups = [[bored(40.0, 20.0)], [bored(*other)]]
    assert kin_words(groups, ["Side A", "Side B"])[0] == told


def test_a_square_piece_may_be_a_mirror_image_through_its_corner():
    """A hole 10 down and 12 deep in the face of a square post; mirrored in the plane through two of
    its arrises it stands in the face edge, 10 from the face side."""
    blank = Blank(300.0, 40.0, 40.0)
    face = piece("post", blank, Bore(50.0, 10.0, 8.0, 12.0))
    edge = piece(
        "post", blank, EndBore((50.0, 0.0, 10.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), 8.0, 12.0)
    )
    assert kin_words([[face], [edge]], ["A", "B"])[1] == (
        "Mirror image of A: the face side and the face edge change places."
    )


def test_legs_alike_but_for_their_hand_are_told_apart_on_paper(tmp_path):
    """Read back from the PDF: the two pages of the apiary's legs."""
    project = load(SAMPLES / "apiary_bench.settle")
    bench = build(project.spec)
    layout = Layout(PAPERS["A4"], title=title_block_of(project, date(2025, 3, 4)))
    groups = part_groups(bench)
    pages = [
        leaf
        for group, told in zip(groups, called(groups, template_names(groups)), strict=True)
        if group[0].kind == "leg"
        for leaf in part_leaves(group, layout, told)
    ]
    assert [leaf.title for leaf in pages] == [
        "Leg, back left and front right",
        "Leg, back right and front left",
    ]
    path = tmp_path / "legs.pdf"
    sheets = [Sheet(leaf.title, 297.0, 210.0, leaf.marks) for leaf in pages]
    path.write_bytes(pdf_bytes(sheets, title="Legs", on=date(2025, 3, 4)))
    with pdfplumber.open(path) as read:
        texts = [" ".join((page.extract_text() or "").split()) for page in read.pages]
    mine, other = "Leg, back left and front right", "Leg, back right and front left"
    for text, own, mirror in zip(texts, (mine, other), (other, mine), strict=True):
        assert f"{own} – make 2" in text
        assert f"Mirror image of {mirror}: the face side and the reverse change places." in text
        assert "Drawn face side up, face edge at the top." in text
        assert "left end up" in text
        # One template serves for both, turned over.
        assert "Template at full size: T1." in text


def test_blocks_whose_slots_would_differ_by_a_hair_are_one_piece():
    """The bowling green's front apron is 2 mm nearer to the middle of its seat than the back one:
    ash moves 1.05 and 1.07 mm there, and with 0.3 of play both slots are set out to 1.5."""
    bench = build(load(SAMPLES / "bowling_green_bench.settle").spec)
    blocks = [group for group in part_groups(bench) if group[0].kind == "fixing block"]
    assert [len(group) for group in blocks] == [2, 2]
