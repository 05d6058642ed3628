"""A finding's number beside its limit, in words."""

from __future__ import annotations

import pytest

from app.scene.finding_words import amount_text
from app.scene.limit_value import read_limit
from app.scene.preferences import Preferences
from app.scene.wording import said_error
from geometry.checks.limits_of_loads import SEAT_LOAD
from shared.errors import UnreadableValue, ValueOutOfRange
from shared.units import SHOWN_IN16, SHOWN_MM


def test_a_number_without_unit_has_nothing_behind_it_and_less_than_nothing_a_minus() -> None:
    assert amount_text(7.0, "", Preferences()) == "7"
    assert amount_text(-22.54, "N m", Preferences()) == "−22.54 N m"


@pytest.mark.parametrize(
    ("typed", "newtons"),
    [("250", 1112.06), ("250 lb", 1112.06), ("1112 N", 1112.0), ("1112n", 1112.0)],
)
def test_a_limit_in_pounds_is_read(typed: str, newtons: float) -> None:
    """NIST SP 811: 1 lbf is 4.448222 N."""
    assert read_limit(SEAT_LOAD, typed, SHOWN_IN16) == pytest.approx(newtons, abs=0.01)


def test_a_limit_says_in_the_shown_unit_what_would_work() -> None:
    with pytest.raises(UnreadableValue, match=r"number of lb, such as 250\."):
        read_limit(SEAT_LOAD, "250 stone", SHOWN_IN16)
    with pytest.raises(UnreadableValue, match=r"number of N, such as 1112\."):
        read_limit(SEAT_LOAD, "much", SHOWN_MM)
    with pytest.raises(ValueOutOfRange) as raised:
        read_limit(SEAT_LOAD, "5000", SHOWN_IN16)
    words = said_error(raised.value, Preferences(shown=SHOWN_IN16))
    assert words.endswith("It goes from 67.4 lb to 1124 lb.")
