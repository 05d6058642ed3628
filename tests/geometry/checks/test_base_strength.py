"""Sound samples with a bottom, a trestle or a rail too weak by few changes; amounts by hand.

The three equal spans of a beam and the like are reckoned by finite elements (``judges.frame``).
"""

from __future__ import annotations

import numpy as np
import pytest

from geometry.checks.all_checks import findings
from geometry.checks.strengthening import own_weight
from geometry.design.finding import Level
from geometry.design.parameter import Value
from geometry.strength.bases import forces_on_lines
from geometry.strength.loads import Loads
from shared.timber_stiffness import STIFFNESS
from shared.timber_strength import STRENGTH
from shared.units import SHOWN_MM, in_units
from tests.judges.frame import beam as judged_beam
from tests.samples import NAMES, assert_cured, of_check, plain

CHECKS = {"bottom_strength", "trestle_strength", "rail_strength"}


@pytest.mark.parametrize("name", NAMES)
def test_samples_are_strong_enough(name: str) -> None:
    found = findings(plain(name))
    assert not CHECKS & {one.check for one in found}


def test_a_thin_bottom_between_trestle_and_partitions() -> None:
    """The ferry's left trestle set in to the middle of its first opening, its boards 12 mm.

    Two persons of 1079 N at 150 and 650 mm, trestles of 44 mm at 272 and 1808: all of the one and
    (1808 - 650) / 1536 of the other would be more than both can be at 150, so by the lever, and
    half of the bench's own weight; the bottom over its five uprights by finite elements.
    """
    bench = plain("ferry_waiting_room_bench", {"inset_left": 250.0}, {"board_thickness": 12.0})
    (found,) = of_check(bench, "bottom_strength")
    spec = bench.spec
    half = spec.number("base_thickness") / 2.0
    low, high = 250.0 + half, spec.number("length") - spec.number("inset_right") - half
    sitting = sum(1079.0 * (high - x) / (high - low) for x in (400.0 - 250.0, 400.0 + 250.0))
    force = min(sitting, 2158.0) + own_weight(bench) / 2.0
    places = [spec.number(f"partition_{k}") for k in (1, 2, 3)]
    supports = [6.0, *places, spec.number("length") - 6.0]
    marks = np.array(sorted({0.0, *supports, low, spec.number("length")}))
    loads = np.where(marks == low, force, 0.0)
    depth = spec.number("depth")
    bending = 1.1 * 12_300.0 * depth * 12.0**3 / 12.0
    shearing = 1.1 * 12_300.0 / 16.0 * 5.0 / 6.0 * depth * 12.0
    _, moment, _ = judged_beam(marks, supports, bending, shearing, loads)
    stress = abs(float(moment[marks == low][0])) / (depth * 12.0**2 / 6.0)
    housed = 12.0 - spec.number("housing_depth")
    over = np.isin(marks, supports)
    at_partitions = float(np.abs(moment[over]).max()) / (depth * housed**2 / 6.0)
    share = 100.0 * max(stress, at_partitions) / STIFFNESS["white oak"].rupture
    assert found.amount == pytest.approx(share, rel=1e-6)
    assert found.level is Level.THINK_AGAIN
    assert found.parts == ("bottom",)
    assert_cured(bench, found)


def test_a_leg_under_the_middle_of_a_thin_opening() -> None:
    """The sail loft's boards 13 mm: legs in the corners push into the end openings."""
    bench = plain("sail_loft_bench", {"board_thickness": 13.0})
    (found,) = of_check(bench, "bottom_strength")
    assert found.place is not None
    assert found.place[2] == bench.spec.number("base_height")
    assert_cured(bench, found)


