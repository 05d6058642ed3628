"""What a brief may hold, and how it says what it may not."""

from __future__ import annotations

from dataclasses import fields

import pytest

from geometry.design.brief import NO_BRIEF, ROWS, Brief, row_of
from shared.errors import MakerError, UnknownName, UnreadableValue, ValueOutOfRange


def test_every_value_has_its_row() -> None:
    assert [field.name for field in fields(Brief)] == [row.name for row in ROWS]
    assert len({row.title for row in ROWS}) == len(ROWS)
    for row in ROWS:
        assert row.description.endswith(".")
        assert row_of(row.name) is row
    assert NO_BRIEF.blank
    assert not Brief(persons=2).blank


@pytest.mark.parametrize(
    ("values", "kind"),
    [
        ({"who": "giants"}, UnreadableValue),
        ({"lower_leg": 4000.0}, ValueOutOfRange),
        ({"lower_leg": -1.0}, ValueOutOfRange),
        ({"lower_leg": float("nan")}, ValueOutOfRange),
        ({"persons": 2.5}, UnreadableValue),
        ({"persons": "two"}, UnreadableValue),
        ({"person": "x" * 81}, UnreadableValue),
        ({"person": "a\nb"}, UnreadableValue),
        ({"person": 3.0}, UnreadableValue),
        ({"temperature": 90.0}, ValueOutOfRange),
        ({"humidity_low": 60.0, "humidity_high": 40.0}, ValueOutOfRange),
    ],
)
def test_what_cannot_be_is_refused_with_its_place(
    values: dict[str, object], kind: type[MakerError]
) -> None:
    with pytest.raises(kind) as caught:
        Brief(**values)  # type: ignore[arg-type]
    assert caught.value.where == row_of(next(iter(values))).title


def test_an_unknown_row() -> None:
    with pytest.raises(UnknownName):
        row_of("hat")
