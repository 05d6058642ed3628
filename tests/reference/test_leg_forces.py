"""Legs, columns and joints against finite elements, finite differences, sums and hand balances."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.design.brief import NO_BRIEF
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed
from geometry.strength.column import column_stress, euler_load, pressed_and_bent
from geometry.strength.joints import opened_glue
from geometry.strength.legs import Leg, greatest_forces, leg_stress, legs, moment_at_joint
from geometry.strength.loads import Case, loads_of
from shared.timber_strength import STRENGTH, from_gravity
from tests.judges.frame import Frame

LOADS = loads_of(NO_BRIEF, single=1112.0, sitter=1079.0, room=500.0)
ONE = Case("one", 1000.0, (0.0,), 0.0)


def _spec(changes: dict[str, Value]) -> BenchSpec:
    spec = set_values(default_spec(), {"flare": 0.0})
    for name, value in changes.items():
        spec = set_values(spec, {name: value})
    return spec


BASES: tuple[dict[str, Value], ...] = (
    {"base": "trestles", "splay": 20.0},
    {"base": "crossed stretchers", "splay": 10.0, "taper_side": "outside"},
    {"base": "four legs", "base_height": 350.0, "splay": 14.0, "rake": 9.0},
    {
        "base": "four legs",
        "base_height": 350.0,
        "leg_joint": "round tenons",
        "leg_turn": "on the sightline",
    },
)


@pytest.mark.parametrize("changes", BASES)
def test_feet_stand_where_those_of_the_solids_do(changes: dict[str, Value]) -> None:
    """The middle of each leg's corners on the floor; a tapered foot cut level is a little off."""
    spec = _spec(changes)
    bench = build(spec)
    for leg in legs(spec):
        corners = placed(bench.part(leg.part)).vertices
        foot = corners[corners[:, 2] < 0.5, :2]
        middle = (foot.min(axis=0) + foot.max(axis=0)) / 2.0
        assert leg.foot == pytest.approx(tuple(middle), abs=1.0)


@pytest.mark.parametrize("grip", [0.0, 0.15])
@pytest.mark.parametrize("changes", BASES[:2])
def test_the_moment_in_a_joint_is_that_of_a_frame(changes: dict[str, Value], grip: float) -> None:
    """Two legs and a stiff rail between them, a load in its middle, the feet free to slide but for
    the floor's grip, which never pushes farther than back: bars along the middles of sections."""
    leg = legs(_spec(changes))[0]
    out, high = leg.outs[-1][0], leg.heights[-1]
    frame = Frame(
        [(-400.0 - out, 0.0), (-400.0, high), (0.0, high), (400.0, high), (400.0 + out, 0.0)]
    )
    for node in range(4):
        frame.bar(node, node + 1, 5e9)
    force = 900.0
    held = min(grip, abs(out) / high) * force
    frame.push(2, 0.0, -2.0 * force)
    frame.push(0, math.copysign(held, out), 0.0)
    frame.push(4, -math.copysign(held, out), 0.0)
    frame.hold(0, 1)
    frame.hold(4, 1)
    frame.hold(2, 0)
    ends = frame.ends(0, frame.solve())
    moment, across = moment_at_joint(leg, force, grip)
    assert across == 0.0
    assert moment == pytest.approx(abs(ends[5]), rel=1e-6, abs=0.1)


def test_forces_on_legs_by_a_hand_balance() -> None:
    """Two persons at the left end in front, on four upright legs: moments about the right legs and
    about the back ones.

    Legs of 45 mm, 70 mm in at the ends, 40 in front and behind: outer arrises at 70 and 1130, -40
    and -320; middles of feet of 45 mm 22.5 mm inside: 92.5 and 1107.5, -62.5 and -297.5.  Persons
    of 1079 N at 150 and 650, their middles 100 mm behind the front edge, at -260.
    """
    spec = _spec({"base": "four legs", "splay": 0.0, "rake": 0.0, "leg_foot": 45.0})
    force, case = greatest_forces(spec, LOADS, 200.0)["leg_front_left"]
    along = (1107.5 - 150.0) / 1015.0 + (1107.5 - 650.0) / 1015.0
    across = (260.0 - 62.5) / 235.0
    assert force == pytest.approx(1079.0 * along * across + 50.0)
    assert len(case.offsets) == 2


