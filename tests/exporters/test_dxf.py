"""Cutting files, judged by GDAL (through pyogrio) and by dxfgrabber, and against hand sums.

Neither judge shares code with the writer.  GDAL turns arcs into chords; at a tenth of a degree a
step it is within 0.001 mm² of a true arc of this size.
"""

from __future__ import annotations

import io
import math
import re
from collections import Counter
from dataclasses import dataclass
from pathlib import Path as File

import dxfgrabber
import numpy as np
import pyogrio
import pytest
import shapely
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon

from exporters.cutting_lines import cutting_lines
from exporters.dxf import DxfRelease, dxf_bytes, extents, legend
from geometry.cuts.contour import Contour, Face, Operation
from geometry.cuts.cut import Blank
from geometry.cuts.housing import StoppedHousing
from geometry.cuts.rebate import Rebate
from geometry.cuts.removal import Prism, Removal
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME
from geometry.primitives.path import QUARTER_TURN_BULGE, Path
from geometry.solids.cutting import solid_of
from shared.words import Words, in_words

RUN_OVER = 8.0
RADIUS = 6.35
BOTH = pytest.mark.parametrize("release", list(DxfRelease))

Shapes = dict[str, list[np.ndarray]]


def read_by_gdal(data: bytes, folder: File) -> Shapes:
    """Layer -> rings of (n, 2) points, as GDAL reads them."""
    path = folder / "part.dxf"
    path.write_bytes(data)
    pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": "0.1"})
    meta, _, geometry, fields = pyogrio.raw.read(path, layer="entities")
    layers = fields[list(meta["fields"]).index("Layer")]
    found: Shapes = {}
    for layer, wkb in zip(layers, geometry, strict=True):
        points = shapely.get_coordinates(shapely.from_wkb(wkb))
        found.setdefault(layer, []).append(points)
    return found


def drawn(part: Part, release: DxfRelease = DxfRelease.R2000) -> bytes:
    return dxf_bytes(cutting_lines(part, RUN_OVER), release)


def area(ring: np.ndarray) -> float:
    return float(Polygon(ring).area)


def is_cut(layer: str) -> bool:
    return layer.startswith(("CUT_", "POCKET_", "REV_POCKET_"))


# Areas by hand, mm².
OUTLINES = {
    "plain": 300 * 200,
    "housed": 800 * 360,
    "flared": 900 * 400 - (300 * 60 / 2 + 200 * 60),
    "upright": 290 * 300 - 2 * 6 * 40,
    "leg": 450 * (76.2 + 25.4) / 2,
    "stretcher": 900 * 80,
}


@BOTH
def test_outlines_have_the_area_and_place_worked_out_by_hand(
    any_part: Part, release: DxfRelease, tmp_path: File
) -> None:
    (outline,) = read_by_gdal(drawn(any_part, release), tmp_path)["CUT_OUT_THRU"]
    assert area(outline) == pytest.approx(OUTLINES[any_part.name], abs=0.01)
    blank = any_part.shape.blank
    assert outline.min(axis=0) == pytest.approx((0.0, 0.0), abs=1e-6)
    assert outline.max(axis=0) == pytest.approx((blank.length, blank.width), abs=1e-6)


def test_outlines_are_the_shadow_that_trimesh_sees(any_part: Part, tmp_path: File) -> None:
    solid = solid_of(any_part.shape)
    mesh = trimesh.Trimesh(solid.vertices, solid.triangles)
    seen = trimesh.path.polygons.projected(mesh, normal=(0, 0, 1))
    (outline,) = read_by_gdal(drawn(any_part), tmp_path)["CUT_OUT_THRU"]
    assert area(outline) == pytest.approx(seen.area, abs=0.01)


@BOTH
def test_every_cut_contour_is_closed(any_part: Part, release: DxfRelease, tmp_path: File) -> None:
    shapes = read_by_gdal(drawn(any_part, release), tmp_path)
    rings = [ring for layer, found in shapes.items() if is_cut(layer) for ring in found]
    assert rings
    for ring in rings:
        assert np.linalg.norm(ring[0] - ring[-1]) < 1e-6
        assert Polygon(ring).is_valid


@BOTH
def test_pockets_have_the_area_worked_out_by_hand(
    housed: Part, release: DxfRelease, tmp_path: File
) -> None:
    shapes = read_by_gdal(drawn(housed, release), tmp_path)
    corners_lost = 2 * (1 - math.pi / 4) * RADIUS**2
    assert [area(ring) for ring in shapes["POCKET_D063_5"]] == pytest.approx(
        [18.2 * (300 + RUN_OVER) - corners_lost] * 2, abs=0.01
    )
    assert [area(ring) for ring in shapes["POCKET_D060"]] == pytest.approx(
        [(800 + 2 * RUN_OVER) * (10 + RUN_OVER)], abs=0.01
    )


