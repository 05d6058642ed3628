"""A spoiled bench for each check, made by one change to a sound one: caught, measured, mended.

Amounts are worked by hand beside each case.  The sound bench is the catalogue's default: boards
of 20 mm, partition of 20 mm, fit 0.2 mm, cutter 12.7 mm.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS, findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

SPOILED: tuple[tuple[str, dict[str, Value], Level, float, float], ...] = (
    # check, change, level, amount, limit
    # 25 mm cutter against 20 + 0.2 = 20.2 mm of housing
    ("housing_cutter", {"cutter_diameter": 25.0}, Level.DO_NOT_CUT, 25.0, 20.2),
    ("round_stop", {"housing_cover": 0.4}, Level.THINK_AGAIN, 0.4, 1.0),
    # no reveal and a cover of 2 mm: the stop lies 2 mm behind the front of the boards
    ("housing_front", {"reveal": 0.0, "housing_cover": 2.0}, Level.THINK_AGAIN, 2.0, 3.0),
    # neither reveal nor cover: the stop lies in the front
    ("housing_front", {"reveal": 0.0, "housing_cover": 0.0}, Level.DO_NOT_CUT, 0.0, 3.0),
    # half of 20 mm
    ("deep_housing", {"housing_depth": 12.0}, Level.THINK_AGAIN, 12.0, 10.0),
    # two thirds of 20 mm
    ("deep_rebate", {"rebate_depth": 15.0}, Level.THINK_AGAIN, 15.0, 40.0 / 3.0),
    # (18 - 18 / 3 - 0.2) / 2 = 5.9 mm
    ("mortise_wall", {"base_thickness": 18.0}, Level.THINK_AGAIN, 5.9, 6.0),
    # 17 / 3 mm
    ("thin_tenon", {"base_thickness": 17.0}, Level.THINK_AGAIN, 17.0 / 3.0, 6.0),
    ("leg_outside", {"inset_left": -30.0}, Level.THINK_AGAIN, 30.0, 0.0),
    # flare 60 over 300 mm height, through 20 mm of board: 4 mm
    ("proud_bevel", {"right_end": "mitred"}, Level.GOOD_TO_KNOW, 4.0, 0.0),
    # flares 60 and 40 over 300 mm height, through 20 mm of board: 4 - 8 / 3 mm
    ("bevel_step", {"deep_end": "both"}, Level.GOOD_TO_KNOW, 4.0 / 3.0, 0.05),
    # both ends inside: 3600 - 20 - (60 + 20) + 2 x 6 - 1 = 3511 mm; the longest sheet is 2500 mm
    ("large_sheet", {"length": 3600.0}, Level.THINK_AGAIN, 3511.0, 2500.0),
    # tips 3600 - 140 = 3460 apart along, 360 - 120 = 240 across: 2 atan(240 / 3460)
    (
        "flat_lap",
        {"length": 3600.0},
        Level.THINK_AGAIN,
        2.0 * math.degrees(math.atan(240.0 / 3460.0)),
        12.0,
    ),
)


def _found(changes: dict[str, Value], check: str) -> list[Finding]:
    bench = build(set_values(default_spec(), changes))
    return [finding for finding in findings(bench) if finding.check == check]


def test_a_sound_bench_has_nothing_to_find() -> None:
    assert findings(build(default_spec())) == ()


@pytest.mark.parametrize(("check", "changes", "level", "amount", "limit"), SPOILED)
def test_a_spoiled_bench_is_caught(
    check: str, changes: dict[str, Value], level: Level, amount: float, limit: float
) -> None:
    found = _found(changes, check)
    assert found, check
    first = found[0]
    assert first.level is level
    assert first.amount == pytest.approx(amount, abs=1e-9)
    assert first.limit == pytest.approx(limit, abs=1e-9)
    bench = build(set_values(default_spec(), changes))
    assert first.parts
    assert set(first.parts) <= {part.name for part in bench.parts}


@pytest.mark.parametrize(("check", "changes"), [(check, changes) for check, changes, *_ in SPOILED])
def test_its_mend_cures_it(check: str, changes: dict[str, Value]) -> None:
    found = _found(changes, check)
    mends = [finding.mend for finding in found if finding.mend]
    if not mends:
        assert check in {"leg_outside", "proud_bevel", "large_sheet", "flat_lap"}
        return
    mended = set_values(set_values(default_spec(), changes), dict(mends[0].values))
    assert not [finding for finding in findings(build(mended)) if finding.check == check]


def test_every_check_says_what_it_is_for() -> None:
    names = [check.name for check in CHECKS]
    assert len(set(names)) == len(names)
    for check in CHECKS:
        assert len(check.about.split()) >= 15, check.name
        assert check.title


def test_two_parts_in_one_place_are_never_cut() -> None:
    """Made by hand: the same bench with one leg moved into its stretcher's neighbour."""
    from dataclasses import replace

    from geometry.primitives.frame import Frame, add

    bench = build(default_spec())
    leg = bench.part("leg_front_left")
    frame = leg.frame
    moved = Frame(add(frame.origin, (0.0, 0.0, 80.0)), frame.x_axis, frame.y_axis, frame.z_axis)
    parts = tuple(
        replace(part, frame=moved) if part.name == leg.name else part for part in bench.parts
    )
    found = findings(replace(bench, parts=parts))
    collisions = [finding for finding in found if finding.check == "collision"]
    assert {"leg_front_left", "bottom"} in [set(finding.parts) for finding in collisions]
    assert all(finding.level is Level.DO_NOT_CUT for finding in collisions)
