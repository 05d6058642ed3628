"""Lippings round a panel bench of sheet by hand: sizes, mitres, housings, and that nothing is lost.

Worked by hand from the numbers beside each test; boards with their lippings on are as large as
boards of timber.
"""

from __future__ import annotations

import csv
import io
import math

import pytest

from exporters.tables import cut_list_bytes
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.bench.panel_ends_numbers import BOTH_EDGES, FRONT_EDGES
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Value
from geometry.dimensioning.handholds import handholds
from geometry.solids.measure import bounding_box, volume_of
from shared.errors import CannotBuild
from shared.units import SHOWN_MM
from shared.words import Words

PANEL_BENCH: dict[str, Value] = {
    "seat": "panel bench",
    "length": 1200.0,
    "depth": 360.0,
    "base_height": 400.0,
    "seat_thickness": 24.0,
    "end_thickness": 18.0,
    "end_relief": 0.0,
    "end_reveal": 12.0,
    "right_end_in": 100.0,
    "housing_depth": 7.0,
}
MITRED = {"left_joint": "mitred", "right_joint": "mitred"}
MIXED = {"left_joint": "mitred", "right_joint": "housed"}


def bench_of(*changes: dict[str, Value], sheet: bool = True) -> Bench:
    spec = default_spec()
    material: dict[str, Value] = {"panel_made_of": "sheet"} if sheet else {}
    for change in (PANEL_BENCH, *changes, material):
        spec = set_values(spec, change)
    return build(spec)


def volume(bench: Bench, *names: str) -> float:
    return sum(volume_of(bench.part(name).shape) for name in names)


def test_the_sheet_is_narrower_by_its_lippings() -> None:
    """360 deep with 6 on both edges: 348 of sheet; with 6 on the front alone 354."""
    for lipped, wide in ((BOTH_EDGES, 348.0), (FRONT_EDGES, 354.0)):
        bench = bench_of(MITRED, {"panel_lipped": lipped, "panel_lip": 6.0})
        for name in ("seat", "end_left", "end_right"):
            assert bench.part(name).shape.blank.width == pytest.approx(wide)
            assert not bench.part(name).solid_timber
        ends = [p for p in bench.parts if p.kind in ("seat lipping", "end lipping")]
        assert len(ends) == (6 if lipped == BOTH_EDGES else 3)


@pytest.mark.parametrize("lipped", [BOTH_EDGES, FRONT_EDGES])
@pytest.mark.parametrize("joints", [MITRED, MIXED])
def test_nothing_is_lost(lipped: str, joints: dict[str, Value]) -> None:
    """Sheet and lippings together fill what the same bench of timber fills, but for the slots in a
    housed end that its lippings do not go into."""
    timber = bench_of(joints, sheet=False)
    sheet = bench_of(joints, {"panel_lipped": lipped})
    for board in ("seat", "end_left"):
        names = [p.name for p in sheet.parts if p.name == board or _strip_of(p.name, board)]
        got = volume(sheet, *names)
        # At a housed end the back lipping closes the housing, 18.2 wide and 7 deep, for its 6 mm.
        closed = 6.0 * 18.2 * 7.0 if board == "seat" and joints is MIXED else 0.0
        closed = closed if lipped == BOTH_EDGES else 0.0
        assert got == pytest.approx(volume(timber, board) + closed, rel=1e-9)


def _strip_of(name: str, board: str) -> bool:
    return name.startswith(f"{board}_") and name.endswith("lipping")


def test_a_housed_ends_lippings_stop_under_the_seat() -> None:
    """The end reaches 7 up into the seat, 407 in all; its lippings are 400 long, before its tongue
    and behind it.  It stands back 12: 348 wide, 336 of sheet."""
    bench = bench_of(MIXED)
    assert bench.part("end_right").shape.blank.width == pytest.approx(336.0)
    for name in ("end_right_lipping", "end_right_back_lipping"):
        blank = bench.part(name).shape.blank
        assert (blank.length, blank.width, blank.thickness) == pytest.approx((400.0, 18.0, 6.0))
    # 4 behind the end's front, which is 348 from the back: 344, and 338 on the sheet.
    housing = next(joint for joint in bench.joints if joint.name == "housing_right")
    measures = {one.name: one.value for one in housing.measures}
    assert measures["stop_from_back"] == pytest.approx(338.0)
    # The seat goes on past that end: its own end has a lipping, and the long ones go over that.
    assert bench.part("seat").shape.blank.length == pytest.approx(1194.0)
    across = bounding_box(bench.part("seat_right_lipping"))
    assert across[0] == pytest.approx((1194.0, -354.0, 400.0))
    assert across[1] == pytest.approx((1200.0, -6.0, 424.0))
    assert bench.part("seat_lipping").shape.blank.length == pytest.approx(1200.0)


