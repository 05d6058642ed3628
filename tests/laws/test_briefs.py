"""What briefs promise on any bench: advice that says why, findings with keys of their own, mends
that cure, and advice that is met once it is taken."""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.advice.all_advice import advice
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, told
from geometry.design.brief import ADA_BENCH, ADULTS, PERSON, WEAK_KNEES, Brief

BRIEFS = (
    Brief(who=ADULTS, persons=3, humidity_low=30, humidity_high=75),
    Brief(
        who=PERSON,
        lower_leg=330,
        upper_leg=400,
        shoulders=400,
        use=WEAK_KNEES,
        standard=ADA_BENCH,
        load=150,
        room_length=900,
        room_depth=300,
        room_height=400,
        door_width=500,
        door_height=600,
        stair_width=500,
        landing_depth=500,
    ),
)


@pytest.mark.parametrize("brief", BRIEFS, ids=["group", "person"])
def test_findings_have_keys_and_parts_and_mends_that_cure(bench: Bench, brief: Brief) -> None:
    """The mends that the bench is offered without a brief as well are held in ``test_findings``."""
    known = {(one.key, one.mend) for one in told(bench) if one.mend is not None}
    found = findings(replace(bench, brief=brief))
    keys = [one.key for one in found]
    assert len(set(keys)) == len(keys)
    names = {part.name for part in bench.parts}
    for one in found:
        assert one.parts, one.check
        assert set(one.parts) <= names, one.check
        if one.mend is not None and (one.key, one.mend) not in known:
            mended = build(set_values(bench.spec, dict(one.mend.values)))
            after = told(replace(mended, brief=brief))
            assert one.key not in {still.key for still in after}, one.check


@pytest.mark.parametrize("brief", BRIEFS, ids=["group", "person"])
def test_advice_that_can_be_taken_is_met_by_taking_it(bench: Bench, brief: Brief) -> None:
    given = advice(bench, brief)
    assert len({one.name for one in given}) == len(given)
    for one in given:
        assert one.reason.endswith(".")
        assert one.source
        if one.changes and not one.met:
            taken = build(set_values(bench.spec, dict(one.changes)))
            again = next(each for each in advice(taken, brief) if each.name == one.name)
            assert again.met, one.name
        if not one.met and not one.changes:
            assert one.hindrance, one.name
