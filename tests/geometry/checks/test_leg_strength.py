"""Sound samples with legs too weak by one change; amounts by hand beside each."""

from __future__ import annotations

import math

import numpy as np
import pytest

from geometry.checks.strengthening import own_weight
from geometry.design.finding import Level
from geometry.design.parameter import Value
from shared.timber_strength import DENTED, ROLLING, STRENGTH
from shared.units import SHOWN_MM, in_units
from tests.samples import NAMES, assert_cured, of_check, plain


@pytest.mark.parametrize("name", NAMES)
def test_samples_stand(name: str) -> None:
    bench = plain(name)
    assert not of_check(bench, "leg_strength")
    assert not of_check(bench, "leg_joint_strength")


def test_feet_too_thin() -> None:
    """The bowling green's legs tapered to 12 mm: what is on one, at its lean, over 144 mm² and
    against Euler's load of a square 12 + (56 - 12) / 3 mm at twice the length."""
    bench = plain("bowling_green_bench", {"leg_foot": 12.0})
    (found,) = of_check(bench, "leg_strength")
    assert found.level is Level.THINK_AGAIN
    assert found.parts == ("leg_back_left", "leg_back_right", "leg_front_left", "leg_front_right")
    force = float(in_units(found.message, SHOWN_MM).split("about ")[1].split(" N")[0])
    lean = math.sqrt(
        1.0
        + math.tan(math.radians(bench.spec.number("splay"))) ** 2
        + math.tan(math.radians(bench.spec.number("rake"))) ** 2
    )
    high = bench.spec.number("base_height") - bench.spec.number("apron_height")
    size = 12.0 + 44.0 / 3.0
    euler = math.pi**2 * 1.1 * 12_000.0 * size**4 / 12.0 / (2.0 * high * lean) ** 2
    crushing = STRENGTH["white ash"].crushing
    stress = euler / size**2
    stands = (
        stress
        if stress <= 2.0 / 3.0 * crushing
        else crushing * (1.0 - 4.0 / 27.0 * (crushing / stress) ** 2)
    )
    assert found.amount == pytest.approx(100.0 * force * lean / 144.0 / stands, rel=1e-3)
    assert found.estimate
    assert_cured(bench, found)


def test_a_tenon_that_dents() -> None:
    """The stitching room's stretchers of cherry with tenons of 4 mm: half of the force on a leg of
    55 mm dents them."""
    changes: dict[str, Value] = {"tenon_rule": "own", "tenon_thickness": 4.0}
    bench = plain("stitching_room_bench", changes)
    (found,) = of_check(bench, "leg_joint_strength")
    assert "denting" in found.message
    assert {"stretcher_left", "leg_front_left"} <= set(found.parts)
    force = float(in_units(found.message, SHOWN_MM).split("about ")[1].split(" N")[0])
    wide = bench.spec.number("leg_top_width") / math.cos(math.radians(bench.spec.number("splay")))
    stands = DENTED * STRENGTH["black cherry"].denting
    assert found.amount == pytest.approx(100.0 * force / 2.0 / (4.0 * wide) / stands, rel=1e-3)
    assert_cured(bench, found)


def test_aprons_too_low_for_a_lean() -> None:
    """The map room's aprons of 40 mm: what its lean makes of the force on a leg opens the glue.

    The foot stands out by the lean over 170 - 40 mm, and by half of what the taper takes off; the
    grip of 20 % takes as much of that as of the height, and each apron gets its own direction's
    share.  White ash: shear 1910 psi, 23 % of it where grain crosses.
    """
    bench = plain("map_room_bench", {"apron_height": 40.0})
    (found,) = of_check(bench, "leg_joint_strength")
    assert "glued cheeks" in found.message
    assert "“Apron, front”" in found.message
    spec = bench.spec
    force = float(in_units(found.message, SHOWN_MM).split("about ")[1].split(" N")[0])
    high = spec.number("base_height") - 40.0
    taken = (spec.number("leg_size") - spec.number("leg_foot")) / 2.0
    leans = [math.tan(math.radians(spec.number(name))) for name in ("splay", "rake")]
    outs = [high * lean + taken for lean in leans]
    whole = math.hypot(*outs)
    moment = force * outs[0] * (whole - 0.2 * high) / whole
    tall, long = 40.0 - 2.0 * spec.number("apron_shoulder"), spec.number("apron_tenon_length")
    far = math.hypot(tall, long)
    cheek = (
        2.0 * tall * long * far
        + tall**3 * math.log((long + far) / tall)
        + long**3 * math.log((tall + far) / long)
    ) / 6.0
    stands = ROLLING * STRENGTH["white ash"].shear
    # The tenon leans with its apron, and the middle of the taper with the leg: some hundredths.
    assert found.amount == pytest.approx(100.0 * moment / (2.0 * cheek) / stands, rel=0.1)
    assert_cured(bench, found)


