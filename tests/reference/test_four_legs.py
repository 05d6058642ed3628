"""Four legs against the table of rake and splay, through derived sizes and on the solids.

The table's leg-end columns hold for a leg whose front face stays parallel to the bench's length,
laid with that face on the saw.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from tests.flat_faces import FlatFace, between_deg, facing, flat_faces
from tests.reference.benches import bench_with
from tests.reference.four_leg_frame import (
    CORNERS,
    DEPTH,
    LENGTH,
    UP,
    Floats,
    front_face,
    grain,
    side_face,
    signs,
    start,
)
from tests.reference.tables import PRINTED, rows

TABLE = rows("rake_and_splay.csv")
RAKE, SPLAY = "rake_deg_side_view", "splay_deg_front_view"
WITHIN = 1e-6  # mm

# Straight legs with round tenons, which any lean of the table leaves room for.
WIDE = {
    "base": "four legs",
    "leg_joint": "round tenons",
    "flare": 0,
    "left_end": "mitred",
    "right_end": "mitred",
    "partition_count": 0,
    "length": 1800,
    "depth": 700,
    "base_height": 420,
    "board_thickness": 28,
    "inset_left": 260,
    "inset_right": 300,
    "inset_back": 150,
    "inset_front": 180,
    "leg_size": 46,
    "leg_foot": 46,
}


def name(row: dict[str, float]) -> str:
    return f"{row[RAKE]:g}/{row[SPLAY]:g}"


def leaning(row: dict[str, float], **others: object) -> Bench:
    return bench_with({**WIDE, "rake": row[RAKE], "splay": row[SPLAY], **others})


def derived(bench: Bench) -> dict[str, float]:
    return {size.name: size.value for size in bench.derived}


def test_the_whole_table_is_there() -> None:
    """Fourteen angles from 0 to 25 degrees, each with each."""
    assert len(TABLE) == 196
    assert {row[RAKE] for row in TABLE} == {row[SPLAY] for row in TABLE}
    assert max(row[RAKE] for row in TABLE) == 25.0


@pytest.mark.parametrize("row", TABLE, ids=name)
def test_derived_sizes_are_those_of_the_table(row: dict[str, float]) -> None:
    bench = leaning(row)
    found = derived(bench)
    for size, column in (
        ("leg_resultant", "resultant_deg"),
        ("leg_sightline", "sightline_from_fore_aft_axis_deg"),
        ("leg_sightline_along", "sightline_from_side_to_side_axis_deg"),
        ("leg_end_mitre", "leg_end_mitre_deg"),
        ("leg_end_tilt", "leg_end_blade_tilt_deg"),
        ("bore_tilt", "resultant_deg"),
    ):
        assert found[size] == pytest.approx(row[column], abs=PRINTED), size
    per_unit = found["leg_length"] / bench.spec.number("base_height")
    assert per_unit == pytest.approx(row["leg_length_per_unit_height"], abs=6e-6)


@pytest.mark.parametrize("row", TABLE, ids=name)
def test_leg_ends_measured_on_the_solid_are_those_of_the_table(row: dict[str, float]) -> None:
    bench = leaning(row)
    for corner in CORNERS:
        faces = flat_faces(bench.part(f"leg_{corner}"))
        front, side, foot = (
            facing(faces, toward, 1e-4)
            for toward in (
                front_face(bench.spec.values, corner),
                side_face(bench.spec.values, corner),
                -UP,
            )
        )
        assert foot.offset == pytest.approx(0.0, abs=WITHIN)
        mitre, tilt = saw_settings(front, side, foot)
        assert mitre == pytest.approx(row["leg_end_mitre_deg"], abs=PRINTED)
        assert tilt == pytest.approx(row["leg_end_blade_tilt_deg"], abs=PRINTED)


def saw_settings(face: FlatFace, edge: FlatFace, end: FlatFace) -> tuple[float, float]:
    """How an end is sawn with ``face`` on the saw and ``edge`` at the fence, from square."""
    along = np.cross(face.normal, edge.normal)
    line = np.cross(face.normal, end.normal)
    across = np.cross(along, face.normal)
    mitre = between_deg(line, across)
    tilt = 90.0 - between_deg(face.normal, end.normal)
    return min(mitre, 180.0 - mitre), abs(tilt)


@pytest.mark.parametrize("row", TABLE, ids=name)
def test_out_of_square_by_vectors(row: dict[str, float]) -> None:
    """The table's last column: between the planes through the leg along the length and across."""
    value = leaning(row).spec.values
    planes = [np.cross(axis, grain(value, "front_right")) for axis in (LENGTH, DEPTH)]
    assert abs(between_deg(*planes) - 90.0) == pytest.approx(
        row["section_out_of_square_deg"], abs=PRINTED
    )


