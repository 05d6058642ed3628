"""A base that comes in keeps its numbers where they fit, and moves them no farther than it must."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import broken_rules, default_spec, parameter
from geometry.bench.limits import set_values
from geometry.bench.overall import BASES
from geometry.design.spec import BenchSpec
from shared.errors import CannotBuild

# The smallest bench there can be, and some others at the ends of the range.
SIZES = ((300, 150, 60), (420, 200, 90), (1200, 360, 150), (3600, 800, 700), (300, 800, 700))
FLUSH = {f"inset_{side}": 0.0 for side in ("left", "right", "back", "front")}


def bench_of(length: float, depth: float, height: float) -> BenchSpec:
    """On a plinth, which fits under anything; a plain case with mitred ends."""
    spec = set_values(
        default_spec(),
        {"flare": 0.0, "left_end": "mitred", "right_end": "mitred", "partition_count": 0.0},
    )
    spec = set_values(spec, {"base": "plinth"})
    return set_values(spec, {"length": length, "depth": depth, "base_height": height, **FLUSH})


@pytest.mark.parametrize("base", BASES)
@pytest.mark.parametrize("size", SIZES, ids=str)
def test_every_base_goes_under_every_bench(base: str, size: tuple[float, float, float]) -> None:
    spec = set_values(bench_of(*size), {"base": base})
    assert not broken_rules(spec)
    assert build(spec).parts


def test_stretchers_too_flat_to_cross_are_refused_with_the_reason() -> None:
    with pytest.raises(CannotBuild, match="cross at less than"):
        set_values(bench_of(3600, 150, 60), {"base": "crossed stretchers"})


@pytest.mark.parametrize("base", BASES)
def test_numbers_that_fit_stay(base: str) -> None:
    """From the default bench, to a base and back: nothing but the base has changed meanwhile."""
    before = default_spec()
    there = set_values(before, {"base": base})
    changed = {n for n, v in there.entries if v != before.value(n)}
    assert changed <= {"base"}
    assert set_values(there, {"base": before.value("base")}) == before


def test_numbers_that_do_not_fit_move_part_of_the_way() -> None:
    """Aprons of 60 mm under a bench 80 mm off the floor: lower ones, and not the lowest."""
    spec = set_values(bench_of(900, 300, 80), {"base": "four legs"})
    height = spec.number("apron_height")
    assert parameter("apron_height").minimum < height < 60.0
    # In steps that a rule can be set to.
    assert height * 2.0 == round(height * 2.0)


def test_what_did_not_stand_in_the_way_stays_as_it_was() -> None:
    """Under a bench 80 mm off the floor nothing but the aprons' height was wrong: their thickness,
    the legs' size, lean and insets still mean what they meant."""
    before = set_values(bench_of(900, 300, 80), {"inset_left": 120.0, "inset_right": 35.0})
    spec = set_values(before, {"base": "four legs"})
    changed = {name for name, value in spec.entries if value != before.value(name)}
    assert changed == {"base", "apron_height"}


def test_feet_that_stood_alike_still_do() -> None:
    """A slab 352 mm deep on legs of its own; its trestles' feet come as near as they must."""
    before = set_values(default_spec(), {"seat": "slab", "base": "trestles", "depth": 352.0})
    corners = [f"inset_{y}_{x}" for y in ("back", "front") for x in ("left", "right")]
    wide = set_values(before, dict.fromkeys(corners, 30.0) | {"leg_top_width": 70.0})
    away = set_values(wide, {"base": "plinth", "depth": 200.0})
    there = set_values(away, {"base": "trestles"})
    assert len({there.number(name) for name in corners}) == 1
    assert there.number("length") == 1200.0


def test_a_number_given_with_the_base_stays_as_given() -> None:
    spec = set_values(bench_of(900, 300, 80), {"base": "four legs", "apron_thickness": 19.0})
    assert spec.number("apron_thickness") == 19.0
    assert spec.number("apron_height") < 60.0


def test_round_tenons_move_in_before_they_shrink() -> None:
    """From under a set-in partition the legs go inward; their size stays."""
    spec = set_values(default_spec(), {"base": "four legs"})
    there = set_values(spec, {"leg_joint": "round tenons"})
    changed = {name for name, value in there.entries if value != spec.value(name)}
    assert changed == {"leg_joint", "inset_right"}
    assert there.number("inset_right") > spec.number("inset_right")


def test_round_tenons_are_refused_by_a_thin_board() -> None:
    thin = set_values(default_spec(), {"base": "four legs", "board_thickness": 17.0})
    with pytest.raises(CannotBuild, match="too thin to hold a round tenon"):
        set_values(thin, {"leg_joint": "round tenons"})
