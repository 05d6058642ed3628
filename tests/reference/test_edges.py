"""Moulded arrises by closed forms: what a chamfer, a round-over and a cove take away.

Profiles on a right-angled arris of size s: s² / 2, s² (1 - π / 4), π s² / 4.  On a corner of the
angle φ a round-over tangent to both faces at the size s has the radius r = s tan(φ / 2) and takes
s r - (π - φ) r² / 2, a chamfer s² sin φ / 2, a cove φ s² / 2 (elementary geometry).
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.cuts.cut import Blank
from geometry.cuts.edge_moulding import EdgeMoulding, along_arris
from geometry.cuts.saw import SawCut
from geometry.design.part import Shape
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR

BLANK = Blank(100.0, 60.0, 30.0)
S = 8.0


def _area(form: str, corner: float) -> float:
    radius = S * math.tan(corner / 2.0)
    return {
        "chamfer": S * S * math.sin(corner) / 2.0,
        "round-over": S * radius - (math.pi - corner) * radius * radius / 2.0,
        "cove": corner * S * S / 2.0,
    }[form]


def _slack(form: str, corner: float) -> float:
    """What chords of the arc may take or leave, over its length."""
    return 0.0 if form == "chamfer" else 2.0 * S * corner * CHORD_ERROR


@pytest.mark.parametrize("form", ["chamfer", "round-over", "cove"])
@pytest.mark.parametrize("lean_deg", [0.0, 25.0, -25.0])
def test_profile_on_a_bevelled_edge(form: str, lean_deg: float) -> None:
    """The far edge is sawn to lean; the moulding is on its arris with the reverse."""
    lean = math.radians(lean_deg)
    outward = (0.0, math.cos(lean), math.sin(lean))
    sawn = SawCut("bevel", (0.0, 60.0, 30.0 if lean_deg < 0.0 else 0.0), outward)
    y = 60.0 - (30.0 * math.tan(lean) if lean_deg > 0.0 else 0.0)
    moulding = along_arris(form, S, ((0.0, y, 30.0), (100.0, y, 30.0)), ((0.0, 0.0, 1.0), outward))
    corner = math.pi / 2.0 + lean
    assert moulding.corner == pytest.approx(corner)
    # An arc that touches both faces S from the arris: tan(corner / 2) of it as its radius.
    assert form != "round-over" or moulding.radius == pytest.approx(S * math.tan(corner / 2.0))
    taken = volume_of(Shape(BLANK, (sawn,))) - volume_of(Shape(BLANK, (sawn, moulding)))
    assert taken / 100.0 == pytest.approx(_area(form, corner), abs=_slack(form, corner) + 1e-6)


def test_a_stopped_chamfer() -> None:
    """Its ends run out at 45°: each leaves 2 D³ / 3 of wood, D = s / √2 the chamfer's depth."""
    moulding = along_arris(
        "chamfer",
        S,
        ((20.0, 60.0, 30.0), (80.0, 60.0, 30.0)),
        ((0.0, 0.0, 1.0), (0.0, 1.0, 0.0)),
        stopped=(True, True),
    )
    taken = 100.0 * 60.0 * 30.0 - volume_of(Shape(BLANK, (moulding,)))
    deep = S / math.sqrt(2.0)
    assert taken == pytest.approx(60.0 * S * S / 2.0 - 2.0 * 2.0 * deep**3 / 3.0, rel=1e-9)


def test_a_partitions_round_fronts() -> None:
    """Both arrises over the 260 mm between top and bottom, 2 mm each."""
    plain = set_values(default_spec(), {"flare": 0.0})
    rounded = set_values(plain, {"partition_edge": "round-over"})
    before, after = (build(s).part("partition_1").shape for s in (plain, rounded))
    taken = volume_of(before) - volume_of(after)
    whole = 2.0 * 260.0 * 4.0 * (1.0 - math.pi / 4.0)
    assert whole < taken < whole + 2.0 * 260.0 * math.pi * CHORD_ERROR


