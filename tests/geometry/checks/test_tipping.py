"""Tipping, balanced by hand: at an overhang, forward over the feet, with drawers open.

The load and its place are those of ISO 7174-1:1988, 7.1.1 (600 N, 50 mm in from the seat's edge),
in a page that quotes it; the balance is of moments about an edge of the feet's outline.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
import trimesh

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import judged
from geometry.checks.balance import places
from geometry.design.brief import PERSON, Brief
from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed
from shared.materials import density_of
from shared.seating import GRAVITY
from shared.units import SHOWN_MM, in_units
from tests.samples import found, spoiled

HOUSED: dict[str, Value] = {
    "seat": "panel bench",
    "left_joint": "housed",
    "right_joint": "housed",
}
FEET = 40.0  # mm: a plinth stands so far in


def bench_of(*steps: dict[str, Value]) -> BenchSpec:
    spec = set_values(default_spec(), {"flare": 0.0, "chamfer": 0.0})
    for step in steps:
        for name, value in step.items():
            spec = set_values(spec, {name: value})
    return spec


def told(bench: Bench, check: str, judging: Judging | None = None) -> list[Finding]:
    return [one for one in judged(bench, judging or Judging(), bench.brief) if one.check == check]


def weighed(bench: Bench, start: str = "") -> tuple[float, float, float]:
    """N, and the moments about x = 0 and y = 0, of parts by another library."""
    force, about_x, about_y = 0.0, 0.0, 0.0
    for part in bench.parts:
        if not part.name.startswith(start):
            continue
        solid = placed(part)
        mesh = trimesh.Trimesh(solid.vertices, solid.solid.triangles, process=False)
        one = mesh.volume * 1e-9 * density_of(part.material) * GRAVITY
        force += one
        about_x += one * mesh.center_mass[0]
        about_y += one * mesh.center_mass[1]
    return force, about_x, about_y


def test_an_overhang_at_an_end() -> None:
    """On a bench that is alike at both ends but for where the right end stands, its outside at 650:
    the load at 950 is 300 outside it.

    White oak of 0.68 x 1000 x 1.12 = 761.6 kg/m3; the ends are straight, the rail stub tenoned.
    """
    changes: dict[str, Value] = {
        "length": 1000.0,
        "depth": 300.0,
        "base_height": 400.0,
        "seat_thickness": 30.0,
        "end_thickness": 30.0,
        "end_relief": 0.0,
        "end_reveal": 0.0,
        "housing_depth": 8.0,
        "housing_fit": 0.0,
        "seat_rail_joint": "housed",
        "seat_rail_down": 20.0,
        "seat_rail_height": 50.0,
        "seat_rail_thickness": 20.0,
        "seat_rail_in": 10.0,
        "seat_rail_back": 100.0,
        "right_end_in": 350.0,
        "left_end_in": 50.0,
    }
    bench = build(bench_of(HOUSED, changes))
    kilo = GRAVITY * 761.6e-9
    # Each piece by volume and middle; notches and housings of the ends are what the notches leave:
    # the housings take off the seat what the tongues fill but for the round at the stop,
    # the mortise for the rail takes off each end's inside.
    tongue = 300.0 - 4.0 - 6.35  # of depth, less the cover and the round
    notch = 8.0 * (300.0 - tongue) * 30.0
    area = 30.0 * (296.0 - 6.35) + 6.35 * 30.0 - (2.0 - math.pi / 2.0) * 6.35**2
    pieces = [(1000.0 * 300.0 * 30.0, 500.0), (560.0 * 50.0 * 20.0, 350.0)]
    for middle, inward in ((65.0, 1.0), (635.0, -1.0)):
        pieces.append((-8.0 * area, middle))
        pieces.append((408.0 * 300.0 * 30.0 - notch, middle))
        pieces.append((-50.0 * 20.0 * 10.0, middle + inward * 10.0))
    weight = kilo * sum(volume for volume, _ in pieces)
    centre = kilo * sum(volume * x for volume, x in pieces) / weight
    (finding,) = told(bench, "sitter_tips_right")
    assert finding.level is Level.THINK_AGAIN
    assert finding.estimate
    assert finding.parts == ("seat",)
    # The housings' fit of the rail widens its mortise by 0.2 mm: less than a gram.
    assert finding.amount == pytest.approx(weight * (650.0 - centre) / 300.0, abs=0.01)
    assert (finding.limit, finding.unit) == (600.0, "N")
    assert finding.place is not None
    assert (finding.place[0], finding.place[2]) == pytest.approx((950.0, 430.0))
    assert finding.mend is not None
    assert not told(build(set_values(bench.spec, dict(finding.mend.values))), "sitter_tips_right")


def test_a_plinth_set_too_far_back() -> None:
    """Plain, 1200 x 360, the plinth's front 150 in, at y = -210: the load at -310 is 100 outside,
    and the bench's own weight acts at G."""
    bench = build(bench_of({"base": "plinth", "inset_front": 150.0}))
    force, _, about_y = weighed(bench)
    held = force * (210.0 + about_y / force)
    (finding,) = told(bench, "sitter_tips_front")
    assert finding.level is Level.THINK_AGAIN
    assert finding.amount == pytest.approx(held / 100.0, rel=1e-9)
    assert finding.amount < 600.0
    assert finding.mend is not None
    assert not told(build(set_values(bench.spec, dict(finding.mend.values))), "sitter_tips_front")


