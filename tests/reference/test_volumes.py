"""Volumes of parts against sums worked by hand, written out with their numbers.

Units mm, mm², mm³.  Arcs are chords in the solids: between a chord and an arc that strays from it
by e lies 2/3 e for each mm of chord, so a corner of radius 6.35, pi/2 x 6.35 = 9.97 long, loses at
most 6.65 e mm², and a board may be larger than by hand by 6.65 e times the housing's depth.
"""

from __future__ import annotations

import math

import pytest

from geometry.bench.bench import Bench
from geometry.solids.measure import volume_of
from shared.tolerances import CHORD_ERROR
from tests.reference.benches import bench_with

ROUND = 6.65 * CHORD_ERROR * 7.0  # mm³ a corner of a housing 7 deep, see above
TAN15, COS15 = 0.26794919, 0.96592583


def volume(bench: Bench, name: str) -> float:
    return volume_of(bench.part(name).shape)


def test_plain_bottom_with_three_housings_and_a_rebate() -> None:
    """F = 0, both ends open, one partition in the middle, no chamfer.

    Board      1200 x 360 x 20                                   = 8 640 000
    Housing    20.2 x 344 - 2 x 6.35² x (1 - pi/4)
               = 6948.8 - 17.306 = 6931.494, x 7 deep            = 48 520.46, three: 145 561.37
    Rebate     from 80 - 6 to 1120 + 6: 1052 x 6 x 6             = 37 872
      less what the housings have taken: 20.2 x 36 = 727.2, and
      80.1 - 74 = 6.1 x 36 = 219.6 at either end                 = 1 166.4
    Left                                                           8 457 733.0
    """
    bench = bench_with({"flare": 0, "left_end": "open", "chamfer": 0})
    corner = 6.35**2 * (1.0 - math.pi / 4.0)
    assert corner == pytest.approx(8.653, abs=1e-3)
    by_hand = 8_640_000.0 - 3 * 7 * (20.2 * 344.0 - 2 * corner) - (37_872.0 - 1_166.4)
    assert by_hand == pytest.approx(8_457_733.0, abs=0.1)
    assert 0.0 <= volume(bench, "bottom") - by_hand <= 6 * ROUND
    # Top and bottom of a plain case are mirror images.
    assert volume(bench, "top") == pytest.approx(volume(bench, "bottom"), abs=1e-3)


def test_chamfer_on_a_plain_board() -> None:
    """2 x 2 / 2 = 2 mm² over 1200."""
    plain = {"flare": 0, "left_end": "open"}
    sharp, eased = bench_with({**plain, "chamfer": 0}), bench_with({**plain, "chamfer": 2})
    for name in ("top", "bottom"):
        assert volume(sharp, name) - volume(eased, name) == pytest.approx(2400.0, abs=1e-3)
    # At the leaning front the flat runs from 2 back on the face to 2 up the edge: the triangle
    # between (0, 0), (-2, 0) and (0.4, 2), of area 2 again, whatever the lean.
    leaning = {"left_end": "open", "partition_count": 0}
    sharp, eased = bench_with({**leaning, "chamfer": 0}), bench_with({**leaning, "chamfer": 2})
    assert volume(sharp, "bottom") - volume(eased, "bottom") == pytest.approx(2400.0, abs=1e-3)


BOXED = {"right_end": "mitred", "partition_count": 0, "chamfer": 0}


def test_flared_top_between_two_mitres() -> None:
    """L 1200, D 360, F 60 to x1 = 240, run-out to x2 = 700, H 300, board 20.

    In plan    1200 x 360 + 240 x 60 + 460 x 60 / 2 = 460 200, x 20 = 9 204 000
    Bevel      a wedge 20 high and 60 x 20 / 300 = 4 wide: 40 x 240 =     9 600
    Left mitre at h below the top face h wide and 420 - h / 5 deep:
               420 x 20² / 2 - 20³ / 15 = 84 000 - 533.333          =    83 466.667
    Right      360 x 20² / 2                                        =    72 000
    Rebate     6 wide, h from 14 to 20 between the mitres, 1200 - 2 h long:
               6 x (1200 x 6 - (20² - 14²)) = 6 x 6996              =    41 976
    Left                                                              8 996 957.333
    """
    by_hand = 9_204_000 - 9_600 - (84_000 - 8_000 / 15) - 72_000 - 41_976
    assert by_hand == pytest.approx(8_996_957.333, abs=1e-3)
    assert volume(bench_with(BOXED), "top") == pytest.approx(by_hand, abs=1e-2)


