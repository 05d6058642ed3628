"""Edges of a plinth and of a box by hand: what they take off, and that joints stay whole."""

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

PLINTH = set_values(default_spec(), {"base": "plinth"})
BOX = set_values(default_spec(), {"seat": "box with a lid"})
WALLS = ("box_front", "box_left", "box_right")
# Of a chamfer, and of a cove (a quarter of a circle round the arris): what one of 4 takes of a
# section, and how far in its middle lies.
AREAS = {"chamfer": (8.0, 4.0 / 3.0), "cove": (4.0 * math.pi, 16.0 / (3.0 * math.pi))}


def taken(before: BenchSpec, after: BenchSpec, kind: str = "") -> float:
    volumes = (
        sum(volume_of(p.shape) for p in build(one).parts if p.kind.startswith(kind))
        for one in (before, after)
    )
    return next(volumes) - next(volumes)


@pytest.mark.parametrize("corner", ["mitred", "butted"])
@pytest.mark.parametrize("where", ["upper", "lower"])
@pytest.mark.parametrize("form", ["chamfer", "cove"])
def test_round_a_plinth_it_takes_its_section_along_its_middle(
    corner: str, where: str, form: str
) -> None:
    """Outside it is 1060 by 280; a cove is made of chords, 0.1 off its arc at most."""
    spec = set_values(PLINTH, {"plinth_corner": corner})
    eased = {"plinth_edge": form, "plinth_edge_size": 4.0, "plinth_edge_where": where}
    area, within = AREAS[form]
    by_hand = area * 2.0 * (1060.0 - 2.0 * within + 280.0 - 2.0 * within)
    found = taken(spec, set_values(spec, eased), "plinth")
    assert found == pytest.approx(by_hand, rel=1e-6 if form == "chamfer" else 0.03)


def test_a_stopped_one_ends_on_each_board() -> None:
    eased: dict[str, Value] = {"plinth_edge": "chamfer", "plinth_edge_size": 4.0}
    spec = set_values(PLINTH, {**eased, "plinth_edge_stop": 30.0})
    by_hand = 2.0 * 8.0 * (1000.0 + 220.0) - 8.0 * 2.0 / 3.0 * (4.0 / math.sqrt(2.0)) ** 3
    assert taken(PLINTH, spec, "plinth") == pytest.approx(by_hand, rel=1e-6)


def test_limits_of_a_plinth() -> None:
    """Half of 20; a third of a height of 80 less feet of 60."""
    spec = set_values(PLINTH, {"plinth_edge": "round-over"})
    assert limits(spec, "plinth_edge_size").maximum == pytest.approx(10.0)
    raised = set_values(spec, {"base_height": 75.0, "foot": "pads"})
    assert limits(raised, "plinth_edge_size").maximum == pytest.approx(10.0)
    assert "half the plinth" in limits(spec, "plinth_edge_size").why_maximum


@pytest.mark.parametrize("corner", ["through dovetail", "box joint", "rebate and groove"])
@pytest.mark.parametrize("where", ["upper", "lower"])
def test_a_box_keeps_its_corners_and_its_bottom(corner: str, where: str) -> None:
    """1200 by 360 outside, walls of 20: from 12 behind the corner joints to 12 before the next."""
    spec = set_values(BOX, {"box_corner": corner})
    eased = set_values(spec, {"box_edge": "chamfer", "box_edge_size": 3.0, "box_edge_where": where})
    run_out = 2.0 / 3.0 * (3.0 / math.sqrt(2.0)) ** 3
    by_hand = 4.5 * (1136.0 + 2.0 * 296.0) - 6.0 * run_out
    assert taken(spec, eased) == pytest.approx(by_hand, rel=1e-6)
    level = 150.0 if where == "lower" else 150.0 + 278.0
    for name in WALLS:
        part = build(eased).part(name)
        (cut,) = (c for c in part.shape.cuts if isinstance(c, EdgeMoulding))
        (x0, y0, z0), (x1, y1, _) = (part.frame.to_bench(at) for at in (cut.start, cut.end))
        assert z0 == pytest.approx(level)
        long = sorted((x0, x1)) if name == "box_front" else sorted((y0, y1))
        ends = [32.0, 1168.0] if name == "box_front" else [-328.0, -32.0]
        assert long == pytest.approx(ends)


def test_beside_a_notch_it_stops_as_well() -> None:
    """A notch of 110 in the middle of 1200: 545 to its side."""
    notched = set_values(BOX, {"lid_grip": "notch in the front", "box_edge": "round-over"})
    runs = [
        sorted((cut.start[0], cut.end[0]))
        for cut in build(notched).part("box_front").shape.cuts
        if isinstance(cut, EdgeMoulding)
    ]
    assert sorted(runs) == [pytest.approx([32.0, 533.0]), pytest.approx([667.0, 1168.0])]


def test_limits_of_a_box() -> None:
    """Half of 20; of 20 less a rebate of 9, 2 must stay outside the bottom; 3 before a joint."""
    spec = set_values(BOX, {"box_edge": "chamfer"})
    assert limits(spec, "box_edge_size").maximum == pytest.approx(10.0)
    lower = set_values(spec, {"box_edge_where": "lower"})
    assert limits(lower, "box_edge_size").maximum == pytest.approx(9.0)
    assert "outside the bottom" in limits(lower, "box_edge_size").why_maximum
    assert limits(spec, "box_edge_stop").minimum == pytest.approx(3.0)
    assert "corner joints" in limits(spec, "box_edge_stop").why_minimum
