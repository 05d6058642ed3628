"""What is said about a finding: amount beside limit, a mend's changes, a tally of many."""

from __future__ import annotations

from collections.abc import Sequence

from app.scene.preferences import Preferences
from app.scene.wording import said, value_text
from geometry.bench.catalogue import parameter
from geometry.checks.limit import Limit
from geometry.design.finding import Finding, Level, Mend
from geometry.design.spec import BenchSpec
from shared.units import amount_mark, in_units

SET_ASIDE = "set aside"


def amount_text(value: float, unit: str, preferences: Preferences) -> str:
    """A number of a finding or a limit with its unit: ``5.9 mm``, ``12°``, ``83 %``, ``1112 N``."""
    return in_units(amount_mark(value, unit), preferences.shown)


def measure_text(finding: Finding, preferences: Preferences) -> str:
    """``5.9 mm, limit 6 mm``; empty for a finding without a number."""
    if finding.amount is None:
        return ""
    amount = amount_text(finding.amount, finding.unit, preferences)
    if finding.limit is None:
        return amount
    text = f"{amount}, limit {amount_text(finding.limit, finding.unit, preferences)}"
    return f"{text}; an estimate" if finding.estimate else text


def source_text(row: Limit, preferences: Preferences) -> str:
    """Where a limit comes from, and what it was before anybody changed it."""
    default = amount_text(row.default, row.unit, preferences)
    return said(f"Default {default}: {row.source}.", preferences)


def change_lines(spec: BenchSpec, mend: Mend, preferences: Preferences) -> tuple[str, ...]:
    """What a mend changes: ``Housing depth: 12 → 10 mm``."""
    lines = []
    for name, value in mend.values:
        row = parameter(name)
        before = value_text(row, spec.value(name), preferences)
        after = value_text(row, value, preferences)
        unit = f" {preferences.shown.unit}" if row.unit == "mm" else ""
        lines.append(said(f"{row.title}: {before} → {after}{unit}", preferences))
    return tuple(lines)


def mend_text(spec: BenchSpec, mend: Mend, preferences: Preferences) -> str:
    """What a mend does, and the sizes before and after; once where these say all."""
    changes = f"{'; '.join(change_lines(spec, mend, preferences))}."
    if mend.sentence.startswith(f"{parameter(mend.values[0][0]).title}:"):
        return f"{changes} The sheet shows it."
    return f"{said(mend.sentence, preferences)} The sheet shows it. {changes}"


def count_text(count: int) -> str:
    """``No findings``, ``1 finding``, ``3 findings``."""
    return "No findings" if not count else f"{count} finding{'s' if count > 1 else ''}"


def tally_text(found: Sequence[Finding]) -> str:
    """How many of each level there are, one a line; empty for fewer than two findings."""
    if len(found) < 2:
        return ""
    words = [SET_ASIDE if one.set_aside else one.level.value for one in found]
    order = [*(level.value for level in Level), SET_ASIDE]
    return "\n".join(f"{words.count(word)} {word}" for word in order if word in words)


def message_of(finding: Finding) -> str:
    """What its line says; with a word more where it had been set aside and is worse now."""
    if not finding.worse:
        return finding.message
    return f"{finding.message} Worse than when it was set aside."


def level_words(finding: Finding) -> str:
    """The word before a finding."""
    return SET_ASIDE if finding.set_aside else finding.level.value
