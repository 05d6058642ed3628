"""What a bench's members bear, worked by hand: one thing at a time that a maker could reckon.

Strengths and E by the project's tables; beams on two supports by F L / 4 and the lever.
"""

from __future__ import annotations

import pytest

from geometry.bench.catalogue import default_spec
from geometry.bench.four_leg_numbers import four_legs
from geometry.bench.limits import set_values
from geometry.design.brief import PERSON, Brief
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.strength.bases import bottom, trestle_stretchers
from geometry.strength.legs import Leg, greatest_forces, leg_stress
from geometry.strength.line import BENDING, SHEAR, Line, Piece, strained
from geometry.strength.loads import Case, Loads, loads_of
from geometry.strength.racking import RAIL_BENT, racked
from geometry.strength.rests import leaned_on, pushes
from geometry.strength.seats import seat_lines
from geometry.strength.stuff import Section
from shared.timber_stiffness import STIFFNESS
from shared.timber_strength import STRENGTH

OAK, OAK_SHEAR = STIFFNESS["white oak"].rupture, STRENGTH["white oak"].shear
TWO = Loads(1112.0, 1079.0, 2, 500.0)
ONE = Case("one", 1000.0, (0.0,), 0.0)


def spec_of(*steps: dict[str, Value]) -> BenchSpec:
    spec = set_values(default_spec(), {"flare": 0.0})
    for step in steps:
        for name, value in step.items():
            spec = set_values(spec, {name: value})
    return spec


def test_a_leg_is_bent_across_the_size_that_its_foot_stands_out_along() -> None:
    """60 wide and 20 thick, 200 high, the foot 30 mm out along the width, 1000 N and no grip:
    30 000 N mm on 20 x 60² / 6 = 12 000 mm³, 2.5 MPa; pressed by 1000 / 1200 MPa."""
    leg = Leg(
        "leg",
        (30.0, 0.0),
        0.0,
        (0.0, 200.0),
        ((60.0, 20.0), (60.0, 20.0)),
        ((0.0, 0.0), (30.0, 0.0)),
        1.0,
    )
    found = leg_stress(leg, "white oak", 1000.0, ONE, 0.0)
    # Euler on twice the length and the thin way: π² E I / (2 h)², 1.1 x 12 300 MPa
    euler = 9.869604401 * 1.1 * 12_300.0 * 60.0 * 20.0**3 / 12.0 / 400.0**2
    assert euler / 1200.0 < STRENGTH["white oak"].crushing * 2.0 / 3.0, "slender"
    share = 1000.0 / euler + 2.5 / (1.0 - 1000.0 / euler) / OAK
    assert found.share == pytest.approx(100.0 * share)
    assert found.height == 200.0


def test_legs_far_in_carry_no_more_than_all_that_sit() -> None:
    """Two persons at the very end beyond legs 400 mm in: by the lever more than both, which only
    lifts the other end; across the bench the lever counts as ever."""
    spec = spec_of(
        {"seat": "slab", "base": "four legs"}, {"length": 1600.0, "splay": 0.0, "rake": 0.0}
    )
    far = set_values(spec, {"inset_left": 400.0, "leg_foot": 45.0})
    force, case = greatest_forces(far, TWO, 0.0)["leg_front_left"]
    n = four_legs(far)
    middles = (n.front + n.size / 2.0, n.back - n.size / 2.0)
    across = min(1.0, (middles[1] - (100.0 - far.number("depth"))) / (middles[1] - middles[0]))
    assert len(case.offsets) == 2
    assert force == pytest.approx(2.0 * 1079.0 * across)


def test_a_long_trestle_bends_by_what_its_rails_mortise_leaves() -> None:
    """A bench 800 deep: F L / 4 over b (h³ - t³) / (6 h) of stretchers of 40 x 60 with a mortise of
    20.2 in their middle; each has 1079 (1 + ...) N by the lever between trestles at 90 and 1110."""
    spec = spec_of({"base": "trestles"}, {"depth": 800.0})
    left, right = trestle_stretchers(spec, TWO, 0.0)
    # persons at 150 and 650 mm: (1110 - 150) / 1020 and (1110 - 650) / 1020 of one each
    force = 1079.0 * ((1110.0 - 150.0) + (1110.0 - 650.0)) / 1020.0
    tip = spec.number("leg_top_width") / 0.9659258263  # cos 15 degrees
    span = 800.0 - spec.number("inset_back_left") - spec.number("inset_front_left") - tip
    modulus = 40.0 * (60.0**3 - 20.2**3) / (6.0 * 60.0)
    assert left.way == BENDING
    assert left.force == pytest.approx(force)
    assert left.share == pytest.approx(100.0 * force * span / 4.0 / modulus / OAK)
    assert right.share == pytest.approx(left.share)


