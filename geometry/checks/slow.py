"""The checks that take seconds on a large bench, so are looked into behind the others."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.checks import clamping, locking, open_time
from geometry.checks.check import Check
from geometry.checks.looked import Looked
from geometry.design.finding import Finding

_JUDGES: tuple[Callable[[Bench, Looked], Iterable[Finding]], ...] = (
    locking.findings_of,
    open_time.findings_of,
    clamping.findings_of,
)

CHECKS: tuple[Check, ...] = (*locking.CHECKS, *open_time.CHECKS, *clamping.CHECKS)


def findings_of(bench: Bench, looked: Looked) -> Iterator[Finding]:
    """What the slow checks find of a bench that has been looked into, by its limits."""
    for check, judge in zip(CHECKS, _JUDGES, strict=True):
        for finding in judge(bench, looked):
            yield replace(finding, told_by=check.name)
