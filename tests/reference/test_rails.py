"""Rails with through tenons and their wedges, measured on the solids.

Source of the expected places: the description of trestles and panel feet, and plane geometry.  A
wedge stands at each end of the grain of the mortised piece: common practice, no source.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from shared.errors import MakerError
from tests.flat_faces import all_facing, facing, flat_faces
from tests.reference.benches import bench_with

WITHIN = 1e-6  # mm
X, Y, Z = np.eye(3)

TRESTLES = {
    "base": "trestles",
    "flare": 0,
    "length": 1500,
    "depth": 430,
    "base_height": 220,
    "inset_left": 60,
    "inset_right": 140,
    "inset_back_left": 40,
    "inset_back_right": 55,
    "inset_front_left": 70,
    "inset_front_right": 35,
    "rail_forward": 12,
    "rail_width": 66,
    "rail_height": 36,
    "rail_tenon_height": 18,
    "rail_shoulder": 9,
    "rail_wedge": 6,
}
PANELS = {
    "base": "panel feet",
    "flare": 0,
    "length": 1700,
    "depth": 400,
    "base_height": 300,
    "inset_left": 90,
    "inset_right": 160,
    "inset_back": 30,
    "inset_front": 50,
    "panel_thickness": 34,
    "panel_rail_height": 90,
    "panel_rail_down": 26,
    "panel_rail_forward": -15,
    "panel_shoulder": 11,
    "panel_wedge": 5,
}


def level(bench: Bench) -> tuple[float, float]:
    """The middle of a trestle's rail, Y and Z."""
    v = bench.spec.values
    ends = [-v["inset_back_left"], -v["inset_back_right"]]
    ends += [v[f"inset_front_{side}"] - v["depth"] for side in ("left", "right")]
    return sum(ends) / 4.0 - v["rail_forward"], v["base_height"] - v["stretcher_height"] / 2.0


def spans(bench: Bench, name: str, axis: np.ndarray) -> list[float]:
    """Where a part has faces square to an axis, from low to high."""
    faces = flat_faces(bench.part(name))
    low = [-face.offset for face in all_facing(faces, -axis)]
    return sorted([*low, *(face.offset for face in all_facing(faces, axis))])


@pytest.mark.parametrize("tenon", ["plain", "wedged"])
def test_rail_of_trestles(tenon: str) -> None:
    """Between the stretchers' insides, tenons to their outsides, in the middle of their height."""
    bench = bench_with({**TRESTLES, "rail_tenon": tenon})
    t = bench.spec.number("base_thickness")
    left, right = 60.0, 1500.0 - 140.0
    assert spans(bench, "rail", X) == pytest.approx([left, left + t, right - t, right], abs=WITHIN)
    y, z = level(bench)
    assert spans(bench, "rail", Y) == pytest.approx([y - 33, y - 24, y + 24, y + 33], abs=WITHIN)
    assert spans(bench, "rail", Z) == pytest.approx([z - 18, z - 9, z + 9, z + 18], abs=WITHIN)
    found = {size.name: size.value for size in bench.derived}
    assert found["rail_between"] == pytest.approx(right - left - 2.0 * t)
    assert found["rail_tenon_width"] == pytest.approx(48.0)


def test_trestles_stand_at_their_insets() -> None:
    bench = bench_with(TRESTLES)
    t = bench.spec.number("base_thickness")
    for side, low in (("left", 60.0), ("right", 1360.0 - t)):
        outer = spans(bench, f"stretcher_{side}", X)
        assert (outer[0], outer[-1]) == pytest.approx((low, low + t), abs=WITHIN)


def test_wedged_mortise_of_a_stretcher() -> None:
    """Longer outside than inside by the room at either end of the stretcher's grain; its ends lean
    by atan(6 / 40)."""
    bench = bench_with(TRESTLES)
    y, z = level(bench)
    t = bench.spec.number("base_thickness")
    faces = flat_faces(bench.part("stretcher_left"))
    roof, floor = (
        [face for face in all_facing(faces, way) if abs(face.offset - at) < 1e-3]
        for way, at in ((-Z, -(z + 9.1)), (Z, z - 9.1))
    )
    assert len(roof) == len(floor) == 1
    for sign in (1.0, -1.0):
        normal = np.array((-6.0, -sign * t, 0.0)) / math.hypot(6.0, t)
        end = facing(faces, normal, 1e-4)
        inside = np.array((60.0 + t, y + sign * 24.0, z))
        outside = np.array((60.0, y + sign * 30.0, z))
        for corner in (inside, outside):
            assert float(corner @ end.normal) == pytest.approx(end.offset, abs=WITHIN)


