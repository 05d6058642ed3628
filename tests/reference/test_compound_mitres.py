"""Mitres of the case against a table of compound mitres.

A case of four boards is the table's four-sided frame with upright walls: pitch 90, blade tilt 45.
Where the front leans, its plane and the plane of the mitre are two walls of a square plan, the
one pitched 90 - lean from the horizontal, the other 45; with F = H both are 45 and the table has
the angle between them.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.cuts.saw import SawCut
from tests.flat_faces import FlatFace, between_deg, facing, flat_faces
from tests.reference.benches import bench_with
from tests.reference.tables import PRINTED, rows

FOUR_SIDES = {
    row["pitch_from_horizontal_deg"]: row
    for row in rows("compound_mitres.csv")
    if row["sides_N"] == 4
}
SHARP = {"chamfer": 0, "right_end": "mitred", "partition_count": 0}


def test_case_is_a_four_sided_frame_with_upright_walls() -> None:
    bench = bench_with(SHARP)
    upright = FOUR_SIDES[90.0]
    for name in ("top", "bottom", "end_panel_left", "end_panel_right"):
        cuts = [c for c in bench.part(name).shape.cuts if isinstance(c, SawCut)]
        mitres = [c for c in cuts if c.title == "mitre"]
        assert len(mitres) == 2
        for cut in mitres:
            assert cut.swing_deg == pytest.approx(upright["mitre_deg"], abs=PRINTED)
            assert cut.tilt_deg == pytest.approx(upright["blade_tilt_deg"], abs=PRINTED)


def planes(bench: Bench) -> tuple[FlatFace, FlatFace, FlatFace]:
    """The bottom's leaning front, its left mitre and its left mitre's partner on the panel."""
    lean = math.radians(lean_deg(bench))
    front = (0.0, -math.cos(lean), -math.sin(lean))
    half = math.sqrt(0.5)
    bottom, panel = flat_faces(bench.part("bottom")), flat_faces(bench.part("end_panel_left"))
    return (
        facing(bottom, front, 1e-4),
        facing(bottom, (-half, 0.0, half), 1e-4),
        facing(panel, (half, 0.0, -half), 1e-4),
    )


def lean_deg(bench: Bench) -> float:
    return math.degrees(math.atan(bench.spec.number("flare") / bench.spec.number("case_height")))


def test_front_leaning_45_meets_the_mitre_as_the_table_says() -> None:
    """N = 4, pitch 45: interior angle 120, and on either wall a mitre of 35.264 deg."""
    bench = bench_with({**SHARP, "case_height": 240, "flare": 240})
    row = FOUR_SIDES[45.0]
    front, mitre, other = planes(bench)
    assert between_deg(front.normal, (0.0, -1.0, 0.0)) == pytest.approx(45.0, abs=1e-6)
    # In the bottom the wood fills one side of the corner, in the panel the other.
    interior = {180.0 - between_deg(front.normal, m.normal) for m in (mitre, other)}
    table = row["interior_dihedral_deg"]
    assert sorted(interior) == pytest.approx([180.0 - table, table], abs=PRINTED)
    line = np.cross(front.normal, mitre.normal)
    up_the_front = np.array((0.0, -math.sqrt(0.5), math.sqrt(0.5)))
    turned = between_deg(line, up_the_front)
    assert min(turned, 180.0 - turned) == pytest.approx(row["mitre_deg"], abs=PRINTED)


@pytest.mark.parametrize("flare", [15, 60, 110, 200, 299])
def test_leaning_fronts_meet_the_mitre_as_walls_of_unequal_slope(flare: float) -> None:
    """Square plan, walls pitched p1 = 90 - lean and p2 = 45: between them
    180 - acos(cos p1 cos p2), and on the front tan M = sin p1 / tan p2
    (derived from plane geometry, 20 000 random pairs)."""
    bench = bench_with({**SHARP, "flare": flare})
    p1, p2 = math.radians(90.0 - lean_deg(bench)), math.radians(45.0)
    front, mitre, other = planes(bench)
    table = 180.0 - math.degrees(math.acos(math.cos(p1) * math.cos(p2)))
    interior = [180.0 - between_deg(front.normal, m.normal) for m in (mitre, other)]
    assert sorted(interior) == pytest.approx(sorted([table, 180.0 - table]), abs=1e-6)
    line = np.cross(front.normal, mitre.normal)
    up_the_front = np.array((0.0, -math.cos(p1), math.sin(p1)))
    turned = between_deg(line, up_the_front)
    expected = math.degrees(math.atan(math.sin(p1) / math.tan(p2)))
    assert min(turned, 180.0 - turned) == pytest.approx(expected, abs=1e-6)
