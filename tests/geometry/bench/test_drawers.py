"""Drawers by worked arithmetic, and the finished parts measured and tried against each other.

The bench: 1200 long, boards 20, left end mitred, right end a partition set in 60; partitions of
20 at 400 and 800; case 300 high on a base of 150; depth 360, reveal 12, back 6.  Its openings are
20..390, 410..790 and 810..1120, 260 high and 342 deep (348 in front of the back edges, back to 6).
"""

from __future__ import annotations

import doctest
from dataclasses import replace
from itertools import combinations, product

import pytest

from geometry.bench import drawer_numbers
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import box_side_clearance, drawers, runner_length
from geometry.bench.limits import limits, set_values
from geometry.bench.runner_numbers import runner_of, runner_values
from geometry.cuts.bore import Bore
from geometry.cuts.trim import Trim
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.joints import box_joint, dovetail_spacing
from geometry.joints.dovetail_spacing import SLOPES
from geometry.solids.measure import bounding_box, shared_volume
from shared.errors import CannotBuild, ValueOutOfRange
from shared.runners import RUNNER_KINDS, SIDE, TO_INSIDE, UNDER, WOODEN, generic
from shared.tolerances import SHARED_VOLUME
from tests.judges.meeting import gapes
from tests.measures import piece_count

PLACES: dict[str, Value] = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
CASE = set_values(default_spec(), PLACES)
JOINTS = ("rebate and groove", "box joint", "half-blind dovetail", "through dovetail")


def with_drawers(changes: dict[str, Value], first: dict[str, Value] | None = None) -> BenchSpec:
    """The bench with two drawers in the middle opening, unless said otherwise."""
    spec = set_values(CASE, first or {})
    return set_values(spec, {"opening_2_fill": "drawers", "opening_2_drawers": 2.0} | changes)


def derived(bench: Bench) -> dict[str, float]:
    return {row.name: row.value for row in bench.derived}


@pytest.mark.parametrize("module", [drawer_numbers, dovetail_spacing, box_joint])
def test_examples(module: object) -> None:
    tried = doctest.testmod(module)  # type: ignore[arg-type]
    assert tried.attempted
    assert not tried.failed


def test_side_mounted_by_hand() -> None:
    """380 - 4 = 376 wide and (260 - 6) / 2 = 127 high; the box 380 - 25.4 = 354.6 wide, 127 + 2 -
    12 = 117 high; 342 - 18 - 3 = 321 of room, so runners and box of 300."""
    found = derived(build(with_drawers({})))
    assert found["opening_2_front_width"] == 376.0
    assert found["drawer_2_1_front_height"] == found["drawer_2_2_front_height"] == 127.0
    assert found["opening_2_box_width"] == pytest.approx(354.6)
    assert found["drawer_2_1_box_height"] == 117.0
    assert found["runner_length"] == 300.0


def test_where_a_drawer_stands() -> None:
    """The lower front from 172 to 299, its outside at 348; its box 6 above 171, from 330 to 30."""
    bench = build(with_drawers({}))
    low, high = bounding_box(bench.part("drawer_2_2_front"))
    assert low == pytest.approx((412.0, -348.0, 172.0))
    assert high == pytest.approx((788.0, -330.0, 299.0))
    low, high = bounding_box(bench.part("drawer_2_2_side_left"))
    assert low == pytest.approx((422.7, -330.0, 177.0))
    assert high == pytest.approx((434.7, -30.0, 294.0))


def test_graduated_by_hand() -> None:
    """Three fronts 20 apart: (260 - 8 - 60) / 3 = 64, then 84 and 104."""
    found = derived(build(with_drawers({"opening_2_drawers": 3.0, "opening_2_step": 20.0})))
    heights = [found[f"drawer_2_{k}_front_height"] for k in (1, 2, 3)]
    assert heights == [64.0, 84.0, 104.0]
    assert sum(heights) + 4 * 2.0 == 260.0


