"""A spoiled base for each check, made by one change to a sound one: caught, measured, mended.

Amounts are worked by hand beside each case, from the catalogue's default bench on each base.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec

THINK, KNOW = Level.THINK_AGAIN, Level.GOOD_TO_KNOW
UPRIGHT: dict[str, Value] = {"splay": 0.0, "rake": 0.0}
ROUND: dict[str, Value] = {"leg_joint": "round tenons"}


def tan(degrees: float) -> float:
    return math.tan(math.radians(degrees))


def slope(share: float) -> float:
    return math.degrees(math.atan(share))


SPOILED: tuple[tuple[str, str, dict[str, Value], Level, float, float, str], ...] = (
    # base, check, change, level, amount, limit, part
    ("panel feet", "thin_rail_tenon", {"panel_tenon_thickness": 5.0}, THINK, 5.0, 6.0, "rail"),
    # 9 over 40 mm of stretcher, against 1 in 5
    (
        "trestles",
        "steep_wedge",
        {"rail_wedge": 9.0},
        THINK,
        slope(9 / 40),
        slope(0.2),
        "wedge_left_back",
    ),
    # 7 over 30 mm of panel
    (
        "panel feet",
        "steep_wedge",
        {"panel_wedge": 7.0, "panel_rail_down": 20.0},
        THINK,
        slope(7 / 30),
        slope(0.2),
        "wedge_right_lower",
    ),
    # half of 60 mm
    ("trestles", "tall_rail_mortise", {"rail_tenon_height": 31.0}, THINK, 31, 30, "stretcher_left"),
    ("plinth", "leg_outside", {"inset_front": -12.0}, THINK, 12.0, 0.0, "plinth_front"),
    ("panel feet", "leg_outside", {"inset_right": -8.0}, THINK, 8.0, 0.0, "panel_foot_right"),
    ("trestles", "leg_outside", {"inset_left": -9.0}, THINK, 9.0, 0.0, "leg_back_left"),
    ("four legs", "leg_outside", {"inset_left": -5.0}, THINK, 5.0, 0.0, "leg_back_left"),
    # 300 x tan 15 - 70 = 10.385 at the ends, 300 x tan 8 - 40 = 2.162 at the edges
    (
        "four legs",
        "foot_beyond",
        {"base_height": 300.0},
        KNOW,
        300 * tan(15) - 70,
        0.0,
        "leg_front_right",
    ),
    # upright legs: (22 - 10) / 2 less half the fit
    (
        "four legs",
        "apron_wall",
        {**UPRIGHT, "apron_reveal": 0.0, "apron_tenon": 10.0},
        THINK,
        5.9,
        6.0,
        "leg_front_left",
    ),
    ("four legs", "apron_tenon_thin", {"apron_tenon": 5.0}, THINK, 5.0, 6.0, "apron_left"),
    # the case's bottom is 20 mm
    (
        "four legs",
        "short_round_tenon",
        {**ROUND, "leg_tenon": 25.0},
        THINK,
        20,
        25,
        "leg_back_left",
    ),
)

WITHOUT_MEND = {"leg_outside", "apron_wall"}


def spoiled(base: str, changes: dict[str, Value]) -> BenchSpec:
    """The default bench on a base, then the changes, one after another."""
    spec = set_values(default_spec(), {"base": base})
    for name, value in changes.items():
        spec = set_values(spec, {name: value})
    return spec


def _grave(spec: BenchSpec) -> list[Finding]:
    """What is more than good to know."""
    return [one for one in findings(build(spec)) if one.level is not Level.GOOD_TO_KNOW]


@pytest.mark.parametrize("base", ["trestles", "four legs", "plinth", "panel feet"])
def test_a_sound_base_has_nothing_to_find(base: str) -> None:
    assert _grave(spoiled(base, {})) == []


def test_round_tenons_in_a_thick_board_have_nothing_to_find() -> None:
    assert _grave(spoiled("four legs", {"board_thickness": 28.0, **ROUND})) == []


@pytest.mark.parametrize(
    ("base", "check", "changes", "level", "amount", "limit", "part"),
    SPOILED,
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_spoiled_base_is_caught_and_mended(
    base: str,
    check: str,
    changes: dict[str, Value],
    level: Level,
    amount: float,
    limit: float,
    part: str,
) -> None:
    spec = spoiled(base, changes)
    bench = build(spec)
    found = [one for one in findings(bench) if one.check == check]
    assert found, check
    first = found[0]
    assert first.level is level
    assert first.amount == pytest.approx(amount, abs=1e-9)
    assert first.limit == pytest.approx(limit, abs=1e-9)
    named = {name for one in found for name in one.parts}
    assert part in named <= {piece.name for piece in bench.parts}
    if first.mend is None:
        assert check in WITHOUT_MEND
        return
    mended = build(set_values(spec, dict(first.mend.values)))
    assert not [one for one in findings(mended) if one.check == check]


def test_alike_feet_of_turned_legs_stand_out_alike() -> None:
    """Base 300 high, splay 15, rake 8, axes 95 and 40 in: by hand the axis of each foot stands
    300 tan 8 - 40 = 2.16 out in front or behind and well in at the ends.  Of its section, 30
    square, half the width runs across the lean and half / cos 16.83 = 15.67 along it, which is
    27.68 from the length: 2.16 + 15.67 x 0.4645 + 15 x 0.8856 = 22.72, near enough as it tapers.
    """
    alike: dict[str, Value] = {"inset_left": 95.0, "inset_right": 95.0, "base_height": 300.0}
    spec = spoiled("four legs", {**ROUND, "leg_turn": "on the sightline", **alike})
    found = [one for one in findings(build(spec)) if one.check == "foot_beyond"]
    legs = [f"leg_{fore}_{side}" for fore in ("back", "front") for side in ("left", "right")]
    assert [one.parts for one in found] == [(leg,) for leg in legs]
    amounts = [one.amount for one in found]
    assert amounts == pytest.approx([amounts[0]] * 4, abs=1e-6)
    assert amounts[0] == pytest.approx(22.72, abs=0.3)
