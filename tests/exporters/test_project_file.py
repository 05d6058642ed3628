"""A project file reads back as what was written, and nothing else reads at all."""

from __future__ import annotations

import json
import os
import sys
import time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from exporters.project_file import SIZE_LIMIT, VERSION, load, read_project
from exporters.project_writing import project_bytes, save
from geometry.bench.catalogue import PARAMETERS, default_spec
from geometry.bench.limits import set_values
from geometry.design.project import LINE_LIMIT, NOTES_LIMIT, Project
from shared.errors import BadProjectFile, CannotWrite

TEXT = st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"]), max_size=40)
NOTES = st.text(
    st.characters(exclude_categories=["Cs", "Zl", "Zp", "Cc"]) | st.sampled_from("\n\t"),
    max_size=80,
)

PLAIN = Project(
    default_spec(), "Reading bench", "By the window", "A. Maker", "The Library", "14", "B", "Oiled."
)


def changed(**fields: Any) -> bytes:
    """The plain project's file with some of its fields replaced, or left out when None."""
    content = json.loads(project_bytes(PLAIN)) | fields
    return json.dumps({k: v for k, v in content.items() if v is not None}).encode()


def with_parameter(name: str, entry: Any) -> bytes:
    rows = json.loads(project_bytes(PLAIN))["parameters"]
    return changed(parameters={**rows, name: entry})


def why_not(data: bytes) -> str | None:
    """The reason for which a file is refused, None for one that is read; all else is a fault."""
    try:
        read_project(data)
    except BadProjectFile as error:
        return error.what
    return None


@given(
    title=TEXT,
    place=TEXT,
    designer=TEXT,
    revision=TEXT,
    notes=NOTES,
    length=st.floats(900, 2000),
    flare=st.floats(0, 90),
    splay=st.floats(5, 20),
    timber=st.sampled_from(next(row for row in PARAMETERS if row.name == "timber").choices),
)
@settings(max_examples=60, deadline=None)
def test_what_is_written_reads_back_equal_and_writes_the_same_bytes(
    *, length: float, flare: float, splay: float, timber: str, **texts: str
) -> None:
    spec = set_values(
        default_spec(), {"length": length, "flare": flare, "splay": splay, "timber": timber}
    )
    project = Project(spec, **texts)
    data = project_bytes(project)
    again = read_project(data)
    assert again == project
    assert project_bytes(again) == data


def test_the_file_reads_like_a_list(tmp_path: Path) -> None:
    path = tmp_path / "bench.settle"
    save(PLAIN, path)
    lines = path.read_text(encoding="utf-8").splitlines()
    assert '  "title": "Reading bench",' in lines
    assert '    "length": {"value": 1200, "unit": "mm"},' in lines
    names = [line.split('"')[1] for line in lines if '"unit"' in line]
    assert names == [row.name for row in PARAMETERS]
    assert load(path) == PLAIN


def test_json_itself_agrees(tmp_path: Path) -> None:
    path = tmp_path / "bench.settle"
    save(PLAIN, path)
    content = json.loads(path.read_bytes())
    assert content["parameters"]["left_end"] == {"value": "mitred", "unit": "choice"}
    assert content["version"] == 1


def test_missing_texts_are_empty_and_missing_parameters_have_the_default() -> None:
    data = changed(title=None, notes=None, parameters={"length": {"value": 1500, "unit": "mm"}})
    project = read_project(data)
    assert project.title == ""
    assert project.spec.number("length") == 1500.0
    assert project.spec.number("depth") == default_spec().number("depth")


