"""Glue-ups keep the laws of benches: boards and tenons are solids, share nothing, and meet."""

from __future__ import annotations

import random
from functools import lru_cache

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.glue_ups import boards_of, glue_ups
from geometry.bench.limits import limits, set_values
from tests.laws import test_joints_meet as meeting
from tests.laws import test_solids as solids
from tests.random_benches import random_spec

LAWS = (
    solids.test_each_part_is_one_closed_solid,
    solids.test_each_part_fills_its_blank,
    solids.test_no_part_has_a_skin,
    meeting.test_faces_meet_within_their_gap,
    meeting.test_a_good_part_of_the_faces_meets_in_the_end,
    meeting.test_gaps_add_up_to_the_fit,
    meeting.test_every_joint_declares_its_faces,
    meeting.test_jointed_parts_touch_and_no_more,
    meeting.test_joints_name_parts_that_exist_and_cut_them,
)


@lru_cache(maxsize=8)
def _glued(seed: int) -> Bench:
    """A random bench whose panels are glued up from two or more boards."""
    spec = set_values(random_spec(seed, changes=60), {"glue_up_hold": "loose tenons"})
    allowed = limits(spec, "glue_up_width")
    depth = spec.number("depth")
    width = random.Random(seed).uniform(depth / 4.0, depth * 0.8)
    width = min(max(width, allowed.minimum), depth - 1.0)
    return build(set_values(spec, {"glue_up_width": width}))


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("law", LAWS, ids=lambda law: law.__name__.removeprefix("test_"))
def test_a_glue_up_keeps_the_law(law: object, seed: int) -> None:
    assert callable(law)
    law(boards_of(_glued(seed)))


@pytest.mark.parametrize("seed", range(3))
def test_boards_make_up_the_panel(seed: int) -> None:
    """Side by side and nothing left: equal boards, none wider than the widest."""
    bench = _glued(seed)
    found = glue_ups(bench)
    assert found
    for one in found:
        panel = bench.part(one.panel)
        widths = [board.shape.blank.width for board in one.boards]
        assert sum(widths) == pytest.approx(panel.across_grain)
        assert max(widths) <= bench.spec.number("glue_up_width") + 1e-9
        assert max(widths) - min(widths) < 1e-9
        assert all(board.grain == pytest.approx(panel.grain) for board in one.boards)
        assert {board.shape.blank.length for board in one.boards} == {panel.along_grain}
