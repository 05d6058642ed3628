"""Who sits, as the few numbers that a seat follows from.

mm and kg.  A person has one value of each; a group the values of its smallest, middle and largest
sitter that count (see ``shared.body_measures``).  0 where a measure is not known.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.design.brief import ADULTS, MEN, PERSON, SHARES, WOMEN, Brief
from shared.body_measures import BODY_MEASURES, LOWER_LEG, SHOULDERS, UPPER_LEG, WEIGHT

SURVEY = "ANSUR II, adults in service"


@dataclass(frozen=True, slots=True)
class Spread:
    """One measure of those who sit, from the smallest to the largest."""

    small: float
    middle: float
    large: float


@dataclass(frozen=True, slots=True)
class Sitters:
    """``called`` is what they are called in a sentence, ``source`` where the numbers are from."""

    called: str
    source: str
    lower_leg: Spread
    upper_leg: Spread
    shoulders: Spread
    weight: Spread
    several: bool


def sitters(brief: Brief) -> Sitters | None:
    """Those who sit; None for nobody in particular."""
    if brief.who == PERSON:
        return Sitters(
            called=brief.person or "this person",
            source="measures as typed",
            lower_leg=_same(brief.lower_leg),
            upper_leg=_same(brief.upper_leg),
            shoulders=_same(brief.shoulders),
            weight=_same(brief.weight),
            several=False,
        )
    groups = {MEN: (MEN,), WOMEN: (WOMEN,), ADULTS: (WOMEN, MEN)}.get(brief.who)
    if groups is None:
        return None
    low, high = SHARES[brief.share]
    return Sitters(
        called=f"{brief.share} {brief.who}",
        source=SURVEY,
        lower_leg=_reach(groups, LOWER_LEG, low, high),
        upper_leg=_reach(groups, UPPER_LEG, low, high),
        shoulders=_reach(groups, SHOULDERS, low, high),
        weight=_reach(groups, WEIGHT, low, high),
        several=True,
    )


def _same(value: float) -> Spread:
    return Spread(value, value, value)


def _reach(groups: tuple[str, ...], name: str, low: int, high: int) -> Spread:
    """Over several groups: the smallest of the one, the largest of the other, and between."""
    rows = [BODY_MEASURES[group, name] for group in groups]
    return Spread(
        min(row.at(low) for row in rows),
        sum(row.at(50) for row in rows) / len(rows),
        max(row.at(high) for row in rows),
    )
