"""Corner blocks behind aprons: angles, volume and places worked by hand.

Sources: vector arithmetic and the prismatoid formula, written out beside each test; no table of
such blocks was found.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.screw_hole import ScrewHole
from geometry.design.joint import Joint
from geometry.design.parameter import Value
from geometry.solids.measure import bounding_box, volume_of
from tests.measures import minimum_gap

ON_LEGS = set_values(default_spec(), {"base": "four legs"})


def bench(**values: Value) -> Bench:
    return build(set_values(ON_LEGS, values))


def joint(of: Bench, name: str) -> Joint:
    return next(one for one in of.joints if one.name == name)


def measured(one: Joint) -> dict[str, float]:
    return {measure.name: measure.value for measure in one.measures}


@pytest.mark.parametrize(("rake", "splay"), [(0.0, 0.0), (8.0, 5.0), (15.0, 12.0), (0.0, 20.0)])
def test_ends_of_a_block_at_45(rake: float, splay: float) -> None:
    """A block's own axes: across the corner, down, and (level) out to the leg.  The inside of an
    apron that leans by a has the normal (cos a, sin a down) out of the block, cos a of it level and
    at 45 degrees to both level axes: (cos a / sqrt 2, sin a, cos a / sqrt 2).  The blade tilts by
    the part along the thickness, the mitre is the rest."""
    at = bench(rake=rake, splay=splay, corner_blocks="at 45°", corner_block_screws=0.0)
    for apron, lean in (("left", splay), ("front", rake)):
        found = measured(joint(at, f"corner_block_front_left_{apron}"))
        a = math.radians(lean)
        assert found["end_tilt"] == pytest.approx(
            math.degrees(math.asin(math.cos(a) / math.sqrt(2.0)))
        )
        assert found["end_mitre"] == pytest.approx(
            math.degrees(math.atan2(math.sin(a), math.cos(a) / math.sqrt(2.0)))
        )


def test_volume_of_a_block_at_45() -> None:
    """Upright legs of 45 mm, aprons 22 thick and 4 back: their insides cross 26 mm in from both
    outer faces, the leg's inner arris lies at 45, 45.  The near face is 3 mm off that: p + q is
    90 + 3 sqrt 2 on it, and it is sqrt 2 (90 + 3 sqrt 2 - 52) long; the far face twice the
    thickness longer."""
    at = bench(rake=0.0, splay=0.0, corner_blocks="at 45°", corner_block_screws=0.0)
    near = math.sqrt(2.0) * (90.0 + 3.0 * math.sqrt(2.0) - 52.0)
    by_hand = 28.0 * 45.0 * (near + 28.0)
    for corner in ("front_left", "front_right", "back_left", "back_right"):
        block = at.part(f"corner_block_{corner}")
        assert volume_of(block.shape) == pytest.approx(by_hand)
        assert block.shape.blank.length == pytest.approx(near + 56.0)


def test_volume_of_a_leaning_block_at_45() -> None:
    """Level sections are trapezia whose two parallel sides grow evenly downward by
    sqrt 2 (tan rake + tan splay) a millimetre, so the middle one times the height is the volume.
    Where the near face lies is measured on the solid."""
    at = bench(rake=12.0, splay=9.0, corner_blocks="at 45°", corner_block_screws=0.0)
    block = at.part("corner_block_back_right")
    grows = math.sqrt(2.0) * (math.tan(math.radians(12.0)) + math.tan(math.radians(9.0)))
    middle_far = block.shape.blank.length - grows * 45.0 / 2.0
    by_hand = 28.0 * 45.0 * (middle_far - 28.0)
    assert volume_of(block.shape) == pytest.approx(by_hand, rel=1e-9)


def test_a_square_block_by_hand() -> None:
    """Upright: insides 26 mm in, the leg's inner faces at 45, 3 mm off them the cut-out to 48, and
    28 more: a square of 50 mm less one of 22, 45 high."""
    at = bench(rake=0.0, splay=0.0, corner_blocks="square", corner_block_screws=0.0)
    block = at.part("corner_block_front_left")
    assert volume_of(block.shape) == pytest.approx((50.0**2 - 22.0**2) * 45.0)
    (x0, y0, _), (x1, y1, z1) = bounding_box(block)
    spec = at.spec
    left, front = spec.number("inset_left"), spec.number("inset_front") - spec.number("depth")
    assert (x0 - left, x1 - left) == pytest.approx((26.0, 76.0))
    assert (y0 - front, y1 - front) == pytest.approx((26.0, 76.0))
    assert z1 == pytest.approx(spec.number("base_height"))


def test_bevels_of_a_square_block_are_the_aprons_leans() -> None:
    at = bench(rake=9.0, splay=6.0, corner_blocks="square", corner_block_screws=0.0)
    assert measured(joint(at, "corner_block_front_left_front"))["bevel"] == pytest.approx(9.0)
    end = measured(joint(at, "corner_block_front_left_left"))
    assert (end["end_mitre"], end["end_tilt"]) == pytest.approx((6.0, 0.0))


@pytest.mark.parametrize("kind", ["at 45°", "square"])
@pytest.mark.parametrize(("rake", "splay"), [(0.0, 0.0), (10.0, 7.0)])
def test_blocks_keep_off_their_leg_by_the_gap(kind: str, rake: float, splay: float) -> None:
    """The leg leans away below, so the gap is least at the top."""
    at = bench(rake=rake, splay=splay, corner_blocks=kind, corner_block_gap=4.0)
    for corner in ("front_left", "back_right"):
        block, leg = at.part(f"corner_block_{corner}"), at.part(f"leg_{corner}")
        near = minimum_gap(block, leg, 20.0)
        # Off an arris that leans the nearest point lies a little above square.
        assert 4.0 * math.cos(math.radians(13.0)) - 1e-6 < near <= 4.0 + 1e-6


def test_screws_stand_square_to_the_aprons() -> None:
    """A hole and its pilot hole lie in one line, square to the apron's reverse."""
    at = bench(rake=10.0, splay=7.0, corner_blocks="at 45°", corner_block_screws=2.0)
    for one in at.joints:
        if one.kind != "glued and screwed block":
            continue
        block, apron = (at.part(name) for name in one.parts)
        holes = [cut for cut in one.cuts_first if isinstance(cut, ScrewHole)]
        assert len(holes) == len(one.cuts_second) == 2
        for hole, pilot in zip(holes, one.cuts_second, strict=True):
            into = apron.frame.turn_to_local(block.frame.turn_to_bench(hole.into))
            assert into == pytest.approx((0.0, 0.0, 1.0), abs=1e-8)
            mouth = apron.frame.to_local(block.frame.to_bench(hole.mouth))
            assert mouth == pytest.approx(pilot.middle, abs=1e-6)
            assert mouth[2] == pytest.approx(apron.shape.blank.thickness, abs=1e-6)


