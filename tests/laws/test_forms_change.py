"""Any bench can be given any form of seat that it has room for, and changed back.

Changing the form keeps every number that still means something: only the base's height may move,
so that nobody sits higher or lower, and whatever has no room otherwise.
"""

from __future__ import annotations

import pytest

from geometry.bench import flares
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import broken_rules, parameter
from geometry.bench.limits import set_values
from geometry.bench.members import present_members
from geometry.bench.overall import SEATS, form_of, seat_height
from geometry.design.spec import BenchSpec
from shared.errors import CannotBuild


def formed(spec: BenchSpec, seat: str) -> BenchSpec | None:
    """The bench with another seat; None where it says that there is no room for it."""
    try:
        return set_values(spec, {"seat": seat})
    except CannotBuild:
        return None


def changed(before: BenchSpec, after: BenchSpec) -> set[str]:
    return {name for name, value in after.entries if value != before.value(name)}


def snug_names(spec: BenchSpec) -> set[str]:
    return {
        name for member in present_members(spec) for stage in member.snug(spec) for name in stage
    }


@pytest.mark.parametrize("seat", SEATS)
def test_another_form_moves_no_more_than_it_must(bench: Bench, seat: str) -> None:
    there = formed(bench.spec, seat)
    if there is None:
        return
    assert not broken_rules(there)
    assert build(there).parts
    may_move = {"seat", "base_height", "seat_boards"} | snug_names(there)
    # A case that comes in where its kept run-outs end beyond the bench has them moved.
    may_move |= set(flares.stations(bench.spec.changed({"seat": seat})))
    assert changed(bench.spec, there) <= may_move


@pytest.mark.parametrize("seat", SEATS)
def test_nobody_sits_higher_or_lower_for_it(bench: Bench, seat: str) -> None:
    there = formed(bench.spec, seat)
    if there is None or seat == bench.spec.value("seat"):
        return
    level = seat_height(bench.spec)
    base = level - form_of(there).rise(there)
    row = parameter("base_height")
    if changed(bench.spec, there) <= {"seat", "base_height"}:
        # Where the base can be as high or as low as it would have to be, it is.
        reachable = min(max(base, row.minimum), row.maximum)
        straight = bench.spec.changed({"seat": seat, "base_height": round(reachable, 6)})
        if not broken_rules(straight):
            assert there.number("base_height") == pytest.approx(reachable, abs=1e-6)


def test_a_form_that_is_chosen_again_changes_nothing(bench: Bench) -> None:
    assert set_values(bench.spec, {"seat": bench.spec.value("seat")}) == bench.spec


@pytest.mark.parametrize("seat", SEATS)
def test_there_and_back_is_the_same_bench(bench: Bench, seat: str) -> None:
    """Where the new form came without moving anything else, the old one finds itself again."""
    there = formed(bench.spec, seat)
    if there is None or not changed(bench.spec, there) <= {"seat", "base_height"}:
        return
    if seat_height(there) != pytest.approx(seat_height(bench.spec), abs=1e-5):
        return  # the base could not grow or shrink so far
    back = set_values(there, {"seat": bench.spec.value("seat")})
    for name, value in bench.spec.entries:
        if isinstance(value, str):
            assert back.value(name) == value, name
        else:
            assert back.number(name) == pytest.approx(value, abs=2e-6), name
