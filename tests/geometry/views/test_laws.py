"""Laws that hold for the views of any assembly."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from geometry.views.foremost import Foremost
from geometry.views.look import look_all
from geometry.views.view import END_LEFT, END_RIGHT, FRONT, PLAN, View
from shared.tolerances import MERGE
from tests.judges.rays import RayJudge, mesh_as_seen
from tests.random_assemblies import bars, blocks, box

VIEWS = (FRONT, PLAN, END_RIGHT, END_LEFT)
ASSEMBLIES = [(build, seed) for build in (blocks, bars) for seed in range(20, 26)]

# A view along no axis, as a pictorial has: right x up = toward.
ASKEW = View("askew", (0.8, 0.6, 0.0), (-0.36, 0.48, 0.8), (0.48, -0.64, 0.6))


@pytest.mark.parametrize(("build", "seed"), ASSEMBLIES)
def test_no_two_lines_lie_on_one_another(build, seed):
    for linework in look_all(build(seed), (*VIEWS, ASKEW)):
        a, b = linework.segments[:, None, :2], linework.segments[:, None, 2:]
        along = b - a
        length = np.linalg.norm(along, axis=2, keepdims=True)
        along = along / length
        other = [linework.segments[None, :, k : k + 2] - a for k in (0, 2)]
        off = [np.abs(along[..., 0] * q[..., 1] - along[..., 1] * q[..., 0]) for q in other]
        at = np.sort(np.stack([(along * q).sum(axis=2) for q in other]), axis=0)
        overlap = np.minimum(at[1], length[..., 0]) - np.maximum(at[0], 0.0)
        doubled = (off[0] < MERGE / 10) & (off[1] < MERGE / 10) & (overlap > 2.1 * MERGE)
        np.fill_diagonal(doubled, val=False)
        assert not doubled.any(), (linework.view.name, linework.segments[doubled.any(axis=1)])


@pytest.mark.parametrize(("build", "seed"), ASSEMBLIES)
def test_visible_lines_trace_the_outline_that_shapely_finds(build, seed):
    parts = build(seed)
    for view, linework in zip(VIEWS, look_all(parts, VIEWS), strict=True):
        triangles = [
            shapely.Polygon(corners)
            for piece in parts
            for corners in mesh_as_seen(piece, view).triangles[..., :2]
        ]
        # Grown by a hair, so that rounding leaves no slits between neighbouring triangles.
        shadow = shapely.union_all(
            [t.buffer(1e-5, join_style="mitre") for t in triangles if t.area > 1e-9]
        )
        drawn = shapely.union_all(
            shapely.linestrings(linework.segments[linework.visible].reshape(-1, 2, 2))
        )
        assert shadow.boundary.difference(drawn.buffer(1e-3)).length < 0.05
        everything = shapely.MultiLineString(list(linework.segments.reshape(-1, 2, 2)))
        assert everything.difference(shadow.buffer(1e-3)).length < 1e-6


@pytest.mark.parametrize(("build", "seed"), ASSEMBLIES)
def test_a_part_beside_everything_changes_nothing_else(build, seed):
    parts = build(seed)
    # Clear of the others in every view, along a diagonal.
    stranger = box("stranger", (900, 900, 900), (950, 930, 920))
    alone = look_all(parts, VIEWS)
    for before, after in zip(alone, look_all([stranger, *parts], VIEWS), strict=True):
        others = after.owner > 0
        assert as_set(before) == {
            (*line[:-1], line[-1] - 1) for line in as_set(after) if line[-1] > 0
        }
        assert int((~others).sum()) == 4


@pytest.mark.parametrize(("build", "seed"), ASSEMBLIES)
def test_the_order_of_parts_does_not_matter_to_what_is_drawn(build, seed):
    parts = build(seed)
    shuffled = random.Random(seed).sample(parts, len(parts))
    for one, other in zip(look_all(parts, VIEWS), look_all(shuffled, VIEWS), strict=True):
        for seen in (True, False):
            assert total_length(one, seen) == pytest.approx(total_length(other, seen), abs=1e-3)


@given(seed=st.integers(0, 10_000), shift=st.tuples(*[st.floats(-500, 500)] * 3))
@settings(max_examples=15, deadline=None)
def test_moving_everything_moves_the_drawing(seed, shift):
    parts = blocks(seed, count=4)
    moved = [
        replace(piece, frame=replace(piece.frame, origin=tuple(
            a + b for a, b in zip(piece.frame.origin, shift, strict=True)
        )))
        for piece in parts
    ]  # fmt: skip
    for view, one, other in zip(VIEWS, look_all(parts, VIEWS), look_all(moved, VIEWS), strict=True):
        for seen in (True, False):
            assert total_length(one, seen) == pytest.approx(total_length(other, seen), abs=1e-3)
        du, dv = view.project(shift)
        assert np.subtract(other.bounds(), one.bounds()) == pytest.approx((du, dv, du, dv))


@given(seed=st.integers(0, 10_000))
@settings(max_examples=25, deadline=None)
def test_drawn_length_of_plain_boxes_is_that_of_all_their_edges_laid_together(seed):
    dice = random.Random(seed)
    corners: list[tuple[tuple[int, ...], tuple[int, ...]]] = []
    for _ in range(30):
        low = tuple(10 * dice.randrange(6) for _ in range(3))
        high = tuple(k + 10 * dice.randrange(1, 5) for k in low)
        if all(
            any(low[k] >= h[k] or high[k] <= other[k] for k in range(3)) for other, h in corners
        ):
            corners.append((low, high))
    parts = [box(f"box_{i}", low, high) for i, (low, high) in enumerate(corners)]
    for axes, linework in zip(
        ((0, 2), (0, 1), (1, 2)), look_all(parts, (FRONT, PLAN, END_RIGHT)), strict=True
    ):
        covered: set[tuple[int, int, int]] = set()  # axis, line, tenth along it
        for low, high in corners:
            for along, across in ((0, 1), (1, 0)):
                for line in (low[axes[across]], high[axes[across]]):
                    span = range(low[axes[along]], high[axes[along]], 10)
                    covered |= {(along, line, step) for step in span}
        drawn = total_length(linework, seen=True) + total_length(linework, seen=False)
        assert Fraction(drawn).limit_denominator(10**6) == 10 * len(covered)


@pytest.mark.parametrize("seed", range(4))
def test_the_part_under_a_point_is_the_one_that_a_ray_meets_first(seed):
    parts = blocks(seed)
    dice = np.random.default_rng(seed)
    for view in VIEWS:
        judge = RayJudge(parts, view)
        low, high = judge.all.bounds
        foremost = Foremost(parts, view)
        for u, v in dice.uniform(low[:2] - 5, high[:2] + 5, (20, 2)):
            heights = [RayJudge([piece], view).heights(np.array([[u, v]]))[0] for piece in parts]
            expected = int(np.argmax(heights)) if np.isfinite(max(heights)) else None
            assert foremost.under((u, v)) == expected


@pytest.mark.parametrize("seed", range(30, 36))
def test_a_view_along_no_axis_stands_before_rays_too(seed):
    parts = blocks(seed)
    linework = look_all(parts, [ASKEW])[0]
    assert RayJudge(parts, ASKEW, seed).judge(linework).wrong == []


def as_set(linework):
    return {
        (*np.round(segment, 6), bool(seen), int(owner))
        for segment, seen, owner in zip(
            linework.segments, linework.visible, linework.owner, strict=True
        )
    }


def total_length(linework, seen):
    u0, v0, u1, v1 = linework.segments[linework.visible == seen].T
    return float(np.hypot(u1 - u0, v1 - v0).sum())
