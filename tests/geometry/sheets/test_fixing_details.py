"""Details of edges and fixings: what is drawn on them, against numbers worked by hand.

The movement of the seat is set to nothing where a slot is measured, so that its length is the
screw's shank and its play alone: no. 8, 0.060 + 0.013 × 8 = 0.164 in (ASME B18.6.1, from memory).
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.dimensioning.dimension import Dimension
from geometry.drawing.marks import Role, Strokes
from geometry.sheets.joint_choice import Chosen, chosen
from geometry.sheets.joint_details import joint_leaf
from geometry.sheets.joint_figures import PartFigure
from geometry.sheets.layout import Layout
from geometry.views.joint_scene import joint_scene
from shared.paper import PAPERS

SAMPLES = Path(__file__).parents[3] / "sample_projects"
SHANK = 0.164 * 25.4
EASE = 0.6  # mm of play of a shank in its hole or slot


def sample(name: str) -> Bench:
    return build(load(SAMPLES / f"{name}_bench.settle").spec)


def views_of(bench: Bench, name: str) -> tuple[Chosen, ...]:
    parts = {part.name: part for part in bench.parts}
    joint = next(joint for joint in bench.joints if joint.name == name)
    return chosen(joint_scene(joint, parts))


def drawn(bench: Bench, name: str) -> dict[str, float]:
    """Every size that is drawn, by its name."""
    found = [one for view in views_of(bench, name) for one in view.dimensions]
    assert len({one.name for one in found}) == len(found)  # none twice
    return {one.name: one.value for one in found}


def on_part(bench: Bench, name: str, index: int) -> dict[str, tuple[str, Dimension]]:
    """What is drawn on one of the parts alone, and on which side of it."""
    return {
        one.name: (view.figure.side.name, one)
        for view in views_of(bench, name)
        if isinstance(view.figure, PartFigure) and view.figure.index == index
        for one in view.dimensions
    }


def plain_legs(**changes: float | str) -> Bench:
    """Four upright legs 30 mm square at the foot."""
    spec = set_values(default_spec(), {"base": "four legs", "splay": 0.0, "rake": 0.0})
    return build(set_values(spec, changes))


def plinth(**changes: float | str) -> Bench:
    still = {"moisture_low": 9.0, "moisture_made": 9.0, "moisture_high": 9.0}
    spec = set_values(default_spec(), {"base": "plinth"})
    return build(set_values(set_values(spec, {"fixing": "screws in slots"}), still | changes))


def test_a_mitred_lipping_shows_its_45_degrees_from_the_front() -> None:
    """Top and end stand at right angles: their lippings are mitred at 45° across their faces, which
    stand upright and look to the front."""
    bench = sample("lamp_room")
    angles = [
        (view, one)
        for view in views_of(bench, "mitre_lipping_top_left")
        for one in view.dimensions
        if one.unit == "deg"
    ]
    assert [one.name for _, one in angles] == ["mitre_first", "mitre_second"]
    for view, one in angles:
        assert one.value == pytest.approx(45.0)
        assert view.figure.view.toward == pytest.approx((0.0, -1.0, 0.0), abs=1e-9)
    # Each on its own lipping, not in the section where it might be either's.
    assert [v.figure.index for v, _ in angles] == [0, 1]


def test_mitred_lippings_are_cut_by_their_joint() -> None:
    bench = sample("lamp_room")
    joint = next(j for j in bench.joints if j.name == "mitre_lipping_top_left")
    for name, cuts in zip(joint.parts, (joint.cuts_first, joint.cuts_second), strict=True):
        assert [cut.title for cut in cuts] == ["mitre"]
        assert [cut.title for cut in bench.part(name).shape.cuts].count("mitre") == 2  # both ends


def test_a_lipping_is_dimensioned_in_its_section() -> None:
    """The lamp room's boards are 20 thick and lipped with 6."""
    sizes = drawn(sample("lamp_room"), "top_lipping")
    assert sizes["lipping_thick"] == pytest.approx(6.0)
    assert sizes["lipping_wide"] == pytest.approx(20.0)


