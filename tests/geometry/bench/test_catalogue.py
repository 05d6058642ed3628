"""The catalogue as a maker meets it: names, titles, limits, and a bench to begin with."""

from __future__ import annotations

import re

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS, broken_rules, default_spec, parameter
from geometry.bench.limits import limits, set_values
from geometry.design.parameter import Parameter
from shared.errors import CannotBuild, UnknownName, UnreadableValue, ValueOutOfRange


@pytest.mark.parametrize("row", PARAMETERS, ids=lambda row: row.name)
def test_rows(row: Parameter) -> None:
    assert re.fullmatch(r"[a-z][a-z0-9_]*", row.name)
    assert row.description.endswith(".")
    assert row.title[0].isupper()
    assert row.group[0].isupper()
    assert row.unit in ("mm", "deg", "count", "choice", "text")
    if row.unit == "choice":
        assert row.default in row.choices
    elif row.unit == "text":
        assert isinstance(row.default, str)
        assert row.read(row.default) == row.default
    else:
        assert not isinstance(row.default, str)
        assert row.minimum <= row.default <= row.maximum
        assert row.step > 0.0


def test_names_are_unique_and_so_are_the_titles_seen_together() -> None:
    assert len({row.name for row in PARAMETERS}) == len(PARAMETERS)
    titles = [(row.group, row.title) for row in PARAMETERS if row.applies(default_spec())]
    assert len(set(titles)) == len(titles)


def test_a_new_bench_can_be_built_and_its_parts_and_joints_have_names_of_their_own() -> None:
    assert not broken_rules(default_spec())
    bench = build(default_spec())
    assert len({part.name for part in bench.parts}) == len(bench.parts)
    assert len({joint.name for joint in bench.joints}) == len(bench.joints)
    assert all(re.fullmatch(r"[a-z0-9_]+", part.name) for part in bench.parts)
    names = [size.name for size in bench.derived]
    assert len(set(names)) == len(names)
    assert not set(names) & {row.name for row in PARAMETERS}


def test_unknown_name_suggests_the_nearest() -> None:
    with pytest.raises(UnknownName) as refused:
        set_values(default_spec(), {"lenght": 1000.0})
    assert "length" in str(refused.value)


@pytest.mark.parametrize("value", [float("nan"), float("inf"), -float("inf"), "wide"])
def test_values_that_are_no_numbers(value: float | str) -> None:
    with pytest.raises(UnreadableValue):
        set_values(default_spec(), {"length": value})


@pytest.mark.parametrize("value", [1e300, -1e300, 3600.001, 0.0])
def test_absurd_lengths_name_the_nearest_that_can_be(value: float) -> None:
    with pytest.raises(ValueOutOfRange) as refused:
        set_values(default_spec(), {"length": value})
    assert refused.value.where == parameter("length").title
    limit = refused.value.limit
    assert limit is not None
    beyond = -0.01 if value < limit else 0.01
    set_values(default_spec(), {"length": limit})
    with pytest.raises(ValueOutOfRange):
        set_values(default_spec(), {"length": limit + beyond})


def test_half_a_partition_and_a_word_that_is_no_choice() -> None:
    with pytest.raises(UnreadableValue):
        set_values(default_spec(), {"partition_count": 1.5})
    with pytest.raises(UnreadableValue) as refused:
        set_values(default_spec(), {"left_end": "ajar"})
    assert "mitred" in refused.value.remedy


def test_values_that_do_not_go_together_say_which_rule() -> None:
    with pytest.raises(CannotBuild) as refused:
        set_values(default_spec(), {"board_thickness": 12.0, "housing_depth": 11.0})
    assert "{3 mm}" in str(refused.value)


def test_a_new_number_of_partitions_spaces_them_evenly() -> None:
    """Inside from 20 to 1120; three of 20: (1100 - 60) / 4 = 260 clear between them."""
    spec = set_values(default_spec(), {"partition_count": 3.0})
    places = [spec.number(f"partition_{k}") for k in (1, 2, 3)]
    assert places == pytest.approx([290.0, 570.0, 850.0])
    assert limits(spec, "partition_2").minimum == pytest.approx(290.0 + 20.0 + 40.0)


def test_a_flare_on_a_short_plain_bench_finds_its_stations() -> None:
    """Kept from a longer bench they do not fit; a fifth and three fifths of 700 do."""
    plain = set_values(default_spec(), {"flare": 0.0, "partition_count": 0.0})
    short = set_values(
        plain, {"length": 700.0, "flare_straight": 800.0, "flare_end": 1100.0, "inset_left": 20.0}
    )
    flared = set_values(short, {"flare": 40.0})
    assert (flared.number("flare_straight"), flared.number("flare_end")) == (140.0, 420.0)
