"""A pack is whole, of one design, repeatable, and clean to write over an earlier one."""

from __future__ import annotations

import io
import json
import os
from datetime import date
from pathlib import Path

import pikepdf
import pytest

from exporters import pack
from exporters.facts import facts, facts_text
from exporters.pack import PackOptions, pack_files, write_pack
from exporters.project_writing import save
from geometry.bench.bench import Bench
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks import all_checks
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.project import Project
from shared.errors import CannotBuild, CannotWrite
from shared.paper import PAPERS, Paper

ON = date(2026, 3, 14)
PLAIN = PackOptions()


@pytest.fixture(scope="module")
def files(project: Project) -> dict[str, bytes]:
    return pack_files(project, PLAIN, ON)


def contents(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_it_holds_all_that_the_shop_needs(files: dict[str, bytes], bench: Bench) -> None:
    names = [part.name for part in bench.parts]
    assert set(files) == {
        "drawings.pdf",
        "templates.pdf",
        "cut_list.csv",
        "dxf/LAYERS.txt",
        "facts.json",
        *(f"dxf/{name}.dxf" for name in names),
        *(f"meshes/{name}.stl" for name in names),
    }
    assert all(files.values())


def test_every_piece_of_the_facts_has_its_files(files: dict[str, bytes]) -> None:
    for name in json.loads(files["facts.json"])["parts"]:
        assert f"dxf/{name}.dxf" in files
        assert f"meshes/{name}.stl" in files


def test_the_facts_are_those_of_the_bench(
    files: dict[str, bytes], project: Project, bench: Bench
) -> None:
    assert files["facts.json"].decode() == facts_text(facts(project, bench, findings(bench)))


def test_parts_that_lock_each_other_are_told_in_the_papers(
    project: Project, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What takes its time to find is found before anything is printed, too."""
    locked = Finding("locked_together", Level.DO_NOT_CUT, "Made up.", told_by="assembly")
    monkeypatch.setattr(all_checks, "slow_findings", lambda _bench: (locked,))
    told = json.loads(pack_files(project, PLAIN, ON)["facts.json"])["findings"]
    assert "Made up." in [one["message"] for one in told]


def test_the_same_design_gives_the_same_bytes(files: dict[str, bytes], project: Project) -> None:
    again = pack_files(project, PLAIN, ON)
    assert {name for name in files if files[name] != again[name]} == set()


def test_only_the_drawings_carry_the_date(files: dict[str, bytes], project: Project) -> None:
    later = pack_files(project, PLAIN, date(2027, 1, 1))
    changed = {name for name in files if files[name] != later[name]}
    assert changed == {"drawings.pdf", "templates.pdf"}


@pytest.mark.parametrize("paper", list(PAPERS.values()), ids=lambda paper: paper.name)
def test_the_drawings_are_on_the_paper_that_was_asked_for(project: Project, paper: Paper) -> None:
    """A page of w x h mm is 72 / 25.4 times as many points; read by pikepdf."""
    drawings = pack_files(project, PackOptions(paper=paper), ON)["drawings.pdf"]
    with pikepdf.open(io.BytesIO(drawings)) as pdf:
        for page in pdf.pages:
            size = [float(value) * 25.4 / 72.0 for value in page.mediabox[2:]]
            assert sorted(size) == pytest.approx(sorted((paper.width, paper.height)), abs=0.01)


def test_a_later_pack_takes_the_place_of_an_earlier_one(tmp_path: Path, project: Project) -> None:
    folder = tmp_path / "pack"
    more = Project(set_values(default_spec(), {"partition_count": 2.0}))
    write_pack(more, folder, PLAIN, ON)
    (folder / "dxf" / "mine.dxf").write_bytes(b"mine")
    assert (folder / "dxf" / "partition_2.dxf").exists()
    written = write_pack(project, folder, PLAIN, ON)
    assert not (folder / "dxf" / "partition_2.dxf").exists()
    assert not (folder / "meshes" / "partition_2.stl").exists()
    assert (folder / "dxf" / "mine.dxf").read_bytes() == b"mine"
    assert {path.relative_to(folder).as_posix() for path in written} == set(contents(folder)) - {
        "dxf/mine.dxf"
    }


@pytest.mark.parametrize(
    "facts_text_there",
    [
        b"not json",
        b"[]",
        b'{"parts": 3}',
        b"[" * 100_000,
        b'{"parts": {"../../precious": {}, "/etc/x": {}, "a/b": {}, "": {}}}',
    ],
)
def test_strange_facts_in_the_folder_take_nothing_away(
    tmp_path: Path, project: Project, facts_text_there: bytes
) -> None:
    precious = tmp_path / "precious.dxf"
    precious.write_bytes(b"precious")
    folder = tmp_path / "out" / "pack"
    folder.mkdir(parents=True)
    (folder / "facts.json").write_bytes(facts_text_there)
    write_pack(project, folder, PLAIN, ON)
    assert precious.read_bytes() == b"precious"


def test_a_part_that_fails_leaves_the_earlier_pack(
    tmp_path: Path, project: Project, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "pack"
    write_pack(project, folder, PLAIN, ON)
    before = contents(tmp_path)

    def nothing_left(_part: object) -> bytes:
        raise CannotBuild("The cuts leave nothing of the piece.", where="Leg")

    monkeypatch.setattr(pack, "stl_bytes", nothing_left)
    with pytest.raises(CannotBuild):
        write_pack(Project(default_spec(), "Another"), folder, PLAIN, ON)
    with pytest.raises(CannotBuild):
        write_pack(project, tmp_path / "fresh", PLAIN, ON)
    assert contents(tmp_path) == before
    assert not (tmp_path / "fresh").exists()


def test_a_disk_that_fills_up_leaves_the_earlier_pack(
    tmp_path: Path, project: Project, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "pack"
    write_pack(project, folder, PLAIN, ON)
    before = contents(tmp_path)
    room, write = 40_000, os.write

    def until_full(handle: int, data: bytes) -> int:
        nonlocal room
        room -= len(data)
        if room < 0:
            raise OSError(28, "No space left on device")
        return write(handle, data)

    with monkeypatch.context() as patch:
        patch.setattr(os, "write", until_full)
        with pytest.raises(CannotWrite, match="disk is full"):
            write_pack(Project(default_spec(), "Another"), folder, PLAIN, ON)
    assert contents(tmp_path) == before


def test_the_command_writes_the_same_pack(
    tmp_path: Path,
    files: dict[str, bytes],
    project: Project,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    from app.__main__ import main

    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1773446400")  # 2026-03-14 00:00 UTC
    file = tmp_path / "bench.settle"
    save(project, file)
    assert main(["pack", str(file), "--out", str(tmp_path / "pack")]) == 0
    assert f"{len(files)} files" in capsys.readouterr().out
    assert contents(tmp_path / "pack") == files