def test_a_byte_order_mark_does_no_harm() -> None:
    assert read_project(b"\xef\xbb\xbf" + project_bytes(PLAIN)) == PLAIN


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "empty"),
        (b"  \n", "empty"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "not text"),
        ("\N{FRACTION SLASH}{}".encode("utf-16"), "not text"),
        (b"\x00\x01\x02\x03", "not a project of Settlewright"),
        (b"# Notes on a bench\n\nOak.\n", "not a project of Settlewright"),
        (project_bytes(PLAIN)[:700], "breaks off"),
        (b"{", "breaks off"),
        (b"[" * 200_000, "nested deeper"),
        (b'{"a":' * 100_000, "nested deeper"),
        (b"9" * 10_000, "longer than any size"),
        (b"NaN", "NaN is not a size"),
        (b"[]", "a list stands where"),
        (b'"bench"', "'bench' stands where"),
        (b"{}", "not a project of Settlewright"),
        (changed(format="something else"), "not a project of Settlewright"),
        (changed(version=VERSION + 1), "newer Settlewright"),
        (changed(version=10**30), "newer Settlewright"),
        (changed(version=0), "which version"),
        (changed(version=True), "which version"),
        (changed(version="1"), "which version"),
        (changed(version=None), "which version"),
        (changed(parameters=None), "no parameters"),
        (changed(parameters=[]), "a list stands where"),
        (changed(titel="x"), "Did you mean title?"),
        (changed(title=7), "7 is not a text"),
        (changed(title="two\nlines"), "cannot be drawn"),
        (changed(title="\ud800"), "cannot be drawn"),
        (changed(title="x" * (LINE_LIMIT + 1)), "there is room for"),
        (changed(notes="x" * (NOTES_LIMIT + 1)), "there is room for"),
        (with_parameter("lenght", {"value": 1, "unit": "mm"}), "Did you mean length?"),
        (with_parameter("zzz", {"value": 1, "unit": "mm"}), "unknown name, 'zzz'"),
        (with_parameter("length", 1200), "1200 stands where named fields"),
        (with_parameter("length", {"value": 1200}), "It should be mm"),
        (with_parameter("length", {"value": 47, "unit": "in"}), "It should be mm"),
        (with_parameter("length", {"value": 47, "unit": "mm", "x": 1}), "unknown name, 'x'"),
        (with_parameter("length", {"value": "1200", "unit": "mm"}), "is not a number"),
        (with_parameter("length", {"value": True, "unit": "mm"}), "true is not a number"),
        (with_parameter("length", {"value": None, "unit": "mm"}), "null is not a number"),
        (with_parameter("length", {"value": 10**400, "unit": "mm"}), "larger than any size"),
        (with_parameter("length", {"value": 1e15, "unit": "mm"}), "more than any bench has"),
        (with_parameter("length", {"value": -5, "unit": "mm"}), "less than any bench has"),
        (with_parameter("partition_count", {"value": 1.5, "unit": "count"}), "whole number"),
        (
            with_parameter("left_end", {"value": "round", "unit": "choice"}),
            "not one of its choices",
        ),
        (with_parameter("left_end", {"value": 3, "unit": "choice"}), "3 is not a text"),
        (with_parameter("flare_end", {"value": 40, "unit": "mm"}), "no bench together"),
        (
            project_bytes(PLAIN).replace(b'"value": 1200', b'"value": 1e999'),
            "larger than any size",
        ),
        (project_bytes(PLAIN).replace(b'"value": 1200', b'"value": NaN'), "NaN is not a size"),
        (
            project_bytes(PLAIN).replace(b'"value": 1200', b'"value": -Infinity'),
            "-Infinity is not a size",
        ),
        (project_bytes(PLAIN).replace(b'"depth"', b'"length"'), "'length' is there twice"),
    ],
)
def test_anything_else_is_refused_in_words(data: bytes, words: str) -> None:
    with pytest.raises(BadProjectFile) as caught:
        read_project(data, "bench.settle")
    text = str(caught.value)
    assert words in text
    assert "bench.settle" in text
    assert caught.value.remedy
    assert len(text) < 600


