"""Spoiled benches for the checks of joints as they are marked, routed and sawn; amounts by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from exporters.project_file import load, read_project
from exporters.project_writing import project_bytes
from geometry.bench.as_cut import PARAMETERS
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec, parameter
from geometry.bench.limits import set_values
from geometry.checks import as_cut, mitres
from geometry.checks.all_checks import findings
from geometry.cuts.housing import StoppedHousing
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.project import Project
from geometry.design.spec import BenchSpec
from geometry.solids.measure import shared_volume
from tests.random_benches import random_spec

FOLDER = Path(__file__).parents[3] / "sample_projects"
SAMPLES = sorted(FOLDER.glob("*.settle"))
CHECKS = ("housing_misses", "shelf_housing_misses", "mitre_gapes")
RECORDED: dict[str, Value] = {"cut_already": "as recorded"}


def _sample(name: str) -> BenchSpec:
    return load(FOLDER / f"{name}.settle").spec


def _found(spec: BenchSpec) -> list[Finding]:
    return [one for one in findings(build(spec)) if one.check in CHECKS]


def _cured(spec: BenchSpec, finding: Finding) -> bool:
    assert finding.mend is not None
    mended = set_values(spec, dict(finding.mend.values))
    return finding.key not in {one.key for one in _found(mended)}


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_sound_bench_recorded_as_it_is_drawn_has_nothing_to_find(path: Path) -> None:
    spec = load(path).spec
    assert _found(spec) == []
    if parameter("cut_already").applies(spec):
        assert _found(set_values(spec, RECORDED)) == []


@pytest.mark.parametrize("seed", range(12))
def test_any_bench_recorded_as_it_is_drawn_has_nothing_to_find(seed: int) -> None:
    spec = random_spec(seed)
    assert _as_cut(build(spec)) == []
    if parameter("cut_already").applies(spec):
        assert _as_cut(build(set_values(spec, RECORDED))) == []


def _as_cut(bench: Bench) -> list[Finding]:
    checks = [check for check in (*as_cut.CHECKS, *mitres.CHECKS) if check.applies(bench)]
    return [finding for check in checks for finding in check.run(bench)]


def test_stops_marked_from_the_front_miss_where_the_top_is_deeper() -> None:
    """Reading room: flare over 310 mm of case in boards of 24 mm; the numbers are worked below."""
    sound = _sample("reading_room_bench")
    spec = set_values(sound, {"stops_from": "front edge"})
    found = {one.parts[0]: one for one in _found(spec)}
    flare, high, t = sound.number("flare"), sound.number("case_height"), 24.0
    assert sound.number("board_thickness") == t
    bevel = flare * t / high
    # On the deep stretch, inside: the top is a bevel less deep, the bottom a bevel deeper.
    assert sound.number("partition_1") < sound.number("flare_straight")
    assert found["partition_1"].amount == pytest.approx(flare - 2.0 * bevel)
    # On the run-out the top's edge is square, and falls to nothing in a straight line.
    left = (sound.number("flare_end") - 800.0) / (
        sound.number("flare_end") - sound.number("flare_straight")
    )
    assert found["partition_2"].amount == pytest.approx(flare * left - bevel)
    # Beyond it only the bottom's bevel is left, and the housing in the top stops short by it.
    assert found["partition_5"].amount == pytest.approx(bevel)
    assert "short" in found["partition_5"].message
    assert all(one.level is Level.DO_NOT_CUT for one in found.values())
    assert found["partition_5"].place is not None
    assert found["partition_5"].place[0] == pytest.approx(sound.number("partition_5"))
    assert all(_cured(spec, one) for one in found.values())


def test_stops_marked_from_the_front_meet_in_a_case_without_a_flare() -> None:
    assert _found(set_values(_sample("orchard_bench"), {"stops_from": "front edge"})) == []


def test_a_housing_that_starts_elsewhere_in_the_top() -> None:
    """Orchard: partition 1 is drawn at 430; it is routed 3 mm too far right above."""
    spec = set_values(_sample("orchard_bench"), RECORDED)
    along = spec.number("cut_bottom_partition_1_along")
    assert along == 430.0 - spec.number("partition_thickness") / 2.0
    spoiled = set_values(spec, {"cut_top_partition_1_along": along + 3.0})
    (found,) = _found(spoiled)
    assert found.level is Level.DO_NOT_CUT
    assert found.amount == pytest.approx(3.0)
    assert found.parts == ("partition_1", "top", "bottom")
    assert "{3 mm} farther right" in found.message
    assert _cured(spoiled, found)


def test_the_solids_say_the_same_of_a_housing_that_starts_elsewhere() -> None:
    """The top is routed where the record says; a partition that stands upright then cuts into it.

    It bites by 3 mm less half the fit, as deep and as long as its tongue.
    """
    bench = build(_sample("orchard_bench"))
    top, upright = bench.part("top"), bench.part("partition_1")
    joint = next(one for one in bench.joints if one.name == "housing_top_partition_1")
    (housing,) = joint.cuts_first
    assert isinstance(housing, StoppedHousing)
    # The top's x runs from its right end.
    moved = replace(housing, x_low=housing.x_low - 3.0, x_high=housing.x_high - 3.0)
    cuts = tuple(moved if cut == housing else cut for cut in top.shape.cuts)
    routed = replace(top, shape=replace(top.shape, cuts=cuts))
    assert shared_volume(top, upright) == pytest.approx(0.0, abs=1e-3)
    sizes = {one.name: one.value for one in joint.measures}
    tongue = sizes["stop_from_back"] - bench.spec.number("cutter_diameter") / 2.0 - 0.1
    tongue -= bench.spec.number("back_thickness")
    bite = (3.0 - bench.spec.number("housing_fit") / 2.0) * sizes["housing_depth"] * tongue
    assert bench.spec.number("housing_fit") == 0.2
    assert shared_volume(routed, upright) == pytest.approx(bite, rel=0.02)


def test_housings_that_both_lie_elsewhere_ask_for_the_bench_to_be_drawn_so() -> None:
    """Both boards were routed; then the partition was drawn 5 mm farther left."""
    spec = set_values(_sample("orchard_bench"), RECORDED)
    moved = set_values(spec, {"partition_1": 425.0})
    (found,) = _found(moved)
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(5.0)
    assert found.mend is not None
    assert dict(found.mend.values) == {"partition_1": pytest.approx(430.0)}
    assert _cured(moved, found)


def test_a_stop_that_is_short_keeps_the_partition_out_and_one_too_far_shows() -> None:
    """A stop is told from the front arris: 2 mm more is 2 mm short, 7 mm less runs too far.

    The housing is hidden 4 mm behind the partition's front, so 3 mm of it show.
    """
    spec = set_values(_sample("orchard_bench"), RECORDED)
    name = "cut_top_partition_1_stop"
    asked, cover = spec.number(name), spec.number("housing_cover")
    short = set_values(spec, {name: asked + 2.0})
    (found,) = _found(short)
    assert found.amount == pytest.approx(2.0)
    assert "stops {2 mm} short" in found.message
    long = set_values(spec, {name: asked - cover - 3.0})
    (found,) = _found(long)
    assert found.amount == pytest.approx(cover + 3.0)
    assert "shows {3 mm} long" in found.message
    # What stays hidden is let be.
    assert _found(set_values(spec, {name: asked - cover + 1.5})) == []


def test_what_is_not_recorded_is_taken_as_drawn() -> None:
    spec = set_values(_sample("orchard_bench"), RECORDED)
    bare = {row.name: 0.0 for row in PARAMETERS if row.applies(spec)}
    assert _found(set_values(spec, dict(bare))) == []


def test_a_shelf_marked_from_lower_ends_that_lie_at_two_heights() -> None:
    """An end panel begins a board lower than the bottom's inside, a partition a housing: 24 - 8."""
    sound = set_values(_sample("reading_room_bench"), {"opening_1_fill": "shelf"})
    assert _found(sound) == []
    spoiled = set_values(sound, {"shelves_from": "lower ends"})
    (found,) = _found(spoiled)
    apart = sound.number("board_thickness") - sound.number("housing_depth")
    assert found.level is Level.DO_NOT_CUT
    assert found.amount == pytest.approx(apart)
    assert found.parts == ("shelf_1", "end_panel_left", "partition_1")
    assert _cured(spoiled, found)
    # Between two partitions it is the same height.
    between = set_values(_sample("reading_room_bench"), {"opening_2_fill": "shelf"})
    assert _found(set_values(between, {"shelves_from": "lower ends"})) == []


