"""What the limits promise: every value up to them can be built, nothing beyond."""

from __future__ import annotations

import random
from collections.abc import Iterator

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.limits import limits, set_values
from geometry.design.parameter import Parameter, Value
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed
from shared.errors import MakerError, ValueOutOfRange

BUILT = 3  # parameters whose limits are also cut, for each bench


def numbers(spec: BenchSpec) -> Iterator[Parameter]:
    return (row for row in PARAMETERS if row.unit in ("mm", "deg") and row.applies(spec))


def test_limits_themselves_can_be_built_and_a_hair_more_is_refused(bench: Bench) -> None:
    spec = bench.spec
    for row in numbers(spec):
        allowed = limits(spec, row.name)
        assert row.minimum <= allowed.minimum <= spec.number(row.name), row.name
        assert spec.number(row.name) <= allowed.maximum <= row.maximum, row.name
        for bound, beyond in ((allowed.minimum, -1e-3), (allowed.maximum, 1e-3)):
            assert set_values(spec, {row.name: bound}).number(row.name) == bound
            with pytest.raises(ValueOutOfRange) as refused:
                set_values(spec, {row.name: bound + beyond})
            # Beyond what any bench has, that is what is said.
            nearest = min(max(bound + beyond, row.minimum), row.maximum)
            told = bound if nearest == bound + beyond else nearest
            assert refused.value.limit == pytest.approx(told, abs=1e-6), row.name
            assert refused.value.where == row.title
        assert allowed.why_minimum
        assert allowed.why_maximum


def test_values_between_the_limits_can_be_built(bench: Bench) -> None:
    dice = random.Random(bench.spec.number("length"))
    for row in numbers(bench.spec):
        allowed = limits(bench.spec, row.name)
        for _ in range(4):
            value = dice.uniform(allowed.minimum, allowed.maximum)
            assert set_values(bench.spec, {row.name: value}).number(row.name) == value


def test_benches_at_their_limits_can_be_cut(bench: Bench) -> None:
    dice = random.Random(bench.spec.number("depth"))
    rows = list(numbers(bench.spec))
    for row in dice.sample(rows, BUILT):
        allowed = limits(bench.spec, row.name)
        for bound in (allowed.minimum, allowed.maximum):
            for part in build(set_values(bench.spec, {row.name: bound})).parts:
                assert placed(part).solid.volume > 0.0, (row.name, bound, part.name)


def test_every_number_of_partitions_in_its_range_fits(bench: Bench) -> None:
    allowed = limits(bench.spec, "partition_count")
    for number in range(round(allowed.minimum), round(allowed.maximum) + 1):
        fitted = set_values(bench.spec, {"partition_count": float(number)})
        assert fitted.number("partition_count") == number


def test_values_set_together_need_no_order(bench: Bench) -> None:
    dice = random.Random(bench.spec.number("case_height"))
    rows = dice.sample(list(numbers(bench.spec)), 5)
    changes: dict[str, Value] = {}
    for row in rows:
        allowed = limits(bench.spec, row.name)
        changes[row.name] = dice.uniform(allowed.minimum, allowed.maximum)
    assert outcome(bench.spec, changes) == outcome(bench.spec, dict(reversed(changes.items())))
    together = outcome(bench.spec, changes)
    if isinstance(together, BenchSpec):
        assert set_values(together, changes) == together


def outcome(spec: BenchSpec, changes: dict[str, Value]) -> BenchSpec | str:
    """The new spec, or the words in which it was refused."""
    try:
        return set_values(spec, changes)
    except MakerError as refused:
        return f"{type(refused).__name__} {refused}"


def test_setting_a_value_to_what_it_is_changes_nothing(bench: Bench) -> None:
    for name, value in bench.spec.entries:
        assert set_values(bench.spec, {name: value}) == bench.spec
