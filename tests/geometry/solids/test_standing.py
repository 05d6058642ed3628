"""A part that will not follow is not asked at each step; what stands is right either way."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import pytest

from geometry.cuts.bore import Bore
from geometry.cuts.cut import Blank
from geometry.cuts.removal import HalfSpace
from geometry.design.part import Part, Shape
from geometry.primitives.frame import BENCH_FRAME
from geometry.solids import standing
from geometry.solids.cutting import solid_of
from geometry.solids.standing import Standing, stand
from tests.judges.differing import volume_apart
from tests.random_assemblies import Waste


def board(length: float, lean_deg: float) -> Part:
    """100 x 20, its far end sawn so far from square."""
    lean = math.radians(lean_deg)
    end = HalfSpace((length, 0.0, 0.0), (math.cos(lean), 0.0, math.sin(lean)))
    shape = Shape(Blank(length, 100.0, 20.0), (Waste((end,)),))
    return Part("board", "Board", "board", "oak", shape, BENCH_FRAME)


def drawn(steps: Sequence[tuple[float, float]]) -> list[Standing]:
    """Lengths and leanings, one after the other, each standing checked against a fresh cut."""
    found: list[Standing] = []
    for length, lean_deg in steps:
        part = board(length, lean_deg)
        found.append(stand([part], found[-1] if found else None))
        (solid,) = found[-1].solids
        assert volume_apart(solid.solid, solid_of(part.shape)) < 1e-3  # mm³, of a million
    return found


def test_a_board_that_grows_follows_the_one_that_was_cut() -> None:
    first = board(400.0, 20.0).shape
    for each in drawn([(400.0 + 10.0 * k, 20.0) for k in range(6)])[1:]:
        assert each.cut["board"] == first
        assert each.in_vain.get("board", 0) == 0


def test_a_board_whose_end_turns_is_cut_and_soon_rarely_asked(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked: list[int] = []
    follow = standing.follow

    def counting(cut: Sequence[Shape], shapes: Sequence[Shape]) -> object:
        asked.append(len(shapes))
        return follow(cut, shapes)

    monkeypatch.setattr(standing, "follow", counting)
    last = drawn([(400.0, 10.0 + k) for k in range(40)])[-1]
    # 39 changes, all in vain; asked at the first two and after the 16th and the 32nd.
    assert sum(asked) == 4
    assert last.in_vain["board"] == 39
    assert last.cut["board"] == board(400.0, 49.0).shape


def test_it_follows_again_after_a_while() -> None:
    turning = [(400.0, 10.0 + k) for k in range(10)]
    growing = [(400.0 + 5.0 * k, 19.0) for k in range(1, 20)]
    found = drawn(turning + growing)
    cut = [each.cut["board"].blank.length for each in found[len(turning) :]]
    # 9 in vain, so the 7 next are cut too; then one is tried, and all after it follow.
    assert cut == [405.0, 410.0, 415.0, 420.0, 425.0, 430.0, 435.0] + 12 * [435.0]
    assert found[-1].in_vain["board"] == 0


def test_one_more_hole_is_no_trial_in_vain() -> None:
    """Holes come at two steps running; at the next the board follows the one with all of them."""

    def bored(length: float, holes: int) -> Part:
        square = board(length, 0.0)
        bores = tuple(Bore(100.0 + 60.0 * k, 50.0, 8.0, 30.0) for k in range(holes))
        return replace(square, shape=Shape(square.shape.blank, (*square.shape.cuts, *bores)))

    steps = [bored(*each) for each in ((500.0, 1), (505.0, 2), (510.0, 3), (515.0, 3), (520.0, 3))]
    found = [stand([steps[0]])]
    for part in steps[1:]:
        found.append(stand([part], found[-1]))
        (solid,) = found[-1].solids
        assert volume_apart(solid.solid, solid_of(part.shape)) < 1e-3
    cut = [each.cut["board"].blank.length for each in found]
    assert cut == [500.0, 505.0, 510.0, 510.0, 510.0]
    assert found[-1].in_vain["board"] == 0
