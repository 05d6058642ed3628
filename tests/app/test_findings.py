"""Findings in the window: no flicker, a reason why, mends made in sight, set aside in words."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from app.panels.finding_detail import MendDetail, WhyDetail
from app.panels.finding_line import FindingLine
from app.window.workplace import Workplace
from geometry.design.finding import Finding, Level
from geometry.dimensioning.drag import drag
from tests.app.hand import MouseHand

# Thin feet farther out, or the bench would tip as well.
STANDING = {"inset_front_left": 50.0, "inset_front_right": 50.0}


def _spoil(window: Workplace, **values: float) -> list[FindingLine]:
    window.desk.set_values(values)
    window.presenter.look_for_findings()
    return window.foot.lines()


def _line(window: Workplace, check: str) -> FindingLine:
    return next(line for line in window.foot.lines() if line.finding.check == check)


def test_a_line_that_is_as_it_was_stays_the_same_widget(window: Workplace) -> None:
    (before,) = _spoil(window, base_thickness=18.0, **STANDING)
    _spoil(window, base_thickness=18.0, cutter_diameter=25.0, **STANDING)
    checks = [line.finding.check for line in window.foot.lines()]
    assert checks == ["housing_cutter", "mortise_wall"]
    assert _line(window, "mortise_wall") is before
    _spoil(window, cutter_diameter=12.7)
    assert window.foot.lines() == [before]


def test_sizes_are_added_up_in_the_unit_that_is_shown(window: Workplace, qtbot: QtBot) -> None:
    """The plain bench is drawn in whole millimetres; in sixteenths 13 + 164 + 13 are not 189."""
    assert _spoil(window) == []
    window.commands["other_unit"].trigger()
    qtbot.waitUntil(lambda: len(window.foot.lines()) > 0, timeout=20_000)
    checks = [line.finding.check for line in window.foot.lines()]
    assert "sum_of_case_height" in checks
    assert all(check.startswith("sum_of_") for check in checks)
    window.commands["other_unit"].trigger()
    qtbot.waitUntil(lambda: window.foot.lines() == [], timeout=20_000)


def test_why_says_the_paragraph_and_the_limit_can_be_changed_and_undone(window: Workplace) -> None:
    (line,) = _spoil(window, base_thickness=18.0, **STANDING)
    line.why.click()
    detail = line.detail
    assert isinstance(detail, WhyDetail)
    (field,) = detail.limits
    assert field.field.text() == "6 mm"
    field.field.setText("5")
    field.field.given.emit("5")
    assert window.foot.lines() == []
    assert window.desk.project.judging.limits == (("least_wall", 5.0),)
    window.desk.undo()
    window.presenter.look_for_findings()
    assert [one.finding.check for one in window.foot.lines()] == ["mortise_wall"]


def test_a_finding_that_changes_keeps_its_line_open_its_place_and_what_was_typed(
    window: Workplace,
) -> None:
    (line,) = _spoil(window, base_thickness=18.0, **STANDING)
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    assert line.detail.reason is not None
    line.detail.reason.setText("The shop has no oth")
    _spoil(window, base_thickness=17.8)  # walls of 5.83
    assert _line(window, "mortise_wall") is line
    assert line.finding.amount == pytest.approx(5.8333, abs=1e-3)
    assert isinstance(line.detail, WhyDetail)
    assert line.detail.finding is line.finding
    assert line.detail.reason is not None
    assert line.detail.reason.text() == "The shop has no oth"
    _spoil(window, base_thickness=24.0)
    assert window.foot.lines() == []
    assert not window.desk.previewing


def test_the_list_stays_where_it_was_scrolled_to(window: Workplace, qtbot: QtBot) -> None:
    def found(thick: float) -> tuple[Finding, ...]:
        words = f"is only {{{thick} mm}} thick."
        return tuple(
            Finding(f"made_up_{k}", Level.THINK_AGAIN, f"Wall {k} {words}", ("top",), amount=thick)
            for k in range(50)
        )

    window.foot.show_findings(found(4.5), window.presenter.preferences)
    bar = window.foot.scroll_bar
    qtbot.waitUntil(lambda: bar.maximum() > 300)
    bar.setValue(300)
    before = window.foot.lines()
    window.foot.show_findings(found(4.4), window.presenter.preferences)
    qtbot.wait(20)
    assert bar.value() == 300
    assert window.foot.lines() == before
    assert all(line.finding.amount == 4.4 for line in before)


def test_what_unfolds_is_seen_under_its_own_line(window: Workplace, qtbot: QtBot) -> None:
    """The first line, after the list has been scrolled to its end, in a narrow window."""
    window.frame.resize(800, 600)
    lines = _spoil(window, base_thickness=17.0, cutter_diameter=25.0, reveal=0.0, housing_cover=0.0)
    bar = window.foot.scroll_bar
    qtbot.waitUntil(lambda: bar.maximum() > 50)
    bar.setValue(bar.maximum())
    lines[0].why.click()
    qtbot.waitUntil(lambda: lines[0].y() >= bar.value() and lines[0].detail is not None)
    qtbot.wait(20)
    assert bar.value() <= lines[0].y()


def test_what_is_slow_to_know_stays_listed_until_it_is_known_anew(
    window: Workplace, qtbot: QtBot
) -> None:
    """A finding of the slow checks does not come and go with every change of a size."""
    clerk = window.presenter.clerk
    locked = Finding("locked_together", Level.DO_NOT_CUT, "Made up.", ("top", "bottom"))
    gone = Finding("locked_together", Level.DO_NOT_CUT, "Made up.", ("no_such_part",))
    clerk.look()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20_000)
    clerk.slow = (locked, gone)
    (line,) = _spoil(window, length=1210.0)
    assert line.finding is locked
    assert window.foot.state.text() == "goes together?"
    _spoil(window, length=1220.0)
    assert window.foot.lines() == [line]
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20_000)
    assert window.foot.lines() == []


def test_a_wrong_limit_is_refused_beside_the_field(window: Workplace) -> None:
    (line,) = _spoil(window, base_thickness=18.0, **STANDING)
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    (field,) = line.detail.limits
    field.field.given.emit("900")
    assert "more than" in field.field.wrong
    assert window.desk.project.judging.limits == ()


def test_nothing_is_set_aside_without_a_reason(window: Workplace) -> None:
    (line,) = _spoil(window, cutter_diameter=25.0)
    assert window.presenter.alarm_count == 1
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    line.detail.aside.click()
    assert "reason" in line.detail.wrong.text()
    assert window.presenter.alarm_count == 1
    line.detail.reason.setText("Sawn and chiselled by hand.")
    line.detail.aside.click()
    (line,) = window.foot.lines()
    assert line.finding.set_aside == "Sawn and chiselled by hand."
    assert window.presenter.alarm_count == 0
    assert line.mend is None
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    line.detail.take_up.click()
    assert window.presenter.alarm_count == 1


def test_what_was_set_aside_and_has_grown_worse_stands_again_and_says_so(
    window: Workplace,
) -> None:
    """Walls of 5.9 mm are let be; those of 5.57 mm are a twentieth of 6 mm thinner."""
    (line,) = _spoil(window, base_thickness=18.0, **STANDING)
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    line.detail.reason.setText("A trial piece held.")
    line.detail.aside.click()
    _spoil(window, base_thickness=17.6)
    assert _line(window, "mortise_wall").finding.set_aside
    _spoil(window, base_thickness=17.0)
    line = _line(window, "mortise_wall")
    assert not line.finding.set_aside
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    said = " ".join(label.text() for label in line.detail.findChildren(QLabel))
    assert "set aside at 5.9 mm, because: A trial piece held." in said


def test_a_mend_is_shown_and_can_be_left(window: Workplace) -> None:
    (line,) = _spoil(window, cutter_diameter=25.0)
    steps, spec = window.desk.undo_count, window.desk.spec
    assert line.mend is not None
    line.mend.click()
    assert isinstance(line.detail, MendDetail)
    assert window.desk.offering
    assert window.desk.spec.number("cutter_diameter") < 25.0
    assert window.desk.project.spec == spec
    line.detail.leave.click()
    assert not window.desk.previewing
    assert (window.desk.undo_count, window.desk.spec) == (steps, spec)
    line.mend.click()
    assert not window.desk.settle(), "what is only offered never becomes a step by itself"
    assert window.desk.spec == spec


def test_a_mend_is_shown_made_and_undone_with_mouse_and_keys(
    window: Workplace, qtbot: QtBot
) -> None:
    """Real presses: what the sheet shows, what a step is, and what Ctrl+Z brings back."""

    def press(button: QWidget | None) -> None:
        assert button is not None
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)

    (line,) = _spoil(window, cutter_diameter=25.0)
    steps, spoiled = window.desk.undo_count, window.desk.spec
    press(line.mend)
    assert isinstance(line.detail, MendDetail)
    assert window.page.canvas.view.model.bench.spec.number("cutter_diameter") < 25.0
    assert (window.desk.undo_count, window.desk.project.spec) == (steps, spoiled)
    press(line.detail.make)
    assert window.desk.undo_count == steps + 1
    assert window.desk.project.spec.number("cutter_diameter") < 25.0
    qtbot.waitUntil(lambda: window.foot.lines() == [], timeout=20_000)
    qtbot.keyClick(window.page.canvas, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.project.spec == spoiled
    qtbot.waitUntil(lambda: len(window.foot.lines()) == 1, timeout=20_000)


def test_the_hand_takes_over_from_an_offer(window: Workplace) -> None:
    (line,) = _spoil(window, cutter_diameter=25.0)
    assert line.mend is not None
    line.mend.click()
    window.desk.nudge("length", 1, 10.0)
    assert not window.desk.offering
    assert window.desk.spec.number("cutter_diameter") == 25.0
    assert line.detail is None
    assert window.desk.settle()
    assert window.desk.spec.number("length") == 1210.0


def test_findings_wait_while_the_hand_pulls(window: Workplace, qtbot: QtBot) -> None:
    """None come during a drag; they come by themselves once it has ended."""
    dimension = next(one for one in window.desk.model.dimensions if one.parameter == "length")
    assert drag(window.desk.spec, dimension.pull, (2400.0, 0.0), None).value > 3000.0
    window.desk.pull(dimension.pull, (2400.0, 0.0), None)
    qtbot.wait(250)
    assert window.foot.lines() == []
    window.desk.settle()
    qtbot.waitUntil(lambda: bool(window.foot.lines()), timeout=20_000)


@pytest.mark.parametrize("count", [0, 1, 50])
def test_the_list_reads_well_with_any_number(window: Workplace, count: int) -> None:
    levels = list(Level)
    found = tuple(
        Finding(f"made_up_{k}", levels[k % 3], f"Wall {k} is only {{4.5 mm}} thick.", ("top",))
        for k in range(count)
    )
    window.foot.show_findings(found, window.presenter.preferences)
    lines = window.foot.lines()
    assert len(lines) == count
    assert window.foot.height() < 240
    ranks = [levels.index(line.finding.level) for line in lines]
    assert ranks == sorted(ranks)
    if count == 50:
        assert window.foot.tally.text() == "17 do not cut\n17 think again\n16 good to know"


def test_the_table_of_limits_changes_a_limit_as_one_step(window: Workplace, qtbot: QtBot) -> None:
    _spoil(window, base_thickness=18.0, **STANDING)
    window.commands["limits"].trigger()
    page = window.presenter.clerk.limits
    assert page is not None
    page.fields["least_wall"].field.given.emit("5 mm")
    assert window.desk.project.judging.limits == (("least_wall", 5.0),)
    assert window.foot.lines() == []
    qtbot.waitUntil(lambda: page.fields["least_wall"].field.text() == "5 mm", timeout=20_000)
    page.fields["least_wall"].back.click()
    assert window.desk.project.judging.limits == ()
    page.close()


def test_whether_it_goes_together_comes_by_itself(window: Workplace, qtbot: QtBot) -> None:
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20_000)


def test_findings_never_cover_a_fitted_drawing(window: Workplace, qtbot: QtBot) -> None:
    """More of them at the foot leave the sheet less height: the whole drawing stays in sight, and
    is as large again as it was once they are cured."""
    view = window.page.canvas.view
    window.commands["fit"].trigger()
    qtbot.wait(20)
    window.commands["fit"].trigger()
    before = view.scale
    lines = _spoil(window, base_thickness=17.0, cutter_diameter=25.0, reveal=0.0, housing_cover=0.0)
    qtbot.waitUntil(lambda: view.scale < before)
    assert len(lines) > 2
    assert not view.overflows()
    less = view.scale
    lines[0].why.click()
    qtbot.wait(20)
    assert view.scale > less / 2  # a reason is read for a moment: nothing shrinks to a stamp for it
    lines[0].why.click()
    qtbot.wait(20)
    assert view.scale == pytest.approx(less)
    window.desk.undo()
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: view.scale >= before)


def test_a_hand_on_the_drawing_keeps_it_where_it_is(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    canvas = window.page.canvas
    window.commands["fit"].trigger()
    hand.press(hand.text_of("length"))
    hand.pull((4.0, 0.0))
    before = canvas.view.scale
    window.foot.setFixedHeight(window.foot.height() + 150)
    qtbot.wait(20)
    assert canvas.view.scale == before
    hand.release()
    assert not canvas.view.overflows()


def test_findings_that_come_leave_a_value_that_is_being_typed(
    window: Workplace, hand: MouseHand, qtbot: QtBot
) -> None:
    """They come when they are known, even while the next size is being typed."""
    hand.click(hand.text_of("length"))
    entry = window.page.canvas.deeds.entry
    entry.field.setText("13")
    before = window.foot.height()
    _spoil(window, base_thickness=17.0, cutter_diameter=25.0, reveal=0.0, housing_cover=0.0)
    qtbot.waitUntil(lambda: window.foot.height() > before)
    assert entry.isVisible()
    assert entry.field.text() == "13"


def test_the_list_shows_whole_lines(window: Workplace, qtbot: QtBot) -> None:
    """Lines that wrap are of unlike heights; what has no whole room is scrolled to."""
    window.frame.resize(800, 600)
    lines = _spoil(window, base_thickness=17.0, cutter_diameter=25.0, reveal=0.0, housing_cover=0.0)
    qtbot.waitUntil(lambda: window.foot.scroll_bar.maximum() > 0)
    port = lines[0].parentWidget().parentWidget()
    qtbot.waitUntil(lambda: any(one.y() + one.height() == port.height() for one in lines))


def test_the_keyboard_goes_from_a_line_that_is_cured_to_the_next(
    window: Workplace, qtbot: QtBot
) -> None:
    (line,) = _spoil(window, base_thickness=18.0, **STANDING)
    line.why.setFocus()
    window.desk.undo()
    window.presenter.look_for_findings()
    qtbot.waitUntil(window.page.canvas.hasFocus)
    first, second = _spoil(window, base_thickness=18.0, cutter_diameter=25.0, **STANDING)
    first.why.setFocus()
    _spoil(window, cutter_diameter=12.7)
    assert second.why.hasFocus()


def test_no_words_of_another_bench_stand_while_this_one_is_looked_into(
    window: Workplace, qtbot: QtBot
) -> None:
    """What was known of the bench as it was is not said of what it has become, and comes back."""
    state = window.foot.state
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: state.text() == "goes together", timeout=20_000)
    window.desk.set_values({"length": 1210.0})
    assert state.text() == "goes together?"  # at once, not when the findings are looked for
    window.presenter.look_for_findings()
    assert state.text() == "goes together?"
    window.desk.undo()
    assert state.text() == "goes together"  # this very bench is known
    qtbot.wait(700)  # and what was begun of the other one is not told of it
    assert state.text() == "goes together"
    window.desk.redo()
    assert state.text() == "goes together?"
    qtbot.waitUntil(lambda: state.text() == "goes together", timeout=20_000)


def test_a_limit_of_the_slow_checks_counts_at_once(window: Workplace, qtbot: QtBot) -> None:
    """Six joints, of which the last three close at once: 1.5 minutes of gluing."""
    window.presenter.look_for_findings()
    qtbot.waitUntil(lambda: window.foot.state.text() == "goes together", timeout=20_000)
    assert window.foot.lines() == []
    clerk = window.presenter.clerk
    clerk.change_limit("open_time", 1.0)
    line = _line(window, "too_many_at_once")
    assert (line.finding.amount, line.finding.limit) == (1.5, 1.0)
    line.why.click()
    assert isinstance(line.detail, WhyDetail)
    assert len(line.detail.limits) == 3
    clerk.change_limit("open_time", None)
    assert window.foot.lines() == []
