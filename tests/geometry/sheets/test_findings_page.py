"""The pages of the findings: what the shop must know is on them, and nothing overlaps the foot."""

from __future__ import annotations

from geometry.design.finding import Finding, Level
from geometry.drawing.marks import Label, Mark, Strokes
from geometry.sheets.findings_page import findings_leaves
from geometry.sheets.layout import Layout
from shared.paper import PAPERS

LAYOUT = Layout(PAPERS["A4"])


def _words(marks: tuple[Mark, ...]) -> str:
    return " ".join(mark.text for mark in marks if isinstance(mark, Label))


def _finding(number: int, **fields: object) -> Finding:
    values: dict[str, object] = {
        "check": f"made_up_{number}",
        "level": Level.THINK_AGAIN,
        "message": f"Wall number {number} is only {{4.5 mm}} thick.",
        "parts": ("leg_front_left",),
    }
    return Finding(**(values | fields))  # type: ignore[arg-type]


def test_nothing_grave_has_no_page() -> None:
    assert findings_leaves((), LAYOUT) == ()
    assert findings_leaves((_finding(1, level=Level.GOOD_TO_KNOW),), LAYOUT) == ()


def test_a_reason_is_printed_with_what_was_set_aside() -> None:
    one = _finding(1, level=Level.DO_NOT_CUT, set_aside="The apprentice tried it.", estimate=True)
    (leaf,) = findings_leaves((one,), LAYOUT)
    words = _words(leaf.marks)
    assert "set aside" in words
    assert "4.5 mm" in words
    assert "The apprentice tried it." in words
    assert "engineer" in words


def test_one_that_has_grown_worse_is_printed_with_the_reason_there_was() -> None:
    worse = "Worse than when it was set aside at {5.9 mm}, because: a trial piece held."
    (leaf,) = findings_leaves((_finding(1, worse=worse),), LAYOUT)
    words = _words(leaf.marks)
    assert "set aside at 5.9 mm" in words
    assert "think again" in words


def test_fifty_go_onto_pages_that_hold_them() -> None:
    leaves = findings_leaves(tuple(_finding(number) for number in range(50)), LAYOUT)
    words = " ".join(_words(leaf.marks) for leaf in leaves)
    assert all(f"Wall number {number} " in words for number in range(50))
    assert len(leaves) > 1
    left, bottom, right, top = LAYOUT.room
    for leaf in leaves:
        for mark in leaf.marks:
            if isinstance(mark, Strokes):
                assert mark.segments[:, [1, 3]].min() >= bottom - 1e-6
                assert mark.segments[:, [0, 2]].max() <= right + 1e-6
                assert mark.segments[:, [0, 2]].min() >= left - 1e-6
                assert mark.segments[:, [1, 3]].max() <= top + 1e-6
