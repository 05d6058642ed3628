"""Dimensions of parts against sizes worked by hand from their cuts."""

from __future__ import annotations

import math

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import CHAMFER, FORMS, along_arris
from geometry.cuts.mortise import Mortise
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.part import Part, Shape
from geometry.sheets.cut_words import cut_lines
from geometry.sheets.part_dimensions import part_dimensions
from geometry.solids.cutting import solid_of
from geometry.views.view import PART_EDGE, PART_END, PART_FACE
from tests.geometry.sheets.conftest import piece
from tests.samples import FOLDER
from tests.samples import plain as built

SAMPLES = sorted(FOLDER.glob("*.settle"))

TANGENT = math.tan(math.radians(15.0))


def sizes(part: Part, view: str) -> list[float]:
    found = [d for d in part_dimensions(part.shape) if d.view == view and d.unit == "mm"]
    return sorted(round(d.value, 3) for d in found)


def angles(part: Part, view: str) -> list[float]:
    found = [d for d in part_dimensions(part.shape) if d.view == view and d.unit == "deg"]
    return sorted(round(d.value, 3) for d in found)


def test_a_plain_board_has_its_three_sizes(plain):
    assert sizes(plain, "face") == [200.0, 300.0]
    assert sizes(plain, "end") == [20.0]


def test_a_housing_is_placed_sized_and_stopped(housed):
    assert sizes(housed, "face") == [18.2, 100.0, 300.0, 360.0, 800.0]
    assert sizes(housed, "edge") == [6.35]


def test_a_rebate_along_the_edge_is_seen_from_the_end(housed):
    assert sizes(housed, "end") == [6.0, 10.0, 20.0]


def test_a_mitred_board_has_a_long_and_a_short_length(mitred):
    """Each 45 degree mitre takes the thickness off the face side."""
    assert sizes(mitred, "face") == [300.0, 500.0]
    assert sizes(mitred, "edge") == [460.0]
    assert angles(mitred, "edge") == [45.0, 45.0]


def test_a_notch_is_measured_from_its_own_corner(notched):
    assert sizes(notched, "face") == [7.0, 10.0, 120.0, 250.0]


def test_holes_and_slots_for_screws_are_placed_from_two_sides():
    """A block of 160 x 45 x 28: a slot in its face 22 along and 18 down, one in its edge 82 along
    and 14 through, a hole out of its right end 20 down and 9 through."""
    shape = Shape(
        Blank(160.0, 45.0, 28.0),
        (
            ScrewSlot(
                (22.0, 18.0, 0.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0), 1.0, 1.0, 5.0, 28.0, 9.0, 28.0
            ),
            ScrewSlot(
                (82.0, 0.0, 14.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), 1.0, 1.0, 5.0, 20.0, 9.0, 45.0
            ),
            ScrewHole((160.0, 20.0, 9.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), 5.0, 12.0, 8.0, 40.0),
        ),
    )
    found = {(d.view, round(d.value, 3)) for d in part_dimensions(shape)}
    assert {("face", 22.0), ("face", 18.0)} <= found
    assert {("edge", 82.0), ("edge", 14.0)} <= found
    assert {("face", 20.0), ("edge", 9.0)} <= found
    assert ("face", 5.0) not in found  # a slot is set out from its screw, not by its sides


def test_a_splayed_leg(splayed_leg):
    """Straight edge 400; the far edge is as long, set back by 80 tan 15 = 21.436."""
    overall = 400.0 + 80.0 * TANGENT
    face = sizes(splayed_leg, "face")
    assert round(overall, 3) in face
    assert 400.0 in face
    assert 60.0 in face  # the mortise, down the straight edge
    assert angles(splayed_leg, "face") == [15.0, 15.0]
    assert sizes(splayed_leg, "edge") == [13.0, 14.0]


def test_tenons_are_measured_from_their_ends(tenoned):
    assert sizes(tenoned, "face") == [50.0, 50.0, 60.0, 600.0]
    assert sizes(tenoned, "edge") == [13.0, 13.0]


def test_an_apron_is_set_out_from_its_shoulders():
    """The bowling green's, its upper arris 27.46 and 1213.64 from the left tenon's tip where the
    shoulders are: 1186.2 between them, and a bore 85.94 from the tip is 58.5 from the shoulder."""
    apron = built("bowling_green", {}).part("apron_front")
    found = {round(d.value, 1) for d in part_dimensions(apron.shape) if d.view == "face"}
    assert {1186.2, 58.5} <= found
    assert 85.9 not in found


