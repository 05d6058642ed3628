"""Another form of seat: what stays, what moves, and what comes back."""

from __future__ import annotations

import pytest

from app.document.history import History
from geometry.bench.build import build
from geometry.bench.catalogue import broken_rules, default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import BASES, SEATS, seat_height
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec


def changed(before: BenchSpec, after: BenchSpec) -> set[str]:
    return {name for name, value in after.entries if value != before.value(name)}


@pytest.mark.parametrize("seat", ["slab", "panel bench"])
def test_the_seat_stays_as_high_and_all_else_as_it_was(seat: str) -> None:
    """A case of 300 on a base of 150 gives way to a board of 40: the underside goes up to 410."""
    before = default_spec()
    there = set_values(before, {"seat": seat})
    assert changed(before, there) == {"seat", "base_height"}
    assert there.number("base_height") == 150.0 + 300.0 - 40.0
    assert seat_height(there) == seat_height(before)
    assert set_values(there, {"seat": "case"}) == before


def test_a_base_that_is_given_with_the_form_is_taken() -> None:
    there = set_values(default_spec(), {"seat": "slab", "base_height": 380.0})
    assert there.number("base_height") == 380.0


def test_undo_brings_the_rest_back() -> None:
    """Numbers that meant nothing meanwhile, and those that had to move."""
    start = set_values(default_spec(), {"partition_count": 3.0, "splay": 12.0})
    history = History(start)
    steps: tuple[dict[str, Value], ...] = (
        {"base": "panel feet"},
        {"seat": "slab"},
        {"seat_boards": 8.0},
        {"depth": 330.0},
        {"seat": "panel bench"},
        {"left_joint": "dovetailed"},
        {"depth": 324.0},
        {"seat": "case"},
    )
    for step in steps:
        history.do(set_values(history.state, step), str(step))
        assert not broken_rules(history.state)
    while history.undo():
        pass
    assert history.state == start


def test_a_panel_bench_keeps_the_base_that_it_does_not_have() -> None:
    case = set_values(default_spec(), {"base": "trestles", "rail_wedge": 6.0})
    there = set_values(case, {"seat": "panel bench"})
    assert there.value("base") == "trestles"
    assert not any(part.kind in ("leg", "stretcher") for part in build(there).parts)
    back = set_values(there, {"seat": "slab"})
    assert back.number("rail_wedge") == 6.0
    assert any(part.kind == "stretcher" for part in build(back).parts)


def test_boards_too_narrow_for_a_seat_become_fewer() -> None:
    """Twelve boards in 360 mm would be 30 mm wide; nine are 40."""
    slab = set_values(default_spec(), {"seat": "slab", "depth": 600.0})
    slab = set_values(slab, {"seat_boards": 12.0})
    case = set_values(set_values(slab, {"seat": "case"}), {"depth": 360.0})
    assert set_values(case, {"seat": "slab"}).count("seat_boards") == 9


@pytest.mark.parametrize("base", BASES)
def test_a_slab_on_every_base(base: str) -> None:
    spec = set_values(set_values(default_spec(), {"seat": "slab"}), {"base": base})
    names = {part.name for part in build(spec).parts}
    assert "seat" in names
    assert "top" not in names


@pytest.mark.parametrize("left", ["mitred", "housed", "dovetailed"])
@pytest.mark.parametrize("right", ["mitred", "housed", "dovetailed"])
def test_ends_of_different_kinds(left: str, right: str) -> None:
    spec = set_values(default_spec(), {"seat": "panel bench"})
    bench = build(set_values(spec, {"left_joint": left, "right_joint": right}))
    kinds = {joint.parts[1]: joint.kind for joint in bench.joints if joint.parts[0] == "seat"}
    words = {"mitred": "mitre", "housed": "stopped housing", "dovetailed": "through dovetail"}
    assert kinds["end_left"] == words[left]
    assert kinds["end_right"] == words[right]


def test_limits_tell_their_reasons() -> None:
    """330 / 40 = 8.25 boards; the ends of 32 keep 100 apart: 300 is the least of all anyway."""
    spec = set_values(default_spec(), {"seat": "panel bench", "depth": 330.0})
    assert limits(spec, "seat_boards").maximum == 8.0
    assert "narrower than {40 mm}" in limits(spec, "seat_boards").why_maximum
    spec = set_values(spec, {"left_joint": "housed"})
    # 1200 - 32 - 32 - 100 = 1036
    assert limits(spec, "left_end_in").maximum == pytest.approx(1036.0)
    # no more than half as thick again as the other board: 40 / 1.5
    assert limits(spec, "end_thickness").minimum == pytest.approx(40.0 / 1.5, abs=1e-6)


@pytest.mark.parametrize("seat", SEATS)
def test_the_smallest_bench_has_every_form(seat: str) -> None:
    plain: dict[str, Value] = {
        "flare": 0.0,
        "left_end": "mitred",
        "right_end": "mitred",
        "partition_count": 0.0,
        "base": "plinth",
    }
    spec = set_values(default_spec(), plain)
    flush = {f"inset_{side}": 0.0 for side in ("left", "right", "back", "front")}
    spec = set_values(spec, {"length": 300.0, "depth": 150.0, "base_height": 60.0, **flush})
    there = set_values(spec, {"seat": seat})
    assert not broken_rules(there)
    assert build(there).parts
