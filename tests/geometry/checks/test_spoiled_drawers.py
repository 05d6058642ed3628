"""A spoiled bench for each check of drawers; amounts worked by hand beside each.

The sound bench: 1200 long with partitions of 20 at 400 and 800, case 300 high; two drawers in the
opening 20..390 and one in 810..1120, on side-mounted runners with 12.7 each side and 3 behind.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import drawers
from geometry.bench.limits import set_values
from geometry.checks.all_checks import CHECKS, findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value
from geometry.primitives.frame import Frame, Vec3, add, subtract
from geometry.solids.measure import bounding_box
from geometry.solids.sweeping import SLIDING

PLACES: dict[str, Value] = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
FILLED: dict[str, Value] = {
    "opening_1_fill": "drawers",
    "opening_3_fill": "drawers",
    "opening_1_drawers": 2.0,
}
SOUND = set_values(set_values(default_spec(), PLACES), FILLED)

SPOILED: tuple[tuple[str, dict[str, Value], Level, float, float, bool], ...] = (
    # check, changes, level, amount, limit, whether a mend is offered
    (
        "side_too_thick",  # 18 in runners for 16
        {"runner_kind": "under-mounted", "drawer_side_thickness": 18.0},
        Level.DO_NOT_CUT,
        18.0,
        16.0,
        True,
    ),
    (
        "bottom_too_low",
        {"runner_kind": "under-mounted", "drawer_bottom_up": 10.0},
        Level.DO_NOT_CUT,
        10.0,
        12.7,
        True,
    ),
    ("front_binds", {"drawer_gap": 0.6}, Level.THINK_AGAIN, 0.6, 1.0, True),
    ("deep_bottom_groove", {"drawer_groove_depth": 7.0}, Level.THINK_AGAIN, 7.0, 6.0, True),
    (
        # one opening 20..1120: 1100 - 2 x 0.8 = 1098.4 against 1.5 x (342 - 18 - 6) = 477
        "wide_on_wood",
        {"partition_count": 0.0, "runner_kind": "wooden"},
        Level.THINK_AGAIN,
        1098.4,
        477.0,
        False,
    ),
    # 2 - 0.8: the box is that much wider than its front at each side
    ("box_shows", {"runner_kind": "wooden"}, Level.GOOD_TO_KNOW, 1.2, 0.0, False),
)


def _found(bench: Bench, check: str) -> list[Finding]:
    return [finding for finding in findings(bench) if finding.check == check]


def test_sound_drawers_raise_nothing() -> None:
    assert findings(build(SOUND)) == ()


@pytest.mark.parametrize(("check", "changes", "level", "amount", "limit", "mended"), SPOILED)
def test_a_spoiled_drawer_is_caught_and_mended(
    check: str,
    changes: dict[str, Value],
    level: Level,
    amount: float,
    limit: float,
    mended: bool,
) -> None:
    spec = set_values(SOUND, changes)
    bench = build(spec)
    first = _found(bench, check)[0]
    assert first.level is level
    assert first.amount == pytest.approx(amount, abs=1e-9)
    assert first.limit == pytest.approx(limit, abs=1e-9)
    assert set(first.parts) <= {part.name for part in bench.parts}
    assert (first.mend is not None) is mended
    if first.mend:
        assert not _found(build(set_values(spec, dict(first.mend.values))), check)


def _shifted(bench: Bench, name: str, by: Vec3) -> Bench:
    """The bench with one part somewhere else, as if it had come out another size."""
    frame = bench.part(name).frame
    moved = Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)
    return replace(
        bench,
        parts=tuple(
            replace(part, frame=moved) if part.name == name else part for part in bench.parts
        ),
    )


@pytest.mark.parametrize(
    ("check", "piece", "by", "amount", "limit"),
    [
        # 2 x 12.7 is there by design; 3 too wide leaves 22.4, 2 too narrow 27.4
        ("drawer_too_wide", "side_right", (3.0, 0.0, 0.0), 22.4, 25.4),
        ("drawer_rattles", "side_right", (-2.0, 0.0, 0.0), 27.4, 25.4),
        # 342 - 18 - 300 = 24 behind by design; 22 too long leaves 2
        ("drawer_too_long", "back", (0.0, 22.0, 0.0), 2.0, 3.0),
        ("drawer_too_long", "back", (0.0, 30.0, 0.0), -6.0, 3.0),
    ],
)
def test_a_box_of_another_size_is_measured(
    check: str, piece: str, by: Vec3, amount: float, limit: float
) -> None:
    spoiled = _shifted(build(SOUND), f"drawer_1_2_{piece}", by)
    (found,) = _found(spoiled, check)
    assert found.amount == pytest.approx(amount, abs=1e-9)
    assert found.limit == pytest.approx(limit, abs=1e-9)
    assert "Drawer 2 of opening 1" in found.message
    assert f"drawer_1_2_{piece}" in found.parts


def test_a_front_is_measured_where_its_opening_is_tightest() -> None:
    """The partition at the right of opening 1 turned 1 in 100 about its lower left arris at z 170,
    its head toward the drawers: over the lower front's height, z 172 to 299, it comes 1.29 nearer
    at the top, and 2 - 1.29 are left."""
    sound = build(SOUND)
    first, second = drawers(sound.spec)[:2]
    wall = sound.part(first.opening.right)
    tangent = 1.0 / 100.0
    cosine, sine = math.cos(math.atan(tangent)), math.sin(math.atan(tangent))

    def turned(v: Vec3) -> Vec3:
        return (v[0] * cosine - v[2] * sine, v[1], v[0] * sine + v[2] * cosine)

    pivot = (first.opening.x_right, 0.0, 170.0)
    f = wall.frame
    axes = (turned(axis) for axis in (f.x_axis, f.y_axis, f.z_axis))
    frame = Frame(add(pivot, turned(subtract(f.origin, pivot))), *axes)
    parts = tuple(replace(p, frame=frame) if p is wall else p for p in sound.parts)
    (check,) = (one for one in CHECKS if one.name == "front_tight")
    assert not list(check.run(sound))
    found = {one.parts: one for one in check.run(replace(sound, parts=parts))}
    one = found[(f"{second.name}_front", wall.name)]
    assert (one.check, one.level, one.limit) == ("front_tight", Level.THINK_AGAIN, 1.0)
    assert (second.z_low, second.z_high) == pytest.approx((172.0, 299.0))
    # A band as wide as two chords of an arc is left off each edge.
    left_off = SLIDING * tangent + 1e-6
    assert one.amount == pytest.approx(2.0 - (299.0 - 170.0) * tangent, abs=left_off)
    assert one.place is not None
    assert one.place[0] == pytest.approx(first.opening.x_right - 1.29, abs=left_off)
    assert "at its right" in one.message


@pytest.mark.parametrize(
    ("by", "side", "amount"),
    [
        ((1.4, 0.0, 0.0), "at its right", 0.6),
        ((-1.6, 0.0, 0.0), "at its left", 0.4),
        ((0.0, 0.0, -1.3), "below it", 0.7),
        ((0.0, 0.0, 1.1), "above it", 0.9),
    ],
)
def test_a_front_out_of_its_place_is_measured_at_each_side(
    by: Vec3, side: str, amount: float
) -> None:
    """Gaps of 2 all round, the other front above it."""
    spoiled = _shifted(build(SOUND), "drawer_1_2_front", by)
    found = {one.parts[0]: one for one in _found(spoiled, "front_tight")}
    one = found["drawer_1_2_front"]
    assert one.amount == pytest.approx(amount, abs=1e-6)
    assert side in one.message


def test_a_box_is_measured_where_its_opening_is_tightest() -> None:
    """A partition turned 1 in 200 about its front arris, its back toward the drawers at its left:
    it comes nearest at the back end of their boxes, by a 200th of the way there."""
    sound = build(SOUND)
    first = drawers(sound.spec)[0]
    opening = first.opening
    wall = sound.part(opening.right)
    turn = math.atan(1.0 / 200.0)
    cosine, sine = math.cos(turn), math.sin(turn)

    def turned(v: Vec3) -> Vec3:
        return (v[0] * cosine - v[1] * sine, v[0] * sine + v[1] * cosine, v[2])

    pivot = (opening.x_right, -opening.front, 0.0)
    f = wall.frame
    origin = add(pivot, turned(subtract(f.origin, pivot)))
    aslant = replace(wall, frame=Frame(origin, turned(f.x_axis), turned(f.y_axis), f.z_axis))
    aslant = replace(aslant, frame=replace(aslant.frame, z_axis=turned(f.z_axis)))
    parts = tuple(aslant if part is wall else part for part in sound.parts)
    spoiled = replace(sound, parts=parts)
    (check,) = (one for one in CHECKS if one.name == "drawer_clearance")
    assert not list(check.run(sound))
    found = [one for one in check.run(spoiled) if f"{first.name}_back" in one.parts]
    assert [one.check for one in found] == ["drawer_too_wide"]
    (one,) = found
    back_end = bounding_box(sound.part(f"{first.name}_side_left"))[1][1]
    nearer = (back_end + opening.front) * math.tan(turn)
    assert one.limit is not None
    assert one.amount == pytest.approx(one.limit - nearer, abs=1e-3)
    assert one.place is not None
    assert one.place[0] == pytest.approx(opening.x_right - nearer, abs=1e-3)
    assert one.place[1] == pytest.approx(back_end, abs=2.5)
