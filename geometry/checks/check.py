"""A check: a small pure function from a bench to findings, and what a user may read about it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.bench.members import has
from geometry.checks.limit import Limit
from geometry.design.finding import Finding


@dataclass(frozen=True, slots=True)
class Check:
    """``about`` says what it looks for, why it matters and where its limit comes from.

    ``needs`` names the members without which there is nothing to look at; ``limits`` are the rows
    of the table that it goes by, which the maker may change.  One that is not ``quick`` reads
    solids or seeks mends, and is not run on benches that are only tried.
    """

    name: str
    title: str
    about: str
    run: Callable[[Bench], Iterable[Finding]]
    needs: tuple[str, ...] = ()
    limits: tuple[Limit, ...] = ()
    quick: bool = True

    def applies(self, bench: Bench) -> bool:
        return all(has(bench.spec, name) for name in self.needs)
