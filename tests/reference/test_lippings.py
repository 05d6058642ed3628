"""Lippings by hand: core and finished sizes, and where the lipping stands."""

from __future__ import annotations

import csv
import io

import pytest

from exporters.tables import cut_list_bytes
from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import limits, set_values
from geometry.checks.all_checks import findings
from geometry.cuts.hinge_mortise import HingeMortise
from geometry.design.parameter import Value
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


BOX: dict[str, Value] = {"seat": "box with a lid", "lid_thickness": 24.0, "lid_ends": 0.0}
# The edges of a lid, and how many strips they have.
ALONG = {"front": 1, "front and back": 2, "front and ends": 3, "all round": 4}


def _lid(hung: str, along: str, lip: float) -> tuple[Bench, Bench]:
    """The lid of the default box of timber, and of sheet lipped so."""
    whole = set_values(set_values(default_spec(), BOX), {"lid_hung": hung})
    sheet = set_values(whole, {"lid_made_of": "sheet"})
    return build(whole), build(set_values(sheet, {"lid_lipped": along, "lid_lip": lip}))


@pytest.mark.parametrize("hung", ["on a fixed strip", "on the back"])
@pytest.mark.parametrize("along", ALONG)
@pytest.mark.parametrize("lip", [0.6, 8.0])
def test_a_lid_is_as_large_as_of_one_piece(hung: str, along: str, lip: float) -> None:
    """By volume, mortises and all, and by what it reaches; the sheet is less by what is on it."""
    timber, bench = _lid(hung, along, lip)
    whole, core = timber.part("lid"), bench.part("lid")
    strips = [part for part in bench.parts if part.kind == "lid lipping"]
    assert len(strips) == ALONG[along]
    back, ends = along in ("front and back", "all round"), along in ("front and ends", "all round")
    blank, sizes = core.shape.blank, whole.shape.blank
    assert blank.width == pytest.approx(sizes.width - lip * (2 if back else 1))
    assert blank.length == pytest.approx(sizes.length - lip * (2 if ends else 0))
    assert sum(volume_of(part.shape) for part in (core, *strips)) == pytest.approx(
        volume_of(whole.shape)
    )
    boxes = [bounding_box(part) for part in (core, *strips)]
    for axis in range(3):
        assert min(box[0][axis] for box in boxes) == pytest.approx(bounding_box(whole)[0][axis])
        assert max(box[1][axis] for box in boxes) == pytest.approx(bounding_box(whole)[1][axis])
    # The long ones go over those on the ends.
    if ends:
        long, across = bench.part("lid_lipping"), bench.part("lid_left_lipping")
        assert long.shape.blank.length == pytest.approx(sizes.length)
        assert across.shape.blank.length == pytest.approx(blank.width)


def test_hinges_lie_in_the_back_lipping() -> None:
    """A hinge 3.2 thick when closed at a gap of 1.5 is let in by 0.85: all of it in a lipping of
    8; through a band of 0.6 it goes 0.25 into the sheet.  Let into the underside, its leaves of 14
    reach through 8 of lipping into 6 of sheet."""
    rows: tuple[tuple[str, float, float, float], ...] = (
        ("on a fixed strip", 8.0, 0.85, 0.0),
        ("on a fixed strip", 0.6, 0.6, 0.25),
        ("on the back", 8.0, 8.0, 6.0),
    )
    for hung, lip, in_lipping, in_sheet in rows:
        _, bench = _lid(hung, "all round", lip)
        for name, deep in (("lid_back_lipping", in_lipping), ("lid", in_sheet)):
            cuts = [c for c in bench.part(name).shape.cuts if isinstance(c, HingeMortise)]
            assert len(cuts) == (2 if deep else 0), (hung, lip, name)
            axis = "z" if name == "lid_back_lipping" else "y"
            for cut in cuts:
                low, high = getattr(cut, axis)
                assert high - low == pytest.approx(deep), (hung, lip, name)


def test_the_lippings_of_a_lid_open_with_it() -> None:
    for hung in ("on a fixed strip", "on the back"):
        _, bench = _lid(hung, "all round", 8.0)
        assert "lid_blocked" not in {found.check for found in findings(bench)}


def test_joints_of_a_lids_lippings_lie_over_the_box() -> None:
    """Over the outer half of ends 20 thick, and of the back where the lid hangs on that."""
    _, bench = _lid("on the back", "all round", 8.0)
    most = limits(bench.spec, "lid_lip")
    assert most.maximum == pytest.approx(10.0)
    wider = set_values(bench.spec, {"lid_ends": 15.0})
    assert limits(wider, "lid_lip").maximum == pytest.approx(10.0)
    assert "back" in limits(wider, "lid_lip").why_maximum
    hung = set_values(wider, {"lid_hung": "on a fixed strip"})
    assert limits(hung, "lid_lip").maximum == pytest.approx(25.0)
