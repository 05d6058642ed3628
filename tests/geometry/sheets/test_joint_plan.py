"""A maker can mark both parts from a joint's detail: each line is told from a reference face."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from exporters.project_file import load
from geometry.bench.build import build
from geometry.sheets.joint_figures import PartFigure, SectionFigure
from geometry.sheets.joint_groups import joint_groups
from geometry.sheets.joint_lines import marked_lines
from geometry.sheets.joint_plan import JointPlan, joint_plan

SAMPLES = Path(__file__).parents[3] / "sample_projects"


@cache
def bench_of(sample: str):
    return build(load(SAMPLES / f"{sample}_bench.settle").spec)


def plan_of(sample: str, name: str) -> JointPlan:
    bench = bench_of(sample)
    parts = {part.name: part for part in bench.parts}
    groups = joint_groups(bench.joints, parts)
    return joint_plan(next(g for g in groups if g[0].name == name), parts)


def drawn(plan: JointPlan, index: int) -> dict[str, float]:
    """The dimensions on one part alone, by name."""
    return {
        one.name: round(one.value, 2)
        for view in plan.views
        if isinstance(view.figure, PartFigure) and view.figure.index == index
        for one in view.dimensions
    }


def lengths(plan: JointPlan, index: int) -> list[float]:
    views = [v for v in plan.views if isinstance(v.figure, PartFigure) and v.figure.index == index]
    return sorted(
        round(one.value, 1) for view in views for one in view.dimensions if one.unit == "mm"
    )


def test_a_stub_tenon_is_placed_from_face_edge_and_face_side():
    """A rail of 80 by 24 with a tenon of 56 by 9 in its middle: (80 - 56) / 2 and (24 - 9) / 2."""
    plan = plan_of("bakery_yard", "rail_left")
    rail = drawn(plan, 0)
    assert rail["place_1"] == 12.0
    assert rail["place_2"] == 7.5
    end = drawn(plan, 1)
    assert end["mortise_length"] == 56.0
    assert end["mortise_width"] == 9.2


def test_where_a_mortise_stands_on_a_broad_board_is_told_in_words():
    """Neither the end nor the face edge of the board is in the picture."""
    plan = plan_of("bakery_yard", "rail_left")
    assert [(one.index, one.axis) for one in plan.unplaced] == [(1, 0), (1, 1)]


def test_a_mitre_is_marked_on_both_inside_faces():
    """A seat of 38 on an end of 34: on the seat 34 from its end, on the end 38 from its own."""
    plan = plan_of("bell_tower", "mitre_left")
    seat, end = drawn(plan, 0), drawn(plan, 1)
    assert (seat["place_0"], end["place_0"]) == (34.0, 38.0)
    # atan(34 / 38) and atan(38 / 34), each on its own part.
    assert (seat["tilt_first"], end["tilt_second"]) == (41.82, 48.18)


def test_a_mortise_is_placed_on_its_post():
    """A post of 36: 9.2 between the cheeks, in its middle, (36 - 9.2) / 2 = 13.4 from its face."""
    plan = plan_of("bowling_green", "top_rail_bay_1_right")
    post = drawn(plan, 1)
    assert post["place_2"] == 13.4
    assert post["mortise_width"] == 9.2
    assert post["place_0"] == 20.0  # down from the post's top
    rail = drawn(plan, 0)
    assert rail["place_1"] == 8.0
    assert rail["from_face_side"] == 7.5


def test_a_bridle_s_mortise_is_as_deep_along_one_edge_as_along_the_other():
    """Its floor slants as the leg's top does, by an angle that is told, so one depth is enough."""
    plan = plan_of("boat_club", "bridle_back_left")
    assert lengths(plan, 1) == [13.2, 13.5, 62.1]


def test_a_stop_is_not_drawn_where_something_else_is_as_long():
    """The partition is as thick as the shelf's housing stops from the front: that is no stop."""
    plan = plan_of("sail_loft", "housing_partition_1_shelf_2")
    for view in plan.views:
        for one in view.dimensions:
            if one.name.startswith("stop"):
                right, up = view.figure.view.right, view.figure.view.up
                y = right[1] * one.along[0] + up[1] * one.along[1]
                assert abs(y) == pytest.approx(1.0)


def test_a_stop_alike_on_both_sides_is_drawn_once():
    plan = plan_of("boat_club", "housing_bottom_partition_1")
    stops = [one.name for v in plan.views for one in v.dimensions if one.name.startswith("stop")]
    assert stops == ["stop_from_front"]


def test_a_mouth_that_leans_on_its_face_has_its_turn_and_a_corner():
    """The posts lean back by 5.5 degrees in the bakehouse, the rails do not."""
    plan = plan_of("bakehouse", "top_rail_bay_1_left")
    turn = next(m for m in plan.scene.joint.measures if m.name == "mouth_turn")
    assert turn.value == pytest.approx(5.5, abs=0.05)
    shown = drawn(plan, 1)
    assert {"mortise_length", "place_0", "place_1"} <= set(shown)
    post = plan.scene.second.whole
    lines = marked_lines(plan.scene.joint, post, 1)
    corner = min((tuple(p) for p in lines.ends.reshape(-1, 3)), key=lambda p: p[1])
    # The face edge is sawn away in the picture: the far edge is there.
    far = float(lines.limits[1, 1])
    assert shown["place_1"] == pytest.approx(far - corner[1], abs=0.01)