def test_under_mounted_by_hand() -> None:
    """Inside 380 - 42 = 338, sides of 12: 362 outside; 127 + 2 - 14 - 7 = 108 high."""
    spec = with_drawers({"runner_kind": "under-mounted"})
    bench = build(spec)
    found = derived(bench)
    assert found["opening_2_box_width"] == 362.0
    assert found["drawer_2_1_box_height"] == 108.0
    left, right = (bounding_box(bench.part(f"drawer_2_1_side_{end}")) for end in ("left", "right"))
    assert right[0][0] - left[1][0] == pytest.approx(338.0)


def test_notches_and_hooks_of_under_mounted_runners() -> None:
    """Tongues of 5 in sides of 12: the back is 338 + 10 = 348 long and starts 5 before the inside.
    Notches 5 + 35 = 40 long and 12.7 high; holes 7 in from the inside, at 12 and 336, 24 up."""
    back = build(with_drawers({"runner_kind": "under-mounted"})).part("drawer_2_1_back")
    assert back.shape.blank.length == 348.0
    notches = [cut for cut in back.shape.cuts if cut.title == "notch"]
    assert [(n.x_low, n.x_high, n.y_high) for n in notches] == [  # type: ignore[attr-defined]
        (0.0, 40.0, 12.7),
        (308.0, 348.0, 12.7),
    ]
    holes = [cut for cut in back.shape.cuts if isinstance(cut, Bore)]
    assert [(h.x, h.y, h.diameter, h.depth) for h in holes] == [
        (12.0, 24.0, 6.0, 10.0),
        (336.0, 24.0, 6.0, 10.0),
    ]


def test_wooden_runners_by_hand() -> None:
    """As long as there is room: 342 - 18 - 6 = 318; a strip 12 thick fills the clearance below, 24
    wide from the upright, under a side that stands 0.8 to 12.8 from it."""
    bench = build(with_drawers({"runner_kind": "wooden"}))
    assert derived(bench)["runner_length"] == 318.0
    low, high = bounding_box(bench.part("drawer_2_2_runner_left"))
    assert low == pytest.approx((410.0, -330.0, 171.0))
    assert high == pytest.approx((434.0, -12.0, 183.0))
    side = bounding_box(bench.part("drawer_2_2_side_left"))
    assert (side[0][0], side[1][0], side[0][2]) == pytest.approx((410.8, 422.8, 183.0))


def test_overlay_fronts_lap_over_uprights_and_never_over_an_end_panel() -> None:
    """Laps of 8: 380 + 16 in the middle; at the left end 370 - 2 + 8.  No front thickness to take
    off: 342 - 3 = 339 of room."""
    bench = build(
        with_drawers({"drawer_front": "overlay", "opening_1_fill": "drawers"}),
    )
    found = derived(bench)
    assert found["opening_2_front_width"] == 396.0
    assert found["opening_1_front_width"] == 376.0
    assert found["runner_length"] == 300.0
    low, high = bounding_box(bench.part("drawer_2_1_front"))
    assert (low[1], high[1]) == pytest.approx((-366.0, -348.0))


def test_the_bottom_in_its_grooves() -> None:
    """Inside 354.6 - 24 = 330.6 and 300 - 28 = 272; grooves of 5 and a fit of 1: + 9 each."""
    bench = build(with_drawers({}))
    blank = bench.part("drawer_2_1_bottom").shape.blank
    assert (blank.length, blank.width, blank.thickness) == pytest.approx((339.6, 281.0, 6.4))
    low, high = bounding_box(bench.part("drawer_2_1_bottom"))
    box = bounding_box(bench.part("drawer_2_1_side_left"))[0]
    assert low[2] - box[2] == pytest.approx(12.7)
    assert high[0] - low[0] == pytest.approx(339.6)


