"""Mends worth offering: only those that the bench takes and that cure what they were offered for.

A check says what would be right; whether all the other numbers leave room for it is tried here,
for every check alike.
"""

from __future__ import annotations

from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.check import Check
from geometry.design.finding import Finding, Mend
from shared.errors import MakerError


def offered(bench: Bench, check: Check, finding: Finding) -> Finding:
    """The finding, without its mend if that cannot be made or would leave it as it is."""
    if finding.mend is None:
        return finding
    mended = bench_with(bench, finding.mend)
    if mended is None or (
        check.applies(mended) and any(still.key == finding.key for still in check.run(mended))
    ):
        return replace(finding, mend=None)
    return finding


def bench_with(bench: Bench, mend: Mend) -> Bench | None:
    """The bench that a mend would make, judged as this one; None if it is refused."""
    try:
        spec = set_values(bench.spec, dict(mend.values))
        return replace(build(spec), judged_by=bench.judged_by, brief=bench.brief, shown=bench.shown)
    except MakerError:
        return None
