"""Random benches for the laws: a few always, some dozens in the sweep."""

from __future__ import annotations

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from tests.random_benches import random_spec

QUICK, SWEEP = 8, 30

SEEDS = [
    *range(QUICK),
    *(pytest.param(seed, marks=pytest.mark.sweep) for seed in range(QUICK, SWEEP)),
]


@pytest.fixture(params=SEEDS)
def bench(request: pytest.FixtureRequest) -> Bench:
    return build(random_spec(request.param))
