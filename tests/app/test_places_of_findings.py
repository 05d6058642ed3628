"""The place of a finding is picked out in whatever the maker looks at."""

from __future__ import annotations

import numpy as np
import pytest

from app.canvas.picture import marks_owned
from app.panels.finding_line import FindingLine
from app.panels.job_strip import JOINTS, PAPERS, STAGES
from app.scene.joint_picking import joint_of
from app.scene.looks import Look, screen_layout
from app.scene.preferences import Preferences
from app.window.workplace import Workplace
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.design.cutting_plane import Plane, Way
from geometry.design.finding import Finding, Level
from geometry.drawing.marks import Arc, Strokes
from geometry.primitives.frame import Vec3, dot
from geometry.sheets.picked_place import PICKED, ring
from geometry.sheets.section_sheet import section_sheet
from geometry.sheets.whole_views import exploded_sheet
from geometry.solids.measure import bounding_box
from geometry.views.view import FRONT, PLAN


def _spoiled(window: Workplace) -> FindingLine:
    """The housings run out through the front of the boards."""
    window.desk.set_values({"reveal": 0.0, "housing_cover": 0.0})
    window.presenter.look_for_findings()
    return next(one for one in window.foot.lines() if one.finding.check == "housing_front")


def _rings(marks: object) -> list[Arc]:
    return [mark for mark in marks if isinstance(mark, Arc) and mark.owner == PICKED]  # type: ignore[attr-defined]


def test_a_ring_goes_round_the_point_as_the_view_sees_it() -> None:
    """From the front X goes to the right and Z up; in plan Y goes up."""
    front, plan = (ring((300.0, -40.0, 410.0), view, 0.1, (5.0, 7.0)) for view in (FRONT, PLAN))
    assert front.centre == pytest.approx((35.0, 48.0))
    assert plan.centre == pytest.approx((35.0, 3.0))


@pytest.mark.parametrize("look", [Look.PICTORIAL, Look.APART, Look.SECTION])
def test_it_is_picked_out_however_the_bench_is_shown(window: Workplace, look: Look) -> None:
    line = _spoiled(window)
    window.page.show_look(look)
    line.show_button.click()
    canvas = window.page.looks
    canvas.refresh()
    assert canvas.lit() == {PICKED, "part:top"}
    # In the section also in the small view beside it.
    assert len(_rings(canvas.marks)) == (2 if look is Look.SECTION else 1)
    assert line.finding.place is not None
    if look is Look.SECTION:
        assert canvas.plane.at == pytest.approx(dot(canvas.plane.normal, line.finding.place))
    window.desk.set_values({"length": 1210.0})
    assert canvas.lit() == {PICKED}
    canvas.refresh()
    assert _rings(canvas.marks) == []


def test_where_joints_are_looked_at_it_is_picked_out_in_the_detail(window: Workplace) -> None:
    line = _spoiled(window)
    window.go_to(STAGES.index(JOINTS))
    line.show_button.click()
    joints = window.stages.joints
    assert joints is not None
    assert joints.page.isVisible()
    shown = next(one for one in window.desk.model.bench.joints if one.name == joints.picked)
    assert shown.kind == "stopped housing"
    assert shown.parts[0] == "top"
    joints.page.sheet.refresh()
    assert _rings(joints.page.sheet.marks)
    assert joints.page.sheet.lit() == {PICKED, "part:top"}
    assert marks_owned(joints.page.sheet.marks, frozenset({"part:top"})), "drawn apart and alone"
    window.desk.set_values({"length": 1210.0})
    joints.page.sheet.refresh()
    assert _rings(joints.page.sheet.marks) == []
    assert joints.page.sheet.lit() == {PICKED}


def test_taken_apart_the_ring_has_gone_along_with_its_part() -> None:
    """The top's corner at the back, where that has been carried to: it is on the top's lines."""
    bench = build(default_spec())
    layout = screen_layout(300.0, 200.0, Preferences())
    low, high = bounding_box(bench.part("top"))
    point = (low[0], high[1], high[2])
    marks = exploded_sheet(bench, layout, point, ("top", "leg_front_left")).marks
    (found,) = _rings(marks)
    ends = np.concatenate(
        [
            mark.segments.reshape(-1, 2)
            for mark in marks_owned(marks, frozenset({"part:top"}))
            if isinstance(mark, Strokes)
        ]
    )
    assert np.hypot(*(ends - found.centre).T).min() < 0.05
    assert not _rings(exploded_sheet(bench, layout).marks)


def test_a_section_that_does_not_go_through_the_place_has_it_in_the_small_view_alone() -> None:
    bench = build(default_spec())
    layout = screen_layout(300.0, 200.0, Preferences())
    at = (300.0, -40.0, 410.0)
    through = section_sheet(bench, Plane(Way.ACROSS, 300.0), layout, at)
    beside = section_sheet(bench, Plane(Way.ACROSS, 310.0), layout, at)
    assert (len(_rings(through.marks)), len(_rings(beside.marks))) == (2, 1)
    small = _rings(beside.marks)[0].centre
    assert beside.key.place.in_view(small) == pytest.approx((300.0, 410.0))


def test_a_finding_far_from_every_joint_leads_to_the_drawing(window: Workplace) -> None:
    """Who sits at the end tips the bench: no joint is to blame for that."""
    window.desk.set_values({"inset_left": 500.0, "inset_right": 20.0})
    window.presenter.look_for_findings()
    line = next(one for one in window.foot.lines() if "sitter_tips" in one.finding.check)
    window.go_to(STAGES.index(JOINTS))
    line.show_button.click()
    assert window.page.isVisible()
    assert window.page.canvas.under_hand().rings


def test_from_the_papers_it_leads_to_the_drawing(window: Workplace) -> None:
    line = _spoiled(window)
    window.go_to(STAGES.index(PAPERS))
    line.show_button.click()
    assert window.page.isVisible()


@pytest.mark.parametrize(
    ("parts", "place", "kind", "pair"),
    [
        (("top", "partition_1"), None, "stopped housing", {"top", "partition_1"}),
        (("bottom",), (590.0, -340.0, 170.0), "stopped housing", {"bottom", "partition_1"}),
        (("leg_front_left",), None, "bridle joint", None),
        (("nothing",), None, "", None),
    ],
)
def test_the_joint_a_finding_is_about(
    parts: tuple[str, ...], place: Vec3 | None, kind: str, pair: set[str] | None
) -> None:
    bench = build(default_spec())
    found = Finding("made_up", Level.THINK_AGAIN, "Made up.", parts, place)
    name = joint_of(bench.joints, found)
    if not kind:
        assert name == ""
        return
    joint = next(one for one in bench.joints if one.name == name)
    assert kind in joint.kind
    assert pair is None or set(joint.parts) == pair
    assert np.isin(joint.parts, parts).any()
