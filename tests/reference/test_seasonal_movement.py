"""Seasonal movement against the Wood Handbook, and the slots that follow from it.

Sources: FPL-GTR-190 (2010), chapter 13, equation (13-2) and its worked example on page 13-18 (from
memory, its arithmetic done again); table 13-5 as read; the shrinkage of table 4-3.  The mesquite
board: a flooring association's note that cites the handbook.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.solids.measure import bounding_box
from shared.movement import FLAT_SAWN, QUARTER_SAWN, coefficient_from, coefficients, movement
from shared.timber import TIMBERS

# Species, shrinkage radial and tangential in % (table 4-3), C_R and C_T (table 13-5).
TABLES = (
    ("white ash", 4.9, 7.8, 0.00169, 0.00274),
    ("American beech", 5.5, 11.9, 0.00190, 0.00431),
    ("yellow birch", 7.3, 9.5, 0.00256, 0.00338),
    ("black cherry", 3.7, 7.1, 0.00126, 0.00248),
    ("black walnut", 5.5, 7.8, 0.00190, 0.00274),
    ("yellow poplar", 4.6, 8.2, 0.00158, 0.00289),
    ("Douglas fir", 4.8, 7.6, 0.00165, 0.00267),
    ("longleaf pine", 5.1, 7.5, 0.00176, 0.00263),
    ("eastern white pine", 2.1, 6.1, 0.00071, 0.00212),
)


@pytest.mark.parametrize(("timber", "radial", "tangential", "c_r", "c_t"), TABLES)
def test_coefficients_are_those_of_the_table(timber, radial, tangential, c_r, c_t) -> None:
    assert coefficients(timber) == pytest.approx((c_r, c_t), abs=0.6e-5)
    assert coefficient_from(radial) == pytest.approx(c_r, abs=0.6e-5)
    assert coefficient_from(tangential) == pytest.approx(c_t, abs=0.6e-5)


def test_the_handbooks_worked_example() -> None:
    """White fir, flat grained, 232 mm wide at 8 %, to 11 %: 1.705 mm, with C_T from 7.0 %."""
    assert 232.0 * coefficient_from(7.0) * 3.0 == pytest.approx(1.705, abs=0.003)


def test_a_cherry_board_by_hand() -> None:
    """300 mm from 6 to 12 %: 300 x 0.00248 x 6 = 4.464 mm; quarter sawn 300 x 0.00126 x 6."""
    assert movement(300.0, "black cherry", FLAT_SAWN, 6, 12) == pytest.approx(4.464)
    assert movement(300.0, "black cherry", QUARTER_SAWN, 6, 12) == pytest.approx(2.268)


def test_every_timber_moves() -> None:
    for name in TIMBERS:
        radial, tangential = coefficients(name)
        assert 0.0005 < radial < tangential < 0.006, name


def test_a_slot_by_hand() -> None:
    """A case 400 deep of cherry on panel feet, held at its back edge.  Panels stand 40 in at either
    edge and the rail, 26 thick, runs in the middle: the front stretch goes from 42 in front to the
    rail's front and 2 more, -358 to -215, its middle at -286.5.  The screw, no. 8 (0.164 in), there
    shrinks 286.5 x 0.00248 x 3 = 2.13 toward the back and swells as much away from it; with 0.3 of
    play that is 2.43 either way, set out to the half millimetre above, 2.5."""
    spec = set_values(
        default_spec(),
        {"base": "panel feet", "depth": 400.0, "timber": "black cherry", "flare": 0.0},
    )
    spec = set_values(spec, {"fixing": "screws in slots", "fixing_held": "back edge"})
    joint = next(one for one in build(spec).joints if one.name == "fixing_panel_foot_left_front_1")
    measures = {one.name: one.value for one in joint.measures}
    travel = 286.5 * 0.00248 * 6.0
    assert measures["travel"] == pytest.approx(travel)
    assert measures["slot_length"] == pytest.approx(2.0 * 2.5 + 0.164 * 25.4 + 0.6)
    assert measures["screw_from_end"] == pytest.approx(2.5 + (0.164 * 25.4 + 0.6) / 2.0)
    low, high = bounding_box(build(spec).part("fixing_block_panel_foot_left_front_1"))
    assert (low[1] + high[1]) / 2.0 == pytest.approx(-286.5)


def test_a_seat_grows_away_from_where_it_is_held() -> None:
    """Forward in front of that line and back behind it, so that the long half of a slot lies there:
    made at 7 % for 6 to 12 %, the board shrinks one part where it swells five; either way has 0.3
    of play and is set out to the half millimetre above."""
    middle = set_values(default_spec(), {"base": "panel feet", "fixing": "screws in slots"})
    middle = set_values(middle, {"fixing_held": "middle"})
    middle = set_values(middle, {"moisture_low": 6.0, "moisture_made": 7.0, "moisture_high": 12.0})
    back = set_values(middle, {"fixing_held": "back edge"})
    for spec, held in ((middle, -180.0), (back, 0.0)):
        bench, seen = build(spec), 0
        for joint in bench.joints:
            if joint.kind != "slotted screw":
                continue
            (slot,) = joint.cuts_first
            frame = bench.part(joint.parts[0]).frame
            y, way = frame.to_bench(slot.screw)[1], frame.turn_to_bench(slot.along)[1]
            assert way == (-1.0 if y < held else 1.0)
            travel = next(one.value for one in joint.measures if one.name == "travel")
            for way, share in ((slot.before, 1.0 / 6.0), (slot.after, 5.0 / 6.0)):
                assert way == pytest.approx(math.ceil(2.0 * (share * travel + 0.3)) / 2.0)
            seen += 1
        assert seen >= 4
