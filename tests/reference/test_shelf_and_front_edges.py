"""Edges of shelves and of drawer fronts by hand: what they take off, and where they end."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.drawer_numbers import drawers
from geometry.bench.groove_land import finger_profile, least_land
from geometry.bench.limits import limits, set_values
from geometry.cuts.edge_moulding import EdgeMoulding
from geometry.design.parameter import Value
from geometry.design.spec import BenchSpec
from geometry.solids.measure import volume_of

SHELVED = set_values(default_spec(), {"flare": 0.0, "opening_1_fill": "shelf"})
DRAWERS = set_values(
    default_spec(),
    {
        "flare": 0.0,
        "opening_1_fill": "drawers",
        "opening_1_drawers": 2.0,
        "opening_2_fill": "drawers",
        "drawer_front_thickness": 20.0,
        "drawer_allowance": 0.0,
    },
)


def taken(spec: BenchSpec, changes: dict[str, Value], part: str) -> float:
    before, after = (build(one).part(part) for one in (spec, set_values(spec, changes)))
    return volume_of(before.shape) - volume_of(after.shape)


def shelf_width(spec: BenchSpec) -> float:
    """Between the uprights: a shelf's length less two housings of 6."""
    return build(spec).part("shelf_1").shape.blank.length - 12.0


def test_a_shelfs_front_between_the_uprights() -> None:
    """Chamfers of 3, one and then two; the tongues in the housings stay whole, even where an edge
    goes deeper in than the notch before them."""
    wide = shelf_width(SHELVED)
    one: dict[str, Value] = {"shelf_edge": "chamfer", "shelf_edge_size": 3.0}
    assert taken(SHELVED, one, "shelf_1") == pytest.approx(4.5 * wide, rel=1e-6)
    both: dict[str, Value] = {**one, "shelf_edge_where": "upper and lower"}
    assert taken(SHELVED, both, "shelf_1") == pytest.approx(9.0 * wide, rel=1e-6)
    thick = set_values(SHELVED, {"shelf_thickness": 40.0, "cutter_diameter": 4.0})
    large: dict[str, Value] = {"shelf_edge": "chamfer", "shelf_edge_size": 20.0}
    assert taken(thick, large, "shelf_1") == pytest.approx(200.0 * wide, rel=1e-6)


def test_a_shelfs_front_stopped() -> None:
    """30 from both uprights; ends run out at 45 degrees and leave 2 D³ / 3 each, D = 3 / sqrt 2."""
    stopped: dict[str, Value] = {
        "shelf_edge": "chamfer",
        "shelf_edge_size": 3.0,
        "shelf_edge_stop": 30.0,
    }
    by_hand = 4.5 * (shelf_width(SHELVED) - 60.0) - 4.0 * (3.0 / math.sqrt(2.0)) ** 3 / 3.0
    assert taken(SHELVED, stopped, "shelf_1") == pytest.approx(by_hand, rel=1e-6)


@pytest.mark.parametrize("where", ["upper", "upper and lower"])
def test_a_lipped_shelfs_front(where: str) -> None:
    """Of 4 it stays in a lipping of 6; of 7 the sheet is cut too; both as of timber."""
    sheet = set_values(SHELVED, {"shelf_made_of": "sheet", "shelf_lip": 6.0, "shelf_thickness": 24})
    solid = set_values(sheet, {"shelf_made_of": "timber"})
    for size, core in ((4.0, False), (7.0, True)):
        edge: dict[str, Value] = {
            "shelf_edge": "chamfer",
            "shelf_edge_size": size,
            "shelf_edge_where": where,
        }
        off = [taken(sheet, edge, name) for name in ("shelf_1", "lipping_1")]
        assert (off[0] > 0.0) == core
        assert sum(off) == pytest.approx(taken(solid, edge, "shelf_1"), rel=1e-6)
    upper = build(set_values(sheet, {"shelf_edge": "cove"})).part("lipping_1")
    (cut,) = (cut for cut in upper.shape.cuts if isinstance(cut, EdgeMoulding))
    top = build(sheet).part("shelf_1").frame.origin[2]
    assert upper.frame.to_bench(cut.start)[2] == pytest.approx(top)


def test_all_round_a_front_and_at_top_and_bottom() -> None:
    """Chamfers of 4 share a third of 4³ at each corner; left oversize, the edges lie where the
    front is trimmed to, and as much is taken off."""
    name, drawer = "drawer_1_1_front", drawers(DRAWERS)[0]
    wide, high = drawer.front_width, drawer.front_height
    edge: dict[str, Value] = {"drawer_edge": "chamfer", "drawer_edge_size": 4.0}
    whole = 8.0 * 2.0 * (wide + high) - 4.0 * 4.0**3 / 3.0
    assert taken(DRAWERS, edge, name) == pytest.approx(whole, rel=1e-6)
    left_on = set_values(DRAWERS, {"drawer_allowance": 3.0})
    assert taken(left_on, edge, name) == pytest.approx(whole, rel=1e-6)
    two: dict[str, Value] = {**edge, "drawer_edge_where": "top and bottom"}
    assert taken(left_on, two, name) == pytest.approx(8.0 * 2.0 * wide, rel=1e-6)
    notes = build(set_values(left_on, edge)).part(name).notes
    assert "all arrises of the face eased once it is fitted" in notes


def test_a_carved_front_keeps_its_edges() -> None:
    carved = set_values(
        DRAWERS, {"drawer_edge": "round-over", "carving": "faceted", "carved_fronts": "1.1"}
    )
    moulded = {
        part.name
        for part in build(carved).parts
        if any(isinstance(cut, EdgeMoulding) for cut in part.shape.cuts)
    }
    assert moulded == {"drawer_1_2_front", "drawer_2_1_front"}


def test_a_finger_behind_an_eased_edge() -> None:
    """Of 20 at the edge 5 are eased away; with a land of 11 a finger gets 4 of the groove's 6 in,
    and right behind the edge 20 - 5 - 6 are left."""
    spec = set_values(
        DRAWERS,
        {
            "finger_groove": "top edge",
            "finger_radius": 6.0,
            "finger_land": 11.0,
            "drawer_edge": "round-over",
            "drawer_edge_size": 5.0,
        },
    )
    first = drawers(spec)[0]
    assert [deep for _, deep in finger_profile(spec, first)] == pytest.approx([4.0, 4.0])
    assert least_land(spec, first).wood == pytest.approx(9.0)


def test_limits_by_hand() -> None:
    """Half of 20, and with a groove of 12 behind it 20 - 12 - 1; of a shelf of 18 a third is left,
    by one arris or by two."""
    spec = set_values(DRAWERS, {"drawer_edge": "cove"})
    assert limits(spec, "drawer_edge_size").maximum == pytest.approx(10.0)
    grooved = set_values(spec, {"finger_groove": "bottom edge", "finger_radius": 12.0})
    assert limits(grooved, "drawer_edge_size").maximum == pytest.approx(7.0)
    shelf = set_values(SHELVED, {"shelf_edge": "cove"})
    assert limits(shelf, "shelf_edge_size").maximum == pytest.approx(12.0)
    both = set_values(shelf, {"shelf_edge_where": "upper and lower"})
    assert limits(both, "shelf_edge_size").maximum == pytest.approx(6.0)
