"""Volumes of the bases' pieces worked by hand, from the catalogue's default numbers.

mm³.  Rounds are flattened to chords that stray at most the chord error from the circle, so a round
tenon's section is short of pi r² by less than its circumference times two thirds of that.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR
from tests.reference.benches import bench_with

UPRIGHT = {"base": "four legs", "splay": 0, "rake": 0, "flare": 0}


def volume(bench: Bench, name: str) -> float:
    return volume_of(bench.part(name).shape)


def test_mitred_plinth() -> None:
    """150 high, 20 thick, outside 1060 x 280; a mitred board is as long as the mean of its two
    edges.  Front: (1060 + 1020) / 2 x 150 x 20 = 3 120 000; side (280 + 240) / 2 x 3000 = 780 000.
    Blocks 35 x 35 x (150 - 5) = 177 625."""
    bench = bench_with({"base": "plinth"})
    for side in ("front", "back"):
        assert volume(bench, f"plinth_{side}") == pytest.approx(3_120_000.0)
    for side in ("left", "right"):
        assert volume(bench, f"plinth_{side}") == pytest.approx(780_000.0)
    assert volume(bench, "corner_block_front_left") == pytest.approx(177_625.0)


def test_butted_plinth() -> None:
    """Front 1060 x 150 x 20 = 3 180 000; sides 240 x 3000 = 720 000: together the same."""
    bench = bench_with({"base": "plinth", "plinth_corner": "butted", "plinth_blocks": "without"})
    assert volume(bench, "plinth_front") == pytest.approx(3_180_000.0)
    assert volume(bench, "plinth_left") == pytest.approx(720_000.0)
    whole = sum(volume(bench, p.name) for p in bench.parts if p.kind == "plinth")
    assert whole == pytest.approx(2 * 3_120_000.0 + 2 * 780_000.0)
    assert not [part for part in bench.parts if part.kind == "corner block"]


def test_panel_foot() -> None:
    """150 x 280 x 30 = 1 260 000; relief 10 x (280 - 90) x 30 = 57 000; the wedged mortise
    12.2 wide, 54 high inside and 62 outside: 12.2 x 58 x 30 = 21 228; left 1 181 772."""
    bench = bench_with({"base": "panel feet"})
    for side in ("left", "right"):
        assert volume(bench, f"panel_foot_{side}") == pytest.approx(1_181_772.0)
    # The rail: 1000 x 70 x 26 = 1 820 000, and two tenons 30 x 54 x 12 = 19 440.
    assert volume(bench, "rail") == pytest.approx(1_820_000.0 + 2 * 19_440.0)
    # A wedge: 30 x 4 / 2 x 12 = 720.
    assert volume(bench, "wedge_left_upper") == pytest.approx(720.0)


def test_middle_panel_lets_the_rail_through() -> None:
    """1 260 000 - 57 000 less 70 x (26 + 0.2) x 30 = 55 020: 1 147 980."""
    bench = bench_with({"base": "panel feet", "panel_count": 3})
    assert volume(bench, "panel_foot_middle") == pytest.approx(1_147_980.0)


def test_rail_and_stretcher_of_trestles() -> None:
    """Rail between shoulders 1060 - 80 = 980 x 50 x 32 = 1 568 000, tenons 2 x 40 x 34 x 20 =
    54 400.  Stretcher: tip to tip 240, below longer by 2 x 60 x tan 15 = 32.154: side
    (240 + 272.154) / 2 x 60 = 15 364.6, x 40 = 614 584.7; cheeks at each end 76.2 / cos 15 =
    78.8881 x 60 x (40 - 40 / 3) = 126 220.9; the mortise 20.2 high, 34 inside and 44 outside:
    20.2 x 39 x 40 = 31 512; left 330 630.9."""
    bench = bench_with({"base": "trestles", "flare": 0})
    assert volume(bench, "rail") == pytest.approx(1_622_400.0)
    side = (240.0 + 240.0 + 120.0 * math.tan(math.radians(15))) / 2.0 * 60.0 * 40.0
    cheeks = 2.0 * 76.2 / math.cos(math.radians(15)) * 60.0 * (40.0 - 40.0 / 3.0)
    by_hand = side - cheeks - 31_512.0
    assert by_hand == pytest.approx(330_630.9, abs=0.2)
    for name in ("stretcher_left", "stretcher_right"):
        assert volume(bench, name) == pytest.approx(by_hand, abs=0.01)
    # A wedge: 40 x 5 / 2 x 20 = 2000.
    assert volume(bench, "wedge_right_front") == pytest.approx(2_000.0)


def test_upright_leg_between_aprons() -> None:
    """45 x 45 for 60 + 10 = 70: 141 750; the frustum to 30 x 30 over the other 80:
    80 / 3 x (2025 + 900 + 1350) = 114 000; two mortises 8.2 x 40 x 21 = 6 888 each: 241 974."""
    bench = bench_with(UPRIGHT)
    for part in bench.parts:
        if part.kind == "leg":
            assert volume(bench, part.name) == pytest.approx(241_974.0)


def test_upright_aprons() -> None:
    """970 x 60 x 22 = 1 280 400 and two tenons 20 x 40 x 8 = 6 400: 1 293 200; ends
    190 x 1320 = 250 800, 263 600."""
    bench = bench_with(UPRIGHT)
    assert volume(bench, "apron_front") == pytest.approx(1_293_200.0)
    assert volume(bench, "apron_right") == pytest.approx(263_600.0)


def test_leaning_front_apron() -> None:
    """Rake 8, splay 15.  The section, with its upper edge bevelled, has one long side on the outer
    face, 60 / cos 8 = 60.5897, and one longer by 22 x tan 8 = 3.0919 on the inner: area
    22 x (60.5897 + 63.6816) / 2 = 1366.984.  Both shoulders are mitred by m, tan m = tan 15 x
    cos 8 = 0.265342, so a line of the section is longer by 2 tan m for each mm further down:
    the volume is the area times the length at its centre of gravity.

    From the outer upper arris, down the face: the outer part is a rectangle 60.5897 long with its
    centre at 30.2948, the bevel a triangle 3.0919 x 22 / 2 = 34.011 above it, centred at -1.0306.
    Centre (1332.973 x 30.2948 - 34.011 x 1.0306) / 1366.984 = 29.5154.  At the
    legs' front faces their inner faces are 1060 - 2 x 45 / cos m apart at the top.  The apron's
    outer face lies 4 behind, and its upper arris 4 x tan 8 farther up the slope, where they are
    nearer by 2 x tan m for each mm.
    """
    bench = bench_with({"base": "four legs", "flare": 0})
    tan15, tan8 = math.tan(math.radians(15)), math.tan(math.radians(8))
    cos8 = math.cos(math.radians(8))
    tan_m = tan15 * cos8
    width = 60.0 / cos8
    rectangle, bevel = 22.0 * width, 22.0 * tan8 * 22.0 / 2.0
    area = rectangle + bevel
    assert area == pytest.approx(1366.984, abs=1e-3)
    centre = (rectangle * width / 2.0 - bevel * 22.0 * tan8 / 3.0) / area
    assert centre == pytest.approx(29.5154, abs=1e-3)
    between = 1060.0 - 2.0 * 45.0 * math.hypot(1.0, tan_m) - 2.0 * tan_m * 4.0 * tan8
    # Each tenon: 20 square to the face is 20 x hypot(1, tan m) along the grain.
    tenon = 20.0 * math.hypot(1.0, tan_m) * (width - 20.0) * 8.0
    by_hand = area * (between + 2.0 * tan_m * centre) + 2.0 * tenon
    assert volume(bench, "apron_front") == pytest.approx(by_hand, abs=0.5)


def test_upright_round_tenon_and_its_bore() -> None:
    """Leg 45 x 45 to 10 below the board, then tapering to 30 x 30 over 140: 20 250 +
    140 / 3 x (2025 + 900 + 1350) = 199 500; the tenon pi x 12.5² x 20 = 9 817.5, less its slot,
    a wedge 4 thick, 15 deep and as wide as the tenon: 4 x 15 / 2 x 24.87 on the mean."""
    bench = bench_with(
        {**UPRIGHT, "leg_joint": "round tenons", "inset_left": 60, "inset_right": 110}
    )
    section = math.pi * 12.5**2
    short = 2.0 * math.pi * 12.5 * 2.0 / 3.0 * CHORD_ERROR * 20.0
    # Across the slot at x from its middle: 2 sqrt(12.5² - x²); the slot is 15 (1 - x / 2) deep.
    steps = 2000
    slot = sum(
        2.0 * math.sqrt(12.5**2 - x * x) * 15.0 * (1.0 - abs(x) / 2.0) * 4.0 / steps
        for x in (-2.0 + 4.0 * (k + 0.5) / steps for k in range(steps))
    )
    by_hand = 20_250.0 + 199_500.0 + section * 20.0 - slot
    for part in bench.parts:
        if part.kind == "leg":
            assert 0.0 <= by_hand - volume(bench, part.name) <= short
    # The wedge: 4 x 15 / 2 x 2 sqrt(12.5² - 4²).
    wide = 2.0 * math.sqrt(12.5**2 - 16.0)
    assert volume(bench, "wedge_front_left") == pytest.approx(30.0 * wide)
    plain = bench_with({**UPRIGHT, "inset_left": 60, "inset_right": 110})
    taken = (volume(plain, "bottom") - volume(bench, "bottom")) / 4.0
    bore = math.pi * 12.6**2 * 20.0
    assert 0.0 <= bore - taken <= 2.0 * math.pi * 12.6 * 2.0 / 3.0 * CHORD_ERROR * 20.0
