"""The command line from outside: exit codes, outputs, and files that stay whole."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from datetime import date
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from app.__main__ import main
from app.command_line import run
from exporters.project_writing import save
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks import all_checks
from geometry.checks.all_checks import judged
from geometry.checks.setting_aside import aside
from geometry.design.finding import Finding, Level, Mend
from geometry.design.judging import AS_FOUND, Judging, SetAside
from geometry.design.project import Project
from shared.units import SHOWN_MM, format_length

ROOT = Path(__file__).parents[2]
MM_PER_POINT = 25.4 / 72.0
GRAVE = Finding(
    "made_up",
    Level.DO_NOT_CUT,
    "The wall is {1.5 mm} thick.",
    ("top", "bottom"),
    mend=Mend("Set the reveal to {20 mm}.", (("reveal", 20.0),)),
)
SLIGHT = Finding("made_up_too", Level.GOOD_TO_KNOW, "It is a bench.")


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "bench.settle"
    save(Project(default_spec(), title="Reading bench"), path)
    return path


def outside(*arguments: str | Path, **more: Any) -> subprocess.CompletedProcess[str]:
    """The program in a process of its own, with no screen."""
    environment = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    return subprocess.run(
        [sys.executable, "-m", "app", *map(str, arguments)],
        cwd=ROOT,
        env=environment | more.pop("environment", {}),
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        **more,
    )


def facts_of(capsys: pytest.CaptureFixture[str], *arguments: str | Path) -> Any:
    assert main(["facts", *map(str, arguments)]) == 0
    captured = capsys.readouterr()
    assert captured.err == ""
    return json.loads(captured.out)


@pytest.mark.parametrize(
    ("setting", "name", "value"),
    [
        ("length=1300", "length", 1300.0),
        ("length=1300 mm", "length", 1300.0),
        ("length=130 cm", "length", 1300.0),
        ("length=48 in", "length", 1219.2),
        ("length=4'", "length", 1219.2),
        ("reveal=1/2", "reveal", 12.7),
        ("splay=12.5", "splay", 12.5),
        ("inset_front_left=-20", "inset_front_left", -20.0),
        ("inset_front_left=− 1/2 in", "inset_front_left", -12.7),
        ("partition_count=2", "partition_count", 2.0),
        ("right_end=mitred", "right_end", "mitred"),
        ("timber=teak", "timber", "teak"),
    ],
)
def test_set_reads_a_value_like_the_screen(
    file: Path, capsys: pytest.CaptureFixture[str], setting: str, name: str, value: float | str
) -> None:
    """1 in = 25.4 mm exactly."""
    found = facts_of(capsys, file, "--set", setting)["parameters"][name]["value"]
    assert found == (value if isinstance(value, str) else pytest.approx(value, abs=1e-9))


def test_values_set_together_do_not_depend_on_their_order(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A length that the old depth would not allow, and the other way round."""
    settings = ["--set", "length=2400", "--set", "flare_end=2000", "--set", "flare_straight=900"]
    turned = [*settings[4:], *settings[2:4], *settings[:2]]
    assert facts_of(capsys, file, *settings) == facts_of(capsys, file, *turned)


def test_facts_are_one_json_document_for_every_part(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    content = facts_of(capsys, file)
    assert {"parameters", "derived", "parts", "joints", "findings"} <= set(content)
    assert content["derived"]["seat_height"]["value"] == pytest.approx(450.0)


def test_nothing_is_written_by_looking(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.read_bytes()
    facts_of(capsys, file, "--set", "length=1500")
    assert file.read_bytes() == before
    assert os.listdir(file.parent) == [file.name]  # noqa: PTH208


def test_check_says_what_is_found_and_stops_the_work(
    file: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(all_checks, "findings", lambda _bench: (GRAVE, SLIGHT))
    assert main(["check", str(file)]) == 1
    assert capsys.readouterr().out == (
        "do not cut: The wall is 1.5 mm thick. [top, bottom]\n"
        "    Set the reveal to 20 mm.\n"
        "good to know: It is a bench.\n"
    )


def test_check_adds_up_what_is_written_in_the_unit_asked_for(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(file)]) == 0
    assert "As they are written" not in capsys.readouterr().out
    assert main(["check", str(file), "--units", "in"]) == 0
    told = capsys.readouterr().out
    assert "think again: As they are written, 2 × ¹³⁄₁₆ in + 10 ¼ in come to 11 ⅞ in" in told


@pytest.mark.parametrize("found", [(), (SLIGHT,)])
def test_check_passes_a_bench_that_can_be_cut(
    file: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    found: tuple[Finding, ...],
) -> None:
    monkeypatch.setattr(all_checks, "findings", lambda _bench: found)
    assert main(["check", str(file)]) == 0
    assert capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["facts", "FILE", "--set", "lenght=5"], "Did you mean length?"),
        (["facts", "FILE", "--set", "length"], "Write NAME=VALUE"),
        (["facts", "FILE", "--set", "length=long"], "Write it like"),
        (["facts", "FILE", "--set", "length=nan"], "Write it like"),
        (["facts", "FILE", "--set", "length=-5"], "Write it like"),
        (["facts", "FILE", "--set", "length=1e9"], "Write it like"),
        (["facts", "FILE", "--set", "length=99999"], "mm to 3600 mm"),
        (["facts", "FILE", "--set", "right_end=round"], "mitred or open"),
        (["facts", "FILE", "--set", "flare_end=100"], "The least it can be is"),
        (["check", "missing.settle"], "no such file"),
        (["facts", "."], "not a file"),
        (["pack", "FILE"], "--out"),
        (["pack", "FILE", "--out", "x", "--units", "feet"], "invalid choice"),
        (["pack", "FILE", "--out", "x", "--paper", "B5"], "invalid choice"),
        (["facts"], "required: FILE"),
        (["facts", "FILE", "--bogus"], "unrecognized arguments"),
        (["--bogus"], "unrecognized arguments"),
        (["FILE", "another"], "unrecognized arguments"),
    ],
)
def test_trouble_is_exit_code_2_with_words_on_the_error_output(
    file: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], words: str
) -> None:
    code = main([str(file) if word == "FILE" else word for word in arguments])
    captured = capsys.readouterr()
    assert code == 2
    assert words in captured.err
    assert "Traceback" not in captured.err
    assert captured.out == ""


