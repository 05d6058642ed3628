"""A spoiled bench for each check of the corner blocks; amounts worked by hand."""

from __future__ import annotations

import pytest

from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings
from geometry.design.finding import Finding, Level
from geometry.design.parameter import Value

BLOCKED = set_values(set_values(default_spec(), {"base": "four legs"}), {"corner_blocks": "at 45°"})


def _found(spoiled: dict[str, Value], check: str) -> list[Finding]:
    spec = set_values(BLOCKED, spoiled) if spoiled else BLOCKED
    return [one for one in findings(build(spec)) if one.check == check]


@pytest.mark.parametrize("kind", ["at 45°", "square"])
def test_sound_blocks_raise_nothing(kind: str) -> None:
    found = findings(build(set_values(BLOCKED, {"corner_blocks": kind})))
    assert {one.check for one in found} <= {"mirror_images"}


def test_screws_in_little_wood_are_caught_and_mended() -> None:
    (found,) = _found({"corner_block_bite": 6.0}, "corner_block_thread")
    assert (found.amount, found.limit) == (6.0, 8.0)
    assert "corner_block_front_right" in found.parts
    assert found.mend is not None
    assert not _found(dict(found.mend.values), "corner_block_thread")


def test_ends_that_are_only_glued_are_caught_and_mended() -> None:
    spoiled: dict[str, Value] = {"corner_block_screws": 0.0}
    (found,) = _found(spoiled, "corner_block_glue")
    assert (found.level, found.amount) == (Level.THINK_AGAIN, 0.0)
    assert found.mend is not None
    assert not _found(dict(found.mend.values), "corner_block_glue")
    # A square block has long grain on the long apron.
    assert not _found({**spoiled, "corner_blocks": "square"}, "corner_block_glue")


def test_blocks_too_thin_for_the_seat_screw_are_told() -> None:
    """No. 8: the head 2 x 0.164 in = 8.33 mm; half of 16 mm less half of it and at least 0.3 of
    play leaves under 3.6, of which the seat's movement takes what brings it under 3."""
    spoiled: dict[str, Value] = {
        "fixing": "screws in slots",
        "corner_block_thickness": 16.0,
        "corner_block_land": 5.0,
    }
    (found,) = _found(spoiled, "corner_block_seat")
    assert (found.level, found.amount, found.limit) == (Level.GOOD_TO_KNOW, 0.0, 4.0)
    assert "too thin" in found.message
    assert not _found({**spoiled, "corner_block_thickness": 36.0}, "corner_block_seat")