def test_the_level_push_is_the_makers_to_set() -> None:
    """20 N at a seat 450 high take 9 N m off what holds the bench."""
    bench = build(bench_of({"base": "plinth", "inset_front": 150.0}))
    (still,) = told(bench, "sitter_tips_front")
    (pushed,) = told(bench, "sitter_tips_front", Judging().with_limit("sitter_pushes", 20.0))
    assert still.amount is not None
    assert pushed.amount == pytest.approx(still.amount - 9000.0 / 100.0, rel=1e-9)


def test_one_that_falls_by_itself_is_told_so() -> None:
    """The right end's outside at x = 1200 - 750, and the bench's own weight beyond it: nobody need
    sit down.  Where the weight holds it, but not a push, the push is named."""
    ends: dict[str, Value] = {"length": 1200.0, "left_end_in": 20.0, "right_end_in": 750.0}
    bench = build(bench_of(HOUSED, ends))
    force, about_x, _ = weighed(bench)
    held = force * 450.0 - about_x
    assert held < 0.0
    (finding,) = told(bench, "sitter_tips_right")
    assert finding.amount == 0.0
    assert "falls by itself" in finding.message
    assert f"with {-held / 1000.0:.1f} N m" in in_units(finding.message, SHOWN_MM)
    stands = build(bench_of({"base": "plinth", "inset_front": 150.0}))
    force, _, about_y = weighed(stands)
    push = (force * 210.0 + about_y) / 450.0 + 1.0
    (pushed,) = told(stands, "sitter_tips_front", Judging().with_limit("sitter_pushes", push))
    assert pushed.message.startswith("A push at the seat tips the bench")


def test_the_heaviest_of_the_brief_sits_down() -> None:
    """Feet 75 in: the load is 25 outside.  Held by more than 600 N, by less than 130 kg."""
    bench = build(bench_of({"base": "plinth", "inset_front": 75.0}))
    force, _, about_y = weighed(bench)
    most = force * (285.0 + about_y / force) / 25.0
    assert 600.0 < most < 130.0 * GRAVITY
    assert not told(bench, "sitter_tips_front")
    heavy = replace(bench, brief=Brief(who=PERSON, weight=130.0))
    (finding,) = told(heavy, "sitter_tips_front")
    assert finding.amount == pytest.approx(most, rel=1e-9)
    assert finding.limit == pytest.approx(130.0 * GRAVITY)


def test_a_flare_is_taken_back_where_feet_cannot_come_farther() -> None:
    """Feet flush in front, a flare of 200: its corner's load at 360 + 200 - 50 is 150 outside."""
    spec = bench_of({"base": "plinth", "inset_front": 0.0}, {"flare": 200.0})
    bench = build(spec)
    force, _, about_y = weighed(bench)
    (finding,) = told(bench, "sitter_tips_front")
    assert finding.amount == pytest.approx(force * (360.0 + about_y / force) / 150.0, rel=1e-9)
    assert finding.mend is not None
    assert [name for name, _ in finding.mend.values] == ["flare"]
    assert not told(build(set_values(spec, dict(finding.mend.values))), "sitter_tips_front")


def test_nobody_sits_behind_a_back_rest() -> None:
    """The fronts of its posts come out of the seat at y = -70."""
    rest: dict[str, Value] = {
        "back_rest": "slats",
        "post_fixing": "tenoned into the seat",
        "rest_set_back": 5.0,
    }
    slab: tuple[dict[str, Value], ...] = ({"seat": "slab"}, {"base": "plinth"})
    free, backed = build(bench_of(*slab)), build(bench_of(*slab, {"seat_thickness": 45.0}, rest))
    posts = [placed(part) for part in backed.parts if part.kind == "post"]
    assert min(float(post.low[1]) for post in posts) == pytest.approx(-70.0)
    assert max(y for _, y in places(free)) == pytest.approx(-50.0)
    assert max(y for _, y in places(backed)) == pytest.approx(-70.0 - 50.0)


