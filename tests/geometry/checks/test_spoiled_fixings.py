"""A spoiled bench for each check of what holds the base to the seat; amounts worked by hand."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

SCREWED = set_values(set_values(default_spec(), {"base": "plinth"}), {"fixing": "screws in slots"})
BUTTONED = set_values(SCREWED, {"fixing": "buttons"})


def _found(spoiled: dict[str, Value], check: str, *, buttons: bool = False) -> list[Finding]:
    spec = set_values(BUTTONED if buttons else SCREWED, spoiled)
    return [one for one in findings(build(spec)) if one.check == check]


@pytest.mark.parametrize("spec", [SCREWED, BUTTONED])
def test_sound_fixings_raise_nothing(spec) -> None:
    assert all(one.level is Level.GOOD_TO_KNOW for one in findings(build(spec)))


def test_fixings_without_a_place_are_counted() -> None:
    """Trestles 180 mm from rail to edge: the legs take 79, the rail 25, the inset 60."""
    (found,) = _found({"base": "trestles", "fixing_count": 2.0}, "fixing_lacking")
    assert found.level is Level.THINK_AGAIN
    assert (found.amount, found.limit) == (0.0, 8.0)
    assert set(found.parts) == {"stretcher_left", "stretcher_right"}
    assert not _found({"base": "trestles", "depth": 520.0}, "fixing_lacking")


def test_a_button_that_slips_out_is_caught_and_mended() -> None:
    """Plinth front: inside at Y = -360 + 40 + 20, its screw 16 mm farther in, 104 from the middle;
    white oak, flat sawn, 3 % either way: 104 x 0.00365 x 3 = 1.139 mm of the 5.5 is lost."""
    spoiled: dict[str, Value] = {"button_engaged": 5.5}
    (found,) = _found(spoiled, "button_slips", buttons=True)
    far = 180.0 - 60.0 - 0.6 - 2.0 * 104.0 * 0.00365 * 3.0 - 16.0
    assert found.amount == pytest.approx(5.5 - far * 0.00365 * 3.0, abs=0.02)
    assert found.limit == 5.0
    assert found.mend is not None
    assert not _found(spoiled | dict(found.mend.values), "button_slips", buttons=True)


def test_a_short_thread_is_caught_and_mended() -> None:
    (found,) = _found({"fixing_bite": 6.5}, "short_thread")
    assert (found.amount, found.limit) == (6.5, 8.0)
    assert found.mend is not None
    assert not _found(dict(found.mend.values), "short_thread")


def test_a_screw_under_a_partition_is_caught_and_mended() -> None:
    """One fixing in the middle of the plinth's front, 600 from the left, and a partition there:
    20 - 7 - 12.5 = 0.5 mm is left."""
    spoiled: dict[str, Value] = {"fixing_bite": 12.5, "partition_1": 600.0}
    (found,) = _found(spoiled, "screw_near")
    assert found.level is Level.DO_NOT_CUT
    assert found.amount == pytest.approx(0.5)
    assert found.mend is not None
    assert dict(found.mend.values) == {"fixing_bite": 12.0}
    assert not _found(spoiled | dict(found.mend.values), "screw_near")