def test_pockets_of_one_depth_that_meet_are_one_contour(flared: Part, tmp_path: File) -> None:
    """A rebate 8 wide along the whole back, and a housing 12.7 wide, 250 long, with a round end."""
    (pocket,) = read_by_gdal(drawn(flared), tmp_path)["POCKET_D060"]
    rebate = (900 + 2 * RUN_OVER) * (8 + RUN_OVER)
    rest_of_housing = 12.7 * (250 - 8 - RADIUS) + math.pi * RADIUS**2 / 2
    assert area(pocket) == pytest.approx(rebate + rest_of_housing, abs=0.01)


def test_nothing_on_a_layer_touches_or_repeats(any_part: Part, tmp_path: File) -> None:
    for found in read_by_gdal(drawn(any_part), tmp_path).values():
        lines = [shapely.LineString(points) for points in found]
        for i, first in enumerate(lines):
            for second in lines[:i]:
                assert first.intersection(second).length < 1e-6


@BOTH
def test_only_what_a_machine_takes(any_part: Part, release: DxfRelease) -> None:
    """Strict names: 31 characters of A-Z 0-9 $ _ - (DXF reference, release 12)."""
    drawing = dxfgrabber.read(io.StringIO(drawn(any_part, release).decode("ascii")))
    allowed = {"LWPOLYLINE", "CIRCLE"} if release is DxfRelease.R2000 else {"POLYLINE", "CIRCLE"}
    assert {entity.dxftype for entity in drawing.entities} <= allowed
    used = {entity.layer for entity in drawing.entities}
    assert used <= {layer.name for layer in drawing.layers}
    assert all(re.fullmatch(r"[A-Z0-9$_-]{1,31}", name) for name in used)
    for entity in drawing.entities:
        if entity.dxftype != "CIRCLE" and is_cut(entity.layer):
            assert entity.is_closed
            points = [point[:2] for point in entity.points]
            steps = [math.dist(a, b) for a, b in zip(points, points[1:] + points[:1], strict=True)]
            assert min(steps) > 0.01


def test_arcs_are_true_to_the_cutter(housed: Part) -> None:
    """DXF reference: bulge = tan(included angle / 4), so r = chord (1 + b²) / 4 |b|."""
    drawing = dxfgrabber.read(io.StringIO(drawn(housed).decode("ascii")))
    radii = []
    for entity in drawing.entities:
        points, bulges = [p[:2] for p in entity.points], entity.bulge
        for a, b, bulge in zip(points, points[1:] + points[:1], bulges, strict=True):
            if bulge:
                radii.append(math.dist(a, b) * (1 + bulge**2) / (4 * abs(bulge)))
                assert bulge == pytest.approx(QUARTER_TURN_BULGE, abs=1e-9)
    assert radii == pytest.approx([RADIUS] * 4, abs=1e-9)


def test_the_unit_is_stated(plain: Part) -> None:
    """4 is millimetres (DXF reference, $INSUNITS); 1 is metric ($MEASUREMENT)."""
    header = dxfgrabber.read(io.StringIO(drawn(plain).decode("ascii"))).header
    assert header["$ACADVER"] == "AC1015"
    assert header["$INSUNITS"] == 4
    assert header["$MEASUREMENT"] == 1
    assert header["$EXTMIN"][:2] == (0.0, 0.0)
    assert header["$EXTMAX"][:2] == (300.0, 200.0)


def test_release_12_has_a_line_to_measure_instead(plain: Part, tmp_path: File) -> None:
    data = drawn(plain, DxfRelease.R12)
    drawing = dxfgrabber.read(io.StringIO(data.decode("ascii")))
    assert drawing.header["$ACADVER"] == "AC1009"
    assert not drawing.layers.get("NOTES_NOCUT").on
    (line,) = read_by_gdal(data, tmp_path)["NOTES_NOCUT"]
    assert np.linalg.norm(line[-1] - line[0]) == pytest.approx(100.0, abs=1e-9)


def test_the_board_is_cut_as_itself_and_not_as_its_mirror_image(housed: Part) -> None:
    """Turn the solid face side up, which is a rotation, and feel for air under the contours.

    (x, y, z) -> (x, width - y, thickness - z) is a half turn about the grain: its determinant is
    +1.  trimesh says whether a point is in the wood.
    """
    blank, solid = housed.shape.blank, solid_of(housed.shape)
    turned = (0.0, blank.width, blank.thickness) + solid.vertices * (1.0, -1.0, -1.0)
    mesh = trimesh.Trimesh(turned, solid.triangles)
    lines = cutting_lines(housed, RUN_OVER)
    for line in lines:
        if line.layer.operation is not Operation.POCKET:
            continue
        pocket = Polygon(line.path.flattened(0.01))
        assert line.layer.depth is not None
        for depth, in_wood in ((0.1, False), (line.layer.depth + 0.1, True)):
            inside = [
                (x, y, blank.thickness - depth)
                for x in np.arange(5.0, blank.length, 13.7)
                for y in np.arange(15.0 if line.layer.depth > 6.1 else 351.0, blank.width - 12, 9.1)
                if pocket.buffer(-0.5).contains(Point(x, y)) and y < blank.width - 0.5
            ]
            if inside:
                assert set(mesh.contains(np.array(inside))) == {in_wood}
    under_the_stop = mesh.contains([(109.1, 60.0 - 1.0, 19.0), (109.1, 60.0 + 1.0, 19.0)])
    assert list(under_the_stop) == [True, False]


