"""Axes of what is round, against places worked by hand."""

from __future__ import annotations

import math

import pytest

from geometry.cuts.bore import Bore
from geometry.cuts.contour import Face
from geometry.cuts.cut import Blank
from geometry.cuts.leaning_bore import LeaningBore
from geometry.cuts.screw_hole import ScrewHole
from geometry.cuts.slot_mortise import SlotMortise
from geometry.design.part import Shape
from geometry.views.round_axes import RoundAxis, round_axes
from tests.samples import spoiled

BLANK = Blank(400.0, 100.0, 30.0)


def axes_of(*cuts: object) -> tuple[RoundAxis, ...]:
    return round_axes(Shape(BLANK, cuts))  # type: ignore[arg-type]


def near(point: tuple[float, ...]) -> object:
    return pytest.approx(point, abs=1e-6)


def test_a_bore_has_one_axis_as_deep_as_it_is() -> None:
    (axis,) = axes_of(Bore(120.0, 40.0, 25.0, 12.0))
    assert axis.start == near((120.0, 40.0, 0.0))
    assert axis.end == near((120.0, 40.0, 12.0))
    assert axis.radius == 12.5


def test_a_bore_from_the_reverse_through_the_board_ends_at_the_face() -> None:
    (axis,) = axes_of(Bore(50.0, 60.0, 8.0, 40.0, Face.REVERSE))
    assert sorted((axis.start[2], axis.end[2])) == pytest.approx([0.0, 30.0])


def test_a_leaning_bore_runs_from_face_to_face_along_its_lean() -> None:
    """At 20° from square, through 30 mm: 30 tan 20° = 10.919 mm to the side."""
    lean = math.radians(20.0)
    axis = (math.sin(lean), 0.0, math.cos(lean))
    (found,) = axes_of(LeaningBore((100.0, 50.0, 0.0), axis, 15.0, Face.FACE_SIDE, (0.0, 1.0, 0.0)))
    assert found.start == near((100.0, 50.0, 0.0))
    assert found.end == pytest.approx((110.9191, 50.0, 30.0), abs=1e-3)


def test_two_diameters_of_a_screw_hole_are_one_round() -> None:
    hole = ScrewHole((30.0, 50.0, 30.0), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0), 5.0, 20.0, 10.0, 30.0)
    (axis,) = axes_of(hole)
    assert axis.radius == 5.0
    assert abs(axis.end[2] - axis.start[2]) == pytest.approx(30.0)


def test_round_ends_of_a_slot_are_no_round() -> None:
    """Two half turns, about two centres."""
    slot = SlotMortise((200.0, 50.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), 40.0, 10.0, 20.0)
    assert axes_of(slot) == ()


@pytest.mark.parametrize("least", [0.0, 2.0, 4.0, 6.0, 12.5, 12.6])
def test_those_that_go_out_so_far_are_the_same_whoever_asks(least: float) -> None:
    """A hole 4.5 wide and 9 for its head, bores of 8 and 25: a narrow part goes with the wide."""
    cuts = (
        ScrewHole((300.0, 50.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), 4.5, 20.0, 9.0, 30.0),
        Bore(120.0, 40.0, 25.0, 12.0),
        Bore(50.0, 60.0, 8.0, 10.0),
    )
    every = axes_of(*cuts)
    assert sorted(axis.radius for axis in every) == [4.0, 4.5, 12.5]
    shape = Shape(BLANK, cuts)
    assert round_axes(shape, least) == tuple(axis for axis in every if axis.radius >= least)


@pytest.mark.parametrize("name", ["kiln_yard_bench", "apiary_bench"])
def test_a_round_tenon_and_its_hole_lie_on_one_axis(name: str) -> None:
    """Every leg's tenon, in the bench, is on the line of a bore of the board above it."""
    bench = spoiled(name, {})
    legs, bores = [], []
    for part in bench.parts:
        for axis in round_axes(part.shape):
            ends = part.frame.to_bench(axis.start), part.frame.to_bench(axis.end)
            (legs if part.kind == "leg" else bores).append((*ends, axis.radius))
    assert len(legs) == len(bores) == 4
    for start, end, _ in legs:
        away = min(max(_from_line(p, a, b) for p in (start, end)) for a, b, _ in bores)
        assert away < 1e-3


def _from_line(p: tuple[float, ...], a: tuple[float, ...], b: tuple[float, ...]) -> float:
    way = [v - u for u, v in zip(a, b, strict=True)]
    off = [v - u for u, v in zip(a, p, strict=True)]
    share = sum(x * y for x, y in zip(way, off, strict=True)) / sum(x * x for x in way)
    return math.dist(off, [share * x for x in way])


def test_samples_without_anything_round_have_no_axes() -> None:
    assert all(round_axes(part.shape) == () for part in spoiled("orchard", {}).parts)
