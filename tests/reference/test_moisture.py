"""Moisture of timber and coefficients of its movement, against the Wood Handbook (FPL-GTR-190)."""

from __future__ import annotations

import pytest

from geometry.advice.moisture_advice import moisture_advice, moisture_range
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.brief import Brief
from shared.moisture import equilibrium_moisture
from shared.movement import coefficients
from tests.reference.tables import rows


def test_the_equation_gives_the_handbooks_table() -> None:
    """Table 4-2, 192 cells from -1 to 54 °C; one misprinted cell of the copy is left out.  Printed
    to one decimal."""
    table = rows("equilibrium_moisture.csv")
    assert len(table) == 192
    for row in table:
        celsius = (row["temperature_f"] - 32.0) / 1.8
        found = equilibrium_moisture(row["humidity"], celsius)
        within = 0.06 if row["humidity"] <= 85 else 0.25
        assert found == pytest.approx(row["moisture"], abs=within), row


@pytest.mark.parametrize(
    ("celsius", "humidity", "moisture"),
    # computed apart from this program from the equation's Fahrenheit and Celsius forms
    [(20, 50, 9.2711), (20, 65, 11.9963), (25, 40, 7.6082), (70 / 1.8 - 32 / 1.8, 80, 15.9891)],
)
def test_single_points(celsius: float, humidity: float, moisture: float) -> None:
    assert equilibrium_moisture(humidity, celsius) == pytest.approx(moisture, abs=5e-3)


@pytest.mark.parametrize(
    ("timber", "radial", "tangential"),
    [
        # table 13-5 (read)
        ("black walnut", 0.00190, 0.00274),
        ("black cherry", 0.00126, 0.00248),
        ("white ash", 0.00169, 0.00274),
        ("yellow birch", 0.00256, 0.00338),
        ("American beech", 0.00190, 0.00431),
        ("hard maple", 0.00165, 0.00353),
        # table 13-5 (from memory, and the arithmetic agrees)
        ("yellow poplar", 0.00158, 0.00289),
        ("Douglas fir", 0.00165, 0.00267),
        ("western red cedar", 0.00111, 0.00234),
    ],
)
def test_coefficients_are_the_handbooks(timber: str, radial: float, tangential: float) -> None:
    found = coefficients(timber)
    assert found == pytest.approx((radial, tangential), abs=1.01e-5)


def test_the_advice_by_hand() -> None:
    """35 to 65 % at 20 °C: 7.0 and 12.0 % by the table's neighbours.  White ash, tangential
    0.00274, over 360 mm: 360 x 0.00274 x (12.0 - 7.0) = 4.9 mm."""
    spec = set_values(default_spec(), {"timber": "white ash", "flare": 0})
    brief = Brief(humidity_low=35, humidity_high=65)
    low, high = moisture_range(brief) or (0.0, 0.0)
    assert (low, high) == pytest.approx((6.97, 12.0), abs=0.05)
    told = {one.name: one for one in moisture_advice(build(spec), brief)}
    assert told["moisture"].wanted == pytest.approx((low + high) / 2)
    assert told["movement_top"].now == pytest.approx(360 * 0.00274 * (high - low), rel=2e-3)
    assert "{4.9 mm}" in told["movement_top"].reason or "{5 mm}" in told["movement_top"].reason


def test_no_air_no_advice() -> None:
    assert moisture_advice(build(default_spec()), Brief(humidity_low=35)) == ()
