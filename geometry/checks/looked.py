"""What takes seconds to know of a large bench, looked up once and then judged by any limits.

How it goes together, and how each glued joint can be pressed: neither depends on a maker's limits.
"""

from __future__ import annotations

from collections.abc import Generator
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.bench.bench import Bench
from geometry.checks.assembly import Assembly, in_steps
from geometry.checks.pressed import Pressed, pressed_in_steps
from geometry.design.brief import NO_BRIEF


@dataclass(frozen=True, slots=True)
class Looked:
    """How a bench goes together, and how its joints can be pressed."""

    assembly: Assembly
    pressed: tuple[Pressed, ...]


def looked_in_steps(bench: Bench) -> Generator[None, None, Looked]:
    """Look into a bench, stopping every few milliseconds."""
    together = yield from in_steps(bench.parts, bench.joints)
    return Looked(together, (yield from pressed_in_steps(bench)))


def looked_into(bench: Bench) -> Looked:
    """The same at once, kept for the next time that this bench is judged."""
    return _looked_into(replace(bench, judged_by=(), brief=NO_BRIEF))


@lru_cache(maxsize=32)
def _looked_into(bench: Bench) -> Looked:
    work = looked_in_steps(bench)
    while True:
        try:
            next(work)
        except StopIteration as done:
            found: Looked = done.value
            return found
