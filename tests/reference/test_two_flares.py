"""A case that flares at both ends, measured on the solids.

Source of the expected planes and sizes: the description of the case (at each end its own front
plane from D at the underside to D + F at the top face, run-outs sawn square, the bottom leaning
with each end to half way between the run-outs), vector products, the shoelace rule and integrals
worked by hand.  Flares 60 and 40; deep stretches 240 and 180; run-outs to 700 and 480 from their
ends.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.limits import set_values as changed
from geometry.dimensioning.bench_dimensions import dimensions
from geometry.solids.measure import volume_of
from shared.errors import MakerError
from tests.flat_faces import FlatFace, facing, flat_faces
from tests.reference.benches import TWO_FLARES, bench_with

SHARP = {**TWO_FLARES, "chamfer": 0}
SUFFIX = {"left": "", "right": "_right"}
WITHIN = 1e-6  # mm
UP = (0.0, 0.0, 1.0)


def front_plane(bench: Bench, end: str) -> tuple[np.ndarray, float]:
    """Outward unit normal and offset of an end's front plane, from three points of it."""
    s = bench.spec
    low = np.array((0.0, -s.number("depth"), s.number("base_height")))
    high = low + np.array((0.0, -s.number(f"flare{SUFFIX[end]}"), s.number("case_height")))
    normal = np.cross(high - low, np.array((-1.0, 0.0, 0.0)))
    normal /= np.linalg.norm(normal)
    return normal, float(low @ normal)


@pytest.mark.parametrize("end", ["left", "right"])
@pytest.mark.parametrize("part", ["top", "bottom", "end_panel"])
def test_each_end_has_its_own_front_plane(end: str, part: str) -> None:
    bench = bench_with(SHARP)
    normal, offset = front_plane(bench, end)
    name = f"end_panel_{end}" if part == "end_panel" else part
    face = facing(flat_faces(bench.part(name)), normal, 1e-4)
    assert face.offset == pytest.approx(offset, abs=WITHIN)
    whole, reach = 1200.0, {"top": (240.0, 180.0), "bottom": (710.0, 490.0)}
    if part in reach:
        # To the end of the deep stretch; the bottom's to (700 + 1200 - 480) / 2 = 710.
        left, right = reach[part]
        low, high = face.extent((1.0, 0.0, 0.0))
        if end == "left":
            assert (low, high) == pytest.approx((0.0, left), abs=WITHIN)
        else:
            assert (low, high) == pytest.approx((whole - right, whole), abs=WITHIN)


@pytest.mark.parametrize("end", ["left", "right"])
def test_each_run_out_is_square_and_straight(end: str) -> None:
    bench = bench_with(SHARP)
    s = bench.spec
    straight, stop, deep = (
        s.number(f"{name}{SUFFIX[end]}") for name in ("flare_straight", "flare_end", "flare")
    )
    knee, settled = np.array((straight, -360.0 - deep, 0.0)), np.array((stop, -360.0, 0.0))
    if end == "right":
        knee[0], settled[0] = 1200.0 - knee[0], 1200.0 - settled[0]
    along = settled - knee
    normal = np.cross(along, (0.0, 0.0, 1.0))
    normal *= -math.copysign(1.0, normal[1]) / np.linalg.norm(normal)
    face = facing(flat_faces(bench.part("top")), normal, 1e-4)
    assert face.normal[2] == pytest.approx(0.0, abs=1e-12)
    for point in (knee, settled):
        assert face.offset == pytest.approx(float(point @ normal), abs=WITHIN)


def test_area_of_the_seat_by_hand() -> None:
    """1200 x 360 and each flare over its deep stretch and half its run-out:
    432 000 + 60 x (240 + 460 / 2) + 40 x (180 + 300 / 2) = 473 400 mm²."""
    top: FlatFace = facing(flat_faces(bench_with(SHARP).part("top")), UP)
    assert top.area == pytest.approx(473_400.0, rel=1e-9)


