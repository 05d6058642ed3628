"""Limits and paragraphs of all checks: each is listed, is read, and rules what is found.

Which limits a check reads is seen from its code: the functions that its own names lead to.
"""

from __future__ import annotations

import functools
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from types import CodeType, FunctionType
from typing import Any

import pytest

from app.window.samples import sample_files
from exporters.project_file import read_project
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS, SLOW_CHECKS
from geometry.checks.check import Check
from geometry.checks.limit import Limit
from geometry.checks.limit_rows import BY_NAME, KINS, LIMITS
from geometry.design.brief import PERSON, WEAK_KNEES, Brief
from geometry.design.parameter import Value
from geometry.design.part import Shape
from tests.random_benches import random_spec

ALL = (*CHECKS, *SLOW_CHECKS)

Steps = tuple[dict[str, Value], ...]


def _of_checks(thing: FunctionType) -> bool:
    return thing.__module__.startswith("geometry.checks")


# Benches on which a limit is felt that none of the samples comes near to.
SHELVES: Steps = ({"opening_1_fill": "shelf", "opening_2_fill": "shelf"}, {"length": 1400.0})
PANELS: Steps = ({"flare": 0.0}, {"seat": "panel bench"})
FELT_ON: dict[str, Steps] = {
    "least_between": SHELVES,
    "after_a_year": SHELVES,
    "flattest_in_soft": (
        *PANELS,
        {"left_joint": "dovetailed", "timber": "Sitka spruce", "tail_slope": "1:8"},
    ),
    "sitter_from_edge": (*PANELS, {"left_joint": "housed"}, {"left_end_in": 300.0}),
    "most_proud": ({"right_end": "mitred"},),
    "most_missed": (
        {"cut_already": "as recorded"},
        {"cut_top_partition_1_along": 601.0, "cut_bottom_partition_1_along": 600.0},
    ),
    "widest_mitre": ({"cut_already": "as recorded"}, {"sawn_mitre_top_left_board_tilt": 44.0}),
    "alike_angle": ({"right_end": "mitred", "deep_end": "both"},),
    "most_leg_out": ({"inset_left": -30.0},),
}
# Briefs, with a bench of the default's, in which a limit of those who sit is felt.
WEAK = Brief(who=PERSON, lower_leg=430, upper_leg=480, use=WEAK_KNEES)
FELT_IN: dict[str, tuple[Steps, Brief]] = {
    "far_off": ((), Brief(who=PERSON, lower_leg=380, upper_leg=480)),
    "room_spare": ((), Brief(room_length=1300)),
    "least_heels": (({"base": "plinth"},), WEAK),
    "heel_height": (({"base": "plinth"}, {"base_height": 150.0}), WEAK),
    "headroom": (({"length": 2000.0},), Brief(stair_width=700, landing_depth=700)),
}
# Where neither does: looked for among so many random ones.
SEEDS = range(40)


def _names(code: CodeType) -> Iterator[str]:
    yield from code.co_names
    for inner in code.co_consts:
        if isinstance(inner, CodeType):
            yield from _names(inner)


def _read(thing: Any, seen: set[int]) -> Iterator[Limit]:
    """The limits that a function leads to, through others of the package of checks."""
    if id(thing) in seen or (isinstance(thing, FunctionType) and not _of_checks(thing)):
        return
    seen.add(id(thing))
    if isinstance(thing, Limit):
        yield thing
    elif isinstance(thing, functools.partial):
        for one in (thing.func, *thing.args, *thing.keywords.values()):
            yield from _read(one, seen)
    elif hasattr(thing, "__wrapped__"):
        yield from _read(thing.__wrapped__, seen)
    elif isinstance(thing, FunctionType):
        for cell in thing.__closure__ or ():
            yield from _read(cell.cell_contents, seen)
        for name in _names(thing.__code__):
            yield from _read(thing.__globals__.get(name), seen)
    elif isinstance(thing, tuple):
        for one in thing:
            yield from _read(one, seen)


@pytest.mark.parametrize("check", ALL, ids=lambda check: check.name)
def test_every_limit_that_a_check_reads_is_listed_and_no_other(check: Check) -> None:
    read = {row.name for row in _read(check.run, set())}
    assert read == {row.name for row in check.limits}
    assert len(check.limits) == len(set(check.limits))


@pytest.mark.parametrize("check", ALL, ids=lambda check: check.name)
def test_every_check_says_what_it_looks_for_and_why(check: Check) -> None:
    assert check.title[0].isupper()
    assert not check.title.endswith(".")
    assert len(check.title) <= 60
    assert check.about.endswith(".")
    assert len(check.about.split(". ")) >= 2, "what it looks for, and why"
    assert 80 <= len(check.about) <= 900, len(check.about)
    assert "\n" not in check.about
    assert "  " not in check.about


def test_checks_have_names_and_titles_of_their_own() -> None:
    assert len({check.name for check in ALL}) == len(ALL)
    assert len({check.title for check in ALL}) == len(ALL)
    assert len({row.title for row in LIMITS}) == len(LIMITS) == len(BY_NAME)


def test_limits_stand_under_headings_none_of_which_is_empty() -> None:
    assert all(rows for _, rows in KINS)
    assert len({heading for heading, _ in KINS}) == len(KINS)


def test_every_limit_is_used_by_a_check() -> None:
    assert {row.name for check in ALL for row in check.limits} == set(BY_NAME)


@lru_cache(maxsize=1)
def _samples() -> tuple[Bench, ...]:
    projects = [read_project(path.read_bytes()) for path in sample_files()]
    return tuple(replace(build(one.spec), brief=one.brief) for one in projects)


@functools.cache
def _random(seed: int) -> Bench:
    return build(random_spec(seed))


def _with_a_shelf_cut_short() -> Bench:
    """By 5 mm: no bench that is built has one."""
    bench = _changed(SHELVES)
    shelf = bench.part("shelf_1")
    blank = replace(shelf.shape.blank, length=shelf.shape.blank.length - 5.0)
    short = replace(shelf, shape=Shape(blank, ()))
    return replace(bench, parts=tuple(short if one is shelf else one for one in bench.parts))


def _changed(steps: Steps) -> Bench:
    spec = default_spec()
    for step in steps:
        for name, value in step.items():
            spec = set_values(spec, {name: value})
    return build(spec)


def _felt_on(row: Limit) -> Iterator[Bench]:
    if row.name == "shortest_in_housings":
        yield _with_a_shelf_cut_short()
        return
    if row.name in FELT_ON:
        yield _changed(FELT_ON[row.name])
        return
    if row.name in FELT_IN:
        steps, brief = FELT_IN[row.name]
        yield replace(_changed(steps), brief=brief)
        return
    yield from _samples()
    for seed in SEEDS:
        yield _random(seed)


@pytest.mark.parametrize("row", LIMITS, ids=lambda row: row.name)
def test_a_changed_limit_changes_what_is_found(row: Limit) -> None:
    """At one end of what the limit can be something is found that is not found at the other."""
    checks = [check for check in ALL if row in check.limits]
    for bench in _felt_on(row):
        keys = []
        for value in (row.minimum, row.maximum):
            judged = replace(bench, judged_by=((row.name, value),))
            found = [one for check in checks if check.applies(judged) for one in check.run(judged)]
            keys.append({(one.key, one.level) for one in found})
        if keys[0] != keys[1]:
            return
    pytest.fail(f"nothing that is found depends on {row.name}")
