"""Drawers that cannot be opened, put in or shut, that rub or are too heavy: by hand beside each.

The sound bench is that of ``test_spoiled_drawers``: fronts 18 thick from y = -330 to -348, drawers
1 and 2 of opening 1 at x 22..388 (the first at z 301..428), the one of opening 3 at 812..1118 and
z 172..428; boxes 300 long, so 318 with the front, ending at y = -30; the top's underside at 430.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import judged
from geometry.checks.drawer_motion import aside
from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging
from geometry.design.parameter import Value
from geometry.primitives.frame import Frame, Vec3, add
from geometry.solids.cutting import placed
from shared.materials import density_of

PLACES: dict[str, Value] = {"partition_count": 2.0, "partition_1": 400.0, "partition_2": 800.0}
FILLED: dict[str, Value] = {
    "opening_1_fill": "drawers",
    "opening_3_fill": "drawers",
    "opening_1_drawers": 2.0,
}
SOUND = set_values(set_values(default_spec(), PLACES), FILLED)
OTHER_FRONT = "drawer_3_1_front"
ASIDE = -(812.0 - 22.0)


def spoiled(changes: dict[str, Value], name: str, by: Vec3) -> Bench:
    """The sound bench with one change, and one part somewhere else, as it may come out in wood."""
    bench = build(set_values(SOUND, changes))
    frame = bench.part(name).frame
    moved = Frame(add(frame.origin, by), frame.x_axis, frame.y_axis, frame.z_axis)
    parts = tuple(replace(p, frame=moved) if p.name == name else p for p in bench.parts)
    return replace(bench, parts=parts)


def found(bench: Bench, check: str, judging: Judging | None = None) -> list[Finding]:
    return [one for one in judged(bench, judging or Judging()) if one.check == check]


CASES: tuple[tuple[str, dict[str, Value], str, Vec3, float, float, tuple[str, str]], ...] = (
    # check, change, what is moved and by how much, amount, limit, the piece and what is in its way
    (  # A neighbour's front 50 in front of this one's: 50 - 18 are left
        "drawer_blocked",
        {},
        OTHER_FRONT,
        (ASIDE, -50.0, 0.0),
        32.0,
        300.0,
        ("drawer_1_1_front", OTHER_FRONT),
    ),
    (  # The top 10 lower and 430 farther out, over the fronts: 430 - 348
        "drawer_blocked",
        {},
        "top",
        (0.0, -430.0, -10.0),
        82.0,
        300.0,
        ("drawer_1_1_front", "top"),
    ),
    (  # The same front 278 in front: beyond three quarters of 300, not beyond 318
        "drawer_shut_in",
        {"runner_travel": 75.0},
        OTHER_FRONT,
        (ASIDE, -278.0, 0.0),
        260.0,
        318.0,
        ("drawer_1_1_front", OTHER_FRONT),
    ),
    (  # The other box's back (y -44 to -30) 2 behind this one's, which needs 3
        "drawer_hits",
        {},
        "drawer_3_1_back",
        (-790.0, 16.0, 0.0),
        2.0,
        3.0,
        ("drawer_1_1_back", "drawer_3_1_back"),
    ),
    (  # The side's top edge at 306 + 117 = 423, raised by 4: 430 - 427
        "drawer_too_tall",
        {},
        "drawer_1_1_side_left",
        (0.0, 0.0, 4.0),
        3.0,
        6.0,
        ("drawer_1_1_side_left", "top"),
    ),
)


@pytest.mark.parametrize(("check", "change", "name", "by", "amount", "limit", "parts"), CASES)
def test_what_is_in_a_drawers_way_is_caught_and_measured(
    check: str,
    change: dict[str, Value],
    name: str,
    by: Vec3,
    amount: float,
    limit: float,
    parts: tuple[str, str],
) -> None:
    bench = spoiled(change, name, by)
    first = found(bench, check)[0]
    assert first.level is Level.DO_NOT_CUT
    assert first.amount == pytest.approx(amount, abs=1e-6)
    assert first.limit == pytest.approx(limit, abs=1e-6)
    assert first.parts == parts
    assert first.place is not None
    low, high = placed(bench.part(parts[1])).low, placed(bench.part(parts[1])).high
    assert (low - 1e-6 <= first.place).all()
    assert (first.place <= high + 1e-6).all()


def test_a_part_beside_the_way_is_in_nobodys() -> None:
    """The other front 50 in front and over the gap of 2 above this drawer: it goes free."""
    bench = spoiled({}, OTHER_FRONT, (ASIDE, -50.0, 428.0 - 172.0 + 1.0))
    assert not found(bench, "drawer_blocked")


def test_a_front_beside_a_flared_end_rubs_when_pulled_askew() -> None:
    """Wooden runners with 0.8 of play, boxes 318 long, gaps of 1.2: at z = 428.8 the end stands
    360 + 60 x 278.8 / 300 = 415.76 out, 85.76 in front of the box.  Turned by 1.6 in the 232.24
    that are still held, the front moves 0.8 + 85.76 x 1.6 / 232.24 = 1.3908; gaps of 2 are enough.
    """
    wooden = set_values(SOUND, {"runner_kind": "wooden"})
    assert not found(build(wooden), "front_rubs")
    tight = set_values(wooden, {"drawer_gap": 1.2})
    (one,) = found(build(tight), "front_rubs")
    assert one.level is Level.THINK_AGAIN
    assert one.amount == pytest.approx(0.8 + 85.76 * 1.6 / 232.24, abs=1e-9)
    assert one.limit == pytest.approx(1.2)
    assert one.parts == ("drawer_1_1_front", "end_panel_left")
    assert one.mend is not None
    assert dict(one.mend.values) == {"drawer_gap": 1.4}
    assert not found(build(set_values(tight, dict(one.mend.values))), "front_rubs")


def test_play_alone_moves_a_shut_front_and_doubles_half_way_out() -> None:
    """Out by half its length a box is held over the other half: p + 2 p."""
    assert aside(0.8, 300.0, 0.0) == pytest.approx(0.8)
    assert aside(0.8, 300.0, 150.0) == pytest.approx(3 * 0.8)


def test_a_full_drawer_overloads_a_weak_runner() -> None:
    """Of opening 3: a box 284.6 x 246 x 300 with sides 12, ends 14 and a bottom 6.4 that lies 12.7
    up holds 260.6 x 272 x 226.9 mm = 16.08 litres, 5.31 kg at 0.33 kg each; the drawer's
    own weight by trimesh's volumes."""
    spec = set_values(SOUND, {"runner_load": 8.0})
    bench = build(spec)
    own = 0.0
    for part in bench.parts:
        if part.name.startswith("drawer_3_1_"):
            solid = placed(part)
            mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
            own += mesh.volume * 1e-9 * density_of(part.material)
    (one,) = found(bench, "runner_overloaded")
    assert one.level is Level.THINK_AGAIN
    assert one.estimate
    assert one.amount == pytest.approx(260.6 * 272.0 * 226.9 * 0.33e-6 + own, rel=1e-9)
    assert (one.limit, one.unit) == (8.0, "kg")
    assert one.mend is not None
    assert dict(one.mend.values) == {"runner_load": 10.0}
    assert not found(build(set_values(spec, dict(one.mend.values))), "runner_overloaded")
    empty = Judging().with_limit("drawer_fill", 0.0)
    assert not found(bench, "runner_overloaded", empty)
