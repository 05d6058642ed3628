"""Legs measured on their solids, against closed formulas and a vector computation.

Source of the expected sizes: the description of the base (splay in the plane of the stretcher,
both ends level, taper on one edge, widths square to the straight edge) and plane trigonometry.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from tests.flat_faces import FlatFace, all_facing, between_deg, facing, flat_faces
from tests.reference.benches import ALL, KITE, OUTSIDE_TAPER, bench_with, tenon_thickness
from tests.reference.crossed_frame import LegVectors, leg_vectors

CORNERS = ("back_left", "back_right", "front_left", "front_right")
WITHIN = 1e-6  # mm; the solids are made in double precision
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)

Measured = tuple[Bench, str, LegVectors, list[FlatFace]]


@pytest.fixture(params=[(name, corner) for name in ALL for corner in CORNERS], ids="/".join)
def leg(request: pytest.FixtureRequest) -> Measured:
    name, corner = request.param
    bench = bench_with(ALL[name])
    vectors = leg_vectors(bench.spec.values, corner)
    return bench, corner, vectors, flat_faces(bench.part(f"leg_{corner}"))


def test_ends_are_level_at_floor_and_case(leg: Measured) -> None:
    bench, _, _, faces = leg
    tops = all_facing(faces, UP, 1e-4)
    assert max(face.offset for face in tops) == pytest.approx(bench.spec.number("base_height"))
    assert facing(faces, DOWN, 1e-4).offset == pytest.approx(0.0, abs=WITHIN)


def test_straight_edge_leans_by_the_splay_and_is_as_long_as_the_formula_says(
    leg: Measured,
) -> None:
    bench, _, vectors, faces = leg
    value = bench.spec.values
    inside = value["taper_side"] == "inside"
    edge = facing(faces, vectors.out if inside else -vectors.out, 1e-4)
    assert between_deg(vectors.down, DOWN) == pytest.approx(bench.spec.number("splay"), abs=1e-9)
    low, high = edge.extent(vectors.down)
    expected = bench.spec.number("base_height") / math.cos(math.radians(value["splay"]))
    assert high - low == pytest.approx(expected, abs=WITHIN)
    derived = {row.name: row.value for row in bench.derived}
    assert derived["leg_length"] == pytest.approx(expected, abs=WITHIN)
    outer = vectors.tip if inside else vectors.tip - vectors.along * level(bench, "leg_top_width")
    assert abs(edge.offset) == pytest.approx(abs(float(outer @ edge.normal)), abs=WITHIN)


def test_end_cut_is_the_splay_from_square(leg: Measured) -> None:
    bench, _, vectors, faces = leg
    foot = facing(faces, DOWN, 1e-4)
    from_square = between_deg(foot.normal, vectors.down)
    derived = {row.name: row.value for row in bench.derived}
    assert derived["leg_end_cut"] == pytest.approx(from_square, abs=1e-7)
    assert from_square == pytest.approx(bench.spec.number("splay"), abs=1e-7)


def test_width_in_the_joint_square_to_the_edges(leg: Measured) -> None:
    bench, _, vectors, faces = leg
    outer, inner = facing(faces, vectors.out, 1e-4), facing(faces, -vectors.out, 1e-4)
    if bench.spec.word("taper_side") == "inside":
        assert outer.offset == pytest.approx(float(vectors.tip @ vectors.out), abs=WITHIN)
    assert outer.offset + inner.offset == pytest.approx(
        bench.spec.number("leg_top_width"), abs=WITHIN
    )


def test_foot_width_square_to_the_straight_edge(leg: Measured) -> None:
    """At the floor the level width is the foot's width over cos(splay)."""
    bench, _, vectors, faces = leg
    foot = facing(faces, DOWN, 1e-4)
    low, high = foot.extent(vectors.along)
    assert high - low == pytest.approx(level(bench, "leg_foot_width"), abs=WITHIN)


def test_taper_starts_where_it_should_below_the_joint(leg: Measured) -> None:
    bench, _, vectors, faces = leg
    value = bench.spec.values
    inside = value["taper_side"] == "inside"
    wide = facing(faces, -vectors.out if inside else vectors.out, 1e-4)
    starts = value["base_height"] - value["stretcher_height"] - value["taper_start"]
    assert wide.extent(UP)[0] == pytest.approx(starts, abs=WITHIN)


