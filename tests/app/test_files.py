"""New, open, save, recent files, and work that must not get lost."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDropEvent
from pytestqt.qtbot import QtBot

from app.panels.job_strip import PAPERS, STAGES
from app.window.menus import fill_recent
from app.window.workplace import Workplace
from exporters.project_file import load
from shared.units import SHOWN_MM
from tests.app.opening import open_window


def test_save_and_open_give_the_same_bench(window: Workplace, tmp_path: Path) -> None:
    window.desk.set_values({"length": 1313.0})
    assert window.frame.isWindowModified()
    window.ask.next = tmp_path / "hall bench"
    assert window.files.save()
    saved = tmp_path / "hall bench.settle"
    assert load(saved).spec == window.desk.spec
    assert not window.frame.isWindowModified()
    assert "hall bench" in window.frame.windowTitle()
    window.files.new(SHOWN_MM)
    assert window.desk.spec.number("length") == 1200.0
    window.files.open(saved)
    assert window.desk.spec.number("length") == 1313.0
    assert window.desk.undo_count == 0


def test_a_suffix_put_on_never_takes_a_file_unasked(window: Workplace, tmp_path: Path) -> None:
    (tmp_path / "bench v1.2.settle").write_text("somebody's")
    window.desk.set_values({"length": 1250.0})
    window.ask.next = tmp_path / "bench v1.2"
    assert not window.files.save_as()
    assert (tmp_path / "bench v1.2.settle").read_text() == "somebody's"
    window.notices.buttons()["Save over it"].click()
    assert load(tmp_path / "bench v1.2.settle").spec == window.desk.spec


def test_a_title_makes_a_file_name_that_every_system_takes(window: Workplace) -> None:
    from dataclasses import replace

    asked: list[Path] = []
    window.ask.target = asked.append
    window.desk.describe(replace(window.desk.project, title="Hall/bench: no. 2?"), "Title")
    assert not window.files.save()
    assert asked == [Path("Hall-bench- no- 2.settle")]


def test_undo_back_to_the_saved_state_is_not_modified(window: Workplace, tmp_path: Path) -> None:
    window.ask.next = tmp_path / "b.settle"
    window.desk.set_values({"length": 1250.0})
    window.files.save()
    window.desk.set_values({"length": 1260.0})
    assert window.frame.isWindowModified()
    window.commands["undo"].trigger()
    assert not window.frame.isWindowModified()
    window.commands["undo"].trigger()
    assert window.frame.isWindowModified()


def test_a_failed_save_keeps_modified_and_the_old_file(window: Workplace, tmp_path: Path) -> None:
    target = tmp_path / "b.settle"
    window.ask.next = target
    window.files.save()
    before = target.read_bytes()
    window.desk.set_values({"length": 1400.0})
    target.chmod(0o444)
    assert not window.files.save()
    assert window.frame.isWindowModified()
    assert target.read_bytes() == before
    assert "not saved" in window.notices.text
    target.chmod(0o644)
    assert window.files.save()
    assert not window.frame.isWindowModified()


def test_a_folder_that_is_gone_is_said_so(window: Workplace, tmp_path: Path) -> None:
    window.desk.set_values({"length": 1400.0})
    window.ask.next = tmp_path / "no such folder" / "b.settle"
    assert not window.files.save_as()
    assert window.frame.isWindowModified()
    assert "folder" in window.notices.text


def test_a_file_changed_by_others_is_not_overwritten_unasked(
    window: Workplace, tmp_path: Path
) -> None:
    target = tmp_path / "b.settle"
    window.ask.next = target
    window.files.save()
    theirs = target.read_bytes().replace(b"1200", b"1234", 1)
    target.write_bytes(theirs)
    window.desk.set_values({"depth": 400.0})
    assert not window.files.save()
    assert target.read_bytes() == theirs
    window.notices.buttons()["Save over it"].click()
    assert load(target).spec == window.desk.spec
    assert not window.frame.isWindowModified()


@pytest.mark.parametrize(
    "content", [b"", b"{", b"\xff\xfe\x00", b'{"format": "other"}', b"[1]" * 9]
)
def test_a_file_that_is_no_project_leaves_the_work_alone(
    window: Workplace, tmp_path: Path, content: bytes
) -> None:
    window.desk.set_values({"length": 1444.0})
    bad = tmp_path / "bad.settle"
    bad.write_bytes(content)
    assert not window.files.open(bad)
    assert window.desk.spec.number("length") == 1444.0
    assert window.desk.undo_count == 1
    assert "bad.settle cannot be opened" in window.notices.text
    assert bad.read_bytes() == content


def test_opening_over_unsaved_work_keeps_it(window: Workplace, tmp_path: Path) -> None:
    window.ask.next = tmp_path / "other.settle"
    window.files.save()
    window.desk.set_values({"length": 1555.0})
    window.files.new(SHOWN_MM)
    assert window.desk.spec.number("length") == 1200.0
    window.notices.buttons()["Go back to it"].click()
    assert window.desk.spec.number("length") == 1555.0
    assert window.frame.isWindowModified()
    assert window.desk.path == tmp_path / "other.settle"


def test_closing_keeps_unsaved_work_and_the_next_start_offers_it(
    window: Workplace, settings: QSettings, tmp_path: Path, qtbot: QtBot
) -> None:
    window.desk.set_values({"length": 1666.0})
    window.frame.close()
    again = open_window(settings, tmp_path)
    qtbot.addWidget(again.frame)
    again.frame.show()
    again.start_with(None)
    assert "was not saved" in again.notices.text
    again.notices.buttons()["Take it up again"].click()
    assert again.desk.spec.number("length") == 1666.0
    assert again.frame.isWindowModified()


def test_thrown_away_work_can_be_brought_back(
    window: Workplace, settings: QSettings, tmp_path: Path, qtbot: QtBot
) -> None:
    window.desk.set_values({"length": 1777.0})
    window.frame.close()
    again = open_window(settings, tmp_path)
    qtbot.addWidget(again.frame)
    again.start_with(None)
    again.notices.buttons()["Throw away"].click()
    assert "thrown away" in again.notices.text
    again.notices.buttons()["Bring it back"].click()
    assert again.desk.spec.number("length") == 1777.0


def test_closing_when_nothing_can_be_kept_stays_open_once(
    window: Workplace, tmp_path: Path
) -> None:
    (tmp_path / "kept").write_text("a file where the folder should be")
    window.desk.set_values({"length": 1300.0})
    assert not window.frame.close()
    assert window.frame.isVisible()
    assert "cannot be kept" in window.notices.text
    assert window.frame.close()


def test_a_dropped_file_is_opened(window: Workplace, tmp_path: Path) -> None:
    window.ask.next = tmp_path / "b.settle"
    window.desk.set_values({"length": 1818.0})
    window.files.save()
    window.files.new(SHOWN_MM)
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "b.settle"))])
    event = QDropEvent(
        QPointF(10, 10),
        Qt.DropAction.CopyAction,
        mime,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    window.frame.dropEvent(event)  # a real drag between programs cannot be driven by a test
    assert window.desk.spec.number("length") == 1818.0


def test_recent_files_are_listed_and_missing_ones_can_be_taken_off(
    window: Workplace, tmp_path: Path
) -> None:
    for name in ("first", "second"):
        window.ask.next = tmp_path / f"{name}.settle"
        window.files.save_as()
    (tmp_path / "first.settle").unlink()
    menu = window.commands.submenus["recent"]
    fill_recent(menu, window.files.recent, window.files.open)
    texts = [action.text() for action in menu.actions()]
    assert texts[0].startswith("second")
    assert "not there" in texts[1]
    menu.actions()[1].menu().actions()[0].trigger()
    assert [file.stem for file in window.files.recent.files()] == ["second"]


def test_a_sample_opens_as_work_without_a_file(window: Workplace) -> None:
    samples = window.commands.submenus["samples"].actions()
    assert len(samples) >= 3
    samples[0].trigger()
    assert window.desk.path is None
    assert not window.frame.isWindowModified()
    assert window.desk.project.title != "Untitled bench"
    assert window.desk.model.bench.parts


def test_a_thousand_steps_can_be_undone(window: Workplace) -> None:
    """Words do not build the bench anew, so most of the steps are theirs."""
    title = window.desk.project.title
    for step in range(20):
        window.desk.set_values({"length": 1201.0 + step})
        for word in range(49):
            project = replace(window.desk.project, title=f"Bench {step}, {word}")
            window.desk.describe(project, "Title")
    assert window.desk.undo_count == 1000
    for _ in range(500):
        window.desk.undo()
    assert window.desk.spec.number("length") == 1210.0
    assert window.desk.project.title == "Bench 9, 48"
    for _ in range(500):
        window.desk.undo()
    assert window.desk.spec.number("length") == 1200.0
    assert window.desk.project.title == title
    assert not window.desk.undo_count


def test_the_title_block_is_undone_like_all_else(window: Workplace, qtbot: QtBot) -> None:
    window.go_to(STAGES.index(PAPERS))
    field = window.stages.papers.page.title_fields.fields["title"]
    field.selectAll()
    qtbot.keyClicks(field, "Hall bench")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.desk.project.title == "Hall bench"
    assert window.desk.undo_words == "Title"
    window.commands["undo"].trigger()
    assert window.desk.project.title != "Hall bench"
    assert field.text() == window.desk.project.title


def test_settings_that_were_damaged_fall_back(settings: QSettings) -> None:
    from PySide6.QtCore import QLocale

    from app.window.settings import read_preferences

    for key in ("shown", "inch", "words", "theme", "text_percent", "third_angle"):
        settings.setValue(key, "\u2603 nonsense")
    settings.setValue("recent_files", "{not json")
    read = read_preferences(settings, QLocale("en_GB"))
    assert read.theme == "system"
    assert read.text_percent == 100


@pytest.mark.skipif(os.name != "posix", reason="permissions of folders")
def test_autosave_follows_a_change(window: Workplace, tmp_path: Path, qtbot: QtBot) -> None:
    window.desk.set_values({"length": 1234.0})
    assert not list((tmp_path / "kept").glob("*.json"))
    qtbot.waitUntil(lambda: len(list((tmp_path / "kept").glob("*.json"))) == 1, timeout=20_000)
    window.ask.next = tmp_path / "b.settle"
    window.files.save()
    assert not list((tmp_path / "kept").glob("*.json"))