DRAWERS: tuple[dict[str, Value], ...] = (
    {"partition_count": 2.0},
    {"partition_1": 400.0, "partition_2": 800.0},
    {"opening_1_fill": "drawers", "opening_3_fill": "drawers"},
    {"base": "plinth"},
)


def _turned(bench: Bench, name: str, edge: float) -> float:
    """N mm that a full drawer turns the bench forward by about y = edge, opened by all of its 300:
    its own weight and what is in it, moved; inside are 0.33 kg in each litre."""
    own, _, _ = weighed(bench, f"{name}_")
    low = min(placed(p).low[0] for p in bench.parts if p.name.startswith(f"{name}_side"))
    high = max(placed(p).high[0] for p in bench.parts if p.name.startswith(f"{name}_side"))
    # Boxes 300 long from y = -330, 246 high, sides 12, ends 14, the bottom's upper side 19.1 up.
    litres = (high - low - 24.0) * (300.0 - 28.0) * (246.0 - 19.1) * 1e-6
    load = litres * 0.33 * GRAVITY
    return own * 300.0 + load * -(-330.0 + 150.0 - 300.0 - edge)


@pytest.mark.parametrize("inset", [FEET, 110.0])
def test_one_drawer_open_and_a_hand_on_it(inset: float) -> None:
    """The front edge of the feet at y = -360 + inset; the open front's face at -348 - 300, where
    50 N lean.  With the feet 40 in the bench stands, just; 110 in it tips."""
    bench = build(bench_of(*DRAWERS, {"inset_front": inset}))
    edge = -360.0 + inset
    force, _, about_y = weighed(bench)
    held = force * (about_y / force - edge) - _turned(bench, "drawer_1_1", edge)
    turns = 50.0 * (edge + 648.0)
    found = told(bench, "drawer_tips")
    assert bool(found) is bool(held < turns)
    assert bool(found) is (inset > FEET)
    if found:
        first = found[0]
        assert first.parts == ("drawer_1_1_front",)
        assert first.level is Level.THINK_AGAIN
        assert first.amount == pytest.approx(held / 1000.0, rel=1e-9)
        assert first.limit == pytest.approx(turns / 1000.0, rel=1e-9)
        assert first.unit == "N m"
        assert first.mend is not None
        assert not told(build(set_values(bench.spec, dict(first.mend.values))), "drawer_tips")
        # Feet farther forward by d hold with d times all that weighs, and take d off the hand's
        # arm; a millimetre to spare, to the whole one, and a few for what moves along with them.
        own, _, _ = weighed(bench, "drawer_1_1_")
        load = (_turned(bench, "drawer_1_1", 0.0) - own * 300.0) / 480.0
        forward = (turns - held) / (force + load + 50.0) + 1.0
        ((name, value),) = first.mend.values
        assert name == "inset_front"
        assert math.floor(inset - forward) - 5.0 <= float(value) <= math.floor(inset - forward)


def test_all_drawers_open_at_once() -> None:
    """Both open and full tip the bench by themselves, where each alone does not: good to know."""
    bench = build(bench_of(*DRAWERS, {"inset_front": 80.0}))
    force, _, about_y = weighed(bench)
    held = force * (about_y / force + 280.0)
    held -= _turned(bench, "drawer_1_1", -280.0) + _turned(bench, "drawer_3_1", -280.0)
    none = Judging().with_limit("hand_on_drawer", 0.0)
    assert not told(bench, "drawer_tips", none)
    (found,) = told(bench, "all_drawers_tip", none)
    assert found.level is Level.GOOD_TO_KNOW
    assert held < 0.0
    assert found.amount == pytest.approx(held / 1000.0, rel=1e-9)
    assert found.parts == ("drawer_1_1_front", "drawer_3_1_front")


def test_a_bench_on_the_point_of_tipping_is_told_no_nought() -> None:
    """With its drawers open the centre of all weights of this one stands over its front feet to
    within half a newton metre."""
    bench = spoiled("boat_club", {"length": 1615.0})
    (one,) = found(bench, "all_drawers_tip")
    assert one.amount is not None
    assert -0.5 < one.amount <= 0.0
    assert "N m" not in one.message
    assert "stands right over its front feet" in one.message
