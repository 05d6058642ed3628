"""Mends worth offering: only those that the bench takes, that cure and that spoil nothing.

A check says what would be right; whether all the other numbers leave room for it is tried here,
for every check alike.
"""

from __future__ import annotations

from collections.abc import Generator, Iterable
from dataclasses import replace

from geometry.bench.bench import Bench
from geometry.bench.build import build
from geometry.bench.limits import set_values
from geometry.checks.check import Check
from geometry.design.finding import Finding, Level, Mend
from geometry.design.judging import FindingKey
from shared.errors import MakerError


def offered(
    bench: Bench,
    check: Check,
    finding: Finding,
    others: Iterable[Check],
    grave: frozenset[FindingKey],
) -> Generator[None, None, Finding]:
    """The finding, without its mend if that cannot be made, would leave it as it is, or would make
    one of the quick ``others`` forbid to cut what it does not forbid now (``grave``).

    It stops for breath between one bench that is tried and the next.
    """
    mend = finding.mend
    if mend is None and finding.seek is not None:
        mend = yield from finding.seek()
    told, finding = replace(finding, mend=None, seek=None), replace(finding, mend=mend, seek=None)
    if mend is None:
        return told
    yield
    mended = bench_with(bench, mend)
    if mended is None or (
        check.applies(mended) and any(still.key == finding.key for still in check.run(mended))
    ):
        return told
    yield
    for other in others:
        if other.quick and other.applies(mended):
            found = other.run(mended)
            if any(one.level is Level.DO_NOT_CUT and _is_new(one.key, grave) for one in found):
                return told
            yield
    return finding


def _is_new(key: FindingKey, grave: frozenset[FindingKey]) -> bool:
    """Whether it is told of a piece of which that check has not told before: told of fewer pieces
    than before, it has been cured in part."""
    check, parts = key
    return not any(other == check and set(parts) <= set(before) for other, before in grave)


def bench_with(bench: Bench, mend: Mend) -> Bench | None:
    """The bench that a mend would make, judged as this one; None if it is refused."""
    try:
        spec = set_values(bench.spec, dict(mend.values))
        return replace(build(spec), judged_by=bench.judged_by, brief=bench.brief, shown=bench.shown)
    except MakerError:
        return None
