"""Housings, partitions and the back, measured on the solids.

Source of the expected sizes: the description of the case (partitions a reveal behind the bottom's
front edge; housings that stop behind the partition's front; partition height = inside height and
both housing depths; rebates as deep as the setting, as wide as the sheet and how far it is let
in) and straight-line interpolation of the top's front edge between its stations.
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.design.joint import Joint
from shared.tolerances import CHORD_ERROR
from tests.flat_faces import FlatFace, all_facing, facing, flat_faces
from tests.reference.benches import ALL, bench_with
from tests.unbored import unbored

WITHIN = 1e-6  # mm
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)
X, FORWARD, BACK = (1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 1.0, 0.0)


@pytest.fixture(params=list(ALL))
def bench(request: pytest.FixtureRequest) -> Bench:
    return bench_with(ALL[request.param])


def housings(bench: Bench) -> list[tuple[Joint, str, str, bool]]:
    """Each upright's joint, its board, its upright, and whether the board is above."""
    found = [
        joint
        for joint in bench.joints
        if joint.kind == "stopped housing" and joint.parts[0] in ("top", "bottom")
    ]
    return [(joint, *joint.parts, joint.parts[0] == "top") for joint in found]


def measures(joint: Joint) -> dict[str, float]:
    return {measure.name: measure.value for measure in joint.measures}


def between(bench: Bench, upright: str) -> tuple[float, float]:
    """The upright's two broad faces, in X."""
    faces = flat_faces(bench.part(upright))
    return -facing(faces, (-1.0, 0.0, 0.0)).offset, facing(faces, X).offset


def floor_of_housing(bench: Bench, board: str, x_low: float, x_high: float, up: bool) -> np.ndarray:
    """The corners of the housing's floor around an upright."""
    s = bench.spec
    inside = s.number("base_height") + (
        s.number("case_height") - s.number("board_thickness") if up else s.number("board_thickness")
    )
    depth = s.number("housing_depth")
    wanted = -(inside + depth) if up else inside - depth
    faces = all_facing(flat_faces(bench.part(board)), DOWN if up else UP)
    face = next(face for face in faces if abs(face.offset - wanted) < 1e-6)
    x = face.corners[:, 0]
    return face.corners[(x > x_low - 2.5) & (x < x_high + 2.5)]


def at_round(bench: Bench, width: float) -> float:
    """Where the cutter is as wide as the housing, the stop is a half round made of chords."""
    wide = bench.spec.number("cutter_diameter") > width
    return CHORD_ERROR if wide else WITHIN


def depth_of_top(bench: Bench, x: float) -> float:
    """The top's front at the outside arris, between the stations of the description."""
    s = bench.spec
    length, d, deep = s.number("length"), s.number("depth"), s.word("deep_end")
    more = 0.0
    for end, suffix in (("left", ""), ("right", "_right" if deep == "both" else "")):
        f = s.number(f"flare{suffix}")
        if f > 0.0 and deep in (end, "both"):
            station = x if end == "left" else length - x
            x1, x2 = s.number(f"flare_straight{suffix}"), s.number(f"flare_end{suffix}")
            more += float(np.interp(station, (0.0, x1, x2, max(length, x2)), (f, f, 0.0, 0.0)))
    return d + more


def test_housing_is_as_wide_as_the_upright_and_its_fit_and_stops_behind_its_front(
    bench: Bench,
) -> None:
    s = bench.spec
    stop = s.number("depth") - s.number("reveal") - s.number("housing_cover")
    half = s.number("housing_fit") / 2.0
    for joint, board, upright, up in housings(bench):
        x_low, x_high = between(bench, upright)
        floor = floor_of_housing(bench, board, x_low, x_high, up)
        assert floor[:, 0].min() == pytest.approx(x_low - half, abs=WITHIN)
        assert floor[:, 0].max() == pytest.approx(x_high + half, abs=WITHIN)
        assert floor[:, 1].min() == pytest.approx(-stop, abs=at_round(bench, x_high - x_low))
        assert measures(joint)["stop_from_back"] == pytest.approx(stop, abs=WITHIN)
        assert measures(joint)["housing_width"] == pytest.approx(x_high - x_low + 2.0 * half)
        assert measures(joint)["from_left_end"] == pytest.approx(x_low, abs=WITHIN)