def test_a_damaged_file_is_named(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file.write_bytes(file.read_bytes()[:900])
    assert main(["check", str(file)]) == 2
    assert str(file) in capsys.readouterr().err


def test_our_own_fault_is_told_apart(
    file: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """An exit code of 1 would read as 'do not cut'."""

    def fault(_bench: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(all_checks, "findings", fault)
    assert main(["check", str(file)]) == 3
    error = capsys.readouterr().err
    assert "ZeroDivisionError" in error
    assert "fault of the program" in error


@pytest.mark.parametrize("named", [True, False])
def test_anything_else_opens_the_window(
    file: Path, monkeypatch: pytest.MonkeyPatch, named: bool
) -> None:
    import app.main

    opened: list[Path | None] = []
    monkeypatch.setattr(app.main, "run", lambda path: opened.append(path) or 7)
    assert main([str(file)] if named else []) == 7
    assert opened == [file if named else None]


def test_a_machine_without_the_window_library_is_told_so(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delitem(sys.modules, "app.main", raising=False)
    monkeypatch.setitem(sys.modules, "PySide6", None)
    monkeypatch.setitem(sys.modules, "PySide6.QtCore", None)
    monkeypatch.setitem(sys.modules, "PySide6.QtWidgets", None)
    assert main([]) == 2
    error = capsys.readouterr().err
    assert "pack, check or facts" in error
    assert "Traceback" not in error


def test_help_is_no_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["--help"]) == 0
    assert "pack" in capsys.readouterr().out
    assert run(["pack", "--help"]) == 0
    assert "NAME=VALUE" in capsys.readouterr().out


def test_it_runs_as_a_module_with_no_screen_and_no_window_library(file: Path) -> None:
    """Python itself lists what was imported."""
    done = outside("facts", file, environment={"PYTHONPROFILEIMPORTTIME": "1"})
    assert done.returncode == 0
    assert json.loads(done.stdout)["project"]["title"] == "Reading bench"
    assert "geometry.bench" in done.stderr
    assert "PySide6" not in done.stderr
    assert "ezdxf" not in done.stderr


def test_a_reader_that_goes_away_is_no_trouble(file: Path) -> None:
    script = f'"{sys.executable}" -m app facts "{file}" | true; exit ${{PIPESTATUS[0]}}'
    done = subprocess.run(
        ["bash", "-c", script], cwd=ROOT, capture_output=True, text=True, check=False, timeout=60
    )
    assert done.returncode == 0
    assert done.stderr == ""


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_a_full_output_is_said(file: Path) -> None:
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(
            [sys.executable, "-m", "app", "facts", str(file)],
            cwd=ROOT,
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
            timeout=60,
        )
    assert done.returncode == 2
    assert "cannot be written" in done.stderr
    assert "Traceback" not in done.stderr


def test_an_output_that_cannot_show_a_sign_still_works(file: Path) -> None:
    done = outside("check", file, environment={"PYTHONIOENCODING": "ascii"})
    assert done.returncode in (0, 1)
    assert done.stdout


def test_the_date_can_be_fixed(monkeypatch: pytest.MonkeyPatch) -> None:
    """1 700 000 000 s after 1970 is 14 November 2023 in UTC."""
    from app.command_line import _today

    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    assert _today() == date(2023, 11, 14)


@pytest.mark.parametrize("seconds", ["soon", "1e5", "9" * 30, "-" + "9" * 30])
def test_a_wrong_date_is_said(
    file: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    seconds: str,
) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", seconds)
    assert main(["pack", str(file), "--out", str(tmp_path / "out")]) == 2
    assert "SOURCE_DATE_EPOCH" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere there is a screen")
def test_without_a_screen_the_window_says_so(file: Path) -> None:
    environment = {k: v for k, v in os.environ.items() if k != "QT_QPA_PLATFORM"}
    for name in ("DISPLAY", "WAYLAND_DISPLAY"):
        environment.pop(name, None)
    ended = subprocess.run(
        [sys.executable, "-m", "app", str(file)],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert ended.returncode == 2
    assert "no screen" in ended.stderr
    assert "pack" in ended.stderr


def test_check_as_data_has_the_same_findings(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A 25 mm cutter does not go into housings of 20.2 mm; set aside, it stops nothing."""
    spec = set_values(default_spec(), {"cutter_diameter": 25.0})
    path = tmp_path / "bench.settle"
    save(Project(spec), path)
    assert main(["check", str(path), "--json"]) == 1
    (found,) = json.loads(capsys.readouterr().out)["findings"]
    assert (found["check"], found["amount"], found["unit"]) == ("housing_cutter", 25.0, "mm")
    aside = SetAside(found["check"], tuple(found["parts"]), "Cut with a saw and a chisel.")
    save(Project(spec, judging=Judging().setting_aside(aside)), path)
    assert main(["check", str(path), "--json"]) == 0
    (again,) = json.loads(capsys.readouterr().out)["findings"]
    assert again == found | {"set_aside": "Cut with a saw and a chisel."}
    assert main(["check", str(path)]) == 0
    assert "because: Cut with a saw and a chisel." in capsys.readouterr().out


def test_check_prints_the_same_plain_and_as_data(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each finding in the same order: level, sentence, parts, amount beside limit, mend, reason."""
    spec = set_values(
        default_spec(), {"cutter_diameter": 25.0, "base_thickness": 18.0, "length": 3000.0}
    )
    found = judged(build(spec), AS_FOUND)
    judging = Judging()
    for one in found:
        if one.check in ("flat_lap", "mortise_wall"):
            judging = judging.setting_aside(aside(one, f"Tried it: {one.check}."))
    path = tmp_path / "bench.settle"
    save(Project(set_values(spec, {"base_thickness": 17.0}), judging=judging), path)
    assert main(["check", str(path), "--json"]) == 1
    data = json.loads(capsys.readouterr().out)["findings"]
    assert main(["check", str(path)]) == 1
    plain = capsys.readouterr().out
    heads = [line for line in plain.splitlines() if not line.startswith(" ")]
    assert len(heads) == len(data) >= 4
    for one, block in zip(data, re.split(r"\n(?! )", plain), strict=False):
        level = f"set aside ({one['level']})" if one["set_aside"] else one["level"]
        assert block.startswith(f"{level}: {one['message']} [{', '.join(one['parts'])}]")
        if one["unit"] == "mm":
            for number in (one["amount"], one["limit"]):
                assert format_length(number, SHOWN_MM, with_unit=True) in block
        assert (one["set_aside"] or "") in block
        assert (one["worse"] or "") in block
        if one["mend"] and not one["set_aside"]:
            assert one["mend"]["sentence"] in block
    assert any(one["worse"] for one in data), "walls of 5.57 mm, set aside at 5.9 mm"
    assert any(one["set_aside"] for one in data)


def test_a_folder_without_a_name_is_not_the_one_one_stands_in(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["pack", str(file), "--out", ""]) == 2
    assert "no name" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == [file.name]


def test_a_printer_that_is_a_little_off_is_put_right(file: Path, tmp_path: Path) -> None:
    """100 / 99.2 = 1.0081 (by hand): 100.81 mm are drawn, of which that printer makes 100."""
    out = tmp_path / "shop"
    assert run(["pack", str(file), "--out", str(out), "--square", "99.2", "100 mm"]) == 0
    with pdfplumber.open(out / "templates.pdf") as pdf:
        assert "1.0081 along the long edge" in " ".join(pdf.pages[0].extract_text().split())
        assert len(pdf.pages) > 1
        for page in pdf.pages[1:]:
            long, short = ("width", "height") if page.width > page.height else ("height", "width")
            assert any(
                shape[long] * MM_PER_POINT == pytest.approx(100.0 / 0.992, abs=1e-3)
                and shape[short] * MM_PER_POINT == pytest.approx(100.0, abs=1e-3)
                for shape in (*page.curves, *page.rects)
            )


def test_a_page_that_was_scaled_to_fit_is_refused(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "shop"
    assert run(["pack", str(file), "--out", str(out), "--square", "100", "94"]) == 2
    assert "scaled to fit" in capsys.readouterr().err
    assert not out.exists()
