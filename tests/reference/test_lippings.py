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
