"""Aprons and their compound shoulders, measured on the solids.

Source of the expected angles: the table of rake and splay (an end apron leans by the splay and
meets a face that leans by the rake, so it is the same leg end with the two angles changed over,
and its blade tilt the table's last column), and the table of compound mitres for the angle between
two aprons that lean alike.  Vectors come from the description in ``four_leg_frame``.
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from shared.errors import CannotBuild
from tests.flat_faces import FlatFace, all_facing, between_deg, facing, flat_faces
from tests.reference.benches import bench_with
from tests.reference.four_leg_frame import (
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

STOUT = {
    "base": "four legs",
    "flare": 0,
    "length": 1500,
    "depth": 760,
    "base_height": 420,
    "inset_left": 210,
    "inset_right": 240,
    "inset_back": 200,
    "inset_front": 205,
    "leg_size": 90,
    "leg_foot": 50,
    "apron_height": 50,
    "apron_thickness": 24,
    "apron_reveal": 12,
    "apron_tenon": 8,
    "apron_tenon_length": 30,
    "apron_shoulder": 6,
}


def name(row: dict[str, float]) -> str:
    return f"{row[RAKE]:g}/{row[SPLAY]:g}"


def buildable(row: dict[str, float]) -> bool:
    try:
        set_values(default_spec(), {**STOUT, "rake": row[RAKE], "splay": row[SPLAY]})
    except CannotBuild:
        return False
    return True


ROWS = [row for row in TABLE if buildable(row)]
FEW = [row for row in ROWS if row[RAKE] in (0, 6, 15, 20) and row[SPLAY] in (0, 8, 16)]


def leaning(row: dict[str, float]) -> Bench:
    return bench_with({**STOUT, "rake": row[RAKE], "splay": row[SPLAY]})


def test_nearly_the_whole_table_can_be_built() -> None:
    assert len(ROWS) > 170
    assert any(row[RAKE] == 25 for row in ROWS)
    assert any(row[SPLAY] == 25 for row in ROWS)


@pytest.mark.parametrize("row", ROWS, ids=name)
def test_shoulders_derived(row: dict[str, float]) -> None:
    found = {size.name: size.value for size in leaning(row).derived}
    over = next(r for r in TABLE if r[RAKE] == row[SPLAY] and r[SPLAY] == row[RAKE])
    for size, expected in (
        ("apron_front_mitre", row["leg_end_mitre_deg"]),
        ("apron_front_tilt", 0.0),
        ("apron_front_bevel", row[RAKE]),
        ("apron_right_mitre", over["leg_end_mitre_deg"]),
        ("apron_right_tilt", row["section_out_of_square_deg"]),
        ("apron_right_bevel", row[SPLAY]),
    ):
        assert found[size] == pytest.approx(expected, abs=PRINTED), size


def apron_sides(bench: Bench, side: str) -> tuple[list[FlatFace], Floats, Floats]:
    """An apron's faces, the outward normal of its outer face, and the direction of its grain."""
    lean = np.radians(bench.spec.number("rake" if side in ("front", "back") else "splay"))
    out = {"front": -DEPTH, "back": DEPTH, "left": -LENGTH, "right": LENGTH}[side]
    normal = out * np.cos(lean) + UP * np.sin(lean)
    return flat_faces(bench.part(f"apron_{side}")), normal, np.cross(UP, out)


SIDES = {
    "front": ("front_left", "front_right"),
    "back": ("back_left", "back_right"),
    "left": ("back_left", "front_left"),
    "right": ("back_right", "front_right"),
}


@pytest.mark.parametrize("row", FEW, ids=name)
@pytest.mark.parametrize("side", SIDES)
def test_shoulders_lie_on_the_legs_and_are_sawn_as_the_table_says(
    row: dict[str, float], side: str
) -> None:
    bench = leaning(row)
    value = bench.spec.values
    faces, out, along = apron_sides(bench, side)
    over = next(r for r in TABLE if r[RAKE] == row[SPLAY] and r[SPLAY] == row[RAKE])
    long = side in ("front", "back")
    for corner in SIDES[side]:
        toward = side_face(value, corner) if long else front_face(value, corner)
        # The leg's inner face is its size behind the outer one.
        inner = float(start(value, corner) @ toward) - value["leg_size"]
        planes = sorted(face.offset for face in all_facing(faces, toward, 1e-4))
        length = value["apron_tenon_length"]
        assert planes == pytest.approx([inner, inner + length], abs=WITHIN)
        legs = [
            f.offset for f in all_facing(flat_faces(bench.part(f"leg_{corner}")), -toward, 1e-4)
        ]
        # The leg's own inner face, and the floor of the mortise a millimetre beyond the tenon.
        assert any(-offset == pytest.approx(inner, abs=WITHIN) for offset in legs)
        assert any(-offset == pytest.approx(inner + length + 1.0, abs=WITHIN) for offset in legs)
        tilt = abs(90.0 - between_deg(out, toward))
        line = np.cross(out, toward)
        mitre = between_deg(line, np.cross(out, along))
        mitre = min(mitre, 180.0 - mitre)
        assert mitre == pytest.approx((row if long else over)["leg_end_mitre_deg"], abs=PRINTED), (
            corner
        )
        assert tilt == pytest.approx(0.0 if long else row["section_out_of_square_deg"], abs=PRINTED)


