"""The bench to begin with is sound and written in round sizes, whatever form it is given."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import product

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS, broken_rules, default_spec
from geometry.bench.limits import set_values
from geometry.bench.overall import BASES, SEATS
from geometry.bench.plain import plain_spec
from geometry.checks.all_checks import findings
from geometry.design.finding import Level
from shared.units import SHOWN_IN16, SHOWN_IN64, SHOWN_MM, Shown


def test_beside_millimetres_it_is_the_catalogues_own() -> None:
    assert plain_spec(SHOWN_MM) == default_spec()


def test_beside_inches_it_is_what_a_shop_would_say() -> None:
    """Worked by hand from 1200 × 360 × 450 mm of boards of 20 mm: 47.24, 14.17, 11.81, 0.787 in."""
    spec = plain_spec(SHOWN_IN16)
    said = {"length": 48.0, "depth": 14.0, "case_height": 12.0, "board_thickness": 0.75}
    for name, inches in said.items():
        assert spec.number(name) == pytest.approx(25.4 * inches, abs=1e-9)
    assert spec == plain_spec(SHOWN_IN64)


# Below so many inches a shop rule is read at a glance to so much of one; common practice, no
# source.
READ = ((0.5, 1 / 16), (1.0, 1 / 8), (2.0, 1 / 4), (12.0, 1 / 2), (30.0, 1.0), (math.inf, 2.0))


def test_no_size_of_it_is_far_from_its_own_nor_between_two_marks_of_a_rule() -> None:
    """It is the nearest mark: no more than half a step from the metric size."""
    spec = plain_spec(SHOWN_IN16)
    for row in PARAMETERS:
        value = spec.value(row.name)
        if row.unit != "mm" or row.default == value:
            assert value == row.default, row.name
            continue
        assert isinstance(value, float)
        assert isinstance(row.default, int | float)
        assert value * 16.0 / 25.4 == pytest.approx(round(value * 16.0 / 25.4)), row.name
        step = next(mark for below, mark in READ if abs(row.default) < 25.4 * below)
        assert abs(value - row.default) <= 25.4 * step / 2.0 + 1e-9, row.name
        assert row.minimum <= value <= row.maximum, row.name


@pytest.mark.parametrize("shown", [SHOWN_MM, SHOWN_IN16], ids=["mm", "in"])
@pytest.mark.parametrize(("seat", "base"), list(product(SEATS, BASES)))
def test_it_takes_every_form(seat: str, base: str, shown: Shown) -> None:
    """Change of form makes no new finding above good to know beyond the plain metric bench."""
    spec = set_values(set_values(plain_spec(shown), {"seat": seat}), {"base": base})
    assert not broken_rules(spec)
    found = {one.check for one in findings(replace(build(spec), shown=shown)) if _grave(one.level)}
    metric = set_values(set_values(default_spec(), {"seat": seat}), {"base": base})
    assert found <= {one.check for one in findings(build(metric))}


def test_it_is_sound() -> None:
    for shown in (SHOWN_MM, SHOWN_IN16):
        assert findings(replace(build(plain_spec(shown)), shown=shown)) == ()


def _grave(level: Level) -> bool:
    return level is not Level.GOOD_TO_KNOW