def test_a_cutter_clears_the_open_side_to_its_corners(housed: Part) -> None:
    """What a disc of the cutter's radius sweeps inside a contour is its opening by that disc."""
    board = shapely.box(0, 0, 800, 360)
    for line in cutting_lines(housed, RUN_OVER):
        if line.layer.operation is not Operation.POCKET:
            continue
        drawn_as = Polygon(line.path.flattened(0.001))
        swept = drawn_as.buffer(-RADIUS * 0.999, 64).buffer(RADIUS, 64)
        assert board.intersection(drawn_as).difference(swept).area < 0.05


def test_without_the_run_over_the_cutter_would_leave_rounds(housed: Part) -> None:
    """So that the check above is known to be able to fail: two corners of (1 - pi/4) r²."""
    board = shapely.box(0, 0, 800, 360)
    housing = cutting_lines(housed, 0.0)[2]
    drawn_as = Polygon(housing.path.flattened(0.001))
    swept = drawn_as.buffer(-RADIUS * 0.999, 64).buffer(RADIUS, 64)
    left = board.intersection(drawn_as).difference(swept).area
    assert left == pytest.approx(2 * (1 - math.pi / 4) * RADIUS**2, rel=0.01)


def test_saw_lines_carry_their_tilt(flared: Part, tmp_path: File) -> None:
    """atan(5 / 20) = 14.036°; a 45° mitre through 20 mm starts 20 mm in."""
    shapes = read_by_gdal(drawn(flared), tmp_path)
    (mitre,) = shapes["SAW_T450"]
    assert mitre[:, 0] == pytest.approx([20.0, 20.0])
    (bevel,) = shapes["SAW_T140_36"]
    assert sorted(bevel[:, 0]) == pytest.approx([0.0, 400.0])
    assert bevel[:, 1] == pytest.approx([5.0, 5.0])


@dataclass(frozen=True, slots=True)
class RoundedOpening:
    """A through hole and a rounded corner: cuts of later pieces of furniture."""

    hole: Path
    corner: Path
    title: str = "opening"

    def removals(self, blank: Blank) -> tuple[Removal, ...]:
        return tuple(Prism(p, -2.0, blank.thickness + 2.0) for p in (self.hole, self.corner))

    def contours(self, blank: Blank) -> tuple[Contour, ...]:  # noqa: ARG002
        return (Contour(Operation.INSIDE, Face.FACE_SIDE, self.hole),)


def test_through_cuts_keep_true_arcs_and_circles() -> None:
    hole = Path(((80.0, 50.0, 1.0), (120.0, 50.0, 1.0)))
    corner = Path(
        ((180.0, -2.0, 0.0), (202.0, -2.0, 0.0), (202.0, 20.0, 0.0),
         (200.0, 20.0, -QUARTER_TURN_BULGE), (180.0, 0.0, 0.0))
    )  # fmt: skip
    part = Part(
        "opened", "Opened", "board", "ash",
        Shape(Blank(200.0, 100.0, 20.0), (RoundedOpening(hole, corner),)), BENCH_FRAME,
    )  # fmt: skip
    drawing = dxfgrabber.read(io.StringIO(drawn(part).decode("ascii")))
    kinds = Counter((entity.dxftype, entity.layer) for entity in drawing.entities)
    assert kinds == {("LWPOLYLINE", "CUT_OUT_THRU"): 1, ("CIRCLE", "CUT_IN_THRU"): 1}
    outline, circle = drawing.entities
    assert circle.radius == pytest.approx(20.0, abs=1e-9)
    assert circle.center[:2] == pytest.approx((100.0, 50.0), abs=1e-9)
    assert len(outline.points) == 5
    (arc,) = [bulge for bulge in outline.bulge if bulge]
    assert abs(arc) == pytest.approx(QUARTER_TURN_BULGE, abs=1e-6)