SOME = [row for row in TABLE if row[RAKE] in (0, 4, 12, 25) and row[SPLAY] in (0, 5, 16, 25)]


@pytest.mark.parametrize("row", SOME, ids=name)
def test_a_turned_leg_needs_no_tilt(row: dict[str, float]) -> None:
    """Two of its faces are upright, so the ends are mitred by the resultant, the blade square."""
    bench = leaning(row, leg_turn="on the sightline")
    found = derived(bench)
    assert found["leg_end_mitre"] == pytest.approx(row["resultant_deg"], abs=PRINTED)
    assert found["leg_end_tilt"] == pytest.approx(0.0, abs=1e-9)
    for corner in CORNERS:
        faces = flat_faces(bench.part(f"leg_{corner}"))
        down = grain(bench.spec.values, corner)
        plane = np.cross(down, UP)
        if np.linalg.norm(plane) < 1e-9:
            continue
        upright = facing(faces, plane / np.linalg.norm(plane), 1e-4)
        assert abs(upright.normal[2]) < 1e-9


@pytest.mark.parametrize("row", SOME, ids=name)
@pytest.mark.parametrize("turn", ["square to the length", "on the sightline"])
def test_a_straight_leg_is_as_wide_and_long_as_it_should_be(
    row: dict[str, float], turn: str
) -> None:
    """Section square, round the axis; from the underside to the floor H / cos(resultant)."""
    bench = leaning(row, leg_turn=turn)
    value = bench.spec.values
    for corner in CORNERS:
        down, axis = grain(value, corner), start(value, corner)
        sides = [f for f in flat_faces(bench.part(f"leg_{corner}")) if lengthwise(f, down)]
        assert len(sides) == 4
        for side in sides:
            assert side.offset - float(axis @ side.normal) == pytest.approx(23.0, abs=WITHIN)
            others = sorted(between_deg(side.normal, other.normal) for other in sides)
            assert others == pytest.approx([0.0, 90.0, 90.0, 180.0], abs=1e-6)
        assert derived(bench)["leg_length"] == pytest.approx(420.0 / -down[2], abs=WITHIN)


def lengthwise(face: FlatFace, down: Floats) -> bool:
    return abs(float(face.normal @ down)) < 1e-9 and face.area > 0.6 * 46.0 * 420.0


def test_tapered_leg_of_an_apron_base_by_hand() -> None:
    """Outer arris straight from the inset; the foot 30 x 30 square to it where it meets the
    floor, and the two outer faces untouched."""
    bench = bench_with({"base": "four legs", "flare": 0, "base_height": 300})
    value = bench.spec.values
    for corner in CORNERS:
        faces = flat_faces(bench.part(f"leg_{corner}"))
        arris = start(value, corner)
        for toward in (front_face(value, corner), side_face(value, corner)):
            outer = facing(faces, toward, 1e-4)
            assert outer.offset == pytest.approx(float(arris @ toward), abs=WITHIN)
            (tapered,) = (
                f for f in faces if 0.5 < between_deg(f.normal, -toward) < 10.0 and f.area > 1500.0
            )
            # At the floor of the outer arris the tapered face is 30 away from the outer one.
            foot = arris + grain(value, corner) * 300.0 / -grain(value, corner)[2]
            inner = foot - 30.0 * toward
            assert float(inner @ tapered.normal) == pytest.approx(tapered.offset, abs=WITHIN)


def test_default_legs_by_hand() -> None:
    """tan 15 = 0.267949, tan 8 = 0.140541: resultant atan 0.302570 = 16.834; sightline
    atan 1.906556 = 62.323; 150 x 1.044772 = 156.716; feet out 40.192 and 21.081."""
    found = derived(bench_with({"base": "four legs"}))
    assert found["leg_resultant"] == pytest.approx(16.834, abs=5e-4)
    assert found["leg_sightline"] == pytest.approx(62.323, abs=5e-4)
    assert found["leg_length"] == pytest.approx(156.716, abs=5e-4)
    assert found["foot_out_along"] == pytest.approx(40.192, abs=5e-4)
    assert found["foot_out_across"] == pytest.approx(21.081, abs=5e-4)
    assert math.hypot(0.267949, 0.140541) == pytest.approx(0.302570, abs=1e-6)


def test_every_leg_leans_outward() -> None:
    bench = bench_with(WIDE)
    for corner in CORNERS:
        along, across = signs(corner)
        down = grain(bench.spec.values, corner)
        assert down[0] * along > 0
        assert down[1] * across > 0
        low = facing(flat_faces(bench.part(f"leg_{corner}")), -UP).corners.mean(axis=0)
        high = start(bench.spec.values, corner)
        assert (low - high)[0] * along > 0
        assert (low - high)[1] * across > 0
