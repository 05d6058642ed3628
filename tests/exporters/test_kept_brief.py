"""A brief in the project file and in the facts."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exporters.facts import facts, facts_text
from exporters.project_file import read_project
from exporters.project_writing import project_bytes
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.checks.all_checks import judged
from geometry.design.brief import ADULTS, ROWS, Brief, BriefRow
from geometry.design.judging import AS_FOUND
from geometry.design.project import Project
from shared.errors import BadProjectFile

SPEC = default_spec()
PLAIN = Project(SPEC, title="Hall bench")
SAID = Brief(who=ADULTS, persons=2, room_length=1500, humidity_low=35, humidity_high=65)


def values(row: BriefRow) -> st.SearchStrategy[Any]:
    if row.unit == "choice":
        return st.sampled_from(row.choices)
    if row.unit == "text":
        return st.text(st.characters(codec="utf-8", exclude_categories=["C"]), max_size=80)
    if row.unit == "count":
        return st.integers(int(row.minimum), int(row.maximum)).map(float)
    high = 50.0 if row.name == "humidity_low" else row.maximum
    low = 50.0 if row.name == "humidity_high" else row.minimum
    return st.floats(low, high)


@given(said=st.fixed_dictionaries({}, optional={row.name: values(row) for row in ROWS}))
@settings(max_examples=40, deadline=None)
def test_any_brief_reads_back_equal_and_writes_the_same_bytes(said: dict[str, Any]) -> None:
    project = replace(PLAIN, brief=Brief(**said))
    data = project_bytes(project)
    again = read_project(data)
    assert again == project
    assert project_bytes(again) == data


def test_a_project_without_a_brief_says_nothing_of_one() -> None:
    content = json.loads(project_bytes(PLAIN))
    assert "brief" not in content
    assert read_project(project_bytes(PLAIN)).brief.blank


def test_only_what_is_said_is_written() -> None:
    content = json.loads(project_bytes(replace(PLAIN, brief=SAID)))
    assert content["brief"] == {
        "who": {"value": "men and women", "unit": "choice"},
        "persons": {"value": 2, "unit": "count"},
        "room_length": {"value": 1500, "unit": "mm"},
        "humidity_low": {"value": 35, "unit": "%"},
        "humidity_high": {"value": 65, "unit": "%"},
    }


@pytest.mark.parametrize(
    ("brief", "words"),
    [
        ({"hat": {"value": 1, "unit": "mm"}}, "unknown name"),
        ({"persons": {"value": 2, "unit": "mm"}}, "unit"),
        ({"persons": {"value": "two", "unit": "count"}}, "not a number"),
        ({"persons": {"value": 99, "unit": "count"}}, "not from 1 to 12"),
        ({"who": {"value": "giants", "unit": "choice"}}, "not one of the choices"),
        ([], "named fields"),
    ],
)
def test_a_bad_brief_is_refused_with_its_reason(brief: object, words: str) -> None:
    content = json.loads(project_bytes(PLAIN)) | {"brief": brief}
    with pytest.raises(BadProjectFile, match=words):
        read_project(json.dumps(content).encode())


def test_the_facts_have_brief_advice_and_its_findings() -> None:
    bench = build(SPEC)
    project = replace(PLAIN, brief=SAID)
    told = json.loads(facts_text(facts(project, bench, judged(bench, AS_FOUND, SAID))))
    assert list(told["brief"]) == [row.name for row in ROWS]
    assert told["brief"]["persons"]["value"] == 2
    height = next(one for one in told["advice"] if one["name"] == "seat_height")
    # 90 of 100 men and women on a short sit: 0.8 x 471 + 25 to 1.1 x 350 + 25
    assert (height["now"], height["low"], height["high"]) == pytest.approx((450, 401.8, 410))
    assert height["changes"] == {"base_height": 110}
    assert "seat_height" in {finding["check"] for finding in told["findings"]}
    assert not any("{" in one["reason"] for one in told["advice"])


def test_a_blank_brief_gives_no_advice() -> None:
    bench = build(SPEC)
    assert json.loads(facts_text(facts(PLAIN, bench, ())))["advice"] == []