@pytest.mark.parametrize("tenon", [20.0, 28.0])
def test_a_case_bears_on_a_round_leg_beside_its_bore(tenon: float) -> None:
    """Half of 360 mm carries a corner, less the bore: against a tenon of 25, whose bore is 25.2,
    the same force on 154.8 mm, strained as much more as there is less wood."""
    spec = spec_of({"base": "four legs"}, {"leg_joint": "round tenons"})
    usual, other = (bottom(one, TWO, 0.0) for one in (spec, set_values(spec, {"leg_tenon": tenon})))
    assert usual is not None
    assert other is not None
    assert other.force == pytest.approx(usual.force)
    assert other.share / usual.share == pytest.approx(154.8 / (180.0 - tenon - 0.2))


def test_a_high_rails_tenon_bends_before_its_walls_give() -> None:
    """Panel feet of 80 mm, the rail's tenon 12 thick and 10 high: 6 M / (w h²) of oak, M = H h / 2
    of 330 N at 150 mm."""
    spec = spec_of(
        {"base": "panel feet"},
        {"panel_thickness": 80.0, "panel_rail_height": 26.0, "panel_shoulder": 8.0},
    )
    (found,) = racked(spec, 330.0)
    high = 26.0 - 2.0 * 8.0
    thick = spec.number("panel_tenon_thickness")
    bent = 6.0 * 330.0 * 150.0 / 2.0 / (thick * high**2)
    assert found.fails == RAIL_BENT
    assert found.share == pytest.approx(100.0 * bent / OAK)


def test_shear_counts_where_a_joint_has_weakened_a_piece() -> None:
    """A board of 100 x 40 over 200 mm, let in 15 deep at both ends: 1000 N a twentieth of the span
    from one end, 950 N of it over 100 x 25 mm."""
    whole, housed = Section(100.0, 40.0), Section(100.0, 25.0)
    piece = Piece("seat", "white oak", whole, whole, housed)
    line = Line((piece,), 0.0, 200.0, (0.0, 200.0), 0.0, 0.0)
    found = strained(line, Loads(1000.0, 0.0, 1, 500.0))
    (shear,) = (one for one in found.strains if one.way == SHEAR)
    assert shear.share == pytest.approx(100.0 * 1.5 * 950.0 / (100.0 * 25.0) / OAK_SHEAR)
    assert found.shears == (pytest.approx(950.0),)


def test_a_seat_is_weaker_over_its_bores() -> None:
    """Two bores of 25.2 mm are lost of the depth where a seat stands on round tenons."""
    spec = spec_of({"seat": "slab", "base": "four legs"}, {"leg_joint": "round tenons"})
    ((piece,),) = (line.pieces for line in seat_lines(spec))
    assert piece.section.width == 360.0
    assert piece.at_supports.width == pytest.approx(360.0 - 2.0 * 25.2)
    assert piece.at_supports.thickness == piece.section.thickness


def test_front_and_back_of_a_seat_carry_half_at_least() -> None:
    """A seat of 260 mm, its front legs 60 mm out and the back ones as much in: what sits 100 mm
    from the front is nearer to the back rail, yet half of it is reckoned in front."""
    spec = spec_of({"seat": "slab", "base": "four legs", "rake": 0.0}, {"depth": 260.0})
    spec = set_values(spec, {"inset_front": -60.0, "inset_back": 60.0})
    front, back = seat_lines(spec)
    n = four_legs(spec)
    rows = (n.front + n.size / 2.0, n.back - n.size / 2.0)
    by_lever = (rows[1] - (100.0 - 260.0)) / (rows[1] - rows[0])
    assert by_lever < 0.5
    assert front.share == 0.5
    # in the back, 100 mm from the back edge: near to the front of that row as well
    assert back.share == pytest.approx(max(0.5, (-100.0 - rows[0]) / (rows[1] - rows[0])))


@pytest.mark.parametrize(("height", "arm"), [(420.0, 300.0), (300.0, 200.0)])
def test_a_low_rest_is_pushed_below_its_top(height: float, arm: float) -> None:
    """One push at 300 mm over the seat, no nearer than 100 mm to the rest's top: on a post of
    45 x 35 it is all of 450 N."""
    spec = spec_of({"back_rest": "rails"}, {"rest_height": height})
    found = leaned_on(spec, pushes(Brief(persons=1.0), 450.0, 500.0), 300.0)
    posts = [one for one in found if one.kind == "post"]
    bent = 450.0 * arm / (45.0 * 35.0**2 / 6.0)
    assert posts
    assert all(one.share == pytest.approx(100.0 * bent / OAK) for one in posts)


def test_one_slat_of_two_takes_half_of_a_back() -> None:
    """A back lies on three where there are as many: 450 / 2 and 450 / 3 N in the middle of one."""
    for count, part in ((2.0, 225.0), (9.0, 150.0)):
        spec = spec_of({"back_rest": "slats"}, {"slat_count": count})
        found = leaned_on(spec, pushes(Brief(persons=1.0), 450.0, 500.0), 300.0)
        (slat,) = (one for one in found if one.kind == "slat")
        assert slat.force == pytest.approx(part)


def test_one_who_weighs_more_than_the_standards_load_counts_alone() -> None:
    """150 kg are 1471 N, more than 1112 N at one place."""
    found = loads_of(Brief(who=PERSON, weight=150.0), single=1112.0, sitter=1079.0, room=500.0)
    assert found.single == pytest.approx(1470.9975)