def test_a_low_drawer_keeps_wood_above_its_bottom() -> None:
    """Five drawers: (260 - 6 x 2) / 5 = 49.6 high, boxes of 49.6 + 2 - 12 = 39.6.  The bottom of
    6.4 in a groove 0.1 wider may be 39.6 - 6.5 - 12 = 21.1 up."""
    found = limits(with_drawers({"opening_2_drawers": 5.0}), "drawer_bottom_up")
    assert found.maximum == pytest.approx(21.1, abs=1e-3)


def test_fronts_are_cut_larger_and_shown_fitted() -> None:
    """An eighth of an inch, 3.175, on each edge of 376 x 127."""
    front = build(with_drawers({})).part("drawer_2_1_front")
    blank = front.shape.blank
    assert (blank.length, blank.width) == pytest.approx((376.0 + 6.35, 127.0 + 6.35))
    assert (front.allowance, front.allowance_across) == (6.35, 6.35)
    plain = build(with_drawers({"drawer_allowance": 0.0})).part("drawer_2_1_front")
    assert (plain.shape.blank.length, plain.shape.blank.width) == (376.0, 127.0)
    assert not any(isinstance(cut, Trim) for cut in plain.shape.cuts)
    assert plain.allowance == 0.0


@pytest.mark.parametrize(
    ("runner", "joint", "front"), [*product(RUNNER_KINDS, JOINTS, ("inset", "overlay"))]
)
def test_every_kind_goes_together(runner: str, joint: str, front: str) -> None:
    """All joints meet everywhere, each part is one piece, no two are in one place."""
    spec = with_drawers(
        {"opening_1_fill": "shelf", "opening_3_fill": "drawers", "opening_2_step": 25.0},
        {"runner_kind": runner, "drawer_joint": joint, "drawer_front": front},
    )
    bench = build(spec)
    assert len([part for part in bench.parts if part.name.startswith("drawer")]) == (
        3 * (8 if runner == WOODEN else 6)
    )
    made = [part for part in bench.parts if part.name.startswith("drawer")]
    assert all(piece_count(part.shape) == 1 for part in made)
    for one, other in combinations(bench.parts, 2):
        if one in made or other in made:
            assert shared_volume(one, other) <= SHARED_VOLUME, (one.name, other.name)
    for joint_ in bench.joints:
        if joint_.name.startswith("drawer"):
            assert gapes(bench, joint_, least=1.0) == []


@pytest.mark.parametrize("joint", JOINTS)
def test_equal_drawers_share_their_shapes(joint: str) -> None:
    """Openings of one width, four drawers of one height: as many shapes as one drawer has."""
    spec = set_values(
        set_values(
            default_spec(),
            {"partition_count": 2.0, "right_end": "mitred", "flare": 0.0, "drawer_joint": joint},
        ),
        {"partition_1": 411.1, "partition_2": 788.9},
    )
    spec = set_values(
        spec,
        {f"opening_{k}_fill": "drawers" for k in (1, 3)}
        | {f"opening_{k}_drawers": 2.0 for k in (1, 3)},
    )
    made = [part for part in build(spec).parts if part.name.startswith("drawer")]
    assert len(made) == 24
    assert len({part.shape for part in made}) <= 6


def test_half_blind_in_front_and_through_behind() -> None:
    kinds = {
        joint.name: joint.kind
        for joint in build(with_drawers({}, {"drawer_joint": "half-blind dovetail"})).joints
    }
    assert kinds["drawer_2_1_corner_front_left"] == "half-blind dovetail"
    assert kinds["drawer_2_1_corner_back_left"] == "through dovetail"


def test_another_kind_of_runner_brings_its_numbers() -> None:
    """The generic row comes; what is given with it stays; bottoms go up to where they clear."""
    under = set_values(CASE, {"runner_kind": UNDER})
    assert runner_of(under) == replace(generic(UNDER), name=UNDER, source="the project")
    mine = set_values(CASE, {"runner_kind": UNDER, "runner_below": 10.0})
    assert (mine.number("runner_below"), mine.number("runner_above")) == (10.0, 7.0)
    low = set_values(CASE, {"drawer_bottom_up": 6.0})
    assert set_values(low, {"runner_kind": UNDER}).number("drawer_bottom_up") == 12.7