@pytest.mark.parametrize("stop", [0.0, 30.0])
def test_a_partitions_chamfered_fronts(stop: float) -> None:
    """Two chamfers of 2 mm over the 260 mm between top and bottom, no more: the tongues in the
    housings stay whole.  Stopped 30 mm from both, each end leaves 2 D³ / 3 of wood, D = √2."""
    plain = set_values(default_spec(), {"flare": 0.0})
    eased = set_values(plain, {"partition_edge": "chamfer", "partition_edge_stop": stop})
    before, after = (build(s).part("partition_1").shape for s in (plain, eased))
    left = 4.0 * 2.0 * math.sqrt(2.0) ** 3 / 3.0 if stop else 0.0
    by_hand = 2.0 * 2.0 * (260.0 - 2.0 * stop) - left
    assert volume_of(before) - volume_of(after) == pytest.approx(by_hand, rel=1e-6)


def test_upright_legs_chamfered_all_round() -> None:
    """Legs 40 mm square without taper under a base 300 high: aprons take 60, the taper's start 10
    and the begin 12 mm; the rest, 218 mm, has four chamfers of 3 mm, each stopped once."""
    spec = set_values(
        default_spec(),
        {
            "base": "four legs",
            "base_height": 300.0,
            "splay": 0.0,
            "rake": 0.0,
            "leg_size": 40.0,
            "leg_foot": 40.0,
            "apron_height": 60.0,
            "leg_taper_start": 10.0,
        },
    )
    eased = set_values(spec, {"leg_edge": "chamfer"})
    before, after = (build(s).part("leg_front_left").shape for s in (spec, eased))
    run = 300.0 - 60.0 - 10.0 - 12.0
    stop = 2.0 * (3.0 / math.sqrt(2.0)) ** 3 / 3.0
    assert volume_of(before) - volume_of(after) == pytest.approx(4.0 * (run * 4.5 - stop), rel=1e-9)


def test_a_moulded_front_without_flare_goes_round_the_case() -> None:
    """Round-overs of 6 mm on a top with both ends mitred: its front's outside arris is 1200 long,
    shortened by the mitres at 45°, where the arc's area lies at its own distance from the face."""
    plain = set_values(default_spec(), {"flare": 0.0, "right_end": "mitred", "chamfer": 0.0})
    rounded = set_values(plain, {"edge_form": "round-over", "edge_size": 6.0})
    before, after = (build(s).part("top").shape for s in (plain, rounded))
    taken = volume_of(before) - volume_of(after)
    area = 36.0 * (1.0 - math.pi / 4.0)
    # The centroid of the corner beyond a quarter circle is s (10 - 3π) / (12 - 3π) from the faces.
    inward = 6.0 * (10.0 - 3.0 * math.pi) / (12.0 - 3.0 * math.pi)
    assert taken == pytest.approx(area * (1200.0 - 2.0 * inward), rel=0.06)


@pytest.mark.parametrize(
    ("side", "head", "joint"),
    [
        # x from the blank's end: 76.2 tan 15 to the straight edge's top, then 60 / cos 15 of joint
        ("inside", 76.2 * math.tan(math.radians(15.0)), 60.0 / math.cos(math.radians(15.0))),
        # the straight edge is inside: its top is the blank's; where the taper begins lies lower on
        # it by what the leg is wide and leans, (60 + 6 + 76.2 sin 15) / cos 15
        (
            "outside",
            0.0,
            (66.0 + 76.2 * math.sin(math.radians(15.0))) / math.cos(math.radians(15.0)),
        ),
    ],
)
def test_a_bridled_legs_arrises_begin_below_its_joint(side: str, head: float, joint: float) -> None:
    """12 mm below where joint and untapered part end, whichever reaches farther down the leg."""
    spec = set_values(default_spec(), {"base": "crossed stretchers", "taper_side": side})
    leg = build(set_values(spec, {"leg_edge": "chamfer"})).part("leg_front_left")
    starts = [cut.start[0] for cut in leg.shape.cuts if isinstance(cut, EdgeMoulding)]
    assert starts
    assert min(starts) == pytest.approx(head + joint + 12.0)
