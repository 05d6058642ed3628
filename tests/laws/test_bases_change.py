"""Any bench can be put on any base that it has room for, and what it was is still there."""

from __future__ import annotations

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import broken_rules, parameter
from geometry.bench.limits import set_values
from geometry.bench.members import present_members
from geometry.bench.overall import BASES, CROSSED, FOUR_LEGS, stands_on_base
from geometry.design.spec import BenchSpec
from shared.errors import CannotBuild


def newcomers(before: BenchSpec, after: BenchSpec) -> set[str]:
    """The numbers that a member which came in may move."""
    return {
        name
        for member in present_members(after)
        if not member.present(before)
        for stage in member.snug(after)
        for name in stage
    }


def put_on(spec: BenchSpec, base: str) -> BenchSpec | None:
    """The bench on a base; None where it says that there is no room for it."""
    try:
        return set_values(spec, {"base": base})
    except CannotBuild:
        return None


def test_every_base_comes_that_has_room(bench: Bench) -> None:
    """Stretchers may be too flat to cross, a board too thin for round tenons, and the legs of the
    new base too narrow for the old one's moulded arrises; the rest fits."""
    if not stands_on_base(bench.spec):
        return
    for base in BASES:
        there = put_on(bench.spec, base)
        if there is None:
            sharp = bench.spec.changed({"leg_edge": "sharp", "foot_edge": "sharp"})
            assert base in (CROSSED, FOUR_LEGS) or put_on(sharp, base) is not None
            continue
        assert not broken_rules(there)
        assert build(there).parts
        changed = {name for name, value in there.entries if value != bench.spec.value(name)}
        assert changed <= {"base"} | newcomers(bench.spec, there), base


def test_a_base_that_is_chosen_again_changes_nothing(bench: Bench) -> None:
    for name in ("base", "leg_joint"):
        assert set_values(bench.spec, {name: bench.spec.value(name)}) == bench.spec


def test_snug_numbers_are_numbers_of_the_catalogue(bench: Bench) -> None:
    for member in present_members(bench.spec):
        for stage in member.snug(bench.spec):
            for name, value in stage.items():
                row = parameter(name)
                assert row.unit in ("mm", "deg")
                assert row.minimum <= value <= row.maximum, name
