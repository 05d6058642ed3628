"""The words of a title block: what can stand on a drawing, and what cannot."""

from __future__ import annotations

import pytest

from geometry.design.project import LINE_FIELDS, LINE_LIMIT, NOTES_LIMIT, Project
from geometry.design.spec import BenchSpec
from shared.errors import UnreadableValue

NOTHING = BenchSpec(())


def test_lines_up_to_the_limit_and_notes_of_several_lines() -> None:
    project = Project(NOTHING, title="x" * LINE_LIMIT, notes="one\n\ttwo")
    assert len(project.title) == LINE_LIMIT
    assert hash(project) == hash(Project(NOTHING, title="x" * LINE_LIMIT, notes="one\n\ttwo"))


@pytest.mark.parametrize("field", LINE_FIELDS)
@pytest.mark.parametrize(
    "text", ["a\nb", "a\tb", "nul\0", "\ud800", "\u2028", "x" * (LINE_LIMIT + 1)]
)
def test_what_cannot_be_one_line(field: str, text: str) -> None:
    with pytest.raises(UnreadableValue) as caught:
        Project(NOTHING, **{field: text})
    assert caught.value.where == field
    assert caught.value.remedy


@pytest.mark.parametrize("text", ["nul\0", "\ud800", "\r\n", "x" * (NOTES_LIMIT + 1)])
def test_what_cannot_be_a_note(text: str) -> None:
    with pytest.raises(UnreadableValue):
        Project(NOTHING, notes=text)
