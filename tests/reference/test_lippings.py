"""Lippings by hand: core and finished sizes, and where the lipping stands."""

from __future__ import annotations

import csv
import io

import pytest

from exporters.tables import cut_list_bytes
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.solids.measure import bounding_box, volume_of
from shared.units import SHOWN_MM
from shared.words import Words

TIMBER = set_values(default_spec(), {"opening_1_fill": "shelf"})
SHEET = set_values(set_values(TIMBER, {"shelf_made_of": "sheet"}), {"shelf_lip": 8.0})


def test_a_core_is_narrower_by_its_lipping() -> None:
    """A shelf of the default bench: 360 deep, fronts 12 back, set back 10 more, behind it 6 mm of
    back: 332 mm wide finished; with a lipping of 8 mm its core is 324."""
    whole, bench = build(TIMBER).part("shelf_1"), build(SHEET)
    core, lip = bench.part("shelf_1"), bench.part("lipping_1")
    assert whole.shape.blank.width == pytest.approx(360.0 - 12.0 - 10.0 - 6.0)
    assert core.shape.blank.width == pytest.approx(324.0)
    assert (core.solid_timber, core.material) == (False, "birch plywood")
    assert lip.shape.blank.thickness == 8.0
    (low_core, high_core), (low_lip, high_lip) = bounding_box(core), bounding_box(lip)
    assert low_core[1] == pytest.approx(high_lip[1])
    assert low_lip[1] == pytest.approx(bounding_box(whole)[0][1])
    assert high_core[0] - low_core[0] == pytest.approx(high_lip[0] - low_lip[0] + 2.0 * 6.0)


def test_core_and_lipping_fill_what_was_one_piece() -> None:
    whole, bench = build(TIMBER).part("shelf_1"), build(SHEET)
    parts = (bench.part("shelf_1"), bench.part("lipping_1"))
    assert sum(volume_of(part.shape) for part in parts) == pytest.approx(volume_of(whole.shape))


def test_a_lipping_stays_in_front_of_the_tongue() -> None:
    """The notch is cover 4, radius 6.35 and half the fit long; half a millimetre of it stays."""
    assert limits(SHEET, "shelf_lip").maximum == pytest.approx(4.0 + 6.35 + 0.1 - 0.5)


def test_the_cut_list_gives_core_and_finished_size() -> None:
    rows = list(csv.DictReader(io.StringIO(_cut_list())))
    core = next(row for row in rows if row["Names"] == "shelf_1")
    assert core["Blank width mm"] == "324"
    assert "332" in core["Notes"]
    lip = next(row for row in rows if row["Names"] == "lipping_1")
    assert lip["Finished thickness mm"] == "8"


def _cut_list() -> str:
    return cut_list_bytes(build(SHEET).parts, SHOWN_MM, Words.BRITISH).decode("utf-8")


PARTITIONS = set_values(default_spec(), {"partition_made_of": "sheet", "partition_lip": 8.0})


def test_a_partition_keeps_its_depth() -> None:
    """Fronts 348 in front of the back edges, behind the middle one 6 mm of back: 342 and 348 deep,
    274 high in housings 7 deep.  Cores are 8 mm narrower, lippings stand between bottom and top:
    260."""
    bench, whole = build(PARTITIONS), build(default_spec())
    for name, deep in (("partition_1", 342.0), ("partition_right", 348.0)):
        core, lip = bench.part(name), bench.part(f"{name}_lipping")
        assert core.shape.blank.width == pytest.approx(deep - 8.0)
        assert (lip.shape.blank.length, lip.shape.blank.thickness) == pytest.approx((260.0, 8.0))
        (low, high), (low_lip, high_lip) = bounding_box(core), bounding_box(lip)
        assert (low[1], low_lip[1]) == pytest.approx((-340.0, -348.0))
        assert (low_lip[2] - low[2], high[2] - high_lip[2]) == pytest.approx((7.0, 7.0))
        assert sum(volume_of(part.shape) for part in (core, lip)) == pytest.approx(
            volume_of(whole.part(name).shape)
        )


def test_mouldings_run_through_lipping_and_sheet() -> None:
    """Whether they stay in the lipping or reach through it, what is left is as of one piece."""
    for form in ("chamfer", "round-over", "cove"):
        edges = {"partition_edge": form, "partition_edge_size": 5.0}
        whole = volume_of(build(set_values(default_spec(), edges)).part("partition_1").shape)
        for lip in (3.0, 5.0, 8.0):
            bench = build(set_values(PARTITIONS, edges | {"partition_lip": lip}))
            pieces = [bench.part(name) for name in ("partition_1", "partition_1_lipping")]
            assert sum(volume_of(part.shape) for part in pieces) == pytest.approx(whole), form
            assert (len(pieces[0].shape.cuts) > 2) == (lip < 5.0)


def test_housings_for_shelves_stop_behind_the_lipping() -> None:
    """A shelf set back 1 mm, its housing 4 more: a lipping of 5 mm."""
    spec = set_values(PARTITIONS, {"opening_1_fill": "shelf", "partition_lip": 2.0})
    spec = set_values(spec, {"opening_1_shelf_set_back": 1.0})
    assert limits(spec, "partition_lip").maximum == pytest.approx(5.0)


def test_thin_ones_are_edge_bands() -> None:
    assert build(set_values(PARTITIONS, {"partition_lip": 0.6})).part(
        "partition_1_lipping"
    ).title == ("Edge band, partition 1")


def test_a_lid_keeps_its_depth() -> None:
    """The lid of the default box with a lipping of 8: as deep together, the sheet 8 less."""
    box = set_values(default_spec(), {"seat": "box with a lid"})
    spec = set_values(set_values(box, {"lid_made_of": "sheet"}), {"lid_lip": 8.0})
    whole, bench = build(box).part("lid"), build(spec)
    core, lip = bench.part("lid"), bench.part("lid_lipping")
    assert core.shape.blank.width == pytest.approx(whole.shape.blank.width - 8.0)
    assert bounding_box(lip)[0] == pytest.approx(bounding_box(whole)[0])
    assert sum(volume_of(part.shape) for part in (core, lip)) == pytest.approx(
        volume_of(whole.shape)
    )
    # 18 in front of the box, whose front is 20 thick: the joint lies over its outer half.
    over, wall = spec.number("lid_front"), spec.number("box_thickness")
    assert limits(spec, "lid_lip").maximum == pytest.approx(over + wall / 2.0)
