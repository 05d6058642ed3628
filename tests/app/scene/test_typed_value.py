"""Reading what somebody typed, for each kind of parameter."""

from __future__ import annotations

import pytest

from app.scene.typed_value import read_value
from geometry.bench.catalogue import parameter
from shared.errors import UnreadableValue
from shared.units import SHOWN_IN16, SHOWN_MM


@pytest.mark.parametrize(
    ("name", "text", "value"),
    [
        ("length", "1200", 1200.0),
        ("length", "4 ft", 1219.2),
        ("splay", "12.5°", 12.5),
        ("partition_count", "3", 3.0),
        ("deep_end", "right", "right"),
        ("deep_end", " RIGHT ", "right"),
        ("deep_end", "r", "right"),
        ("left_end", "mitred", "mitred"),
        ("left_end", "mitered", "mitred"),
    ],
)
def test_each_kind_is_read(name: str, text: str, value: float | str) -> None:
    assert read_value(parameter(name), text, SHOWN_MM) == value


def test_a_bare_number_is_in_the_unit_shown() -> None:
    assert read_value(parameter("length"), "40", SHOWN_IN16) == 1016.0


@pytest.mark.parametrize(
    ("name", "text"),
    [("length", ""), ("length", "long"), ("partition_count", "2.5"), ("deep_end", "top")],
)
def test_what_cannot_be_read_says_what_works(name: str, text: str) -> None:
    with pytest.raises(UnreadableValue) as caught:
        read_value(parameter(name), text, SHOWN_MM)
    assert caught.value.remedy


def test_an_ambiguous_beginning_is_refused() -> None:
    with pytest.raises(UnreadableValue, match="not one of"):
        read_value(parameter("timber"), "white", SHOWN_MM)