def test_a_makers_own_row_is_taken_over() -> None:
    row = replace(generic(SIDE), name="ours", side=10.0, shortest=200.0, longest=260.0, step=20.0)
    spec = with_drawers({}, runner_values(row))
    assert runner_of(spec) == replace(row, name=SIDE, source="the project")
    (first, _) = drawers(spec)
    assert (first.box.width, first.box.length) == (360.0, 260.0)


def test_clearance_measured_to_the_inside() -> None:
    """21 to the inside of sides 12 thick is 9 to their outside."""
    assert box_side_clearance(replace(generic(UNDER), side_to=TO_INSIDE), 12.0) == 9.0
    assert box_side_clearance(generic(SIDE), 12.0) == 12.7


@pytest.mark.parametrize(
    ("room", "length"), [(250.0, 250.0), (299.999, 250.0), (300.0, 300.0), (2000.0, 700.0)]
)
def test_the_next_shorter_runner(room: float, length: float) -> None:
    """Lengths of 250, 300 ... 700."""
    assert runner_length(generic(SIDE), room) == length


@pytest.mark.parametrize(
    ("first", "changes", "because"),
    [
        # 342 - 18 - 3 = 321 of room
        ({"runner_shortest": 330.0}, {}, "too shallow for the shortest runner"),
        # (260 - 4 x 2 - 3 x 80) / 3 = 4 high
        ({}, {"opening_2_drawers": 3.0, "opening_2_step": 80.0}, "needs at least {25 mm}"),
        # an opening of 100 - 25.4 - 24 = 50.6 between the sides
        ({"partition_1": 690.0}, {}, "at least {60 mm} between its sides"),
        # five drawers: (260 - 12) / 5 + 2 - 12 = 39.6 high, 19.2 of them below the groove's top
        ({"drawer_bottom_up": 25.0}, {"opening_2_drawers": 5.0}, "{12 mm} above its bottom"),
        ({"runner_kind": "under-mounted", "drawer_side_thickness": 21.0}, {}, "thicker than"),
        ({"drawer_front": "overlay", "drawer_lap": 9.5}, {}, "two fronts would meet"),
        ({"drawer_groove_depth": 10.5}, {}, "less than {2 mm} before the joint"),
        (
            {"drawer_joint": "through dovetail", "corner_rule": "by number", "corner_number": 9.0},
            {},
            "narrower than {5 mm}",
        ),
        # 39 spaces in a box (260 - 8) / 3 + 2 - 12 = 74 high
        (
            {"drawer_joint": "box joint", "corner_rule": "by number", "corner_number": 20.0},
            {"opening_2_drawers": 3.0},
            "narrower than {3 mm}",
        ),
        ({"runner_kind": "wooden", "runner_strip_width": 12.0}, {}, "under the whole side"),
    ],
)
def test_what_cannot_be_made_says_why(
    first: dict[str, Value], changes: dict[str, Value], because: str
) -> None:
    with pytest.raises(CannotBuild) as caught:
        with_drawers(changes, first)
    assert because in caught.value.what


def test_a_drag_stops_where_the_shortest_runner_no_longer_fits() -> None:
    """250 + 3 + 18 + 6 + 12 = 289 deep."""
    spec = with_drawers({})
    least = limits(spec, "depth")
    assert least.minimum == pytest.approx(289.0)
    assert "shortest runner" in least.why_minimum
    with pytest.raises(ValueOutOfRange):
        set_values(spec, {"depth": 288.0})
    assert limits(spec, "opening_2_drawers").maximum == 5.0


def test_nothing_about_drawers_binds_a_bench_without() -> None:
    spec = set_values(CASE, {"runner_shortest": 700.0, "drawer_groove_depth": 15.0})
    assert not [row for row in derived(build(spec)) if "runner" in row]
    assert set(SLOPES.values()) == {6.0, 8.0}
