"""A back rest measured on its solids: compound shoulders, places of rails and slats, volumes.

Sources: the table of rake and splay for the shoulder of a post that leans both ways (it is the end
of a leg turned upside down); vectors from the two leans alone; volumes and spaces by hand beside
each.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.design.parameter import Value
from geometry.solids.measure import volume_of
from tests.flat_faces import FlatFace, Floats, all_facing, between_deg, facing, flat_faces
from tests.reference.benches import bench_with
from tests.reference.tables import PRINTED, rows
from tests.unbored import unbored

RAKE, SPLAY = "rake_deg_side_view", "splay_deg_front_view"
ROWS = [row for row in rows("rake_and_splay.csv") if 0 < row[RAKE] <= 25 and 0 < row[SPLAY] <= 15]
UP = np.array((0.0, 0.0, 1.0))
WITHIN = 1e-6  # mm

SLAB: dict[str, Value] = {
    "seat": "slab",
    "seat_thickness": 45,
    "length": 1500,
    "depth": 480,
    "back_rest": "rails",
    "post_fixing": "tenoned into the seat",
    "post_in_left": 260,
    "post_in_right": 230,
    "post_width": 60,
    "rest_in": 90,
    "rest_gap": 80,
}


def leaning(row: dict[str, float], more: dict[str, Value] | None = None) -> Bench:
    return bench_with({**SLAB, "rest_rake": row[RAKE], "post_splay": row[SPLAY], **(more or {})})


def axis_of(row: dict[str, float], side: float) -> Floats:
    """The direction of an outer post: seen from the front it shows the splay, from the end the
    rake; ``side`` is -1 at the left."""
    run = np.array(
        (side * math.tan(math.radians(row[SPLAY])), math.tan(math.radians(row[RAKE])), 1.0)
    )
    return np.asarray(run / np.linalg.norm(run))


def back_plane(row: dict[str, float]) -> Floats:
    """The unit normal, forward, of the plane that holds the bench's length and the lean."""
    rake = math.radians(row[RAKE])
    return np.array((0.0, -math.cos(rake), math.sin(rake)))


def name(row: dict[str, float]) -> str:
    return f"{row[RAKE]:g}/{row[SPLAY]:g}"


def test_there_are_rows_enough() -> None:
    assert len(ROWS) > 60


@pytest.mark.parametrize("row", ROWS, ids=name)
def test_angles_derived(row: dict[str, float]) -> None:
    found = {size.name: size.value for size in leaning(row).derived}
    assert found["post_resultant"] == pytest.approx(row["resultant_deg"], abs=PRINTED)
    assert found["post_mitre"] == pytest.approx(row["leg_end_mitre_deg"], abs=PRINTED)
    assert found["post_tilt"] == pytest.approx(row["leg_end_blade_tilt_deg"], abs=PRINTED)
    assert found["rest_rail_mitre"] == pytest.approx(row["leg_end_mitre_deg"], abs=PRINTED)


FEW = [row for row in ROWS if row[RAKE] in (4, 12, 20) and row[SPLAY] in (4, 8, 14)]


@pytest.mark.parametrize("row", FEW, ids=name)
@pytest.mark.parametrize(("post", "side"), [("post_1", -1.0), ("post_2", 1.0)])
def test_shoulders_of_posts_lie_on_the_seat(row: dict[str, float], post: str, side: float) -> None:
    bench = leaning(row)
    faces, axis, front = flat_faces(bench.part(post)), axis_of(row, side), back_plane(row)
    across = np.cross(axis, front)
    shoulder = facing(faces, -UP, 1e-4)
    seat = bench.spec.number("base_height") + 45.0
    level = [face.offset for face in all_facing(faces, -UP, 1e-4)]
    assert sorted(level) == pytest.approx([-seat, 45.0 - seat], abs=WITHIN)
    # The blank stays square, its face in the plane of the back.
    for normal, size in ((front, 35.0), (across, 60.0)):
        one, other = facing(faces, normal, 1e-4), facing(faces, -normal, 1e-4)
        assert one.offset + other.offset == pytest.approx(size, abs=WITHIN)
    line = np.cross(front, shoulder.normal)
    mitre = between_deg(line, across)
    assert min(mitre, 180.0 - mitre) == pytest.approx(row["leg_end_mitre_deg"], abs=PRINTED)
    tilt = abs(90.0 - between_deg(front, shoulder.normal))
    assert tilt == pytest.approx(row["leg_end_blade_tilt_deg"], abs=PRINTED)