def test_wedges_fill_the_room_beside_the_tenon() -> None:
    bench = bench_with(TRESTLES)
    y, z = level(bench)
    for end, sign in (("back", 1.0), ("front", -1.0)):
        part = bench.part(f"wedge_left_{end}")
        corners = np.unique(
            np.round(np.concatenate([f.corners for f in flat_faces(part)]), 6), axis=0
        )
        expected = [
            (x, y + sign * off, z + h)
            for x, off in ((60.0, 24.0), (60.0, 30.0), (100.0, 24.0))
            for h in (-9.0, 9.0)
        ]
        assert corners == pytest.approx(np.array(sorted(expected)), abs=WITHIN)


@pytest.mark.parametrize("count", [2, 3])
@pytest.mark.parametrize("tenon", ["plain", "wedged"])
def test_panel_feet_and_their_rail(count: int, tenon: str) -> None:
    bench = bench_with({**PANELS, "panel_count": count, "panel_tenon": tenon})
    left, right, t = 90.0, 1540.0, 34.0
    for side, low in (("left", left), ("right", right - t)):
        assert spans(bench, f"panel_foot_{side}", X) == pytest.approx([low, low + t], abs=WITHIN)
    assert spans(bench, "rail", X) == pytest.approx([left, left + t, right - t, right], abs=WITHIN)
    derived = {size.name: size.value for size in bench.derived}
    assert derived["panel_rail_between"] == pytest.approx(right - left - 2.0 * t)
    assert derived["panel_tenon_height"] == pytest.approx(90.0 - 22.0)
    top, middle = 300.0 - 26.0, -(30.0 + 350.0) / 2.0 + 15.0
    assert spans(bench, "rail", Z) == pytest.approx([top - 90, top - 79, top - 11, top], abs=WITHIN)
    assert spans(bench, "rail", Y) == pytest.approx(
        [middle - 13, middle - 6, middle + 6, middle + 13], abs=WITHIN
    )
    if count == 3:
        between = spans(bench, "panel_foot_middle", X)
        assert between == pytest.approx([815.0 - t / 2.0, 815.0 + t / 2.0], abs=WITHIN)
        heights = spans(bench, "panel_foot_middle", Z)
        # Floor, relief, the passage as high as the rail, top.
        assert heights == pytest.approx([0.0, 10.0, top - 90, top, 300.0], abs=WITHIN)


def test_panels_wedge_above_and_below() -> None:
    bench = bench_with(PANELS)
    top = 300.0 - 26.0
    for side, edge, at in (("left", "upper", top - 11.0), ("right", "lower", top - 79.0)):
        faces = flat_faces(bench.part(f"wedge_{side}_{edge}"))
        toward = -Z if edge == "upper" else Z
        assert abs(facing(faces, toward).offset) == pytest.approx(at, abs=WITHIN)
    found = {size.name: size.value for size in bench.derived}
    assert found["panel_wedge_slope"] == pytest.approx(math.degrees(math.atan(5 / 34)))


def test_rails_are_trimmed_flush() -> None:
    """Left proud by 4 at both ends of the blank, flush with the stretchers when finished."""
    bench = bench_with({**TRESTLES, "proud": 4})
    rail = bench.part("rail")
    assert rail.allowance == 8.0
    assert rail.shape.blank.length == pytest.approx(1300.0 + 8.0)
    ends = spans(bench, "rail", X)
    assert (ends[0], ends[-1]) == pytest.approx((60.0, 1360.0), abs=WITHIN)


@pytest.mark.parametrize(
    ("base", "change", "because"),
    [
        ("trestles", {"rail_width": 140}, "run into a leg"),
        ("trestles", {"stretcher_height": 33}, "leave less than"),
        ("trestles", {"rail_height": 61}, "higher than the stretchers"),
        ("panel feet", {"panel_rail_down": 0}, "leave less than"),
        ("panel feet", {"panel_pad": 140}, "no relief"),
        ("plinth", {"inset_front": 200}, "room inside"),
        ("four legs", {"apron_tenon_length": 39}, "each other inside the leg"),
        ("four legs", {"leg_foot": 50}, "larger than the top"),
    ],
)
def test_what_cannot_be_built_says_why(base: str, change: dict[str, float], because: str) -> None:
    spec = set_values(default_spec(), {"base": base})
    with pytest.raises(MakerError, match=because):
        set_values(spec, dict(change))
