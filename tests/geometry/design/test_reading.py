"""Values typed by a maker; the inch is 25.4 mm."""

from __future__ import annotations

import pytest

from geometry.bench.catalogue import PARAMETERS, default_spec, parameter
from geometry.design.reading import format_value, read_value
from shared.errors import UnreadableValue
from shared.units import SHOWN_IN16, SHOWN_MM, Shown


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


def test_angles_counts_and_choices() -> None:
    assert read_value(parameter("splay"), "12.5", SHOWN_IN16) == 12.5
    assert read_value(parameter("partition_count"), "3", SHOWN_MM) == 3.0
    assert read_value(parameter("left_end"), "  Open ", SHOWN_MM) == "open"


@pytest.mark.parametrize(
    ("name", "text"),
    [("length", "long"), ("splay", "steep"), ("partition_count", "2.5"), ("left_end", "shut")],
)
def test_what_cannot_be_read_names_the_value_and_what_would_work(name: str, text: str) -> None:
    with pytest.raises(UnreadableValue) as refused:
        read_value(parameter(name), text, SHOWN_MM)
    assert refused.value.where == parameter(name).title
    assert refused.value.remedy


def test_every_default_reads_back_to_the_decimal_shown() -> None:
    spec = default_spec()
    for row in PARAMETERS:
        value = spec.value(row.name)
        text = format_value(row, value, SHOWN_MM, with_unit=True)
        again = read_value(row, text, SHOWN_MM)
        assert again == (pytest.approx(value, abs=0.0501) if row.is_number else value), row.name
