"""One template for pieces and their mirror images: by hand, and as another library sees them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import numpy as np
import pdfplumber
import pytest
import shapely
import trimesh
from shapely.affinity import scale, translate

from exporters.papers import template_sheets, templates_bytes
from exporters.project_file import load
from geometry.bench.build import build
from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.saw import SawCut
from geometry.drawing.marks import Label
from geometry.sheets.layout import Layout
from geometry.sheets.template import templates_of
from geometry.sheets.template_names import NAME
from geometry.sheets.template_uses import AS_PRINTED, Laying, Use, traced
from geometry.sheets.template_words import amounts, other_words, printed_words, template_titles
from geometry.sheets.templates import templates
from geometry.sheets.tracing import tracings
from geometry.solids.cutting import solid_of
from shared.paper import PAPERS
from shared.units import SHOWN_IN16, SHOWN_MM, in_units
from shared.words import Words
from tests.geometry.sheets.conftest import COSINE, SINE, piece

SAMPLES = sorted((Path(__file__).parents[3] / "sample_projects").glob("*.settle"))
BLANK = Blank(200.0, 80.0, 20.0)
LETTER = Layout(PAPERS["Letter"], shown=SHOWN_IN16, words=Words.AMERICAN)


def end(*, right: bool = False, far: bool = False) -> SawCut:
    """An end sawn 15 degrees off square, the face edge the longer or the shorter."""
    x = BLANK.length if right else 0.0
    y = 0.0 if far else BLANK.width
    return SawCut("end cut", (x, y, 0.0), (COSINE if right else -COSINE, SINE if far else -SINE, 0))


def board(title: str, *cuts):
    return (piece(title, BLANK, *cuts),)


def bore(x: float, y: float, face: Face = Face.FACE_SIDE) -> Bore:
    return Bore(x, y, 10.0, 8.0, face)


def words(uses) -> tuple[str, ...]:
    return (amounts(uses), *(in_units(text, SHOWN_MM) for text in other_words(uses)))


@pytest.mark.parametrize(
    ("other", "laying", "told"),
    [
        # A: the left end sawn askew, a hole 34 along and 20 down in the face
        ((end(right=True), bore(166.0, 20.0)), Laying(ends=True), "face side up: B, right end."),
        (
            (end(far=True), bore(34.0, 60.0)),
            Laying(edges=True),
            "face side up: B, its edges changed.",
        ),
        ((end(), bore(34.0, 20.0, Face.REVERSE)), Laying(reverse=True), "reverse up: B."),
    ],
)
def test_a_mirror_image_takes_the_same_paper_turned_over(other, laying, told):
    first, second = board("a", end(), bore(34.0, 20.0)), board("b", *other)
    (one,) = traced((first, second))
    assert [use.laying for use in one.uses] == [AS_PRINTED, laying]
    assert laying.over
    count, how = words(one.uses)
    assert count == "1 as printed, 1 turned over"
    assert how.startswith("Turned over, ")
    assert told in how


def test_the_same_piece_laid_otherwise_takes_the_paper_turned_round():
    """A half turn on the table carries the hole from 34, 20 to 166, 60; nothing is turned over."""
    first = board("a", end(), bore(34.0, 20.0))
    turned = board("b", end(right=True, far=True), bore(166.0, 60.0))
    (one,) = traced((first, turned))
    assert one.uses[1].laying == Laying(ends=True, edges=True)
    assert not one.uses[1].laying.over
    assert words(one.uses) == (
        "1 as printed, 1 turned round",
        "Turned round, face side up: B, right end, its edges changed.",
    )


def test_a_hole_elsewhere_asks_for_a_template_of_its_own():
    first = board("a", end(), bore(34.0, 20.0))
    found = traced((first, board("b", end(right=True), bore(165.0, 20.0))))
    assert [len(one.uses) for one in found] == [1, 1]
    assert template_titles([one.uses for one in found]) == ("A, left end", "B, right end")


def test_both_ends_of_a_board_share_a_template_as_far_from_each():
    """1000 long, both ends sawn askew, the one a mirror image of the other: traced once."""
    long = Blank(1000.0, 80.0, 20.0)
    both = piece(
        "rail", long,
        SawCut("end cut", (0.0, 80.0, 0.0), (-COSINE, -SINE, 0.0)),
        SawCut("end cut", (1000.0, 80.0, 0.0), (COSINE, -SINE, 0.0)),
    )  # fmt: skip
    (one,) = traced(((both,),))
    assert words(one.uses) == (
        "make 1, also turned over",
        "Turned over, face side up: the right end of the same.",
    )
    assert template_titles([one.uses]) == ("Rail, left end",)
    assert printed_words(one.uses) == (
        "As printed, face side up, face edge at the top, left end (to the left in the bench) at "
        "the left: Rail."
    )


def test_dovetails_across_an_end_are_one_template():
    """The seat of the bakery's yard, 320 wide: five regions at each end were six sheets."""
    seat = build(load(SAMPLES[0].parent / "bakery_yard_bench.settle").spec).part("seat")
    left, right = tracings(seat)
    assert (left.box[0], left.box[1], left.box[3]) == pytest.approx((0.0, -320.0, 0.0))
    assert right.box[2] == pytest.approx(seat.shape.blank.length)


