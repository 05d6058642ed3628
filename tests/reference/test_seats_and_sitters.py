"""Advice on seats against the ADA's section 903, the ANSUR II percentiles and studies of rising.

Sources: 2010 ADA Standards 903.3 and 903.5 (read); ANSUR II public data, percentiles of the
popliteal height, buttock-popliteal length and bideltoid breadth; Aging Clin Exp Res
2013;25(3):305-9 (rising from 100 to 120 % of the lower leg).  Amounts worked by hand.
"""

from __future__ import annotations

import pytest

from geometry.advice.advised import Advice
from geometry.advice.all_advice import advice
from geometry.advice.seat_advice import depth_advice, height_advice, length_advice
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.bench.overall import seat_height
from geometry.design.brief import (
    ADA_BENCH,
    ADULTS,
    LONG_SIT,
    MEN,
    PERSON,
    SHORT_SIT,
    WEAK_KNEES,
    WOMEN,
    Brief,
)

SPEC = default_spec()


def span(found: Advice | None) -> tuple[float | None, float | None]:
    assert found is not None
    return found.low, found.high


def test_a_bench_held_to_the_ada() -> None:
    """17 to 19 in high, 20 to 24 in deep, 42 in long: 430 to 485, 510 to 610, 1065 mm."""
    brief = Brief(standard=ADA_BENCH)
    assert span(height_advice(SPEC, brief)) == (430.0, 485.0)
    assert span(depth_advice(SPEC, brief)) == (510.0, 610.0)
    assert length_advice(SPEC, brief).low == 1065.0  # type: ignore[union-attr]


def test_a_home_bench_is_not_held_to_it() -> None:
    assert advice(build(SPEC), Brief()) == ()


@pytest.mark.parametrize(
    ("who", "use", "low", "high", "wanted"),
    [
        # 0.8 x 471 + 25 = 401.8 up to 1.1 x 390 + 25 = 454; the middle man 430 + 25 = 455, held
        (MEN, SHORT_SIT, 401.8, 454.0, 454.0),
        # 0.8 x 428 + 25 = 367.4 up to 350 + 25 = 375; the middle woman 387 + 25 = 412, held
        (WOMEN, LONG_SIT, 367.4, 375.0, 375.0),
        # 428 + 25 = 453 is more than 1.2 x 350 + 25 = 445: half way between, 449
        (WOMEN, WEAK_KNEES, 445.0, 453.0, 449.0),
        # 0.8 x 471 + 25 = 401.8 is more than 350 + 25 = 375: half way between, 388.4, so 388
        (ADULTS, LONG_SIT, 375.0, 401.8, 388.0),
    ],
)
def test_height_for_a_group(who: str, use: str, low: float, high: float, wanted: float) -> None:
    found = height_advice(SPEC, Brief(who=who, use=use))
    assert found is not None
    assert (found.low, found.high, found.wanted) == pytest.approx((low, high, wanted))


def test_height_for_one_person_with_weak_knees() -> None:
    """Lower leg 400, shoe 30: 430 to 1.2 x 400 + 30 = 510, best 1.1 x 400 + 30 = 470."""
    brief = Brief(who=PERSON, person="Agnes", lower_leg=400, shoes=30, use=WEAK_KNEES)
    found = height_advice(SPEC, brief)
    assert found is not None
    assert (found.low, found.high, found.wanted) == pytest.approx((430, 510, 470))
    assert "Agnes" in found.reason


def test_depth_for_a_group() -> None:
    """Women, 90 of 100: two thirds of 535 = 356.7 up to 441 - 50 = 391."""
    found = depth_advice(SPEC, Brief(who=WOMEN, use=LONG_SIT))
    assert found is not None
    assert (found.low, found.high, found.wanted) == pytest.approx((2 / 3 * 535, 391, 391))


def test_length_for_three_men() -> None:
    """Shoulders of 567 and 50 for elbows: 3 x 617 = 1851."""
    found = length_advice(SPEC, Brief(who=MEN, persons=3))
    assert found is not None
    assert (found.low, found.wanted) == (1851.0, 1851.0)


def test_98_of_100_reach_farther() -> None:
    """99th percentile of men's shoulders 593: 643 each."""
    found = length_advice(SPEC, Brief(who=MEN, persons=2, share="98 of 100"))
    assert found is not None
    assert found.low == 1286.0


def test_person_and_standard_together() -> None:
    """405 to 425 by the person lies below the standard's 430: the standard wins, at its low end."""
    brief = Brief(who=PERSON, lower_leg=360, use=LONG_SIT, standard=ADA_BENCH)
    found = height_advice(SPEC, brief)
    assert found is not None
    assert (found.low, found.high, found.wanted) == (430.0, 430.0, 430.0)


@pytest.mark.parametrize("use", [SHORT_SIT, LONG_SIT, WEAK_KNEES])
@pytest.mark.parametrize("who", [MEN, WOMEN, ADULTS])
def test_advice_that_is_taken_is_met(who: str, use: str) -> None:
    brief = Brief(who=who, use=use, persons=2)
    for one in advice(build(SPEC), brief):
        if one.met or not one.changes:
            continue
        taken = build(set_values(SPEC, dict(one.changes)))
        again = next(each for each in advice(taken, brief) if each.name == one.name)
        assert again.met, one.name


def test_height_too_high_for_the_base_takes_the_case_along() -> None:
    """A seat of 1000 mm: the base goes up to 700 at the most, the case holds the rest."""
    from geometry.advice.taking import for_height

    changes, hindrance = for_height(SPEC, 1020.0)
    assert not hindrance
    assert seat_height(set_values(SPEC, dict(changes))) == pytest.approx(1020.0)


def test_a_height_that_cannot_be_says_why() -> None:
    from geometry.advice.taking import for_height

    changes, hindrance = for_height(SPEC, 2000.0)
    assert changes == ()
    assert hindrance