@pytest.mark.parametrize("row", FEW, ids=name)
def test_rails_end_on_the_posts(row: dict[str, float]) -> None:
    bench = leaning(row)
    front = back_plane(row)
    for post, side in (("post_1", -1.0), ("post_2", 1.0)):
        inward = side * np.cross(front, axis_of(row, side))
        inward = inward if inward[0] * side < 0.0 else -inward
        on_post = facing(flat_faces(bench.part(post)), inward, 1e-4).offset
        for rail in ("top_rail", "rest_rail_1", "rest_rail_2"):
            planes = [f.offset for f in all_facing(flat_faces(bench.part(rail)), -inward, 1e-4)]
            # The tenons go 25 mm into the post, square to its side.
            assert sorted(planes) == pytest.approx([-on_post, 25.0 - on_post], abs=WITHIN)


@pytest.mark.parametrize("row", FEW, ids=name)
def test_slats_share_the_space_above_the_lower_rail(row: dict[str, float]) -> None:
    """Along the lower rail's upper edge: seven slats, eight equal spaces."""
    bench = leaning(row, {"back_rest": "slats", "slat_count": 7, "slat_width": 40})
    up = np.cross(np.array((1.0, 0.0, 0.0)), back_plane(row)) * -1.0
    up = up if up[2] > 0.0 else -up
    lower = facing(flat_faces(bench.part("rest_rail_1")), up, 1e-4)
    places = [inner_side(bench, row, "post_1", -1.0, lower)]
    for k in range(1, 8):
        faces = flat_faces(bench.part(f"slat_{k}"))
        places += [-facing(faces, (-1.0, 0.0, 0.0)).offset, facing(faces, (1.0, 0.0, 0.0)).offset]
    places.append(inner_side(bench, row, "post_2", 1.0, lower))
    spaces = np.diff(places)[::2]
    assert np.diff(places)[1::2] == pytest.approx([40.0] * 7, abs=WITHIN)
    assert spaces == pytest.approx([spaces.mean()] * 8, abs=1e-6)


def inner_side(
    bench: Bench, row: dict[str, float], post: str, side: float, level: FlatFace
) -> float:
    """X where a post's inner side crosses the upper edge of the lower rail, on its front."""
    front = back_plane(row)
    inward = np.cross(front, axis_of(row, side))
    inward = inward if inward[0] * side < 0.0 else -inward
    face = facing(flat_faces(bench.part(post)), inward, 1e-4)
    outer = facing(flat_faces(bench.part(post)), front, 1e-4)
    planes = np.array((inward, front, level.normal))
    return float(np.linalg.solve(planes, np.array((face.offset, outer.offset, level.offset)))[0])


