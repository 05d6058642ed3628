"""The room that an angle's arc takes, worked by hand."""

from __future__ import annotations

import pytest

from geometry.dimensioning.placed import PlacedDimension, Sweep, around
from geometry.drawing.marks import Role
from geometry.drawing.text_box import TextBox

EMPTY = TextBox(100.0, 0.0, 0.0, 0.0)


def with_sweep(start_deg: float, end_deg: float) -> PlacedDimension:
    sweep = Sweep((0.0, 0.0), 100.0, start_deg, end_deg)
    line = (0.0, 0.0, 0.0, 0.0)
    return PlacedDimension("lean", Role.DIMENSION, "", EMPTY, line, (), (), (sweep,))


def test_an_arc_takes_the_room_between_its_ends_and_not_that_of_its_circle() -> None:
    """From 0 to 30 degrees at radius 100: x from 86.6 to 100, y from 0 to 50."""
    extent = around((90.0, 0.0, 95.0, 1.0), with_sweep(0.0, 30.0))
    assert extent == pytest.approx((86.6025, 0.0, 100.0, 50.0), abs=1e-4)


def test_an_arc_over_the_top_reaches_its_radius() -> None:
    """From 60 to 120 degrees it is highest at 90."""
    extent = around((0.0, 90.0, 1.0, 91.0), with_sweep(60.0, 120.0))
    assert extent == pytest.approx((-50.0, 0.0, 100.0, 100.0), abs=1e-4)