def test_wood_that_the_bottom_gains_by_hand() -> None:
    """At z above its underside the bottom is z x F / H deeper, from the mitre at z to 710 and from
    there to the mitre at 1200 - z; integrated to 20 mm:
    0.2 (710 x 200 - 8000 / 3) + 2/15 (490 x 200 - 8000 / 3)."""
    gained = 0.2 * (710 * 200 - 8000 / 3) + 2 / 15 * (490 * 200 - 8000 / 3)
    flared = bench_with({**SHARP, "partition_count": 0})
    plain = bench_with({**SHARP, "partition_count": 0, "flare": 0, "flare_right": 0})
    difference = volume_of(flared.part("bottom").shape) - volume_of(plain.part("bottom").shape)
    assert difference == pytest.approx(gained, rel=1e-7)


def test_two_flares_alike_lean_in_one_plane() -> None:
    bench = bench_with({**SHARP, "flare_right": 60})
    normal, _ = front_plane(bench, "left")
    face = facing(flat_faces(bench.part("bottom")), normal, 1e-4)
    assert face.extent((1.0, 0.0, 0.0)) == pytest.approx((0.0, 1200.0), abs=WITHIN)
    assert bench.part("end_panel_left").shape.blank == bench.part("end_panel_right").shape.blank


@pytest.mark.parametrize("end", ["left", "right"])
def test_each_mitre_has_fronts_of_one_length(end: str) -> None:
    """The mitre's edge runs from D + F at the outside to D + F - F t / H at the inside arris."""
    bench = bench_with(SHARP)
    flare = bench.spec.number(f"flare{SUFFIX[end]}")
    joint = next(j for j in bench.joints if j.name == f"mitre_top_{end}")
    fronts = sorted(-corner[1] for corner in joint.contacts[0].corners)
    assert fronts == pytest.approx([0, 0, 360 + flare - flare * 20 / 300, 360 + flare])


def test_run_outs_keep_apart() -> None:
    spec = set_values(default_spec(), SHARP)
    assert limits(spec, "flare_end").maximum == pytest.approx(1200.0 - 480.0)
    assert limits(spec, "flare_end_right").maximum == pytest.approx(500.0)
    assert limits(spec, "length").minimum == pytest.approx(1180.0)
    with pytest.raises(MakerError, match="run into each other"):
        set_values(spec, {"flare_end": 721.0})


def test_a_second_flare_finds_room_and_leaves_again() -> None:
    """0.15 and 0.4 of 700 from the right, 0.2 and 0.6 of it from the left: 105, 280, 140, 420."""
    short = set_values(
        default_spec(),
        {"partition_count": 0, "flare_end": 690, "length": 700, "inset_left": 20},
    )
    both = changed(short, {"deep_end": "both"})
    places = [
        both.number(f"{n}{e}") for e in ("", "_right") for n in ("flare_straight", "flare_end")
    ]
    assert places == [140.0, 420.0, 105.0, 280.0]
    assert changed(both, {"deep_end": "left"}).number("flare_right") == 40.0


@pytest.mark.parametrize("length", [500.0, 700.9, 1000.9, 1001.3, 2999.7])
def test_two_flares_come_whatever_the_length(length: float) -> None:
    """Shares of 0.6 and 0.4 of the length must not be rounded into each other."""
    plain = set_values(
        default_spec(),
        {"partition_count": 0, "flare": 0, "length": length, "inset_left": 20, "inset_right": 20},
    )
    kept = plain.changed({"flare_end": 3000.0, "flare_straight": 2900.0})
    both = set_values(kept, {"deep_end": "both"})
    assert both.number("flare_end") + both.number("flare_end_right") <= length


def test_every_station_of_both_ends_is_dimensioned() -> None:
    names = {dimension.name for dimension in dimensions(bench_with(TWO_FLARES))}
    for name in ("flare", "flare_straight", "flare_end", "greatest_depth"):
        assert {name, f"{name}_right"} <= names
