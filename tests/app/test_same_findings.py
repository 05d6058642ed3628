"""The list in the window, `check` and `check --json` tell the same findings in the same order."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from app.__main__ import main
from app.window.workplace import Workplace
from exporters.project_writing import save
from geometry.bench.limits import set_values
from geometry.checks.all_checks import held_to, told
from geometry.checks.setting_aside import aside
from geometry.design.judging import Judging
from tests.samples import sample


def test_the_list_and_the_command_line_tell_the_same(
    window: Workplace, qtbot: QtBot, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A spoiled sample with a limit of its own, and one finding set aside."""
    project = sample("sail_loft")
    spec = set_values(project.spec, {"base_thickness": 16.0, "housing_depth": 11.0})
    judging = Judging().with_limit("least_wall", 7.0)
    project = replace(project, spec=spec, judging=judging)
    file = tmp_path / "spoiled.settle"
    window.desk.lay_down(project, None, saved=True)
    bench = window.desk.model.bench
    worst = next(
        one
        for one in told(held_to(bench, judging, project.brief, window.presenter.preferences.shown))
        if one.check == "deep_housing"
    )
    project = replace(project, judging=judging.setting_aside(aside(worst, "A trial held.")))
    save(project, file)
    assert window.files.open(file)
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20000)
    window.presenter.look_for_findings()
    listed = [one.finding for one in window.foot.lines()]
    assert len(listed) > 4

    capsys.readouterr()
    code = main(["check", str(file), "--json"])
    data = json.loads(capsys.readouterr().out)["findings"]
    assert [(one["check"], one["parts"]) for one in data] == [
        (one.check, list(one.parts)) for one in listed
    ]
    for said, one in zip(data, listed, strict=True):
        assert said["level"] == one.level.value
        assert said["amount"] == pytest.approx(one.amount)
        assert said["limit"] == pytest.approx(one.limit)
        assert (said["set_aside"] or "") == one.set_aside
        assert said["mend"] == (
            None
            if one.mend is None
            else {"sentence": said["mend"]["sentence"], "values": dict(one.mend.values)}
        )
    assert code == main(["check", str(file), "--units", "mm"])
    plain = capsys.readouterr().out
    heads = [line for line in plain.splitlines() if not line.startswith(" ")]
    for head, line in zip(heads, window.foot.lines(), strict=True):
        assert line._sentence.text() in head
        assert line.finding.level.value in head
    assert "because: A trial held." in plain