@pytest.mark.parametrize(("rake", "splay"), [(0.0, 0.0), (12.0, 9.0)])
def test_a_screw_passes_a_block_at_45_aslant(rake: float, splay: float) -> None:
    """From the middle of an end of a block of 28 mm to its upright far face: 28 / √2 level, and as
    much longer as the apron leans, to which the screw is square.  The bore goes on past that by a
    head, so that it comes out whole."""
    at = bench(rake=rake, splay=splay, corner_blocks="at 45°", apron_height=80.0)
    for apron, lean in (("left", splay), ("front", rake)):
        one = joint(at, f"corner_block_front_left_{apron}")
        (hole,) = (cut for cut in one.cuts_first if isinstance(cut, ScrewHole))
        long = 28.0 / math.sqrt(2.0) / math.cos(math.radians(lean))
        assert hole.depth - hole.head == pytest.approx(long)
        # The middle of its way, from there to its point 14 mm in the apron, is half way down 45 mm.
        block = at.part("corner_block_front_left").frame
        mouth, into = block.to_bench(hole.mouth), block.turn_to_bench(hole.into)
        top = block.origin[2]
        assert top - (mouth[2] + into[2] * (long - 14.0) / 2.0) == pytest.approx(22.5)


def test_a_block_at_45_holds_the_seat_by_a_screw_in_a_slot() -> None:
    """In the middle of the block at the top, by symmetry as far in from both aprons."""
    at = bench(corner_blocks="at 45°", corner_block_thickness=36.0, fixing="screws in slots")
    held = [one for one in at.joints if one.name.startswith("fixing_corner_")]
    assert len(held) == 4
    for one in held:
        assert one.kind == "slotted screw"
        assert measured(one)["travel"] > 0.5


def test_fixings_along_the_aprons_keep_clear_of_the_blocks() -> None:
    values: dict[str, Value] = {"fixing": "screws in slots", "fixing_count": 2.0, "length": 1500.0}
    plain, blocked = bench(**values), bench(**values, corner_blocks="at 45°")
    first = {"name": "fixing_block_apron_front_1"}
    x = [bounding_box(one.part(first["name"]))[0][0] for one in (plain, blocked)]
    assert x[1] > x[0]
    block = bounding_box(blocked.part("corner_block_front_left"))[1][0]
    assert x[1] > block
