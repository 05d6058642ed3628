"""Round wedged tenons and their bores, measured on the solids.

Source of the expected places: the description (the axis leans by rake and splay through the
middle that the insets give; bore right through; tenon flush with the board's upper face) and plane
trigonometry.  A flattened circle lies at most the chord error inside the true one.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import trimesh

from geometry.bench.above import above
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.leaning_bore import LeaningBore
from geometry.design.parameter import Value
from geometry.solids.cutting import placed
from shared.tolerances import CHORD_ERROR
from tests.flat_faces import FlatFace, between_deg, flat_faces
from tests.laws.test_solids import section
from tests.reference.benches import bench_with
from tests.reference.four_leg_frame import CORNERS, UP, Floats, grain, start

WITHIN = 1e-6  # mm
BOARD, HEIGHT = 30.0, 400.0

SEAT = {
    "base": "four legs",
    "leg_joint": "round tenons",
    "flare": 0,
    "left_end": "mitred",
    "right_end": "mitred",
    "partition_count": 0,
    "length": 1400,
    "depth": 420,
    "base_height": HEIGHT,
    "board_thickness": BOARD,
    "inset_left": 140,
    "inset_right": 180,
    "inset_back": 95,
    "inset_front": 80,
    "leg_tenon": 28,
    "leg_tenon_fit": 0.3,
    "leg_wedge": 5,
}
LEANS = ((0.0, 0.0), (0.0, 12.0), (9.0, 0.0), (8.0, 15.0), (17.0, 6.0))
TURNS = ("square to the length", "on the sightline")


@pytest.fixture(params=[(lean, turn) for lean in LEANS for turn in TURNS], ids=str)
def bench(request: pytest.FixtureRequest) -> Bench:
    (rake, splay), turn = request.param
    return bench_with({**SEAT, "rake": rake, "splay": splay, "leg_turn": turn})


def round_walls(faces: list[FlatFace], axis: Floats, at: Floats, radius: float) -> list[FlatFace]:
    """The chords of a round about an axis."""
    return [
        face
        for face in faces
        if abs(float(face.normal @ axis)) < 1e-6
        and abs(abs(face.offset - float(at @ face.normal)) - radius) < 2.0 * CHORD_ERROR
    ]


def test_bores_run_along_the_legs(bench: Bench) -> None:
    """All walls of a bore are parallel to the leg and as far from its axis as the radius says."""
    radius = (28.0 + 0.3) / 2.0
    faces = flat_faces(bench.part("bottom"))
    for corner in CORNERS:
        axis, at = grain(bench.spec.values, corner), start(bench.spec.values, corner)
        walls = round_walls(faces, axis, at, radius)
        # Chords of the flattened circle all the way round.
        assert len(walls) > 2.0 * math.pi / (2.0 * math.acos(1.0 - CHORD_ERROR / radius)) - 2.0
        for wall in walls:
            far = abs(wall.offset - float(at @ wall.normal))
            assert radius - CHORD_ERROR - WITHIN <= far <= radius + WITHIN
            lean = 90.0 - between_deg(wall.normal, UP)
            assert abs(lean) <= between_deg(-axis, UP) + 1e-6


def test_bores_are_where_their_legs_are(bench: Bench) -> None:
    """On the underside the rim's middle is at the insets; above it has moved inward by the board's
    thickness times either tangent."""
    value = bench.spec.values
    vertices = placed(bench.part("bottom")).vertices
    lean_x, lean_y = (math.tan(math.radians(value[name])) for name in ("splay", "rake"))
    for corner in CORNERS:
        low = start(value, corner)
        inward = np.array((1.0 if "left" in corner else -1.0, -1.0 if "back" in corner else 1.0))
        high = low[:2] + inward * BOARD * np.array((lean_x, lean_y))
        for z, middle in ((HEIGHT, low[:2]), (HEIGHT + BOARD, high)):
            rim = vertices[np.abs(vertices[:, 2] - z) < WITHIN][:, :2]
            rim = rim[np.linalg.norm(rim - middle, axis=1) < 25.0]
            assert len(rim) > 20
            box = (rim.min(axis=0) + rim.max(axis=0)) / 2.0
            assert box == pytest.approx(middle, abs=2.0 * CHORD_ERROR)


def test_bores_are_marked_on_the_underside(bench: Bench) -> None:
    """Tilt and sightline that the board's own cut states, from the vectors."""
    cuts = [cut for cut in bench.part("bottom").shape.cuts if isinstance(cut, LeaningBore)]
    assert len(cuts) == 4
    for corner in CORNERS:
        axis = grain(bench.spec.values, corner)
        at = bench.part("bottom").frame.to_local(tuple(start(bench.spec.values, corner)))
        (cut,) = (cut for cut in cuts if math.dist(cut.start, at) < WITHIN)
        assert cut.tilt_deg == pytest.approx(between_deg(axis, -UP), abs=1e-6)
        sightline = math.degrees(math.atan2(abs(axis[0]), abs(axis[1])))
        if cut.leans:
            assert cut.sightline_deg == pytest.approx(sightline, abs=1e-9)
        # From below: z = thickness is the underside, as the board's face side is up.
        assert cut.start[2] == pytest.approx(BOARD)


def test_tenons_are_round_flush_and_bear_on_a_level_shoulder(bench: Bench) -> None:
    for corner in CORNERS:
        axis, at = grain(bench.spec.values, corner), start(bench.spec.values, corner)
        leg = bench.part(f"leg_{corner}")
        faces, vertices = flat_faces(leg), placed(leg).vertices
        assert vertices[:, 2].max() == pytest.approx(HEIGHT + BOARD, abs=WITHIN)
        levels = [f for f in faces if between_deg(f.normal, UP) < 1e-4]
        assert {round(face.offset, 6) for face in levels} == {HEIGHT, HEIGHT + BOARD}
        assert len(round_walls(faces, axis, at, 14.0)) > 20
        above = vertices[vertices[:, 2] > HEIGHT + WITHIN] - at
        off = np.linalg.norm(above - np.outer(above @ axis, axis), axis=1)
        assert off.max() <= 14.0 + WITHIN


