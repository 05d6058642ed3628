"""A section's plane in the project file."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exporters.kept_section import FARTHEST
from exporters.project_file import VERSION, load, read_project
from exporters.project_writing import project_bytes
from geometry.bench.catalogue import default_spec
from geometry.design.cutting_plane import Plane, Way
from geometry.design.project import Project
from shared.errors import BadProjectFile

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.settle"))
PLAIN = Project(default_spec(), title="Hall bench")
CUT = replace(PLAIN, section=Plane(Way.LEVEL, 212.5, -12.0))


def with_section(**fields: Any) -> bytes:
    """A project's file in which fields of the section are others; None leaves one out."""
    content = json.loads(project_bytes(CUT))
    section = content["section"] | fields
    content["section"] = {name: value for name, value in section.items() if value is not None}
    return json.dumps(content).encode()


@given(
    way=st.sampled_from(Way),
    at=st.floats(-FARTHEST, FARTHEST),
    turn=st.floats(-90.0, 90.0, exclude_min=True),
)
@settings(max_examples=60, deadline=None)
def test_any_plane_reads_back_equal_and_writes_the_same_bytes(
    way: Way, at: float, turn: float
) -> None:
    project = replace(PLAIN, section=Plane(way, at, turn))
    data = project_bytes(project)
    again = read_project(data)
    assert again == project
    assert project_bytes(again) == data


def test_it_reads_like_the_rest_of_the_file() -> None:
    content = json.loads(project_bytes(CUT))
    assert content["version"] == VERSION
    assert content["section"] == {
        "way": {"value": "level", "unit": "choice"},
        "place": {"value": 212.5, "unit": "mm"},
        "turn": {"value": -12, "unit": "deg"},
    }


def test_a_project_without_one_says_nothing_of_it() -> None:
    content = json.loads(project_bytes(PLAIN))
    assert "section" not in content
    assert content["version"] == 1
    assert read_project(project_bytes(PLAIN)).section is None


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_samples_have_none_and_get_none(sample: Path) -> None:
    project = load(sample)
    assert project.section is None
    assert b'"section"' not in project_bytes(project)


@pytest.mark.parametrize(
    ("section", "words"),
    [
        ({"way": {"value": "sideways", "unit": "choice"}}, "'sideways' is no way"),
        ({"way": {"value": 1, "unit": "choice"}}, "1 is not a text"),
        ({"way": None}, "It should be choice"),
        ({"way": "level"}, "stands where named fields"),
        ({"place": {"value": "near", "unit": "mm"}}, "'near' is not a number"),
        ({"place": {"value": 8, "unit": "in"}}, "It should be mm"),
        ({"place": {"value": 1e300, "unit": "mm"}}, "farther off than any bench"),
        ({"place": None}, "It should be mm"),
        ({"turn": {"value": -90, "unit": "deg"}}, "more than -90"),
        ({"turn": {"value": 90.001, "unit": "deg"}}, "no more than 90"),
        ({"turn": {"value": True, "unit": "deg"}}, "true is not a number"),
        ({"tilt": {"value": 3, "unit": "deg"}}, "unknown name, 'tilt'"),
    ],
)
def test_a_plane_that_is_none_is_told(section: dict[str, Any], words: str) -> None:
    with pytest.raises(BadProjectFile) as caught:
        read_project(with_section(**section), "bench.settle")
    text = str(caught.value)
    assert words in text
    assert "bench.settle, section" in text


@pytest.mark.parametrize("content", [None, [], "across", 7])
def test_a_section_that_is_no_group_of_fields_is_told(content: Any) -> None:
    whole = json.loads(project_bytes(CUT)) | {"section": content}
    with pytest.raises(BadProjectFile, match="stands where named fields should"):
        read_project(json.dumps(whole).encode())
