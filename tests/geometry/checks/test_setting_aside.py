"""What is set aside stays so while it is much the same, and stands again when it grows worse.

Walls beside the mortise, worked by hand: (t - t / 3 - 0.2) / 2 for stretchers of t, limit 6 mm.
A twentieth of the limit is 0.3 mm.
"""

from __future__ import annotations

import json

import pytest

from exporters.facts import finding_fact
from exporters.project_file import read_project
from exporters.project_writing import project_bytes
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import judged
from geometry.checks.setting_aside import aside, grown_worse
from geometry.design.finding import Finding, Level
from geometry.design.judging import AS_FOUND, Judging, SetAside
from geometry.design.project import Project

REASON = "A trial piece held."


def _judged(thickness: float, judging: Judging) -> Finding:
    bench = build(set_values(default_spec(), {"base_thickness": thickness}))
    return next(one for one in judged(bench, judging) if one.check == "mortise_wall")


AT_18 = Judging().setting_aside(aside(_judged(18.0, AS_FOUND), REASON))


def test_its_amount_is_remembered() -> None:
    (one,) = AT_18.set_aside
    assert one.amount == pytest.approx(5.9)
    assert one.level == "think again"


@pytest.mark.parametrize(
    ("thickness", "stands"),
    [
        (18.0, False),
        (17.5, False),  # 5.733: 0.167 less
        (17.2, False),  # 5.633: 0.267 less
        (17.0, True),  # 5.567: 0.333 less
        (18.2, False),  # 5.967: better
    ],
)
def test_grown_clearly_worse_it_stands_again(thickness: float, stands: bool) -> None:
    found = _judged(thickness, AT_18)
    assert bool(found.worse) is stands
    assert found.set_aside == ("" if stands else REASON)
    if stands:
        assert found.worse == (
            "Worse than when it was set aside at {5.9 mm}, because: A trial piece held."
        )


def test_set_aside_again_it_is_let_be_at_its_new_amount() -> None:
    now = AT_18.setting_aside(aside(_judged(17.0, AT_18), "Held again."))
    assert _judged(17.0, now).set_aside == "Held again."
    assert _judged(17.0, now).worse == ""
    assert len(now.set_aside) == 1


def _made(amount: float | None, limit: float | None, level: Level = Level.THINK_AGAIN) -> Finding:
    return Finding("made_up", level, "Made up.", ("top",), amount=amount, limit=limit)


@pytest.mark.parametrize(
    ("then", "now", "limit", "worse"),
    [
        (100.0, 106.0, 50.0, True),  # too much, and 6 % more
        (100.0, 104.0, 50.0, False),
        (100.0, 60.0, 50.0, False),
        (30.0, 24.0, 50.0, True),  # too little, and 6 less: a twentieth of the limit is 2.5
        (30.0, 49.0, 50.0, False),
        (30.0, 31.0, 0.0, False),  # none at all is the limit: a twentieth of the amount is 1.5
        (30.0, 32.0, 0.0, True),
        (-2.0, -2.2, 0.0, True),
        (None, 32.0, 0.0, False),
        (30.0, None, 0.0, False),
        (30.0, 90.0, None, False),
    ],
)
def test_worse_is_farther_on_the_wrong_side(
    then: float | None, now: float | None, limit: float | None, worse: bool
) -> None:
    let_be = aside(_made(then, limit), REASON)
    assert grown_worse(_made(now, limit), let_be) is worse


def test_a_graver_finding_is_never_hidden_by_a_lighter_one() -> None:
    let_be = aside(_made(3.0, 4.0), REASON)
    assert grown_worse(_made(3.0, 4.0, Level.DO_NOT_CUT), let_be)
    grave = aside(_made(3.0, 4.0, Level.DO_NOT_CUT), REASON)
    assert not grown_worse(_made(3.0, 4.0), grave)


def test_what_an_earlier_program_set_aside_stays_aside_and_keeps_its_bytes() -> None:
    (one,) = AT_18.set_aside
    old = Judging().setting_aside(SetAside(one.check, one.parts, one.reason))
    data = project_bytes(Project(default_spec(), "Bench", judging=old))
    assert b'"version": 2' in data
    assert b"amount" not in data
    assert project_bytes(read_project(data)) == data
    assert _judged(15.0, read_project(data).judging).set_aside == REASON


def test_the_amount_is_saved_and_read_back() -> None:
    project = Project(default_spec(), "Bench", judging=AT_18)
    data = project_bytes(project)
    assert b'"version": 3' in data
    (entry,) = json.loads(data)["set_aside"]
    assert entry["amount"] == pytest.approx(5.9)
    assert entry["level"] == "think again"
    assert read_project(data) == project


def test_the_facts_say_so_in_plain_units() -> None:
    fact = finding_fact(_judged(17.0, AT_18))
    assert isinstance(fact, dict)
    assert fact["set_aside"] is None
    assert "5.9 mm, because" in str(fact["worse"])
