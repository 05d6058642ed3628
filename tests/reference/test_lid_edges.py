"""Edges of a lid by hand: what they take off, and where they end."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec, parameter
from geometry.bench.limits import limits, set_values
from geometry.bench.lipped import LIPPED_ALONG
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.measure import volume_of

ROUND_IT = LIPPED_ALONG[-1]

# A lid 1006 by 340 + 14 - 60 - 1.5 on a strip of 60; hinges let in 120 from its ends.
PLAIN = set_values(
    default_spec(),
    {
        "seat": "box with a lid",
        "length": 1000.0,
        "depth": 340.0,
        "lid_front": 14.0,
        "lid_ends": 3.0,
        "lid_strip": 60.0,
        "lid_gap": 1.5,
        "lid_thickness": 24.0,
    },
)
DEEP = 340.0 + 14.0 - 60.0 - 1.5
CHAMFERED: dict[str, Value] = {"lid_edge": "chamfer", "lid_edge_size": 6.0}
CORNER = 6.0**3 / 3.0  # mm³ that two chamfers of 6 share at a corner: a third of its cube


def taken(spec: BenchSpec, changes: dict[str, Value], part: str = "lid") -> float:
    before, after = (build(one).part(part) for one in (spec, set_values(spec, changes)))
    return volume_of(before.shape) - volume_of(after.shape)


def test_along_the_front_a_triangle_from_end_to_end() -> None:
    assert taken(PLAIN, CHAMFERED) == pytest.approx(18.0 * 1006.0, rel=1e-6)
    assert taken(PLAIN, CHAMFERED, "hinge_strip") == pytest.approx(0.0)


def test_stopped_it_runs_out_at_45_degrees() -> None:
    """100 from both ends; each run-out leaves two thirds of the cube of its depth, 6 / sqrt 2."""
    deep = 6.0 / math.sqrt(2.0)
    by_hand = 18.0 * 806.0 - 2.0 * 2.0 * deep**3 / 3.0
    assert taken(PLAIN, {**CHAMFERED, "lid_edge_stop": 100.0}) == pytest.approx(by_hand, rel=1e-6)


def test_along_the_ends_it_goes_on_over_the_strip() -> None:
    """On a strip the lid's back arris stays square, even if the back is asked for."""
    for where in ("front and ends", "front, ends and back"):
        ends: dict[str, Value] = {**CHAMFERED, "lid_edge_where": where}
        by_hand = 18.0 * (1006.0 + 2.0 * DEEP) - 2.0 * CORNER
        assert taken(PLAIN, ends) == pytest.approx(by_hand, rel=1e-6)
        assert taken(PLAIN, ends, "hinge_strip") == pytest.approx(18.0 * 2.0 * 60.0, rel=1e-6)


def test_all_round_a_lid_that_hangs_on_the_back() -> None:
    """There it reaches from the back edge, Y 0, to 14 before the box."""
    hung = set_values(PLAIN, {"lid_hung": "on the back"})
    all_round: dict[str, Value] = {**CHAMFERED, "lid_edge_where": "front, ends and back"}
    by_hand = 18.0 * 2.0 * (1006.0 + 354.0) - 4.0 * CORNER
    assert taken(hung, all_round) == pytest.approx(by_hand, rel=1e-6)


def test_on_sheet_it_lies_on_the_lipping() -> None:
    """Of 5 in a lipping of 6 it stays in that; of 9 the sheet is cut too, as much as of timber.
    Ends without a lipping are not asked for: nothing hides the sheet there."""
    sheet = set_values(PLAIN, {"lid_made_of": "sheet", "lid_lip": 6.0})
    five: dict[str, Value] = {"lid_edge": "round-over", "lid_edge_size": 5.0}
    assert taken(sheet, five) == pytest.approx(0.0)
    assert taken(sheet, five, "lid_lipping") == pytest.approx(taken(PLAIN, five), rel=1e-6)
    nine: dict[str, Value] = {"lid_edge": "chamfer", "lid_edge_size": 9.0}
    off = taken(sheet, nine) + taken(sheet, nine, "lid_lipping")
    assert off == pytest.approx(40.5 * 1006.0, rel=1e-6)
    assert not parameter("lid_edge_where").applies(set_values(sheet, nine))


@pytest.mark.parametrize("size", [5.0, 9.0])
def test_on_sheet_with_lippings_round_it_they_go_all_round(size: float) -> None:
    """As much is taken off as of timber: of 5 off the lippings of 6 alone, of 9 off the sheet."""
    hung = set_values(PLAIN, {"lid_hung": "on the back"})
    sheet = set_values(hung, {"lid_made_of": "sheet", "lid_lip": 6.0, "lid_lipped": ROUND_IT})
    edge: dict[str, Value] = {
        "lid_edge": "chamfer",
        "lid_edge_size": size,
        "lid_edge_where": "front, ends and back",
    }
    names = [part.name for part in build(sheet).parts if part.kind == "lid lipping"]
    assert len(names) == 4
    off = [taken(sheet, edge, name) for name in ("lid", *names)]
    assert (off[0] > 0.0) == (size > 6.0)
    assert sum(off) == pytest.approx(taken(hung, edge), rel=1e-6)


def test_limits_by_hand() -> None:
    """Three quarters of 24; 12 less 2 beside the leaves at a strip; under the back arris of a lid
    that hangs on the back the leaf is let in half of 3.2, and 2 stay over it."""
    spec = set_values(PLAIN, CHAMFERED)
    assert limits(spec, "lid_edge_size").maximum == pytest.approx(18.0)
    wide = set_values(spec, {"lid_ends": 20.0})
    ends = set_values(wide, {"lid_edge_where": "front and ends", "hinge_in": 12.0})
    assert limits(ends, "lid_edge_size").maximum == pytest.approx(10.0)
    assert "hinge's leaf" in limits(ends, "lid_edge_size").why_maximum
    thin = set_values(spec, {"lid_hung": "on the back", "lid_thickness": 12.0})
    round_it = set_values(thin, {"lid_edge_where": "front, ends and back"})
    assert limits(round_it, "lid_edge_size").maximum == pytest.approx(12.0 - 1.6 - 2.0)


def test_ends_keep_off_the_screws_of_the_strip() -> None:
    """They stand in the middles of ends of 20 under a lid that stands out 3: 13 in, less half a
    head of 8.3312 and the millimetre beside it."""
    ends = set_values(PLAIN, {"lid_edge": "cove", "lid_edge_where": "front and ends"})
    allowed = limits(ends, "lid_edge_size")
    assert allowed.maximum == pytest.approx(13.0 - 8.3312 / 2.0 - 1.0, abs=1e-3)
    assert "screws" in allowed.why_maximum
    flush = set_values(PLAIN, {**CHAMFERED, "lid_ends": 0.0})
    moved = set_values(flush, {"lid_edge_where": "front and ends"})
    assert 0.5 <= moved.number("lid_edge_size") <= allowed.maximum - 3.0
