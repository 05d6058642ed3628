"""A constraint: how much room a rule leaves, and what to say when there is none."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from geometry.design.spec import BenchSpec


@dataclass(frozen=True, slots=True)
class Constraint:
    """Holds while ``slack(spec)`` is at least 0 (mm or degrees).

    ``reads`` are the parameters that it depends on.  ``because`` is the reason in the maker's
    words, a sentence without its full stop.  A rule that may give way and hold again as one value
    grows does so over at least ``finest`` of it, in mm; 0 for one that is never so fine.
    """

    name: str
    reads: frozenset[str]
    slack: Callable[[BenchSpec], float]
    because: str
    finest: float = 0.0


def rule(
    name: str,
    reads: str,
    slack: Callable[[BenchSpec], float],
    because: str,
    finest: float = 0.0,
) -> Constraint:
    """A constraint whose parameters are given as words separated by spaces."""
    return Constraint(name, frozenset(reads.split()), slack, because, finest)