def test_volumes_of_a_plain_rest_by_hand() -> None:
    """Posts 45 x 35: upright 300 mm, then 420 / cos 12 along the lean; at the knee the strip is
    mitred, which takes 35 tan 6 off both back edges together.  Mortises 8.2 x (width - 16) x 26.
    Rails between posts 90 in at either end: 1200 - 180 - 90 = 930, and tenons of 25.  The post is
    taken before it is bored for its screws."""
    bench = bench_with({"back_rest": "rails"})
    run = 420.0 / math.cos(math.radians(12.0))
    strip = 35.0 * (300.0 + run - 35.0 * math.tan(math.radians(6.0)))
    post = 45.0 * strip - 8.2 * 26.0 * (64.0 + 39.0 + 39.0)
    shape = unbored(bench, "post_1").shape
    assert len(shape.cuts) < len(bench.part("post_1").shape.cuts)
    assert volume_of(shape) == pytest.approx(post, rel=1e-9)
    top = 930.0 * 80.0 * 22.0 + 2.0 * 25.0 * 64.0 * 8.0
    other = 930.0 * 55.0 * 22.0 + 2.0 * 25.0 * 39.0 * 8.0
    assert volume_of(bench.part("top_rail").shape) == pytest.approx(top, rel=1e-9)
    assert volume_of(bench.part("rest_rail_2").shape) == pytest.approx(other, rel=1e-9)


def test_rows_of_rails_by_hand() -> None:
    """Along the lean 420 / cos 12 = 429.383 in all; 12 above the top rail, 80 of it, two of 55.
    The lowest begins where its front arris is 60 above the seat: (60 + 4 sin 12) / cos 12 = 62.191.
    """
    bench = bench_with({"back_rest": "rails"})
    found = {size.name: size.value for size in bench.derived}
    lowest = (60.0 + 4.0 * math.sin(math.radians(12.0))) / math.cos(math.radians(12.0))
    assert lowest == pytest.approx(62.191, abs=5e-4)
    clear = 420.0 / math.cos(math.radians(12.0)) - 12.0 - 80.0 - 2.0 * 55.0 - lowest
    assert found["rest_rail_space"] == pytest.approx(clear / 2.0, abs=WITHIN)
    lean = np.array((0.0, math.sin(math.radians(12.0)), math.cos(math.radians(12.0))))
    edges = []
    for rail in ("rest_rail_2", "rest_rail_1", "top_rail"):
        faces = flat_faces(bench.part(rail))
        edges += [-facing(faces, -lean, 1e-4).offset, facing(faces, lean, 1e-4).offset]
    gaps = np.diff(edges)
    assert gaps == pytest.approx([55.0, clear / 2.0, 55.0, clear / 2.0, 80.0], abs=WITHIN)


def test_a_volume_of_slats_by_hand() -> None:
    """Nine slats of 45 x 12 between rails, their tenons 39 x 12 x 12; the rail's mortises 12.2 x 39
    x 13, and its own tenons 64 x 8 x 25."""
    bench = bench_with({"back_rest": "slats"})
    found = {size.name: size.value for size in bench.derived}
    slat = found["rest_rail_space"] * 45.0 * 12.0 + 2.0 * 39.0 * 12.0 * 12.0
    assert volume_of(bench.part("slat_5").shape) == pytest.approx(slat, rel=1e-9)
    top = 930.0 * 80.0 * 22.0 + 2.0 * 25.0 * 64.0 * 8.0 - 9.0 * 12.2 * 39.0 * 13.0
    assert volume_of(bench.part("top_rail").shape) == pytest.approx(top, rel=1e-9)
    # 930 between the posts, nine slats of 45: ten spaces of 52.5.
    assert found["slat_space"] == pytest.approx(52.5, abs=WITHIN)


def test_posts_let_in_by_hand() -> None:
    """Notches 45.2 x 10 through the slab of 45; the posts' fronts stand 10 in from the edge."""
    bench = bench_with(
        {"seat": "slab", "seat_thickness": 45, "back_rest": "rails", "post_let_in": 10}
    )
    whole = 1200.0 * 360.0 * 45.0
    assert volume_of(bench.part("seat").shape) == pytest.approx(
        whole - 2.0 * 45.2 * 10.0 * 45.0, rel=1e-12
    )
    front = facing(flat_faces(bench.part("post_1")), (0.0, -1.0, 0.0))
    assert front.offset == pytest.approx(10.0, abs=WITHIN)
