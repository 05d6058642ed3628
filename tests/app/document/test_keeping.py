"""Keeping unsaved work aside, and finding what nobody holds any more."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from app.document.keeping import MOST_THROWN, Keeper
from shared.errors import CannotWrite

NOON = datetime(2031, 5, 4, 12, 0, tzinfo=UTC)


def test_another_window_does_not_see_work_that_is_held(tmp_path: Path) -> None:
    mine, theirs = Keeper(tmp_path), Keeper(tmp_path)
    mine.keep("Bench", None, "", "text", NOON)
    assert theirs.left_over() == ()
    assert mine.left_over() == ()
    mine.release()
    (kept,) = theirs.left_over()
    assert (kept.title, kept.path, kept.text, kept.when) == (
        "Bench",
        "",
        "text",
        "2031-05-04T12:00",
    )


def test_dropped_work_is_gone(tmp_path: Path) -> None:
    mine = Keeper(tmp_path)
    mine.keep("Bench", tmp_path / "b.settle", "d", "text", NOON)
    mine.drop()
    mine.release()
    assert Keeper(tmp_path).left_over() == ()
    mine.drop()  # twice does no harm


def test_work_put_aside_and_new_work_are_two_files(tmp_path: Path) -> None:
    mine = Keeper(tmp_path)
    mine.keep("One", None, "", "1", NOON)
    aside = mine.put_aside()
    assert aside is not None
    mine.keep("Two", None, "", "2", NOON)
    assert [kept.title for kept in Keeper(tmp_path).left_over()] == ["One"]
    mine.forget(aside)
    assert Keeper(tmp_path).left_over() == ()


def test_damaged_and_foreign_files_are_left_alone(tmp_path: Path) -> None:
    (tmp_path / "a.json").write_text("{")
    (tmp_path / "b.json").write_text('{"title": "no text"}')
    (tmp_path / "c.json").write_bytes(b"\xff\xfe")
    assert Keeper(tmp_path).left_over() == ()
    assert len(list(tmp_path.glob("*.json"))) == 3


def test_thrown_away_work_can_come_back_and_old_rubbish_goes(tmp_path: Path) -> None:
    finder = Keeper(tmp_path)
    for number in range(MOST_THROWN + 3):
        one = Keeper(tmp_path)
        one.keep(str(number), None, "", "text", NOON)
        one.release()
    thrown = [finder.throw_away(kept) for kept in finder.left_over()]
    assert finder.left_over() == ()
    assert len(list((tmp_path / "thrown away").glob("*.json"))) == MOST_THROWN
    finder.bring_back(thrown[-1])
    assert len(finder.left_over()) == 1


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    (tmp_path / "kept").write_text("in the way")
    with pytest.raises(CannotWrite):
        Keeper(tmp_path / "kept").keep("Bench", None, "", "text", NOON)