def test_holes_and_slots_for_screws_are_in_the_cutting_file() -> None:
    """A block of 60 x 40 x 20, read back with y from its foot: a hole 5 wide at 15, 30 down, with
    the head's 9 wide from the reverse, 20 - 12 = 8 deep; a slot of 5 by 8 at 45, 18 down.  A hole
    that leans by 1 degree shows a sliver of light: it is marked, not cut."""
    sine, cosine = math.sin(math.radians(1.0)), math.cos(math.radians(1.0))
    part = Part(
        "block", "Block", "block", "ash",
        Shape(
            Blank(60.0, 40.0, 20.0),
            (
                ScrewHole((15.0, 30.0, 0.0), (0, 0, 1), (1, 0, 0), 5.0, 12.0, 9.0, 30.0),
                ScrewSlot((45.0, 18.0, 0.0), (0, 0, 1), (0, 1, 0), 1.5, 1.5, 5.0, 20.0, 9.0, 20.0),
                ScrewHole(
                    (30.0, 10.0, 0.0), (0.0, sine, cosine), (1, 0, 0), 5.0, 12.0, 9.0, 30.0
                ),
            ),
        ),
        BENCH_FRAME,
    )  # fmt: skip
    drawing = dxfgrabber.read(io.StringIO(drawn(part).decode("ascii")))
    circles = {
        (one.layer, *(round(c, 6) for c in one.center[:2]), round(one.radius, 6))
        for one in drawing.entities
        if one.dxftype == "CIRCLE"
    }
    assert circles == {("CUT_IN_THRU", 15.0, 10.0, 2.5), ("REV_POCKET_D080", 15.0, 10.0, 4.5)}
    (slot,) = (
        one
        for one in drawing.entities
        if one.dxftype == "LWPOLYLINE" and one.layer == "CUT_IN_THRU"
    )
    corners = {tuple(round(c, 6) for c in point[:2]) for point in slot.points}
    assert corners == {(42.5, 20.5), (47.5, 20.5), (47.5, 23.5), (42.5, 23.5)}
    half_turns = [bulge for bulge in slot.bulge if abs(bulge) > 1e-6]
    assert [abs(bulge) for bulge in half_turns] == pytest.approx([1.0, 1.0], abs=1e-6)
    marks = [one for one in drawing.entities if one.layer == "SCRIBE_NOCUT"]
    ends = {tuple(round(c, 6) for c in point[:2]) for mark in marks for point in mark.points}
    assert {(26.0, 30.0), (34.0, 30.0), (30.0, 26.0), (30.0, 34.0)} <= ends


@given(
    x=st.floats(20, 250),
    width=st.floats(14, 40),
    stop=st.floats(60, 190),
    depth=st.floats(1, 9),
    rebate=st.floats(3, 40),
)
@settings(max_examples=25, deadline=None)
def test_random_housings_come_back_from_gdal(
    *,
    tmp_path_factory: pytest.TempPathFactory,
    x: float,
    width: float,
    stop: float,
    depth: float,
    rebate: float,
) -> None:
    cuts = (
        StoppedHousing(x, x + width, stop, depth, RADIUS),
        Rebate(0.0, 300.0, 0.0, rebate, 9.5, Face.REVERSE),
    )
    part = Part("p", "P", "p", "ash", Shape(Blank(300.0, 200.0, 20.0), cuts), BENCH_FRAME)
    shapes = read_by_gdal(drawn(part), tmp_path_factory.mktemp("dxf"))
    (name,) = [layer for layer in shapes if layer.startswith("POCKET")]
    by_hand = width * (stop + RUN_OVER) - 2 * (1 - math.pi / 4) * RADIUS**2
    assert area(shapes[name][0]) == pytest.approx(by_hand, abs=0.01)
    assert area(shapes["REV_POCKET_D095"][0]) == pytest.approx(
        (300 + 2 * RUN_OVER) * (rebate + RUN_OVER), abs=0.01
    )


def test_the_same_part_gives_the_same_bytes(any_part: Part) -> None:
    for release in DxfRelease:
        assert drawn(any_part, release) == drawn(any_part, release)


def test_extents_take_in_the_run_over(housed: Part) -> None:
    assert extents(cutting_lines(housed, RUN_OVER)) == ((-8.0, 0.0), (808.0, 368.0))


def test_the_legend_names_every_layer_with_its_exact_depth(housed: Part) -> None:
    text = legend({"housed.dxf": cutting_lines(housed, RUN_OVER)})
    assert "POCKET_D063_5\n" in text
    assert "to a depth of 6.35 mm" in text
    assert "CUT_OUT_THRU" in text
    assert "housed.dxf" in text


def test_the_legend_is_in_the_makers_words(housed: Part) -> None:
    """Names of files and layers are no words: a piece called grey_lipping keeps its name."""
    drawings = {"grey_lipping": cutting_lines(housed, RUN_OVER), "lipping": ()}
    text = legend(drawings, Words.AMERICAN)
    assert "Units are millimeters" in text
    assert "allow for the bit" in text
    assert "In: grey_lipping" in text
    assert in_words(text, Words.AMERICAN) == text
