"""Undo and redo over plain values."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.document.history import MOST_STEPS, History


def test_undo_and_redo_walk_the_same_line() -> None:
    history = History("a")
    assert history.do("b", "to b")
    assert history.do("c", "to c")
    assert history.undo_words == "to c"
    assert history.undo()
    assert history.state == "b"
    assert (history.undo_words, history.redo_words) == ("to b", "to c")
    assert history.redo()
    assert history.state == "c"
    assert not history.redo()


def test_no_change_is_no_step() -> None:
    history = History(1)
    assert not history.do(1, "nothing")
    assert not history.undo()


def test_a_new_step_drops_what_was_undone() -> None:
    history = History(1)
    history.do(2, "")
    history.undo()
    history.do(3, "")
    assert not history.can_redo
    assert history.undo()
    assert history.state == 1


def test_the_saved_mark_stays_with_its_state() -> None:
    history = History(1)
    assert history.saved
    history.do(2, "")
    assert not history.saved
    history.mark_saved()
    assert history.saved
    history.undo()
    assert not history.saved
    history.do(3, "")  # the saved state is gone for good now
    history.undo()
    assert not history.saved
    history.mark_unsaved()
    assert not history.saved


def test_what_is_amended_is_no_step_and_is_not_on_disk() -> None:
    history = History("a")
    history.do("b", "to b")
    history.mark_saved()
    assert not history.amend("b")
    assert history.saved
    assert history.amend("b with more")
    assert history.state == "b with more"
    assert (history.undo_count, history.undo_words) == (1, "to b")
    assert not history.saved
    history.undo()
    assert history.state == "a"
    history.redo()
    assert history.state == "b with more"


def test_it_forgets_only_after_very_many_steps() -> None:
    history = History(0)
    for number in range(1, MOST_STEPS + 11):
        history.do(number, "")
    undone = 0
    while history.undo():
        undone += 1
    assert undone == MOST_STEPS
    assert history.state == 10
    assert not history.saved  # the first state, which was on disk, has been forgotten


@given(st.lists(st.sampled_from(["do", "undo", "redo"]), max_size=60))
def test_any_walk_agrees_with_a_list_and_a_finger(walk: list[str]) -> None:
    """Held against the plainest model: a list of states and a place in it."""
    history = History(0)
    states, place, fresh = [0], 0, 0
    for act in walk:
        if act == "do":
            fresh += 1
            history.do(fresh, f"to {fresh}")
            states, place = [*states[: place + 1], fresh], place + 1
        elif act == "undo":
            assert history.undo() == (place > 0)
            place = max(0, place - 1)
        else:
            assert history.redo() == (place + 1 < len(states))
            place = min(len(states) - 1, place + 1)
        assert history.state == states[place]
        assert history.undo_count == place
