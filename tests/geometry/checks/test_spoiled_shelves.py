"""A spoiled bench for each check of shelves; amounts worked by hand beside each.

The sound bench: the default with a second partition and a shelf 18 mm thick in each of its three
openings, housed 6 mm in partitions of 20 mm; fit 0.2 mm, cutter 12.7 mm.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.part import Shape

SHELVED = {f"opening_{k}_fill": "shelf" for k in (1, 2, 3)}
SOUND = set_values(set_values(default_spec(), {"partition_count": 2.0}), SHELVED)

SPOILED: tuple[tuple[str, dict[str, Value], Level, float, float], ...] = (
    # 12.7 mm cutter against 10 + 0.2 mm of housing
    ("shelf_cutter", {"shelf_thickness": 10.0}, Level.DO_NOT_CUT, 12.7, 10.2),
    # 20 - 2 x 7.5 = 5 mm of wall, less than 20 / 3
    ("back_to_back", {"shelf_housing_depth": 7.5}, Level.THINK_AGAIN, 5.0, 20.0 / 3.0),
    # half of 16 mm of partition; its neighbours are 20 mm
    (
        "deep_shelf_housing",
        {"partition_thickness": 16.0, "opening_2_fill": "open", "shelf_housing_depth": 9.0},
        Level.THINK_AGAIN,
        9.0,
        8.0,
    ),
)


def _found(changes: dict[str, Value], check: str) -> list[Finding]:
    found = findings(build(set_values(SOUND, changes)))
    return [finding for finding in found if finding.check == check]


def test_sound_shelves_raise_nothing() -> None:
    assert findings(build(SOUND)) == ()


@pytest.mark.parametrize(("check", "changes", "level", "amount", "limit"), SPOILED)
def test_a_spoiled_shelf_is_caught_and_mended(
    check: str, changes: dict[str, Value], level: Level, amount: float, limit: float
) -> None:
    found = _found(changes, check)
    assert found
    assert (found[0].level, found[0].amount, found[0].limit) == (
        level,
        pytest.approx(amount, abs=1e-9),
        pytest.approx(limit, abs=1e-9),
    )
    bench = build(set_values(SOUND, changes))
    assert set(found[0].parts) <= {part.name for part in bench.parts}
    mend = found[0].mend
    assert mend is not None
    assert not _found(changes | dict(mend.values), check)


def test_each_wall_between_two_housings_is_looked_at() -> None:
    """Two partitions stand between three shelves; shelves at different heights miss each other."""
    deep: dict[str, Value] = {"shelf_housing_depth": 7.5}
    assert len(_found(deep, "back_to_back")) == 2
    assert len(_found(deep | {"opening_1_shelf_height": 128.3}, "back_to_back")) == 1
    assert len(_found(deep | {"opening_1_shelf_height": 128.1}, "back_to_back")) == 2


@pytest.mark.parametrize(
    ("check", "more", "amount"), [("shelf_too_long", 1.5, 383.5), ("shelf_too_short", -3.0, 379.0)]
)
def test_a_shelf_of_another_length_is_measured(check: str, more: float, amount: float) -> None:
    """Partitions of 20 at 400 and 800: the middle shelf is 370 + 2 x 6 = 382 long."""
    places: dict[str, Value] = {"partition_1": 405.0, "partition_2": 795.0}
    bench = build(set_values(SOUND, places))
    shelf = bench.part("shelf_2")
    blank = replace(shelf.shape.blank, length=shelf.shape.blank.length + more)
    other = replace(shelf, shape=Shape(blank, ()))
    parts = tuple(other if part.name == shelf.name else part for part in bench.parts)
    (found,) = (f for f in findings(replace(bench, parts=parts)) if f.check == check)
    assert found.amount == pytest.approx(amount)
    assert found.limit == pytest.approx(382.0)
