"""Feet by hand: the seat keeps its height, the base is shorter by the feet, and their volumes."""

from __future__ import annotations

import math
from itertools import combinations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.overall import BASES, seat_height
from geometry.solids.cutting import placed
from geometry.solids.measure import bounding_box, volume_of
from shared.tolerances import CHORD_ERROR
from tests.measures import minimum_gap


@pytest.mark.parametrize("base", BASES)
def test_the_seat_keeps_its_height_and_the_base_stands_on_its_feet(base: str) -> None:
    bare = set_values(default_spec(), {"base": base, "base_height": 200.0})
    spec = set_values(bare, {"foot": "pads", "foot_height": 12.0})
    assert seat_height(spec) == seat_height(bare) == 500.0
    bench = build(spec)
    for part in bench.parts:
        low = bounding_box(part)[0][2]
        if part.kind == "pad":
            assert low == pytest.approx(0.0, abs=1e-9)
        else:
            assert low > 12.0 - 1e-6, part.name
    bottom = bench.part("bottom")
    assert bounding_box(bottom)[0][2] == pytest.approx(200.0)
    ends = [bounding_box(part)[0][2] for part in bench.parts if part.kind not in ("pad",)]
    assert min(ends) == pytest.approx(12.0, abs=1e-6)


def test_legs_are_shorter_along_themselves() -> None:
    """(150 - 15) / cos 15° along the straight edge instead of 150 / cos 15°."""
    spec = set_values(default_spec(), {"foot": "levelling feet"})
    derived = {row.name: row.value for row in build(spec).derived}
    assert derived["leg_length"] == pytest.approx(135.0 / math.cos(math.radians(15.0)))
    assert derived["foot_out"] == pytest.approx(135.0 * math.tan(math.radians(15.0)))


def test_volume_of_a_levelling_foot() -> None:
    """Plate 24 x 6, thread 8 x 7, flange 18 x 2, insert 9.4 x 14; arcs flattened inward."""
    spec = set_values(default_spec(), {"foot": "levelling feet"})
    sections = ((12.0, 6.0), (4.0, 7.0), (9.0, 2.0), (4.7, 14.0))
    whole = sum(math.pi * r * r * h for r, h in sections)
    chords = sum(2.0 * 2.0 * math.pi * r * h * CHORD_ERROR for r, h in sections)
    volume = volume_of(build(spec).part("foot_front_left").shape)
    assert whole - chords < volume < whole


def test_a_foot_stands_under_the_middle_of_its_leg() -> None:
    """Upright legs 30 mm square at the foot, outer arrises 60 and 50 in from left and front."""
    spec = set_values(
        default_spec(),
        {"base": "four legs", "splay": 0.0, "rake": 0.0, "inset_left": 60.0, "inset_front": 50.0},
    )
    low, high = bounding_box(build(set_values(spec, {"foot": "pads"})).part("foot_front_left"))
    assert (low[0] + high[0]) / 2.0 == pytest.approx(75.0)
    assert (low[1] + high[1]) / 2.0 == pytest.approx(-360.0 + 50.0 + 15.0)
    assert (low[2], high[2]) == (pytest.approx(0.0), pytest.approx(15.0))


def test_a_pad_is_said_to_bear_within_its_round_and_its_leg() -> None:
    """A pad of 24 under a leg of 30 mm square: a square inside the circle of 12; round the boring
    of 10 a levelling foot bears between 5 and its flange's 9 mm."""
    legs = set_values(default_spec(), {"base": "four legs", "splay": 0.0, "rake": 0.0})
    for kind, low, high in (("pads", 0.0, 12.0), ("levelling feet", 5.0, 9.0)):
        bench = build(set_values(legs, {"foot": kind}))
        joint = next(one for one in bench.joints if one.name == "foot_front_left")
        shape = bench.part("foot_front_left").frame.origin
        middle = (shape[0] + 12.0, shape[1] + 12.0)
        off = [math.dist(corner[:2], middle) for one in joint.contacts for corner in one.corners]
        assert max(off) < high
        assert min(off) > low
        # and not a token: the pad's square is almost the largest that the circle holds
        assert max(off) > 0.85 * high


@pytest.mark.parametrize("base", ["crossed stretchers", "trestles"])
@pytest.mark.parametrize("side", ["inside", "outside"])
def test_a_foot_stands_under_the_middle_of_a_tapered_leg(base: str, side: str) -> None:
    """Within a millimetre of the middle of its corners: a tapered leg's end slants a little."""
    spec = set_values(default_spec(), {"base": base, "base_height": 200.0, "taper_side": side})
    bench = build(set_values(spec, {"foot": "pads"}))
    for corner in ("front_left", "back_right"):
        ends = placed(bench.part(f"leg_{corner}")).vertices
        low = ends[ends[:, 2] < 15.5, :2]
        pad = bounding_box(bench.part(f"foot_{corner}"))
        middle = [(pad[0][axis] + pad[1][axis]) / 2.0 for axis in (0, 1)]
        assert middle == pytest.approx((low.min(axis=0) + low.max(axis=0)) / 2.0, abs=1.0)


def test_feet_may_not_take_the_base_away() -> None:
    """60 mm of the base stay: with 150 mm of base height feet go up to 60, the most there are; with
    90 mm to 30."""
    spec = set_values(default_spec(), {"base": "plinth", "foot": "pads", "base_height": 90.0})
    assert limits(spec, "foot_height").maximum == pytest.approx(30.0)
    assert limits(spec, "base_height").minimum == pytest.approx(75.0)


def test_feet_cannot_be_so_wide_that_two_meet() -> None:
    """A plinth 20 mm thick without blocks, 150 long: its feet stand half of that and 40 in from
    either end, 50 from each other; 2 mm must stay between two, so none is wider than 48.  From
    front to back there is far more."""
    spec = set_values(default_spec(), {"base": "plinth"})
    spec = set_values(spec, {"plinth_blocks": "without", "foot": "pads"})
    long = spec.number("length") - 150.0
    spec = set_values(spec, {"inset_left": long / 2.0, "inset_right": long / 2.0})
    allowed = limits(spec, "foot_diameter")
    assert allowed.maximum == pytest.approx(48.0)
    assert "two feet" in allowed.why_maximum
    widest = build(set_values(spec, {"foot_diameter": allowed.maximum}))
    feet = [part for part in widest.parts if part.name.startswith("foot_")]
    least = min(minimum_gap(a, b, 100.0) for a, b in combinations(feet, 2))
    assert least == pytest.approx(2.0, abs=0.02)  # circles are flattened
