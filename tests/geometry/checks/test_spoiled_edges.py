"""A spoiled bench for each check of moulded arrises; amounts worked by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

SOUND = set_values(
    default_spec(),
    {
        "edge_form": "round-over",
        "leg_edge": "chamfer",
        "foot_edge": "chamfer",
        "partition_edge": "round-over",
    },
)


def _found(changes: dict[str, Value]) -> tuple[Finding, ...]:
    return findings(build(set_values(SOUND, changes)))


def test_sound_edges_raise_nothing() -> None:
    assert _found({}) == ()


def test_an_edge_that_bares_a_housing_is_caught_and_mended() -> None:
    """5 mm off the arris where the housing stops 4 mm behind the front."""
    spoiled: dict[str, Value] = {"partition_edge_size": 5.0}
    (found,) = _found(spoiled)
    assert (found.check, found.level) == ("edge_bares_housing", Level.THINK_AGAIN)
    assert (found.amount, found.limit) == (5.0, 4.0)
    assert found.mend is not None
    assert _found(spoiled | dict(found.mend.values)) == ()
    assert _found(spoiled | {"partition_edge_stop": 20.0}) == ()


def test_legs_without_room_for_their_edges_are_caught_and_mended() -> None:
    """The leg goes 60 mm of stretcher and 6 of taper's start below the case; of the 84 mm that are
    left, 80 down leaves no 12 for an edge of 3 mm."""
    spoiled: dict[str, Value] = {"leg_edge_down": 80.0}
    (found,) = _found(spoiled)
    assert found.check == "leg_left_sharp"
    assert len(found.parts) == 4
    assert found.amount == pytest.approx(80.0)
    assert found.mend is not None
    assert _found(spoiled | dict(found.mend.values)) == ()


def test_a_rail_without_room_between_its_stops_is_caught_and_mended() -> None:
    """Trestles' stretchers are 240 long between tips, and at their lower edge
    240 - 2 (76.2 / cos 15 - 60 tan 15) = 114.4 between the legs: stops of 52 leave 10.4 for an edge
    of 3, which asks for 12.  The rail of 980 has room."""
    base = set_values(default_spec(), {"base": "trestles"})
    sound: dict[str, Value] = {"rail_edge": "cove", "rail_edge_size": 3.0}
    assert findings(build(set_values(base, sound))) == ()
    spoiled = sound | {"rail_edge_stop": 52.0}
    (found,) = findings(build(set_values(base, spoiled)))
    assert (found.check, found.level) == ("arris_left_sharp", Level.THINK_AGAIN)
    assert found.parts == ("stretcher_left", "stretcher_right")
    assert found.amount == 52.0
    assert found.mend is not None
    assert findings(build(set_values(base, spoiled | dict(found.mend.values)))) == ()


SHELVED: dict[str, Value] = {
    "opening_1_fill": "shelf",
    "opening_1_shelf_set_back": 0.0,
    "shelf_edge": "chamfer",
}


def test_a_shelfs_edge_that_bares_a_housing_is_caught_and_mended() -> None:
    """5 mm off the shelf's front where its housings stop 4 mm behind it."""
    assert _found(SHELVED) == ()
    (found,) = _found(SHELVED | {"shelf_edge_size": 5.0})
    assert (found.check, found.parts) == ("edge_bares_housing", ("shelf_1",))
    assert (found.amount, found.limit) == (5.0, 4.0)
    assert found.mend is not None
    assert _found(SHELVED | {"shelf_edge_size": 5.0} | dict(found.mend.values)) == ()


@pytest.mark.parametrize(
    ("name", "part", "left"),
    [
        ("shelf_edge_stop", "shelf_1", lambda bench: bench.part("shelf_1").shape.blank.length - 12),
        (
            "edge_stop",
            "end_panel_left",
            lambda bench: bench.part("end_panel_left").shape.blank.length,
        ),
    ],
)
def test_a_front_between_stops_without_room_is_caught_and_mended(
    name: str, part: str, left: Callable[[Bench], float]
) -> None:
    """So far from both ends that a millimetre is left for an edge of more than a quarter of it."""
    stop = (left(build(set_values(SOUND, SHELVED))) - 1.0) / 2.0
    spoiled: dict[str, Value] = SHELVED | {name: stop}
    (found,) = _found(spoiled)
    assert (found.check, found.parts) == ("arris_left_sharp", (part,))
    assert found.amount == pytest.approx(stop)
    assert found.mend is not None
    assert _found(spoiled | dict(found.mend.values)) == ()


def test_a_drawer_front_too_low_for_its_edge_is_caught() -> None:
    """Four drawers over 260 mm with gaps of 2 have fronts of 62.5, lower than four times 16."""
    drawers: dict[str, Value] = {
        "opening_2_fill": "drawers",
        "opening_2_drawers": 4.0,
        "drawer_front_thickness": 32.0,
        "drawer_edge": "chamfer",
        "drawer_edge_size": 15.0,
        "drawer_gap": 2.0,
    }
    sharp = "drawer_front_left_sharp"
    assert not [one for one in _found(drawers) if one.check == sharp]
    spoiled = drawers | {"drawer_edge_size": 16.0}
    (found,) = (one for one in _found(spoiled) if one.check == sharp)
    assert found.parts == tuple(f"drawer_2_{k}_front" for k in (1, 2, 3, 4))
    assert (found.amount, found.limit) == (62.5, 64.0)
    assert found.mend is not None
    assert found.mend.values == (("drawer_edge_size", pytest.approx(15.6)),)
    assert not [one for one in _found(spoiled | dict(found.mend.values)) if one.check == sharp]


def test_a_boxs_edge_that_opens_the_screws_of_its_strip_is_caught() -> None:
    """They stand in the middles of ends of 20, and an edge of 10 goes in to there."""
    box: dict[str, Value] = {"box_edge": "chamfer", "box_edge_size": 10.0}
    spec = set_values(set_values(default_spec(), {"seat": "box with a lid"}), box)
    told = [one for one in findings(build(spec)) if one.level is Level.DO_NOT_CUT]
    assert [one.message for one in told] == [
        f"The chamfer opens a screw's hole in “Box end, {side}”." for side in ("left", "right")
    ]
