"""Lines of clamps through blocks whose faces are reckoned by hand."""

from __future__ import annotations

import pytest

from geometry.cuts.cut import Blank
from geometry.cuts.notch import Notch
from geometry.cuts.saw import SawCut
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME, Frame, Vec3
from geometry.solids.cutting import placed
from geometry.solids.pressing import JAW, Stack

X: Vec3 = (1.0, 0.0, 0.0)


def _block(name: str, size: Vec3, at: Vec3, *cuts: Notch | SawCut) -> Part:
    frame = Frame(at, BENCH_FRAME.x_axis, BENCH_FRAME.y_axis, BENCH_FRAME.z_axis)
    return Part(name, name, name, "ash", Shape(Blank(*size), cuts), frame)


def _stack(*parts: Part) -> Stack:
    return Stack([placed(part) for part in parts])


LEFT = _block("left", (100.0, 60.0, 40.0), (0.0, 0.0, 0.0))
RIGHT = _block("right", (150.0, 60.0, 40.0), (100.0, 0.0, 0.0))
BETWEEN: Vec3 = (100.0, 31.0, 17.0)


def test_two_blocks_are_pressed_from_end_to_end() -> None:
    pads = _stack(LEFT, RIGHT).pads(BETWEEN, X)
    assert pads is not None
    assert pads.slant_deg == pytest.approx(0.0, abs=1e-6)
    assert pads.reach == pytest.approx(250.0)
    assert pads.low == pytest.approx((0.0, 31.0, 17.0))
    assert pads.high == pytest.approx((250.0, 31.0, 17.0))


def test_a_slanting_end_leans_by_its_own_angle() -> None:
    """Sawn 20 degrees off square; at y = 31 that is 250 - 31 tan 20 = 238.72 from the far end."""
    tan = 0.3639702343
    corner: Vec3 = (150.0, 0.0, 0.0)
    long = (1.0 + tan * tan) ** 0.5
    cut = SawCut("end", corner, (1.0 / long, tan / long, 0.0))
    sawn = _block("right", (150.0, 60.0, 40.0), (100.0, 0.0, 0.0), cut)
    pads = _stack(LEFT, sawn).pads(BETWEEN, X)
    assert pads is not None
    assert pads.slant_deg == pytest.approx(20.0, abs=1e-6)
    assert pads.reach == pytest.approx(250.0 - 31.0 * tan)


def test_a_jaw_needs_room_behind_the_face() -> None:
    for room, free in ((JAW + 1.0, True), (JAW - 1.0, False)):
        near = _block("near", (20.0, 60.0, 40.0), (250.0 + room, 0.0, 0.0))
        pads = _stack(LEFT, RIGHT, near).pads(BETWEEN, X)
        assert (pads is not None) is free
        assert pads is None or pads.reach == pytest.approx(250.0)


def test_pressure_goes_on_through_what_touches_and_across_a_hole() -> None:
    touching = _block("touching", (20.0, 60.0, 40.0), (250.0, 0.0, 0.0))
    holed = _block("left", (100.0, 60.0, 40.0), (0.0, 0.0, 0.0), Notch(30.0, 50.0, 20.0, 40.0))
    pads = _stack(holed, RIGHT, touching).pads(BETWEEN, X)
    assert pads is not None
    assert pads.reach == pytest.approx(270.0)


def test_there_is_nothing_to_press_beside_the_wood() -> None:
    assert _stack(LEFT, RIGHT).pads((100.0, 80.0, 17.0), X) is None
