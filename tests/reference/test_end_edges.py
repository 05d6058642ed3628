"""Edges of a panel bench's ends by hand: what they take off, and where they end."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.measure import volume_of

PLAIN = set_values(
    set_values(default_spec(), {"seat": "panel bench", "base_height": 400.0, "end_relief": 0.0}),
    {"seat_thickness": 40.0, "end_thickness": 32.0, "depth": 360.0},
)
CHAMFERED: dict[str, Value] = {"end_edge": "chamfer", "end_edge_size": 6.0}


def taken(spec: BenchSpec, changes: dict[str, Value], part: str = "end_left") -> float:
    before, after = (build(one).part(part) for one in (spec, set_values(spec, changes)))
    return volume_of(before.shape) - volume_of(after.shape)


@pytest.mark.parametrize("joint", ["housed", "dovetailed"])
def test_under_a_seat_they_run_from_the_floor_to_its_underside(joint: str) -> None:
    """A triangle of 6 by 6, 400 long."""
    spec = set_values(PLAIN, {"left_joint": joint, "right_joint": joint})
    assert taken(spec, CHAMFERED) == pytest.approx(18.0 * 400.0, rel=1e-6)


def test_at_a_mitre_they_run_on_to_it() -> None:
    """Outside the end is 440 high; the mitre falls 40 over its 32, and the triangle's centroid lies
    2 from the outside."""
    assert taken(PLAIN, CHAMFERED) == pytest.approx(18.0 * (440.0 - 2.0 * 40.0 / 32.0), rel=1e-6)
    assert taken(PLAIN, CHAMFERED, "end_right") == pytest.approx(taken(PLAIN, CHAMFERED))


def test_stopped_ones_end_under_the_seat_and_above_the_floor() -> None:
    """50 from both: 300 between; each end runs out at 45 degrees within that, by two thirds of the
    cube of the flat's depth, 6 / sqrt 2."""
    stopped: dict[str, Value] = {**CHAMFERED, "end_edge_stop": 50.0}
    deep = 6.0 / math.sqrt(2.0)
    by_hand = 300.0 * 18.0 - 2.0 * 2.0 * deep**3 / 3.0
    assert taken(PLAIN, stopped) == pytest.approx(by_hand, rel=1e-6)


def test_on_sheet_they_lie_on_the_lipping() -> None:
    """Of 5 in a lipping of 6 they stay in it; of 9 the sheet behind it is cut too, and as much is
    taken off as of an end of timber."""
    sheet = set_values(PLAIN, {"panel_made_of": "sheet", "panel_lip": 6.0})
    for size, moulded in ((5.0, {"end_left_lipping"}), (9.0, {"end_left", "end_left_lipping"})):
        edge: dict[str, Value] = {"end_edge": "chamfer", "end_edge_size": size}
        parts = build(set_values(sheet, edge)).parts
        cut = {p.name for p in parts for c in p.shape.cuts if isinstance(c, EdgeMoulding)}
        assert {name for name in cut if name.startswith("end_left")} == moulded
        off = sum(taken(sheet, edge, name) for name in ("end_left", "end_left_lipping"))
        assert off == pytest.approx(taken(PLAIN, edge), rel=1e-6)


def test_limits_by_hand() -> None:
    """Half of 32; 15 of pad less 2; and where the rail stands 10 back and its tenon 7 behind its
    face, the fit takes 0.1 and 2 of wood must stay."""
    spec = set_values(PLAIN, CHAMFERED)
    assert limits(spec, "end_edge_size").maximum == pytest.approx(16.0)
    assert "half the end's thickness" in limits(spec, "end_edge_size").why_maximum
    padded = set_values(spec, {"end_relief": 20.0, "end_pad": 15.0})
    assert limits(padded, "end_edge_size").maximum == pytest.approx(13.0)
    near = set_values(
        spec,
        {"seat_rail_back": 10.0, "seat_rail_thickness": 26.0, "seat_rail_tenon": 12.0},
    )
    assert limits(near, "end_edge_size").maximum == pytest.approx(10.0 + 7.0 - 0.1 - 2.0)
