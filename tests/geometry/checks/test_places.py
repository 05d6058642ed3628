"""Where findings are said to be, worked by hand.

The plain bench is 1200 long, 360 deep and 450 high, its case 300 on a base of 150, of boards of 20:
a partition in the middle, stopped 12 behind the front, housings 7 deep in a fit of 0.2, cut with
12.7.  Its left end is mitred; at the right the upright stands 60 in.  Legs stand 70 and 60 in.
"""

from __future__ import annotations

from functools import reduce

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.parameter import Value
from geometry.primitives.frame import Vec3

Steps = tuple[dict[str, Value], ...]

DRAWERS: Steps = (
    {"partition_count": 2.0},
    {"partition_1": 400.0, "partition_2": 800.0},
    {"opening_1_fill": "drawers", "opening_3_fill": "drawers", "opening_1_drawers": 2.0},
)
STRAIGHT: Steps = ({"flare": 0.0},)
SLAB: Steps = (*STRAIGHT, {"seat": "slab"}, {"base": "panel feet"})
PANELS: Steps = (*STRAIGHT, {"seat": "panel bench"})
HOUSED: Steps = (*PANELS, {"left_joint": "housed"}, {"right_joint": "housed"})
TAILED: Steps = (
    *PANELS,
    {"left_joint": "dovetailed"},
    {"timber": "Sitka spruce", "tail_slope": "1:6"},
)
UNDER: Steps = (*DRAWERS, {"runner_kind": "under-mounted"})

PLACES: tuple[tuple[str, Steps, dict[str, Value], Vec3], ...] = (
    # the partition's left face and front, on the bottom
    ("housing_cutter", (), {"cutter_diameter": 25.0}, (590.0, -348.0, 170.0)),
    ("round_stop", (), {"housing_cover": 0.4}, (590.0, -348.0, 170.0)),
    # the partition's front, on the housing's floor in the bottom
    ("stop_shows", (), {"housing_cover": 0.0}, (600.0, -348.0, 163.0)),
    # in the top from 430 up to 442; from the back's 6 to 4 + 6.35 + 0.1 short of the partition's
    # front, 348 - 10.45 = 337.55
    ("deep_housing", (), {"housing_depth": 12.0}, (600.0, -171.8, 436.0)),
    # 0 to 1140 along, in front of the back's 6, 14.5 of the back in it
    ("deep_rebate", (), {"rebate_depth": 15.0}, (570.0, -6.0, 437.25)),
    # the leg's corner under the case
    ("mortise_wall", (), {"base_thickness": 18.0}, (70.0, -60.0, 150.0)),
    ("thin_tenon", (), {"base_thickness": 17.0}, (70.0, -60.0, 150.0)),
    ("leg_outside", (), {"inset_left": -30.0}, (-30.0, -60.0, 150.0)),
    # in the middle between the feet; the stretchers are 60 high
    ("flat_lap", (), {"length": 3600.0}, (1800.0, -180.0, 120.0)),
    # the upper drawer: in the opening 20..390 the gap is 0.6, of 170..430 it has the upper half
    ("front_binds", DRAWERS, {"drawer_gap": 0.6}, (20.6, -348.0, 300.3)),
    # the upper drawer's left side, 12 thick and 12.7 off the upright: its inner 7
    ("deep_bottom_groove", DRAWERS, {"drawer_groove_depth": 7.0}, (41.2, -180.0, 321.9)),
    # 18 thick and 3 off the upright
    ("side_too_thick", UNDER, {"drawer_side_thickness": 18.0}, (32.0, -180.0, 368.0)),
    ("wide_seat_board", SLAB, {"seat_boards": 1.0}, (600.0, -180.0, 430.0)),
    # the left end is 32 thick and stands 120 in; in the middle of what its housing holds of it
    ("end_cutter", HOUSED, {"cutter_diameter": 35.0}, (136.0, -163.2, 413.5)),
    ("deep_end_housing", HOUSED, {"housing_depth": 21.0}, (136.0, -168.8, 420.5)),
    # in an end of 32 and a seat of 40 that lies on 410: the tail in front
    ("seat_tail_slope", TAILED, {"tail_slope": "1:8"}, (16.0, -327.4, 430.0)),
)


@pytest.mark.parametrize(("check", "sound", "change", "place"), PLACES)
def test_the_place_of_a_finding(
    check: str, sound: Steps, change: dict[str, Value], place: Vec3
) -> None:
    spec = reduce(set_values, sound, default_spec())
    assert not [one for one in findings(build(spec)) if one.check == check]
    found = [one for one in findings(build(set_values(spec, change))) if one.check == check]
    assert found[0].place == pytest.approx(place, abs=0.1)
