"""The facts of a bench: complete, in JSON's own terms, and true to the catalogue."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest

from exporters.facts import facts, facts_text
from geometry.bench.bench import Bench
from geometry.bench.catalogue import PARAMETERS
from geometry.design.finding import Finding, Level, Mend
from geometry.design.project import Project

FINDING = Finding(
    "housing_cutter",
    Level.DO_NOT_CUT,
    "The cutter of {12.7 mm} is wider than the housing.",
    ("top",),
    (1.0, 2.0, 3.0),
    12.7,
    10.0,
    mend=Mend("Set the cutter to {10 mm}.", (("cutter_diameter", 10.0),)),
)


@pytest.fixture(scope="module")
def content(project: Project, bench: Bench) -> Any:
    return json.loads(facts_text(facts(project, bench, [FINDING])))


def test_every_parameter_is_there_with_its_limits(content: Any) -> None:
    assert list(content["parameters"]) == [row.name for row in PARAMETERS]
    for row in PARAMETERS:
        found = content["parameters"][row.name]
        assert found["value"] == row.default
        assert found["unit"] == row.unit
        assert found["description"]
        if row.unit == "choice":
            assert found["value"] in found["choices"]
        elif row.unit == "text":
            assert found["minimum"] is found["maximum"] is None
        elif found["applies"]:
            assert found["minimum"] <= found["value"] <= found["maximum"]


def test_derived_sizes_by_hand(content: Any) -> None:
    """Seat 150 + 300; inside 300 - 2 x 20; the front leans atan(60 / 300)."""
    derived = content["derived"]
    assert derived["seat_height"]["value"] == pytest.approx(450.0)
    assert derived["inside_height"]["value"] == pytest.approx(260.0)
    assert derived["front_lean"]["value"] == pytest.approx(math.degrees(math.atan(60 / 300)))
    assert derived["front_lean"]["unit"] == "deg"


def test_every_piece_is_an_entry_of_its_own(content: Any, bench: Bench) -> None:
    parts = content["parts"]
    assert list(parts) == [part.name for part in bench.parts]
    assert {part["count"] for part in parts.values()} == {1}
    assert parts["leg_front_right"]["same_as"] == "leg_back_left"
    assert parts["top"]["same_as"] == "top"
    assert parts["top"]["material"] == "white oak"
    back = parts["back"]
    size = back["blank_length"] * back["blank_width"] * back["blank_thickness"]
    assert back["volume_mm3"] == pytest.approx(size)


def test_joints_name_parts_that_exist(content: Any) -> None:
    assert content["joints"]
    for joint in content["joints"]:
        assert set(joint["parts"]) <= set(content["parts"])
        assert joint["kind"]
        for measure in joint["measures"].values():
            assert measure["unit"] in ("mm", "deg")
            assert "{" not in measure["meaning"]


def test_a_finding_is_said_in_millimetres(content: Any) -> None:
    (finding,) = content["findings"]
    assert finding == {
        "check": "housing_cutter",
        "level": "do not cut",
        "message": "The cutter of 12.7 mm is wider than the housing.",
        "parts": ["top"],
        "place": [1.0, 2.0, 3.0],
        "amount": 12.7,
        "limit": 10.0,
        "unit": "mm",
        "estimate": False,
        "set_aside": None,
        "worse": None,
        "mend": {"sentence": "Set the cutter to 10 mm.", "values": {"cutter_diameter": 10.0}},
    }


def test_a_number_that_json_does_not_have_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="JSON"):
        facts_text({"x": math.nan})


def test_the_same_bench_gives_the_same_text(project: Project, bench: Bench) -> None:
    text = facts_text(facts(project, bench, []))
    assert text == facts_text(facts(project, bench, []))
    assert text.isascii()