def test_an_upright_leg_by_hand() -> None:
    """30 x 30 mm of white oak, 200 mm high, 1000 N: stocky, so 1.11 MPa of crushing strength."""
    leg = Leg("leg", (0.0, 0.0), 0.0, (0.0, 200.0), ((30.0, 30.0),) * 2, ((0.0, 0.0),) * 2, 1.0)
    found = leg_stress(leg, "white oak", 1000.0, ONE, 0.2)
    crushing = STRENGTH["white oak"].crushing
    inertia = 30.0**4 / 12.0
    euler = math.pi**2 * 1.1 * 12_300.0 * inertia / 400.0**2 / 900.0
    stands = crushing * (1.0 - 4.0 / 27.0 * (crushing / euler) ** 2)
    assert found.share == pytest.approx(100.0 * (1000.0 / 900.0) / stands)


def test_a_column_held_at_its_top_alone_gives_way_as_finite_differences_say() -> None:
    """-E I w'' = P w over a height, held below, free above: the least P of a matrix."""
    height, bending, count = 300.0, 9.0e8, 400
    step = height / count
    # w from the free end (where P acts, w = 0 measured from there) to the held one (w' = 0).
    matrix = np.diag(np.full(count, 2.0)) - np.diag(np.ones(count - 1), 1)
    matrix -= np.diag(np.ones(count - 1), -1)
    matrix[-1, -2] = -2.0
    least = float(np.sort(np.linalg.eigvals(matrix).real)[0]) * bending / step**2
    assert euler_load(bending, 1.0, 2.0 * height) == pytest.approx(least, rel=1e-4)


@pytest.mark.parametrize("crushing", [35.0, 50.0])
def test_short_and_long_columns_meet(crushing: float) -> None:
    """At two thirds of the crushing strength, with one slope; a stub is crushed."""
    meets = 2.0 / 3.0 * crushing
    assert column_stress(crushing, meets) == pytest.approx(meets)
    rises = (column_stress(crushing, meets + 1e-4) - column_stress(crushing, meets)) / 1e-4
    assert rises == pytest.approx(1.0, abs=1e-3)
    assert column_stress(crushing, 1e6) == pytest.approx(crushing)


@pytest.mark.parametrize("share", [0.05, 0.2, 0.35])
def test_bending_grows_as_the_secant_says(share: float) -> None:
    """Equal moments at both ends: exactly sec(π/2 √(P / P_E)), the estimate within a tenth."""
    exact = 1.0 / math.cos(math.pi / 2.0 * math.sqrt(share))
    grown = pressed_and_bent(0.0, 1.0, 1.0, 100.0, share)
    assert grown == pytest.approx(exact, rel=0.1)


@pytest.mark.parametrize(("height", "length"), [(60.0, 40.0), (30.0, 80.0)])
def test_glued_cheeks_by_summing_small_squares(height: float, length: float) -> None:
    rows, columns = (np.arange(400) + 0.5) / 400 * height, (np.arange(400) + 0.5) / 400 * length
    distance = np.hypot(rows[:, None], columns[None, :]).mean() * height * length
    assert opened_glue(50_000.0, height, length) == pytest.approx(
        50_000.0 / distance / 2.0, rel=1e-4
    )


@pytest.mark.parametrize("name", sorted(STRENGTH))
def test_strengths_agree_with_what_density_says(name: str) -> None:
    """The handbook's rows against its own rules of specific gravity: within four tenths."""
    row, rule = STRENGTH[name], from_gravity(name)
    for found, expected in (
        (row.shear, rule.shear),
        (row.crushing, rule.crushing),
        (row.denting, rule.denting),
    ):
        assert 1.0 / 1.45 < found / expected < 1.45