@pytest.mark.parametrize("row", FEW, ids=name)
@pytest.mark.parametrize("side", SIDES)
def test_an_apron_stands_and_leans_where_it_should(row: dict[str, float], side: str) -> None:
    """Outer face a reveal behind the outer arrises, upper edge level, lower outer arris level."""
    bench = leaning(row)
    value = bench.spec.values
    faces, out, _ = apron_sides(bench, side)
    outer, inner, top = facing(faces, out, 1e-4), facing(faces, -out, 1e-4), facing(faces, UP, 1e-4)
    arris = start(value, SIDES[side][0])
    assert outer.offset == pytest.approx(float(arris @ out) - value["apron_reveal"], abs=WITHIN)
    assert outer.offset + inner.offset == pytest.approx(value["apron_thickness"], abs=WITHIN)
    assert top.offset == pytest.approx(value["base_height"], abs=WITHIN)
    low = outer.extent(UP)[0]
    assert low == pytest.approx(value["base_height"] - value["apron_height"], abs=WITHIN)


@pytest.mark.parametrize("row", FEW, ids=name)
@pytest.mark.parametrize("side", SIDES)
def test_tenon_in_the_middle_of_the_apron(row: dict[str, float], side: str) -> None:
    bench = leaning(row)
    faces, out, _ = apron_sides(bench, side)
    t, tenon = bench.spec.number("apron_thickness"), bench.spec.number("apron_tenon")
    for sign in (1.0, -1.0):
        planes = sorted(face.offset for face in all_facing(faces, sign * out, 1e-4))
        middle = sign * (facing(faces, out, 1e-4).offset - t / 2.0)
        assert [plane - middle for plane in planes] == pytest.approx(
            [tenon / 2.0, t / 2.0], abs=WITHIN
        )


PYRAMIDS = [row for row in rows("compound_mitres.csv") if row["sides_N"] == 4]


@pytest.mark.parametrize(
    "row",
    [row for row in PYRAMIDS if row["pitch_from_horizontal_deg"] >= 65],
    ids=lambda row: f"{row['pitch_from_horizontal_deg']:g}",
)
def test_aprons_that_lean_alike_make_the_corner_of_a_hopper(row: dict[str, float]) -> None:
    """Inside angle between two neighbouring aprons, of four sides at that pitch."""
    lean = 90.0 - row["pitch_from_horizontal_deg"]
    try:
        bench = leaning({RAKE: lean, SPLAY: lean})
    except CannotBuild:
        assert lean > 18.0
        return
    outers = []
    for side in ("front", "right"):
        faces, out, _ = apron_sides(bench, side)
        outers.append(facing(faces, out, 1e-4).normal)
    assert 180.0 - between_deg(*outers) == pytest.approx(row["interior_dihedral_deg"], abs=PRINTED)


def test_default_aprons_by_hand() -> None:
    """Upright legs: 1200 - 140 between the outer arrises, less two legs of 45; the width of the
    blank is the height; the tenons 20 long at both ends."""
    bench = bench_with({"base": "four legs", "splay": 0, "rake": 0})
    found = {size.name: size.value for size in bench.derived}
    assert found["apron_front_between"] == pytest.approx(970.0, abs=WITHIN)
    assert found["apron_right_between"] == pytest.approx(360.0 - 80.0 - 90.0, abs=WITHIN)
    blank = bench.part("apron_front").shape.blank
    assert (blank.length, blank.width, blank.thickness) == pytest.approx((1010.0, 60.0, 22.0))


def test_leaning_aprons_are_longer_below() -> None:
    """By the legs' lean over the height, at both ends: 2 x 60 x tan 15 along the outer face."""
    bench = bench_with({"base": "four legs", "flare": 0})
    faces, out, along = apron_sides(bench, "front")
    shoulder = [side_face(bench.spec.values, corner) for corner in SIDES["front"]]
    outer = facing(faces, out, 1e-4)
    runs = []
    for height in (150.0, 90.0):
        ends = []
        for normal in shoulder:
            plane = min(face.offset for face in all_facing(faces, normal, 1e-4))
            point = np.linalg.solve(
                np.array((outer.normal, normal, UP)), np.array((outer.offset, plane, height))
            )
            ends.append(float(point @ along))
        runs.append(abs(ends[1] - ends[0]))
    assert runs[1] - runs[0] == pytest.approx(2.0 * 60.0 * np.tan(np.radians(15.0)), abs=1e-6)
    assert signs("front_left")[0] < 0 < signs("front_right")[0]
    assert grain(bench.spec.values, "front_left")[0] < 0