def test_leaning_bottom_between_two_mitres() -> None:
    """At h above the underside 360 + h / 5 deep, on the mean 362: 1200 x 362 x 20 = 8 688 000.
    Mitres 2 x (360 x 20² / 2 + 20³ / 15) = 2 x 72 533.333; rebate 41 976 as in the top."""
    by_hand = 8_688_000 - 2 * (72_000 + 8_000 / 15) - 41_976
    assert by_hand == pytest.approx(8_500_957.333, abs=1e-3)
    assert volume(bench_with(BOXED), "bottom") == pytest.approx(by_hand, abs=1e-2)


def test_tapered_end_panel() -> None:
    """A trapezium 300 high, 360 deep below and 420 above: 117 000, x 20 = 2 340 000.
    Both mitres: at x from the outside, x high, together 360 + 420 = 780 deep (what the lean adds
    below it takes above): 780 x 20² / 2 = 156 000.  Rebate 6 x (300 x 6 - (20² - 14²)) = 9 576."""
    by_hand = 2_340_000 - 156_000 - 9_576
    assert by_hand == 2_174_424
    assert volume(bench_with(BOXED), "end_panel_left") == pytest.approx(by_hand, abs=1e-2)


def test_partitions_with_notches() -> None:
    """Between: 274 high, 348 - 6 = 342 deep, 20 thick = 1 874 160; the notches are 7 high and
    348 - (344 - 6.35 - 0.1) = 10.45 long: 2 x 7 x 10.45 x 20 = 2 926; left 1 871 234.
    Set in: 274 x 348 x 20 = 1 907 040, less 2 926 and the rebate 274 x 6 x 6 = 9 864."""
    bench = bench_with({})
    assert volume(bench, "partition_1") == pytest.approx(1_871_234.0, abs=1e-2)
    assert volume(bench, "partition_right") == pytest.approx(
        1_907_040.0 - 2_926.0 - 9_864.0, abs=1e-2
    )


def test_back_sheet() -> None:
    """1111 x 271 x 6 = 1 806 486."""
    assert volume(bench_with({}), "back") == pytest.approx(1_806_486.0, abs=1e-3)


def test_leg_with_its_slot_and_taper() -> None:
    """Level widths 76.2 / cos 15° = 78.8881 above and 25.4 / cos 15° = 26.2960 at the floor.
    The joint and 6 below it, 66 high, are a parallelogram: 78.8881 x 66 = 5206.61; the taper's 84
    a trapezium: (78.8881 + 26.2960) / 2 x 84 = 4417.73; together 9624.34, x 40 = 384 973.7.
    The open mortise: 78.8881 x 60 x (40 / 3 + 0.2) = 64 057.1.  Left 320 916.6."""
    wide, narrow = 76.2 / COS15, 25.4 / COS15
    by_hand = 40.0 * (wide * 66.0 + (wide + narrow) / 2.0 * 84.0)
    assert by_hand == pytest.approx(384_973.7, abs=0.1)
    by_hand -= wide * 60.0 * (40.0 / 3.0 + 0.2)
    assert by_hand == pytest.approx(320_916.6, abs=0.1)
    bench = bench_with({})
    for corner in ("back_left", "back_right", "front_left", "front_right"):
        assert volume(bench, f"leg_{corner}") == pytest.approx(by_hand, abs=0.1)


def test_stretcher_with_its_tenons_and_lap() -> None:
    """Tip to tip hypot(1060, 240) = 1086.8302; below longer by 2 x 60 x tan 15° = 32.1539.
    Side (1086.8302 + 1118.9842) / 2 x 60 = 66 174.43, x 40                 = 2 646 977.3
    Cheeks at each end 78.8881 x 60 x (40 - 40 / 3) = 126 220.9, two        =   252 441.8
    Lap: walls 40.2 apart across a piece of 40, at an angle whose sine is
    2 x 1060 x 240 / 1086.8302² = 0.430748: 40.2 x 40 / 0.430748 = 3733.04,
    x 30 deep                                                               =   111 991.2
    Left                                                                      2 282 544.3
    """
    run = math.hypot(1060.0, 240.0)
    side = (run + run + 120.0 * TAN15) / 2.0 * 60.0 * 40.0
    assert side == pytest.approx(2_646_977.3, abs=0.5)
    cheeks = 2.0 * 76.2 / COS15 * 60.0 * (40.0 - 40.0 / 3.0)
    lap = 40.2 * 40.0 / (2.0 * 1060.0 * 240.0 / run**2) * 30.0
    by_hand = side - cheeks - lap
    assert by_hand == pytest.approx(2_282_544.3, abs=1.0)
    bench = bench_with({})
    for name in ("stretcher_back_left", "stretcher_front_left"):
        assert volume(bench, name) == pytest.approx(by_hand, abs=0.1)
