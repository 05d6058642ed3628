"""Stretchers and their lap measured on the solids, against a vector computation.

Source of the expected sizes: the description of the base (two pieces from corner to corner, half
the height each at the lap, ends and shoulders parallel to the leaning legs) and plane geometry.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from tests.flat_faces import FlatFace, all_facing, between_deg, facing, flat_faces
from tests.reference.benches import ALL, KITE, bench_with, tenon_thickness
from tests.reference.crossed_frame import (
    DIAGONALS,
    UP,
    crossing,
    crossing_deg,
    leg_vectors,
    tips,
)

WITHIN = 1e-6  # mm
DOWN = -UP

Measured = tuple[Bench, str, str, list[FlatFace]]


@pytest.fixture(params=[(n, d) for n in ALL for d in DIAGONALS], ids=lambda p: f"{p[0]}/{p[1][0]}")
def stretcher(request: pytest.FixtureRequest) -> Measured:
    name, (start, end) = request.param
    bench = bench_with(ALL[name])
    return bench, start, end, flat_faces(bench.part(f"stretcher_{start}"))


def test_runs_from_tip_to_tip_and_out_to_the_legs_below(stretcher: Measured) -> None:
    """Top edge: tip to tip.  Bottom edge: longer by height x tan(splay) at both ends."""
    bench, start, end, faces = stretcher
    value = bench.spec.values
    at = tips(value)
    along = leg_vectors(value, end).along
    run = float(np.linalg.norm(at[end] - at[start]))
    top, bottom = facing(faces, UP), facing(faces, DOWN)
    assert top.offset == pytest.approx(value["base_height"], abs=WITHIN)
    assert -bottom.offset == pytest.approx(
        value["base_height"] - value["stretcher_height"], abs=WITHIN
    )
    low, high = top.extent(along)
    assert (low, high) == pytest.approx((at[start] @ along, at[end] @ along), abs=WITHIN)
    out = value["stretcher_height"] * math.tan(math.radians(value["splay"]))
    low, high = bottom.extent(along)
    assert high - low == pytest.approx(run + 2.0 * out, abs=WITHIN)
    derived = {row.name: row.value for row in bench.derived}
    assert derived[f"stretcher_{start}_length"] == pytest.approx(high - low, abs=WITHIN)


def test_ends_and_shoulders_follow_the_legs(stretcher: Measured) -> None:
    """The end lies in the plane of the leg's outer edge, the shoulders in that of its inner."""
    bench, start, end, faces = stretcher
    width, splay = bench.spec.number("leg_top_width"), bench.spec.number("splay")
    for corner in (start, end):
        leg = leg_vectors(bench.spec.values, corner)
        planes = sorted(face.offset for face in all_facing(faces, leg.out, 1e-4))
        tip = float(leg.tip @ leg.out)
        assert planes == pytest.approx([tip - width, tip], abs=WITHIN)
        assert between_deg(leg.out, leg.along) == pytest.approx(splay, abs=1e-9)


def test_tenon_is_in_the_middle(stretcher: Measured) -> None:
    """Default one third of the thickness: common practice, no source."""
    bench, _, end, faces = stretcher
    leg = leg_vectors(bench.spec.values, end)
    t = bench.spec.number("base_thickness")
    middle = float(leg.tip @ leg.side)
    for sign in (1.0, -1.0):
        planes = sorted(
            (face.offset - sign * middle for face in all_facing(faces, sign * leg.side, 1e-4)),
        )
        half = tenon_thickness(bench.spec.values) / 2.0
        assert planes == pytest.approx([half, t / 2.0], abs=WITHIN)