def test_a_mortise_turned_from_the_grain_is_placed_by_one_corner():
    """80 x 10, turned 30 degrees about (200, 60): its left corners lie 40 back along (cos, sin) and
    5 to either side along (-sin, cos); of these the one nearer the face edge is (167.859, 35.670),
    measured from the left end and the face edge.  No other corner is."""
    cos, sin = math.cos(math.radians(30.0)), math.sin(math.radians(30.0))
    corners = [
        (200.0 + a * cos - b * sin, 60.0 + a * sin + b * cos)
        for a, b in ((-40.0, -5.0), (40.0, -5.0), (40.0, 5.0), (-40.0, 5.0))
    ]
    mouth, floor = (tuple((x, y, z) for x, y in corners) for z in (0.0, 20.0))
    post = piece("post", Blank(400.0, 120.0, 40.0), Mortise(mouth, floor, through=False))
    assert sizes(post, "face") == [35.67, 120.0, 167.859, 400.0]
    assert angles(post, "face") == [30.0]
    (row,) = cut_lines(post.shape)
    assert row.words.endswith("lying {30 deg} off the grain")
    assert "{10 mm} by {80 mm}" in row.words


@pytest.mark.parametrize("name", ["housed", "mitred", "notched", "splayed_leg", "tenoned"])
def test_what_is_measured_is_really_there(name, request):
    """Both ends of every length have a corner of the solid at their place along it."""
    part: Part = request.getfixturevalue(name)
    corners = solid_of(part.shape).vertices
    views = {view.name: view for view in (PART_FACE, PART_EDGE, PART_END)}
    for one in part_dimensions(part.shape):
        if one.unit != "mm":
            continue
        view = views[one.view]
        axis = np.array(view.right if one.along == (1.0, 0.0) else view.up, dtype=float)
        places = corners @ axis
        for point in (one.start, one.end):
            measured = point[0] if one.along == (1.0, 0.0) else point[1]
            assert np.abs(places - measured).min() < 0.05, (one.name, measured)


def test_each_size_is_given_once(bench):
    for part in bench.parts:
        seen: set[tuple[object, ...]] = set()
        for one in part_dimensions(part.shape):
            axis = 0 if one.along == (1.0, 0.0) else 1
            ends = tuple(sorted((round(one.start[axis], 2), round(one.end[axis], 2))))
            key = (one.view, one.unit, axis, *ends)
            if one.unit == "mm":
                assert key not in seen, (part.name, one)
            seen.add(key)


def test_names_are_unique(bench):
    for part in bench.parts:
        names = [one.name for one in part_dimensions(part.shape)]
        assert len(names) == len(set(names))


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_an_angle_lies_along_an_edge_of_the_piece(sample):
    """Its slanting side runs along an edge of the finished solid, as it is seen in that view."""
    views = {view.name: view for view in (PART_FACE, PART_EDGE, PART_END)}
    for shape in {part.shape: None for part in build(load(sample).spec).parts}:
        solid = solid_of(shape)
        for one in part_dimensions(shape):
            if one.unit != "deg":
                continue
            view = views[one.view]
            edges = solid.vertices[solid.edges] @ np.array((view.right, view.up)).T
            apex, run = np.array(one.apex), np.array(one.end) - one.apex
            far = float(np.hypot(*run))
            along, across = run / far, np.array((-run[1], run[0])) / far
            off = np.abs((edges - apex) @ across).max(axis=1)
            places = (edges - apex) @ along
            shared = np.minimum(places.max(axis=1), far) - np.maximum(places.min(axis=1), 0.0)
            size = np.hypot(*(edges[:, 1] - edges[:, 0]).T)
            on_it = (off < 0.05) & (size > 0.5) & (shared > 0.3 * np.minimum(size, far))
            assert on_it.any(), (one.view, one.value, one.apex)


@pytest.mark.parametrize("form", FORMS)
def test_a_chamfer_has_a_slope_and_what_is_round_or_hollow_has_none(form):
    """5 on an arris of a lipping 6 thick, too much of it to be left to the table; that tells the
    radius of the others."""
    ends, normals = ((0, 0, 0), (200, 0, 0)), ((0, -1, 0), (0, 0, -1))
    part = piece("lipping", Blank(200, 22, 6), along_arris(form, 5.0, ends, normals))
    assert angles(part, "end") == ([45.0] if form == CHAMFER else [])
    (line,) = cut_lines(part.shape)
    size = "{5 mm} in on each face" if form == CHAMFER else "R {5 mm}"
    assert line.words == f"{size}, along the piece, through"
