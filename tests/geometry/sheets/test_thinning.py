"""What runs together on a sheet is left out; what a drawing needs to be known by stays."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import default_spec
from geometry.bench.limits import set_values
from geometry.drawing.marks import Label, Mark, Role, Strokes
from geometry.sheets.thinning import legible
from geometry.views.bench_views import bench_views
from geometry.views.look import look_all

Line = tuple[float, float, float, float]


def kept(hidden: list[Line], visible: list[Line]) -> tuple[list[Line], list[Line]]:
    """What is left of hidden and of visible lines."""
    marks = [
        Strokes(role, np.array(lines, dtype=np.float64).reshape(-1, 4))
        for role, lines in ((Role.HIDDEN, hidden), (Role.VISIBLE, visible))
    ]
    left = [mark for mark in legible(marks) if isinstance(mark, Strokes)]
    one, other = ([tuple(row) for row in mark.segments.tolist()] for mark in left)
    return one, other


def level(y: float, start: float = 0.0, end: float = 40.0) -> Line:
    return (start, y, end, y)


def ring(radius: float, count: int = 24) -> list[Line]:
    turns = [math.tau * k / count for k in range(count + 1)]
    points = [(radius * math.cos(turn), radius * math.sin(turn)) for turn in turns]
    return [(*a, *b) for a, b in pairwise(points)]


def test_a_hidden_line_shorter_than_a_dash_is_left_out() -> None:
    assert kept([level(0.0, end=1.0), level(5.0, end=1.5)], []) == ([level(5.0, end=1.5)], [])


def test_a_hidden_round_stays_as_long_as_it_is_larger_than_a_dot() -> None:
    """Its chords are all shorter than a dash: 24 on a circle of 4 mm are half a mm each."""
    for radius, count in ((2.0, 24), (0.5, 0)):
        hidden, _ = kept(ring(radius), [])
        assert len(hidden) == count


def test_a_hidden_line_beside_a_visible_one_is_left_out() -> None:
    visible = [level(0.0)]
    assert kept([level(0.5)], visible) == ([], visible)
    assert kept([level(0.9)], visible) == ([level(0.9)], visible)


def test_of_hidden_lines_that_run_together_the_longest_stays() -> None:
    hidden, _ = kept([level(0.0, 5.0, 30.0), level(0.4), level(0.8, 5.0, 30.0)], [])
    assert hidden == [level(0.4)]


def test_a_stack_of_hidden_lines_keeps_some_all_the_way_through() -> None:
    hidden, _ = kept([level(0.5 * k) for k in range(9)], [])
    assert hidden == [level(float(k)) for k in range(5)]


def test_a_board_keeps_both_of_its_visible_edges() -> None:
    edges = [level(0.0), level(0.4)]
    assert kept([], edges) == ([], edges)


def test_a_stack_of_visible_lines_keeps_its_outermost() -> None:
    _, visible = kept([], [level(0.3 * k) for k in range(11)])
    assert {level(0.0), level(3.0)} <= set(visible)
    assert len(visible) < 6
    assert np.diff(sorted(line[1] for line in visible)).max() < 1.3


def test_what_runs_beside_another_for_a_part_of_its_way_stays() -> None:
    visible = [level(0.0, end=20.0), level(0.3), level(0.6, start=20.0)]
    assert kept([], visible) == ([], visible)


def test_lines_that_run_in_different_ways_do_not_count_as_beside() -> None:
    lines = [(0.0, 0.0, 40.0, 0.0), (0.0, 0.3, 40.0, 3.0), (0.0, 0.6, 40.0, 6.0)]
    assert kept(lines, []) == (lines, [])


def test_owners_go_with_their_lines_and_all_else_stays_as_it_is() -> None:
    label = Label(Role.TITLE, "Plan", (0.0, 0.0), 2.5)
    rows = np.array([level(0.0), level(0.5), level(5.0)])
    mark = Strokes(Role.HIDDEN, rows, owners=("a", "b", "c"), owner_of=np.array([0, 1, 2]))
    same, thinned = legible([label, mark])
    assert same is label
    assert isinstance(thinned, Strokes)
    assert thinned.owner_of is not None
    assert thinned.owner_of.tolist() == [0, 2]
    assert legible([label]) == (label,)


@pytest.fixture(scope="module")
def long_bench() -> Bench:
    """Three metres, with drawers at its ends and a back rest of slats."""
    changes: dict[str, float | str] = {"length": 3000.0, "partition_count": 7.0}
    fills: dict[str, float | str] = {"opening_1_fill": "drawers", "opening_8_fill": "drawers"}
    spec = default_spec()
    for some in (changes, fills, {"back_rest": "slats"}):
        spec = set_values(spec, some)
    return build(spec)


def drawn(bench: Bench, scale: float) -> list[Mark]:
    return [
        Strokes(role, linework.segments[linework.visible == seen] * scale + 1000.0 * place)
        for place, linework in enumerate(look_all(bench.parts, bench_views(bench)))
        for role, seen in ((Role.HIDDEN, False), (Role.VISIBLE, True))
    ]


def count(marks: list[Mark] | tuple[Mark, ...], role: Role) -> int:
    return sum(len(m.segments) for m in marks if isinstance(m, Strokes) and m.role is role)


def test_farther_out_more_is_left_out_and_near_by_hardly_anything(long_bench: Bench) -> None:
    for role in (Role.HIDDEN, Role.VISIBLE):
        shares = []
        for scale in (1 / 60, 1 / 30, 1 / 10, 2.0):
            marks = drawn(long_bench, scale)
            shares.append(count(legible(marks), role) / count(marks, role))
        assert shares == sorted(shares), role
        # Twice full size: but a tenon's hidden lines lie on its mortise's at any scale.
        assert shares[-1] > (0.7 if role is Role.HIDDEN else 0.95), role
        assert shares[0] < (0.2 if role is Role.HIDDEN else 0.8), role


@pytest.mark.parametrize("scale", [1 / 60, 1 / 30, 1 / 10])
def test_every_view_keeps_its_outline(long_bench: Bench, scale: float) -> None:
    marks = drawn(long_bench, scale)
    for before, after in zip(marks, legible(marks), strict=True):
        assert isinstance(before, Strokes)
        assert isinstance(after, Strokes)
        if before.role is Role.VISIBLE:
            low = [m.segments.reshape(-1, 2).min(axis=0) for m in (before, after)]
            high = [m.segments.reshape(-1, 2).max(axis=0) for m in (before, after)]
            assert np.allclose(*low)
            assert np.allclose(*high)