def test_two_megabytes_of_names_do_not_take_long() -> None:
    """A list of names is looked through once, whatever a hostile file has in it."""
    names = ",".join(f'"{i}":0' for i in range(150_000))
    data = f'{{{names},"149999":0}}'.encode()
    start = time.process_time()
    with pytest.raises(BadProjectFile, match="there twice"):
        read_project(data)
    assert time.process_time() - start < 10.0  # looked through for each name: many minutes


def test_a_file_too_large(tmp_path: Path) -> None:
    path = tmp_path / "large.settle"
    path.write_bytes(b" " * (SIZE_LIMIT + 1))
    with pytest.raises(BadProjectFile, match="larger than any project"):
        load(path)


def test_what_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(BadProjectFile, match="no such file"):
        load(tmp_path / "missing.settle")
    with pytest.raises(BadProjectFile, match="not a file"):
        load(tmp_path)
    with pytest.raises(BadProjectFile, match="cannot be read"):
        load(tmp_path / "nul\0byte")
    with pytest.raises(BadProjectFile, match="cannot be read"):
        load(tmp_path / ("x" * 300))


@pytest.mark.skipif(sys.platform == "win32", reason="needs a named pipe")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.settle")
    with pytest.raises(BadProjectFile, match="not a file"):
        load(tmp_path / "pipe.settle")


def test_a_failed_save_leaves_the_old_project(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "bench.settle"
    save(PLAIN, path)

    def full(*_args: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", full)
        with pytest.raises(CannotWrite, match="disk is full"):
            save(Project(default_spec(), "Another"), path)
    assert load(path) == PLAIN


@given(data=st.binary(max_size=300))
def test_arbitrary_bytes_are_a_bad_project_file(data: bytes) -> None:
    with pytest.raises(BadProjectFile):
        read_project(data)


JSON_VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=8)
    | st.sampled_from(["mm", "deg", "choice", "count", "open", "settlewright bench", 1, 1200.0]),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(
                ["value", "unit", "length", "flare", "left_end", "splay", "parameters", "version"]
            )
            | st.text(max_size=4),
            inner,
            max_size=4,
        )
    ),
    max_leaves=12,
)


@given(
    field=st.sampled_from(["format", "version", "title", "notes", "parameters"]), value=JSON_VALUES
)
@settings(max_examples=300)
def test_arbitrary_values_in_a_field_are_read_or_refused(field: str, value: Any) -> None:
    content = json.loads(project_bytes(PLAIN)) | {field: value}
    assert why_not(json.dumps(content).encode()) != ""


@given(name=st.sampled_from([row.name for row in PARAMETERS]), entry=JSON_VALUES)
@settings(max_examples=300)
def test_arbitrary_values_of_a_parameter_are_read_or_refused(name: str, entry: Any) -> None:
    assert why_not(with_parameter(name, entry)) != ""


@given(
    name=st.sampled_from([row.name for row in PARAMETERS if row.is_number]),
    value=st.floats(allow_nan=False, allow_infinity=False) | st.integers(-10, 5000),
)
@settings(max_examples=300, deadline=None)
def test_arbitrary_numbers_are_read_or_refused(name: str, value: float) -> None:
    unit = next(row.unit for row in PARAMETERS if row.name == name)
    data = with_parameter(name, {"value": value, "unit": unit})
    reason = why_not(data)
    assert reason != ""
    if reason is None:
        assert read_project(data).spec.number(name) == value


@given(at=st.integers(0, 3000), count=st.integers(1, 40), byte=st.binary(min_size=0, max_size=3))
@settings(max_examples=200)
def test_a_damaged_file_is_read_or_refused(at: int, count: int, byte: bytes) -> None:
    whole = project_bytes(PLAIN)
    at %= len(whole)
    assert why_not(whole[:at] + byte + whole[at + count :]) != ""


@pytest.mark.parametrize("value", [1e300, -1e300])
def test_a_number_of_hundreds_of_figures_is_not_repeated(value: float) -> None:
    said = why_not(with_parameter("length", {"value": value, "unit": "mm"}))
    assert said == f"This is {'more' if value > 0 else 'less'} than any bench has."
