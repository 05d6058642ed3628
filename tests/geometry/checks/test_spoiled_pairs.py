"""Spoiled benches for the checks of pieces that are taken for one another; amounts by hand."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from tests.samples import of_check

FOLDER = Path(__file__).parents[3] / "sample_projects"
SAMPLES = sorted(FOLDER.glob("*.settle"))


def _sample(name: str) -> BenchSpec:
    return load(FOLDER / f"{name}.settle").spec


# sample, what makes it a bench to spoil, the one change, amount, the parts told of
SPOILED: tuple[tuple[str, dict[str, Value], dict[str, Value], float, set[str]], ...] = (
    # Openings 2 and 3 are both 360 mm wide; partition 2 moved by 1 makes them 361 and 359.
    (
        "reading_room_bench",
        {"opening_2_fill": "shelf", "opening_3_fill": "shelf"},
        {"partition_2": 801.0},
        2.0,
        {"shelf_2", "shelf_3"},
    ),
    # Each front is the step taller than the one above.
    (
        "sail_loft_bench",
        {},
        {"opening_1_step": 2.0},
        2.0,
        {
            *(f"drawer_1_{k}_{piece}" for k in (1, 2) for piece in ("front", "box_front", "back")),
            *(f"drawer_1_{k}_side_{end}" for k in (1, 2) for end in ("left", "right")),
        },
    ),
    # Flares of 70 and 69 over 260 mm of case, as far up as the chamfer of 2 mm leaves the front.
    (
        "map_room_bench",
        {},
        {"flare_right": 69.0},
        258.0 / 260.0,
        {"end_panel_left", "end_panel_right"},
    ),
)


@pytest.mark.parametrize(("sample", "sound", "change", "amount", "parts"), SPOILED)
def test_pieces_that_come_out_nearly_alike_are_caught_and_made_alike(
    sample: str,
    sound: dict[str, Value],
    change: dict[str, Value],
    amount: float,
    parts: set[str],
) -> None:
    before = set_values(_sample(sample), sound)
    among = {one.parts for one in of_check(build(before), "nearly_alike")}
    bench = build(set_values(before, change))
    (found,) = (one for one in of_check(bench, "nearly_alike") if one.parts not in among)
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(amount, abs=1e-6)
    assert found.limit == 3.0
    assert set(found.parts) == parts
    assert found.mend is not None
    mended = build(set_values(bench.spec, dict(found.mend.values)))
    assert not set(of_check(mended, "nearly_alike")) & {found}
    assert found.key not in {one.key for one in findings(mended)}


def test_leans_that_differ_by_less_than_a_degree_are_caught_and_made_alike() -> None:
    """Flares of 70 and 66 over 260 mm lean by atan(70 / 260) and atan(66 / 260)."""
    bench = build(set_values(_sample("map_room_bench"), {"flare_right": 66.0}))
    (found,) = of_check(bench, "nearly_alike")
    assert set(found.parts) == {"end_panel_left", "end_panel_right"}
    apart = math.degrees(math.atan(70.0 / 260.0) - math.atan(66.0 / 260.0))
    assert (found.unit, found.limit) == ("deg", 1.0)
    assert found.amount == pytest.approx(apart, abs=0.01)
    assert found.mend is not None
    assert not of_check(build(set_values(bench.spec, dict(found.mend.values))), "nearly_alike")
    wider = build(set_values(bench.spec, {"flare_right": 64.0}))
    assert not of_check(wider, "nearly_alike")


def test_what_a_stop_does_not_keep_apart_is_alike() -> None:
    """Partition 2 moved by 0.1 mm: shelves of 360.1 and 359.9, less than 0.25 mm apart."""
    shelves: dict[str, Value] = {"opening_2_fill": "shelf", "opening_3_fill": "shelf"}
    spec = set_values(_sample("reading_room_bench"), {**shelves, "partition_2": 800.1})
    assert {"shelf_2"} & {
        p for f in of_check(build(spec), "nearly_alike") for p in f.parts
    } == set()


def test_what_nobody_takes_for_the_other_is_let_be() -> None:
    """Partition 2 moved by 2 mm: shelves of 362 and 358 are more than 3 mm apart."""
    shelves: dict[str, Value] = {"opening_2_fill": "shelf", "opening_3_fill": "shelf"}
    spec = set_values(_sample("reading_room_bench"), {**shelves, "partition_2": 802.0})
    assert {"shelf_2"} & {
        p for f in of_check(build(spec), "nearly_alike") for p in f.parts
    } == set()


def test_stretchers_that_differ_by_a_leg_are_only_told_of_and_can_be_made_alike() -> None:
    """The reading room's legs stand in by 70 and 70 behind, by 60 and 70 in front.

    Across, one stretcher lacks 70 + 70 of the depth and the other 60 + 70; the front right leg in
    by 60 makes them the same.
    """
    spec = _sample("reading_room_bench")
    (found,) = of_check(build(spec), "nearly_alike")
    assert found.level is Level.GOOD_TO_KNOW
    assert set(found.parts) == {"stretcher_back_left", "stretcher_front_left"}
    assert found.mend is not None
    assert dict(found.mend.values) == {"inset_front_right": 60.0}
    mended = set_values(spec, dict(found.mend.values))
    assert not of_check(build(mended), "nearly_alike")


def test_stretchers_of_two_trestles_can_be_made_alike() -> None:
    """A leg set 2 mm farther in makes its trestle's stretcher 2 mm shorter, give or take none."""
    sound = _sample("ferry_waiting_room_bench")
    assert not of_check(build(sound), "nearly_alike")
    spoiled = set_values(sound, {"inset_front_left": sound.number("inset_front_left") + 2.0})
    (found,) = (
        one for one in of_check(build(spoiled), "nearly_alike") if "stretcher_left" in one.parts
    )
    assert found.amount == pytest.approx(2.0, abs=1e-6)
    assert found.mend is not None
    mended = set_values(spoiled, dict(found.mend.values))
    assert found.key not in {one.key for one in findings(build(mended))}


def test_left_and_right_sides_of_drawers_are_told_of_once() -> None:
    """Five drawers, dovetailed: each side has its groove and its pins on the other hand."""
    (found,) = of_check(build(_sample("boat_club_bench")), "mirror_images")
    assert found.level is Level.GOOD_TO_KNOW
    sides = [name for name in found.parts if "_side_" in name]
    assert len(sides) == 10
    assert "5 and 5 drawer sides" in found.message
    assert found.amount == 12.0  # and two partitions with a shelf between them


def test_a_partition_without_a_shelf_has_no_left_and_right() -> None:
    assert not of_check(build(default_spec()), "mirror_images")


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_sound_samples_have_at_most_something_good_to_know(path: Path) -> None:
    bench = build(load(path).spec)
    found = [*of_check(bench, "nearly_alike"), *of_check(bench, "mirror_images")]
    assert all(one.level is Level.GOOD_TO_KNOW for one in found)
