"""Reading what somebody typed, for each kind of parameter; the inch is 25.4 mm."""

from __future__ import annotations

import pytest

from app.scene.preferences import Preferences
from app.scene.typed_value import read_value
from app.scene.wording import size_text
from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from shared.errors import UnreadableValue
from shared.units import SHOWN_IN16, SHOWN_MM, Shown


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


@pytest.mark.parametrize("shown", [SHOWN_MM, SHOWN_IN16])
@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("36 1/2", 927.1),
        ("36.5 in", 927.1),
        ("927 mm", 927.0),
        ("92.7 cm", 927.0),
        ("3' 1/2\"", 927.1),
    ],
)
def test_lengths_whatever_is_shown(text: str, mm: float, shown: Shown) -> None:
    assert read_value(parameter("length"), text, shown) == pytest.approx(mm)


def test_only_places_on_either_side_take_a_minus() -> None:
    assert read_value(parameter("inset_left"), "-12", SHOWN_MM) == -12.0
    assert read_value(parameter("inset_left"), "−1/2", SHOWN_MM) == pytest.approx(-12.7)
    with pytest.raises(UnreadableValue):
        read_value(parameter("length"), "-12", SHOWN_MM)


def test_a_bare_number_is_in_the_unit_shown() -> None:
    assert read_value(parameter("length"), "40", SHOWN_IN16) == 1016.0


def test_every_default_reads_back_to_the_decimal_shown() -> None:
    spec, preferences = default_spec(), Preferences(shown=SHOWN_MM)
    for row in PARAMETERS:
        value = spec.value(row.name)
        again = read_value(row, size_text(value, row.unit, preferences), SHOWN_MM)
        assert again == (pytest.approx(value, abs=0.0501) if row.is_number else value), row.name


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
