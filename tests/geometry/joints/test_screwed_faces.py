"""Screws between two faces: holes, slots and pilots, against places and sizes worked by hand.

No. 8: shank 0.164 in, head two shanks; no. 6: 0.138 in (ASME B18.6.1, from memory).  Movement by
hand, flat sawn: size × C × ΔM with the Wood Handbook's C.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.bore import Bore
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.screw_slot import ScrewSlot
from geometry.design.joint import Joint
from geometry.joints.screw_rows import bite_in, has_room, screw_for, stations
from geometry.solids.nearness import nearest

SAMPLES = Path(__file__).parents[3] / "sample_projects"
EASE = 0.6


def sample(name: str) -> Bench:
    return build(load(SAMPLES / f"{name}_bench.settle").spec)


def joint_of(bench: Bench, name: str) -> Joint:
    return next(joint for joint in bench.joints if joint.name == name)


def test_a_gauge_follows_from_the_room_for_its_head() -> None:
    """Heads of no. 8, 6 and 4: 8.33, 7.01 and 5.69, and 2 of wood on either side."""
    rooms = (30.0, 12.4, 12.3, 11.1, 11.0, 9.7, 9.6)
    assert [screw_for(room).gauge for room in rooms] == [8, 8, 6, 6, 4, 4, 8]
    assert [has_room(screw_for(room), room) for room in rooms] == [True] * 6 + [False]


def test_a_point_stays_in_the_wood() -> None:
    assert bite_in(18.0) == 12.0
    assert bite_in(12.0) == 9.0
    assert bite_in(7.0) == 4.0
    assert bite_in(6.9) == 0.0


def test_screws_stand_in_from_the_ends_and_no_farther_apart_than_250() -> None:
    assert stations(59.0) == (29.5,)
    assert stations(330.0) == (40.0, 290.0)  # 250 apart
    assert stations(331.0) == (40.0, 165.5, 291.0)
    assert stations(90.0) == (30.0, 60.0)  # a third in where that is less
    assert stations(500.0, 450.0, 25.0) == (25.0, 475.0)


def test_a_runner_is_fast_in_front_and_in_slots_behind() -> None:
    """The sail loft's runners are 12 high: no. 6, its holes in the middle of the height, 25 in.

    By hand: a slot so far behind the fast screw is longer than its width by what the upright moves
    over that, driest to dampest, and the play of 0.6: cherry, flat sawn, 0.00248 for each % of
    moisture (FPL-GTR-190, table 13-5).
    """
    bench = sample("sail_loft")
    joint = joint_of(bench, "drawer_1_1_runner_left")
    upright, runner = (bench.part(name) for name in joint.parts)
    hole, *slots = joint.cuts_second
    assert isinstance(hole, ScrewHole)
    assert hole.mouth[2] == pytest.approx(6.0)
    assert hole.shank == pytest.approx(0.138 * 25.4 + EASE)
    spec = load(SAMPLES / "sail_loft_bench.settle").spec
    assert spec.word("timber") == "black cherry"
    assert spec.word("fixing_sawn") == "flat sawn"
    points = spec.count("moisture_high") - spec.count("moisture_low")
    assert slots
    for slot in slots:
        assert isinstance(slot, ScrewSlot)
        far = slot.screw[0] - hole.mouth[0]
        long = far * 0.00248 * points + EASE + slot.width
        assert slot.length == pytest.approx(long, abs=1e-6)
    assert runner.shape.blank.length - slots[-1].screw[0] == pytest.approx(25.0)
    # Less than half through the upright, so that another from its other side finds wood.
    assert all(isinstance(one, Bore) for one in joint.cuts_first)
    assert {one.depth for one in joint.cuts_first} == {upright.shape.blank.thickness / 2.0 - 1.0}


def test_left_and_right_runners_are_alike() -> None:
    """One is the other turned over, so there is no wrong one to take."""
    bench = sample("sail_loft")
    left, right = (bench.part(f"drawer_1_1_runner_{side}") for side in ("left", "right"))
    assert left.shape == right.shape


def test_a_front_is_screwed_over_the_groove_of_its_bottom() -> None:
    """The bottom's groove ends 6 + 12.7 above the lower edge; no hole is lower than its head."""
    bench = sample("lamp_room")
    joint = joint_of(bench, "drawer_1_1_front")
    front = bench.part(joint.parts[1])
    assert all(isinstance(cut, Bore) for cut in (*joint.cuts_first, *joint.cuts_second))
    assert min(cut.y for cut in joint.cuts_first) > 18.7 + 8.33
    assert {cut.diameter for cut in joint.cuts_first} == {0.164 * 25.4 + EASE}
    assert joint.screws is not None
    assert (joint.screws.heads, joint.screws.screw.gauge) == (0, 8)
    assert len(joint.screws.at) == len(joint.cuts_first) == len(joint.cuts_second)
    assert all(cut.depth == joint.screws.bite for cut in joint.cuts_second)
    for cut in joint.cuts_second:
        # 3 mm of wood over the point, carved or not
        assert nearest(front.shape, cut, 2.9) is None


def test_a_post_is_fast_at_the_top_of_its_wall_and_in_slots_below() -> None:
    """Behind the lock-keeper's box: 40 below the rim, and 40 over the lower edge."""
    bench = sample("lock_keepers")
    joint = joint_of(bench, "post_1_box_back")
    wall = bench.part(joint.parts[0])
    heights = [wall.frame.to_bench((cut.x, cut.y, 0.0))[2] for cut in joint.cuts_first]
    ends = [wall.frame.to_bench((0.0, y, 0.0))[2] for y in (0.0, wall.shape.blank.width)]
    assert max(heights) == pytest.approx(max(ends) - 40.0)
    assert min(heights) == pytest.approx(min(ends) + 40.0)
    assert [type(cut) for cut in joint.cuts_second] == [ScrewHole, ScrewSlot, ScrewSlot]
    lengths = [cut.length for cut in joint.cuts_second[1:]]
    assert lengths == sorted(lengths)  # the farther from the fast one the longer


def test_screws_that_cross_in_a_hinge_strip_pass_each_other() -> None:
    """Those down into the back are 4.8 wide, those from behind 4.0: their middles 8 apart in X."""
    bench = sample("lock_keepers")
    strip = bench.part("hinge_strip")
    down = joint_of(bench, "hinge_strip_on_box_back").cuts_second
    xs = [strip.frame.to_bench((cut.x, cut.y, 0.0))[0] for cut in down]
    across = joint_of(bench, "post_1_hinge_strip").cuts_first
    for one in across:
        x = strip.frame.to_bench(one.middle)[0]
        assert min(abs(down_x - x) for down_x in xs) >= 8.0


@pytest.mark.parametrize(
    "changes",
    [
        {"runner_below": 6.0},  # lower than any head with wood beside it
        {"drawer_front_thickness": 8.0, "carving": "faceted", "carving_depth": 3.0},
    ],
)
def test_where_there_is_no_room_nothing_is_bored(changes: dict[str, float | str]) -> None:
    spec = set_values(
        default_spec(),
        {"partition_count": 2.0, "opening_1_fill": "drawers", "opening_1_drawers": 2.0},
    )
    spec = set_values(spec, {"runner_kind": "wooden"})
    bench = build(set_values(spec, changes))
    kind = "screwed in slots" if "runner_below" in changes else "screwed"
    found = [joint for joint in bench.joints if joint.kind == kind]
    assert found
    assert not any(joint.cuts_first or joint.cuts_second for joint in found)
