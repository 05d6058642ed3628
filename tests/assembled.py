"""How a bench goes together, looked for in one go."""

from __future__ import annotations

from functools import cache

from geometry.checks.assembly import Assembly, in_steps
from geometry.design.joint import Joint
from geometry.design.part import Part


@cache
def assembly_of(parts: tuple[Part, ...], joints: tuple[Joint, ...]) -> Assembly:
    """What the search ends with."""
    work = in_steps(parts, joints)
    while True:
        try:
            next(work)
        except StopIteration as done:
            found: Assembly = done.value
            return found
