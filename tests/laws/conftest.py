"""Random benches for the laws: a few always, some dozens in the sweep."""

from __future__ import annotations

from functools import lru_cache

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from tests.random_benches import random_spec

QUICK, SWEEP = 8, 30

SEEDS = [
    *range(QUICK),
    *(pytest.param(seed, marks=pytest.mark.sweep) for seed in range(QUICK, SWEEP)),
]


@lru_cache(maxsize=SWEEP)
def _random_bench(seed: int) -> Bench:
    return build(random_spec(seed))


@pytest.fixture(params=SEEDS)
def bench(request: pytest.FixtureRequest) -> Bench:
    return _random_bench(request.param)