def test_a_tilt_that_was_a_degree_short_gapes_outside() -> None:
    """Boards of 20 mm: the mitre is 20 sqrt 2 wide, times tan 1 degree: 0.494 mm."""
    spec = set_values(_sample("orchard_bench"), RECORDED)
    assert spec.number("sawn_mitre_top_left_board_tilt") == 45.0
    spoiled = set_values(spec, {"sawn_mitre_top_left_board_tilt": 44.0})
    (found,) = _found(spoiled)
    assert found.level is Level.DO_NOT_CUT
    assert found.amount == pytest.approx(20.0 * math.sqrt(2.0) * math.tan(math.radians(1.0)))
    assert found.parts == ("top", "end_panel_left")
    assert "at the outside:" in found.message
    assert "inside, back closed" in found.message
    assert found.place is not None
    assert found.place[0] == pytest.approx(0.0)
    assert _cured(spoiled, found)


def test_a_third_angle_in_the_corner_gapes_along_the_joint() -> None:
    """Map room: the left panel's front leans by atan(70 / 260); laid on the fence, it turns the
    mitre of the top by as much, over 340 + 70 mm: sqrt 2 x 410 tan(lean / 2)."""
    spoiled = set_values(_sample("map_room_bench"), {"mitre_fence": "front edge"})
    found = {one.parts: one for one in _found(spoiled)}
    assert len(found) == 4
    top = found["top", "end_panel_left"]
    lean = math.atan(70.0 / 260.0)
    assert top.amount == pytest.approx(math.sqrt(2.0) * 410.0 * math.tan(lean / 2.0))
    assert top.place == pytest.approx((0.0, -410.0, top.place[2] if top.place else 0.0))
    assert "at the outside, front" in top.message
    assert all(_cured(spoiled, one) for one in found.values())


