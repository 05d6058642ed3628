"""The leaning front, the run-out and the mitres, measured on the solids.

Source of the expected planes: the description of the case (back edges in one plane; the end
panel's front from D at the underside to D + F at the top face; the run-out sawn square) and
plane trigonometry.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from tests.flat_faces import FlatFace, all_facing, between_deg, corner_of, facing, flat_faces
from tests.reference.benches import ALL, BOTH_MITRED, DEEP_RIGHT, bench_with

WITHIN = 1e-6  # mm
BACK = (0.0, 1.0, 0.0)
# Benches that flare at both ends are measured in test_two_flares.
FLARED = [name for name in ALL if name != "plain" and ALL[name].get("deep_end") != "both"]


@pytest.fixture(params=FLARED)
def bench(request: pytest.FixtureRequest) -> Bench:
    return bench_with(ALL[request.param])


def front_normal(bench: Bench) -> np.ndarray:
    """Three points of the plane, as the description gives them, and their cross product."""
    s = bench.spec
    low = np.array((0.0, -s.number("depth"), s.number("base_height")))
    high = low + np.array((0.0, -s.number("flare"), s.number("case_height")))
    normal = np.cross(high - low, np.array((-1.0, 0.0, 0.0)))
    return normal / np.linalg.norm(normal)


def leaning(bench: Bench, name: str) -> FlatFace:
    return facing(flat_faces(bench.part(name)), front_normal(bench), 1e-4)


def deep_end(bench: Bench) -> str:
    return bench.spec.word("deep_end")


def closed_at_the_deep_end(bench: Bench) -> bool:
    return bench.spec.word(f"{deep_end(bench)}_end") == "mitred"


def test_front_edges_lie_in_one_plane(bench: Bench) -> None:
    s = bench.spec
    low = np.array((0.0, -s.number("depth"), s.number("base_height")))
    names = ["bottom", "top"]
    if closed_at_the_deep_end(bench):
        names.append(f"end_panel_{deep_end(bench)}")
    for name in names:
        assert leaning(bench, name).offset == pytest.approx(
            float(low @ front_normal(bench)), abs=WITHIN
        )


def test_front_leans_atan_of_flare_over_height(bench: Bench) -> None:
    s = bench.spec
    lean = math.degrees(math.atan(s.number("flare") / s.number("case_height")))
    derived = {row.name: row.value for row in bench.derived}
    assert derived["front_lean"] == pytest.approx(lean, abs=1e-9)
    for name in ("bottom", "top"):
        level_front = (0.0, -1.0, 0.0)
        assert between_deg(leaning(bench, name).normal, level_front) == pytest.approx(
            lean, abs=1e-6
        )


def test_top_leans_over_its_deep_stretch_only(bench: Bench) -> None:
    """On the top face, which a mitre leaves whole, or else on the level of the inside face."""
    s = bench.spec
    chamfer = s.number("chamfer")
    low, high = leaning(bench, "top").extent((1.0, 0.0, 0.0))
    straight, length = s.number("flare_straight"), s.number("length")
    end = 0.0
    if closed_at_the_deep_end(bench):
        end = chamfer  # the chamfer cuts the pointed arris of the mitre back by its own depth
    expected = (end, straight) if deep_end(bench) == "left" else (length - straight, length - end)
    assert (low, high) == pytest.approx(expected, abs=WITHIN)


def test_run_out_is_square_and_straight_from_deep_to_shallow(bench: Bench) -> None:
    s = bench.spec
    straight, end = s.number("flare_straight"), s.number("flare_end")
    sign = 1.0 if deep_end(bench) == "left" else -1.0
    # From (x1, D + F) to (x2, D) in plan: the run turned a quarter is the normal.
    normal = np.array((sign * s.number("flare"), -(end - straight), 0.0))
    normal /= np.linalg.norm(normal)
    face = facing(flat_faces(bench.part("top")), normal, 1e-4)
    assert face.normal[2] == pytest.approx(0.0, abs=1e-12)
    deep = -s.number("depth") - s.number("flare")
    x1 = straight if sign > 0 else s.number("length") - straight
    x2 = end if sign > 0 else s.number("length") - end
    assert face.offset == pytest.approx(float(np.array((x1, deep, 0.0)) @ normal), abs=WITHIN)
    assert face.offset == pytest.approx(
        float(np.array((x2, -s.number("depth"), 0.0)) @ normal), abs=WITHIN
    )
    across = face.extent((1.0, 0.0, 0.0))
    assert across == pytest.approx((min(x1, x2), max(x1, x2)), abs=WITHIN)


def test_after_the_run_out_the_edge_is_square_at_the_bottoms_depth(bench: Bench) -> None:
    s = bench.spec
    if s.number("flare_end") == s.number("length"):
        return
    face = facing(flat_faces(bench.part("top")), (0.0, -1.0, 0.0))
    assert face.offset == pytest.approx(s.number("depth"), abs=WITHIN)


def test_run_out_to_the_very_end_keeps_its_depth_there() -> None:
    for changes in (BOTH_MITRED, {**DEEP_RIGHT, "flare_end": 1200, "chamfer": 0}):
        bench = bench_with(changes)
        s = bench.spec
        faces = flat_faces(bench.part("top"))
        top = facing(faces, (0.0, 0.0, 1.0))
        shallow = s.number("length") if deep_end(bench) == "left" else 0.0
        at_end = top.corners[np.abs(top.corners[:, 0] - shallow) < 1e-6]
        assert at_end[:, 1].min() == pytest.approx(-s.number("depth"), abs=WITHIN)


def back_edge(faces: list[FlatFace]) -> FlatFace:
    """The hindmost of the faces that look back; the wall of a rebate may be the larger one."""
    return max(all_facing(faces, BACK), key=lambda face: face.offset)


def test_back_edges_lie_in_one_plane(bench: Bench) -> None:
    for part in bench.parts:
        if part.kind in ("top", "bottom", "end panel") or part.name in (
            "partition_left",
            "partition_right",
        ):
            assert back_edge(flat_faces(part)).offset == pytest.approx(0.0, abs=WITHIN)


def test_bevel_of_the_top_by_hand() -> None:
    """F = 60, H = 300, board 20: lean atan(60 / 300) = 11.310 deg; over 20 mm the edge travels
    60 x 20 / 300 = 4, so the inside face is 420 - 4 = 416 deep over the deep stretch."""
    bench = bench_with({"chamfer": 0})
    under = facing(flat_faces(bench.part("top")), (0.0, 0.0, -1.0))
    deep = under.corners[np.abs(under.corners[:, 1] + 416.0) < 1e-6]
    assert sorted(deep[:, 0]) == pytest.approx([20.0, 240.0], abs=WITHIN)
    derived = {row.name: row.value for row in bench.derived}
    assert derived["front_lean"] == pytest.approx(11.310, abs=5e-4)
    assert derived["run_out_angle"] == pytest.approx(
        math.degrees(math.atan(60.0 / 460.0)), abs=1e-9
    )


def mitred_ends(bench: Bench) -> list[str]:
    return [end for end in ("left", "right") if bench.spec.word(f"{end}_end") == "mitred"]


@pytest.mark.parametrize("name", [n for n in ALL if n != "plain"])
def test_mitres_stand_at_45_degrees_on_both_boards(name: str) -> None:
    """Measured between the mitred face and the board's own broad face: 45 deg inside the wood at
    the pointed arris."""
    bench = bench_with(ALL[name])
    s = bench.spec
    for end in mitred_ends(bench):
        outward = -1.0 if end == "left" else 1.0
        for board, up in (("top", 1.0), ("bottom", -1.0)):
            into_panel = np.array((outward, 0.0, up)) / math.sqrt(2.0)
            # The board's mitred face looks out and toward the inside of the corner.
            out_and_in = np.array((into_panel[0], 0.0, -into_panel[2]))
            board_face = facing(flat_faces(bench.part(board)), out_and_in, 1e-4)
            panel_face = facing(flat_faces(bench.part(f"end_panel_{end}")), -out_and_in, 1e-4)
            assert board_face.offset == pytest.approx(-panel_face.offset, abs=WITHIN)
            outside = (0.0, 0.0, up)
            assert 180.0 - between_deg(board_face.normal, outside) == pytest.approx(45.0, abs=1e-6)
            arris = corner_of(
                board_face,
                facing(flat_faces(bench.part(board)), outside),
                back_edge(flat_faces(bench.part(board))),
            )
            x = 0.0 if end == "left" else s.number("length")
            z = s.number("base_height") + (s.number("case_height") if up > 0 else 0.0)
            assert arris == pytest.approx((x, 0.0, z), abs=WITHIN)
    mitres = [joint for joint in bench.joints if joint.kind == "mitre"]
    assert len(mitres) == 2 * len(mitred_ends(bench))
    for joint in mitres:
        tilts = [m.value for m in joint.measures if m.name.startswith("tilt")]
        assert tilts == pytest.approx([45.0, 45.0], abs=1e-9)


def test_seat_height_is_base_and_case(bench: Bench) -> None:
    s = bench.spec
    top = facing(flat_faces(bench.part("top")), (0.0, 0.0, 1.0))
    assert top.offset == pytest.approx(s.number("base_height") + s.number("case_height"))
    derived = {row.name: row.value for row in bench.derived}
    assert derived["seat_height"] == pytest.approx(top.offset)


def test_a_plain_case_has_square_fronts() -> None:
    bench = bench_with(ALL["plain"])
    for name in ("top", "bottom"):
        fronts = [f for f in flat_faces(bench.part(name)) if f.normal[1] < -1e-9]
        fronts = [f for f in fronts if f.area > 1000.0]
        assert [f.offset for f in fronts] == pytest.approx([bench.spec.number("depth")])
        assert all_facing(fronts, (0.0, -1.0, 0.0), 1e-7) == fronts
