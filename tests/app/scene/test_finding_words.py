"""A finding's number beside its limit, in words."""

from __future__ import annotations

from app.scene.finding_words import amount_text
from app.scene.preferences import Preferences


def test_a_number_without_unit_has_nothing_behind_it_and_less_than_nothing_a_minus() -> None:
    assert amount_text(7.0, "", Preferences()) == "7"
    assert amount_text(-22.54, "N m", Preferences()) == "−22.54 N m"