def test_a_front_that_does_not_lean_may_lie_on_the_fence() -> None:
    assert _found(set_values(_sample("orchard_bench"), {"mitre_fence": "front edge"})) == []


def test_the_mitres_of_a_panel_bench_are_recorded_too() -> None:
    """Ends of 30 mm under a seat of as much would be 45; whatever it is, the two make 90."""
    panels = set_values(set_values(default_spec(), {"flare": 0.0}), {"seat": "panel bench"})
    spec = set_values(set_values(panels, {"left_joint": "mitred"}), RECORDED)
    board, end = (spec.number(f"sawn_mitre_left_{piece}_tilt") for piece in ("board", "end"))
    assert board + end == pytest.approx(90.0)
    assert _found(spec) == []
    spoiled = set_values(spec, {"sawn_mitre_left_end_fence": 90.5})
    (found,) = _found(spoiled)
    deep = spec.number("depth")
    # A fence half a degree off over the depth, seen square to the mitre.
    assert found.amount == pytest.approx(
        deep * math.tan(math.radians(0.5)) * math.cos(math.radians(end)), rel=0.01
    )
    assert _cured(spoiled, found)


def test_a_record_changes_nothing_of_the_bench() -> None:
    spec = _sample("reading_room_bench")
    changed = set_values(
        spec, {**RECORDED, "stops_from": "front edge", "mitre_fence": "front edge"}
    )
    assert changed != spec
    assert build(changed).parts == build(spec).parts
    assert build(changed).joints == build(spec).joints


def test_a_record_is_kept_with_the_project() -> None:
    spec = set_values(_sample("orchard_bench"), RECORDED)
    spec = set_values(spec, {"cut_top_partition_1_along": 424.5})
    data = project_bytes(Project(spec))
    assert read_project(data).spec == spec
    assert project_bytes(read_project(data)) == data