def test_a_partitions_lipping_starts_behind_its_tongue() -> None:
    """7 mm of the partition stand in the bottom."""
    bench = sample("lamp_room")
    side, one = on_part(bench, "partition_1_lipping", 1)["lipping_from_end"]
    assert (side, one.value) == ("far edge", pytest.approx(7.0))


def test_a_levelling_foots_boring_is_in_the_middle_of_its_leg() -> None:
    """Of 30 mm square: 15 from either reference face, in the view of the leg's end."""
    bench = plain_legs(foot="levelling feet")
    places = on_part(bench, "foot_front_left", 1)
    for name in ("bore_from_edge", "bore_from_face"):
        side, one = places[name]
        assert side == "end"
        assert one.value == pytest.approx(15.0)
    sizes = drawn(bench, "foot_front_left")
    assert sizes["bore_diameter"] == pytest.approx(10.0)
    assert sizes["bore_depth"] == pytest.approx(15.0)


def test_a_pad_is_marked_on_its_leg_as_the_round_that_it_is() -> None:
    """A disc of 24 on 30 mm square: 15 to its middle; the marks lie within 12 of that."""
    bench = plain_legs(foot="pads")
    places = on_part(bench, "foot_front_left", 1)
    assert [places[f"pad_from_{face}"][1].value for face in ("edge", "face")] == pytest.approx(
        [15.0, 15.0]
    )
    parts = {part.name: part for part in bench.parts}
    joint = next(j for j in bench.joints if j.name == "foot_front_left")
    leaf = joint_leaf((joint,), parts, Layout(PAPERS["A3"]))
    marks = [m for m in leaf.marks if isinstance(m, Strokes) and m.role is Role.SCRIBE]
    assert max(len(m.segments) for m in marks) == 24


def test_a_block_on_a_plinth_is_placed_from_its_end() -> None:
    """Mitred boards: the inside corner, in which it stands, is a board's thickness in."""
    bench = plinth(plinth_thickness=18.0)
    assert drawn(bench, "block_front_left_front")["block_from_end"] == pytest.approx(18.0)


def test_a_slot_is_placed_and_sized_on_its_block() -> None:
    """A block 30 wide glued upright to the plinth: the slot across it is the shank and twice the
    play long, a shank and the play wide, in the middle of both; a pilot 12 deep in the board."""
    bench = plinth(fixing_block=30.0, fixing_land=20.0, fixing_bite=12.0)
    name = next(j.name for j in bench.joints if j.kind == "slotted screw" and "front" in j.name)
    places = on_part(bench, name, 0)
    block = bench.part(next(j.parts[0] for j in bench.joints if j.name == name))
    long = SHANK + 2.0 * EASE
    worked = {
        "slot_length": long,
        "slot_width": SHANK + EASE,
        "slot_from_end": block.shape.blank.length / 2.0,
        "slot_from_edge": 15.0 - long / 2.0,
    }
    for size, value in worked.items():
        side, one = places[size]
        assert side == "face"
        assert one.value == pytest.approx(value, abs=1e-3), size
    sizes = drawn(bench, name)
    assert sizes["land"] == pytest.approx(20.0)
    assert sizes["pilot_depth"] == pytest.approx(12.0)
    assert sizes["pilot"] == pytest.approx(0.131 * 25.4)


def test_hinges_are_placed_from_the_ends_of_both_pieces() -> None:
    """The lock-keeper's: 120 in, 63 long, a closed hinge of 4 in a gap of 1.5: (4 - 1.5) / 2."""
    bench = sample("lock_keepers")
    for index in (0, 1):
        assert on_part(bench, "lid_hinges", index)["hinge_1_from_end"][1].value == 120.0
    sizes = [one for view in views_of(bench, "lid_hinges") for one in view.dimensions]
    by_name = {one.name: one.value for one in sizes}
    assert by_name["hinge_mortise_length"] == pytest.approx(63.0)
    assert by_name["hinge_mortise_width"] == pytest.approx(17.0)
    assert by_name["hinge_mortise_depth"] == pytest.approx(1.25)


