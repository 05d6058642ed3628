"""A check: a small pure function from a bench to findings, and what a user may read about it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from geometry.bench.bench import Bench
from geometry.design.finding import Finding


@dataclass(frozen=True, slots=True)
class Check:
    """``about`` says what it looks for, why it matters and where its limit comes from."""

    name: str
    title: str
    about: str
    run: Callable[[Bench], Iterable[Finding]]
