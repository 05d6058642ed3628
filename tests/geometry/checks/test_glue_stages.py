"""How a glue-up is divided, on trees of closings made by hand, and on samples."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from exporters.project_file import load
from geometry.bench.build import build
from geometry.bench.made_apart import made_apart
from geometry.bench.member import THE_BASE, THE_BODY, THE_REST
from geometry.checks.glue_stages import Closing, Stage, goes, stages
from geometry.design.joint import Joint
from geometry.joints.closing import GLUED, closing_of
from geometry.joints.holds import HOLDS, Hold
from tests.assembled import assembly_of

SAMPLES = Path(__file__).parents[3] / "sample_projects"


def _joints(name: str, count: int) -> tuple[Joint, ...]:
    return tuple(
        Joint(f"{name}_{k}", "stub tenon", (name, "rail"), 0.0, (), (), (), ())
        for k in range(count)
    )


def _closing(name: str, count: int, *before: Closing) -> Closing:
    return Closing(_joints(name, count), (name,), before)


def _minute(_joint: Joint) -> float:
    return 1.0


def test_a_glue_up_that_fits_is_one_go() -> None:
    stage = Stage("the base", _closing("end", 2, _closing("rail", 3), _closing("post", 4)))
    assert [len(go) for go in goes(stage, _minute, 9.0)] == [9]


def test_the_heaviest_of_what_a_step_joins_dries_first() -> None:
    """2 + 3 + 4 minutes within 8: without the 4 it is 5, and both goes fit."""
    stage = Stage("the base", _closing("end", 2, _closing("rail", 3), _closing("post", 4)))
    assert [{joint.parts[0] for joint in go} for go in goes(stage, _minute, 8.0)] == [
        {"post"},
        {"end", "rail"},
    ]


@st.composite
def _trees(draw: st.DrawFn, depth: int = 3) -> Closing:
    name = f"n{draw(st.integers(0, 10**9))}"
    before = draw(st.lists(_trees(depth - 1), max_size=2)) if depth else []
    return _closing(name, draw(st.integers(1, 5)), *before)


def _fewest(last: Closing, open_time: float) -> int:
    """By trying every way to let some of the closings dry before the next goes on."""
    nodes = last.all_closings()
    below = {id(one): one.before for one in nodes}
    for cuts in range(len(nodes)):
        for dry in combinations([id(one) for one in nodes if one is not last], cuts):

            def wet(one: Closing, dry: tuple[int, ...] = dry) -> float:
                return len(one.joints) + sum(
                    wet(other) for other in below[id(one)] if id(other) not in dry
                )

            starts = [one for one in nodes if one is last or id(one) in dry]
            if all(wet(one) <= open_time for one in starts):
                return cuts + 1
    raise AssertionError("each closing fits by itself")


@given(_trees(), st.integers(5, 9))
def test_there_are_no_fewer_goes_than_it_finds(last: Closing, open_time: int) -> None:
    found = goes(Stage("the base", last), _minute, float(open_time))
    assert len(found) == _fewest(last, float(open_time))
    assert all(len(go) <= open_time for go in found)
    assert sorted(joint.name for go in found for joint in go) == sorted(
        joint.name for joint in last.all_joints()
    )


def _every_stage() -> Iterator[tuple[str, tuple[Stage, ...], int]]:
    for path in sorted(SAMPLES.glob("*.settle")):
        bench = build(load(path).spec)
        glued = sum(closing_of(joint) is not None for joint in bench.joints)
        yield path.stem, stages(bench, assembly_of(bench.parts, bench.joints)), glued


def test_every_glued_joint_of_a_sample_is_in_one_glue_up() -> None:
    for name, found, glued in _every_stage():
        told = [joint.name for stage in found for joint in stage.last.all_joints()]
        assert len(told) == len(set(told)) == glued, name


def test_a_base_and_a_drawer_are_glued_up_by_themselves() -> None:
    """The boat club's bench by hand: 4 bridles and a lap; 5 boxes of 4 corners; 4 mitres and 6
    housings."""
    bench = build(load(SAMPLES / "boat_club_bench.settle").spec)
    found = stages(bench, assembly_of(bench.parts, bench.joints))
    assert sorted((one.title, len(one.last.all_joints())) for one in found) == [
        ("the base", 5),
        ("the body", 10),
        ("the drawer, first in opening 1", 4),
        ("the drawer, first in opening 3", 4),
        ("the drawer, second in opening 1", 4),
        ("the drawer, second in opening 3", 4),
        ("the drawer, third in opening 3", 4),
    ]


def test_the_bottom_of_a_case_closes_its_mitres_and_its_housings_at_once() -> None:
    """4 partitions and 2 mitres."""
    bench = build(load(SAMPLES / "cloakroom_bench.settle").spec)
    found = stages(bench, assembly_of(bench.parts, bench.joints))
    (body,) = (one for one in found if one.title == THE_BODY)
    assert len(body.last.joints) == 6


@pytest.mark.parametrize(
    ("sample", "part", "title"),
    [
        ("orchard_bench", "stretcher_back_left", THE_BASE),
        ("bakehouse_bench", "plinth_left", THE_BASE),
        ("bakehouse_bench", "post_1", THE_REST),
        ("weigh_house_bench", "lipping_2", THE_BODY),
        ("boat_club_bench", "drawer_1_2_front", "the drawer, second in opening 1"),
    ],
)
def test_what_is_made_apart(sample: str, part: str, title: str) -> None:
    assert made_apart(load(SAMPLES / f"{sample}.settle").spec)[part] == title


def test_what_is_glued_holds_fast_and_the_rest_is_screwed() -> None:
    fast = {kind for kind, hold in HOLDS.items() if hold is Hold.FAST}
    assert fast - set(GLUED) == {"screwed", "screwed button"}
    assert set(GLUED) <= fast
