"""Spoiled benches for the checks of boards of sheet."""

from __future__ import annotations

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Level
from geometry.design.parameter import Value

SOUND = set_values(
    set_values(default_spec(), {"opening_1_fill": "shelf"}), {"shelf_made_of": "sheet"}
)


def test_sound_shelves_raise_nothing() -> None:
    """18 mm of birch plywood, which is sold from 17.1 to 18.1."""
    assert findings(build(SOUND)) == ()


def test_a_thickness_that_is_not_sold_is_caught_and_mended() -> None:
    spoiled: dict[str, Value] = {"shelf_thickness": 19.2}
    (found,) = findings(build(set_values(SOUND, spoiled)))
    assert (found.check, found.level) == ("sheet_thickness", Level.THINK_AGAIN)
    assert (found.amount, found.limit) == (19.2, 20.5)
    assert found.mend is not None
    assert findings(build(set_values(SOUND, spoiled | dict(found.mend.values)))) == ()


PARTITIONED = set_values(
    default_spec(),
    {"partition_made_of": "sheet", "partition_thickness": 18.0, "partition_edge": "round-over"},
)


def test_sound_partitions_raise_nothing() -> None:
    """A round-over of 2 mm in a lipping of 6."""
    assert findings(build(PARTITIONED)) == ()


def test_partitions_of_a_thickness_that_is_not_sold() -> None:
    """Birch plywood is sold from 17.1 to 18.1 and from 20.0 mm, usually 20.5."""
    spoiled: dict[str, Value] = {"partition_thickness": 19.2}
    (found,) = findings(build(set_values(PARTITIONED, spoiled)))
    assert (found.check, found.amount, found.limit) == ("sheet_thickness", 19.2, 20.5)
    assert found.parts == ("partition_1", "partition_right")
    assert found.mend is not None
    assert findings(build(set_values(PARTITIONED, spoiled | dict(found.mend.values)))) == ()


def test_an_edge_through_the_lipping() -> None:
    """A round-over of 3.5 behind a band of 0.5 reaches 3 mm into the sheet; one of 0.5 does not."""
    spoiled: dict[str, Value] = {"partition_edge_size": 3.5, "partition_lip": 0.5}
    told = findings(build(set_values(PARTITIONED, spoiled)))
    (found,) = (one for one in told if one.check == "edge_through_lipping")
    assert (found.level, found.amount, found.limit) == (Level.THINK_AGAIN, 3.5, 0.5)
    assert found.parts == ("partition_1", "partition_right")
    assert found.place is not None
    assert found.mend is not None
    assert findings(build(set_values(PARTITIONED, spoiled | dict(found.mend.values)))) == ()


def test_a_lipping_too_thin_to_saw() -> None:
    """Strips are sawn from 5 mm on; a band of 0.5 mm is bought."""
    (found,) = findings(build(set_values(PARTITIONED, {"partition_lip": 3.0})))
    assert (found.check, found.amount, found.limit) == ("narrow_strip", 3.0, 5.0)
    assert found.mend is not None
    assert found.mend.values == (("partition_lip", 5.0),)
    assert findings(build(set_values(PARTITIONED, dict(found.mend.values)))) == ()


BOARDED = set_values(
    set_values(default_spec(), {"flare": 0.0, "right_end": "mitred", "partition_count": 2}),
    {
        "top_made_of": "sheet",
        "bottom_made_of": "sheet",
        "ends_made_of": "sheet",
        "partition_made_of": "sheet",
        "board_thickness": 18.0,
        "partition_thickness": 18.0,
    },
)


def test_sound_boards_raise_nothing() -> None:
    """A case all of sheet; its chamfers of 2 mm stay in lippings of 6."""
    assert findings(build(BOARDED)) == ()


def test_a_chamfer_through_the_lipping_of_the_boards() -> None:
    told = findings(build(set_values(BOARDED, {"chamfer": 4.0, "board_lip": 0.8})))
    (found,) = (one for one in told if one.check == "edge_through_lipping")
    assert (found.amount, found.limit) == (4.0, 0.8)
    assert found.parts == ("top", "bottom", "end_panel_left", "end_panel_right")
    assert found.mend is not None
    assert found.mend.values == (("chamfer", 0.8),)
    mended = set_values(BOARDED, {"board_lip": 0.8, **dict(found.mend.values)})
    assert findings(build(mended)) == ()


def test_boards_of_a_thickness_that_is_not_sold() -> None:
    (found,) = findings(build(set_values(BOARDED, {"board_thickness": 19.2})))
    assert (found.check, found.amount, found.limit) == ("sheet_thickness", 19.2, 20.5)
    assert found.mend is not None
    assert findings(build(set_values(BOARDED, dict(found.mend.values)))) == ()


PANELLED = set_values(
    set_values(default_spec(), {"seat": "panel bench", "base_height": 400.0}),
    {
        "panel_made_of": "sheet",
        "seat_thickness": 23.4,
        "end_thickness": 23.4,
        "seat_edge": "round-over",
        "seat_edge_size": 5.0,
    },
)


def test_a_sound_panel_bench_of_sheet_raises_nothing() -> None:
    """Both of 24 mm birch plywood, which measures 23.4; the round-over stays in its lipping.
    Good to know is only that left and right pieces are mirror images."""
    assert {one.check for one in findings(build(PANELLED))} <= {"mirror_images"}


def test_a_seat_and_ends_of_thicknesses_that_are_not_sold() -> None:
    spoiled: dict[str, Value] = {"seat_thickness": 22.0, "end_thickness": 19.0}
    told = findings(build(set_values(PANELLED, spoiled)))
    found = [one for one in told if one.check == "sheet_thickness"]
    assert [(one.parts, one.amount, one.limit) for one in found] == [
        (("seat",), 22.0, 23.4),
        (("end_left", "end_right"), 19.0, 17.7),
    ]
    for one in found:
        assert one.mend is not None
        mended = set_values(PANELLED, spoiled | dict(one.mend.values))
        assert one.key not in [other.key for other in findings(build(mended))]


def test_a_round_over_through_the_seats_lipping() -> None:
    told = findings(build(set_values(PANELLED, {"panel_lip": 0.8})))
    (found,) = (one for one in told if one.check == "edge_through_lipping")
    assert (found.amount, found.limit, found.parts) == (5.0, 0.8, ("seat",))
    assert found.mend is not None
    assert found.mend.values == (("seat_edge_size", 0.8),)


def test_lippings_of_a_panel_bench_too_thin_to_saw() -> None:
    told = findings(build(set_values(PANELLED, {"panel_lip": 3.0, "seat_edge_size": 2.0})))
    (found,) = (one for one in told if one.level is not Level.GOOD_TO_KNOW)
    assert (found.check, found.amount, found.limit) == ("narrow_strip", 3.0, 5.0)
    assert len(found.parts) == 6
    assert found.mend is not None
    assert found.mend.values == (("panel_lip", 5.0),)
