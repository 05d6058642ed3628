"""Every check of a bench, in the order in which findings are listed."""

from __future__ import annotations

from functools import lru_cache

from geometry.bench.bench import Bench
from geometry.checks import (
    base,
    base_outline,
    carving,
    case,
    collisions,
    drawers,
    four_legs,
    housings,
    rails,
    shelves,
)
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level

CHECKS: tuple[Check, ...] = (
    *collisions.CHECKS,
    *housings.CHECKS,
    *shelves.CHECKS,
    *drawers.CHECKS,
    *carving.CHECKS,
    *base.CHECKS,
    *rails.CHECKS,
    *four_legs.CHECKS,
    *base_outline.CHECKS,
    *case.CHECKS,
)

_ORDER = tuple(Level)


@lru_cache(maxsize=64)
def findings(bench: Bench) -> tuple[Finding, ...]:
    """What a maker should know of a bench, the gravest first; the order is stable."""
    found = [finding for check in CHECKS if check.applies(bench) for finding in check.run(bench)]
    return tuple(sorted(found, key=lambda finding: _ORDER.index(finding.level)))
