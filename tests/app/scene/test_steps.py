"""Snapping: the step of a drag, and the steps of the arrow keys."""

from __future__ import annotations

import pytest

from app.scene.nudge import nudged
from app.scene.steps import drag_step, finest_step
from geometry.bench.catalogue import default_spec, parameter
from geometry.bench.limits import set_values
from shared.units import SHOWN_IN16, SHOWN_IN64, SHOWN_MM


@pytest.mark.parametrize(
    ("pixels_per_mm", "step"),
    [(10.0, 1.0), (1.5, 1.0), (1.0, 2.0), (0.4, 5.0), (0.2, 10.0), (0.001, 50.0)],
)
def test_a_drag_snaps_to_round_millimetres(pixels_per_mm: float, step: float) -> None:
    assert drag_step("mm", 1.0, SHOWN_MM, pixels_per_mm) == step


def test_a_drag_snaps_to_fractions_of_an_inch() -> None:
    assert drag_step("mm", 1.0, SHOWN_IN16, 10.0) == 25.4 / 16
    assert drag_step("mm", 1.0, SHOWN_IN64, 10.0) == 25.4 / 64
    assert drag_step("mm", 1.0, SHOWN_IN16, 0.3) == 25.4 / 4  # 1/4 in is 1.9 px there


def test_angles_keep_their_own_step() -> None:
    assert drag_step("deg", 0.5, SHOWN_IN16, 0.1) == 0.5
    assert finest_step("deg", 0.5, SHOWN_MM) == 0.5


def test_an_arrow_goes_to_the_next_multiple() -> None:
    spec = set_values(default_spec(), {"length": 1200.4})
    assert nudged(spec, "length", 1, 1.0).value == 1201.0
    assert nudged(spec, "length", -1, 1.0).value == 1200.0
    assert nudged(spec, "length", 10, 1.0).value == 1210.0


def test_there_and_back_from_a_multiple_is_no_change() -> None:
    spec = default_spec()
    there = nudged(spec, "depth", 3, 1.0).spec
    assert nudged(there, "depth", -3, 1.0).spec == spec


def test_an_arrow_stops_at_the_limit_with_the_reason() -> None:
    row = parameter("length")
    stopped = nudged(default_spec(), "length", 100_000, 1.0)
    assert stopped.value == row.maximum
    assert stopped.stopped_by


def test_a_count_goes_by_ones() -> None:
    assert nudged(default_spec(), "partition_count", 1, 25.4).value == 2.0