def test_stop_from_the_front_at_each_station(bench: Bench) -> None:
    """In the top it is further from the front by as much as the top is deeper there."""
    s = bench.spec
    stop = s.number("depth") - s.number("reveal") - s.number("housing_cover")
    for joint, _, upright, up in housings(bench):
        x_low, x_high = between(bench, upright)
        found = measures(joint)
        for name, x in (
            ("stop_from_front_left", x_low),
            ("stop_from_front", (x_low + x_high) / 2.0),
            ("stop_from_front_right", x_high),
        ):
            front = depth_of_top(bench, x) if up else s.number("depth")
            assert found[name] == pytest.approx(front - stop, abs=WITHIN)


def test_stop_from_the_inside_arris_measured_on_the_board(bench: Bench) -> None:
    """Along the board's inside face to where its front edge really is, halfway over the upright."""
    for joint, board, upright, up in housings(bench):
        x = sum(between(bench, upright)) / 2.0
        faces = flat_faces(bench.part(board))
        inside = facing(faces, DOWN if up else UP)
        front = front_at(faces, x, abs(inside.offset))
        found = measures(joint)
        assert found["stop_from_inside_arris"] == pytest.approx(
            front - found["stop_from_back"], abs=1e-5
        )


def front_at(faces: list[FlatFace], x: float, z: float) -> float:
    """How far forward a board's front edge reaches at a place: the plane that lies there."""
    found = []
    for face in faces:
        (x0, x1), (z0, z1) = face.extent(X), face.extent(UP)
        if face.normal[1] < -0.01 and x0 <= x <= x1 and z0 - 1e-6 <= z <= z1 + 1e-6:
            nx, ny, nz = face.normal
            found.append(-(face.offset - nx * x - nz * z) / ny)
    assert len(found) == 1
    return float(found[0])


def test_stops_by_hand_on_deep_stretch_run_out_and_shallow() -> None:
    """D = 360, F = 60, x1 = 240, x2 = 700; reveal 12 and cover 4: every housing stops at 344.

    At 150 the top is 420 deep: 76 from its outside arris, and 420 - 60 x 20 / 300 = 416 at the
    inside arris: 72.  At 600 it is 360 + 60 x (700 - 600) / 460 = 373.043: 29.043, and on the
    partition's two faces at 590 and 610 30.348 and 27.739.  At 900: 16.  In the bottom always 16,
    and 360 + 4 - 344 = 20 from its inside arris.
    """
    bench = bench_with(
        {"partition_count": 3, "partition_1": 150, "partition_2": 600, "partition_3": 900}
    )
    found = {joint.name: measures(joint) for joint in bench.joints}
    expected = {
        "housing_top_partition_1": (76.0, 76.0, 76.0, 72.0),
        "housing_top_partition_2": (30.348, 29.043, 27.739, 29.043),
        "housing_top_partition_3": (16.0, 16.0, 16.0, 16.0),
        "housing_bottom_partition_1": (16.0, 16.0, 16.0, 20.0),
        "housing_bottom_partition_2": (16.0, 16.0, 16.0, 20.0),
    }
    names = (
        "stop_from_front_left",
        "stop_from_front",
        "stop_from_front_right",
        "stop_from_inside_arris",
    )
    for joint, numbers in expected.items():
        assert [found[joint][name] for name in names] == pytest.approx(numbers, abs=5e-4)
    top = bench.part("top")
    stops = [f for f in all_facing(flat_faces(top), BACK) if abs(f.offset + 344.0) < 1e-6]
    assert len(stops) == 1


def test_partition_is_inside_height_and_both_housings_high(bench: Bench) -> None:
    s = bench.spec
    height = s.number("case_height") - 2.0 * s.number("board_thickness")
    height += 2.0 * s.number("housing_depth")
    for part in bench.parts:
        if part.kind == "partition":
            faces = flat_faces(part)
            assert facing(faces, UP).offset + facing(faces, DOWN).offset == pytest.approx(
                height, abs=WITHIN
            )
            front = facing(faces, FORWARD)
            assert front.offset == pytest.approx(s.number("depth") - s.number("reveal"))
            # What is seen of the front edge is the clear height between the boards.
            low, high = front.extent(UP)
            assert high - low == pytest.approx(height - 2.0 * s.number("housing_depth"))
            derived = {row.name: row.value for row in bench.derived}
            assert derived["partition_height"] == pytest.approx(height)


