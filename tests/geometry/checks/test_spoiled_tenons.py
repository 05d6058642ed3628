"""A spoiled bench for each way in which a later cut comes near a loose tenon's mortise.

The sound bench: the default, 1200 x 360 mm of 20 mm boards, left end mitred with three tenons 4 mm
thick, 12 mm in from the inside arris and 9 mm deep; fit 0.2 mm.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

SOUND = set_values(default_spec(), {"mitre_hold": "loose tenons"})
GLUED: dict[str, Value] = {"glue_up_width": 150.0, "glue_up_hold": "loose tenons"}


def _found(changes: dict[str, Value]) -> tuple[Finding, ...]:
    return findings(build(set_values(SOUND, changes)))


def test_sound_mitres_raise_nothing() -> None:
    assert _found({}) == ()


def test_a_mortise_near_the_outside_is_caught_and_mended() -> None:
    """20 - (12 + 2.1 + 9.9) / √2 = 3.029 mm is left; at 13 mm in, 20 - 25 / √2 = 2.322.  In the
    boards, 8 mm deep, 20 - 23.1 / √2 = 3.666 mm stay."""
    assert _found({"mitre_tenon_panel": 9.9}) == ()
    spoiled: dict[str, Value] = {
        "mitre_tenon_in": 13.0,
        "mitre_tenon_board": 8.0,
        "mitre_tenon_panel": 9.9,
    }
    (found,) = _found(spoiled)
    assert found.check == "mortise_near"
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(20.0 - 25.0 / math.sqrt(2.0), abs=1e-6)
    assert found.limit == 3.0
    assert found.mend is not None
    assert dict(found.mend.values) == {
        "mitre_tenon_panel": pytest.approx(17.0 * math.sqrt(2.0) - 15.1, abs=1e-9)
    }
    assert _found(spoiled | dict(found.mend.values)) == ()


def test_a_mortise_near_the_rebate_for_the_back_is_caught() -> None:
    """The rebate is 6 mm wide and, 12 mm deep, goes past the middle of the mortises' mouths; a
    mortise 30.2 mm wide from 8 mm on leaves 2 mm."""
    found = _found({"mitre_tenon_first": 6.0 + 15.1 + 2.0, "rebate_depth": 12.0})
    assert {one.check for one in found} == {"mortise_near"}
    assert {one.parts for one in found} == {("top",), ("bottom",), ("end_panel_left",)}
    for one in found:
        assert one.amount == pytest.approx(2.0, abs=1e-3)
        assert "rebate" in one.message


def test_a_wide_chamfer_opens_the_last_mortise() -> None:
    """On thick boards a chamfer of 12 mm reaches down to a deep mortise at the front edge."""
    deep: dict[str, Value] = {
        "board_thickness": 40.0,
        "partition_thickness": 20.0,
        "flare": 0.0,
        "mitre_tenon_in": 30.0,
        "mitre_tenon_board": 20.0,
        "mitre_tenon_panel": 20.0,
        "mitre_tenon_first": 360.0 - 200.0 - 15.1 - 2.0,
    }
    at_front = [one for one in _found(deep | {"chamfer": 2.0}) if "chamfer" in one.message]
    assert at_front == []
    found = [one for one in _found(deep | {"chamfer": 12.0}) if "chamfer" in one.message]
    assert {one.check for one in found} == {"mortise_opened"}
    assert found[0].level is Level.DO_NOT_CUT


def test_a_bevelled_front_comes_near_a_mortise() -> None:
    """The end panel's front leans 60 in 300 mm.  A mortise's mouth lies 12 / √2 from the inside
    face and as far from the mitre's tip, 20 - 12 / √2 from the end: the front is at 360 + that / 5
    there, the mortise's round end at 359; square to the front it is cos(atan 1/5) of that, 3.24 mm.
    To a maker who wants 4 mm it is too near."""
    bench = build(set_values(SOUND, {"mitre_tenon_first": 360.0 - 200.0 - 15.1 - 1.0}))
    assert not [one for one in findings(bench) if "taper" in one.message]
    strict = findings(replace(bench, judged_by=(("least_beside", 4.0),)))
    group = [one for one in strict if one.parts == ("end_panel_left",)]
    assert [one.check for one in group] == ["mortise_near"]
    level = 360.0 + (20.0 - 12.0 / math.sqrt(2.0)) / 5.0 - 359.0
    assert group[0].amount == pytest.approx(level / math.hypot(1.0, 0.2), abs=1e-3)
    assert group[0].place is not None
    assert group[0].place[1] == pytest.approx(-359.0 - level / 2.0, abs=1.0)


def test_a_housing_comes_near_the_tenons_of_a_glue_up() -> None:
    """Boards of 20 mm: mortises 5.2 mm thick in the middle begin 7.4 mm down, the housing is 7."""
    found = _found(GLUED)
    assert {one.check for one in found} == {"glue_up_mortise_near"}
    assert {one.parts for one in found} == {("top",), ("bottom",)}
    assert all(one.amount == pytest.approx(0.4, abs=1e-6) for one in found)
    assert all("housing" in one.message for one in found)


def test_a_deeper_housing_opens_them() -> None:
    found = _found(GLUED | {"housing_depth": 9.0})
    assert {one.check for one in found} == {"glue_up_mortise_opened"}
    assert {one.level for one in found} == {Level.DO_NOT_CUT}
    assert all(one.amount == 0.0 for one in found)
    assert _found(GLUED | {"housing_depth": 4.0}) == ()


def test_the_flares_edge_opens_the_tenons_it_crosses() -> None:
    """The run-out falls 80 mm between the lines of three boards of a top 440 mm wide: it crosses
    the line at 293 mm nowhere, that of a top glued up from six boards at 367 mm."""
    wide: dict[str, Value] = {"flare": 80.0, "housing_depth": 3.0, "glue_up_hold": "loose tenons"}
    clear = _found(wide | {"glue_up_width": 150.0})
    assert not [one for one in clear if "run-out" in one.message]
    crossed = _found(wide | {"glue_up_width": 74.0})
    (found,) = [one for one in crossed if "run-out" in one.message and one.amount == 0.0]
    assert found.parts == ("top",)
