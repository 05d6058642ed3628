"""What findings promise on any bench: each known by its own key, and no mend that is refused.

Tried on the benches of the other laws, so that what is cut of them serves all, and on tight ones.
"""

from __future__ import annotations

from collections.abc import Iterable

import pytest

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.all_checks import findings, told
from geometry.design.finding import Finding, Level
from tests.laws.conftest import QUICK, SWEEP
from tests.random_benches import random_spec

# 39, 64 and 325 are benches whose numbers leave no room for what a check would like.
TIGHT = (39, 64)
SWEPT = (325, *range(QUICK, SWEEP))


@pytest.fixture(
    params=[*range(QUICK), *TIGHT, *(pytest.param(seed, marks=pytest.mark.sweep) for seed in SWEPT)]
)
def any_bench(request: pytest.FixtureRequest) -> Bench:
    return build(random_spec(request.param))


def test_each_finding_has_a_key_of_its_own_and_parts_that_exist(any_bench: Bench) -> None:
    found = findings(any_bench)
    keys = [one.key for one in found]
    assert len(set(keys)) == len(keys)
    names = {part.name for part in any_bench.parts}
    for one in found:
        assert one.parts, one.check
        assert set(one.parts) <= names, one.check


def test_every_mend_can_be_made_cures_its_finding_and_spoils_nothing(any_bench: Bench) -> None:
    """A check that forbids some of the pieces that it forbade before has spoiled none."""
    found = findings(any_bench)
    grave = _forbidden(found)
    for one in found:
        if one.mend is None:
            continue
        after = told(build(set_values(any_bench.spec, dict(one.mend.values))))
        assert one.key not in {still.key for still in after}, one.check
        assert _forbidden(after) <= grave, one.check


def _forbidden(found: Iterable[Finding]) -> set[tuple[str, str]]:
    """Check and piece of whatever must not be cut."""
    return {
        (one.check, part) for one in found if one.level is Level.DO_NOT_CUT for part in one.parts
    }


def test_findings_keep_the_order_of_the_checks_within_a_level(any_bench: Bench) -> None:
    ranks = [list(Level).index(one.level) for one in findings(any_bench)]
    assert ranks == sorted(ranks)