def test_taper_is_one_plane_from_wide_to_narrow(leg: Measured) -> None:
    """Through its start, on the edge below the joint, and the foot's width from the straight edge
    on the floor: both points from level widths and heights alone."""
    bench, _, vectors, faces = leg
    value = bench.spec.values
    if value["leg_top_width"] == value["leg_foot_width"]:
        return
    tangent = math.tan(math.radians(value["splay"]))
    height = value["base_height"]
    below = value["stretcher_height"] + value["taper_start"]
    wide, narrow = level(bench, "leg_top_width"), level(bench, "leg_foot_width")
    if value["taper_side"] == "inside":
        start, foot, sign = below * tangent - wide, height * tangent - narrow, -1.0
    else:
        start, foot, sign = below * tangent, height * tangent - wide + narrow, 1.0
    begin = vectors.tip + start * vectors.along - (0.0, 0.0, below)
    end = vectors.tip + foot * vectors.along - (0.0, 0.0, height)
    normal = sign * np.cross(end - begin, vectors.side)
    normal /= np.linalg.norm(normal)
    taper = facing(faces, normal if normal @ (sign * vectors.along) > 0 else -normal, 1e-4)
    for point in (begin, end):
        assert float(taper.normal @ point) == pytest.approx(taper.offset, abs=WITHIN)
    low, high = taper.extent(UP)
    assert (low, high) == pytest.approx((0.0, height - below), abs=WITHIN)


def test_open_mortise_takes_the_tenon_and_its_fit_as_deep_as_the_stretcher(leg: Measured) -> None:
    """Default one third of the thickness: common practice, no source."""
    bench, _, vectors, faces = leg
    value = bench.spec.values
    t, fit = value["base_thickness"], value["bridle_fit"]
    middle = float(vectors.tip @ vectors.side)
    # All faces that look along the side axis: two outsides and the two cheeks of the slot.
    for direction in (vectors.side, -vectors.side):
        outside, cheek = all_facing(faces, direction, 1e-4)
        sign = float(direction @ vectors.side)
        assert outside.offset == pytest.approx(t / 2.0 + sign * middle, abs=WITHIN)
        half_slot = (tenon_thickness(value) + fit) / 2.0
        assert cheek.offset == pytest.approx(sign * middle - half_slot, abs=WITHIN)
    below_top = value["base_height"] - 1.0
    floors = [face for face in all_facing(faces, UP, 1e-4) if face.offset < below_top]
    assert [face.offset for face in floors] == [
        pytest.approx(value["base_height"] - value["stretcher_height"], abs=WITHIN)
    ]


def level(bench: Bench, name: str) -> float:
    """A width square to the leg's edge, measured level."""
    return bench.spec.number(name) / math.cos(math.radians(bench.spec.number("splay")))


def test_default_leg_by_hand() -> None:
    """150 / cos 15° = 155.291; 150 x tan 15° = 40.192; 76.2 / cos 15° = 78.888."""
    bench = bench_with({})
    derived = {row.name: row.value for row in bench.derived}
    assert derived["leg_length"] == pytest.approx(155.291, abs=5e-4)
    assert derived["foot_out"] == pytest.approx(40.192, abs=5e-4)
    foot = facing(flat_faces(bench.part("leg_back_left")), DOWN)
    along = leg_vectors(bench.spec.values, "back_left").along
    tip = np.array((70.0, -60.0, 150.0))
    assert foot.extent(along)[1] - float(tip @ along) == pytest.approx(40.192, abs=5e-4)
    tenon = [m for m in joint_measures(bench, "bridle_back_left") if m[0] == "tenon_length"]
    assert tenon == [("tenon_length", pytest.approx(78.888, abs=5e-4))]


@pytest.mark.parametrize("changes", [KITE, OUTSIDE_TAPER], ids=["inside", "outside"])
def test_foot_stands_out_as_derived(changes: dict[str, float | str]) -> None:
    bench = bench_with(changes)
    derived = {row.name: row.value for row in bench.derived}
    for corner in CORNERS:
        vectors = leg_vectors(bench.spec.values, corner)
        foot = facing(flat_faces(bench.part(f"leg_{corner}")), DOWN)
        out = foot.extent(vectors.along)[1] - float(vectors.tip @ vectors.along)
        assert derived["foot_out"] == pytest.approx(out, abs=WITHIN)


def joint_measures(bench: Bench, name: str) -> list[tuple[str, float]]:
    joint = next(joint for joint in bench.joints if joint.name == name)
    return [(measure.name, measure.value) for measure in joint.measures]
