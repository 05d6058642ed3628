"""A solid that follows its shape under the hand is the one that would have been cut."""

from __future__ import annotations

import random

import numpy as np
import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.catalogue import PARAMETERS
from geometry.bench.limits import limits, set_values
from geometry.design.spec import BenchSpec
from geometry.solids.cutting import placed
from geometry.solids.standing import stand
from geometry.views.bench_views import bench_views
from geometry.views.linework import Linework
from geometry.views.look import look_all, look_at_solids
from shared.errors import MakerError
from tests.judges.differing import volume_apart

TRIED = 6  # values of each bench


def nearby(spec: BenchSpec, dice: random.Random) -> list[BenchSpec]:
    """Benches with one value somewhat different, a tenth of its range at most."""
    rows = [row for row in PARAMETERS if row.is_number and row.applies(spec)]
    found = []
    for row in dice.sample(rows, min(TRIED, len(rows))):
        allowed = limits(spec, row.name)
        by = dice.uniform(-0.1, 0.1) * (allowed.maximum - allowed.minimum)
        value = min(max(spec.number(row.name) + by, allowed.minimum), allowed.maximum)
        try:
            found.append(set_values(spec, {row.name: value}))
        except MakerError:
            continue
    return found


def drawn(linework: Linework) -> tuple[float, float]:
    """Lengths of what is visible and of what is hidden, mm."""
    lengths = np.hypot(*(linework.segments[:, 2:] - linework.segments[:, :2]).T)
    return float(lengths[linework.visible].sum()), float(lengths[~linework.visible].sum())


def test_a_solid_that_followed_is_the_one_that_is_cut(bench: Bench) -> None:
    before = stand(bench.parts)
    for spec in nearby(bench.spec, random.Random(bench.spec.number("length"))):
        moved = build(spec)
        now = stand(moved.parts, before)
        for part, solid in zip(moved.parts, now.solids, strict=True):
            if now.cut[part.name] == part.shape:
                continue
            cut = placed(part)
            assert solid.solid.volume == pytest.approx(cut.solid.volume, rel=1e-9), part.name
            assert volume_apart(solid.solid, cut.solid) < 1e-9 * cut.solid.volume, part.name
            assert solid.low == pytest.approx(cut.low, abs=1e-6), part.name
            assert solid.high == pytest.approx(cut.high, abs=1e-6), part.name


def test_solids_that_followed_are_drawn_as_those_that_are_cut(bench: Bench) -> None:
    before = stand(bench.parts)
    for spec in nearby(bench.spec, random.Random(bench.spec.number("depth"))):
        moved = build(spec)
        views = bench_views(moved)
        followed = look_at_solids(stand(moved.parts, before).solids, views)
        for one, other in zip(followed, look_all(moved.parts, views), strict=True):
            assert drawn(one) == pytest.approx(drawn(other), abs=0.01), one.view.name
