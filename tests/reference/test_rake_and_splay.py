"""Splayed legs as they are seen from the front and from the side, against a table.

A leg leans by the splay in the vertical plane of its stretcher: that splay is the table's
resultant, and the stretcher's bearing its sightline.  Seen square from the front the outer edge
then shows the table's splay, seen from the side its rake.

The columns of end cuts hold for a leg whose front face stays parallel to the bench's length; ours
stands in the plane of its stretcher, where the rows without rake apply.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.cuts.saw import SawCut
from tests.flat_faces import all_facing, between_deg, facing, flat_faces
from tests.reference.benches import bench_with
from tests.reference.crossed_frame import leg_vectors
from tests.reference.tables import PRINTED, rows

TABLE = rows("rake_and_splay.csv")
SIDE, FRONT = "rake_deg_side_view", "splay_deg_front_view"
HALF_DIAGONAL = 520.0  # mm from one tip to the middle, enough for every bearing below


def bench_for(row: dict[str, float]) -> Bench | None:
    """A bench whose legs lean as the row says; None where no bench has such a bearing."""
    bearing = math.radians(row["sightline_from_fore_aft_axis_deg"])
    dx, dy = 2 * HALF_DIAGONAL * math.sin(bearing), 2 * HALF_DIAGONAL * math.cos(bearing)
    length, depth = round(max(dx + 100.0, 300.0)), 700.0
    inset, fore = (length - dx) / 2.0, (depth - dy) / 2.0
    if dx < 150.0 or dy < 150.0:
        return None
    return bench_with(
        {
            "length": length,
            "depth": depth,
            "flare": 0,
            "partition_count": 0,
            "left_end": "mitred",
            "right_end": "mitred",
            "splay": row["resultant_deg"],
            "inset_left": inset,
            "inset_right": inset,
            "inset_back_left": fore,
            "inset_back_right": fore,
            "inset_front_left": fore,
            "inset_front_right": fore,
        }
    )


LEANING = [row for row in TABLE if row[SIDE] > 0 and row[FRONT] > 0 and row["resultant_deg"] < 30]


@pytest.mark.parametrize("row", LEANING, ids=lambda r: f"{r[SIDE]:g}/{r[FRONT]:g}")
def test_front_and_side_view_of_a_leg(row: dict[str, float]) -> None:
    bench = bench_for(row)
    if bench is None:
        assert min(row[SIDE], row[FRONT]) <= 0.2 * max(row[SIDE], row[FRONT])
        return
    faces = flat_faces(bench.part("leg_front_right"))
    out = leg_vectors(bench.spec.values, "front_right").out
    edge = facing(faces, out, 1e-4)
    # The outer edge runs where its plane meets the plane of the leg's side.
    run = np.cross(edge.normal, facing(faces, np.cross((0.0, 0.0, 1.0), out), 90.0).normal)
    down = run if run[2] < 0 else -run
    # The resultant is printed to 0.00005 deg, which is what the views can be off by.
    assert math.degrees(math.atan2(down[0], -down[2])) == pytest.approx(row[FRONT], abs=2e-4)
    assert math.degrees(math.atan2(-down[1], -down[2])) == pytest.approx(row[SIDE], abs=2e-4)
    low, high = edge.extent(down / np.linalg.norm(down))
    per_unit = (high - low) / bench.spec.number("base_height")
    assert per_unit == pytest.approx(row["leg_length_per_unit_height"], abs=1e-5)


def test_most_rows_of_the_table_are_benches() -> None:
    assert sum(bench_for(row) is not None for row in LEANING) > 100


IN_PLANE = [row for row in TABLE if row[SIDE] == 0 and row[FRONT] <= 30]


@pytest.mark.parametrize("row", IN_PLANE, ids=lambda r: f"{r[FRONT]:g}")
def test_end_cut_of_a_leg_in_the_plane_of_its_stretcher(row: dict[str, float]) -> None:
    """No rake in that plane: the mitre is the splay itself, the blade upright, the leg square."""
    bench = bench_with({"splay": row[FRONT]})
    leg = bench.part("leg_back_left")
    level = [c for c in leg.shape.cuts if isinstance(c, SawCut) and c.title.startswith("level")]
    assert len(level) == 2
    for cut in level:
        assert cut.swing_deg == pytest.approx(row["leg_end_mitre_deg"], abs=PRINTED)
        assert cut.tilt_deg == pytest.approx(row["leg_end_blade_tilt_deg"], abs=PRINTED)
    faces = flat_faces(leg)
    vectors = leg_vectors(bench.spec.values, "back_left")
    side = all_facing(faces, vectors.side, 1e-4)[0]
    edge = facing(faces, vectors.out, 1e-4)
    assert between_deg(side.normal, edge.normal) - 90.0 == pytest.approx(
        row["section_out_of_square_deg"], abs=1e-6
    )
    low, high = edge.extent(vectors.down)
    assert (high - low) / bench.spec.number("base_height") == pytest.approx(
        row["leg_length_per_unit_height"], abs=1e-5
    )
