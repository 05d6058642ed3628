"""Findings are listed at once, their mends a little later, and nothing moves or goes meanwhile."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from app.panels.finding_detail import MendDetail
from app.window import mend_job
from app.window.workplace import Workplace


def _seen(window: Workplace) -> list[tuple[list[str], list[bool], list[int]]]:
    """What the list says each time it is told anew: checks, mends that can be asked for, tops."""
    seen: list[tuple[list[str], list[bool], list[int]]] = []

    def look() -> None:
        lines = window.foot.lines()
        seen.append(
            (
                [line.finding.check for line in lines],
                [line.mend is not None for line in lines],
                [line.height_at(700) for line in lines],
            )
        )

    window.presenter.clerk.found.connect(look)
    return seen


def test_the_list_is_there_before_its_mends_and_they_move_nothing(
    window: Workplace, qtbot: QtBot
) -> None:
    seen = _seen(window)
    window.desk.set_values({"cutter_diameter": 25.0})
    qtbot.waitUntil(lambda: len(seen) == 2, timeout=20_000)
    assert seen[0] == (["housing_cutter"], [False], seen[1][2])
    assert seen[1][:2] == (["housing_cutter"], [True])


def test_a_mend_stays_in_the_list_while_it_is_tried_anew_and_can_be_asked_for_at_once(
    window: Workplace, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(mend_job, "SLICE_MS", 0.0)  # so the trying does not get on
    window.desk.set_values({"cutter_diameter": 25.0})
    window.presenter.look_for_findings()
    seen = _seen(window)
    window.desk.set_values({"cutter_diameter": 24.0})
    qtbot.waitUntil(lambda: len(seen) == 1, timeout=20_000)
    assert window.presenter.clerk.mends_are_tried
    (line,) = window.foot.lines()
    assert line.mend is not None
    line.mend.click()
    assert not window.presenter.clerk.mends_are_tried
    assert isinstance(line.detail, MendDetail)
    line.detail.make.click()
    window.presenter.look_for_findings()
    assert window.foot.lines() == []


def test_a_hand_that_pulls_on_stops_the_trying_and_nothing_is_lost(
    window: Workplace, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(mend_job, "SLICE_MS", 0.0)
    seen = _seen(window)
    window.desk.set_values({"cutter_diameter": 25.0})
    qtbot.waitUntil(lambda: len(seen) == 1, timeout=20_000)
    window.desk.offer({"length": 1500.0})
    assert window.presenter.clerk.mends_are_tried, "an offer is no hand"
    window.desk.take_back()
    assert not window.presenter.clerk.mends_are_tried
    monkeypatch.undo()
    qtbot.waitUntil(lambda: seen[-1][1] == [True], timeout=20_000)