def test_a_tenon_with_a_slanting_end_is_placed_from_the_face_edge():
    """A top rail of 86 has its tenon of 70 in its middle: 8 from either edge."""
    plan = plan_of("bowling_green", "top_rail_bay_1_left")
    assert drawn(plan, 0)["place_1"] == 8.0


def test_the_first_tail_is_drawn_from_the_lower_edge():
    """Between two tails it is as wide: a pin, and no place of the first."""
    plan = plan_of("sail_loft", "drawer_1_1_corner_front_left")
    side = plan.scene.first.whole
    first = next(m for m in plan.scene.joint.measures if m.name == "first_tail")
    (shown,) = [
        (view.figure.view, one)
        for view in plan.views
        for one in view.dimensions
        if one.name == "first_tail"
    ]
    view, one = shown
    up = [r * one.along[0] + u * one.along[1] for r, u in zip(view.right, view.up, strict=True)]
    low = sum(a * b for a, b in zip(up, side.frame.origin, strict=True))
    places = sorted(
        abs(p[0] * one.along[0] + p[1] * one.along[1] - low) for p in (one.start, one.end)
    )
    assert places == pytest.approx([0.0, first.value], abs=0.01)


STRUCTURAL = (
    *("stopped housing", "mitre", "loose tenon", "half-blind dovetail", "through dovetail"),
    *("box joint", "rebate and groove", "angled lap", "bridle joint", "stub tenon"),
    *("wedged tenon", "through tenon", "rail tenon", "apron tenon", "slat tenon", "post tenon"),
    *("passed rail", "let in"),
)


@pytest.mark.parametrize("sample", ["choir_loft", "lock_keepers", "map_room", "lamp_room"])
def test_every_line_to_be_marked_is_told_from_somewhere(sample):
    """By chains of what is drawn, worked here from the points of the dimensions alone: a place on
    an axis is known if a dimension runs from it to an end, a face, a corner that was there or a
    known place; or the detail says in words where the joint stands along that axis."""
    bench = bench_of(sample)
    parts = {part.name: part for part in bench.parts}
    for group in joint_groups(bench.joints, parts):
        joint = group[0]
        if joint.kind not in STRUCTURAL or "dovetail" in joint.kind:
            continue
        plan = joint_plan(group, parts)
        told = {(one.index, one.axis) for one in plan.unplaced}
        slanting = any(m.unit == "deg" and m.value > 0.3 for m in joint.measures)
        words = [m.value for m in joint.measures if "from" in f"{m.name} {m.meaning}"]
        for index, one in enumerate(plan.scene.both):
            lines = marked_lines(joint, one.whole, index)
            names = {m.name for m in joint.measures if index in m.found_on}
            for axis in range(3):
                if (index, axis) in told or slanting:
                    continue
                low, high = lines.limits[:, axis]
                spans = list(_spans(plan, one.whole.frame, (index, axis), names))
                known = {round(float(low), 2), round(float(high), 2)}
                known |= {round(float(at), 2) for at in lines.before[:, axis]}
                values = [round(float(value), 2) for value in lines.values(axis)]
                for value in values:
                    if any(
                        abs(value - low - w) < joint.fit or abs(high - value - w) < joint.fit
                        for w in words
                    ):
                        known.add(value)
                for _ in values:
                    for a, b in spans:
                        if a in known or b in known:
                            known |= {a, b}
                lost = [value for value in values if value not in known]
                assert not lost, (joint.name, index, axis, values, spans)


def _spans(plan, frame, at, names):
    """From where to where the dimensions along an axis of a part run, in its own frame."""
    index, axis = at
    way = (frame.x_axis, frame.y_axis, frame.z_axis)[axis]
    zero = sum(a * b for a, b in zip(frame.origin, way, strict=True))
    for shown in plan.views:
        view = shown.figure.view
        mine = isinstance(shown.figure, PartFigure) and shown.figure.index == index
        for one in shown.dimensions:
            if isinstance(shown.figure, SectionFigure) and one.name not in names:
                continue
            if not (mine or isinstance(shown.figure, SectionFigure)) or one.apex is not None:
                continue
            run = [
                r * one.along[0] + u * one.along[1]
                for r, u in zip(view.right, view.up, strict=True)
            ]
            cosine = sum(a * b for a, b in zip(run, way, strict=True))
            if abs(cosine) < 0.999999:
                continue
            ends = [
                (p[0] * one.along[0] + p[1] * one.along[1]) * cosine - zero
                for p in (one.start, one.end)
            ]
            yield round(ends[0], 2), round(ends[1], 2)


@pytest.mark.parametrize("sample", ["bowling_green", "choir_loft", "bell_tower"])
def test_a_place_starts_where_something_of_the_part_is_drawn(sample):
    """A corner that is cut off with what the picture leaves out is no start of a dimension."""
    bench = bench_of(sample)
    parts = {part.name: part for part in bench.parts}
    for group in joint_groups(bench.joints, parts):
        for view in joint_plan(group, parts).views:
            for one in view.dimensions:
                if not one.name.startswith("place_"):
                    continue
                axis = 0 if one.along == (1.0, 0.0) else 1
                outlines = view.figure.outlines
                drawn_at = [*outlines.corners[:, axis], *outlines.edges.reshape(-1, 2)[:, axis]]
                off = min(abs(at - one.start[axis]) for at in drawn_at)
                assert off < 0.06, (group[0].name, one)