def test_wedges_spread_the_tenons_along_the_boards_grain(bench: Bench) -> None:
    """Both faces lean alike from the leg's axis, toward the ends of the bench; 5 thick where the
    axis meets the board's upper face, over three quarters of the tenon's length."""
    for corner in CORNERS:
        axis, at = grain(bench.spec.values, corner), start(bench.spec.values, corner)
        end = at - axis * BOARD / -axis[2]
        slot = 0.75 * BOARD / -axis[2]
        along_grain = np.array((1.0, 0.0, 0.0)) - axis * axis[0]
        along_grain /= np.linalg.norm(along_grain)
        slopes = [
            face
            for face in flat_faces(bench.part(f"wedge_{corner}"))
            if abs(float(face.normal @ along_grain)) > 0.9
        ]
        assert len(slopes) == 2
        for face in slopes:
            side = math.copysign(1.0, float(face.normal @ along_grain))
            for point, half in ((end, 2.5), (end + axis * slot, 0.0)):
                there = point + side * half * along_grain
                assert float(there @ face.normal) == pytest.approx(face.offset, abs=1e-6)


def test_default_round_tenon_by_hand() -> None:
    """20 mm of board, resultant 16.834: 20 / cos = 20.895 long; bore 25.2."""
    bench = bench_with({"base": "four legs", "leg_joint": "round tenons", "inset_right": 110})
    found = {size.name: size.value for size in bench.derived}
    assert found["leg_tenon_length"] == pytest.approx(20.895, abs=5e-4)
    joint = next(joint for joint in bench.joints if joint.kind == "round tenon")
    measured = {measure.name: measure.value for measure in joint.measures}
    assert measured["bore_diameter"] == pytest.approx(25.2)
    assert measured["bore_tilt"] == pytest.approx(16.834, abs=5e-4)
    assert measured["sightline"] == pytest.approx(62.323, abs=5e-4)


def test_the_shoulder_of_a_large_leaning_leg_is_whole() -> None:
    """A leg of 120 mm that leans 22 degrees backward and 5 sideways: its level section is a
    parallelogram with the section's own size square to it, 120 x 120 / cos(lean), though one corner
    of it rises beyond the tenon's end along the axis.  A lean of 22 and 5 has
    cos = 1 / sqrt(1 + tan² 22 + tan² 5)."""
    spec = set_values(default_spec(), {"base": "four legs"})
    spec = set_values(spec, {"base_height": 600.0, "depth": 700.0, "length": 1600.0})
    spec = set_values(spec, {"leg_joint": "round tenons"})
    spec = set_values(spec, {"inset_back": 150.0, "inset_front": 250.0, "inset_left": 300.0})
    spec = set_values(spec, {"leg_size": 120.0, "rake": 22.0, "splay": 5.0, "leg_tenon": 25.0})
    leg = placed(build(spec).part("leg_back_left"))
    below = 600.0 - 1e-3
    mesh = trimesh.Trimesh(leg.vertices, leg.solid.triangles, process=False)
    outline = section(mesh, 2, below)
    lean = 1.0 / math.sqrt(
        1.0 + math.tan(math.radians(22.0)) ** 2 + math.tan(math.radians(5.0)) ** 2
    )
    assert outline.area == pytest.approx(120.0 * 120.0 / lean, rel=1e-4)


def test_a_wedge_is_said_to_meet_its_slot_only_below_the_seat() -> None:
    spec = set_values(default_spec(), {"seat": "slab", "depth": 750.0, "seat_thickness": 20.0})
    spec = set_values(spec, {"base": "four legs", "base_height": 600.0})
    spec = set_values(spec, {"leg_joint": "round tenons"})
    spec = set_values(spec, {"leg_size": 46.0, "leg_turn": "on the sightline"})
    spec = set_values(spec, {"inset_back": 240.0, "inset_left": 300.0})
    spec = set_values(spec, {"rake": 30.0, "splay": 15.0, "leg_tenon": 41.0, "leg_wedge": 5.8})
    bench = build(spec)
    top = 600.0 + spec.number("seat_thickness")
    corners = [
        corner
        for joint in bench.joints
        if joint.kind == "wedge"
        for contact in joint.contacts
        for corner in contact.corners
    ]
    assert corners
    assert max(corner[2] for corner in corners) < top


def test_shoulders_lie_wholly_on_the_bottom_of_a_box() -> None:
    """A leg's section cut level is largest where rake and splay are both at their 30 degrees: half
    its diagonal is √½ of the size, longer by √(1 + 2 tan² 30); as far from the walls its axis
    keeps, and hardly farther."""
    legs: dict[str, Value] = {"base": "four legs", "leg_joint": "round tenons"}
    box: dict[str, Value] = {"seat": "box with a lid", "box_bottom_thickness": 20.0}
    spec = set_values(set_values(default_spec(), box), legs)
    board, size = above(spec), spec.number("leg_size")
    half = math.sqrt(0.5) * math.sqrt(1.0 + 2.0 * math.tan(math.radians(30.0)) ** 2) * size
    room = board.left[0] - spec.number("box_thickness")
    assert half <= room < 1.01 * half
    assert (board.back, board.front) == (-board.left[0], board.left[0] - spec.number("depth"))
