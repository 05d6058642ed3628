"""Weights, forces … beside inches, against NIST Special Publication 811 (2008), appendix B.8."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from shared.units import (
    SHOWN_IN16,
    SHOWN_MM,
    Shown,
    in_units,
    quantity_mark,
    read_as,
    told_as,
    unit_beside,
)
from shared.units.quantities import UNITS
from shared.units.writing import amount_mark, decimals_of


@pytest.mark.parametrize(
    ("unit", "beside", "one"),
    [
        ("kg", "lb", 4.535924e-01),  # pound (avoirdupois)
        ("N", "lb", 4.448222),  # pound-force
        ("N m", "ft-lb", 1.355818),  # foot pound-force
        ("kg/m³", "lb/ft³", 1.601846e01),  # pound per cubic foot
        ("cm³", "in³", 1.638706e01),  # cubic inch
    ],
)
def test_one_of_the_other_in_ours(unit: str, beside: str, one: float) -> None:
    assert unit_beside(unit, SHOWN_IN16) == beside
    assert unit_beside(unit, SHOWN_MM) == unit
    assert told_as(one, unit, SHOWN_IN16) == pytest.approx(1.0, rel=4e-7)
    assert read_as(1.0, beside, unit, SHOWN_MM) == pytest.approx(one, rel=4e-7)


def test_degrees_as_on_a_thermometer() -> None:
    for celsius, fahrenheit in ((-40.0, -40.0), (0.0, 32.0), (20.0, 68.0), (100.0, 212.0)):
        assert told_as(celsius, "°C", SHOWN_IN16) == pytest.approx(fahrenheit)
        assert read_as(fahrenheit, "F", "°C", SHOWN_MM) == pytest.approx(celsius)


@given(st.floats(-1e6, 1e6), st.sampled_from(UNITS), st.sampled_from([SHOWN_MM, SHOWN_IN16]))
def test_what_is_told_reads_back(value: float, unit: str, shown: Shown) -> None:
    told = told_as(value, unit, shown)
    for written in ("", unit_beside(unit, shown)):
        back = read_as(told, written, unit, shown)
        assert back == pytest.approx(value, rel=1e-9, abs=1e-6)


def test_a_unit_that_does_not_fit() -> None:
    assert read_as(3.0, "stone", "kg", SHOWN_IN16) is None
    assert read_as(3.0, "lb", "°C", SHOWN_IN16) is None
    assert read_as(3.0, "lb", "%", SHOWN_IN16) is None


def test_a_mark_keeps_what_its_decimals_would_lose() -> None:
    """400 lb are 181.437 kg, and 181 kg would be 399 lb."""
    mark = quantity_mark(181.436948, "kg")
    assert in_units(mark, SHOWN_MM) == "181 kg"
    assert in_units(mark, SHOWN_IN16) == "400 lb"


@pytest.mark.parametrize(
    ("value", "unit", "metric", "inches"),
    [
        (600.0, "N", "600 N", "134.9 lb"),
        (-6.35, "mm", "−6.4 mm", "−¼ in"),
        (12.5, "deg", "12.5°", "12.5°"),
        (2500.0, "mm³", "2.5 cm³", "0.15 in³"),
        (66.66666, "%", "66.67 %", "66.67 %"),
        (8.0, "count", "8", "8"),
    ],
)
def test_amounts(value: float, unit: str, metric: str, inches: str) -> None:
    assert in_units(amount_mark(value, unit), SHOWN_MM) == metric
    assert in_units(amount_mark(value, unit), SHOWN_IN16) == inches


def test_decimals_for_so_many_figures() -> None:
    assert [decimals_of(value, 3) for value in (0.0, 0.00123, 1.0, 99.9, 1e6)] == [2, 5, 2, 1, 0]