def test_partition_height_by_hand() -> None:
    """300 - 2 x 20 = 260 inside; + 2 x 7 in the housings = 274."""
    derived = {row.name: row.value for row in bench_with({}).derived}
    assert (derived["inside_height"], derived["partition_height"]) == (260.0, 274.0)


def test_notch_clears_the_round_and_the_front_hides_it(bench: Bench) -> None:
    """A cutter of radius r leaves its round over the last r before the stop."""
    s = bench.spec
    stop = s.number("depth") - s.number("reveal") - s.number("housing_cover")
    round_from = stop - s.number("cutter_diameter") / 2.0
    for joint, _, upright, _ in housings(bench):
        # Before it is bored for runners: the round of a hole has faces every way.
        fronts = all_facing(flat_faces(unbored(bench, upright)), FORWARD)
        tongue, front = sorted(face.offset for face in fronts)
        assert tongue <= round_from + WITHIN
        assert tongue >= round_from - s.number("housing_fit") - WITHIN
        assert front >= stop - WITHIN
        assert measures(joint)["notch_length"] == pytest.approx(front - tongue, abs=WITHIN)


def test_back_fills_its_rebates_but_for_the_fit(bench: Bench) -> None:
    s = bench.spec
    t, fit = s.number("board_thickness"), s.number("back_fit")
    ends = {}
    for end in ("left", "right"):
        closed = s.word(f"{end}_end") == "mitred"
        ends[end] = t if closed else s.number(f"{end}_inset") + s.number("partition_thickness")
    inside_length = s.number("length") - ends["left"] - ends["right"]
    inside_height = s.number("case_height") - 2.0 * t
    faces = flat_faces(bench.part("back"))
    long = facing(faces, X).offset + facing(faces, (-1.0, 0.0, 0.0)).offset
    high = facing(faces, UP).offset + facing(faces, DOWN).offset
    assert long == pytest.approx(inside_length + 2.0 * s.number("rebate_depth") - fit, abs=WITHIN)
    assert high == pytest.approx(inside_height + 2.0 * s.number("rebate_depth") - fit, abs=WITHIN)
    assert facing(faces, BACK).offset == pytest.approx(-s.number("back_let_in"), abs=WITHIN)
    inside_face = s.number("back_let_in") + s.number("back_thickness")
    assert facing(faces, FORWARD).offset == pytest.approx(inside_face, abs=WITHIN)


def test_rebates_run_round_the_back_at_its_inside_face(bench: Bench) -> None:
    """The wall of each rebate stands at back thickness + let in; its floor is as deep as set."""
    s = bench.spec
    wall = s.number("back_let_in") + s.number("back_thickness")
    t, deep = s.number("board_thickness"), s.number("rebate_depth")
    floor = s.number("base_height")
    for part, up, inside in (
        ("bottom", UP, floor + t),
        ("top", DOWN, floor + s.number("case_height") - t),
    ):
        faces = flat_faces(bench.part(part))
        assert any(abs(face.offset + wall) < WITHIN for face in all_facing(faces, BACK))
        sign = up[2]
        level = sign * inside - deep
        assert any(abs(face.offset - level) < WITHIN for face in all_facing(faces, up))
    pieces = [j.parts[0] for j in bench.joints if j.kind == "rebate"]
    closing = [
        f"end_panel_{end}" if s.word(f"{end}_end") == "mitred" else f"partition_{end}"
        for end in ("left", "right")
    ]
    assert sorted(pieces) == sorted(["top", "bottom", *closing])
    for name, direction in zip(closing, (X, (-1.0, 0.0, 0.0)), strict=True):
        inner = all_facing(flat_faces(bench.part(name)), direction)
        levels = [inner[0].offset - face.offset for face in inner[1:]]
        assert any(level == pytest.approx(deep, abs=WITHIN) for level in levels)
        # The board's inside face starts at the rebate's wall.
        assert inner[0].extent(FORWARD)[0] == pytest.approx(wall, abs=WITHIN)


def test_back_by_hand() -> None:
    """Inside 1200 - 20 (panel) - 60 - 20 (set-in partition) = 1100, rebates 2 x 6, fit 1: 1111;
    260 + 12 - 1 = 271."""
    blank = bench_with({}).part("back").shape.blank
    assert (blank.length, blank.width, blank.thickness) == (1111.0, 271.0, 6.0)