def test_lap_is_where_the_middles_cross_and_half_the_height(stretcher: Measured) -> None:
    bench, start, end, faces = stretcher
    value = bench.spec.values
    half = value["base_height"] - value["stretcher_height"] / 2.0
    lower = start == DIAGONALS[0][0]
    edge = value["base_height"] if lower else -(value["base_height"] - value["stretcher_height"])
    floors = [
        face for face in all_facing(faces, UP if lower else DOWN) if abs(face.offset - edge) > 1e-3
    ]
    assert [abs(face.offset) for face in floors] == [pytest.approx(half, abs=WITHIN)]
    # A parallelogram: its middle is the mean of its four corners.
    corners = floors[0].corners
    assert len(corners) == 4
    middle = corners[:, :2].mean(axis=0)
    assert middle == pytest.approx(crossing(value), abs=WITHIN)
    along = leg_vectors(value, end).along
    derived = {row.name: row.value for row in bench.derived}
    from_start = float((middle - tips(value)[start][:2]) @ along[:2])
    assert derived[f"lap_from_{start}"] == pytest.approx(from_start, abs=WITHIN)


def test_notch_takes_the_other_piece_at_the_angle_of_the_crossing(stretcher: Measured) -> None:
    """Walls parallel to the other piece, its thickness and the fit apart; along the piece that is
    (thickness + fit) / sin(angle)."""
    bench, start, end, faces = stretcher
    value = bench.spec.values
    other = next(pair for pair in DIAGONALS if start not in pair)
    wall = leg_vectors(value, other[1]).side
    first, second = all_facing(faces, wall, 1e-4), all_facing(faces, -wall, 1e-4)
    assert len(first) == len(second) == 1
    gap = -(first[0].offset + second[0].offset)
    assert gap == pytest.approx(value["base_thickness"] + value["lap_fit"], abs=WITHIN)
    along, side = leg_vectors(value, end).along, leg_vectors(value, end).side
    assert min(between_deg(wall, side), between_deg(wall, -side)) == pytest.approx(
        crossing_deg(value), abs=1e-7
    )
    joint = next(joint for joint in bench.joints if joint.name == "lap")
    measured = {measure.name: measure.value for measure in joint.measures}
    assert measured["lap_angle"] == pytest.approx(crossing_deg(value), abs=1e-7)
    span = gap / math.sin(math.radians(crossing_deg(value)))
    assert measured["notch_span"] == pytest.approx(span, abs=WITHIN)
    low, high = _on_outer_face(first[0].corners, second[0].corners, side, along)
    assert high - low == pytest.approx(span, abs=WITHIN)


def _on_outer_face(
    a: np.ndarray, b: np.ndarray, side: np.ndarray, along: np.ndarray
) -> tuple[float, float]:
    """The notch's two walls along the piece, where they meet one of its faces."""
    both = np.concatenate((a, b))
    outermost = (both @ side).max()
    edge = both[both @ side > outermost - 1e-6] @ along
    return float(edge.min()), float(edge.max())


def test_lap_of_a_rectangle_by_hand() -> None:
    """Tips 70 in from either end of 1200 and 60 in from either edge of 360: a rectangle of
    1060 x 240, so the lap is in the middle, 0.5 x hypot(1060, 240) = 543.415 from every tip, and
    the angle is 2 atan(240 / 1060) = 25.515 deg."""
    bench = bench_with({})
    derived = {row.name: row.value for row in bench.derived}
    assert derived["lap_from_back_left"] == pytest.approx(543.415, abs=5e-4)
    assert derived["lap_from_front_left"] == pytest.approx(543.415, abs=5e-4)
    assert derived["lap_angle"] == pytest.approx(25.515, abs=5e-4)


def test_lap_of_a_kite_by_hand() -> None:
    """Plan, from the left end and from the back edge: back left (30, 90), front right
    (1290, 345), front left (30, 460), back right (1290, 20).

    Lines over x - 30 = s, run 1260: 90 + s 255/1260 and 460 - s 440/1260 meet at
    s = 370 x 1260 / 695 = 670.791, where both are 90 + 370 x 255 / 695 = 225.755.
    """
    bench = bench_with(KITE)
    lap = bench.part("stretcher_back_left")
    floor = next(f for f in all_facing(flat_faces(lap), UP) if len(f.corners) == 4)
    assert floor.corners[:, 0].mean() == pytest.approx(30.0 + 670.791, abs=5e-4)
    assert floor.corners[:, 1].mean() == pytest.approx(-225.755, abs=5e-4)