def test_lippings_turn_a_mitred_corner() -> None:
    """A seat of 24 on an end of 18: the mitre leans atan(18 / 24) from upright on the seat, and
    both lippings are sawn along it: 1200 long above, 1164 below."""
    bench = bench_of(MITRED)
    strip = bench.part("seat_lipping")
    tilts = [
        math.degrees(math.atan2(abs(cut.outward[1]), abs(cut.outward[0])))
        for cut in strip.shape.cuts
    ]
    assert tilts == pytest.approx([math.degrees(math.atan(18.0 / 24.0))] * 2)
    # The mean of its two lengths, by 24 by 6.
    assert volume_of(strip.shape) == pytest.approx((1200.0 + 1164.0) / 2.0 * 24.0 * 6.0)
    # The end: 424 outside, 400 inside, by 18 by 6.
    end = bench.part("end_left_lipping")
    assert volume_of(end.shape) == pytest.approx((424.0 + 400.0) / 2.0 * 18.0 * 6.0)
    names = [joint.name for joint in bench.joints if joint.kind == "mitred lipping"]
    assert len(names) == 4


def test_a_round_front_lies_on_the_lipping_and_reaches_the_sheet_if_it_is_larger() -> None:
    seat = ("seat", "seat_lipping", "seat_right_lipping")
    for size, moulded in ((5.0, {"seat_lipping"}), (9.0, set(seat))):
        rounded: dict[str, Value] = {"seat_edge": "round-over", "seat_edge_size": size}
        bench, sharp = bench_of(MIXED, rounded), bench_of(MIXED)
        cut = {p.name for p in bench.parts for c in p.shape.cuts if isinstance(c, EdgeMoulding)}
        assert cut == moulded
        # As much is taken off as of the same seat of timber.
        timber = [bench_of(MIXED, one, sheet=False) for one in ({}, rounded)]
        whole = volume(timber[0], "seat") - volume(timber[1], "seat")
        assert volume(sharp, *seat) - volume(bench, *seat) == pytest.approx(whole, rel=1e-9)


def test_thin_ones_are_edge_bands() -> None:
    bench = bench_of(MITRED, {"panel_lip": 0.6})
    assert bench.part("seat_lipping").title == "Edge band, seat"
    assert bench.part("end_left_back_lipping").title == "Edge band at the back, left end"


def test_the_cut_list_gives_sheet_and_finished_size() -> None:
    parts = bench_of(MITRED).parts
    rows = list(
        csv.DictReader(io.StringIO(cut_list_bytes(parts, SHOWN_MM, Words.BRITISH).decode()))
    )
    seat = next(row for row in rows if row["Names"] == "seat")
    assert (seat["Blank width mm"], seat["Material"]) == ("348", "birch plywood")
    assert "360" in seat["Notes"]
    lip = next(row for row in rows if row["Names"] == "seat_lipping")
    assert lip["Finished thickness mm"] == "6"


def test_limits_by_hand() -> None:
    """The notch before the tongue is 4 of cover, 6.35 of cutter and 0.1 of fit: 10.45; half a
    millimetre of it stays in the sheet.  The housing stops 12 + 4 behind the seat's front."""
    spec = bench_of(MIXED).spec
    assert limits(spec, "panel_lip").maximum == pytest.approx(9.95)
    assert "notch" in limits(spec, "panel_lip").why_maximum
    spec = set_values(spec, {"end_reveal": 3.0})
    assert limits(spec, "panel_lip").maximum == pytest.approx(7.0)
    assert "seat's lipping" in limits(spec, "panel_lip").why_maximum
    # 6 of lipping and half the fit at both edges of 360; the rail is 26 thick.
    spec = bench_of(MITRED, {"seat_rail_thickness": 26.0}).spec
    back = limits(spec, "seat_rail_back")
    assert (back.minimum, back.maximum) == pytest.approx((6.1, 360.0 - 6.1 - 26.0))


def test_what_cannot_be_says_why() -> None:
    spec = bench_of(MITRED).spec
    with pytest.raises(CannotBuild, match="break along its layers"):
        set_values(spec, {"left_joint": "dovetailed"})
    with pytest.raises(CannotBuild, match="back lipping"):
        set_values(spec, {"back_rest": "rails"})
    tenoned = set_values(spec, {"back_rest": "rails", "post_fixing": "tenoned into the seat"})
    assert build(tenoned).part("post_1")
    plain = set_values(spec, {"panel_lipped": FRONT_EDGES})
    assert build(set_values(plain, {"back_rest": "rails"})).part("post_1")


def test_turning_back_to_timber_keeps_the_numbers() -> None:
    spec = bench_of(MIXED, {"panel_lip": 8.0}).spec
    back = set_values(spec, {"panel_made_of": "timber"})
    assert back.number("panel_lip") == 8.0
    assert build(back).part("seat").shape.blank.width == pytest.approx(360.0)
    assert set_values(back, {"panel_made_of": "sheet"}) == spec


def test_the_joints_behind_the_lippings_can_be_taken_hold_of() -> None:
    held = [one for one in handholds(bench_of(MIXED)) if one.pull.parameter == "panel_lip"]
    assert sorted(one.start[1] for one in held) == pytest.approx([-354.0, -6.0])


def test_stops_that_reach_the_lippings_of_ends_are_pulled_at_the_front() -> None:
    """A chamfer of 9 from 2 mm in goes over lippings of 6, whose run lies across it."""
    cut: dict[str, Value] = {"seat_edge": "chamfer", "seat_edge_size": 9.0, "seat_edge_stop": 2.0}
    bench = bench_of(MIXED, cut)
    assert any(isinstance(c, EdgeMoulding) for c in bench.part("seat_right_lipping").shape.cuts)
    assert [one for one in handholds(bench) if one.pull.parameter == "seat_edge_stop"]
