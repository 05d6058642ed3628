"""A spoiled slab or panel bench for each check, made by one change to a sound one: caught,
measured, mended.

Amounts are worked by hand beside each case.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec

CUT, THINK, KNOW = Level.DO_NOT_CUT, Level.THINK_AGAIN, Level.GOOD_TO_KNOW

SLAB: dict[str, Value] = {"seat": "slab", "base": "panel feet"}
PANELS: dict[str, Value] = {"seat": "panel bench"}
HOUSED: dict[str, Value] = {**PANELS, "left_joint": "housed", "right_joint": "housed"}
TAILED: dict[str, Value] = {**PANELS, "left_joint": "dovetailed", "timber": "Sitka spruce"}


SPOILED: tuple[tuple[dict[str, Value], str, dict[str, Value], Level, float, float, str], ...] = (
    # bench, check, change, level, amount, limit, part
    (SLAB, "wide_seat_board", {"seat_boards": 1.0}, THINK, 360.0, 200.0, "seat"),
    # an end of 32 mm and 0.2 mm of fit
    (HOUSED, "end_cutter", {"cutter_diameter": 35.0}, CUT, 35.0, 32.2, "end_left"),
    (HOUSED, "deep_end_housing", {"housing_depth": 21.0}, THINK, 21.0, 20.0, "seat"),
    (PANELS, "thin_rail_tenon", {"seat_rail_tenon": 5.0}, THINK, 5.0, 6.0, "rail"),
    # 7 over 32 mm of end, against 1 in 5
    (
        PANELS,
        "steep_wedge",
        {"seat_rail_wedge": 7.0},
        THINK,
        math.degrees(math.atan(7.0 / 32.0)),
        math.degrees(math.atan(0.2)),
        "wedge_right_lower",
    ),
    (
        {**PANELS, "seat_rail_joint": "stub tenon"},
        "short_stub_tenon",
        {"seat_rail_in": 12.0},
        THINK,
        12.0,
        16.0,
        "rail",
    ),
    # atan(1/8) = 7.125 and atan(1/6) = 9.462 degrees
    (
        {**TAILED, "tail_slope": "1:6"},
        "seat_tail_slope",
        {"tail_slope": "1:8"},
        KNOW,
        7.125016,
        9.462322,
        "seat",
    ),
)


def bench_of(*steps: dict[str, Value]) -> BenchSpec:
    spec = set_values(default_spec(), {"flare": 0.0})
    for step in steps:
        for name, value in step.items():
            spec = set_values(spec, {name: value})
    return spec


def of_check(bench: Bench, check: str) -> list[Finding]:
    return [finding for finding in findings(bench) if finding.check == check]


@pytest.mark.parametrize(
    ("sound", "check", "change", "level", "amount", "limit", "part"),
    SPOILED,
    ids=[f"{row[1]}-{row[0]['seat']}" for row in SPOILED],
)
def test_spoiled_seat(
    sound: dict[str, Value],
    check: str,
    change: dict[str, Value],
    level: Level,
    amount: float,
    limit: float,
    part: str,
) -> None:
    assert not of_check(build(bench_of(sound)), check)
    spoiled = bench_of(sound, change)
    (finding,) = of_check(build(spoiled), check)
    assert finding.level is level
    assert finding.amount == pytest.approx(amount, abs=1e-5)
    assert finding.limit == pytest.approx(limit, abs=1e-5)
    assert part in finding.parts
    if finding.mend is not None:
        mended = set_values(spoiled, dict(finding.mend.values))
        assert not of_check(build(mended), check)