def test_a_stays_screws_are_drawn_where_they_are_marked() -> None:
    """The lock-keeper's: 40 below the rim, and 12 inside an end of 21 on a lid that ends with it;
    12 deep in both.  What is farther off than a detail shows is told in its table alone."""
    bench = sample("lock_keepers")
    assert on_part(bench, "stay_left", 0)["box_screw_down"][1].value == pytest.approx(40.0)
    side, one = on_part(bench, "stay_left", 1)["lid_screw_from_end"]
    assert (side, one.value) == ("reverse", pytest.approx(33.0))
    sizes = drawn(bench, "stay_left")
    assert (sizes["pilot_depth"], sizes["lid_pilot_depth"]) == (12.0, 12.0)


def test_a_wedge_and_its_slot_are_drawn_with_their_lengths() -> None:
    """The apiary's legs lean by 9 and 13 degrees through 46 of seat: along their axes that is 46
    times the square root of 1 + tan² 9 + tan² 13, and the slot is three quarters of it."""
    bench = sample("apiary")
    lean = math.hypot(1.0, *(math.tan(math.radians(deg)) for deg in (9.0, 13.0)))
    slot = pytest.approx(0.75 * 46.0 * lean, abs=1e-6)
    assert on_part(bench, "tenon_back_left", 0)["slot_length"][1].value == slot
    assert on_part(bench, "wedge_back_left", 1)["wedge_long"][1].value == slot


def test_a_slot_is_drawn_from_the_edge_of_its_tenon() -> None:
    """Posts 62 wide with shoulders of 6: tenons of 50, two wedges a quarter of that from either
    edge; both are told by one size."""
    spec = load(SAMPLES / "bowling_green_bench.settle").spec
    bench = build(set_values(spec, {"post_tenon_kind": "wedged"}))
    for wedge in ("wedge_post_1_1", "wedge_post_1_2"):
        assert on_part(bench, wedge, 0)["slot_from_edge"][1].value == pytest.approx(12.5)


def test_a_size_is_not_drawn_where_another_is_as_large() -> None:
    """A lipping 6 thick on a shelf whose tongues are 6 long: each in its own direction."""
    bench = sample("weigh_house")
    for view in views_of(bench, "lipping_2"):
        axes = np.array((view.figure.view.right, view.figure.view.up))
        for one in view.dimensions:
            way = np.array(one.along) @ axes
            if one.name == "lipping_from_end":
                assert abs(way[0]) == pytest.approx(1.0)
            if one.name == "lipping_thick":
                assert abs(way[1]) == pytest.approx(1.0)


def test_a_third_is_drawn_on_the_tenon_and_on_one_cheek_only() -> None:
    """Stretchers 40 thick, their tenons a third of that, with no play: the tenon, the mortise and
    each cheek are 13.33; the tenon and the mortise lie from 13.33 to 26.67, the cheek from 0."""
    bench = build(set_values(default_spec(), {"tenon_rule": "third", "bridle_fit": 0.0}))
    joint = next(one for one in bench.joints if one.kind == "bridle joint")
    third = bench.spec.number("base_thickness") / 3.0
    wanted = {
        "tenon_thickness": (0, third, 2.0 * third),
        "mortise_width": (1, third, 2.0 * third),
        "cheek": (1, 0.0, third),
    }
    seen = set()
    for shown in views_of(bench, joint.name):
        view = shown.figure.view
        for one in (one for one in shown.dimensions if one.name in wanted):
            index, *depths = wanted[one.name]
            frame = bench.part(joint.parts[index]).frame
            told = [view.project(frame.to_bench((0.0, 0.0, depth))) for depth in depths]
            levels = [
                sorted(u * one.along[0] + v * one.along[1] for u, v in ends)
                for ends in (told, (one.start, one.end))
            ]
            assert levels[1] == pytest.approx(levels[0], abs=0.01)
            seen.add(one.name)
    assert {"tenon_thickness", "cheek"} <= seen
