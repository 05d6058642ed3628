"""Findings set aside with a reason: what is remembered of each, and when it stands again.

What a maker has looked at and let be is let be at that amount.  When the amount moves farther to
the wrong side of its limit by more than a twentieth, or the finding becomes a graver one, it
stands again and says so.  What was set aside by an earlier program, without its amount, stays
aside.
"""

from __future__ import annotations

from dataclasses import replace

from geometry.design.finding import Finding, Level
from geometry.design.judging import Judging, SetAside
from shared.units import amount_mark

CLEARLY = 0.05
"""The share of an amount (or of its limit) by which it must grow to be clearly worse."""

_GRAVEST_FIRST = tuple(level.value for level in Level)


def aside(finding: Finding, reason: str) -> SetAside:
    """The finding as it is put away now; UnreadableValue for a reason that is none."""
    return SetAside(finding.check, finding.parts, reason, finding.amount, level=finding.level.value)


def as_judged(finding: Finding, judging: Judging) -> Finding:
    """The finding with the maker's reason, or with the word that it has grown worse."""
    let_be = judging.let_be(finding.key)
    if let_be is None:
        return finding
    if not grown_worse(finding, let_be):
        return replace(finding, set_aside=let_be.reason)
    then = "" if let_be.amount is None else f" at {amount_mark(let_be.amount, finding.unit)}"
    return replace(
        finding, worse=f"Worse than when it was set aside{then}, because: {let_be.reason}"
    )


def grown_worse(finding: Finding, let_be: SetAside) -> bool:
    """Whether it is clearly worse than what was let be."""
    if let_be.level in _GRAVEST_FIRST and _GRAVEST_FIRST.index(
        finding.level.value
    ) < _GRAVEST_FIRST.index(let_be.level):
        return True
    if let_be.amount is None or finding.amount is None or finding.limit is None:
        return False
    farther = finding.amount - let_be.amount
    if finding.amount < finding.limit:
        farther = -farther
    return farther > CLEARLY * max(abs(let_be.amount), abs(finding.limit))
