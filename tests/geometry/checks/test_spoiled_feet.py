"""A spoiled bench for the check of levelling feet; amounts worked by hand."""

from __future__ import annotations

import math

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

SOUND = set_values(default_spec(), {"foot": "levelling feet"})
LEAN = math.tan(math.radians(15.0))
HALF = 25.4 / 2.0 / math.cos(math.radians(15.0))


def _found(changes: dict[str, Value]) -> list[Finding]:
    found = findings(build(set_values(SOUND, changes)))
    return [one for one in found if one.check.startswith("insert")]


def test_sound_feet_raise_nothing() -> None:
    """A leg 25.4 mm wide at 15°, bored 10 wide and 15 deep: 13.148 - 4.019 - 5 = 4.129 mm."""
    assert findings(build(SOUND)) == ()


def test_a_deep_boring_near_the_side_is_caught_and_mended() -> None:
    spoiled: dict[str, Value] = {"foot_insert_depth": 22.0}
    (found,) = _found(spoiled)
    assert found.check == "insert_skin"
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(HALF - 22.0 * LEAN - 5.0)
    assert found.mend is not None
    assert dict(found.mend.values)["foot_insert_depth"] == pytest.approx((HALF - 8.0) / LEAN)
    assert not _found(spoiled | dict(found.mend.values))


def test_an_insert_without_room_is_caught_and_mended() -> None:
    """Bored 30 deep: 13.148 - 8.038 - 5 = 0.11 mm, less than a skin; the foot has no insert."""
    spoiled: dict[str, Value] = {"foot_insert_depth": 30.0}
    (found,) = _found(spoiled)
    assert found.check == "insert_room"
    assert found.level is Level.THINK_AGAIN
    assert found.amount == pytest.approx(HALF - 30.0 * LEAN - 5.0)
    assert found.mend is not None
    assert not _found(spoiled | dict(found.mend.values))


def test_eased_ends_leave_no_ring_for_the_inserts_flange() -> None:
    """Ends of 30 by 30, eased by 8.5 all round, bear over 6.5 from their middles; beside an insert
    of 10 that is the ring of 1.5 that its flange wants, beside one of 10.4 it is 1.3."""
    wide: dict[str, Value] = {"base_thickness": 30.0, "leg_foot_width": 30.0, "splay": 0.0}
    eased: dict[str, Value] = {"foot_edge": "chamfer", "foot_edge_size": 8.5, "foot_insert": 10.0}
    assert "insert_room" not in {one.check for one in _found({**wide, **eased})}
    spoiled: dict[str, Value] = {**wide, **eased, "foot_insert": 10.4}
    (found,) = (one for one in _found(spoiled) if one.check == "insert_room")
    assert found.mend is not None
    assert dict(found.mend.values)["foot_insert"] == pytest.approx(10.0)
    mended = _found({**spoiled, **dict(found.mend.values)})
    assert "insert_room" not in {one.check for one in mended}