def test_a_rail_that_is_stepped_on() -> None:
    """The clock shop's rail of 40 x 26 mm, 105 mm under the bottom: its tenon, 1.5 F over its
    section, in black walnut of 1370 psi."""
    down: dict[str, Value] = {"panel_rail_down": 105.0}
    assert not of_check(plain("clock_shop_bench", down), "rail_strength")
    bench = plain("clock_shop_bench", down, {"panel_rail_height": 40.0})
    (found,) = of_check(bench, "rail_strength")
    spec = bench.spec
    tenon = spec.number("panel_tenon_thickness") * (40.0 - 2.0 * spec.number("panel_shoulder"))
    stands = STRENGTH["black walnut"].shear
    assert found.amount == pytest.approx(100.0 * 1.5 * 1112.0 / tenon / stands)
    assert_cured(bench, found)


def test_a_rail_under_a_panel_bench_bends() -> None:
    """The bakery yard's rail of 24 mm, 30 high, 110 mm under the seat: F L / 4 over b h² / 6."""
    down: dict[str, Value] = {"seat_rail_down": 110.0}
    assert not of_check(plain("bakery_yard_bench", down), "rail_strength")
    tenon: dict[str, Value] = {"seat_rail_shoulder": 2.0, "seat_rail_height": 40.0}
    bench = plain("bakery_yard_bench", down, tenon, {"seat_rail_tenon": 20.0})
    (found,) = of_check(bench, "rail_strength")
    span = 980.0 - 2.0 * bench.spec.number("end_thickness")
    thick = bench.spec.number("seat_rail_thickness")
    stress = 1112.0 * span / 4.0 / (thick * 40.0**2 / 6.0)
    assert found.amount == pytest.approx(100.0 * stress / STIFFNESS["European beech"].rupture)
    assert "in bending" in found.message
    assert_cured(bench, found)


def test_a_trestle_that_its_rail_has_weakened() -> None:
    """The ferry's stretchers made 20 mm thick and 37 high, legs far apart: F L / 4 over what the
    mortise leaves, b (h³ - t³) / (6 h)."""
    bench = plain(
        "ferry_waiting_room_bench",
        {"rail_height": 20.0, "rail_tenon_height": 20.0, "rail_wedge": 2.0},
        {"base_thickness": 15.0, "stretcher_height": 37.0},
    )
    found = of_check(bench, "trestle_strength")
    spec = bench.spec
    assert [one.parts for one in found] == [("stretcher_left",), ("stretcher_right",)]
    force = float(in_units(found[0].message, SHOWN_MM).split("about ")[1].split(" N")[0])
    lean = np.cos(np.radians(spec.number("splay")))
    span = spec.number("depth") - spec.number("inset_back_left") - spec.number("inset_front_left")
    span -= spec.number("leg_top_width") / float(lean)
    cut = 20.0 + spec.number("rail_fit")
    modulus = 15.0 * (37.0**3 - cut**3) / (6.0 * 37.0)
    bent = force * span / 4.0 / modulus / STIFFNESS["white oak"].rupture
    sheared = 1.5 * force / 2.0 / (15.0 * (37.0 - cut)) / STRENGTH["white oak"].shear
    assert found[0].amount == pytest.approx(100.0 * max(bent, sheared), rel=1e-3)
    assert_cured(bench, found[0])


def test_lines_carry_by_the_lever() -> None:
    """Three lines at 100, 600, 1100 of 1200 mm, one load of 1000 N anywhere from 100 to 1100: each
    can have it all; of two persons 500 mm apart the middle one has half of each at most."""
    one = Loads(1000.0, 400.0, 1, 500.0)
    assert [force for force, _ in forces_on_lines((100.0, 600.0, 1100.0), 1200.0, one, 30.0)] == (
        pytest.approx([1010.0, 1010.0, 1010.0])
    )
    pair = Loads(10.0, 400.0, 2, 500.0)
    forces = forces_on_lines((100.0, 600.0, 1100.0), 1200.0, pair, 0.0)
    # at 150 and 650: 0.9 of the one at the left line; at 350 and 850 half of each at the middle,
    # and at 600 and 1100 (as far right as they sit: 550 and 1050) 0.9 + 0.1
    assert forces[0][0] == pytest.approx(0.9 * 400.0)
    assert forces[1][0] == pytest.approx(400.0)