def shadow(part) -> shapely.Geometry:
    """The finished piece seen from its face side, as trimesh projects it; (u, v)."""
    solid = solid_of(part.shape)
    mesh = trimesh.Trimesh(solid.vertices, solid.triangles)
    seen = trimesh.path.polygons.projected(mesh, normal=(0, 0, 1), precise=True)
    return scale(seen, 1.0, -1.0, origin=(0.0, 0.0))


def laid(wood: shapely.Geometry, use: Use, whole: shapely.Geometry) -> shapely.Geometry:
    """What the template covers on a piece, in that piece's own (u, v); ``whole`` is all of it."""
    if use.laying.ends:
        wood = scale(wood, -1.0, 1.0, origin=(0.0, 0.0))
    if use.laying.edges:
        wood = scale(wood, 1.0, -1.0, origin=(0.0, 0.0))
    left, low, right, high = wood.bounds
    _, lowest, rightmost, _ = whole.bounds
    at_right = use.along.before and not use.along.behind
    u = rightmost - right if at_right else use.along.before - left
    at_far = use.across.before and not use.across.behind
    v = lowest - low if at_far else -use.across.before - high
    return translate(wood, u, v)


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_paper_covers_the_wood_of_every_piece_it_is_for(path):
    """However it is laid, as trimesh sees the pieces; what is left proud is on the paper too."""
    bench = build(load(path).spec)
    for template in templates_of(bench, PAPERS["A4"], (1.0, 1.0), Layout(PAPERS["A4"]).style):
        for use in template.uses:
            for part in use.parts:
                whole = shadow(part)
                covered = laid(template.tracing.wood, use, whole)
                seen = whole.intersection(shapely.box(*covered.bounds))
                proud = part.allowance * part.shape.blank.width
                off = covered.symmetric_difference(seen).area
                assert off <= proud + 0.002 * covered.area, (template.name, part.name)


@pytest.mark.parametrize("layout", [Layout(PAPERS["A4"]), LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sheet_names_its_template_and_the_side_that_is_up(path, layout):
    """On the wood or beside it, but for a sheet that shows no wood."""
    bench = build(load(path).spec)
    sheets = templates(bench, layout)
    wood = {
        template.name: template
        for template in templates_of(bench, layout.paper, (1.0, 1.0), layout.style)
    }
    for sheet in sheets:
        labels = [mark for mark in sheet.marks if isinstance(mark, Label)]
        name = next((label.text.split()[0] for label in labels if label.at[1] < 24.0), "")
        if name not in wood:
            continue
        marked = [label.text for label in labels if label.owner == NAME]
        assert len(marked) == 1, sheet.title
        assert marked[0].startswith(name)
        assert marked[0].endswith("face side up")


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_piece_worth_tracing_is_named_on_a_template(path):
    bench = build(load(path).spec)
    found = templates_of(bench, PAPERS["A4"], (1.0, 1.0), Layout(PAPERS["A4"]).style)
    served = {part.name for one in found for use in one.uses for part in use.parts}
    assert served == {part.name for part in bench.parts if tracings(part)}
    assert len({one.title for one in found}) == len(found)


def test_what_a_maker_reads_on_the_paper(tmp_path):
    """Read back from the PDF: the apiary's legs, once for the four, and a wedge too small for
    letters."""
    texts = {}
    for name in ("apiary", "stitching_room"):
        project = load(SAMPLES[0].parent / f"{name}_bench.settle")
        sheets = template_sheets(project, build(project.spec), LETTER, date(2025, 3, 4))
        path = tmp_path / f"{name}.pdf"
        path.write_bytes(templates_bytes(project, date(2025, 3, 4), sheets))
        with pdfplumber.open(path) as read:
            texts[name] = [" ".join((page.extract_text() or "").split()) for page in read.pages]
    legs = texts["apiary"]
    assert len(legs) == 3  # the overview and two sheets
    for sheet in legs[1:]:
        assert "T1 Leg: 2 as printed, 2 turned over" in sheet
        assert (
            "As printed, face side up, face edge at the top, left end (up in the bench) at the "
            "left: back left and front right." in sheet
        )
        assert "Turned over, reverse up: back right and front left." in sheet
        assert "T1 Leg, face side up" in sheet
    wedge = texts["stitching_room"][-1]
    assert "T3 Wedge: make 4" in wedge
    assert "T3, face side up" in wedge


def test_stations_hold_on_both_ends_of_a_board():
    """0 is at the end itself on either: a template is shared only as far from its own end."""
    for path in SAMPLES:
        bench = build(load(path).spec)
        for one in templates_of(bench, PAPERS["A4"], (1.0, 1.0), Layout(PAPERS["A4"]).style):
            for use in one.uses:
                along = use.along.changed if use.laying.ends else use.along
                first = one.uses[0].along
                assert not np.logical_xor(first.before == 0.0, along.before == 0.0)
                assert not np.logical_xor(first.behind == 0.0, along.behind == 0.0)