def test_round_tenons_that_lean_too_much() -> None:
    """The kiln yard's legs at a splay of 20: the bore of the board of 30 mm is pressed by
    6 M / (d T²), less what the shoulder of 44 mm takes, a third of that times the force."""
    bench = plain("kiln_yard_bench", {"splay": 20.0})
    (found,) = of_check(bench, "leg_joint_strength")
    assert "bore" in found.message
    assert "bottom" in found.parts
    spec = bench.spec
    force = float(in_units(found.message, SHOWN_MM).split("about ")[1].split(" N")[0])
    high = spec.number("base_height")
    lean = math.hypot(*(math.tan(math.radians(spec.number(name))) for name in ("splay", "rake")))
    moment = force * (high * (lean - 0.2) - spec.number("leg_size") / 3.0)
    pressure = 6.0 * moment / (spec.number("leg_tenon") * 30.0**2)
    stands = DENTED * STRENGTH["European ash"].denting
    assert found.amount == pytest.approx(100.0 * pressure / stands, rel=2e-3)
    assert_cured(bench, found)


def test_own_weight_is_that_of_the_blanks() -> None:
    """The apiary's seat alone: 1050 x 300 x 46 mm of European ash, 702 kg/m³, is 10.2 kg."""
    bench = plain("apiary_bench", {})
    assert own_weight(bench) > 9.80665 * 702.0 * 1.05 * 0.3 * 0.046
    assert own_weight(bench) < 2.0 * 9.80665 * 702.0 * 1.05 * 0.3 * 0.046


def test_an_apron_under_a_thin_slab_shears_its_tenon() -> None:
    """The bowling green's seat made 20 mm and its aprons' tenons 4 mm: seat and front apron share
    the front's force across as their stiffness, b h³, is to that of both.

    That force by a balance of moments about the legs, 218 mm in from the ends: two persons 500 mm
    apart, 300 mm wide, moved along by a millimetre; a twentieth of the span beside the leg presses
    the wood and does not shear it, so the mean over it counts.
    """
    bench = plain("bowling_green_bench", {"seat_thickness": 20.0, "apron_tenon": 4.0})
    (found,) = of_check(bench, "leg_joint_strength")
    assert "shearing its tenon" in found.message
    assert {"apron_front", "leg_front_left"} <= set(found.parts)
    size = bench.spec.number
    half = size("leg_size") / 2.0
    low, high = size("inset_left") + half, size("length") - size("inset_right") - half
    place = np.arange(400.0, size("length") - 400.0)[:, None]  # of the middle of both persons
    spread = np.concatenate([off + np.arange(-145.0, 150.0, 10.0) for off in (-250.0, 250.0)])
    at, each = place + spread, 1079.0 / 30.0
    held = each * (high - at).sum(axis=1) / (high - low)
    beside = np.linspace(low, low + (high - low) / 20.0, 41)
    passed = each * (at[:, :, None] < beside).sum(axis=1)
    across = float(np.abs((held[:, None] - passed).mean(axis=1)).max())
    front, back = size("inset_front") + half, size("inset_back") + half
    across *= (size("depth") - 100.0 - back) / (size("depth") - front - back)
    lean = math.cos(math.radians(size("rake")))
    apron = size("apron_thickness") / lean * size("apron_height") ** 3
    across *= apron / (apron + size("depth") / 2.0 * 20.0**3)
    tall = size("apron_height") / lean - 2.0 * size("apron_shoulder")
    stands = STRENGTH["white ash"].shear
    assert found.amount == pytest.approx(100.0 * 1.5 * across / (tall * 4.0) / stands, rel=2e-3)
    assert_cured(bench, found)
